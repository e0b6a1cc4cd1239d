import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { textBreadth, textLines } from "./reachLines.ts";

/** Breadth of each character of a TrueType file as a share of its size: tables cmap (format 4), head, hhea and hmtx. */
function advances(file: string): ReadonlyMap<number, number> {
	const bytes = readFileSync(new URL(`../fonts/${file}`, import.meta.url));
	const tables = new Map(
		Array.from({ length: bytes.readUInt16BE(4) }, (_, i) => [
			bytes.toString("latin1", 12 + 16 * i, 16 + 16 * i),
			bytes.readUInt32BE(20 + 16 * i),
		]),
	);
	const at = (name: string) => tables.get(name) ?? expect.fail(`${file} has no ${name}`);
	const perEm = bytes.readUInt16BE(at("head") + 18);
	const metrics = bytes.readUInt16BE(at("hhea") + 34);
	const subtables = Array.from(
		{ length: bytes.readUInt16BE(at("cmap") + 2) },
		(_, i) => at("cmap") + bytes.readUInt32BE(at("cmap") + 8 + 8 * i),
	);
	const map = subtables.find((start) => bytes.readUInt16BE(start) === 4) ?? expect.fail(`${file} has no cmap of format 4`);
	const segments = bytes.readUInt16BE(map + 6) / 2;
	const found = new Map<number, number>();
	for (let s = 0; s < segments; s++) {
		const end = bytes.readUInt16BE(map + 14 + 2 * s);
		const start = bytes.readUInt16BE(map + 16 + 2 * (segments + s));
		const delta = bytes.readUInt16BE(map + 16 + 2 * (2 * segments + s));
		const offsetAt = map + 16 + 2 * (3 * segments + s);
		const offset = bytes.readUInt16BE(offsetAt);
		for (let code = start; code <= end && code < 0xffff; code++) {
			const raw = offset === 0 ? code : bytes.readUInt16BE(offsetAt + offset + 2 * (code - start));
			const glyph = raw === 0 ? 0 : (raw + delta) % 65_536;
			if (glyph !== 0) found.set(code, bytes.readUInt16BE(at("hmtx") + 4 * Math.min(glyph, metrics - 1)) / perEm);
		}
	}
	return found;
}

test.each(["SourceSans3-Regular.ttf", "SourceSans3-Bold.ttf"])("no character of %s is broader than reckoned", (file) => {
	const found = [...advances(file)].map(([code, breadth]) => ({ character: String.fromCodePoint(code), breadth }));
	expect(found.length).toBeGreaterThan(1_000);
	expect(found.filter(({ character, breadth }) => breadth > textBreadth(character, 1))).toEqual([]);
	const letters = found.filter(({ character }) => /[a-z]/.test(character));
	expect(letters.length).toBe(26);
	// not so much broader that lines stay half empty
	const sum = (breadths: readonly number[]) => breadths.reduce((a, b) => a + b, 0);
	expect(sum(letters.map(({ character }) => textBreadth(character, 1))) / sum(letters.map(({ breadth }) => breadth))).toBeLessThan(1.2);
});

const words = fc.string({ unit: "binary", maxLength: 80 });

test("lines fit, and hold every character but the spaces between them", () => {
	fc.assert(
		fc.property(words, fc.integer({ min: 20, max: 300 }), (text, breadth) => {
			const lines = textLines(text, breadth, 12);
			for (const line of lines) expect(textBreadth(line, 12) <= breadth || [...line].length === 1).toBe(true);
			const space = /[^\S\u00a0]+/g;
			expect(lines.join("").replaceAll(space, "")).toBe(text.replaceAll(space, ""));
		}),
		{ seed: 20_261_124, numRuns: 1_000 },
	);
});

test("breaks between words where it can", () => {
	expect(textLines("Cape Town to St Helena", 82, 12)).toEqual(["Cape Town to", "St Helena"]);
	expect(textLines("7\u00a0Horta; 8\u00a0Faial", 60, 12)).toEqual(["7\u00a0Horta;", "8\u00a0Faial"]);
	expect(textLines("", 75, 12)).toEqual([]);
});

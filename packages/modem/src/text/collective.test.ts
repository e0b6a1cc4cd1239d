import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { codesOfText } from "./codesOfText.ts";
import { collectiveBits } from "./collective.ts";
import { navtexText } from "./navtex.ts";
import { createPrinter } from "./printer.ts";
import { SEVEN_UNIT } from "./sevenUnit.ts";

/** A message worked out apart from this code: see truth/SOURCES.md. */
const { message }: { message: { text: string; phasingPairs: number; characters: string[]; sentOrder: string[]; sent: string } } =
	JSON.parse(readFileSync(join(import.meta.dirname, "../../truth/collective-fec.json"), "utf8"));
/** Whatever the alphabet prints. */
const ALPHABET = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 \n-!:(&./=')#,+?"];

const elements = (bits: Uint8Array) => [...bits].map((bit) => (bit === 1 ? "B" : "Y")).join("");
const printed = (codes: readonly number[]) => {
	const printer = createPrinter();
	return codes.map((code) => printer.print(code)).join("");
};

describe("collectiveBits", () => {
	it("sends the worked message element for element", () => {
		const sent = elements(collectiveBits(message.text, { phasingPairs: message.phasingPairs, closingPairs: 6 }));
		expect(message.sent.length).toBe(7 * message.sentOrder.length);
		expect(message.sentOrder.length).toBe(138);
		expect(sent).toBe(message.sent);
	});

	it("shifts where the worked message does", () => {
		expect(message.characters.length).toBe(53);
		expect(codesOfText(message.text).map((code) => SEVEN_UNIT[code]!.name)).toEqual(message.characters);
	});

	it("phases for 16 pairs and closes with two seconds of idle signals after the last second copy", () => {
		const sent = elements(collectiveBits("E"));
		const alpha = "BBBBYYY";
		expect(sent.startsWith(`YBBYYBB${alpha}`.repeat(16))).toBe(true);
		const closing = /(?:BBBBYYY)*$/.exec(sent)?.[0] ?? "";
		expect(closing.length).toBeGreaterThanOrEqual(200);
		expect(closing.length).toBeLessThan(240);
	});

	it("puts each signal's second copy five places after its first", () => {
		const sent = elements(collectiveBits("SEA STATE 4"));
		const places = Array.from({ length: sent.length / 7 }, (_, i) => sent.slice(7 * i, 7 * i + 7));
		const codes = codesOfText("SEA STATE 4");
		for (const [i, code] of codes.entries()) {
			expect(places[32 + 2 * i]).toBe(SEVEN_UNIT[code]!.sent);
			expect(places[32 + 2 * i + 5]).toBe(SEVEN_UNIT[code]!.sent);
		}
		expect(codes.length).toBe(13);
	});

	it("prints any text of the alphabet back", () => {
		fc.assert(
			fc.property(fc.array(fc.constantFrom(...ALPHABET), { maxLength: 60 }), (signs) => {
				expect(printed(codesOfText(signs.join("")))).toBe(signs.join(""));
			}),
			{ seed: 476 },
		);
		expect(ALPHABET.length).toBe(26 + 10 + 2 + 14);
	});

	it("names a character that the code lacks", () => {
		expect(() => codesOfText("12 °C")).toThrow(/Cannot send "°"/);
		expect(() => codesOfText("small")).toThrow(RangeError);
	});
});

describe("navtexText", () => {
	it("frames a message", () => {
		expect(navtexText({ station: "E", subject: "D", number: 0, body: "PAN PAN" })).toBe("ZCZC ED00\nPAN PAN\nNNNN\n");
	});

	it("refuses what no preamble can say", () => {
		expect(() => navtexText({ station: "Y", subject: "A", number: 1, body: "" })).toThrow(/station "Y"/);
		expect(() => navtexText({ station: "A", subject: "a", number: 1, body: "" })).toThrow(/subject "a"/);
		expect(() => navtexText({ station: "A", subject: "A", number: 100, body: "" })).toThrow(/0 to 99/);
	});
});

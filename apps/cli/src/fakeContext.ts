import { readFileSync } from "node:fs";
import { join } from "node:path";
import { isoDate } from "@skipwright/units";
import type { Context } from "./context.ts";

const REPOSITORY = join(import.meta.dirname, "..", "..", "..");

/** A world for tests: files given by name, or read from the repository; what is printed and written is kept. */
export interface FakeContext extends Context {
	readonly printed: () => string;
	readonly complained: () => string;
	readonly written: ReadonlyMap<string, string | Uint8Array>;
}

/** Odd, so that pieces end in the middle of samples. */
const PART_BYTES = 10_007;

export function fakeContext(files: Readonly<Record<string, string | Uint8Array>> = {}): FakeContext {
	const printed: string[] = [];
	const complained: string[] = [];
	const written = new Map<string, string | Uint8Array>();
	const readFile = (path: string): Uint8Array => {
		const given = files[path] ?? written.get(path);
		if (given === undefined) return readFileSync(join(REPOSITORY, path));
		return typeof given === "string" ? new TextEncoder().encode(given) : given;
	};
	return {
		out: (text) => printed.push(text),
		err: (text) => complained.push(text),
		readFile,
		readParts: function* (path) {
			const bytes = readFile(path);
			for (let at = 0; at < bytes.length; at += PART_BYTES) yield bytes.subarray(at, at + PART_BYTES);
		},
		writeFile: (path, content) => written.set(path, content),
		today: () => isoDate("2026-11-24"),
		colour: false,
		printed: () => printed.join(""),
		complained: () => complained.join(""),
		written,
	};
}

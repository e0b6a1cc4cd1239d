import { BadInputError } from "@skipwright/units";
import { type Context, UsageError } from "./context.ts";

/** Bytes. A directory export is under one megabyte; past this a file is not one of ours. */
const LARGEST_BYTES = 64 * 1024 * 1024;

/**
 * A text file, read strictly as UTF-8.
 * @throws UsageError when it is not there or too large, BadInputError when it is not UTF-8 text
 */
export function readText(context: Context, path: string): string {
	const bytes = readBytes(context, path);
	if (bytes.length > LARGEST_BYTES) {
		throw new UsageError(`cannot read ${path}: it has ${bytes.length} bytes, the most is ${LARGEST_BYTES}`);
	}
	if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
		throw badEncoding(path, 1, "a UTF-16 byte order mark");
	}
	try {
		return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
	} catch {
		const at = firstBadByte(bytes);
		const line = bytes.subarray(0, at).reduce((count, byte) => count + (byte === 0x0a ? 1 : 0), 1);
		throw badEncoding(path, line, `byte 0x${(bytes[at] ?? 0).toString(16).padStart(2, "0")}`);
	}
}

/** @throws UsageError when it is not there */
export function readBytes(context: Context, path: string): Uint8Array {
	try {
		return context.readFile(path);
	} catch (error) {
		throw unreadable(path, error);
	}
}

/** What a file could not be read for, in words. */
export function unreadable(path: string, error: unknown): UsageError {
	const code = (error as { code?: string }).code;
	const why = code === "ENOENT" ? "there is no such file" : code === "EISDIR" ? "it is a folder" : (code ?? String(error));
	return new UsageError(`cannot read ${path}: ${why}`);
}

function badEncoding(path: string, line: number, value: string): BadInputError {
	return new BadInputError(path, [{ line, column: null, value, expected: "UTF-8 text (save the file as CSV UTF-8 or JSON UTF-8)" }]);
}

/** Index of the first byte that is no UTF-8, by halving: a prefix decodes until it holds the bad byte. */
function firstBadByte(bytes: Uint8Array): number {
	let good = 0;
	let bad = bytes.length;
	while (bad - good > 1) {
		const middle = (good + bad) >> 1;
		if (decodes(bytes.subarray(0, middle))) good = middle;
		else bad = middle;
	}
	return good;
}

function decodes(bytes: Uint8Array): boolean {
	try {
		new TextDecoder("utf-8", { fatal: true }).decode(bytes, { stream: true });
		return true;
	} catch {
		return false;
	}
}

import type { IsoDate } from "@skipwright/units";

/** The world, handed in: commands touch nothing else, so that tests need no subprocess and no clock. */
export interface Context {
	/** Standard output: the answer, and with --json the JSON alone. */
	readonly out: (text: string) => void;
	/** Standard error: progress and complaints. */
	readonly err: (text: string) => void;
	/** @throws Error with a `code` such as ENOENT */
	readonly readFile: (path: string) => Uint8Array;
	/** A long file piece by piece, so that no more than a piece is held. Errors as `readFile`, with the first piece. */
	readonly readParts: (path: string) => Iterable<Uint8Array>;
	/** Makes the folder above when it is missing; the file appears whole or not at all. */
	readonly writeFile: (path: string, content: string | Uint8Array) => void;
	readonly today: () => IsoDate;
	/** Whether standard output is a terminal that wants colour. */
	readonly colour: boolean;
}

export const EXIT = { ok: 0, found: 1, badInput: 2 } as const;
export type Exit = (typeof EXIT)[keyof typeof EXIT];

/** A command given wrongly, or a file that cannot be read: said plainly, without a stack. */
export class UsageError extends Error {
	override readonly name = "UsageError";
}

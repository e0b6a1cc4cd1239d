import { closeSync, existsSync, lstatSync, mkdirSync, openSync, readFileSync, readSync, renameSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { dateOfMs } from "@skipwright/units";
import { type Context, EXIT, UsageError } from "./context.ts";
import { runProgram } from "./program.ts";

const context: Context = {
	out: (text) => process.stdout.write(text),
	err: (text) => process.stderr.write(text),
	readFile: (path) => readFileSync(path),
	readParts: partsOf,
	writeFile: (path, content) => {
		try {
			makeFolder(dirname(path));
			if (existsSync(path) && !lstatSync(path).isFile()) throw new Error("it is there already and is no plain file");
			const part = `${path}.part`;
			writeFileSync(part, content, { flush: true });
			renameSync(part, path); // whole or not at all
		} catch (error) {
			throw new UsageError(`cannot write ${path}: ${(error as Error).message}`);
		}
	},
	today: () => dateOfMs(Date.now()),
	colour: process.stdout.isTTY === true && process.env["NO_COLOR"] === undefined,
};

/** Bytes of a piece. */
const PART_BYTES = 1 << 18;

/** The same array is filled again for each piece. */
function* partsOf(path: string): Generator<Uint8Array> {
	const file = openSync(path, "r");
	try {
		const part = new Uint8Array(PART_BYTES);
		for (let count = readSync(file, part); count > 0; count = readSync(file, part)) yield part.subarray(0, count);
	} finally {
		closeSync(file);
	}
}

/** Step by step: asked to do it all at once, Node never comes back from folders that the system does not let exist, as under /proc. */
function makeFolder(folder: string): void {
	if (existsSync(folder)) return;
	makeFolder(dirname(folder));
	mkdirSync(folder);
}

process.stdout.on("error", (error: NodeJS.ErrnoException) => {
	if (error.code === "EPIPE") process.exit(0); // a reader that went away (`skipwright check ... | head`) is no fault
	process.stderr.write(`skipwright: cannot print: ${error.message}\n`);
	process.exit(EXIT.badInput);
});

process.exitCode = await runProgram(context, process.argv.slice(2));

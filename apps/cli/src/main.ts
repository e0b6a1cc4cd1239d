import { mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { dateOfMs } from "@skipwright/units";
import type { Context } from "./context.ts";
import { runProgram } from "./program.ts";

const context: Context = {
	out: (text) => process.stdout.write(text),
	err: (text) => process.stderr.write(text),
	readFile: (path) => readFileSync(path),
	writeFile: (path, content) => {
		mkdirSync(dirname(path), { recursive: true });
		const part = `${path}.part`;
		writeFileSync(part, content, { flush: true });
		renameSync(part, path); // whole or not at all
	},
	today: () => dateOfMs(Date.now()),
	colour: process.stdout.isTTY === true && process.env["NO_COLOR"] === undefined,
};

// a reader that went away (`skipwright check ... | head`) is no fault
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
	if (error.code === "EPIPE") process.exit(0);
	throw error;
});

process.exitCode = await runProgram(context, process.argv.slice(2));

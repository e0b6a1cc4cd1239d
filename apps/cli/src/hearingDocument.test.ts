import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { fakeContext } from "./fakeContext.ts";
import { runProgram } from "./program.ts";

const DOCUMENT = join(import.meta.dirname, "..", "..", "..", "docs", "hearing.md");
const BLOCK = /```text\n([^`]*)```/g;
const COMMAND = /^\$ npx skipwright (.*)$/gm;

/** With `vitest -u` the document is brought up to date. */
test("docs/hearing.md shows what the program prints", async () => {
	const document = readFileSync(DOCUMENT, "utf8");
	const context = fakeContext(); // what one command makes the next one hears
	const blocks = [...document.matchAll(BLOCK)].map(([, text = ""]) => [...text.matchAll(COMMAND)].map(([, command = ""]) => command));
	expect(blocks.map(({ length }) => length)).toEqual([2, 2, 2, 4]);
	const fresh: string[] = [];
	for (const commands of blocks) {
		let text = "";
		for (const command of commands) {
			const before = context.printed().length;
			expect(await runProgram(context, words(command))).toBe(0);
			text += `$ npx skipwright ${command}\n${context.printed().slice(before)}`;
		}
		fresh.push(`\`\`\`text\n${text.trimEnd()}\n\`\`\``);
	}
	expect(context.complained()).toBe("");
	await expect(document.replace(BLOCK, () => fresh.shift()!)).toMatchFileSnapshot(DOCUMENT);
});

/** As a shell parts them: double quotes hold words together. */
function words(command: string): readonly string[] {
	return [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
}

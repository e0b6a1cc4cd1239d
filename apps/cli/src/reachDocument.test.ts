import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { fakeContext } from "./fakeContext.ts";
import { runProgram } from "./program.ts";

const DOCUMENT = join(import.meta.dirname, "..", "..", "..", "docs", "reach.md");
const BLOCK = /```text\n\$ npx skipwright (.*)\n[^`]*```/g;

/** With `vitest -u` the document is brought up to date. */
test("docs/reach.md shows what the program prints", async () => {
	const document = readFileSync(DOCUMENT, "utf8");
	const commands = [...document.matchAll(BLOCK)].map(([, command = ""]) => command);
	expect(commands.length).toBe(3);
	const outputs = new Map<string, string>();
	for (const command of commands) {
		const context = fakeContext();
		expect(await runProgram(context, command.split(" "))).toBe(0);
		outputs.set(command, context.printed());
	}
	const fresh = document.replace(BLOCK, (_, command: string) => `\`\`\`text\n$ npx skipwright ${command}\n${outputs.get(command)}\`\`\``);
	await expect(fresh).toMatchFileSnapshot(DOCUMENT);
});

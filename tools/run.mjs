/**
 * What `npm start`, `npm test` and the other scripts run: makes sure of the right Node and of the packages, then does the task
 * with them. Plain JavaScript without dependencies, so that a fresh clone and any Node since 18 are enough.
 */
import { join } from "node:path";
import { endAs, findNode, REPOSITORY, run, say } from "../apps/cli/bin/runtime.mjs";
import { ensurePackages } from "./install.mjs";

const TYPESCRIPT = "node_modules/typescript/bin/tsc";

/** The programs of each task, with their arguments; they run one after another until one fails. @type {Record<string, readonly (readonly string[])[]>} */
const TASKS = {
	start: [["apps/cli/src/main.ts", "plan", "examples/south-atlantic.job.json", "-o", "out/south-atlantic"]],
	test: [["node_modules/vitest/vitest.mjs", "run"]],
	bench: [["tools/bench.ts"]],
	generate: [["tools/generate.ts"], ["tools/write-schemas.ts"]],
};

/** The parts of `check`, in the order in which they run. @type {Record<string, readonly string[]>} */
const CHECKS = {
	"types-pure": [TYPESCRIPT, "-p", "tsconfig.packages.json"],
	types: [TYPESCRIPT, "-p", "tsconfig.json"],
	lint: ["node_modules/@biomejs/biome/bin/biome", "ci", "--error-on-warnings"],
	arrows: ["tools/check-arrows.ts"],
	generated: ["tools/check-generated.ts"],
	sources: ["tools/check-sources.ts"],
};

const [task = "", ...args] = process.argv.slice(2);
try {
	if (task === "check" && args[0] === "--list") {
		console.log(Object.keys(CHECKS).join("\n"));
	} else if (task === "check") {
		await check(args.length > 0 ? args : Object.keys(CHECKS));
	} else if (TASKS[task] !== undefined) {
		const node = await prepare();
		for (const program of TASKS[task]) {
			const end = await runWith(node, [...program, ...args]);
			if (end.code !== 0) endAs(end);
		}
	} else {
		throw new Error(`No task "${task}": expected ${Object.keys(TASKS).join(", ")} or check [${Object.keys(CHECKS).join("|")}]`);
	}
} catch (error) {
	say(`skipwright: ${/** @type {Error} */ (error).message}`);
	process.exitCode = 1;
}

/** Checks every named part, and says at the end which failed. @param {readonly string[]} names */
async function check(names) {
	const strange = names.filter((name) => CHECKS[name] === undefined);
	if (strange.length > 0) throw new Error(`No check "${strange.join(", ")}": expected ${Object.keys(CHECKS).join(", ")}`);
	const node = await prepare();
	const failed = [];
	for (const name of names) {
		console.log(`check ${name}`);
		const { code, signal } = await runWith(node, CHECKS[name] ?? []);
		if (signal !== null) endAs({ code, signal });
		if (code !== 0) failed.push(name);
	}
	console.log(failed.length === 0 ? `checks hold: ${names.join(", ")}` : `checks failed: ${failed.join(", ")}`);
	if (failed.length > 0) process.exitCode = 1;
}

async function prepare() {
	const node = await findNode(say);
	await ensurePackages(REPOSITORY, say);
	return node;
}

/**
 * @param {string} node
 * @param {readonly string[]} program a script of the repository and its arguments
 */
function runWith(node, [script = "", ...rest]) {
	return run(node, [join(REPOSITORY, script), ...rest], { cwd: REPOSITORY });
}

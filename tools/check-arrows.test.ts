import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { checkArrows } from "./check-arrows.ts";
import { ORDER, permittedArrows } from "./order.ts";
import { impurities } from "./purity.ts";

const roots: string[] = [];
afterEach(() => {
	for (const root of roots.splice(0)) rmSync(root, { recursive: true, force: true });
});

/** A small repository without a fault: units <- rules <- directory, and an app; files given replace or add to it. */
function repository(files: Record<string, string> = {}): string {
	const root = mkdtempSync(join(tmpdir(), "arrows-"));
	roots.push(root);
	const sound: Record<string, string> = {
		"package.json": JSON.stringify({ devDependencies: { vitest: "1.0.0" } }),
		"packages/units/package.json": manifest("@skipwright/units", []),
		"packages/units/src/index.ts": 'export * from "./hz.ts";',
		"packages/units/src/hz.ts": "export const hz = 1;",
		"packages/units/src/hz.test.ts": 'import { test } from "vitest"; import { readFileSync } from "node:fs"; test(String(Date.now()));',
		"packages/rules/package.json": manifest("@skipwright/rules", ["@skipwright/units", "zod"]),
		"packages/rules/src/index.ts": 'import { hz } from "@skipwright/units"; import * as z from "zod"; export const a = [hz, z];',
		"packages/rules/src/rows.bench.ts": 'import type { Bench } from "../../../tools/bench-types.ts";',
		"packages/directory/package.json": manifest("@skipwright/directory", ["@skipwright/rules"]),
		"packages/directory/src/index.ts": 'export * from "@skipwright/rules";',
		"apps/cli/package.json": manifest("skipwright", ["@skipwright/directory"]),
		"apps/cli/src/main.ts": 'import { a } from "@skipwright/directory"; import { argv } from "node:process"; console.log(a, argv);',
	};
	for (const [path, text] of Object.entries({ ...sound, ...files })) {
		mkdirSync(join(root, dirname(path)), { recursive: true });
		writeFileSync(join(root, path), text);
	}
	return root;
}

function manifest(name: string, dependencies: readonly string[]): string {
	return JSON.stringify({ name, dependencies: Object.fromEntries(dependencies.map((one) => [one, "0.1.0"])) });
}

interface Planted {
	readonly name: string;
	readonly files: Record<string, string>;
	readonly faults: readonly string[];
}

function plant(name: string, files: Record<string, string>, ...faults: string[]): Planted {
	return { name, files, faults };
}

describe("checkArrows", () => {
	test("counts what it read where nothing is wrong", () => {
		expect(checkArrows(repository())).toEqual({ modules: 7, imports: 9, faults: [] });
	});

	const planted: readonly Planted[] = [
		plant(
			"an import that is no dependency",
			{ "packages/units/src/hz.ts": '\nimport "zod";' },
			'packages/units/src/hz.ts:2: "zod" is not among the dependencies in packages/units/package.json',
		),
		plant(
			"an arrow that no package.json allows",
			{ "packages/units/src/hz.ts": 'export type { A } from "@skipwright/rules";' },
			'packages/units/src/hz.ts:1: "@skipwright/rules" is not among the dependencies in packages/units/package.json',
		),
		plant(
			"a test's import that is no dependency",
			{ "packages/units/src/hz.test.ts": 'import "@skipwright/directory";' },
			'packages/units/src/hz.test.ts:1: "@skipwright/directory" is not among the dependencies in packages/units/package.json',
		),
		plant(
			"a dependency of tests in the product",
			{ "packages/units/src/hz.ts": 'import "vitest";' },
			'packages/units/src/hz.ts:1: "vitest" is not among the dependencies in packages/units/package.json',
		),
		plant(
			"a dependency that only a test imports",
			{ "packages/rules/src/index.ts": 'import "@skipwright/units";', "packages/rules/src/a.test.ts": 'import "zod";' },
			"packages/rules: depends on zod, but only a test imports it",
		),
		plant(
			"a dependency against the order",
			{
				"packages/rules/package.json": manifest("@skipwright/rules", ["@skipwright/sphere"]),
				"packages/rules/src/index.ts": 'import "@skipwright/sphere";',
			},
			"packages/rules: depends on @skipwright/sphere, against the order of the parts",
		),
		plant(
			"a cycle",
			{
				"packages/units/package.json": manifest("@skipwright/units", ["@skipwright/directory"]),
				"packages/units/src/hz.ts": 'import "@skipwright/directory";',
			},
			"cycle: @skipwright/directory -> @skipwright/rules -> @skipwright/units -> @skipwright/directory",
			"packages/units: depends on @skipwright/directory, against the order of the parts",
		),
		plant(
			"a package without a place in the order",
			{ "packages/utils/package.json": manifest("@skipwright/utils", []), "packages/utils/src/index.ts": "" },
			'packages/utils: "utils" has no place in tools/order.ts',
		),
		plant(
			"a reach inside a package",
			{ "apps/cli/src/a.ts": 'const a = await import("@skipwright/directory/src/index.ts");' },
			'apps/cli/src/a.ts:1: "@skipwright/directory/src/index.ts" reaches inside a package',
		),
		plant(
			"a relative import that leaves the package",
			{ "packages/rules/src/a.ts": 'import "../../units/src/hz.ts";' },
			'packages/rules/src/a.ts:1: "../../units/src/hz.ts" leaves packages/rules',
		),
		plant(
			"a measure in the product",
			{ "packages/rules/src/a.ts": 'import "../../../tools/measure.ts";' },
			'packages/rules/src/a.ts:1: "../../../tools/measure.ts" leaves packages/rules',
		),
		plant(
			"a table of tests in the product",
			{ "packages/rules/src/a.ts": 'import "../truth/rows.ts";' },
			'packages/rules/src/a.ts:1: "../truth/rows.ts" is for tests alone',
		),
		plant("a computed import", { "apps/cli/src/a.ts": "await import(name);" }, "apps/cli/src/a.ts:1: imports a computed name"),
		plant(
			"node in a pure package",
			{ "packages/rules/src/a.ts": 'import { readFileSync } from "node:fs";' },
			'packages/rules/src/a.ts:1: "node:fs" in a pure package',
		),
		plant(
			"the clock in a pure package",
			{ "packages/rules/src/a.ts": "export const a = () =>\n\tDate.now();" },
			'packages/rules/src/a.ts:2: "Date.now" reads the clock: take the time as an argument',
		),
		plant(
			"a package without a module",
			{ "packages/sphere/package.json": manifest("@skipwright/sphere", []) },
			"packages/sphere: no module was read",
		),
	];
	test.each(planted)("finds $name, and nothing else", ({ files, faults }) => {
		expect([...checkArrows(repository(files)).faults].sort()).toEqual(faults);
	});

	test("an empty repository is a fault", () => {
		const root = mkdtempSync(join(tmpdir(), "arrows-"));
		roots.push(root);
		writeFileSync(join(root, "package.json"), "{}");
		expect(checkArrows(root)).toEqual({ modules: 0, imports: 0, faults: ["no module was read"] });
	});
});

describe("the order", () => {
	test("reads each arrow to the left, however far", () => {
		const arrows = permittedArrows(ORDER);
		expect([...(arrows.get("set") ?? [])].sort()).toEqual(["directory", "rules", "sphere", "units"]);
		expect([...(arrows.get("sky") ?? [])].sort()).toEqual(["sphere", "units"]);
		expect(arrows.get("units")?.size).toBe(0);
		expect(arrows.get("planner")?.has("sky")).toBe(false); // it receives reach as an argument
		expect([...arrows].filter(([name, targets]) => targets.has(name))).toEqual([]);
		expect(arrows.size).toBe(13);
	});

	test("is drawn in ARCHITECTURE.md as it is checked", () => {
		const page = readFileSync(join(import.meta.dirname, "..", "ARCHITECTURE.md"), "utf8");
		for (const line of ORDER) expect(page).toContain(line);
	});
});

describe("impurities", () => {
	const impure: readonly (readonly [string, string])[] = [
		["units", "new Date()"],
		["units", "new Date"],
		["units", "const a = Date();"],
		["units", "const clock = Date.now;"],
		["units", "Math.random()"],
		["units", "process.env"],
		["units", "console.log(1)"],
		["units", "globalThis.process"],
		["units", "const { now } = Date;"],
		["units", "const { random } = Math;"],
		["units", "date.getHours()"],
		["units", "a.localeCompare(b)"],
		["units", "rate.toLocaleString()"],
		["units", "new Intl.Collator()"],
		["sphere", "Math.sin(1)"],
		["sky", "Math.hypot(1, 2)"],
		["planner", "Math.pow(2, 3)"],
		["modem", "Math . exp(1)"],
		["sphere", 'Math["sin"](1)'],
		["sphere", "[1].map(Math.cbrt)"],
		["sphere", "x ** 2"],
		["sphere", "x **= 2"],
		["sphere", "`${Math.log10(x)}`"],
	];
	test.each(impure)("%s: %s", (name, source) => {
		expect(impurities(name, source).length).toBe(1);
	});

	const pure: readonly (readonly [string, string])[] = [
		["units", "new Date(ms)"],
		["units", 'new Date("2027-02-01T00:00:00Z")'],
		["units", "Date.UTC(2027, 1, 1); date.getUTCHours(); type When = Date;"],
		["units", "function process(row: Row) {} process(row); steps.process.name"],
		["units", "Math.sin(1) + 2 ** 0.5"],
		["sphere", "Math.sqrt(Math.abs(x)) + Math.PI - Math.floor(Math.max(1, 2))"],
		["sphere", "/* Math.sin(x) ** 2 */ sin(x) // Date.now()"],
		["sphere", 'throw new RangeError("Math.sin ** 2")'],
		["sphere", "myMath.sin(x); my.Math.sin(x)"],
	];
	test.each(pure)("%s: %s is fine", (name, source) => {
		expect(impurities(name, source)).toEqual([]);
	});
});

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { checkSources, linksIn } from "./check-sources.ts";

const roots: string[] = [];
afterEach(() => {
	for (const root of roots.splice(0)) rmSync(root, { recursive: true, force: true });
});

function repository(files: Record<string, string> = {}): string {
	const root = mkdtempSync(join(tmpdir(), "sources-"));
	roots.push(root);
	const sound: Record<string, string> = {
		"README.md": "# It\nSee [the page](ARCHITECTURE.md#where-things-go) and [it](#it), [ITU](https://www.itu.int/no/where), `tools/a.ts`.",
		"ARCHITECTURE.md": "## Where things go?\n```\n[not](a-link.md)\n``` \n",
		"packages/rules/data/mid.csv": "mid\n",
		"packages/rules/data/SOURCES.md": "| file | publisher |\n| --- | --- |\n| mid.csv | ITU |\n",
		"packages/rules/truth/deep/a.csv": "a\n",
		"packages/rules/truth/SOURCES.md": "deep/a.csv: ITU\n",
		"packages/rules/truth/readTruth.ts": "",
		"tools/a.ts": "export const url = 'https://example.org/work/';",
		"node_modules/x/data/a.csv": "not ours",
	};
	for (const [path, text] of Object.entries({ ...sound, ...files })) {
		mkdirSync(join(root, dirname(path)), { recursive: true });
		writeFileSync(join(root, path), text);
	}
	return root;
}

/** Put together here, so that this file does not hold what it looks for. */
const MACHINE = ["", "work", "main"].join("/");
const OUTSIDE = ["..", "shared", "facts"].join("/");
const REGISTRY = ["registry", "npmjs", "org"].join(".");

describe("checkSources", () => {
	test("counts what it read where nothing is wrong", () => {
		expect(checkSources(repository())).toEqual({ files: 8, tables: 2, links: 3, faults: [] });
	});

	const planted: readonly (readonly [string, Record<string, string>, string])[] = [
		[
			"an unlisted table",
			{ "packages/rules/data/id.csv": "" },
			"packages/rules/data/id.csv: is not named in packages/rules/data/SOURCES.md",
		],
		["a folder without sources", { "apps/a/truth/b.csv": "" }, "apps/a/truth/b.csv: there is no apps/a/truth/SOURCES.md to name it"],
		[
			"an entry that says nothing",
			{ "packages/rules/data/SOURCES.md": "| mid.csv | Unknown |" },
			'packages/rules/data/SOURCES.md:1: "Unknown" is not an entry',
		],
		["an empty cell", { "packages/rules/data/SOURCES.md": "| mid.csv |  |" }, 'packages/rules/data/SOURCES.md:1: "" is not an entry'],
		["a dead link", { "docs/a.md": "[b](b.md)" }, 'docs/a.md: "b.md" leads nowhere'],
		["a dead heading", { "docs/a.md": "[b](../README.md#that)" }, 'docs/a.md: "../README.md#that" names no heading of that document'],
		["a dead path", { "docs/a.md": "see `tools/b.ts`" }, 'docs/a.md: "/tools/b.ts" leads nowhere'],
		["a machine's path", { "tools/b.ts": `\nopen("${MACHINE}")` }, 'tools/b.ts:2: "/w'],
		["a registry", { "package-lock.json": REGISTRY }, 'package-lock.json:1: "registry'],
		["a folder outside", { "tools/b.test.ts": OUTSIDE }, 'tools/b.test.ts:1: "..'],
	];
	test.each(planted)("finds %s, and nothing else", (_, files, fault) => {
		const { faults } = checkSources(repository(files));
		expect(faults.length).toBe(1);
		expect(faults[0]).toContain(fault);
	});

	test("lets a test that is skipped without it name a folder outside", () => {
		const { faults } = checkSources(repository({ "tools/b.test.ts": `test.skipIf(!existsSync("${OUTSIDE}"))` }));
		expect(faults).toEqual([]);
	});
});

test("linksIn leaves code and other sites alone", () => {
	expect(linksIn("[a](b.md) `[c](d.md)` ![e](f.png)\n```\n[g](h)\n```\n[i](mailto:j) `packages/*/data` `docs/k.md`")).toEqual([
		"b.md",
		"f.png",
		"/docs/k.md",
	]);
});

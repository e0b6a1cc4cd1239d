import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";

const ROOT = join(import.meta.dirname, "..");

test("README's own list of ten channels passes the check that README tells to run", () => {
	const readme = readFileSync(join(ROOT, "README.md"), "utf8");
	const list = /^ *```csv\n([^`]*)```/m.exec(readme)?.[1]?.replace(/^ +/gm, "") ?? "";
	expect(list.trim().split("\n").length).toBe(11);
	const folder = mkdtempSync(join(tmpdir(), "readme-"));
	try {
		writeFileSync(join(folder, "mine.csv"), list);
		const args = ["check", "mine.csv", "--set", "twin-180", "--on", "2026-11-24", "--json"];
		const launcher = join(ROOT, "apps/cli/bin/skipwright.js");
		const { stdout, status } = spawnSync(process.execPath, [launcher, ...args], { cwd: folder, encoding: "utf8" });
		const { findings } = JSON.parse(stdout);
		expect(findings.filter(({ severity }: { severity: string }) => severity !== "mind")).toEqual([]);
		expect(status).toBe(0);
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
});

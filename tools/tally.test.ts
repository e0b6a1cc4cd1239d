import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { expect, test } from "vitest";
import { tally } from "./tally.mjs";

const passing = { status: "passed", assertionResults: [{ status: "passed" }] };
const failing = { status: "failed", assertionResults: [{ status: "passed" }, { status: "failed" }] };
const unloadable = { status: "failed", assertionResults: [] };

test("counts the runner's own numbers", () => {
	expect(tally({ numPassedTests: 5, numFailedTests: 0, testResults: [passing] }, 0)).toEqual([5, 0]);
	expect(tally({ numPassedTests: 5, numFailedTests: 2, testResults: [passing, failing] }, 1)).toEqual([5, 2]);
});

test("counts what went wrong without a failed test", () => {
	expect(tally({ numPassedTests: 5, numFailedTests: 2, testResults: [failing, unloadable] }, 1)).toEqual([5, 3]);
	expect(tally({ numPassedTests: 5, numFailedTests: 0, testResults: [passing] }, 1)).toEqual([5, 1]); // an error outside the tests
	expect(tally({ numPassedTests: 0, numFailedTests: 0, testResults: [] }, 0)).toEqual([0, 1]);
	expect(tally(null, 0)).toEqual([0, 1]);
});

test("prints them", () => {
	const missing = join(import.meta.dirname, "no-such-report.json");
	const { stdout } = spawnSync(process.execPath, [join(import.meta.dirname, "tally.mjs"), missing, "0"], { encoding: "utf8" });
	expect(stdout).toBe("0 1\n");
});

/**
 * Prints "PASSED FAILED" of a test run, from the runner's JSON report and its exit code: `node tools/tally.mjs REPORT CODE`.
 * What the report does not count as a failed test, yet went wrong, counts as one: a file that cannot be loaded, a run that ended
 * with an error, a report that is not there, a run of nothing.
 */
import { existsSync, readFileSync, realpathSync } from "node:fs";
import { fileURLToPath } from "node:url";

/**
 * @typedef {{ numPassedTests: number, numFailedTests: number, testResults: { status: string, assertionResults: { status: string }[] }[] }} Report
 * @param {Report | null} report
 * @param {number} exitCode
 * @returns {[number, number]} passed, failed
 */
export function tally(report, exitCode) {
	if (report === null) return [0, 1];
	const failsAlone = (/** @type {Report["testResults"][number]} */ file) =>
		file.status === "failed" && !file.assertionResults.some((result) => result.status === "failed");
	const failed = report.numFailedTests + report.testResults.filter(failsAlone).length;
	const wrong = exitCode !== 0 || report.numPassedTests === 0;
	return [report.numPassedTests, failed === 0 && wrong ? 1 : failed];
}

/** @param {string} file @returns {Report | null} */
function readReport(file) {
	if (!existsSync(file)) return null;
	try {
		return JSON.parse(readFileSync(file, "utf8"));
	} catch {
		return null; // cut short
	}
}

const [, script = "", file = "", code = ""] = process.argv;
if (fileURLToPath(import.meta.url) === realpathSync(script)) console.log(tally(readReport(file), Number(code)).join(" "));

/**
 * Finds the browser that tests run in, or brings it: on Debian, as root, from its own archive. Says where it is, or why not and ends
 * with 1; with --find it only looks. Plain JavaScript, like runtime.mjs.
 */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

const NAMES = ["chromium", "chromium-browser"];
/** ms. Enough for a slow archive; after that tests go on without. */
const LONGEST_MS = 300_000;

/** Its path, by the variable CHROMIUM or the PATH; null when there is none. */
function findChromium() {
	const given = process.env["CHROMIUM"];
	if (given !== undefined && existsSync(given)) return given;
	const folders = (process.env["PATH"] ?? "").split(delimiter);
	return folders.flatMap((folder) => NAMES.map((name) => join(folder, name))).find((path) => existsSync(path)) ?? null;
}

/**
 * Finds it, else installs it where that is possible without asking anybody.
 * @param {boolean} mayInstall
 * @param {(line: string) => void} say takes progress lines
 * @returns {{ path: string, why: null } | { path: null, why: string }} where it is, or why it is not
 */
function ensureChromium(mayInstall, say) {
	const there = findChromium();
	if (there !== null) return { path: there, why: null };
	if (!mayInstall) return { path: null, why: "not here; tools/ensure-chromium.mjs brings it" };
	if (process.platform !== "linux" || !existsSync("/etc/debian_version"))
		return { path: null, why: "no Chromium here; set CHROMIUM to one" };
	if (process.getuid?.() !== 0) return { path: null, why: "no Chromium here; apt-get install chromium brings it" };
	say("Installing Chromium for the tests (apt-get) ...");
	for (const args of [["update"], ["install", "-y", "--no-install-recommends", "chromium"]]) {
		const { status, stderr } = spawnSync("apt-get", args, {
			encoding: "utf8",
			timeout: LONGEST_MS,
			env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
		});
		if (status !== 0) return { path: null, why: `apt-get ${args[0]} failed: ${(stderr ?? "").trim().split("\n").at(-1)}` };
	}
	const brought = findChromium();
	return brought === null ? { path: null, why: "apt-get brought no Chromium" } : { path: brought, why: null };
}

const { path, why } = ensureChromium(!process.argv.includes("--find"), (line) => console.error(line));
console.log(path ?? why);
process.exitCode = path === null ? 1 : 0;

/** Brings the packages of package-lock.json, when they are missing or out of date. Plain JavaScript, like runtime.mjs. */
import { createHash } from "node:crypto";
import { existsSync, linkSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { runNpm } from "../apps/cli/bin/runtime.mjs";

const POLL_MS = 250;

/**
 * @param {string} root
 * @param {(line: string) => void} say
 */
export async function ensurePackages(root, say) {
	if (packagesAreCurrent(root)) return;
	await alone(join(root, ".node", "installing"), say, async () => {
		if (packagesAreCurrent(root)) return; // another run was first
		say("Installing packages (npm ci) ...");
		await runNpm(["ci", "--include=dev", "--include=optional"], root, say).catch((error) => {
			throw new Error(`installing the packages failed. It takes a network, once.\n${error.message}`);
		});
		recordHash(root);
		say("Packages are installed.");
	});
}

/**
 * True when what is installed is what the lock file names: by the hash recorded after the last installation, else by npm's own
 * record of what it put there (after an installation by hand).
 * @param {string} root
 */
export function packagesAreCurrent(root) {
	const recorded = join(root, "node_modules", ".lock-hash");
	if (existsSync(recorded) && readFileSync(recorded, "utf8") === lockHash(root)) return true;
	const installed = join(root, "node_modules", ".package-lock.json");
	if (!existsSync(installed) || !sameEntries(packagesIn(join(root, "package-lock.json")), packagesIn(installed))) return false;
	recordHash(root);
	return true;
}

/**
 * @typedef {{ version?: string, integrity?: string, resolved?: string, link?: boolean, optional?: boolean, devOptional?: boolean }} Entry
 * @param {Record<string, Entry>} wanted
 * @param {Record<string, Entry>} found
 */
function sameEntries(wanted, found) {
	const paths = Object.keys(wanted).filter((path) => path !== "");
	const extra = Object.keys(found).some((path) => wanted[path] === undefined);
	return !extra && paths.length > 0 && paths.every((path) => sameEntry(wanted[path], found[path]));
}

/**
 * @param {Entry | undefined} wanted
 * @param {Entry | undefined} found
 */
function sameEntry(wanted, found) {
	if (found === undefined) return wanted?.optional === true || wanted?.devOptional === true; // other platforms' packages
	return wanted?.version === found.version && wanted?.integrity === found.integrity && wanted?.link === found.link;
}

/** @param {string} file @returns {Record<string, Entry>} */
function packagesIn(file) {
	return JSON.parse(readFileSync(file, "utf8")).packages ?? {};
}

/** @param {string} root */
function lockHash(root) {
	return createHash("sha256")
		.update(readFileSync(join(root, "package-lock.json")))
		.digest("hex");
}

/** @param {string} root */
function recordHash(root) {
	writeFileSync(join(root, "node_modules", ".lock-hash"), lockHash(root));
}

/**
 * Runs `work` while no other process on this machine does so under the same lock; a lock whose owner is gone is taken over.
 * @param {string} lock a file that exists, with its owner's process id in it, while someone works
 * @param {(line: string) => void} say
 * @param {() => Promise<void>} work
 */
export async function alone(lock, say, work) {
	mkdirSync(dirname(lock), { recursive: true });
	let waiting = false;
	while (!take(lock)) {
		const owner = ownerOf(lock);
		if (owner === null) continue; // just given back
		if (!isAlive(owner)) {
			rmSync(lock, { force: true });
			continue;
		}
		if (!waiting) say(`Waiting for another run that is installing (process ${owner}) ...`);
		waiting = true;
		await sleep(POLL_MS);
	}
	try {
		await work();
	} finally {
		rmSync(lock, { force: true });
	}
}

/** @param {string} lock */
function take(lock) {
	const mine = `${lock}-${process.pid}`;
	writeFileSync(mine, String(process.pid));
	try {
		linkSync(mine, lock); // atomic, and the owner is in it from the first moment
		return true;
	} catch (error) {
		if (codeOf(error) === "EEXIST") return false;
		throw error;
	} finally {
		rmSync(mine, { force: true });
	}
}

/** @param {string} lock */
function ownerOf(lock) {
	try {
		return Number(readFileSync(lock, "utf8"));
	} catch (error) {
		if (codeOf(error) === "ENOENT") return null;
		throw error;
	}
}

/** @param {number} pid */
function isAlive(pid) {
	try {
		process.kill(pid, 0);
		return true;
	} catch (error) {
		return codeOf(error) !== "ESRCH";
	}
}

/** @param {unknown} error */
function codeOf(error) {
	return /** @type {NodeJS.ErrnoException} */ (error).code;
}

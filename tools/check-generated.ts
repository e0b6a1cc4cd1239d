/** Checks that what is generated is in step: every data.gen.ts is what tools/generate.ts writes from the data beside it. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { generatedPath, generatedSource, packagesWithData } from "./generate.ts";

/** The text on disk against the text that a rerun gives; null where there is none. */
export function faultOfGenerated(packageName: string, onDisk: string | null, rerun: string | null): string | null {
	if (onDisk === rerun) return null;
	const file = `packages/${packageName}/src/data.gen.ts`;
	if (rerun === null) return `${file}: is left over, there is no data/ beside it`;
	return onDisk === null ? `${file}: is missing, run npm run generate` : `${file}: differs from its data, run npm run generate`;
}

if (import.meta.main) {
	const packages = readdirSync(join(import.meta.dirname, "..", "packages"));
	const faults = packages.flatMap((name) => {
		const path = generatedPath(name);
		return faultOfGenerated(name, existsSync(path) ? readFileSync(path, "utf8") : null, generatedSource(name)) ?? [];
	});
	if (packagesWithData().length === 0) faults.push("no package with data was found");
	for (const fault of faults) console.error(fault);
	console.log(`generated: ${packagesWithData().length} packages with data, ${faults.length} faults`);
	if (faults.length > 0) process.exitCode = 1;
}

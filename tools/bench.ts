/** Runs every `*.bench.ts` beside the sources, or those whose name holds the argument, and prints a table with the spread. */
import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Bench, BenchResult } from "./bench-types.ts";

const HEAD = ["benchmark", "work", "median", "spread", "rate", "floor", "floor median", "ratio", "ratio spread"];

/** A table row: the ratio is of medians, its spread that of each run against the floor's run beside it. */
export function benchRow(name: string, result: BenchResult): readonly string[] {
	const { what, floor, count, unit, seconds, floorSeconds } = result;
	if (seconds.length === 0 || seconds.length !== floorSeconds.length) {
		throw new RangeError(`Cannot compare ${seconds.length} runs of "${what}" with ${floorSeconds.length} of its floor: expected as many`);
	}
	const ratios = seconds.map((one, i) => one / (floorSeconds[i] ?? Number.NaN));
	return [
		name,
		what,
		milliseconds(median(seconds)),
		spread(seconds, milliseconds),
		`${Math.round(count / median(seconds)).toLocaleString("en")} ${unit}/s`,
		floor,
		milliseconds(median(floorSeconds)),
		times(median(seconds) / median(floorSeconds)),
		spread(ratios, times),
	];
}

/** Rows under a head, in columns as wide as their widest cell. */
export function table(rows: readonly (readonly string[])[]): string {
	const all = [HEAD, HEAD.map((cell) => "-".repeat(cell.length)), ...rows];
	const widths = HEAD.map((_, column) => Math.max(...all.map((row) => (row[column] ?? "").length)));
	return all
		.map((row) =>
			row
				.map((cell, column) => cell.padEnd(widths[column] ?? 0))
				.join("  ")
				.trimEnd(),
		)
		.join("\n");
}

function median(values: readonly number[]): number {
	const sorted = values.toSorted((a, b) => a - b);
	const middle = Math.floor(sorted.length / 2);
	const upper = sorted[middle] ?? Number.NaN;
	return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? Number.NaN) + upper) / 2;
}

function spread(values: readonly number[], show: (value: number) => string): string {
	return `${show(Math.min(...values))} to ${show(Math.max(...values))}`;
}

function milliseconds(seconds: number): string {
	return `${(seconds * 1_000).toPrecision(3)} ms`;
}

function times(ratio: number): string {
	return `${ratio.toPrecision(3)} x`;
}

function benchFiles(root: string): readonly string[] {
	return ["packages", "apps"]
		.flatMap((kind) => readdirSync(join(root, kind)).map((folder) => join(root, kind, folder, "src")))
		.filter((folder) => existsSync(folder))
		.flatMap((folder) => readdirSync(folder, { recursive: true, encoding: "utf8" }).map((file) => join(folder, file)))
		.filter((file) => file.endsWith(".bench.ts"))
		.sort();
}

if (import.meta.main) {
	const wanted = process.argv[2] ?? "";
	const rows: (readonly string[])[] = [];
	for (const file of benchFiles(join(import.meta.dirname, ".."))) {
		const { bench }: { bench: Bench } = await import(pathToFileURL(file).href);
		if (!bench.name.includes(wanted)) continue;
		console.error(`running ${bench.name} ...`);
		for (const result of await bench.run()) rows.push(benchRow(bench.name, result));
	}
	if (rows.length === 0) {
		console.error(wanted === "" ? "no benchmark was found" : `no benchmark has "${wanted}" in its name`);
		process.exitCode = 1;
	} else {
		console.log(`Node ${process.versions.node}, ${process.platform} ${process.arch}\n\n${table(rows)}`);
	}
}

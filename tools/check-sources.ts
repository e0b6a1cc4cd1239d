/**
 * Checks what the repository says about itself: every table in data/ and truth/ is named with its source, the documents' links and
 * paths lead somewhere, and no file speaks of the machine it was made on.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";

const NOT_OURS: ReadonlySet<string> = new Set(["node_modules", ".node", ".git", "out", "coverage"]);

/** Places of one machine, which mean nothing to a reader elsewhere. */
const MACHINE_PATHS = [/(?<![\w.])\/work\//, /(?<![\w.])\/root\//, /registry\.npmjs/];
/** A folder outside the repository: only a test that is skipped without it may name it. */
const OUTSIDE = /\.\.\/shared\b/;

export interface SourcesReport {
	readonly files: number;
	readonly tables: number;
	readonly links: number;
	readonly faults: readonly string[];
}

export function checkSources(root: string): SourcesReport {
	const files = filesUnder(root, "");
	const tables = files.filter((file) => /(?:^|\/)(?:data|truth)\//.test(file) && !/\/SOURCES\.md$|\.ts$/.test(file)); // readers are code
	const documents = files.filter((file) => file.endsWith(".md"));
	const faults = [...tables.flatMap((file) => faultsOfTable(root, file)), ...documents.flatMap((file) => faultsOfEntries(root, file))];
	let links = 0;
	for (const file of documents) {
		const targets = linksIn(readFileSync(join(root, file), "utf8"));
		links += targets.length;
		faults.push(...targets.flatMap((target) => faultOfLink(root, file, target) ?? []));
	}
	faults.push(...files.flatMap((file) => faultsOfText(root, file)));
	return { files: files.length, tables: tables.length, links, faults };
}

/** Every file of the repository, relative to its root, in order. */
function filesUnder(root: string, folder: string): readonly string[] {
	return readdirSync(join(root, folder), { withFileTypes: true })
		.filter((entry) => !NOT_OURS.has(entry.name))
		.sort((a, b) => (a.name < b.name ? -1 : 1))
		.flatMap((entry) => (entry.isDirectory() ? filesUnder(root, `${folder}${entry.name}/`) : entry.isFile() ? [folder + entry.name] : []));
}

function faultsOfTable(root: string, file: string): readonly string[] {
	const [, folder = "", name = ""] = /^(.*?(?:data|truth))\/(.*)$/.exec(file) ?? [];
	const sources = join(root, folder, "SOURCES.md");
	if (!existsSync(sources)) return [`${file}: there is no ${folder}/SOURCES.md to name it`];
	const named = new RegExp(`(?<![\\w.-])${name.replace(/[^\w]/g, "\\$&")}(?![\\w-])`).test(readFileSync(sources, "utf8"));
	return named ? [] : [`${file}: is not named in ${folder}/SOURCES.md`];
}

/** Cells of a SOURCES.md that say nothing. */
function faultsOfEntries(root: string, file: string): readonly string[] {
	if (!/(?:^|\/)SOURCES\.md$/.test(file)) return [];
	const lines = readFileSync(join(root, file), "utf8").split("\n");
	return lines.flatMap((line, i) => {
		const cells = /^\s*\|(.*)\|\s*$/.exec(line)?.[1]?.split("|") ?? [];
		const empty = cells.filter((cell) => /^\s*(?:unknown|\?|tbd|todo)?\s*$/i.test(cell));
		return empty.map((cell) => `${file}:${i + 1}: "${cell.trim()}" is not an entry`);
	});
}

/** Targets of a document's links, and the paths of the repository that it names in backquotes; other sites are left alone. */
export function linksIn(markdown: string): readonly string[] {
	const prose = markdown.replace(/^```[\s\S]*?^```/gm, "");
	const links = [...prose.replace(/`[^`\n]*`/g, "").matchAll(/\]\(([^)\s]+)\)/g)].map((match) => match[1] ?? "");
	const paths = [...prose.matchAll(/`((?:packages|apps|tools|examples|docs|\.ci)\/[\w./-]+)`/g)].map((match) => `/${match[1]}`);
	return [...links.filter((link) => !/^[a-z]+:/i.test(link)), ...paths];
}

/** @param target relative to the document, or from the root where it starts with a slash; maybe with `#heading` */
function faultOfLink(root: string, file: string, target: string): string | null {
	const [path = "", heading] = target.split("#");
	const found = path === "" ? join(root, file) : path.startsWith("/") ? join(root, path) : join(root, dirname(file), path);
	if (!existsSync(found)) return `${file}: "${target}" leads nowhere`;
	if (heading === undefined || headingsOf(readFileSync(found, "utf8")).includes(heading)) return null;
	return `${file}: "${target}" names no heading of that document`;
}

/** Headings as they are written behind `#` in a link. */
function headingsOf(markdown: string): readonly string[] {
	return [...markdown.matchAll(/^#+\s+(.*)$/gm)].map((match) =>
		(match[1] ?? "")
			.toLowerCase()
			.replace(/[^\p{L}\p{N}\s_-]/gu, "")
			.trim()
			.replace(/\s/g, "-"),
	);
}

function faultsOfText(root: string, file: string): readonly string[] {
	const text = readFileSync(join(root, file), "utf8");
	if (text.includes("\0")) return []; // not text
	const skipsWithout = file.endsWith(".test.ts") && text.includes("skipIf");
	const banned = skipsWithout ? MACHINE_PATHS : [...MACHINE_PATHS, OUTSIDE];
	return text.split("\n").flatMap((line, i) => {
		const found = banned.map((pattern) => pattern.exec(line)?.[0]).find((match) => match !== undefined);
		return found === undefined ? [] : [`${file}:${i + 1}: "${found}" is a place on one machine`];
	});
}

if (import.meta.main) {
	const { files, tables, links, faults } = checkSources(join(import.meta.dirname, ".."));
	if (files === 0 || tables === 0 || links === 0) console.error("nothing was read");
	for (const fault of faults) console.error(fault);
	console.log(`sources: ${files} files, ${tables} tables, ${links} links, ${faults.length} faults`);
	if (faults.length > 0 || files === 0 || tables === 0 || links === 0) process.exitCode = 1;
}

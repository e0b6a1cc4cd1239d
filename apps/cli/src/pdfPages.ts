import { inflateSync } from "node:zlib";

export interface PdfPages {
	/** Text of each page in the order in which it is drawn, words apart by spaces. */
	readonly pages: readonly string[];
	/** The same, run by run with the point where it begins. */
	readonly runs: readonly (readonly PdfRun[])[];
	/** Names of the embedded faces, without the subset's prefix. */
	readonly fonts: readonly string[];
}

export interface PdfRun {
	readonly text: string;
	/** Points (1/72 inch) from the left edge of the page. */
	readonly x: number;
	/** Points from the lower edge of the page to the line of writing. */
	readonly y: number;
}

/**
 * Reads back what `compilePdf` wrote, for its tests: the text of each page and the faces used. Only for files of that
 * compiler (no object streams, text as two-byte codes with a ToUnicode map); not a reader of PDFs in general.
 * @throws SyntaxError for anything else
 */
export function pdfPages(pdf: Uint8Array): PdfPages {
	const objects = objectsOf(Buffer.from(pdf).toString("latin1"));
	const pageIds = kidsOf(objects, catalogPages(objects));
	const fonts = new Set(
		[...objects.values()].flatMap((body) => /\/BaseFont \/(?:[A-Z]{6}\+)?(\S+)/.exec(body)?.[1]?.replace("-Identity-H", "") ?? []),
	);
	const runs = pageIds.map((id) => pageRuns(objects, id));
	const pages = runs.map((page) =>
		page
			.map(({ text }) => text)
			.join(" ")
			.replace(/\s+/g, " "),
	);
	return { pages, runs, fonts: [...fonts].sort() };
}

type Objects = ReadonlyMap<string, string>;

function objectsOf(text: string): Objects {
	return new Map([...text.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)].map(([, id = "", body = ""]) => [id, body]));
}

function objectAt(objects: Objects, id: string | undefined): string {
	const body = objects.get(id ?? "");
	if (body === undefined) throw new SyntaxError(`expected object ${id} in the PDF`);
	return body;
}

function reference(body: string, key: string): string {
	const id = new RegExp(`/${key} \\[?(\\d+) 0 R`).exec(body)?.[1];
	if (id === undefined) throw new SyntaxError(`expected a reference ${key} in ${body.slice(0, 200)}`);
	return id;
}

function catalogPages(objects: Objects): string {
	const catalog = [...objects.values()].find((body) => body.includes("/Type /Catalog"));
	return reference(catalog ?? "", "Pages");
}

function kidsOf(objects: Objects, id: string): readonly string[] {
	const body = objectAt(objects, id);
	const kids = /\/Kids \[([^\]]*)\]/.exec(body)?.[1];
	return kids === undefined ? [id] : [...kids.matchAll(/(\d+) 0 R/g)].flatMap(([, kid = ""]) => kidsOf(objects, kid));
}

function streamOf(objects: Objects, id: string): string {
	const body = objectAt(objects, id);
	const raw = /stream\n([\s\S]*)\nendstream$/.exec(body)?.[1];
	if (raw === undefined) throw new SyntaxError(`expected a stream in object ${id}`);
	return body.includes("/FlateDecode") ? inflateSync(Buffer.from(raw, "latin1")).toString("latin1") : raw;
}

function pageRuns(objects: Objects, id: string): readonly PdfRun[] {
	const page = objectAt(objects, id);
	const fonts = new Map<string, ReadonlyMap<string, string>>();
	for (const [, name = "", font = ""] of page.matchAll(/\/(f\d+) (\d+) 0 R/g)) {
		fonts.set(name, charactersOf(streamOf(objects, reference(objectAt(objects, font), "ToUnicode"))));
	}
	const runs: PdfRun[] = [];
	let characters: ReadonlyMap<string, string> = new Map();
	let text = "";
	let at: readonly number[] = [1, 0, 0, 1, 0, 0];
	const saved: (readonly number[])[] = [];
	for (const token of tokensOf(streamOf(objects, reference(page, "Contents")))) {
		if (token === "q") saved.push(at);
		else if (token === "Q") at = saved.pop() ?? at;
		else if (token.endsWith(" cm")) at = moved(at, token.split(" ").slice(0, 6).map(Number));
		else if (token.endsWith(" Tf")) characters = fonts.get(token.split(" ")[0]?.slice(1) ?? "") ?? new Map();
		else if (token === "ET") {
			runs.push({ text, x: at[4] ?? 0, y: at[5] ?? 0 });
			text = "";
		} else for (const code of codesOf(token)) text += characters.get(code) ?? "\ufffd";
	}
	return runs;
}

/** A change of co-ordinates within another: both are the six numbers of PDF's `cm`. */
function moved([a = 1, b = 0, c = 0, d = 1, e = 0, f = 0]: readonly number[], inner: readonly number[]): readonly number[] {
	const [p = 1, q = 0, r = 0, s = 1, t = 0, u = 0] = inner;
	return [p * a + q * c, p * b + q * d, r * a + s * c, r * b + s * d, t * a + u * c + e, t * b + u * d + f];
}

/** Changes of face and place, strings that are drawn and ends of text, in order. */
function tokensOf(content: string): readonly string[] {
	const tokens: string[] = [];
	// marks for screen readers carry strings too, which are not drawn
	const pattern = /<<[^<>]*>> BDC|\/f\d+ [\d.]+ Tf|(?:-?[\d.]+ ){6}cm|<[0-9A-Fa-f]+>|\(|\b(?:ET|q|Q)\b/g;
	for (let match = pattern.exec(content); match !== null; match = pattern.exec(content)) {
		if (match[0].startsWith("<<")) continue;
		if (match[0] === "(") pattern.lastIndex = stringEnd(content, match.index);
		tokens.push(content.slice(match.index, pattern.lastIndex));
	}
	return tokens;
}

/** Behind the bracket that closes a string; pairs of brackets inside it need no backslash. */
function stringEnd(content: string, start: number): number {
	let depth = 0;
	for (let i = start; i < content.length; i++) {
		if (content[i] === "\\") i++;
		else if (content[i] === "(") depth++;
		else if (content[i] === ")" && --depth === 0) return i + 1;
	}
	throw new SyntaxError("expected the end of a string in the page's content");
}

const ESCAPES: Readonly<Record<string, string>> = { n: "\n", r: "\r", t: "\t", b: "\b", f: "\f" };

/** The two-byte codes of a string of the PDF, in hexadecimal. */
function codesOf(token: string): readonly string[] {
	const hex = token.startsWith("<")
		? token.slice(1, -1)
		: Buffer.from(
				token
					.slice(1, -1)
					.replace(/\\([0-7]{1,3}|[\s\S])/g, (_, escaped: string) =>
						/^[0-7]/.test(escaped) ? String.fromCharCode(Number.parseInt(escaped, 8)) : (ESCAPES[escaped] ?? escaped),
					),
				"latin1",
			).toString("hex");
	return hex.toUpperCase().match(/[0-9A-F]{4}/g) ?? [];
}

function charactersOf(map: string): ReadonlyMap<string, string> {
	const characters = new Map<string, string>();
	for (const [, code = "", unicode = ""] of map.matchAll(/<([0-9A-Fa-f]{4})> <([0-9A-Fa-f]+)>/g)) {
		characters.set(code.toUpperCase(), Buffer.from(unicode, "hex").swap16().toString("utf16le"));
	}
	return characters;
}

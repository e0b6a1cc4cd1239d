import { inflateSync } from "node:zlib";

export interface PdfPages {
	/** Text of each page in the order in which it is drawn, words apart by spaces. */
	readonly pages: readonly string[];
	/** Names of the embedded faces, without the subset's prefix. */
	readonly fonts: readonly string[];
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
	return { pages: pageIds.map((id) => pageText(objects, id)), fonts: [...fonts].sort() };
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

function pageText(objects: Objects, id: string): string {
	const page = objectAt(objects, id);
	const fonts = new Map<string, ReadonlyMap<string, string>>();
	for (const [, name = "", font = ""] of page.matchAll(/\/(f\d+) (\d+) 0 R/g)) {
		fonts.set(name, charactersOf(streamOf(objects, reference(objectAt(objects, font), "ToUnicode"))));
	}
	let text = "";
	let characters: ReadonlyMap<string, string> = new Map();
	for (const token of tokensOf(streamOf(objects, reference(page, "Contents")))) {
		const font = /^\/(f\d+) /.exec(token)?.[1];
		if (font !== undefined) characters = fonts.get(font) ?? new Map();
		else if (token === "ET") text += " ";
		else for (const code of codesOf(token)) text += characters.get(code) ?? "\ufffd";
	}
	return text.replace(/\s+/g, " ");
}

/** Changes of face, strings that are drawn and ends of text, in order. */
function tokensOf(content: string): readonly string[] {
	const tokens: string[] = [];
	// marks for screen readers carry strings too, which are not drawn
	const pattern = /<<[^<>]*>> BDC|\/f\d+ [\d.]+ Tf|<[0-9A-Fa-f]+>|\(|\bET\b/g;
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

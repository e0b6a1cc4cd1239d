/** One element of a picture, as a test reads it. */
export interface XmlElement {
	readonly name: string;
	readonly attributes: Readonly<Record<string, string>>;
	readonly children: readonly XmlElement[];
	/** Its own text, entities read. */
	readonly text: string;
}

const TAG = /<(\/?)([A-Za-z][\w-]*)((?:\s+[A-Za-z][\w:-]*="[^"<]*")*)(\/?)>/y;
const ATTRIBUTE = /\s+([A-Za-z][\w:-]*)="([^"<]*)"/g;
const TEXT = /[^<]+/y;
const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };
const NO_XML_CHARACTER = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u;

interface Open {
	readonly name: string;
	readonly attributes: Readonly<Record<string, string>>;
	readonly children: XmlElement[];
	text: string;
}

/**
 * Reads the part of XML that pictures use, and nothing besides: one root, quoted attributes each once, five entities.
 * @throws SyntaxError for anything else
 */
export function xmlElement(xml: string): XmlElement {
	if (NO_XML_CHARACTER.test(xml)) throw new SyntaxError("a character that XML has not");
	const top: Open = { name: "", attributes: {}, children: [], text: "" };
	const open = [top];
	for (let at = 0; at < xml.length; ) {
		const here = open.at(-1)!; // never closed: the check below
		TEXT.lastIndex = at;
		TAG.lastIndex = at;
		const text = TEXT.exec(xml);
		const tag = text === null ? TAG.exec(xml) : null;
		if (text !== null) here.text += read(text[0]);
		else if (tag?.[1] === "/") {
			if (tag[2] !== here.name || tag[3] !== "" || tag[4] !== "") throw new SyntaxError(`<${here.name}> closed as ${tag[0]}`);
			open.pop();
		} else if (tag !== null) {
			const element: Open = { name: tag[2]!, attributes: attributesOf(tag[3]!), children: [], text: "" };
			here.children.push(element);
			if (tag[4] === "") open.push(element);
		} else throw new SyntaxError(`no markup: ${xml.slice(at, at + 40)}`);
		at += (text ?? tag)![0].length;
	}
	const [root] = top.children;
	if (open.length !== 1 || top.children.length !== 1 || root === undefined || top.text.trim() !== "")
		throw new SyntaxError("expected one root");
	return root;
}

function attributesOf(text: string): Readonly<Record<string, string>> {
	const attributes: Record<string, string> = {};
	for (const [, key, value] of text.matchAll(ATTRIBUTE)) {
		if (Object.hasOwn(attributes, key!)) throw new SyntaxError(`${key} twice`);
		attributes[key!] = read(value!);
	}
	return attributes;
}

function read(text: string): string {
	if (text.includes("]]>")) throw new SyntaxError("]]> in text");
	return text.replace(/&([^;]*;?)/g, (all, name: string) => {
		const character = ENTITIES[name.slice(0, -1)];
		if (character === undefined || !name.endsWith(";")) throw new SyntaxError(`no entity: ${all}`);
		return character;
	});
}

/** The element and all in it. */
export function everyElement(element: XmlElement): readonly XmlElement[] {
	return [element, ...element.children.flatMap(everyElement)];
}

export function withClass(element: XmlElement, name: string): readonly XmlElement[] {
	return everyElement(element).filter(({ attributes }) => attributes["class"] === name);
}

/** All words in it, in order. */
export function wordsIn(element: XmlElement): readonly string[] {
	return everyElement(element)
		.filter(({ name }) => name === "text")
		.map(({ text }) => text);
}

export interface Rectangle {
	readonly x1: number;
	readonly y1: number;
	readonly x2: number;
	readonly y2: number;
}

/** The parts of a path, each as the smallest rectangle around it. Knows M, L, H, V, h and Z. */
export function pathParts(d: string): readonly Rectangle[] {
	return d
		.split("M")
		.slice(1)
		.map((part) => {
			const points: { x: number; y: number }[] = [];
			for (const [, command, figures] of `M${part}`.matchAll(/([MLHVhZ])([^MLHVhZ]*)/g)) {
				const [a = Number.NaN, b = Number.NaN] = figures!.trim().split(/\s+/).map(Number);
				const before = points.at(-1) ?? { x: Number.NaN, y: Number.NaN };
				if (command === "M" || command === "L") points.push({ x: a, y: b });
				if (command === "H") points.push({ x: a, y: before.y });
				if (command === "h") points.push({ x: before.x + a, y: before.y });
				if (command === "V") points.push({ x: before.x, y: a });
			}
			const xs = points.map(({ x }) => x);
			const ys = points.map(({ y }) => y);
			return { x1: Math.min(...xs), y1: Math.min(...ys), x2: Math.max(...xs), y2: Math.max(...ys) };
		});
}

/** The parts of all paths in it. */
export function partsIn(element: XmlElement): readonly (Rectangle & { readonly fill: string | undefined })[] {
	return everyElement(element).flatMap(({ attributes }) =>
		pathParts(attributes["d"] ?? "").map((part) => ({ ...part, fill: attributes["fill"] })),
	);
}

/** How light a colour is in grey print, 0 to 255: the weights of ITU-R BT.601. */
export function greyOf(colour: string): number {
	const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
	return 0.299 * r + 0.587 * g + 0.114 * b;
}

const PATH_DATA = /^(?:[MLHVh]-?\d+(?:\.\d{1,3})?(?: -?\d+(?:\.\d{1,3})?)?|Z)*$/;
const FIGURE = /^-?\d+(?:\.\d{1,3})?$/;
const FIGURE_ATTRIBUTES = new Set(["x", "y", "width", "height", "font-size", "stroke-width"]);

/** Every number of a picture that is not written as such, to three decimals at most. */
export function faultyFigures(element: XmlElement): readonly string[] {
	return everyElement(element).flatMap(({ attributes }) =>
		Object.entries(attributes)
			.filter(([key, value]) => (key === "d" ? !PATH_DATA.test(value) : FIGURE_ATTRIBUTES.has(key) && !FIGURE.test(value)))
			.map(([key, value]) => `${key}="${value}"`),
	);
}

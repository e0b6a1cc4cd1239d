/** What a reader of XML meets, in order. Names are without their prefix; text has its entities resolved. */
export type XmlEvent =
	| { readonly kind: "open"; readonly name: string; readonly attributes: ReadonlyMap<string, string>; readonly offset: number }
	| { readonly kind: "close"; readonly name: string; readonly offset: number }
	| { readonly kind: "text"; readonly text: string; readonly offset: number };

/** The text is not XML that is read here; `offset` is an index into it. */
export class XmlFault extends Error {
	readonly offset: number;
	readonly expected: string;
	constructor(offset: number, expected: string) {
		super(expected);
		this.name = "XmlFault";
		this.offset = offset;
		this.expected = expected;
	}
}

const NAME = /[A-Za-z_][\w.:-]*/y;
const ATTRIBUTE = /\s+([A-Za-z_][\w.:-]*)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/y;
const TAG_END = /\s*(\/?)>/y;

/**
 * A strict subset of XML 1.0: elements, attributes, text, comments, CDATA, processing instructions (skipped), the five
 * named entities and character references. A document type, and with it any entity of its own, is refused.
 * @throws XmlFault
 */
export function* xmlEvents(text: string): Generator<XmlEvent> {
	const open: string[] = [];
	let rootSeen = false;
	let at = text.startsWith("\uFEFF") ? 1 : 0;
	while (at < text.length) {
		if (text[at] !== "<") {
			const end = indexOr(text, "<", at, text.length);
			const content = resolve(text.slice(at, end), at);
			if (open.length > 0) yield { kind: "text", text: content, offset: at };
			else if (content.trim() !== "") throw new XmlFault(at, "nothing but space outside the root element");
			at = end;
		} else if (text.startsWith("<!--", at)) {
			at = after(text, "-->", at, "a comment that ends with -->");
		} else if (text.startsWith("<![CDATA[", at)) {
			const end = after(text, "]]>", at, "CDATA that ends with ]]>");
			if (open.length === 0) throw new XmlFault(at, "nothing but space outside the root element");
			yield { kind: "text", text: text.slice(at + 9, end - 3), offset: at };
			at = end;
		} else if (text.startsWith("<?", at)) {
			at = after(text, "?>", at, "a processing instruction that ends with ?>");
		} else if (text.startsWith("<!", at)) {
			throw new XmlFault(at, "no document type or entity declaration");
		} else if (text.startsWith("</", at)) {
			const name = nameAt(text, at + 2);
			const expected = open.pop();
			if (name !== expected) throw new XmlFault(at, expected === undefined ? "no closing tag here" : `</${expected}>`);
			at = tagEnd(text, at + 2 + name.length).end;
			yield { kind: "close", name: local(name), offset: at };
		} else {
			const name = nameAt(text, at + 1);
			if (open.length === 0 && rootSeen) throw new XmlFault(at, "one root element");
			rootSeen = true;
			const { attributes, end: attributesEnd } = attributesAt(text, at + 1 + name.length);
			const { end, empty } = tagEnd(text, attributesEnd);
			yield { kind: "open", name: local(name), attributes, offset: at };
			if (empty) yield { kind: "close", name: local(name), offset: end };
			else open.push(name);
			at = end;
		}
	}
	const unclosed = open.at(-1);
	if (unclosed !== undefined) throw new XmlFault(text.length, `</${unclosed}> before the end`);
	if (!rootSeen) throw new XmlFault(text.length, "a root element");
}

function attributesAt(text: string, from: number) {
	const attributes = new Map<string, string>();
	let end = from;
	for (;;) {
		ATTRIBUTE.lastIndex = end;
		const match = ATTRIBUTE.exec(text);
		if (match === null) return { attributes, end };
		const name = match[1] ?? "";
		if (attributes.has(name)) throw new XmlFault(end, `the attribute ${name} once`);
		attributes.set(name, resolve(match[2] ?? match[3] ?? "", end));
		end = ATTRIBUTE.lastIndex;
	}
}

function nameAt(text: string, at: number): string {
	NAME.lastIndex = at;
	const match = NAME.exec(text);
	if (match === null) throw new XmlFault(at, "a tag name after <");
	return match[0];
}

function tagEnd(text: string, at: number): { readonly end: number; readonly empty: boolean } {
	TAG_END.lastIndex = at;
	const match = TAG_END.exec(text);
	if (match === null) throw new XmlFault(at, 'name="value" attributes or > to end the tag');
	return { end: TAG_END.lastIndex, empty: match[1] === "/" };
}

function local(name: string): string {
	return name.slice(name.lastIndexOf(":") + 1);
}

function indexOr(text: string, part: string, from: number, otherwise: number): number {
	const at = text.indexOf(part, from);
	return at < 0 ? otherwise : at;
}

function after(text: string, part: string, from: number, expected: string): number {
	const at = text.indexOf(part, from);
	if (at < 0) throw new XmlFault(from, expected);
	return at + part.length;
}

const NAMED: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

function resolve(text: string, offset: number): string {
	return text.replace(/&([^;&\s]{0,10});?/g, (whole, name: string, index: number) => {
		const known = whole.endsWith(";") ? (NAMED[name] ?? characterOf(name)) : undefined;
		if (known === undefined) throw new XmlFault(offset + index, "only &amp; &lt; &gt; &quot; &apos; and character references after &");
		return known;
	});
}

function characterOf(name: string): string | undefined {
	const match = /^#(?:(\d{1,7})|x([0-9A-Fa-f]{1,6}))$/.exec(name);
	if (match === null) return undefined;
	const code = match[1] === undefined ? Number.parseInt(match[2] ?? "", 16) : Number(match[1]);
	const allowed = code === 9 || code === 10 || code === 13 || (code >= 0x20 && code <= 0x10ffff && !(code >= 0xd800 && code <= 0xdfff));
	return allowed ? String.fromCodePoint(code) : undefined;
}

import { type Position, position } from "@skipwright/units";
import { SaxesParser } from "saxes";

/** Track, route and way points of GPX 1.1. */
export const POINT_KINDS = ["trkpt", "rtept", "wpt"] as const;
type PointKind = (typeof POINT_KINDS)[number];

const REFERENCES = "only &amp; &lt; &gt; &quot; &apos; and character references after &";

/** A point as the file has it; `offset` is the index of its tag in the text. */
export interface GpxPoint {
	readonly kind: PointKind;
	readonly position: Position;
	readonly name: string | null;
	readonly time: string | null;
	readonly offset: number;
}

/** The text is not GPX that is read here; `offset` is an index into it. */
export class GpxFault extends Error {
	readonly offset: number;
	readonly expected: string;
	constructor(offset: number, expected: string) {
		super(expected);
		this.name = "GpxFault";
		this.offset = offset;
		this.expected = expected;
	}
}

/**
 * Every track, route and way point in the file's order. A document type, and with it any entity of the file's own, is
 * refused.
 * @throws GpxFault
 */
export function gpxPoints(text: string): readonly GpxPoint[] {
	const points: GpxPoint[] = [];
	const path: string[] = [];
	let inside: { kind: PointKind; position: Position; offset: number; depth: number; name: string; time: string } | null = null;
	let tagAt = 0;
	let lastClosed = "";
	let markupEnd = 0;
	const parser = new SaxesParser({ xmlns: false, position: false }); // its messages without a place: that is told by our own
	/** Index of the last `part` that the parser has read. */
	const lastRead = (part: string) => text.lastIndexOf(part, parser.position - 1);
	const keep = (content: string) => {
		if (inside === null || path.length !== inside.depth + 2) return;
		if (path.at(-1) === "name") inside.name += content;
		if (path.at(-1) === "time") inside.time += content;
	};

	parser.on("error", ({ message }) => {
		const bare = bareAmpersand(text, markupEnd, parser.position);
		// an & without its ; is read as one long name, to the next ; or the end of the file
		if (bare !== null) throw new GpxFault(bare, REFERENCES);
		if (message.includes("entity")) throw new GpxFault(lastRead("&"), REFERENCES);
		if (message === "unexpected close tag.") throw new GpxFault(lastRead("</"), `</${lastClosed}>`);
		if (message.startsWith("unclosed tag: ")) throw new GpxFault(text.length, `</${message.slice(14)}> before the end`);
		if (message === "document must contain a root element.") throw new GpxFault(text.length, "a root element");
		throw new GpxFault(Math.max(0, parser.position - 1), `well-formed XML (${message.replace(/\.$/, "")})`);
	});
	parser.on("doctype", () => {
		throw new GpxFault(lastRead("<!DOCTYPE"), "no document type or entity declaration");
	});
	parser.on("opentagstart", () => {
		tagAt = lastRead("<");
	});
	parser.on("opentag", ({ name, attributes }) => {
		const element = local(name);
		if (path.length === 0 && element !== "gpx") throw new GpxFault(tagAt, "a GPX file: <gpx> as the root element");
		const kind = POINT_KINDS.find((known) => known === element);
		if (kind !== undefined && inside !== null) throw new GpxFault(tagAt, `no <${kind}> inside another point`);
		if (kind !== undefined)
			inside = { kind, position: positionOf(attributes, tagAt), offset: tagAt, depth: path.length, name: "", time: "" };
		path.push(element);
		markupEnd = parser.position;
	});
	parser.on("closetag", ({ name }) => {
		lastClosed = name;
		markupEnd = parser.position;
		path.pop();
		if (inside === null || path.length !== inside.depth) return;
		points.push({
			kind: inside.kind,
			offset: inside.offset,
			position: inside.position,
			name: inside.name.trim() || null,
			time: inside.time.trim() || null,
		});
		inside = null;
	});
	parser.on("text", keep);
	parser.on("cdata", (content) => {
		markupEnd = parser.position;
		keep(content);
	});
	parser.on("comment", () => {
		markupEnd = parser.position;
	});
	parser.write(text).close();
	return points;
}

function positionOf(attributes: Readonly<Record<string, string>>, offset: number): Position {
	const degrees = (name: string, limit: number) => {
		const value = attributes[name] ?? "";
		if (!/^[+-]?\d{1,3}(\.\d+)?$/.test(value) || Math.abs(Number(value)) > limit) {
			throw new GpxFault(offset, `${name}="..." in degrees from -${limit} to ${limit}`);
		}
		return Number(value);
	};
	return position(degrees("lat", 90), degrees("lon", 180));
}

/** Index of the first & between the two that no name or number with its ; follows. */
function bareAmpersand(text: string, from: number, to: number): number | null {
	const at = text.slice(from, to).search(/&(?!#?\w+;)/);
	return at < 0 ? null : from + at;
}

/** The name without its prefix. */
function local(name: string): string {
	return name.slice(name.lastIndexOf(":") + 1);
}

import { BadInputError, type Position, position } from "@skipwright/units";
import { utcTime } from "./utcTime.ts";
import type { Voyage, VoyagePoint } from "./voyage.ts";
import { type XmlEvent, XmlFault, xmlEvents } from "./xmlEvents.ts";

/** Track, route and way points of GPX 1.1; the first kind that the file holds is the voyage. */
const KINDS = ["trkpt", "rtept", "wpt"] as const;
type PointKind = (typeof KINDS)[number];

interface GpxPoint {
	readonly kind: PointKind;
	readonly position: Position;
	readonly name: string | null;
	readonly time: string | null;
	readonly offset: number;
}

/**
 * The voyage in a GPX file: its track if it has one, else its route, else its waypoints, in the order of the file. Every
 * point used must carry a time, none earlier than the one before. Neighbours at one position are a stay.
 * @param source name of the file, for messages
 * @throws BadInputError naming the line
 */
export function readGpx(source: string, text: string): Voyage {
	const refuse = (offset: number, value: string, expected: string): never => {
		const line = text.slice(0, offset).split(/\r\n|\r|\n/).length;
		throw new BadInputError(source, [{ line, column: null, value, expected }]);
	};
	try {
		const found = pointsIn(text);
		const kind = KINDS.find((name) => found.some((point) => point.kind === name));
		if (kind === undefined) return refuse(0, text.slice(0, 40), "a GPX file with track, route or way points");
		const points = found.filter((point) => point.kind === kind).map((point) => dated(point, refuse));
		return { points: asStays(points, (offset, expected) => refuse(offset, kind, expected)) };
	} catch (error) {
		if (error instanceof XmlFault) return refuse(error.offset, text.slice(error.offset, error.offset + 40), error.expected);
		throw error;
	}
}

function pointsIn(text: string): readonly GpxPoint[] {
	const points: GpxPoint[] = [];
	const path: string[] = [];
	let inside: { kind: PointKind; position: Position; offset: number; depth: number; name: string; time: string } | null = null;
	for (const event of xmlEvents(text)) {
		if (event.kind === "open") {
			if (path.length === 0 && event.name !== "gpx") throw new XmlFault(event.offset, "a GPX file: <gpx> as the root element");
			const kind = KINDS.find((name) => name === event.name);
			if (kind !== undefined && inside !== null) throw new XmlFault(event.offset, `no <${kind}> inside another point`);
			if (kind !== undefined) inside = { kind, position: positionOf(event), offset: event.offset, depth: path.length, name: "", time: "" };
			path.push(event.name);
		} else if (event.kind === "close") {
			path.pop();
			if (inside !== null && path.length === inside.depth) {
				const { kind, offset } = inside;
				points.push({ kind, offset, position: inside.position, name: inside.name.trim() || null, time: inside.time.trim() || null });
				inside = null;
			}
		} else if (inside !== null && path.length === inside.depth + 2) {
			if (path.at(-1) === "name") inside.name += event.text;
			if (path.at(-1) === "time") inside.time += event.text;
		}
	}
	return points;
}

function positionOf(event: XmlEvent & { kind: "open" }): Position {
	const degrees = (name: string, limit: number) => {
		const value = event.attributes.get(name) ?? "";
		if (!/^[+-]?\d{1,3}(\.\d+)?$/.test(value) || Math.abs(Number(value)) > limit) {
			throw new XmlFault(event.offset, `${name}="..." in degrees from -${limit} to ${limit}`);
		}
		return Number(value);
	};
	return position(degrees("lat", 90), degrees("lon", 180));
}

interface DatedPoint {
	readonly point: VoyagePoint;
	readonly offset: number;
}

function dated(point: GpxPoint, refuse: (offset: number, value: string, expected: string) => never): DatedPoint {
	const expected = "a time with its zone in every point, as <time>2027-02-01T06:30:00Z</time>";
	if (point.time === null) return refuse(point.offset, point.kind, expected);
	if (!point.time.includes("T")) return refuse(point.offset, point.time, expected);
	try {
		const ms = utcTime(point.time);
		return { point: { name: point.name, position: point.position, arriveMs: ms, departMs: ms }, offset: point.offset };
	} catch (error) {
		if (error instanceof SyntaxError) return refuse(point.offset, point.time, expected);
		throw error;
	}
}

function asStays(points: readonly DatedPoint[], refuse: (offset: number, expected: string) => never): readonly VoyagePoint[] {
	const merged: VoyagePoint[] = [];
	for (const { point, offset } of points) {
		const last = merged.at(-1);
		if (last !== undefined && point.arriveMs < last.departMs) refuse(offset, "a point no earlier than the one before it");
		if (last === undefined || !samePlace(last.position, point.position)) merged.push(point);
		else merged[merged.length - 1] = { ...last, name: last.name ?? point.name, departMs: point.departMs };
	}
	return merged;
}

function samePlace(a: Position, b: Position): boolean {
	return a.latDeg === b.latDeg && a.lonDeg === b.lonDeg;
}

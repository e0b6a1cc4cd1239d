import { BadInputError, type Position } from "@skipwright/units";
import { GpxFault, type GpxPoint, gpxPoints, POINT_KINDS } from "./gpxPoints.ts";
import { utcTime } from "./utcTime.ts";
import type { Voyage, VoyagePoint } from "./voyage.ts";

/**
 * The voyage in a GPX file: its track if it has one, else its route, else its waypoints, in the order of the file. Every
 * point used must carry a time, none earlier than the one before. Neighbours at one position are a stay.
 * @param source name of the file, for messages
 * @throws BadInputError naming line and column
 */
export function readGpx(source: string, text: string): Voyage {
	const refuse = (offset: number, value: string, expected: string): never => {
		const lines = text.slice(0, offset).split(/\r\n|\r|\n/);
		const column = String((lines.at(-1)?.length ?? 0) + 1);
		throw new BadInputError(source, [{ line: lines.length, column, value, expected }]);
	};
	try {
		const found = gpxPoints(text);
		const kind = POINT_KINDS.find((name) => found.some((point) => point.kind === name));
		if (kind === undefined) return refuse(0, text.slice(0, 40), "a GPX file with track, route or way points");
		const points = found.filter((point) => point.kind === kind).map((point) => dated(point, refuse));
		return { points: asStays(points, (offset, expected) => refuse(offset, kind, expected)) };
	} catch (error) {
		if (error instanceof GpxFault) return refuse(error.offset, text.slice(error.offset, error.offset + 40), error.expected);
		throw error;
	}
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

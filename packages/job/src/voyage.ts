import { formatPosition, type Position } from "@skipwright/units";

/** A dated position. Where the ship lies there for a while, `arriveMs` and `departMs` differ. Milliseconds since 1970-01-01T00:00Z. */
export interface VoyagePoint {
	/** A named point ends a leg; an unnamed one is a turn of the leg. */
	readonly name: string | null;
	readonly position: Position;
	readonly arriveMs: number;
	readonly departMs: number;
}

/** Points in order of time; at least one. */
export interface Voyage {
	readonly points: readonly VoyagePoint[];
}

/** A leg under way or a stay at one place, in words that screens and papers use. */
export interface Stage {
	readonly kind: "leg" | "stay";
	/** "Cape Town to St Helena", "at St Helena". */
	readonly name: string;
	/** The points it runs through: one for a stay, two or more for a leg. */
	readonly points: readonly VoyagePoint[];
	readonly startMs: number;
	readonly endMs: number;
}

/** The voyage as stays and legs in order. A leg runs from one named (or last, or waited-at) point to the next. */
export function stagesOf({ points }: Voyage): readonly Stage[] {
	const stages: Stage[] = [];
	let leg: VoyagePoint[] = [];
	for (const [index, point] of points.entries()) {
		leg.push(point);
		const stays = point.departMs > point.arriveMs;
		if (point.name === null && !stays && index > 0 && index < points.length - 1) continue;
		if (leg.length > 1) stages.push(legOf(leg));
		if (stays || points.length === 1) stages.push(stayOf(point));
		leg = [point];
	}
	return stages;
}

function legOf(points: readonly VoyagePoint[]): Stage {
	const from = points[0]!; // called with two or more
	const to = points.at(-1)!;
	return { kind: "leg", name: `${nameOf(from)} to ${nameOf(to)}`, points, startMs: from.departMs, endMs: to.arriveMs };
}

function stayOf(point: VoyagePoint): Stage {
	return { kind: "stay", name: `at ${nameOf(point)}`, points: [point], startMs: point.arriveMs, endMs: point.departMs };
}

function nameOf({ name, position }: VoyagePoint): string {
	return name ?? formatPosition(position);
}

import { placeAlong, type Track, trackBetween, type Vector, vectorAlong, type Way } from "@skipwright/sphere";
import { log10, type Position } from "@skipwright/units";
import { ABSORBING_KM } from "./absorption.ts";
import { cosElevation, legLength, secIncidence } from "./elevation.ts";
import { MEMORY } from "./fromMemory.ts";
import { geomagneticLatDeg, highestGeomagneticLatDeg } from "./geomagneticLatitude.ts";
import { type LongGeometry, longGeometry } from "./longPathGeometry.ts";
import { HIGHEST_MIRROR_KM } from "./mirrorHeight.ts";
import { type ERay, eRays } from "./mufE.ts";
import { F2_ORDERS } from "./mufF2.ts";
import { type Hop, hopOf } from "./pathHop.ts";

/** km. Lengths between which the two forms for sky waves are mixed. */
export const { from: NEAR_FORM_UP_TO_KM, to: FAR_FORM_FROM_KM } = MEMORY.longPathJoin.value;

/** Most hops that are looked at: the least number on a path of 9000 km, and five more. */
const MOST_HOPS = 12;
const HOP_COUNTS = Array.from({ length: MOST_HOPS }, (_, index) => index + 1);
/** km from the ends, and degrees, between and from which a path counts as of high geomagnetic latitude: ITU-R P.842, as quoted by others. */
const AURORA = { fromEndsKm: 1000, latDeg: 60 } as const;

/** A path as geometry alone: no month, hour or frequency. The same either way. */
export interface SkyPath {
	readonly from: Position;
	readonly to: Position;
	readonly way: Way;
	readonly km: number;
	readonly track: Track;
	readonly middle: Position;
	/** The middle as a direction from the Earth's centre. */
	readonly middleVector: Vector;
	/** Degrees from the geomagnetic equator, of the middle. */
	readonly geomagneticLatDeg: number;
	/** Whether it comes to geomagnetic latitude 60, 1000 km from its ends or further in. */
	readonly reachesAurora: boolean;
	/** By number of hops less one; none where only the far form holds. */
	readonly hops: readonly Hop[];
	/** Rays by the E layer that leave high enough, up to three numbers of hops. */
	readonly eRays: readonly ERay[];
	/** No mode crosses the absorbing layer on a shorter way: the least number of hops times secant of any. */
	readonly leastSecants: number;
	/** dB by which all modes together could stand over one mode at 1 km, each on the straight line. */
	readonly modesDb: number;
	/** From the length on where the far form begins. */
	readonly long: LongGeometry | null;
}

/** The great circle between two places, with what sky waves need of it; worked out once, it serves both directions at all hours. */
export function skyPath(from: Position, to: Position, way: Way = "short"): SkyPath {
	const track = trackBetween(from, to, way);
	const { km } = track;
	const middle = placeAlong(track, 0.5);
	const middleVector = vectorAlong(track, 0.5);
	const inset = Math.min(0.5, AURORA.fromEndsKm / km);
	const hops = km < FAR_FORM_FROM_KM ? HOP_COUNTS.map((count) => hopOf(km, count)) : [];
	const rays = eRays(km);
	return {
		from,
		to,
		way,
		km,
		track,
		middle,
		middleVector,
		geomagneticLatDeg: geomagneticLatDeg(middleVector),
		reachesAurora: highestGeomagneticLatDeg(track, inset, 1 - inset) >= AURORA.latDeg,
		hops,
		eRays: rays,
		leastSecants: Math.min(...hops.map(steepestSecants), ...rays.map(({ hop, secAbsorbing }) => hop.count * secAbsorbing)),
		modesDb: 10 * log10((rays.length + F2_ORDERS) / (km * km)),
		long: km > NEAR_FORM_UP_TO_KM ? longGeometry(track) : null,
	};
}

/** By the highest mirror of all. */
function steepestSecants(hop: Hop): number {
	return hop.count * secIncidence(cosElevation(hop, legLength(hop, HIGHEST_MIRROR_KM)), ABSORBING_KM);
}

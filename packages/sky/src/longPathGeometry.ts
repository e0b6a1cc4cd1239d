import { EARTH_RADIUS_KM, initialBearingDeg, placeAlong, type Track, type Vector, vectorAlong } from "@skipwright/sphere";
import { acos, atan2, log10, sin } from "@skipwright/units";
import { cosElevation, legLength, secIncidence, sinElevation, slantKm } from "./elevation.ts";
import { MEMORY } from "./fromMemory.ts";
import { type Hop, hopOf } from "./pathHop.ts";

const { hopKm, mirrorKm, absorbingKm, fieldDb, constantDb, otherDb, mostFocusDb } = MEMORY.longPath.value;

/** What ITU-R P.533's form for long paths needs of the geometry: equal hops by a mirror at 300 km. */
export interface LongGeometry {
	readonly hop: Hop;
	/** True bearing of the path at its middle. */
	readonly bearingDeg: number;
	readonly slantKm: number;
	/** 1 / cos of the ray's angle from the vertical at 90 km. */
	readonly secAbsorbing: number;
	/** Where it passes that height, as directions from the Earth's centre: two for each hop. */
	readonly crossings: readonly Vector[];
	/** E0: dB(uV/m) of 3 MW e.i.r.p. in free space at the slant range. */
	readonly freeFieldDb: number;
	/** dB that do not depend on frequency: focusing towards the antipode, the form's constant, other losses. */
	readonly fixedDb: number;
}

/** Far enough from the middle to tell the bearing there. */
const QUARTER_HOP = 0.25;

export function longGeometry(track: Track): LongGeometry {
	const hop = hopOf(track.km, Math.ceil(track.km / hopKm));
	const leg = legLength(hop, mirrorKm);
	const sine = sinElevation(hop, mirrorKm, leg);
	const cosine = cosElevation(hop, leg);
	const slant = slantKm(hop, mirrorKm, leg);
	const secAbsorbing = secIncidence(cosine, absorbingKm);
	// the angle at the Earth's centre from the hop's end to the crossing: 90 degrees less elevation less incidence
	const toCrossing = Math.PI / 2 - atan2(sine, cosine) - acos(1 / secAbsorbing);
	const inset = (toCrossing * EARTH_RADIUS_KM) / hop.km;
	const crossings: Vector[] = [];
	for (let before = 0; before < hop.count; before++) {
		for (const hops of [before + inset, before + 1 - inset]) crossings.push(vectorAlong(track, hops / hop.count));
	}
	return {
		hop,
		bearingDeg: initialBearingDeg(placeAlong(track, 0.5), placeAlong(track, 0.5 + QUARTER_HOP / hop.count)),
		slantKm: slant,
		secAbsorbing,
		crossings,
		freeFieldDb: fieldDb - 20 * log10(slant),
		fixedDb: Math.min(mostFocusDb, focusDb(track.km)) + constantDb - otherDb,
	};
}

/** dB by which rays from all round draw together near the antipode. */
function focusDb(km: number): number {
	const angle = km / EARTH_RADIUS_KM;
	return 10 * log10(angle / Math.abs(sin(angle)));
}

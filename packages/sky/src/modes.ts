import { eAboveMufDb, f2AboveMufDb } from "./aboveMuf.ts";
import { ABSORBING_KM } from "./absorption.ts";
import { cosElevation, legLength, secIncidence, sinElevation, slantKm } from "./elevation.ts";
import { MEMORY } from "./fromMemory.ts";
import { E_MIRROR_KM, type F2Mirror, mirrorKm } from "./mirrorHeight.ts";
import { type ERay, LEAST_SIN_ELEVATION } from "./mufE.ts";
import type { SkyPath } from "./path.ts";
import type { Hop } from "./pathHop.ts";
import { screeningMHz } from "./screening.ts";

/** What a frequency meets on a path in one hour, by ITU-R P.533's form up to 9000 km. */
export interface NearHour {
	readonly path: SkyPath;
	/** foE that rules the E layer's MUFs. */
	readonly foEMHz: number;
	/** The F2 layer's modes: hops of the path from the least number on, and the basic MUF by each. */
	readonly f2Hops: readonly Hop[];
	readonly f2MufsMHz: readonly number[];
	readonly f2HighestMufMHz: number;
	/** The F2 layer at the control points for its height. */
	readonly mirrors: readonly F2Mirror[];
	/** foE that screens the F2 layer. */
	readonly screeningFoEMHz: number;
	readonly eAbsorbing: Absorbing;
	readonly f2Absorbing: Absorbing;
}

/** The absorbing air under a path: means over its control points. */
export interface Absorbing {
	/** Of `absorptionIndex`. */
	readonly index: number;
	/** At 100 km. */
	readonly gyroMHz: number;
}

/** One mode at one frequency. Written in place: only one is needed while powers are summed. */
export interface Ray {
	fate: "counts" | "too low" | "screened";
	mirrorKm: number;
	sinElevation: number;
	slantKm: number;
	/** MHz under which the E layer screens it; 0 for modes of the E layer. */
	screeningMHz: number;
	/** dB, and set only for a mode that counts, as the next two. */
	absorptionDb: number;
	aboveMufDb: number;
	groundDb: number;
}

export function emptyRay(): Ray {
	return { fate: "too low", mirrorKm: 0, sinElevation: 0, slantKm: 0, screeningMHz: 0, absorptionDb: 0, aboveMufDb: 0, groundDb: 0 };
}

/** @param perSecantDb from `absorptionPerSecantDb` for `eAbsorbing` @param into is overwritten */
export function traceE(ray: ERay, mufMHz: number, fMHz: number, perSecantDb: number, into: Ray): void {
	into.mirrorKm = E_MIRROR_KM;
	into.sinElevation = ray.sinElevation;
	into.slantKm = ray.slantKm;
	into.screeningMHz = 0;
	into.fate = ray.counts ? "counts" : "too low";
	if (!ray.counts) return;
	into.absorptionDb = ray.hop.count * perSecantDb * ray.secAbsorbing;
	into.aboveMufDb = eAboveMufDb(fMHz, mufMHz);
	into.groundDb = groundDb(ray.hop);
}

/** @param mode index of the hops @param perSecantDb from `absorptionPerSecantDb` for `f2Absorbing` @param into is overwritten */
export function traceF2(hour: NearHour, mode: number, fMHz: number, perSecantDb: number, into: Ray): void {
	const hop = hour.f2Hops[mode]!;
	const mufMHz = hour.f2MufsMHz[mode]!;
	const height = meanMirrorKm(hour.mirrors, hop.km, Math.min(fMHz, mufMHz));
	const leg = legLength(hop, height);
	const cosine = cosElevation(hop, leg);
	into.mirrorKm = height;
	into.sinElevation = sinElevation(hop, height, leg);
	into.slantKm = slantKm(hop, height, leg);
	into.screeningMHz = screeningMHz(hour.screeningFoEMHz, cosine);
	into.fate = into.sinElevation < LEAST_SIN_ELEVATION ? "too low" : fMHz < into.screeningMHz ? "screened" : "counts";
	if (into.fate !== "counts") return;
	into.absorptionDb = hop.count * perSecantDb * secIncidence(cosine, ABSORBING_KM);
	into.aboveMufDb = f2AboveMufDb(fMHz, mufMHz, hour.path.km);
	into.groundDb = groundDb(hop);
}

function meanMirrorKm(mirrors: readonly F2Mirror[], hopKm: number, fMHz: number): number {
	let sum = 0;
	for (const mirror of mirrors) sum += mirrorKm(mirror, hopKm, fMHz);
	return sum / mirrors.length;
}

function groundDb({ count }: Hop): number {
	return MEMORY.groundReflection.value * (count - 1);
}

import { asin, log10 } from "@skipwright/units";
import { absorptionPerSecantDb } from "./absorption.ts";
import { MEMORY, type MemoryId } from "./fromMemory.ts";
import { longFieldDb } from "./longPath.ts";
import { type Absorbing, emptyRay, type NearHour, type Ray, traceE, traceF2 } from "./modes.ts";
import { eMufMHz } from "./mufE.ts";
import { LONGEST_F2_HOP_KM } from "./mufF2.ts";
import type { PathGain } from "./pathGain.ts";
import type { Hop } from "./pathHop.ts";
import { FREE_SPACE_DB, farFormDb, nearFormDb, rayPower, skyWaveDb } from "./skyWave.ts";
import type { SkyHour } from "./skyWaveHour.ts";
import { basicMufMHz, supportChance } from "./skyWaveMuf.ts";

/** One mode at one frequency, step by step. */
export interface ModeWhy {
	readonly layer: "E" | "F2";
	readonly hops: number;
	readonly fate: "counts" | "too low" | "screened";
	readonly elevationDeg: number;
	readonly mirrorKm: number;
	readonly slantKm: number;
	/** Basic MUF. */
	readonly mufMHz: number;
	/** Under this the E layer screens it; null for modes of the E layer. */
	readonly screeningMHz: number | null;
	/** null for a mode that does not count. */
	readonly losses: ModeLosses | null;
	/** Of all the modes' power, 0 to 1. */
	readonly share: number;
}

/** dB. Their sum is the basic transmission loss, L_b. */
export interface ModeLosses {
	readonly freeSpaceDb: number;
	readonly absorptionDb: number;
	readonly aboveMufDb: number;
	readonly groundDb: number;
	readonly auroralDb: number;
	readonly otherDb: number;
	readonly totalDb: number;
}

/** The form for long paths at one frequency. */
export interface LongWhy {
	readonly hops: number;
	readonly slantKm: number;
	readonly lowestMHz: number;
	readonly highestMHz: number;
	readonly gyroMHz: number;
	/** dB(uV/m) in free space, 3 MW. */
	readonly freeFieldDb: number;
	/** dB(uV/m) of 1 kW from an isotropic aerial. */
	readonly fieldDb: number;
	/** As `skyWaveDb`, by this form alone. */
	readonly pathDb: number;
}

/** How a sky wave's strength came about. */
export interface SkyWaveWhy {
	readonly pathKm: number;
	readonly utcHour: number;
	readonly fMHz: number;
	readonly eMufMHz: number | null;
	readonly f2MufMHz: number;
	readonly basicMufMHz: number;
	readonly supportChance: number;
	/** Mean over the control points of modes by F2. */
	readonly absorbing: Absorbing | null;
	/** Empty from 9000 km on. */
	readonly modes: readonly ModeWhy[];
	/** By the modes alone, as `skyWaveDb`; null from 9000 km on. */
	readonly nearDb: number | null;
	/** null up to 7000 km. */
	readonly long: LongWhy | null;
	/** As `skyWaveDb`. */
	readonly pathDb: number;
	/** What of it rests on memory. */
	readonly basis: readonly MemoryId[];
}

/** Explains `skyWaveDb`, by the same steps. */
export function skyWaveWhy(hour: SkyHour, fMHz: number, gain: PathGain): SkyWaveWhy {
	const { path, near, eMufMHz, f2MufMHz, utcHour } = hour;
	const modes = near === null ? [] : modesWhy(hour, near, fMHz, gain);
	const long = longWhy(hour, fMHz, gain);
	return {
		pathKm: path.km,
		utcHour,
		fMHz,
		eMufMHz: eMufMHz === 0 ? null : eMufMHz,
		f2MufMHz,
		basicMufMHz: basicMufMHz(hour),
		supportChance: supportChance(hour, fMHz),
		absorbing: near?.f2Absorbing ?? null,
		modes,
		nearDb: near === null ? null : nearFormDb(hour, fMHz, gain),
		long,
		pathDb: skyWaveDb(hour, fMHz, gain),
		basis: basisOf(hour, modes),
	};
}

interface Traced {
	readonly why: Omit<ModeWhy, "share">;
	readonly power: number;
}

function modesWhy(hour: SkyHour, near: NearHour, fMHz: number, gain: PathGain): readonly ModeWhy[] {
	const perSecantDb = ({ index, gyroMHz }: Absorbing) => absorptionPerSecantDb(index, gyroMHz, fMHz);
	const ray = emptyRay();
	const traced: Traced[] = [];
	const keep = (layer: "E" | "F2", hop: Hop, mufMHz: number) =>
		traced.push({ why: modeWhy(hour, { layer, hop, mufMHz, fMHz }, ray), power: ray.fate === "counts" ? rayPower(ray, gain) : 0 });
	for (const eRay of near.path.eRays) {
		const mufMHz = eMufMHz(near.foEMHz, eRay);
		traceE(eRay, mufMHz, fMHz, perSecantDb(near.eAbsorbing), ray);
		keep("E", eRay.hop, mufMHz);
	}
	for (const [mode, hop] of near.f2Hops.entries()) {
		traceF2(near, mode, fMHz, perSecantDb(near.f2Absorbing), ray);
		keep("F2", hop, near.f2MufsMHz[mode]!);
	}
	const sum = traced.reduce((total, { power }) => total + power, 0);
	return traced.map(({ why, power }) => ({ ...why, share: sum === 0 ? 0 : power / sum }));
}

interface ModeAt {
	readonly layer: "E" | "F2";
	readonly hop: Hop;
	readonly mufMHz: number;
	readonly fMHz: number;
}

function modeWhy({ auroralDb }: SkyHour, { layer, hop, mufMHz, fMHz }: ModeAt, ray: Readonly<Ray>): Omit<ModeWhy, "share"> {
	const { fate, mirrorKm, sinElevation, slantKm, screeningMHz } = ray;
	return {
		layer,
		hops: hop.count,
		fate,
		elevationDeg: (asin(sinElevation) * 180) / Math.PI,
		mirrorKm,
		slantKm,
		mufMHz,
		screeningMHz: layer === "E" ? null : screeningMHz,
		losses: fate === "counts" ? lossesOf(ray, fMHz, auroralDb) : null,
	};
}

function lossesOf({ slantKm, absorptionDb, aboveMufDb, groundDb }: Readonly<Ray>, fMHz: number, auroralDb: number): ModeLosses {
	const freeSpaceDb = FREE_SPACE_DB + 20 * log10(fMHz * slantKm);
	const otherDb = MEMORY.otherLosses.value;
	const totalDb = freeSpaceDb + absorptionDb + aboveMufDb + groundDb + auroralDb + otherDb;
	return { freeSpaceDb, absorptionDb, aboveMufDb, groundDb, auroralDb, otherDb, totalDb };
}

function longWhy(hour: SkyHour, fMHz: number, gain: PathGain): LongWhy | null {
	const { path, long } = hour;
	if (path.long === null || long === null) return null;
	const { hop, slantKm, freeFieldDb } = path.long;
	return {
		hops: hop.count,
		slantKm,
		...long,
		freeFieldDb,
		fieldDb: longFieldDb(path.long, long, fMHz),
		pathDb: farFormDb(hour, fMHz, gain),
	};
}

/** Which constants from memory moved the answer. */
function basisOf({ path, near, long, auroralDb, month }: SkyHour, modes: readonly ModeWhy[]): readonly MemoryId[] {
	const counted = modes.flatMap(({ losses }) => (losses === null ? [] : [losses]));
	const fewest = near?.f2Hops[0]?.count ?? 0;
	const moved: Readonly<Partial<Record<MemoryId, boolean>>> = {
		controlPoints: true,
		f2Spread: true,
		seasons: true,
		fieldConstant: near !== null,
		otherLosses: near !== null,
		absorption: near !== null,
		winterAnomaly: long !== null || month.winterAnomaly,
		lowestElevation: modes.some(({ fate }) => fate === "too low") || fewest > Math.ceil(path.km / LONGEST_F2_HOP_KM),
		screening: modes.some(({ fate }) => fate === "screened"),
		aboveMuf: counted.some(({ aboveMufDb }) => aboveMufDb > 0),
		rayAboveMuf: modes.some(({ layer, losses }) => layer === "F2" && losses !== null && losses.aboveMufDb > 0),
		groundReflection: counted.some(({ groundDb }) => groundDb > 0),
		auroralLoss: near !== null && auroralDb > 0,
		longPath: long !== null,
		longPathJoin: near !== null && long !== null,
	};
	return (Object.keys(moved) as MemoryId[]).filter((id) => moved[id]); // the keys are those written above
}

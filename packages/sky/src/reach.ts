import { distanceKm } from "@skipwright/sphere";
import type { Position } from "@skipwright/units";
import type { Antenna } from "./antenna.ts";
import { groundChance, groundPathDb, type Sending, sending, skyChance } from "./circuit.ts";
import type { Ionosphere } from "./controlPoints.ts";
import type { MemoryId } from "./fromMemory.ts";
import { GROUNDS } from "./groundConstants.ts";
import { type GroundWaveTable, groundWaveTable } from "./groundWaveTable.ts";
import { type NoiseAnswer, noiseAt } from "./noise.ts";
import { receiverNoiseDb } from "./noiseReceiver.ts";
import { FAR_FORM_FROM_KM, skyPath } from "./path.ts";
import { type PathGain, pathGain } from "./pathGain.ts";
import { groundRatioLowerDb, groundRatioUpperDb, type LatitudeClass, skyRatioLowerDb, skyRatioUpperDb } from "./reliabilitySpread.ts";
import { skyWaveDb } from "./skyWave.ts";
import { type SkyDay, type SkyHour, skyDay, skyHour } from "./skyWaveHour.ts";
import { HOURS_PER_DAY, type SkyMonth } from "./skyWaveMonth.ts";
import { basicMufMHz, operationalMuf, supportChance } from "./skyWaveMuf.ts";
import { type SkyWaveWhy, skyWaveWhy } from "./skyWaveWhy.ts";
import type { Signal, Terminal } from "./terminal.ts";

/** One circuit in one month: sender, receiver, and the sky over them. */
export interface Circuit {
	readonly from: Terminal;
	readonly to: Terminal;
	readonly month: SkyMonth;
	readonly ionosphere: Ionosphere;
	/** Whether sea lies between: over land no ground wave is counted. Default true. */
	readonly overSea?: boolean;
}

/** One hour of a circuit at one frequency. */
export interface ReachHour {
	readonly utcHour: number;
	/** 0 to 1: share of days of the month on which it is copied well enough. */
	readonly chance: number;
	/** What carries it best. */
	readonly by: "sky wave" | "ground wave";
	/** Medians: ratio in the bandwidth needed, signal and noise in dBW in it. */
	readonly snrDb: number;
	readonly signalDbw: number;
	readonly noiseDbw: number;
	/** How far the ratio's deciles lie from its median, dB. */
	readonly upperDb: number;
	readonly lowerDb: number;
	readonly neededDb: number;
	/** Basic MUF of the path that carries it, and the chance that a layer carries the frequency at all. */
	readonly mufMHz: number;
	/** Exceeded on nine days of ten: the operational MUF's lower decile. */
	readonly optimumMHz: number;
	readonly supportChance: number;
	readonly why: ReachWhy;
}

/** The steps behind an hour's figure. */
export interface ReachWhy {
	readonly way: "short" | "long";
	readonly km: number;
	readonly sky: SkyWaveWhy;
	/** dB(uV/m) of 1 kW by ground wave over sea; null where there is none. */
	readonly groundFieldDb: number | null;
	readonly groundChance: number;
	readonly skyChance: number;
	readonly noise: NoiseAnswer;
	readonly sending: Sending;
}

export interface ReachRow {
	readonly signal: Signal;
	/** 24 of them; null for an emission of which nothing is known. */
	readonly hours: readonly ReachHour[] | null;
	/** Ids of the constants from memory that moved any hour. */
	readonly basis: readonly MemoryId[];
}

/** Reach of several signals over one circuit, hour by hour, by sky wave (short and long way) or ground wave, whichever is better. */
export function reach(circuit: Circuit, signals: readonly Signal[]): readonly ReachRow[] {
	const days = skyDays(circuit.from.position, circuit.to.position, circuit);
	const hours = Array.from({ length: HOURS_PER_DAY }, (_, hour) => days.map((day) => skyHour(day, hour)));
	const gain = circuitGain(circuit.from.antenna, circuit.to.antenna);
	return signals.map((signal) => {
		const sent = sending(signal, circuit.from);
		if (sent === null) return { signal, hours: null, basis: [] };
		const ground = circuit.overSea === false ? null : groundWaveTable(signal.fMHz, GROUNDS.sea);
		const rows = hours.map((ways) => reachHour(circuit, signal, sent, ways, gain, ground));
		return { signal, hours: rows, basis: basisOf(rows, circuit, sent) };
	});
}

/** The ways round that can count: the long one only from where the short one is as long as a path of the far form. */
export function skyDays(from: Position, to: Position, { ionosphere, month }: Pick<Circuit, "ionosphere" | "month">): readonly SkyDay[] {
	const short = skyPath(from, to);
	const ways = short.km < FAR_FORM_FROM_KM ? [short] : [short, skyPath(from, to, "long")];
	return ways.map((path) => skyDay(path, ionosphere, month));
}

/** Both aerials' directivities; what is lost in the sender's is counted with its power. */
export function circuitGain(from: Antenna, to: Antenna): PathGain {
	return pathGain((elevationDeg) => from.directivityDb(elevationDeg) + to.directivityDb(elevationDeg));
}

function reachHour(
	{ from, to, month, ionosphere }: Circuit,
	signal: Signal,
	sent: Sending,
	ways: readonly SkyHour[],
	gain: PathGain,
	table: GroundWaveTable | null,
): ReachHour {
	const { fMHz } = signal;
	const { utcHour } = ways[0]!;
	const noise = noiseAt({
		month: month.month,
		utcHour,
		position: to.position,
		fMHz,
		manMade: to.manMade,
		foF2MHz: ionosphere(to.position).foF2MHz[utcHour]!,
		receiverDb: receiverNoiseDb(to.antenna.efficiency(fMHz)),
	});
	const now = [noise.medianDb, noise.upperDecileDb, noise.lowerDecileDb];
	const skies = ways.map((hour) => {
		const pathDb = skyWaveDb(hour, fMHz, gain);
		return { hour, pathDb, chance: skyChance(sent, pathDb, fMHz / basicMufMHz(hour), latitudeOf(hour), now) };
	});
	const sky = skies.reduce((best, other) =>
		other.chance > best.chance || (other.chance === best.chance && other.pathDb > best.pathDb) ? other : best,
	);
	const km = distanceKm(from.position, to.position);
	const groundDb = table === null ? null : groundPathDb(table, km, fMHz, to);
	const byGround = groundDb === null ? 0 : groundChance(sent, groundDb, now);
	const ratio = fMHz / basicMufMHz(sky.hour);
	const skySignal = sent.skyPowerDbw + sky.pathDb;
	const groundSignal = groundDb === null ? Number.NEGATIVE_INFINITY : sent.groundPowerDbw + groundDb;
	const isGround = byGround > sky.chance || (byGround === sky.chance && groundSignal > skySignal);
	const signalDbw = isGround ? groundSignal : skySignal;
	const noiseDbw = noise.medianDb + (isGround ? sent.groundNoiseDbw : sent.skyNoiseDbw);
	return {
		utcHour,
		chance: Math.max(sky.chance, byGround),
		by: isGround ? "ground wave" : "sky wave",
		snrDb: signalDbw - noiseDbw,
		signalDbw,
		noiseDbw,
		upperDb: isGround ? groundRatioUpperDb(now[2]!) : skyRatioUpperDb(ratio, latitudeOf(sky.hour), now[2]!),
		lowerDb: isGround ? groundRatioLowerDb(now[1]!) : skyRatioLowerDb(ratio, latitudeOf(sky.hour), now[1]!),
		neededDb: isGround ? sent.groundNeed.snrDb : sent.skyNeed.snrDb,
		mufMHz: basicMufMHz(sky.hour),
		optimumMHz: operationalMuf(sky.hour, sent.skyPowerDbw).nineDaysMHz,
		supportChance: supportChance(sky.hour, fMHz),
		why: {
			way: sky.hour.path.way,
			km: sky.hour.path.km,
			sky: skyWaveWhy(sky.hour, fMHz, gain),
			groundFieldDb: table === null ? null : table.fieldAt(km),
			groundChance: byGround,
			skyChance: sky.chance,
			noise,
			sending: sent,
		},
	};
}

export function latitudeOf({ path }: Pick<SkyHour, "path">): LatitudeClass {
	return path.reachesAurora ? "from60" : "below60";
}

function basisOf(hours: readonly ReachHour[], { from, to }: Circuit, { skyNeed, groundNeed }: Sending): readonly MemoryId[] {
	const ids = new Set<MemoryId>([...from.antenna.basis, ...to.antenna.basis]);
	for (const { by, why } of hours) {
		for (const id of why.noise.basis) ids.add(id);
		for (const id of by === "sky wave" ? [...why.sky.basis, ...skyNeed.basis] : groundNeed.basis) ids.add(id);
		for (const id of by === "sky wave" ? (["signalDeciles", "withinHour"] as const) : (["groundWaveFading"] as const)) ids.add(id);
	}
	return [...ids].sort();
}

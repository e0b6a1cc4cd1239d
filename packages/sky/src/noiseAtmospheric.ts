import { acos, cos, exp, log10, type Position, sin } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";

const LEVELS = MEMORY.atmosphericLevels.value;
const LAW = MEMORY.atmosphericByFrequency.value;

const RADIANS = Math.PI / 180;
const BLOCK_HOURS = 4;
const BLOCKS = LEVELS.blocks.length;

/** Blocks from 08 to 16 local follow the day's law of frequency. */
const DAY_BLOCKS = [0, 0, 1, 1, 0, 0];
const DAY_SHARE_MEAN = 1 / 3;

export interface PlaceAndTime {
	/** 1 to 12. */
	readonly month: number;
	/** 0 up to 24. */
	readonly utcHour: number;
	readonly position: Position;
}

/** Atmospheric noise over one place in one month: what its hours share is worked out. */
export interface AtmosphericPlace {
	/** dB above kT0b at 1 MHz. @param utcHour 0 up to 24 */
	readonly at1MHz: (utcHour: number) => number;
	/** As `atmosphericDayShare`. */
	readonly dayShare: (utcHour: number) => number;
}

/** dB above kT0b of atmospheric noise at 1 MHz (`MEMORY.atmosphericLevels`: within 10 dB or so). */
export function atmosphericAt1MHz({ month, utcHour, position }: PlaceAndTime): number {
	return atmosphericPlace({ month, position }).at1MHz(utcHour);
}

/**
 * How far the day's law of frequency holds, from 0 (night) to 1 (from 10 to 14 local): between the middles of the four-hour blocks it
 * changes as the levels do, so that nothing jumps at 08 and 16.
 */
export function atmosphericDayShare({ utcHour, position: { latDeg, lonDeg } }: Omit<PlaceAndTime, "month">): number {
	return throughTheDay(DAY_BLOCKS, DAY_SHARE_MEAN, utcHour, lonDeg, localShare(latDeg));
}

export function atmosphericPlace({ month, position: { latDeg, lonDeg } }: Omit<PlaceAndTime, "utcHour">): AtmosphericPlace {
	const season = cos(30 * (month - 7) * RADIANS); // 1 in July
	const stormLat = LEVELS.stormLatitude * season;
	const fromStorms = cos(Math.min(Math.abs(latDeg - stormLat), 90) * RADIANS);
	const share = fromStorms * fromStorms;
	const swing = sin(2 * latDeg * RADIANS);
	const local = swing * swing * season * Math.sign(latDeg);
	const levels = LEVELS.blocks.map(([atStorms, atPole, bySeason]) => atPole + (atStorms - atPole) * share + bySeason * local);
	const mean = levels.reduce((sum, level) => sum + level, 0) / BLOCKS;
	const byRegion = regional(latDeg, lonDeg);
	const ofLocalTime = localShare(latDeg);
	return {
		at1MHz: (utcHour) => throughTheDay(levels, mean, utcHour, lonDeg, ofLocalTime) + byRegion,
		dayShare: (utcHour) => throughTheDay(DAY_BLOCKS, DAY_SHARE_MEAN, utcHour, lonDeg, ofLocalTime),
	};
}

/** Linear between the middles of the blocks in mean local time; near the pole, where `share` falls to 0, towards the day's mean. */
function throughTheDay(blocks: readonly number[], mean: number, utcHour: number, lonDeg: number, share: number): number {
	const passed = (utcHour + lonDeg / 15) / BLOCK_HOURS - 0.5;
	const along = passed - BLOCKS * Math.floor(passed / BLOCKS);
	const block = Math.floor(along);
	const before = blocks[block % BLOCKS]!;
	const now = before + (along - block) * (blocks[(block + 1) % BLOCKS]! - before);
	return mean + share * (now - mean);
}

const COS_WHERE_FADING_STARTS = cos(LEVELS.localTimeFadesPolewardOf * RADIANS);

function localShare(latDeg: number): number {
	return Math.min(1, Math.max(0, cos(latDeg * RADIANS) / COS_WHERE_FADING_STARTS));
}

function regional(latDeg: number, lonDeg: number): number {
	const level =
		LEVELS.centreDb * strongest(LEVELS.centres, latDeg, lonDeg) + LEVELS.quietZoneDb * strongest(LEVELS.quietZones, latDeg, lonDeg);
	return Math.abs(latDeg) > LEVELS.halfPolewardOf ? level / 2 : level;
}

/** Nearness to the nearest of some places: 1 there, 1/e at the zone's radius. */
function strongest(places: readonly (readonly [number, number])[], latDeg: number, lonDeg: number): number {
	let cosine = -1;
	for (const [lat, lon] of places) {
		const along = cos(latDeg * RADIANS) * cos(lat * RADIANS) * cos((lonDeg - lon) * RADIANS);
		cosine = Math.max(cosine, sin(latDeg * RADIANS) * sin(lat * RADIANS) + along);
	}
	const radii = acos(Math.min(1, cosine)) / RADIANS / LEVELS.zoneRadius;
	return exp(-radii * radii);
}

/** The law of frequency at one frequency: dB above kT0b = slope times the level at 1 MHz + level. */
export interface AtmosphericLaw {
	readonly slope: number;
	readonly level: number;
}

/** How the noise at fMHz follows from the level at 1 MHz (`MEMORY.atmosphericByFrequency`); below 1 MHz the same line carried on. */
export function atmosphericLaw(of: "night" | "day", fMHz: number): AtmosphericLaw {
	const { at10MHz, slope, around, dip, perDecadeAbove } = LAW[of];
	const u = log10(fMHz);
	const level10 = at10MHz - slope * around;
	if (u > 1) return { slope, level: level10 - perDecadeAbove * (u - 1) };
	return { slope: 1 + (slope - 1) * u, level: level10 * u - dip * u * (1 - u) };
}

import type { VoyageSample } from "@skipwright/job";
import { distanceKm, NAUTICAL_MILE_KM, solarZenithDeg, subsolarPoint, ZENITH_DEG } from "@skipwright/sphere";
import { dayStartMs, type Position } from "@skipwright/units";
import type { HeardFrom, Hearing } from "./hearing.ts";

/**
 * Nautical miles for each megahertz by day; by night two to three times that. Source: Fisheries observer programme manual of the
 * U.S. oceanic administration, part 2, appendix on radios.
 */
const DAY_NM_PER_MHZ = 100;
const NIGHT_TIMES = { sure: 2, lost: 3 } as const;
/** How far beyond the day's figure something may still be heard. Own choice: the manual says "roughly". */
const DAY_TIMES = { sure: 1, lost: 1.5 } as const;

/** nm. A station this near is heard by its ground wave on any band: the least of the printed figures, 50 to 200 (sailing press). */
const GROUND_WAVE_NM = 50;
/** nm. Below 1.6 MHz (NAVTEX) the figure by megahertz means nothing; a GMDSS provider gives 300 for MF telex and DSC by ground wave. */
const MF_NM = 300;
const MF_BELOW_HZ = 1_605_000;

/**
 * nm nearer than which a high band is skipped over. 16 and 22 MHz from a weather-receiver handbook; it gives 600 for 12 MHz, where users
 * count on nothing within 200 to 400 (our inference).
 */
const SKIP_NM: readonly { readonly fromHz: number; readonly nm: number }[] = [
	{ fromHz: 20_000_000, nm: 1_000 },
	{ fromHz: 16_000_000, nm: 800 },
	{ fromHz: 12_000_000, nm: 400 },
];

const MS_PER_MINUTE = 60_000;

/**
 * The handbook rule of distance: roughly 100 nautical miles a megahertz by day, two to three times that by night, high bands not near at
 * hand. A rule of thumb, which knows no season, sunspots, power, aerial or noise: not a prediction.
 */
export function handbookHearing(): Hearing {
	const distances = new WeakMap<VoyageSample, Map<string, number>>();
	const distanceNm = (from: HeardFrom, where: Position, sample: VoyageSample) => {
		const known = distances.get(sample) ?? new Map<string, number>();
		distances.set(sample, known);
		const nm = known.get(from.station.id) ?? distanceKm(where, sample.position) / NAUTICAL_MILE_KM;
		known.set(from.station.id, nm);
		return nm;
	};
	return {
		basis: "handbook rule of thumb: 100 nautical miles a megahertz by day, two to three times that by night; not a prediction",
		heard(from, sample, minute) {
			const where = from.station.position;
			if (where === null) return null;
			const { hz } = from.listing;
			const nm = distanceNm(from, where, sample);
			if (nm <= GROUND_WAVE_NM) return 1;
			if (hz < MF_BELOW_HZ) return nm <= MF_NM ? 1 : 0;
			if (nm < skipNm(hz)) return 0;
			const bandNm = (DAY_NM_PER_MHZ * hz) / 1_000_000;
			const night = fading(nm, bandNm, NIGHT_TIMES);
			if (night === 0) return 0; // the day's figure is shorter
			const share = daylight(dayStartMs(sample.date) + minute * MS_PER_MINUTE, where, sample.position);
			return share * fading(nm, bandNm, DAY_TIMES) + (1 - share) * night;
		},
		heardShip: () => null, // the rule knows no power and no aerial
	};
}

function skipNm(hz: number): number {
	return SKIP_NM.find(({ fromHz }) => hz >= fromHz)?.nm ?? 0;
}

/** 1 up to the sure distance, falling evenly to 0 at the lost one. */
function fading(nm: number, bandNm: number, { sure, lost }: { readonly sure: number; readonly lost: number }): number {
	const times = nm / bandNm;
	if (times <= sure) return 1;
	return times >= lost ? 0 : (lost - times) / (lost - sure);
}

/** 1 with the sun up at both ends, 0 at neither, a half between. */
function daylight(atMs: number, ...ends: readonly Position[]): number {
	const sun = subsolarPoint(atMs);
	return ends.filter((end) => solarZenithDeg(end, sun) < ZENITH_DEG.sunrise).length / ends.length;
}

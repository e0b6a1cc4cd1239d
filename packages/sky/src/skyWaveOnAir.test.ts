import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { distanceKm } from "@skipwright/sphere";
import { type Position, position, readCsv } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { MEMORY } from "./fromMemory.ts";
import { mapIonosphere } from "./mapIonosphere.ts";
import { skyPath } from "./path.ts";
import { ISOTROPIC } from "./pathGain.ts";
import { skyWaveDb } from "./skyWave.ts";
import { skyDay, skyHour } from "./skyWaveHour.ts";
import { skyMonth } from "./skyWaveMonth.ts";
import { skipDistanceKm } from "./skyWaveSkip.ts";

/** A 5 W transmitter heard on 29 May 2023, 2220 to 2312 UTC; smoothed sunspot number of the old scale 87. */
const SENDER = position(45.5, -93);
const [F_MHZ, POWER_W, BANDWIDTH_HZ] = [10.14, 5, 2500];
const THAT_MONTH = { year: 2023, month: 5 };
const ionosphere = mapIonosphere({ ...THAT_MONTH, r12: 87 });
const month = skyMonth({ ...THAT_MONTH, sunspots: 87 });

/** Reports by listeners on the air: not ours to ship. */
const REPORTS = join(import.meta.dirname, "../../../../shared/facts/propagation/reach-sample-10MHz-2023.csv");
const COLUMNS = "utc_hour,tx_square,rx_square,f_MHz,distance_km,azimuth_deg,tx_power_W,reports,snr_median_dB_in_2500Hz".split(",");
const haveReports = existsSync(REPORTS);
if (!haveReports) console.log("skipped: no reports on the air to score against");

describe("10 MHz on 29 May 2023", () => {
	it("is skipped over up to a distance between 500 and 900 km to the north, east and south, where the reports begin", () => {
		const found: Record<string, number | null> = {};
		for (const utcHour of [22, 23]) {
			for (const bearingDeg of [0, 45, 90, 135, 180]) {
				found[`${utcHour} UTC towards ${bearingDeg}`] = skipDistanceKm(
					{ from: SENDER, bearingDeg, fMHz: F_MHZ, utcHour },
					ionosphere,
					month,
				);
			}
		}
		console.log("skip distance, km:", found);
		const distances = Object.values(found);
		expect(distances.length).toBe(10);
		for (const km of distances) {
			expect(km).toBeGreaterThan(500);
			expect(km).toBeLessThan(900);
		}
	});

	it.skipIf(!haveReports)("falls with distance as the reports do, within 12 dB of their medians", () => {
		const { rows } = readCsv("reports", readFileSync(REPORTS, "utf8"), { required: COLUMNS });
		expect(rows.length).toBe(117);
		const heard = rows.map(({ cells }) => {
			const to = middleOfSquare(cells["rx_square"]!);
			const utcHour = Number(cells["utc_hour"]!.slice(11, 13));
			return { km: distanceKm(SENDER, to), measuredDb: Number(cells["snr_median_dB_in_2500Hz"]), predictedDb: snrDb(to, utcHour) };
		});
		const edges = [600, 1000, 1400, 2000, 3000, 20_000];
		const bins = edges.slice(1).map((upTo, index) => {
			const within = heard.filter(({ km }) => km >= edges[index]! && km < upTo);
			return {
				fromKm: edges[index]!,
				squares: within.length,
				measuredDb: median(within.map(({ measuredDb }) => measuredDb)),
				predictedDb: median(within.map(({ predictedDb }) => predictedDb)),
			};
		});
		console.log("median S/N in 2500 Hz by distance:", bins);
		expect(bins.reduce((sum, { squares }) => sum + squares, 0)).toBe(117);
		for (const { squares, measuredDb, predictedDb } of bins) {
			expect(squares).toBeGreaterThan(10);
			expect(Math.abs(predictedDb - measuredDb)).toBeLessThan(12);
		}
		const predicted = bins.map(({ predictedDb }) => predictedDb);
		expect(predicted).toEqual([...predicted].sort((a, b) => b - a));
	});
});

/** With isotropic aerials, against residential noise. */
function snrDb(to: Position, utcHour: number): number {
	const signalDbw =
		10 * Math.log10(POWER_W) + skyWaveDb(skyHour(skyDay(skyPath(SENDER, to), ionosphere, month), utcHour), F_MHZ, ISOTROPIC);
	const { c, d } = MEMORY.manMadeNoise.value.residential;
	return signalDbw - (c - d * Math.log10(F_MHZ) + 10 * Math.log10(BANDWIDTH_HZ) - 204);
}

/** Middle of a field of the worldwide locator of 2 by 1 degrees: two letters of 20 and 10 degrees, two digits of 2 and 1. */
function middleOfSquare(square: string): Position {
	const letter = (index: number) => square.charCodeAt(index) - "A".charCodeAt(0);
	return position(10 * letter(1) - 90 + Number(square[3]) + 0.5, 20 * letter(0) - 180 + 2 * Number(square[2]) + 1);
}

function median(values: readonly number[]): number {
	return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

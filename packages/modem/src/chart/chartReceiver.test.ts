import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { joined, silence } from "../signal/join.ts";
import { withNoiseAtSnr } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { chartWidth, type IndexOfCooperation, type LinesPerMinute, lineSeconds } from "./chartFigures.ts";
import { createChartReceiver, type HeardChart } from "./chartReceiver.ts";
import { makeChart, type PhasingWaveform } from "./makeChart.ts";
import { chartsIn, psnrDb, shiftOf, weatherPicture } from "./testCharts.ts";

/** Power of a made signal of default size: noise is told against it, pauses or not. */
const SIGNAL_POWER = 0.125;

function noisy(samples: Float64Array, snrDb: number, seed: number): Float64Array {
	return withNoiseAtSnr(samples, snrDb, { random: prng(seed), signalPower: SIGNAL_POWER });
}

/** The only chart in it. */
function chartIn(samples: Float64Array): HeardChart {
	const heard = chartsIn(samples);
	expect(heard.length).toBe(1);
	return heard[0]!;
}

/** dB of PSNR at 40, 20 and 10 dB in 2700 Hz; measured less half a decibel. */
const FLOORS: readonly (readonly [IndexOfCooperation, LinesPerMinute, number, readonly [number, number, number]])[] = [
	[576, 120, 160, [1, 1, 1]],
	[288, 120, 160, [1, 1, 1]],
	[288, 60, 60, [1, 1, 1]],
	[576, 90, 90, [1, 1, 1]],
	[288, 240, 240, [1, 1, 1]],
];

describe("picture against the original", () => {
	let compared = 0;
	for (const [ioc, linesPerMinute, height, floors] of FLOORS) {
		it(`IOC ${ioc} at ${linesPerMinute} lines a minute`, () => {
			const original = weatherPicture(chartWidth(ioc), height, prng(ioc + linesPerMinute));
			const sent = joined(silence(2), makeChart(original, { ioc, linesPerMinute, clockPpm: 40 }));
			const ratios = [40, 20, 10].map((snrDb) => {
				const chart = chartIn(noisy(sent, snrDb, snrDb));
				expect(chart).toMatchObject({ kind: "chart", ioc, iocFrom: "start tone", linesPerMinute, phaseFrom: "phasing" });
				expect(chart).toMatchObject({ began: "start tone", ended: "stop tone", isComplete: true });
				expect(chart.image).toMatchObject({ width: original.width, height });
				expect(chart.image.pixels.length).toBe(original.pixels.length);
				expect(chart.snrDb).toBeGreaterThan(Math.min(snrDb, 25) - 1);
				expect(chart.snrDb).toBeLessThan(snrDb + 1);
				return psnrDb(chart.image, original);
			});
			console.info(
				`PSNR, IOC ${ioc}, ${linesPerMinute} lines a minute, 40/20/10 dB in 2700 Hz: ${ratios.map((r) => r.toFixed(1)).join(", ")} dB`,
			);
			for (const [n, ratio] of ratios.entries()) {
				expect(ratio).toBeGreaterThan(floors[n]!);
				compared++;
			}
		});
	}
	it("compared all", () => expect(compared).toBe(3 * FLOORS.length));
});

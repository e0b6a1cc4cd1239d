import { describe, expect, it } from "vitest";
import { joined, silence } from "../signal/join.ts";
import { prng } from "../signal/random.ts";
import { chartWidth, type GreyImage, type IndexOfCooperation, type LinesPerMinute } from "./chartFigures.ts";
import { inNoise, onlyChartIn, psnrDb, shiftOf, weatherPicture } from "./charts.sample.ts";
import { type ChartOptions, makeChart } from "./makeChart.ts";

const USUAL = { ioc: 288, linesPerMinute: 120 } as const;
/** A short chart: 5 s, 15 s of phasing, 60 lines, 5 s. */
const SHORT = { ...USUAL, phasingS: 15, blackS: 1 };
const PICTURE = weatherPicture(chartWidth(288), 60, prng(60));

function inverted({ pixels, ...size }: GreyImage): GreyImage {
	return { ...size, pixels: pixels.map((grey) => 255 - grey) };
}

/** dB of PSNR at 40, 20 and 10 dB (in 2700 Hz); measured, less about half a decibel. */
const FLOORS: readonly (readonly [IndexOfCooperation, LinesPerMinute, number, readonly [number, number, number]])[] = [
	[576, 120, 160, [25.8, 22.3, 16.8]],
	[288, 120, 60, [32.2, 27.6, 20.9]],
	[288, 60, 30, [37.2, 33.5, 26.8]],
];

describe("picture against the original", () => {
	let compared = 0;
	for (const [ioc, linesPerMinute, height, floors] of FLOORS) {
		it(`IOC ${ioc} at ${linesPerMinute} lines a minute`, () => {
			const original = weatherPicture(chartWidth(ioc), height, prng(ioc + linesPerMinute));
			const sent = joined(silence(1), makeChart(original, { ioc, linesPerMinute, clockPpm: 40, blackS: 1 }));
			const ratios = [40, 20, 10].map((snrDb) => {
				const chart = onlyChartIn(inNoise(sent, snrDb, snrDb));
				expect(chart).toMatchObject({ kind: "chart", ioc, iocFrom: "start tone", linesPerMinute, phaseFrom: "phasing" });
				expect(chart).toMatchObject({ began: "start tone", ended: "stop tone", isComplete: true });
				expect([chart.image.width, chart.image.height, chart.image.pixels.length]).toEqual([
					original.width,
					height,
					original.pixels.length,
				]);
				expect(chart.snrDb).toBeGreaterThan(Math.min(snrDb, 25) - 1);
				expect(chart.snrDb).toBeLessThan(snrDb + 1);
				expect(Math.abs(chart.audioHz - 1900)).toBeLessThan(3 * chart.uncertaintyHz);
				expect(Math.abs(chart.clockPpm - 40)).toBeLessThan(3 * chart.clockUncertaintyPpm);
				expect(chart.startS).toBeCloseTo(1, 0);
				expect(chart.endS).toBeCloseTo(36 + (height * 60) / linesPerMinute, 1);
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

describe("slant and phase", () => {
	it("100 ppm leave less than one element in 500 lines, IOC 576", () => {
		const original = weatherPicture(chartWidth(576), 420, prng(7));
		const sent = makeChart(original, { ioc: 576, linesPerMinute: 120, clockPpm: 100, startS: 3, blackS: 1 });
		const { image, clockPpm } = onlyChartIn(inNoise(sent, 20));
		expect(image.height).toBe(420);
		const top = shiftOf(image, original, 0, 60);
		const bottom = shiftOf(image, original, 360, 420);
		const drift = ((bottom - top) / 360) * 500;
		console.info(
			`100 ppm, IOC 576, 20 dB: ${clockPpm.toFixed(2)} ppm found, ${drift.toFixed(2)} elements in 500 lines left, top ${top.toFixed(2)}`,
		);
		expect(Math.abs(drift)).toBeLessThan(1);
		expect(Math.abs(top)).toBeLessThan(1);
	});

	it("each waveform of phasing, each line rate, gives the left edge", () => {
		let compared = 0;
		for (const phasing of ["white pulse", "black pulse", "halves"] as const) {
			for (const linesPerMinute of phasing === "white pulse" ? ([60, 90, 120, 240] as const) : ([60, 120] as const)) {
				const original = linesPerMinute === 60 ? weatherPicture(chartWidth(288), 20, prng(3)) : PICTURE;
				const chart = onlyChartIn(inNoise(makeChart(original, { ...SHORT, linesPerMinute, phasing }), 25));
				expect([chart.linesPerMinute, chart.image.height]).toEqual([linesPerMinute, original.height]);
				expect(Math.abs(shiftOf(chart.image, original, 0, original.height))).toBeLessThan(0.5);
				compared++;
			}
		}
		expect(compared).toBe(8);
	});
});

describe("tuning and shades", () => {
	it("measures the middle of a set off tune, a narrow shift and the wrong sideband", () => {
		const cases: readonly (readonly [Partial<ChartOptions>, number])[] = [
			[{ centreHz: 1_900 }, 15],
			[{ centreHz: 1_640 }, 15],
			[{ centreHz: 2_150 }, 15],
			[{ centreHz: 1_927.5 }, 5],
			[{ deviationHz: 150 }, 20],
			[{ deviationHz: -400, centreHz: 1_880 }, 15],
		];
		for (const [options, snrDb] of cases) {
			const chart = onlyChartIn(inNoise(makeChart(PICTURE, { ...SHORT, ...options }), snrDb));
			const { centreHz = 1_900, deviationHz = 400 } = options;
			expect(Math.abs(chart.audioHz - centreHz)).toBeLessThan(3 * chart.uncertaintyHz);
			expect(chart.uncertaintyHz).toBeLessThan(2);
			expect(Math.abs(chart.whiteHz - chart.blackHz - 2 * Math.abs(deviationHz))).toBeLessThan(20);
			const sent = deviationHz < 0 ? inverted(PICTURE) : PICTURE;
			expect(psnrDb(chart.image, sent)).toBeGreaterThan(12);
		}
	});
});

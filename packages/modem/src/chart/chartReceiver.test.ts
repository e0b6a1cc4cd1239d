import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { joined, scaled, silence } from "../signal/join.ts";
import { withImpulses, withNoiseAtSnr } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { createResampler } from "../signal/resample.ts";
import { chartWidth, type GreyImage, type IndexOfCooperation, type LinesPerMinute } from "./chartFigures.ts";
import { createChartReceiver, type HeardChart } from "./chartReceiver.ts";
import { type ChartOptions, makeChart } from "./makeChart.ts";
import { chartsIn, psnrDb, shiftOf, weatherPicture } from "./testCharts.ts";

/** Power of a made signal of default size: noise is told against it, pauses or not. */
const SIGNAL_POWER = 0.125;
const USUAL = { ioc: 288, linesPerMinute: 120 } as const;
/** A short chart: 5 s, 15 s of phasing, 60 lines, 5 s. */
const SHORT = { ...USUAL, phasingS: 15, blackS: 1 };
const PICTURE = weatherPicture(chartWidth(288), 60, prng(60));

function noisy(samples: Float64Array, snrDb: number, seed = 1): Float64Array {
	return withNoiseAtSnr(samples, snrDb, { random: prng(seed), signalPower: SIGNAL_POWER });
}

/** The only chart in it. */
function chartIn(samples: Float64Array): HeardChart {
	const heard = chartsIn(samples);
	expect(heard.length).toBe(1);
	return heard[0]!;
}

function inverted({ pixels, ...size }: GreyImage): GreyImage {
	return { ...size, pixels: pixels.map((grey) => 255 - grey) };
}

/** dB of PSNR at 40, 20 and 10 dB (in 2700 Hz); measured, less about half a decibel. */
const FLOORS: readonly (readonly [IndexOfCooperation, LinesPerMinute, number, readonly [number, number, number]])[] = [
	[576, 120, 160, [25.8, 22.3, 16.8]],
	[288, 120, 80, [32.2, 27.6, 20.9]],
	[288, 60, 30, [37.2, 33.5, 26.8]],
];

describe("picture against the original", () => {
	let compared = 0;
	for (const [ioc, linesPerMinute, height, floors] of FLOORS) {
		it(`IOC ${ioc} at ${linesPerMinute} lines a minute`, () => {
			const original = weatherPicture(chartWidth(ioc), height, prng(ioc + linesPerMinute));
			const sent = joined(silence(1), makeChart(original, { ioc, linesPerMinute, clockPpm: 40, blackS: 1 }));
			const ratios = [40, 20, 10].map((snrDb) => {
				const chart = chartIn(noisy(sent, snrDb, snrDb));
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
		const { image, clockPpm } = chartIn(noisy(sent, 20));
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
				const chart = chartIn(noisy(makeChart(original, { ...SHORT, linesPerMinute, phasing }), 25));
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
			const chart = chartIn(noisy(makeChart(PICTURE, { ...SHORT, ...options }), snrDb));
			const { centreHz = 1_900, deviationHz = 400 } = options;
			expect(Math.abs(chart.audioHz - centreHz)).toBeLessThan(3 * chart.uncertaintyHz);
			expect(chart.uncertaintyHz).toBeLessThan(2);
			expect(Math.abs(chart.whiteHz - chart.blackHz - 2 * Math.abs(deviationHz))).toBeLessThan(20);
			const sent = deviationHz < 0 ? inverted(PICTURE) : PICTURE;
			expect(psnrDb(chart.image, sent)).toBeGreaterThan(12);
		}
	});
});

describe("charts in part", () => {
	const LONG = weatherPicture(chartWidth(288), 150, prng(9));
	const WHOLE = makeChart(LONG, { ...USUAL, blackS: 2, clockPpm: -60 });

	it("joined at any moment of the picture keeps the rest, phase by the margin", () => {
		for (const cutS of [50, 53.3, 61.789]) {
			const chart = chartIn(noisy(WHOLE.subarray(Math.round(cutS * MODEM_RATE_HZ)), 20));
			expect(chart).toMatchObject({ began: "mid-chart", ended: "stop tone", isComplete: false, linesPerMinute: 120, iocFrom: "assumed" });
			expect(chart.phaseFrom).toBe("margin");
			expect(Math.abs(chart.audioHz - 1900)).toBeLessThan(3 * chart.uncertaintyHz);
			// assumed to be of IOC 576: every other element is compared
			const { width, height, pixels } = chart.image;
			expect(width).toBe(chartWidth(576));
			const half = { width: LONG.width, height, pixels: new Uint8Array(LONG.width * height) };
			for (let n = 0; n < half.pixels.length; n++) {
				half.pixels[n] = pixels[Math.floor(n / LONG.width) * width + 2 * (n % LONG.width)]!;
			}
			const skip = LONG.height - height;
			const linesLost = (cutS - 35) / 0.5;
			expect(skip).toBeLessThan(linesLost + 3);
			const rest = { ...LONG, height, pixels: LONG.pixels.subarray(skip * LONG.width) };
			// the margin tells the edge to about a hundredth of the width
			expect(Math.abs(shiftOf(half, rest, 0, height, 20))).toBeLessThan(12);
		}
	});

	it("joined in the phasing tells the edge exactly", () => {
		const chart = chartIn(noisy(WHOLE.subarray(20 * MODEM_RATE_HZ), 20));
		expect(chart).toMatchObject({ began: "phasing", phaseFrom: "phasing", isComplete: true });
		expect(chart.image.height).toBe(150);
	});

	it("faded out, cut off by the stream's end or by the next start, is kept with the reason", () => {
		const half = WHOLE.subarray(0, 60 * MODEM_RATE_HZ); // 35 s, then 50 lines
		const faded = chartIn(noisy(joined(half, silence(30)), 20));
		expect(faded).toMatchObject({ began: "start tone", ended: "faded", isComplete: false });
		expect(Math.abs(faded.image.height - 50)).toBeLessThanOrEqual(2);
		const cut = chartIn(noisy(half, 20));
		expect(cut).toMatchObject({ ended: "end of stream" });
		expect(Math.abs(cut.image.height - 50)).toBeLessThanOrEqual(1);
		const [first, second, ...more] = chartsIn(noisy(joined(half, makeChart(PICTURE, SHORT)), 20));
		expect(more).toEqual([]);
		expect(first).toMatchObject({ ended: "next start tone" });
		expect(first!.image.height).toBe(50);
		expect(second).toMatchObject({ ended: "stop tone", isComplete: true });
		expect(psnrDb(second!.image, PICTURE)).toBeGreaterThan(26);
	});

	it("one after another are separate", () => {
		const charts = chartsIn(noisy(joined(makeChart(PICTURE, SHORT), silence(5), makeChart(PICTURE, { ...SHORT, centreHz: 1_800 })), 20));
		expect(charts.map(({ ended, image }) => [ended, image.height])).toEqual([
			["stop tone", 60],
			["stop tone", 60],
		]);
		for (const [n, chart] of charts.entries()) expect(Math.abs(chart.audioHz - [1_900, 1_800][n]!)).toBeLessThan(3 * chart.uncertaintyHz);
	});
});

describe("whatever the stream", () => {
	const CLEAN = makeChart(PICTURE, SHORT);

	it("begun some samples earlier or later, the picture is the same", () => {
		const reference = chartIn(CLEAN).image;
		for (const samples of [1, 77, 1_000]) {
			const { image } = chartIn(joined(new Float64Array(samples), CLEAN));
			expect(image.height).toBe(reference.height);
			expect(psnrDb(image, reference)).toBeGreaterThan(38);
		}
	});

	it("from other sample rates", () => {
		for (const rateHz of [11_025, 48_000]) {
			const resampler = createResampler(rateHz);
			const samples = makeChart(PICTURE, { ...SHORT, rateHz });
			const chart = chartIn(joined(...resampler.push(samples), ...resampler.end()));
			expect(psnrDb(chart.image, PICTURE)).toBeGreaterThan(28);
		}
	});

	it("with static and steps of level", () => {
		const stepped = CLEAN.map((sample, n) => sample * (Math.floor(n / 20_000) % 2 === 0 ? 1 : 0.05));
		expect(psnrDb(chartIn(noisy(stepped, 40)).image, PICTURE)).toBeGreaterThan(24);
		const struck = withImpulses(noisy(CLEAN, 20), { random: prng(4), perSecond: 10, amplitude: 3 });
		const ratio = psnrDb(chartIn(struck).image, PICTURE);
		console.info(`10 clicks a second, six times the signal's peak, 20 dB: PSNR ${ratio.toFixed(1)} dB`);
		expect(ratio).toBeGreaterThan(18);
	});

	it("shows lines as they come, without copying", () => {
		const receiver = createChartReceiver();
		let [shown, revision, checked] = [0, 0, 0];
		for (let n = 0; n + FRAME_SAMPLES <= CLEAN.length; n += FRAME_SAMPLES) {
			receiver.frame(CLEAN.subarray(n, n + FRAME_SAMPLES));
			const view = receiver.underWay();
			if (view === null) continue;
			expect(view.pixels.length).toBe(view.width * view.height);
			if (view.revision === revision) expect(view.height).toBeGreaterThanOrEqual(shown);
			[shown, revision] = [view.height, view.revision];
			if (view.height < 40) continue;
			expect(psnrDb(view, PICTURE)).toBeGreaterThan(15);
			checked++;
		}
		expect(checked).toBeGreaterThan(100);
		expect(receiver.underWay()).toBeNull();
	});

	it("takes any numbers", () => {
		const random = prng(11);
		const receiver = createChartReceiver();
		const frame = new Float64Array(FRAME_SAMPLES);
		let heard = 0;
		for (let n = 0; n < 3_000; n++) {
			const kind = Math.floor(random() * 6);
			const size = kind === 0 ? 0 : 10 ** (12 * random() - 9);
			for (let k = 0; k < frame.length; k++) frame[k] = kind === 1 ? size : kind === 2 ? (k % 2 ? size : -size) : size * (random() - 0.5);
			heard += receiver.frame(frame).length;
		}
		heard += receiver.end().length + createChartReceiver().end().length;
		expect(heard).toBe(0);
		expect(chartsIn(scaled(CLEAN, 1e-5)).length).toBe(1);
		expect(chartsIn(scaled(CLEAN, 1e5)).length).toBe(1);
	});
});

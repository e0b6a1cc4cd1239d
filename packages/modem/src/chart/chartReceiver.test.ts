import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { joined, scaled, silence } from "../signal/join.ts";
import { withImpulses } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { createResampler } from "../signal/resample.ts";
import { chartWidth } from "./chartFigures.ts";
import { createChartReceiver, type HeardChart } from "./chartReceiver.ts";
import { chartsIn, inNoise, onlyChartIn, psnrDb, shiftOf, weatherPicture } from "./charts.sample.ts";
import { makeChart } from "./makeChart.ts";

const USUAL = { ioc: 288, linesPerMinute: 120 } as const;
/** A short chart: 5 s, 15 s of phasing, 60 lines, 5 s. */
const SHORT = { ...USUAL, phasingS: 15, blackS: 1 };
const PICTURE = weatherPicture(chartWidth(288), 60, prng(60));

describe("charts in part", () => {
	const LONG = weatherPicture(chartWidth(288), 150, prng(9));
	const WHOLE = makeChart(LONG, { ...USUAL, blackS: 2, clockPpm: -60 });

	it("joined at any moment of the picture keeps the rest, phase by the margin", () => {
		for (const cutS of [50, 61.789]) {
			const chart = onlyChartIn(inNoise(WHOLE.subarray(Math.round(cutS * MODEM_RATE_HZ)), 20));
			expect(chart).toMatchObject({ began: "mid-chart", ended: "stop tone", isComplete: false, linesPerMinute: 120 });
			expect(chart).toMatchObject({ phaseFrom: "margin", ioc: 288, iocFrom: "shape" });
			expect(Math.abs(chart.audioHz - 1900)).toBeLessThan(3 * chart.uncertaintyHz);
			const { width, height } = chart.image;
			expect(width).toBe(LONG.width);
			const skip = LONG.height - height;
			expect(skip).toBeLessThan((cutS - 35) / 0.5 + 3);
			const rest = { ...LONG, height, pixels: LONG.pixels.subarray(skip * LONG.width) };
			// the margin tells the edge to about a hundredth of the width
			expect(Math.abs(shiftOf(chart.image, rest, 0, height, 20))).toBeLessThan(12);
		}
	});

	it("joined in the phasing tells the edge exactly", () => {
		const chart = onlyChartIn(inNoise(WHOLE.subarray(20 * MODEM_RATE_HZ), 20));
		expect(chart).toMatchObject({ began: "phasing", phaseFrom: "phasing", isComplete: true, ioc: 288, iocFrom: "shape" });
		expect(chart.image.height).toBe(150);
	});

	it("faded out, cut off by the stream's end or by the next start, is kept with the reason", () => {
		const half = WHOLE.subarray(0, 60 * MODEM_RATE_HZ); // 35 s, then 50 lines
		const faded = onlyChartIn(inNoise(joined(half, silence(30)), 20));
		expect(faded).toMatchObject({ began: "start tone", ended: "faded", isComplete: false });
		expect(Math.abs(faded.image.height - 50)).toBeLessThanOrEqual(2);
		const cut = onlyChartIn(inNoise(half, 20));
		expect(cut).toMatchObject({ ended: "end of stream" });
		expect(Math.abs(cut.image.height - 50)).toBeLessThanOrEqual(1);
		const [first, second, ...more] = chartsIn(inNoise(joined(half, makeChart(PICTURE, SHORT)), 20));
		expect(more).toEqual([]);
		expect(first).toMatchObject({ ended: "next start tone" });
		expect(first!.image.height).toBe(50);
		expect(second).toMatchObject({ ended: "stop tone", isComplete: true });
		expect(psnrDb(second!.image, PICTURE)).toBeGreaterThan(26);
	});

	it("longer than the limit are given in pieces, one following the other", () => {
		const receiver = createChartReceiver(40);
		const heard: HeardChart[] = [];
		const samples = inNoise(WHOLE, 20);
		for (let n = 0; n + FRAME_SAMPLES <= samples.length; n += FRAME_SAMPLES)
			heard.push(...receiver.frame(samples.subarray(n, n + FRAME_SAMPLES)));
		heard.push(...receiver.end());
		expect(heard.map(({ ended }) => ended)).toEqual(["too long", "too long", "stop tone"]);
		expect(heard.every(({ ioc, iocFrom }) => ioc === 288 && iocFrom === "start tone")).toBe(true);
		const lines = heard.reduce((sum, { image }) => sum + image.height, 0);
		expect(lines).toBeGreaterThan(LONG.height - 5); // at each border up to a line is lost on either side
		expect(lines).toBeLessThanOrEqual(LONG.height);
	});

	it("one after another are separate", () => {
		const charts = chartsIn(inNoise(joined(makeChart(PICTURE, SHORT), silence(5), makeChart(PICTURE, { ...SHORT, centreHz: 1_800 })), 20));
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
		const reference = onlyChartIn(CLEAN).image;
		for (const samples of [1, 77, 1_000]) {
			const { image } = onlyChartIn(joined(new Float64Array(samples), CLEAN));
			expect(image.height).toBe(reference.height);
			expect(psnrDb(image, reference)).toBeGreaterThan(38);
		}
	});

	it("from other sample rates", () => {
		for (const rateHz of [11_025, 48_000]) {
			const resampler = createResampler(rateHz);
			const samples = makeChart(PICTURE, { ...SHORT, rateHz });
			const chart = onlyChartIn(joined(...resampler.push(samples), ...resampler.end()));
			expect(psnrDb(chart.image, PICTURE)).toBeGreaterThan(28);
		}
	});

	it("with static and steps of level", () => {
		const stepped = CLEAN.map((sample, n) => sample * (Math.floor(n / 20_000) % 2 === 0 ? 1 : 0.05));
		expect(psnrDb(onlyChartIn(inNoise(stepped, 40)).image, PICTURE)).toBeGreaterThan(24);
		const struck = withImpulses(inNoise(CLEAN, 20), { random: prng(4), perSecond: 30, amplitude: 5, decayS: 0.0003 });
		const ratio = psnrDb(onlyChartIn(struck).image, PICTURE);
		console.info(`30 clicks a second, ten times the signal's peak, 20 dB: PSNR ${ratio.toFixed(1)} dB`);
		expect(ratio).toBeGreaterThan(18); // 15.8 where they are not cut down
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

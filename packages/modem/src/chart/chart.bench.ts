import type { Bench } from "../../../../tools/bench-types.ts";
import { measure } from "../../../../tools/measure.ts";
import { joined, silence } from "../signal/join.ts";
import { withNoiseAtSnr } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { createResampler } from "../signal/resample.ts";
import { chartWidth } from "./chartFigures.ts";
import { createChartReceiver } from "./chartReceiver.ts";
import { weatherPicture } from "./charts.sample.ts";
import { makeChart } from "./makeChart.ts";

const RATE_HZ = 48_000;
const LINES = 400;
const BLOCK_SAMPLES = 4_800;

/** A whole chart, IOC 576 at 120 lines a minute, at 20 dB, with a minute of noise before and after: 6 min at 48 kHz. */
function recording(): Float32Array {
	const picture = weatherPicture(chartWidth(576), LINES, prng(1));
	const chart = makeChart(picture, { ioc: 576, linesPerMinute: 120, clockPpm: 60, rateHz: RATE_HZ });
	const pause = silence(60, RATE_HZ);
	const noisy = withNoiseAtSnr(joined(pause, chart, pause), 20, { random: prng(2), signalPower: 0.125, rateHz: RATE_HZ });
	return Float32Array.from(noisy);
}

function resample(samples: Float32Array, take: (frame: Float64Array) => void): void {
	const resampler = createResampler(RATE_HZ);
	for (let from = 0; from < samples.length; from += BLOCK_SAMPLES) {
		for (const frame of resampler.push(samples.subarray(from, from + BLOCK_SAMPLES))) take(frame);
	}
	for (const frame of resampler.end()) take(frame);
}

export const bench: Bench = {
	name: "chart",
	run: () => {
		const samples = recording();
		const work = () => {
			const receiver = createChartReceiver();
			let height = 0;
			const see = (frame: Float64Array) => {
				for (const chart of receiver.frame(frame)) height = chart.image.height;
			};
			resample(samples, see);
			for (const chart of receiver.end()) height = chart.image.height;
			if (height !== LINES) throw new Error(`the chart has ${height} lines instead of ${LINES}: not a fair run`);
		};
		let sum = 0;
		const floor = () => resample(samples, (frame) => (sum += frame[0]!));
		return Promise.resolve([
			{
				what: "receive a chart from 48 kHz, resampling and picture included",
				floor: "resampling alone",
				count: samples.length / RATE_HZ,
				unit: "audio seconds",
				...measure(work, floor, 5),
			},
		]);
	},
};

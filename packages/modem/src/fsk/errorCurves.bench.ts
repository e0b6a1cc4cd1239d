import type { Bench } from "../../../../tools/bench-types.ts";
import { measure } from "../../../../tools/measure.ts";
import { FRAME_SAMPLES } from "../receiver.ts";
import { joined, mixed, silence } from "../signal/join.ts";
import { keyedBits } from "../signal/keyed.ts";
import { whiteNoise } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { createResampler } from "../signal/resample.ts";
import { createFskDemodulator } from "./demodulate.ts";
import {
	countedErrors,
	countedRatioFor,
	FADING_REFERENCES,
	FADING_TRIALS,
	type Reference,
	ratioFor,
	STEADY_REFERENCES,
	STEADY_TRIALS,
	type Trial,
} from "./errorCurves.sample.ts";
import { randomBits, SHIFT_HZ } from "./keying.sample.ts";

const BITS = 100_000;
const SECONDS = 60;
const RATE_HZ = 48_000;

/** Bits counted wrong beside the textbook's curves, by how many decibels more or less the textbook needs; then speed from 48 kHz. */
export const bench: Bench = {
	name: "errorCurves",
	run: () => {
		printCurves("White noise", STEADY_TRIALS, STEADY_REFERENCES);
		printCurves("Moderate fading at middle latitudes (F.1487: two paths, 1 ms, 0.5 Hz)", FADING_TRIALS, FADING_REFERENCES);
		const audio = mixed(
			whiteNoise(SECONDS * RATE_HZ, 0.01, prng(1)),
			joined(silence(5, RATE_HZ), keyedBits(randomBits(5_000, 2), { baud: 100, lowHz: 1_615, highHz: 1_785, rateHz: RATE_HZ })),
		);
		const resampled = () => {
			const resampler = createResampler(RATE_HZ);
			return [...resampler.push(audio), ...resampler.end()];
		};
		const frames = resampled();
		const demodulated = (given: readonly Float64Array[]) => {
			const demodulator = createFskDemodulator({ baud: 100, shiftHz: SHIFT_HZ });
			return [...given.flatMap((frame) => demodulator.frame(frame)), ...demodulator.end()].length;
		};
		const shared = { count: SECONDS, unit: "s of audio" };
		return Promise.resolve([
			{
				what: `soft bits of ${SECONDS} s at ${RATE_HZ} Hz, ${frames.length} frames of ${FRAME_SAMPLES}`,
				floor: "bringing it to 8000 Hz alone",
				...shared,
				...measure(() => demodulated(resampled()), resampled),
			},
			{
				what: "the same from 8000 Hz on",
				floor: "two correlations of each bit, all known",
				...shared,
				...measure(
					() => demodulated(frames),
					() => bareCorrelations(frames),
				),
			},
		]);
	},
};

function printCurves(title: string, trials: readonly Trial[], references: readonly Reference[]): void {
	const first = references[0]!;
	console.log(
		`\n${title}, ${BITS.toLocaleString("en")} bits a point; dB in brackets: what the first reference would need for that rate, less what was given`,
	);
	for (const { name, rate } of references)
		console.log(`  ${name}: 1e-3 at ${ratioFor(1e-3, rate).toFixed(2)} dB, 1e-2 at ${ratioFor(1e-2, rate).toFixed(2)} dB`);
	for (const trial of trials) {
		const counts = countedErrors(trial, BITS);
		console.log(`  ${trial.name}`);
		for (const { ebN0Db, bits, wrong } of counts) {
			const gain = wrong === 0 ? "" : ` (${(ratioFor(wrong / bits, first.rate) - ebN0Db).toFixed(2)} dB)`;
			const beside = references.map(({ rate }) => rate(ebN0Db).toExponential(2)).join(", ");
			console.log(`    ${ebN0Db.toFixed(1).padStart(5)} dB: ${wrong} wrong, ${(wrong / bits).toExponential(2)}${gain}; ${beside}`);
		}
		for (const rate of [1e-2, 1e-3]) {
			const needed = countedRatioFor(rate, counts);
			if (needed === null) continue;
			const gain = ratioFor(rate, first.rate) - needed;
			console.log(`    ${rate}: ${needed.toFixed(2)} dB, ${Math.abs(gain).toFixed(2)} dB ${gain > 0 ? "less" : "more"} than the textbook`);
		}
	}
}

/** Each sample turned against two tones and added up, bit by bit: what a receiver does that knows centre, clock and levels. */
function bareCorrelations(frames: readonly Float64Array[]): number {
	let highs = 0;
	const sums = [0, 0, 0, 0];
	const turns = [1_615, 1_785].map((hz) => (2 * Math.PI * hz) / 8_000);
	const tables = turns.flatMap((turn) => [
		Float64Array.from({ length: 80 }, (_, i) => Math.cos(turn * i)),
		Float64Array.from({ length: 80 }, (_, i) => Math.sin(turn * i)),
	]);
	let at = 0;
	for (const frame of frames) {
		for (let i = 0; i < frame.length; i++) {
			for (let t = 0; t < 4; t++) sums[t]! += frame[i]! * tables[t]![at]!;
			if (++at < 80) continue;
			at = 0;
			if (sums[2]! ** 2 + sums[3]! ** 2 > sums[0]! ** 2 + sums[1]! ** 2) highs++;
			sums.fill(0);
		}
	}
	return highs;
}

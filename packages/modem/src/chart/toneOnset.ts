import { cos, sin } from "@skipwright/units";
import { MODEM_RATE_HZ } from "../receiver.ts";
import type { Track } from "./track.ts";

/** Samples looked at at a time: 16 ms. */
const STEP_SAMPLES = 128;
/** Steps before and after the coarse onset. */
const BEFORE = 20,
	AFTER = 20;
/** Steps in a row that must hold the tone. */
const ROW = 4;

/** Sample at which an alternation of black and white at `toneHz` begins, to 16 ms, from a coarse onset good to a quarter of a second. */
export function toneOnset(track: Track, coarse: number, toneHz: number): number {
	const sizes = Array.from({ length: BEFORE + AFTER }, (_, step) => size(track, coarse + (step - BEFORE) * STEP_SAMPLES, toneHz));
	const full = sizes.toSorted((a, b) => a - b)[Math.floor(0.75 * sizes.length)]!;
	for (let step = 0; step + ROW <= sizes.length; step++) {
		if (sizes.slice(step, step + ROW).every((one) => one > full / 2)) return coarse + (step - BEFORE) * STEP_SAMPLES;
	}
	return coarse;
}

function size(track: Track, from: number, toneHz: number): number {
	const hz = new Float64Array(STEP_SAMPLES);
	track.copy(from, hz);
	const mean = hz.reduce((sum, value) => sum + value, 0) / hz.length;
	const angle = (2 * Math.PI * toneHz) / MODEM_RATE_HZ;
	let [i, q] = [0, 0];
	for (let n = 0; n < hz.length; n++) {
		i += (hz[n]! - mean) * cos(angle * n);
		q += (hz[n]! - mean) * sin(angle * n);
	}
	return Math.sqrt(i * i + q * q);
}

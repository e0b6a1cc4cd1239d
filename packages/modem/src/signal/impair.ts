import { cos, pow, sin } from "@skipwright/units";
import { MODEM_RATE_HZ } from "../receiver.ts";
import { analytic } from "./analytic.ts";
import { resample } from "./resample.ts";

/** All frequencies higher by `offsetHz`, and by `driftHzPerS` more each second: a set off tune and warming up. */
export function offTune(samples: Float64Array, offsetHz: number, driftHzPerS = 0, rateHz: number = MODEM_RATE_HZ): Float64Array {
	const { real, imaginary } = analytic(samples, rateHz);
	return samples.map((_, n) => {
		const t = n / rateHz;
		const turns = t * (offsetHz + (driftHzPerS * t) / 2);
		const angle = 2 * Math.PI * (turns - Math.floor(turns));
		return real[n]! * cos(angle) - imaginary[n]! * sin(angle);
	});
}

/** As a recorder hears it whose clock is fast by `ppm` parts in a million: more samples, all tones read low. */
export function recordedFast(samples: Float64Array, ppm: number, rateHz: number = MODEM_RATE_HZ): Float64Array {
	return resample(samples, rateHz, rateHz * (1 + ppm / 1e6));
}

/** Cut off at `level` on both sides: an overdriven sound card. */
export function clipped(samples: Float64Array, level: number): Float64Array {
	return samples.map((sample) => Math.max(-level, Math.min(level, sample)));
}

/** The level changed by `gainDb` against the start, from `atS` on. */
export interface LevelStep {
	readonly atS: number;
	readonly gainDb: number;
}

/** Steps of the level, in order of time: another hand on the volume, a gain control that jumps. */
export function stepped(samples: Float64Array, steps: readonly LevelStep[], rateHz: number = MODEM_RATE_HZ): Float64Array {
	const output = samples.slice();
	for (const [i, { atS, gainDb }] of steps.entries()) {
		const factor = pow(10, gainDb / 20);
		const to = Math.min(output.length, Math.round((steps[i + 1]?.atS ?? Number.POSITIVE_INFINITY) * rateHz));
		for (let n = Math.max(0, Math.round(atS * rateHz)); n < to; n++) output[n] = output[n]! * factor;
	}
	return output;
}

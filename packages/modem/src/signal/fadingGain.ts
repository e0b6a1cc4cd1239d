import { exp } from "@skipwright/units";
import { MODEM_RATE_HZ } from "../receiver.ts";
import type { Analytic } from "./analytic.ts";
import { gaussian, type Random } from "./random.ts";

/** Points of the gain worked out in the time 1 / sigma; between them a cubic, whose error is below -60 dB. */
const POINTS = 32;

/** The filter's impulse response is followed until it has fallen to e^-20. */
const REACH = Math.sqrt(20) / (2 * Math.PI);

/**
 * Gain of one path, sample by sample: a complex Gaussian process of mean power 1 whose spectrum is a Gaussian with standard deviation `sigmaHz`
 * about 0 Hz, so that its envelope is Rayleigh's. White noise through a filter with the response exp(-(f / 2 sigma)^2).
 */
export function fadingGain(count: number, sigmaHz: number, random: Random, rateHz: number = MODEM_RATE_HZ): Analytic {
	const next = gaussian(random);
	const perSample = (POINTS * sigmaHz) / rateHz; // points of the gain
	const reach = Math.ceil(POINTS * REACH);
	const points = Math.ceil(count * perSample) + 4;
	const noise = [0, 1].map(() => new Float64Array(points + 2 * reach));
	for (let i = 0; i < points + 2 * reach; i++) for (const part of noise) part[i] = next();
	const response = Float64Array.from({ length: 2 * reach + 1 }, (_, i) => {
		const turns = (2 * Math.PI * (i - reach)) / POINTS;
		return exp(-turns * turns);
	});
	const power = response.reduce((sum, value) => sum + 2 * value * value, 0); // real and imaginary part have half each
	const [real, imaginary] = noise.map((part) => interpolated(filtered(part, response, 1 / Math.sqrt(power)), count, perSample));
	return { real: real!, imaginary: imaginary! };
}

function filtered(noise: Float64Array, response: Float64Array, scale: number): Float64Array {
	const output = new Float64Array(noise.length - response.length + 1);
	for (let n = 0; n < output.length; n++) {
		let sum = 0;
		for (let k = 0; k < response.length; k++) sum += response[k]! * noise[n + k]!;
		output[n] = scale * sum;
	}
	return output;
}

/** Lagrange's cubic through the four points around each time. */
function interpolated(points: Float64Array, count: number, perSample: number): Float64Array {
	const output = new Float64Array(count);
	for (let n = 0; n < count; n++) {
		const time = n * perSample;
		const i = Math.floor(time);
		const x = time - i;
		const a = x + 1;
		const b = x;
		const c = x - 1;
		const d = x - 2;
		output[n] =
			(-points[i]! * b * c * d) / 6 +
			(points[i + 1]! * a * c * d) / 2 -
			(points[i + 2]! * a * b * d) / 2 +
			(points[i + 3]! * a * b * c) / 6;
	}
	return output;
}

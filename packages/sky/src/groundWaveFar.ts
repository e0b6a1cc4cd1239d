import { cos, exp, log10, sin } from "@skipwright/units";
import type { Complex } from "./complex.ts";
import type { Roots } from "./groundWaveRoots.ts";

/** dB per neper. */
const DB_PER_NEPER = 20 * Math.LOG10E;
/** A term this far under the sum ends the series. */
const SMALLEST_TERM = 1e-6;

/**
 * dB that the attenuation function stands above 1, by the residue series W = sqrt(pi x / j) sum exp(-j x t) / (t - q^2). The first
 * root's decay is taken out of the sum, so that no distance underflows.
 * @param roots enough of them: see `rootsNeeded`
 */
export function farAttenuationDb(x: number, q: Complex, { re, im }: Roots): number {
	const squareRe = q.re * q.re - q.im * q.im;
	const squareIm = 2 * q.re * q.im;
	let sumRe = 0;
	let sumIm = 0;
	for (let s = 0; s < re.length; s++) {
		const size = exp(x * (im[s]! - im[0]!)); // -j x t has the real part x im t
		const angle = -x * (re[s]! - re[0]!);
		const belowRe = re[s]! - squareRe;
		const belowIm = im[s]! - squareIm;
		const inverse = size / (belowRe * belowRe + belowIm * belowIm);
		const cosine = cos(angle);
		const sine = sin(angle);
		const termRe = inverse * (cosine * belowRe + sine * belowIm);
		const termIm = inverse * (sine * belowRe - cosine * belowIm);
		sumRe += termRe;
		sumIm += termIm;
		if (Math.abs(termRe) + Math.abs(termIm) < SMALLEST_TERM * (Math.abs(sumRe) + Math.abs(sumIm))) break;
	}
	return 10 * log10(Math.PI * x * (sumRe * sumRe + sumIm * sumIm)) + DB_PER_NEPER * x * im[0]!;
}

/** How many roots the series takes at most from distance x on: their decay goes as (3 pi s / 2)^(2/3) sin 60 degrees. */
export function rootsNeeded(x: number): number {
	const size = (NEPERS_OF_SMALLEST + 2) / (x * (Math.sqrt(3) / 2));
	return Math.ceil((2 / (3 * Math.PI)) * size * Math.sqrt(size)) + 4;
}

/** ln(1 / SMALLEST_TERM), rounded up. */
const NEPERS_OF_SMALLEST = 14;

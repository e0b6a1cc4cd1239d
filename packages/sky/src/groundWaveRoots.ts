import { pow } from "@skipwright/units";
import { absolute, type Complex, divided, ONE } from "./complex.ts";

/** The first roots of the residue series, as parts: t = re + j im. */
export interface Roots {
	readonly re: Float64Array;
	readonly im: Float64Array;
}

/** Zeros of Ai'(-a) and Ai(-a) (Abramowitz and Stegun table 10.13); later ones by the series of `zeroOfSlope` and `zeroOfValue`. */
const SLOPE_ZEROS = [1.018792971647471, 3.248197582179837, 4.820099211178736, 6.163307355639487, 7.37217725504777, 8.488486734019721];
const VALUE_ZEROS = [2.338107410459767, 4.08794944413097, 5.520559828095551, 6.786708090071759, 7.944133587120853, 9.02265085334098];

/** Runge-Kutta steps. The error is under 1e-7 for the first ten roots and grows to 3e-4 at the 140th, whose term is 1e-6 of the sum. */
const STEPS = 32;

const HALF_ROOT3 = Math.sqrt(3) / 2;

/** Roots of w'(t) = q w(t), in order of their decay. */
export function residueRoots(q: Complex, count: number): Roots {
	const re = new Float64Array(count);
	const im = new Float64Array(count);
	const conducts = absolute(q) < 1;
	const end = conducts ? q : divided(ONE, q);
	for (let s = 0; s < count; s++) {
		const a = conducts ? zeroOfSlope(s) : zeroOfValue(s);
		carry(conducts, end, a / 2, -a * HALF_ROOT3);
		re[s] = carried[0]!;
		im[s] = carried[1]!;
	}
	return { re, im };
}

function zeroOfSlope(s: number): number {
	const y = (3 * Math.PI * (4 * s + 1)) / 8;
	return SLOPE_ZEROS[s] ?? pow(y, 2 / 3) * (1 - 7 / (48 * y * y) + 35 / (288 * y * y * y * y));
}

function zeroOfValue(s: number): number {
	const y = (3 * Math.PI * (4 * s + 3)) / 8;
	return VALUE_ZEROS[s] ?? pow(y, 2 / 3) * (1 + 5 / (48 * y * y) - 5 / (36 * y * y * y * y));
}

/** Where `carry` leaves the root, and `slope` its derivative. Never handed out. */
const carried = new Float64Array(2);
const derivative = new Float64Array(2);

/**
 * Carries a root along the straight line from 0 to `end` by fourth-order Runge-Kutta: dt/dq = 1 / (t - q^2) from a zero of Ai',
 * or dt/du = 1 / (1 - u^2 t), u = 1/q, from a zero of Ai.
 */
function carry(conducts: boolean, end: Complex, startRe: number, startIm: number): void {
	const h = 1 / STEPS;
	let re = startRe;
	let im = startIm;
	for (let step = 0; step < STEPS; step++) {
		const along = step * h;
		slope(conducts, end, along, re, im);
		const re1 = derivative[0]!;
		const im1 = derivative[1]!;
		slope(conducts, end, along + h / 2, re + (h / 2) * re1, im + (h / 2) * im1);
		const re2 = derivative[0]!;
		const im2 = derivative[1]!;
		slope(conducts, end, along + h / 2, re + (h / 2) * re2, im + (h / 2) * im2);
		const re3 = derivative[0]!;
		const im3 = derivative[1]!;
		slope(conducts, end, along + h, re + h * re3, im + h * im3);
		re += (h / 6) * (re1 + 2 * re2 + 2 * re3 + derivative[0]!);
		im += (h / 6) * (im1 + 2 * im2 + 2 * im3 + derivative[1]!);
	}
	carried[0] = re;
	carried[1] = im;
}

/** Leaves end * dt/dz at z = along * end in `derivative`. */
function slope(conducts: boolean, end: Complex, along: number, tRe: number, tIm: number): void {
	const zRe = along * end.re;
	const zIm = along * end.im;
	const squareRe = zRe * zRe - zIm * zIm;
	const squareIm = 2 * zRe * zIm;
	const belowRe = conducts ? tRe - squareRe : 1 - (squareRe * tRe - squareIm * tIm);
	const belowIm = conducts ? tIm - squareIm : -(squareRe * tIm + squareIm * tRe);
	const size = belowRe * belowRe + belowIm * belowIm;
	derivative[0] = (end.re * belowRe + end.im * belowIm) / size;
	derivative[1] = (end.im * belowRe - end.re * belowIm) / size;
}

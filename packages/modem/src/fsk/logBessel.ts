import { log } from "@skipwright/units";

/** Values a unit of x, and up to where: a parabola through the nearest three is within 1e-7. */
const STEPS = 64,
	TABLE_TO = 64;
/** ln I0 at -1 / STEPS, 0, 1 / STEPS and so on to one beyond `TABLE_TO`. */
const TABLE = Float64Array.from({ length: TABLE_TO * STEPS + 3 }, (_, i) => byPolynomial(Math.abs(i - 1) / STEPS));

/** Natural logarithm of the modified Bessel function I0 of x >= 0, within 5e-7. */
export function logBesselI0(x: number): number {
	if (!(x < TABLE_TO)) return byPolynomial(x);
	const at = Math.floor(x * STEPS + 0.5) + 1;
	const away = x * STEPS + 1 - at;
	const before = TABLE[at - 1]!;
	const here = TABLE[at]!;
	const after = TABLE[at + 1]!;
	return here + 0.5 * away * (after - before + away * (after - 2 * here + before));
}

/**
 * Within 5e-7: Abramowitz and Stegun, 9.8.1 and 9.8.2, which is within 1.9e-7 of sqrt(x) exp(-x) I0(x), about 0.4. Coefficients from
 * memory, tested against the power series.
 */
function byPolynomial(x: number): number {
	if (x <= 3.75) {
		const t = (x / 3.75) * (x / 3.75);
		return log(1 + t * (3.5156229 + t * (3.0899424 + t * (1.2067492 + t * (0.2659732 + t * (0.0360768 + t * 0.0045813))))));
	}
	const t = 3.75 / x;
	const far = 0.00916281 + t * (-0.02057706 + t * (0.02635537 + t * (-0.01647633 + t * 0.00392377)));
	return x + log((0.39894228 + t * (0.01328592 + t * (0.00225319 + t * (-0.00157565 + t * far)))) / Math.sqrt(x));
}

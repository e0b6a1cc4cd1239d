import { log } from "@skipwright/units";

/**
 * Natural logarithm of the modified Bessel function I0 of x >= 0, within 5e-7: Abramowitz and Stegun, 9.8.1 and 9.8.2, which is within
 * 1.9e-7 of sqrt(x) exp(-x) I0(x), about 0.4. Coefficients from memory, tested against the power series.
 */
export function logBesselI0(x: number): number {
	if (x <= 3.75) {
		const t = (x / 3.75) * (x / 3.75);
		return log(1 + t * (3.5156229 + t * (3.0899424 + t * (1.2067492 + t * (0.2659732 + t * (0.0360768 + t * 0.0045813))))));
	}
	const t = 3.75 / x;
	const far = 0.00916281 + t * (-0.02057706 + t * (0.02635537 + t * (-0.01647633 + t * 0.00392377)));
	return x + log((0.39894228 + t * (0.01328592 + t * (0.00225319 + t * (-0.00157565 + t * far)))) / Math.sqrt(x));
}

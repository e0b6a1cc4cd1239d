import { absolute, add, type Complex, divided, ONE, polar, scaled, times } from "./complex.ts";

/** The power series loses digits as e^|p|, the asymptotic one leaves e^-|p|: at this |p| both hold five digits or more. */
const LARGEST_P_OF_POWER_SERIES = 16;
const SMALLEST_TERM = 1e-12;
const MOST_TERMS = 150;
const ASYMPTOTIC_TERMS = 12;
const ROOT_PI = Math.sqrt(Math.PI);

/** c_k = sqrt(pi) / Gamma((k + 1) / 2), so that c_k = 2 c_(k-2) / (k - 1). */
const C = new Float64Array(MOST_TERMS + 7);
C[0] = 1;
C[1] = ROOT_PI;
for (let k = 2; k < C.length; k++) C[k] = (2 * C[k - 2]!) / (k - 1);

/**
 * Attenuation function W near the sender: Sommerfeld's and Norton's flat earth F(p) with the first two terms for the curvature,
 * W = F + [1 - j sqrt(pi p) - (1 + 2p) F] / (4 q^3) + [1 - j sqrt(pi p) (1 - p) - 2p + 5p^2/6 + (p^2/2 - 1) F] / (4 q^6), p = j x q^2.
 *
 * With z = -j sqrt(p), F is the sum of c_k z^k, and both brackets lose their first terms, so that z/q appears in place of 1/q: over
 * sea, where the brackets are differences of near-equal terms, nothing is lost.
 */
export function nearAttenuation(x: number, q: Complex): Complex {
	const perQ = polar(Math.sqrt(x), -Math.PI / 4); // z / q = -j sqrt(j x)
	const z = times(perQ, q);
	const cubed = times(times(perQ, perQ), perQ);
	const size = absolute(z);
	if (size * size <= LARGEST_P_OF_POWER_SERIES) return byPowers(z, cubed);
	return byBrackets(z, q);
}

function byPowers(z: Complex, cubed: Complex): Complex {
	let flat: Complex = { re: 0, im: 0 };
	let first = flat;
	let second = flat;
	let power = ONE;
	for (let k = 0; k < MOST_TERMS; k++) {
		flat = add(flat, scaled(power, C[k]!));
		first = add(first, scaled(power, 2 * C[k + 1]! - C[k + 3]!)); // the first bracket over z^3
		second = add(second, scaled(power, C[k + 2]! / 2 - C[k + 6]!)); // the second over z^6
		power = times(power, z);
		if (absolute(power) * C[k + 1]! < SMALLEST_TERM) break;
	}
	return curved(flat, times(cubed, first), times(times(cubed, cubed), second));
}

/** F = -1/(2p) - 3/(2p)^2 - 15/(2p)^3 - ... */
function byBrackets(z: Complex, q: Complex): Complex {
	const p = scaled(times(z, z), -1);
	const overTwoP = divided({ re: 0.5, im: 0 }, p);
	let term: Complex = { re: -1, im: 0 };
	let flat: Complex = { re: 0, im: 0 };
	for (let n = 1; n <= ASYMPTOTIC_TERMS; n++) {
		term = scaled(times(term, overTwoP), 2 * n - 1);
		flat = add(flat, term);
	}
	const rootPiZ = scaled(z, ROOT_PI);
	const pSquared = times(p, p);
	const first = add(add(ONE, rootPiZ), scaled(times(add(ONE, scaled(p, 2)), flat), -1));
	const polynomial = add(add(ONE, scaled(p, -2)), scaled(pSquared, 5 / 6));
	const second = add(add(polynomial, times(rootPiZ, add(ONE, scaled(p, -1)))), times(add(scaled(pSquared, 0.5), scaled(ONE, -1)), flat));
	const qCubed = times(times(q, q), q);
	return curved(flat, divided(first, qCubed), divided(second, times(qCubed, qCubed)));
}

function curved(flat: Complex, first: Complex, second: Complex): Complex {
	return add(flat, scaled(add(first, second), 1 / 4));
}

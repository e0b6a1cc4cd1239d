import { log } from "@skipwright/units";

/** The next number, uniform in [0, 1) unless said otherwise. */
export type Random = () => number;

/**
 * Seeded uniform numbers with 32 bits each: xoshiro128** (Blackman and Vigna, "Scrambled linear pseudorandom number generators",
 * ACM TOMS 47, 2021), its state filled by the 32-bit finaliser of MurmurHash3 (Appleby). Integer operations only; from memory.
 */
export function prng(seed: number): Random {
	let [a, b, c, d] = [1, 2, 3, 4].map((i) => finalise((seed + Math.imul(i, 0x9e3779b9)) | 0)) as [number, number, number, number];
	if ((a | b | c | d) === 0) a = 1; // the one state that never leaves itself
	return () => {
		const result = Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0;
		const shifted = b << 9;
		c ^= a;
		d ^= b;
		b ^= c;
		a ^= d;
		c ^= shifted;
		d = rotated(d, 11);
		return result / 4_294_967_296;
	};
}

function rotated(word: number, by: number): number {
	return (word << by) | (word >>> (32 - by));
}

function finalise(word: number): number {
	const once = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
	const twice = Math.imul(once ^ (once >>> 13), 0xc2b2ae35);
	return twice ^ (twice >>> 16);
}

/** Normal numbers, mean 0 and variance 1, by Marsaglia's polar method, two at a time. */
export function gaussian(random: Random): Random {
	let kept: number | null = null;
	return () => {
		if (kept !== null) {
			const value = kept;
			kept = null;
			return value;
		}
		let [x, y, square] = [0, 0, 0];
		do {
			x = 2 * random() - 1;
			y = 2 * random() - 1;
			square = x * x + y * y;
		} while (square >= 1 || square === 0);
		const scale = Math.sqrt((-2 * log(square)) / square);
		kept = y * scale;
		return x * scale;
	};
}

import { type Hz, hz } from "@skipwright/units";
import type { Turn } from "./types.ts";

/**
 * The fewest clicks of a set's tuning steps from one dial reading to another; null where no clicks lead there.
 *
 * With carry, clicks add up: the least sum of |clicks| over all whole numbers with sum of clicks x step = to - from. Found by
 * searching the steps from the largest down, each count from the nearest outwards, cut off where what is left could not be
 * covered in fewer clicks than the best so far even if the next smaller step divided it: exact for any steps. Without carry each digit turns by itself the
 * shorter way round, which is exact too, as no wheel moves another; the steps must then divide each other, or null is returned.
 *
 * Among equals: fewest different steps, then more clicks of the larger step, then upwards. Largest step first.
 * @example `fewestTurns(hz(8_113_000), hz(8_161_000), [1_000, 10_000, 1_000_000], true)` is +5 of 10 kHz and -2 of 1 kHz
 */
export function fewestTurns(from: Hz, to: Hz, stepsHz: readonly number[], carry: boolean): readonly Turn[] | null {
	if (from === to) return [];
	const steps = [...new Set(stepsHz)].sort((a, b) => b - a);
	const clicks = carry ? fewestClicks(to - from, steps) : wheelClicks(from, to, steps);
	return clicks === null ? null : steps.flatMap((step, i) => (clicks[i] ? [{ stepHz: hz(step), clicks: clicks[i] }] : []));
}

/** Clicks of each step, the steps falling. */
type Clicks = readonly number[];

function fewestClicks(delta: number, steps: readonly number[]): Clicks | null {
	// divisors[i]: what every sum of the steps from i on is a multiple of
	const divisors = steps.map((_, i) => steps.slice(i).reduce(greatestCommonDivisor));
	if (divisors[0] === undefined || delta % divisors[0] !== 0) return null;
	let best: Clicks | null = null;
	let bestSum = Number.POSITIVE_INFINITY;

	function search(i: number, left: number, counts: Clicks, sum: number): void {
		const step = steps[i];
		if (left === 0 || step === undefined) {
			const full = steps.map((_, j) => counts[j] ?? 0);
			if (best === null || sum < bestSum || isPreferred(full, best)) best = full;
			bestSum = Math.min(bestSum, sum);
			return;
		}
		if (left % (divisors[i] ?? 1) !== 0) return;
		const smaller = steps[i + 1];
		if (smaller === undefined) {
			if (sum + Math.abs(left / step) <= bestSum) search(i + 1, 0, [...counts, left / step], sum + Math.abs(left / step));
			return;
		}
		// least possible sum with `count` of this step: convex in count, so both sides end where it passes the best
		const least = (count: number) => sum + Math.abs(count) + Math.ceil(Math.abs(left - count * step) / smaller);
		let below = Math.floor(left / step);
		let above = below + 1;
		while (Math.min(least(below), least(above)) <= bestSum) {
			const count = least(below) <= least(above) ? below-- : above++;
			search(i + 1, left - count * step, [...counts, count], sum + Math.abs(count));
		}
	}

	search(0, delta, [], 0);
	return best;
}

/** Of two with the same sum of clicks, whether `a` is the one to take. */
function isPreferred(a: Clicks, b: Clicks): boolean {
	const different = (clicks: Clicks) => clicks.filter((count) => count !== 0).length;
	if (different(a) !== different(b)) return different(a) < different(b);
	for (const [i, count] of a.entries()) {
		const other = b[i] ?? 0;
		if (Math.abs(count) !== Math.abs(other)) return Math.abs(count) > Math.abs(other);
		if (count !== other) return count > other;
	}
	return false;
}

function greatestCommonDivisor(a: number, b: number): number {
	return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function wheelClicks(from: number, to: number, steps: readonly number[]): Clicks | null {
	const finest = steps.at(-1);
	if (finest === undefined || from % finest !== to % finest) return null;
	if (steps.some((step, i) => i > 0 && (steps[i - 1] ?? 0) % step !== 0)) return null;
	return steps.map((step, i) => {
		const larger = steps[i - 1];
		const way = Math.floor(to / step) - Math.floor(from / step);
		// the wheel of the largest step has no digit above it and does not come round
		if (larger === undefined) return way;
		const positions = larger / step;
		const up = ((way % positions) + positions) % positions;
		return up * 2 <= positions ? up : up - positions;
	});
}

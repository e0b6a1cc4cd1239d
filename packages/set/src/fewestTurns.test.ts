import { hz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fewestTurns } from "./fewestTurns.ts";
import type { Turn } from "./types.ts";

const TWIN_STEPS = [100, 1_000, 10_000, 1_000_000];
const SEED = 20261124;

function clicksOf(turns: readonly Turn[]): number {
	return turns.reduce((sum, { clicks }) => sum + Math.abs(clicks), 0);
}

function movedBy(turns: readonly Turn[]): number {
	return turns.reduce((sum, { stepHz, clicks }) => sum + stepHz * clicks, 0);
}

/** Reads `+5x10, -2x1` in kHz. */
function turns(...pairs: readonly [stepKhz: number, clicks: number][]): readonly Turn[] {
	return pairs.map(([stepKhz, clicks]) => ({ stepHz: hz(stepKhz * 1_000), clicks }));
}

/**
 * Clicks to every dial up to `reach` from 0, by trying every click from every dial in turn. A way to a dial can be put in an
 * order that strays from the line between by less than the largest step, so twice that as a margin loses nothing.
 */
function triedOut(steps: readonly number[], reach: number): ReadonlyMap<number, number> {
	const margin = 2 * Math.max(...steps);
	const clicks = new Map([[0, 0]]);
	let edge = [0];
	while (edge.length > 0) {
		const next: number[] = [];
		for (const dial of edge) {
			for (const step of steps) {
				for (const to of [dial + step, dial - step]) {
					if (to < -margin || to > reach + margin || clicks.has(to)) continue;
					clicks.set(to, (clicks.get(dial) ?? 0) + 1);
					next.push(to);
				}
			}
		}
		edge = next;
	}
	return clicks;
}

describe("fewestTurns with carry", () => {
	it("8113 to 8161 kHz in steps of 1, 10 and 1000 kHz is five up with 10 kHz and two down with 1 kHz", () => {
		const steps = [1_000, 10_000, 1_000_000];
		expect(fewestTurns(hz(8_113_000), hz(8_161_000), steps, true)).toEqual(turns([10, 5], [1, -2]));
		expect(fewestTurns(hz(8_161_000), hz(8_113_000), steps, true)).toEqual(turns([10, -5], [1, 2]));
	});

	it.each<[number, number, readonly Turn[]]>([
		[8_113_000, 8_113_000, []],
		[2_187_500, 8_414_500, turns([1_000, 6], [10, 23], [1, -3])],
		[8_294_000, 8_297_000, turns([1, 3])],
		[4_999_900, 5_000_000, turns([0.1, 1])],
		[500_000, 29_999_900, turns([1_000, 29], [10, 50], [0.1, -1])],
	])("on twin-180's steps from %d to %d Hz", (from, to, expected) => {
		expect(fewestTurns(hz(from), hz(to), TWIN_STEPS, true)).toEqual(expected);
	});

	it("finds no way to a dial that no clicks reach", () => {
		expect(fewestTurns(hz(8_113_050), hz(8_161_000), TWIN_STEPS, true)).toBeNull();
		expect(fewestTurns(hz(1), hz(2), [2, 4], true)).toBeNull();
		expect(fewestTurns(hz(1), hz(2), [], true)).toBeNull();
	});

	it("among equals takes the fewest different steps, then more of the larger", () => {
		// 55 = 5x10 + 5x1 = 1x100 - 4x10 - 5x1, ten clicks either way
		expect(fewestTurns(hz(0), hz(55), [1, 10, 100], true)).toEqual([
			{ stepHz: 10, clicks: 5 },
			{ stepHz: 1, clicks: 5 },
		]);
		// 6 = 5 + 1 = 4 + 2 = 3 + 3: one step alone
		expect(fewestTurns(hz(0), hz(6), [1, 2, 3, 4, 5], true)).toEqual([{ stepHz: 3, clicks: 2 }]);
		// 11 = 10 + 1 = 6 + 5: the larger step first
		expect(fewestTurns(hz(0), hz(11), [1, 5, 6, 10], true)).toEqual([
			{ stepHz: 10, clicks: 1 },
			{ stepHz: 1, clicks: 1 },
		]);
	});

	it("does not mind the order of the steps, nor one given twice", () => {
		const expected = fewestTurns(hz(8_113_000), hz(12_359_300), TWIN_STEPS, true);
		expect(fewestTurns(hz(8_113_000), hz(12_359_300), [10_000, 100, 1_000_000, 1_000, 100], true)).toEqual(expected);
	});

	it.each([[[1, 10]], [[1, 10, 100]], [[1, 5, 9]], [[3, 7, 11]], [[6, 10, 15]], [[4, 6]], [[1, 7, 8, 50]], [[2, 9, 10, 45]]])(
		"is the shortest way for every dial up to 400 in steps of %j, against trying every click",
		(steps) => {
			const best = triedOut(steps, 400);
			let compared = 0;
			for (let to = 0; to <= 400; to++) {
				const found = fewestTurns(hz(0), hz(to), steps, true);
				expect(found === null ? undefined : clicksOf(found), `0 to ${to}`).toBe(best.get(to));
				if (found !== null) expect(movedBy(found)).toBe(to);
				compared++;
			}
			expect(compared).toBe(401);
		},
	);

	it("is the shortest way for any steps, against trying every click", () => {
		const anySteps = fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 5 });
		let reached = 0;
		let unreachable = 0;
		fc.assert(
			fc.property(anySteps, fc.nat(500), fc.nat(500), (steps, from, to) => {
				const found = fewestTurns(hz(from), hz(to), steps, true);
				const best = triedOut(steps, Math.abs(to - from)).get(Math.abs(to - from));
				expect(found === null ? undefined : clicksOf(found)).toBe(best);
				if (found === null) unreachable++;
				else {
					expect(movedBy(found)).toBe(to - from);
					reached++;
				}
			}),
			{ seed: SEED, numRuns: 500 },
		);
		expect(reached).toBeGreaterThan(300);
		expect(unreachable).toBeGreaterThan(20);
	});

	it("takes the preferred of all ways that are as short, against a list of them all", () => {
		const anySteps = fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { minLength: 2, maxLength: 4 });
		let withRivals = 0;
		fc.assert(
			fc.property(anySteps, fc.integer({ min: 1, max: 40 }), (anyOrder, to) => {
				const steps = anyOrder.toSorted((a, b) => b - a);
				const found = fewestTurns(hz(0), hz(to), steps, true);
				if (found === null) return;
				const ways = waysOf(steps, to, clicksOf(found)).toSorted(byPreference);
				if (ways.length > 1) withRivals++;
				expect(steps.map((step) => found.find(({ stepHz }) => stepHz === step)?.clicks ?? 0)).toEqual(ways[0]);
			}),
			{ seed: SEED, numRuns: 2_000 },
		);
		expect(withRivals).toBeGreaterThan(200);
	});

	it("takes as many clicks back as forth, and as many a few megahertz higher", () => {
		const dial = fc.integer({ min: 0, max: 25_000 }).map((tenths) => tenths * 1_000);
		let compared = 0;
		fc.assert(
			fc.property(dial, dial, (from, to) => {
				const forth = fewestTurns(hz(from), hz(to), TWIN_STEPS, true) ?? [];
				const back = fewestTurns(hz(to), hz(from), TWIN_STEPS, true) ?? [];
				const higher = fewestTurns(hz(from + 3_000_000), hz(to + 3_000_000), TWIN_STEPS, true);
				expect(clicksOf(back)).toBe(clicksOf(forth));
				expect(higher).toEqual(forth);
				compared++;
			}),
			{ seed: SEED, numRuns: 500 },
		);
		expect(compared).toBe(500);
	});
});

/** Every list of counts, one a step, that makes `to` with exactly so many clicks. */
function waysOf(steps: readonly number[], to: number, clicks: number): readonly (readonly number[])[] {
	const [step, ...others] = steps;
	if (step === undefined) return to === 0 && clicks === 0 ? [[]] : [];
	const counts = Array.from({ length: 2 * clicks + 1 }, (_, i) => i - clicks);
	return counts.flatMap((count) => waysOf(others, to - count * step, clicks - Math.abs(count)).map((rest) => [count, ...rest]));
}

/** Fewest different steps; then, from the largest step down, more clicks; then upwards. */
function byPreference(a: readonly number[], b: readonly number[]): number {
	const rank = (way: readonly number[]) => [way.filter(Boolean).length, ...way.flatMap((count) => [-Math.abs(count), -count])];
	const rankB = rank(b);
	return (
		rank(a)
			.map((value, i) => value - (rankB[i] ?? 0))
			.find((difference) => difference !== 0) ?? 0
	);
}

describe("fewestTurns without carry: each digit turns by itself", () => {
	it("turns each digit the shorter way round", () => {
		// 8113 to 8161: the tens 1 to 6 five up, the ones 3 to 1 two down; neither moves the other
		expect(fewestTurns(hz(8_113_000), hz(8_161_000), [1_000, 10_000, 100_000, 1_000_000], false)).toEqual(turns([10, 5], [1, -2]));
		// 8199 to 8100 kHz: nine on to nought is one up, and nothing carries
		expect(fewestTurns(hz(8_199_000), hz(8_100_000), [1_000, 10_000, 100_000, 1_000_000], false)).toEqual(turns([10, 1], [1, 1]));
	});

	it("needs steps that divide each other, and the same remainder below the finest", () => {
		expect(fewestTurns(hz(0), hz(45_000), [1_000, 5_000, 9_000], false)).toBeNull();
		expect(fewestTurns(hz(50), hz(8_000_000), TWIN_STEPS, false)).toBeNull();
	});

	it("is the shortest way, against trying every click of every wheel", () => {
		const radices = fc.array(fc.integer({ min: 2, max: 7 }), { minLength: 1, maxLength: 3 });
		let compared = 0;
		fc.assert(
			fc.property(radices, fc.nat(400), fc.nat(400), (ratios, from, to) => {
				const steps = [0, 1, 2, 3].slice(0, ratios.length + 1).map((i) => ratios.slice(0, i).reduce((a, b) => a * b, 1));
				const found = fewestTurns(hz(from), hz(to), steps, false);
				expect(found === null ? null : clicksOf(found)).toBe(wheelsTriedOut(from, to, steps));
				compared++;
			}),
			{ seed: SEED, numRuns: 200 },
		);
		expect(compared).toBe(200);
	});
});

/** Clicks from dial to dial where a click moves one digit, by trying every click from every dial in turn. */
function wheelsTriedOut(from: number, to: number, steps: readonly number[]): number | null {
	const seen = new Set([from]);
	let edge = [from];
	for (let clicks = 0; edge.length > 0; clicks++) {
		if (edge.includes(to)) return clicks;
		const next: number[] = [];
		for (const dial of edge) {
			for (const [i, step] of steps.entries()) {
				for (const way of [1, -1]) {
					const above = steps[i + 1];
					const turned =
						above === undefined
							? dial + way * step
							: Math.floor(dial / above) * above + (((((dial % above) + way * step) % above) + above) % above);
					if (turned < 0 || turned > 1_000 || seen.has(turned)) continue;
					seen.add(turned);
					next.push(turned);
				}
			}
		}
		edge = next;
	}
	return null;
}

it("is the same every time it is asked", () => {
	const ask = () => fewestTurns(hz(4_146_000), hz(16_528_700), TWIN_STEPS, true);
	expect(ask()).toEqual(ask());
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BlockEntry, placesInBlock } from "./placesInBlock.ts";

const FIRST = 21;

/** What a way costs: written apart, from the words of the comment. */
function costOf(entries: readonly BlockEntry[], places: readonly number[], length: number, disturbance: number): number {
	return entries.reduce((sum, { at }, i) => {
		const order = (entries.length - i) * (places[i]! - FIRST);
		return sum + order + (at !== null && at !== places[i] ? disturbance * length * length : 0);
	}, 0);
}

function ways(places: readonly number[], count: number): readonly (readonly number[])[] {
	if (count === 0) return [[]];
	return places.flatMap((place) =>
		ways(
			places.filter((one) => one !== place),
			count - 1,
		).map((rest) => [place, ...rest]),
	);
}

/** A block of up to 7 places; entries stand at places of their own or come new. */
const blocks = fc.integer({ min: 1, max: 7 }).chain((length) =>
	fc
		.tuple(
			fc.shuffledSubarray(
				Array.from({ length }, (_, i) => FIRST + i),
				{ minLength: 1 },
			),
			fc.array(fc.tuple(fc.boolean(), fc.boolean()), { minLength: length, maxLength: length }),
		)
		.map(([own, flags]) => ({
			length,
			entries: own.map((place, i): BlockEntry => {
				const [isNew, isFixed] = flags[i]!;
				return { at: isNew ? null : place, isFixed: isFixed && i % 2 === 0 };
			}),
		})),
);

describe("placesInBlock", () => {
	it("costs what the cheapest of all ways costs, and keeps what is fixed", () => {
		let compared = 0;
		let moved = 0;
		fc.assert(
			fc.property(blocks, fc.constantFrom(0, 0.02, 0.1, 0.4, 1, 7), ({ length, entries }, disturbance) => {
				const found = placesInBlock(FIRST, FIRST + length - 1, entries, disturbance);
				expect(new Set(found).size).toBe(entries.length);
				const stays = ({ at, isFixed }: BlockEntry) => at !== null && (isFixed || disturbance >= 1);
				for (const [i, entry] of entries.entries()) if (stays(entry)) expect(found[i]).toBe(entry.at);
				const all = Array.from({ length }, (_, i) => FIRST + i);
				const allowed = ways(all, entries.length).filter((way) => entries.every((entry, i) => !stays(entry) || way[i] === entry.at));
				const least = Math.min(...allowed.map((way) => costOf(entries, way, length, disturbance)));
				expect(costOf(entries, found, length, disturbance)).toBeCloseTo(least, 6);
				compared++;
				if (entries.some(({ at }, i) => at !== null && at !== found[i])) moved++;
			}),
			{ seed: 20261127, numRuns: 400 },
		);
		expect(compared).toBe(400);
		expect(moved).toBeGreaterThan(30);
	});

	it("fills gaps in the order of use, and moves what stands only where the user lets it", () => {
		const comes: BlockEntry = { at: null, isFixed: false };
		const stands = (at: number): BlockEntry => ({ at, isFixed: false });
		expect(placesInBlock(1, 6, [comes, stands(2), comes, stands(1)], 1)).toEqual([3, 2, 4, 1]);
		expect(placesInBlock(1, 6, [comes, stands(2), comes, stands(1)], 0)).toEqual([1, 2, 3, 4]);
		expect(placesInBlock(1, 6, [{ at: 3, isFixed: true }, comes, comes], 0)).toEqual([3, 1, 2]);
		expect(() => placesInBlock(1, 2, [comes, comes, comes], 1)).toThrow("Cannot place 3 in a block as it has 2 free places");
	});

	it("gives order in a block of any length", () => {
		const turned = Array.from({ length: 400 }, (_, i): BlockEntry => ({ at: 400 - i, isFixed: false }));
		expect(placesInBlock(1, 400, turned, 0)).toEqual(turned.map((_, i) => i + 1));
		expect(placesInBlock(1, 400, turned, 0.5)).toEqual(turned.map(({ at }) => at));
	});
});

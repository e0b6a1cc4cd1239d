import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { spansOf } from "./spans.ts";
import { overlaps } from "./spectrum.ts";

const span = fc
	.tuple(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 300 }))
	.map(([lowHz, width]) => ({ lowHz, highHz: lowHz + width }));

describe("spansOf", () => {
	it("finds the same as looking at every span", () => {
		fc.assert(
			fc.property(fc.array(span, { maxLength: 40 }), span, (items, asked) => {
				const found = spansOf(items, (item) => item).meeting(asked);
				expect(new Set(found)).toEqual(new Set(items.filter((item) => overlaps(item, asked))));
				expect(found.map(({ lowHz }) => lowHz)).toEqual(found.map(({ lowHz }) => lowHz).toSorted((a, b) => a - b));
			}),
			{ seed: 9, numRuns: 300 },
		);
	});
});

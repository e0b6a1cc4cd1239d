import { expect, test } from "vitest";
import { isEndless, spanPieces, spanWords } from "./reachSpans.ts";

test.each([
	["in a day", { fromMin: 60, toMin: 90 }, [{ fromMin: 60, toMin: 90, starts: true }]],
	[
		"over midnight",
		{ fromMin: 1_410, toMin: 30 },
		[
			{ fromMin: 1_410, toMin: 1_440, starts: true },
			{ fromMin: 0, toMin: 30, starts: false },
		],
	],
	[
		"over midnight, counted on",
		{ fromMin: 1_410, toMin: 1_470 },
		[
			{ fromMin: 1_410, toMin: 1_440, starts: true },
			{ fromMin: 0, toMin: 30, starts: false },
		],
	],
	["to midnight", { fromMin: 1_410, toMin: 1_440 }, [{ fromMin: 1_410, toMin: 1_440, starts: true }]],
	["from midnight written 2400", { fromMin: 1_440, toMin: 1_470 }, [{ fromMin: 0, toMin: 30, starts: true }]],
	["a moment", { fromMin: 600, toMin: 600 }, [{ fromMin: 600, toMin: 600, starts: true }]],
	["all day", { fromMin: 0, toMin: 1_440 }, [{ fromMin: 0, toMin: 1_440, starts: true }]],
])("%s", (_, span, pieces) => {
	expect(spanPieces(span, "night[0]")).toEqual(pieces);
});

test.each([
	{ fromMin: -1, toMin: 30 },
	{ fromMin: 1_441, toMin: 1_450 },
	{ fromMin: 10, toMin: 1_451 },
	{ fromMin: Number.NaN, toMin: 30 },
	{ fromMin: 30, toMin: Number.NaN },
	{ fromMin: 30, toMin: -10 },
	{ fromMin: 0, toMin: Number.POSITIVE_INFINITY },
])("minutes %j are refused by name", (span) => {
	expect(() => spanPieces(span, "rows[2].broadcasts")).toThrow(/^Cannot draw rows\[2\]\.broadcasts from minute/);
});

test("spans in words", () => {
	expect(spanWords({ fromMin: 1_410, toMin: 1_470 })).toBe("2330-0030");
	expect(spanWords({ fromMin: 0, toMin: 1_440 })).toBe("0000-2400");
	expect(spanWords({ fromMin: 570, toMin: 570 })).toBe("0930");
	expect(isEndless({ fromMin: 0, toMin: 1_440 })).toBe(true);
});

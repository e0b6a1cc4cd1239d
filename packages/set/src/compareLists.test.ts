import { hz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareLists } from "./compareLists.ts";
import type { Row } from "./types.ts";

function row(place: number, change: Partial<Row> = {}): Row {
	return { bank: "voice", place, tag: `P${place}`, receive: hz(8_113_000), transmit: null, mode: "USB", line: place + 1, ...change };
}

const PLAN = [row(1), row(2, { transmit: hz(8_297_000), receive: hz(8_297_000) }), row(3), row(4), row(5)];

describe("compareLists", () => {
	it("finds nothing between a list and itself", () => {
		expect(compareLists(PLAN, PLAN)).toEqual({ equal: 5, differences: [], repeated: [] });
	});

	it("says place by place what differs, in sentences with the hertz", () => {
		const asLeft = [
			row(1, { receive: hz(8_113_100) }),
			row(2, { receive: hz(8_297_000), transmit: hz(8_294_000), tag: "P2  " }),
			row(3, { mode: "LSB", tag: "P8" }),
			row(5, { transmit: hz(8_113_000) }),
			row(9),
		];
		const { equal, differences, repeated } = compareLists(PLAN, asLeft);
		expect([equal, repeated]).toEqual([0, []]);
		expect(
			differences.flatMap(({ place, faults }) => faults.map(({ kind, offByHz, sentence }) => [place, kind, offByHz, sentence])),
		).toEqual([
			[1, "receive", 100, "voice 1 has 8113.1 kHz on receive, wanted 8113 kHz: 100 Hz too high."],
			[2, "transmit", -3_000, "voice 2 has 8294 kHz on transmit, wanted 8297 kHz: 3 kHz too low."],
			[3, "mode", null, "voice 3 is on LSB, wanted USB."],
			[3, "tag", null, 'voice 3 is tagged "P8", wanted "P3".'],
			[4, "missing", null, "voice 4 is missing: wanted 8113 kHz receive only, USB, tag P4."],
			[5, "transmit", null, "voice 5 transmits on 8113 kHz, wanted receive only."],
			[9, "extra", null, "voice 9 is not in the plan: holds 8113 kHz receive only, USB, tag P9."],
		]);
	});

	it("says when a place that is to send cannot", () => {
		const [difference] = compareLists([row(1, { transmit: hz(8_113_000) })], [row(1)]).differences;
		expect(difference?.faults.map(({ sentence }) => sentence)).toEqual(["voice 1 cannot transmit, wanted 8113 kHz on transmit."]);
	});

	it("tells whole kilohertz as such, everything else in hertz", () => {
		const off = (heard: number) =>
			/: (.*) too/.exec(compareLists([row(1)], [row(1, { receive: hz(heard) })]).differences[0]?.faults[0]?.sentence ?? "")?.[1];
		expect([8_077_000, 8_114_000, 8_112_500, 8_077_500].map(off)).toEqual(["36 kHz", "1 kHz", "500 Hz", "35500 Hz"]);
	});

	it("counts the last line of a place read back twice, and reports it", () => {
		const asLeft = [row(1, { mode: "AM" }), row(1, { line: 9 })];
		const { equal, differences, repeated } = compareLists([row(1)], asLeft);
		expect([equal, differences.length]).toEqual([1, 0]);
		expect(repeated).toEqual([
			{
				bank: "voice",
				place: 1,
				list: "as left",
				lines: [2, 9],
				sentence: "voice 1 stands 2 times in the list as left (lines 2, 9); line 9 counts.",
			},
		]);
	});

	it("keeps banks apart", () => {
		expect(compareLists([row(1)], [row(1, { bank: "data" })]).differences.map(({ bank }) => bank)).toEqual(["voice", "data"]);
	});

	it("does not depend on the order of the read-back, and turned round finds the same places", () => {
		const content = fc.record({
			place: fc.integer({ min: 1, max: 8 }),
			receive: fc.constantFrom(hz(4_146_000), hz(8_113_000)),
			transmit: fc.constantFrom(null, hz(4_146_000)),
			mode: fc.constantFrom("USB" as const, "AM" as const),
		});
		const list = fc
			.uniqueArray(content, { selector: ({ place }) => place })
			.map((rows) => rows.map(({ place, ...rest }) => row(place, rest)));
		let compared = 0;
		fc.assert(
			fc.property(list, list, (wanted, asLeft) => {
				const forth = compareLists(wanted, asLeft);
				expect(
					compareLists(wanted, asLeft.toReversed())
						.differences.map(({ place }) => place)
						.sort(),
				).toEqual(forth.differences.map(({ place }) => place).sort());
				const back = compareLists(asLeft, wanted);
				expect(back.equal).toBe(forth.equal);
				expect(back.differences.length).toBe(forth.differences.length);
				const places = new Set([...wanted, ...asLeft].map(({ place }) => place));
				expect(forth.equal + forth.differences.length).toBe(places.size);
				compared += places.size;
			}),
			{ seed: 20261124, numRuns: 500 },
		);
		expect(compared).toBeGreaterThan(1_000);
	});
});

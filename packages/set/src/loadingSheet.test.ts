import { hz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type LoadingSheetInput, loadingSheet, type PlannedRow } from "./loadingSheet.ts";
import { placeKey } from "./placeKey.ts";
import type { Profile } from "./profile.ts";
import { shippedProfiles } from "./shippedProfiles.ts";
import type { LoadingSheet, PlaceContent, Row, SheetStep, Turn } from "./types.ts";

const [twin, single, receiver] = shippedProfiles() as [Profile, Profile, Profile];

function row(bank: string, place: number, change: Partial<Row> = {}): Row {
	return { bank, place, tag: `P${place}`, receive: hz(8_113_000), transmit: null, mode: "USB", line: 0, ...change };
}

function planned(bank: string, place: number, change: Partial<PlannedRow> = {}): PlannedRow {
	return { ...row(bank, place, change), listing: null, what: "", ...change };
}

function sheetOf(input: Partial<LoadingSheetInput>): LoadingSheet {
	return loadingSheet({ profile: twin, found: [], planned: [], settings: [], ...input });
}

function step(sheet: LoadingSheet, order: number): SheetStep {
	const found = sheet.steps[order - 1];
	if (found === undefined) throw new Error(`the sheet has no step ${order}`);
	return found;
}

/** A set that does what a step says. */
function keyIn(steps: readonly SheetStep[], found: readonly Row[]): ReadonlyMap<string, PlaceContent> {
	const set = new Map<string, PlaceContent>(found.map((held) => [placeKey(held), content(held)]));
	for (const { action, receive, mode, transmit, tag, ...place } of steps) {
		if (action === "clear") set.delete(placeKey(place));
		else if (receive !== null && mode !== null) set.set(placeKey(place), { receive, transmit, mode, tag });
	}
	return set;
}

function content({ receive, transmit, mode, tag }: PlaceContent): PlaceContent {
	return { receive, transmit, mode, tag };
}

function turned(dial: number, turns: readonly Turn[]): number {
	return turns.reduce((at, { stepHz, clicks }) => at + stepHz * clicks, dial);
}

describe("loadingSheet", () => {
	it("goes through the set's banks in its order, and through each by place", () => {
		const plan = [
			planned("data", 2),
			planned("voice", 9),
			planned("voice", 10),
			planned("data", 1),
			planned("elsewhere", 1),
			planned("voice", 2),
		];
		const { steps } = sheetOf({ planned: plan });
		expect(steps.map(({ order, bank, place }) => [order, bank, place])).toEqual([
			[1, "voice", 2],
			[2, "voice", 9],
			[3, "voice", 10],
			[4, "data", 1],
			[5, "data", 2],
			[6, "elsewhere", 1],
		]);
	});

	it("skips what the set holds already, says what stood in the others, and leaves alone what is not planned", () => {
		const found = [row("voice", 1, { tag: "P1   " }), row("voice", 2, { mode: "AM" }), row("voice", 7)];
		const sheet = sheetOf({ found, planned: [planned("voice", 1), planned("voice", 2), planned("voice", 3)] });
		expect(sheet.steps.map(({ action, place, before }) => [action, place, before])).toEqual([
			["write", 2, "8113 kHz receive only, AM, tag P2"],
			["write", 3, "empty"],
		]);
		expect([sheet.unchanged, sheet.fromBlank]).toEqual([1, false]);
	});

	it.each([{ receive: hz(8_113_100) }, { transmit: hz(8_113_000) }, { mode: "LSB" as const }, { tag: "P9" }])(
		"keys a place anew that differs in %j",
		(change) => {
			expect(sheetOf({ found: [row("voice", 1, change)], planned: [planned("voice", 1)] }).steps).toHaveLength(1);
		},
	);

	it("clears what is not planned only where asked, and only places that the set has", () => {
		const found = [row("voice", 7), row("voice", 999), row("attic", 1), row("data", 1)];
		const sheet = sheetOf({ found, planned: [planned("data", 1)], clearOthers: true });
		expect(sheet.steps).toHaveLength(1);
		expect(step(sheet, 1)).toMatchObject({
			action: "clear",
			bank: "voice",
			place: 7,
			tag: "",
			receive: null,
			transmit: null,
			mode: null,
			before: "8113 kHz receive only, USB, tag P7",
		});
	});

	it("keys every place in from blank, as sets forget", () => {
		const sheet = sheetOf({ found: null, planned: [planned("voice", 1), planned("voice", 2)] });
		expect([sheet.steps.length, sheet.unchanged, sheet.fromBlank]).toEqual([2, 0, true]);
		expect(step(sheet, 1).receiveTurns).toBeNull();
		expect(step(sheet, 2).receiveTurns).toEqual([]);
	});

	it("counts turns from what the first place held, then from the dial of the step before, transmit from receive", () => {
		const found = [row("voice", 1, { receive: hz(8_113_000) })];
		const plan = [
			planned("voice", 1, { receive: hz(8_161_000) }),
			planned("voice", 2, { receive: hz(8_779_000), transmit: hz(8_255_000) }),
			planned("voice", 3, { receive: hz(8_294_000), transmit: hz(8_294_000) }),
		];
		const { steps } = sheetOf({ found, planned: plan });
		expect(steps.map(({ receiveTurns, transmitTurns }) => [receiveTurns, transmitTurns])).toEqual([
			[[turn(10_000, 5), turn(1_000, -2)], null],
			[
				[turn(1_000_000, 1), turn(10_000, -38), turn(1_000, -2)],
				[turn(1_000_000, -1), turn(10_000, 48), turn(1_000, -4)],
			],
			[[turn(10_000, 4), turn(1_000, -1)], null],
		]);
	});

	it("gives keystrokes as the set shows the figure for a keypad, turns for a knob, both for both", () => {
		const plan = [planned("memory", 1, { receive: hz(8_779_000), transmit: hz(8_255_000) }), planned("memory", 2)];
		const keypad = step(sheetOf({ profile: single, planned: plan }), 1);
		expect(keypad.receiveKeys).toEqual(["8", "7", "7", "9", ".", "0", "enter"]);
		expect(keypad.transmitKeys).toEqual(["8", "2", "5", "5", ".", "0", "enter"]);
		expect([keypad.receiveTurns, keypad.transmitTurns]).toEqual([null, null]);
		const both = step(sheetOf({ profile: receiver, planned: [planned("memory", 1), planned("memory", 2)] }), 2);
		expect(both.receiveKeys).toEqual(["8", "1", "1", "3", ".", "0", "0", "enter"]);
		expect(both.receiveTurns).toEqual([]);
		expect(step(sheetOf({ planned: [planned("voice", 1)] }), 1).receiveKeys).toBeNull();
	});

	it("shows no turns from a dial that no clicks lead from, and counts on from the next", () => {
		const found = [row("voice", 1, { receive: hz(8_113_050) })];
		const sheet = sheetOf({ found, planned: [planned("voice", 1), planned("voice", 2, { receive: hz(8_114_000) })] });
		expect(step(sheet, 1).receiveTurns).toBeNull();
		expect(step(sheet, 2).receiveTurns).toEqual([turn(1_000, 1)]);
	});

	it("takes the last line of a place that the found list names twice", () => {
		const found = [row("voice", 1, { mode: "AM" }), row("voice", 1)];
		expect(sheetOf({ found, planned: [planned("voice", 1)] }).steps).toEqual([]);
	});

	it("does not key two contents into one place", () => {
		expect(() => sheetOf({ planned: [planned("voice", 1), planned("voice", 1, { mode: "AM" })] })).toThrow(
			new RangeError("Cannot key two contents into one place: voice 1"),
		);
	});

	it("estimates the time from what is to be done and says that it is an estimate", () => {
		const settings = [{ name: "squelch", asFound: "off", wanted: "off", note: "" }];
		const none = sheetOf({});
		const one = sheetOf({ planned: [planned("voice", 1)] });
		const hundred = sheetOf({ planned: Array.from({ length: 100 }, (_, i) => planned("voice", i + 1)), settings });
		expect(none.minutes).toBe(0);
		expect(one.minutes).toBeGreaterThan(0);
		expect(hundred.minutes).toBeGreaterThan(20 * one.minutes);
		expect(hundred.minutesRestOn).toMatch(/^Counted: places to write 100, places to clear 0, .*settings 1 at/);
		expect(hundred.minutesRestOn).toMatch(/common practice, no source; an estimate\.$/);
	});

	it("turns any found list into the plan when every step is done, and every turn ends on its dial", () => {
		const place = fc.record({
			bank: fc.constantFrom("voice", "data"),
			place: fc.integer({ min: 1, max: 12 }),
			receive: fc.integer({ min: 5_000, max: 299_999 }).map((tenths) => hz(tenths * 100)),
			transmit: fc.option(fc.integer({ min: 16_000, max: 275_000 }).map((tenths) => hz(tenths * 100))),
			mode: fc.constantFrom("USB" as const, "AM" as const),
			tag: fc.constantFrom("A", "B"),
			line: fc.constant(0),
		});
		const list = fc.uniqueArray(place, { selector: placeKey, maxLength: 15 });
		const kept = fc.tuple(list, list).map(([found, more]): [Row[], PlannedRow[]] => {
			// every other planned place as the set holds it already, so that some are skipped
			const plan = [...more, ...found.filter((held, i) => i % 2 === 0 && !more.some((other) => placeKey(other) === placeKey(held)))];
			return [found, plan.map((content) => ({ ...content, listing: null, what: "" }))];
		});
		let turns = 0;
		let skipped = 0;
		fc.assert(
			fc.property(kept, fc.boolean(), ([found, plan], clearOthers) => {
				const sheet = sheetOf({ found, planned: plan, clearOthers });
				const left = keyIn(sheet.steps, found);
				for (const wanted of plan) expect(left.get(placeKey(wanted))).toEqual(content(wanted));
				const others = found.filter((held) => !plan.some((wanted) => placeKey(wanted) === placeKey(held)));
				expect(left.size).toBe(plan.length + (clearOthers ? 0 : others.length));
				skipped += sheet.unchanged;

				let dial: number | null = null;
				for (const { receive, transmit, receiveTurns, transmitTurns, action } of sheet.steps) {
					if (action === "clear" || receive === null) continue;
					if (dial !== null) expect(turned(dial, receiveTurns ?? [])).toBe(receive);
					if (transmit !== null) expect(turned(receive, transmitTurns ?? [])).toBe(transmit);
					dial = transmit ?? receive;
					turns++;
				}
			}),
			{ seed: 20261124, numRuns: 500 },
		);
		expect(turns).toBeGreaterThan(2_000);
		expect(skipped).toBeGreaterThan(500);
	});

	it("does not depend on the order of the plan or of the found list", () => {
		const found = [row("voice", 1, { mode: "AM" }), row("voice", 5), row("data", 3)];
		const plan = [planned("voice", 1), planned("voice", 2), planned("data", 3, { mode: "AM" })];
		const sheet = sheetOf({ found, planned: plan, clearOthers: true });
		expect(sheetOf({ found: found.toReversed(), planned: plan.toReversed(), clearOthers: true })).toEqual(sheet);
	});
});

function turn(stepHz: number, clicks: number): Turn {
	return { stepHz: hz(stepHz), clicks };
}

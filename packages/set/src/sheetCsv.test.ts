import { hz, readCsv } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { loadingSheet, type PlannedRow } from "./loadingSheet.ts";
import type { Profile } from "./profile.ts";
import { sheetCsv } from "./sheetCsv.ts";
import { shippedProfiles } from "./shippedProfiles.ts";
import type { Row } from "./types.ts";

const [twin, single, receiver] = shippedProfiles() as [Profile, Profile, Profile];
const BEFORE_MOVES = ["order", "bank", "place", "tag", "receive_khz", "transmit_khz", "mode"];
const AFTER_MOVES = ["before", "what", "listing", "read_back"];

function planned(bank: string, place: number, change: Partial<PlannedRow> = {}): PlannedRow {
	return {
		bank,
		place,
		tag: `P${place}`,
		receive: hz(8_113_000),
		transmit: null,
		mode: "USB",
		line: 0,
		listing: null,
		what: "",
		...change,
	};
}

function csvOf(profile: Profile, plan: readonly PlannedRow[], found: readonly Row[] | null = []): string {
	return sheetCsv(loadingSheet({ profile, found, planned: plan, settings: [], clearOthers: true }), profile);
}

describe("sheetCsv", () => {
	it("writes each step as the set shows it, receive only spelled out, with an empty read-back", () => {
		const found: Row = { ...planned("voice", 1), mode: "AM" };
		const plan = [
			planned("voice", 1, { what: "Example Radio, weather charts", listing: "example/fax/8115" }),
			planned("voice", 2, { receive: hz(8_779_000), transmit: hz(8_255_000) }),
		];
		expect(csvOf(twin, plan, [found, planned("voice", 9)])).toBe(
			[
				"order,bank,place,tag,receive_khz,transmit_khz,mode,turns,before,what,listing,read_back",
				'1,voice,1,P1,8113.0,receive only,USB,stays,"8113 kHz receive only, AM, tag P1","Example Radio, weather charts",example/fax/8115,',
				'2,voice,2,P2,8779.0,8255.0,USB,"1 MHz up 1, 10 kHz down 33, 1 kHz down 4; transmit 1 MHz down 1, 10 kHz up 48, 1 kHz down 4",empty,,,',
				'3,voice,9,,,,,,"8113 kHz receive only, USB, tag P9",clear this place,,',
				"",
			].join("\n"),
		);
	});

	it.each([
		[twin, "voice", ["turns"]],
		[single, "memory", ["keys"]],
		[receiver, "memory", ["turns", "keys"]],
	])("gives $id the columns for its way of entry", (profile, bank, moves) => {
		const { columns, rows } = readCsv("sheet.csv", csvOf(profile, [planned(bank, 1)]), {
			required: [...BEFORE_MOVES, ...moves, ...AFTER_MOVES],
		});
		expect(columns).toEqual([...BEFORE_MOVES, ...moves, ...AFTER_MOVES]);
		expect(rows).toHaveLength(1);
	});

	it("writes keystrokes as they are pressed, and says where turns cannot be counted", () => {
		const plan = [planned("memory", 1, { receive: hz(8_779_000), transmit: hz(8_255_000) })];
		expect(csvOf(single, plan)).toContain("8 7 7 9 . 0 enter; transmit 8 2 5 5 . 0 enter");
		expect(csvOf(twin, [planned("voice", 1)], null)).toContain(",from any,");
	});

	it("never starts a cell with a formula, whatever the tag and the words", () => {
		const plan = [
			planned("voice", 1, { tag: "=1+1", what: "+44 station", listing: "@x" }),
			planned("voice", 2, { tag: "-5x", receive: hz(8_113_100) }),
			planned("voice", 3, { receive: hz(8_113_000) }),
		];
		const text = csvOf(twin, plan, [planned("voice", 1, { tag: "=cmd" })]);
		const cells = text.split("\n").flatMap((line) => line.split(","));
		expect(cells.length).toBeGreaterThan(40);
		for (const cell of cells) expect(cell).not.toMatch(/^"?[=+\-@\t]/);
	});
});

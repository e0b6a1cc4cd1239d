import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DscCall, DscFrequency } from "./call.ts";
import { CATEGORIES, ENDS, FIRST_TELECOMMANDS, FORMATS, NATURES, SECOND_TELECOMMANDS } from "./codeWords.ts";
import { makeDsc } from "./makeDsc.ts";
import { parseDsc } from "./parseDsc.ts";
import { eccOf } from "./sequence.ts";

const truth = JSON.parse(readFileSync(new URL("../../truth/dsc-vectors.json", import.meta.url), "utf8"));
const symbolsOf = (name: string): readonly number[] =>
	truth.examples.find((example: { name: string }) => example.name === name).message_symbols.slice(1, -3);
const read = (symbols: readonly (number | null)[], ecc = eccOf(symbols.map((symbol) => symbol ?? 0))) => parseDsc(symbols, ecc);
const faultCodes = (symbols: readonly (number | null)[], ecc?: number) => read(symbols, ecc).faults.map(({ code }) => code);

describe("parseDsc", () => {
	it.each([
		["individual-test-call", "Ship 299123456 calls coast station 002999999 (safety): test call; asks to acknowledge."],
		["individual-test-acknowledgement", "Coast station 002999999 answers ship 299123456 (safety): test received."],
		["distress-alert-sinking", "Distress alert from ship 299123456: sinking, at 50°06′N 005°03′W, 14:07 UTC; J3E telephony to follow."],
		[
			"distress-alert-no-position",
			"Distress alert from ship 299123456: undesignated, position not told, time not told; J3E telephony to follow.",
		],
		[
			"distress-acknowledgement",
			"Coast station 002999999 acknowledges the distress alert of ship 299123456: sinking, at 50°06′N 005°03′W, 14:07 UTC; J3E telephony to follow.",
		],
		["all-ships-urgency-both-fields", "Ship 299123456 calls all ships (urgency): J3E telephony, both ways on 2182 kHz."],
		["all-ships-urgency-one-field", "Ship 299123456 calls all ships (urgency): J3E telephony, the called station to receive on 2182 kHz."],
		[
			"area-urgency",
			"Ship 299123456 calls ships in the area 2° south and 4° east of 51°N 6°W (urgency): J3E telephony, both ways on 2182 kHz.",
		],
		[
			"routine-call-to-coast-channel-401",
			"Ship 299123456 calls coast station 002999999 (routine): J3E telephony, the called station to receive on 4065 kHz and transmit on 4357 kHz; asks to acknowledge.",
		],
		["position-request", "Coast station 002999999 calls ship 299123456 (safety): asks for the position; asks to acknowledge."],
		["group-routine-call", "Ship 299123456 calls group 029912345 (routine): J3E telephony, both ways on 4146 kHz."],
	])("says what the worked example %s says", (name, summary) => {
		const reading = read(symbolsOf(name));
		expect(reading).toMatchObject({ ok: true, faults: [], summary });
		expect(makeDsc(reading.call!)).toEqual(symbolsOf(name));
	});

	it("covers every worked example", () => expect(truth.examples).toHaveLength(11));

	it("has words for every code of the lists, and each goes there and back", () => {
		const lists = [
			[FORMATS, "format_specifiers"],
			[CATEGORIES, "categories"],
			[NATURES, "nature_of_distress"],
			[FIRST_TELECOMMANDS, "telecommand1"],
			[SECOND_TELECOMMANDS, "telecommand2"],
			[ENDS, "end_of_sequence"],
		] as const;
		let compared = 0;
		for (const [list, name] of lists) {
			const codes = Object.keys(truth.codes[name]).filter((code) => !code.includes("-"));
			expect(list.codes.map(String)).toEqual(codes);
			for (const code of list.codes) {
				const words = list.wordsOf(code);
				expect(list.codeOf(words as never)).toBe(code);
				expect(words).not.toMatch(/^code/);
				compared++;
			}
		}
		expect(compared).toBe(55);
	});

	it("gives the fields of an alert: position to the minute, time, what follows", () => {
		expect(read(symbolsOf("distress-alert-sinking")).call).toEqual({
			format: "distress alert",
			to: null,
			area: null,
			category: null,
			from: "299123456",
			telecommand1: null,
			telecommand2: null,
			distress: {
				ship: "299123456",
				nature: "sinking",
				position: { latDeg: 50.1, lonDeg: -5.05 },
				time: "14:07",
				followOn: "J3E telephony",
			},
			message: null,
			end: "none",
			undecoded: [],
		});
	});

	it("reads a relay, its acknowledgement, a ship not known, and a ship withdrawing its own alert", () => {
		const acknowledgement = symbolsOf("distress-acknowledgement"); // 116 112 own 110 ship ...
		const relay = acknowledgement.with(7, 112).with(-1, 117);
		expect(read(relay).summary).toBe(
			"Coast station 002999999 relays to all ships the distress of ship 299123456: sinking, at 50°06′N 005°03′W, 14:07 UTC; J3E telephony to follow; asks to acknowledge.",
		);
		expect(read(relay.with(-1, 122)).summary).toMatch(
			/^Coast station 002999999 acknowledges the distress relay of all ships for ship 299123456/,
		);
		const unknown = relay.map((symbol, i) => (i >= 8 && i < 13 ? 126 : symbol));
		expect(read(unknown)).toMatchObject({ ok: true, faults: [], call: { distress: { ship: null, nature: "sinking" } } });
		expect(read(unknown).summary).toContain("a ship whose identity is not told");
		const own = acknowledgement.toSpliced(2, 5, 29, 91, 23, 45, 60);
		expect(read(own).summary).toMatch(/^Ship 299123456 withdraws its own distress alert \(sinking/);
	});

	it("reads a position in the message, channels and steps of 10 Hz", () => {
		const head = [120, 29, 91, 23, 45, 60, 108, 0, 29, 99, 99, 90];
		const answer = read([...head, 121, 126, 55, 15, 0, 60, 5, 3, 14, 7, 122]);
		expect(answer.call?.message).toEqual({ kind: "position", position: { latDeg: 50.1, lonDeg: -5.05 }, time: "14:07" });
		expect(answer.summary).toBe("Coast station 002999999 answers ship 299123456 (safety): its position, at 50°06′N 005°03′W, 14:07 UTC.");
		expect(read([...head, 109, 126, 55, 15, 0, 60, 5, 3, 117]).call?.message).toMatchObject({ kind: "position", time: null });
		const frequencies = (...symbols: number[]) => read([...head, 109, 126, ...symbols, 117]);
		expect(frequencies(34, 1, 1, 126, 126, 126).call?.message).toMatchObject({ receive: { hfChannel: 40_101 }, transmit: null });
		expect(frequencies(90, 0, 72, 90, 0, 72).call?.message).toMatchObject({ receive: { vhfChannel: 72 }, transmit: { vhfChannel: 72 } });
		expect(frequencies(40, 41, 46, 1, 126, 126, 126, 126)).toMatchObject({ faults: [], call: { message: { receive: { hz: 4_146_010 } } } });
	});

	it("names what cannot be: latitude, time, identity, frequency, code", () => {
		const alert = symbolsOf("distress-alert-sinking"); // 112 own 105 15 00 60 05 03 14 07 109 127
		expect(read(alert.with(7, 19).with(8, 90)).faults).toEqual([
			{ code: "field-impossible", message: "position: 19 90 60 5 3 cannot stand there" },
		]);
		expect(faultCodes(alert.with(8, 7).with(9, 50))).toEqual(["field-impossible"]); // 50 degrees 75 minutes
		expect(faultCodes(alert.with(11, 61))).toEqual(["field-impossible"]);
		expect(faultCodes(alert.with(7, 45))).toEqual(["field-impossible"]); // no quadrant 4
		expect(faultCodes(alert.with(9, 61).with(10, 81))).toEqual(["field-impossible"]); // 181 degrees
		expect(faultCodes(alert.with(12, 25))).toEqual(["field-impossible"]);
		expect(faultCodes(alert.with(5, 61))).toEqual(["field-impossible"]); // the tenth digit is 0
		expect(faultCodes(alert.with(1, 105))).toEqual(["field-impossible"]);
		expect(faultCodes(alert.with(6, 119))).toEqual(["unknown-code"]);
		expect(read(alert.with(6, 119)).call?.distress?.nature).toBe("code 119");
		const routine = symbolsOf("routine-call-to-coast-channel-401");
		expect(faultCodes(routine.with(14, 60))).toEqual(["field-impossible"]);
	});

	it("names a wrong check, lost symbols and a call cut short, and keeps the rest", () => {
		const alert = symbolsOf("distress-alert-sinking");
		expect(read(alert, 118)).toMatchObject({ ok: false, faults: [{ code: "ecc-wrong" }], summary: expect.stringMatching(/^Not sure/) });
		expect(parseDsc(alert, null)).toMatchObject({ ok: false, faults: [{ code: "ecc-wrong" }] });
		const lost = parseDsc([...alert.slice(0, 7), null, ...alert.slice(8)], 119);
		expect(lost.faults).toMatchObject([{ code: "symbol-lost", message: "1 of 16 symbols lost" }, { code: "ecc-wrong" }]);
		expect(lost).toMatchObject({ ok: false, call: { from: "299123456", distress: { position: null, time: "14:07" } } });
		expect(faultCodes(alert.slice(0, 9))).toContain("cut-short");
		expect(parseDsc([], null)).toMatchObject({ ok: false, call: null });
	});

	it("leaves the automatic connection system, national use and what stands over undecoded, and says so", () => {
		const routine = symbolsOf("routine-call-to-coast-channel-401"); // second telecommand at 13
		const automatic = read(routine.with(13, 121));
		expect(automatic.faults).toEqual([
			{ code: "newer-edition", message: "automatic connection system: from a newer edition, not decoded" },
		]);
		expect(automatic).toMatchObject({ ok: true, call: { telecommand2: "code 121", undecoded: [4, 6, 50, 4, 35, 70] } });
		expect(automatic.summary).toContain("from a newer edition, not decoded");
		expect(read([121, 1, 2, 3, 127])).toMatchObject({ faults: [{ code: "not-decoded" }], call: { undecoded: [1, 2, 3] } });
		expect(read(routine.toSpliced(-1, 0, 105, 12))).toMatchObject({ faults: [{ code: "not-decoded" }], call: { undecoded: [105, 12] } });
	});

	it("never throws, whatever the symbols", () => {
		const symbol = fc.oneof(
			fc.integer({ min: 0, max: 127 }),
			fc.constantFrom(102, 112, 114, 116, 120, 123, 110, 126, 55, null, -1, 200, 0.5),
		);
		let read = 0;
		fc.assert(
			fc.property(fc.array(symbol, { maxLength: 45 }), fc.option(fc.integer({ min: 0, max: 127 })), (symbols, ecc) => {
				const reading = parseDsc(symbols, ecc);
				expect(reading.summary).toMatch(/\.$/);
				expect(JSON.parse(JSON.stringify(reading))).toEqual(reading);
				read++;
			}),
			{ seed: 493, numRuns: 5_000 },
		);
		expect(read).toBe(5_000);
	});
});

const digit = fc.integer({ min: 0, max: 9 });
const identity = fc.array(digit, { minLength: 9, maxLength: 9 }).map((digits) => digits.join(""));
const words = <Words extends string>(list: { codes: readonly number[]; wordsOf: (code: number) => Words }) =>
	fc.constantFrom(...list.codes).map((code) => list.wordsOf(code));
const position = fc.option(
	fc
		.record({ lat: fc.integer({ min: -5_400, max: 5_400 }), lon: fc.integer({ min: -10_800, max: 10_799 }) })
		.map(({ lat, lon }) => ({ latDeg: lat / 60, lonDeg: lon / 60 })),
);
const time = fc.option(
	fc
		.integer({ min: 0, max: 1_439 })
		.map((minute) => `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`),
);
const frequency: fc.Arbitrary<DscFrequency | null> = fc.option(
	fc.oneof(
		fc.integer({ min: 0, max: 2_999_999 }).map((tens) => ({ hz: tens * 10 })),
		fc.integer({ min: 0, max: 299_999 }).map((hundreds) => ({ hz: hundreds * 100 })),
		fc.integer({ min: 0, max: 99_999 }).map((hfChannel) => ({ hfChannel })),
		fc.integer({ min: 0, max: 9_999 }).map((vhfChannel) => ({ vhfChannel })),
	),
);
const distress = fc.record({ ship: fc.option(identity), nature: words(NATURES), position, time, followOn: words(FIRST_TELECOMMANDS) });
const message = fc.oneof(
	fc.record({ kind: fc.constant("frequencies" as const), receive: frequency, transmit: frequency }),
	fc.record({ kind: fc.constant("position" as const), position, time }),
);
const area = fc.record({
	northDeg: fc.integer({ min: -90, max: 90 }),
	westDeg: fc.integer({ min: -180, max: 180 }),
	heightDeg: fc.integer({ min: 0, max: 99 }),
	widthDeg: fc.integer({ min: 0, max: 99 }),
});
const isDistress = (telecommand: string) => telecommand === "distress acknowledgement" || telecommand === "distress relay";
const call: fc.Arbitrary<DscCall> = fc
	.record({
		format: words(FORMATS).filter((format) => format !== "national use"),
		to: identity,
		area,
		category: words(CATEGORIES),
		from: identity,
		telecommand1: words(FIRST_TELECOMMANDS),
		telecommand2: words(SECOND_TELECOMMANDS),
		distress,
		message,
		end: words(ENDS),
	})
	.map((parts): DscCall => {
		const { format, telecommand1 } = parts;
		const toOne = format === "group" || format.startsWith("individual");
		const base = { ...parts, to: toOne ? parts.to : null, area: format === "area" ? parts.area : null, undecoded: [] };
		if (format === "distress alert") {
			const none = { category: null, telecommand1: null, telecommand2: null, message: null };
			return { ...base, ...none, distress: { ...parts.distress, ship: parts.from } };
		}
		return isDistress(telecommand1) ? { ...base, telecommand2: null, message: null } : { ...base, distress: null };
	});

describe("makeDsc", () => {
	it("makes symbols from which the same call is read, for any call", () => {
		const seen = new Map<string, number>();
		fc.assert(
			fc.property(call, (made) => {
				const symbols = makeDsc(made);
				const reading = read(symbols);
				expect(reading.faults).toEqual([]);
				expect(reading).toMatchObject({ ok: true, call: closeTo(made) });
				seen.set(made.format, (seen.get(made.format) ?? 0) + 1);
			}),
			{ seed: 493, numRuns: 5_000 },
		);
		expect(seen.size).toBe(6);
		for (const count of seen.values()) expect(count).toBeGreaterThan(500);
	});

	it("refuses a call that lacks a field of its format, or a value that does not fit", () => {
		const { call: test } = read(symbolsOf("individual-test-call"));
		expect(() => makeDsc({ ...test!, to: null })).toThrow(/expected an address/);
		expect(() => makeDsc({ ...test!, from: "12345" })).toThrow(/"12345" as an identity: expected nine digits/);
		expect(() => makeDsc({ ...test!, category: "lunch" as never })).toThrow(/"lunch"/);
		expect(() => makeDsc({ ...test!, message: { kind: "frequencies", receive: { hz: 2_182_001 }, transmit: null } })).toThrow(/10 Hz/);
		expect(() => makeDsc({ ...test!, message: { kind: "position", position: null, time: "24:00" } })).toThrow(/hh:mm/);
	});
});

/** -0 and 0 are one latitude; degrees and minutes rounded in the last bit are one position. */
function closeTo(made: DscCall): DscCall {
	const near = (at: { latDeg: number; lonDeg: number } | null) =>
		at === null ? null : { latDeg: expect.closeTo(at.latDeg, 9), lonDeg: expect.closeTo(at.lonDeg, 9) };
	const message = made.message?.kind === "position" ? { ...made.message, position: near(made.message.position) } : made.message;
	return { ...made, message, distress: made.distress === null ? null : { ...made.distress, position: near(made.distress.position) } };
}

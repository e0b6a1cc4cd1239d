import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readDscLog } from "./readDscLog.ts";

/**
 * Sentences as published in a boating site's notes on DSC datagrams and in the tests of general NMEA 0183 libraries. Their identities
 * stand replaced by ones of the unallocated MID 299 whose characters have the same modulo-2 sum: each checksum is the published one.
 */
const PUBLISHED: readonly (readonly [sentence: string, expected: object])[] = [
	[
		"$CDDSC,12,2991235050,12,06,00,1423108312,2019,,,S,E*6A",
		{
			call: {
				format: "distress alert",
				from: "299123505",
				distress: {
					ship: "299123505",
					nature: "disabled and adrift",
					position: { latDeg: 42 + 31 / 60, lonDeg: -83.2 },
					time: "20:19",
					followOn: "F3E or G3E telephony",
				},
				end: "none",
			},
			summary: "Distress alert from ship 299123505: disabled and adrift, at 42°31′N 083°12′W, 20:19 UTC; F3E or G3E telephony to follow.",
		},
	],
	[
		"$CDDSC,20,2991234700,00,21,26,1423108312,1902,,,B,E*7B",
		{
			call: { category: "routine", message: { kind: "position", time: "19:02" }, end: "acknowledgement given" },
			summary: "Ship 299123470 answers the set that kept the log (routine): its position, at 42°31′N 083°12′W, 19:02 UTC.",
		},
	],
	[
		"$CDDSC,16,0029934770,12,112,00,1423108312,2019,2991235190,12,,*47",
		{
			call: { telecommand1: "distress relay", from: "002993477", distress: { ship: "299123519", nature: "EPIRB emission" }, end: null },
			summary:
				"Coast station 002993477 relays to all ships the distress of ship 299123519: EPIRB emission, at 42°31′N 083°12′W, 20:19 UTC; F3E or G3E telephony to follow.",
		},
	],
	[
		"$CDDSC,12,2991234700,12,06,00,1423108312,0236,2991234700,,S,*20",
		{ summary: expect.stringMatching(/withdraws its own distress alert/) },
	],
	[
		"$CDDSC,20,0299236801,00,00,26,900072900072,,,,,R*27", // as published: the identity's tenth digit is no 0
		{
			call: { from: null, message: { receive: { vhfChannel: 72 }, transmit: { vhfChannel: 72 } } },
			faults: [{ code: "field-impossible", message: 'address: "0299236801" cannot stand there' }],
		},
	],
];

describe("readDscLog", () => {
	it.each(PUBLISHED)("reads the published %s", (sentence, expected) => {
		expect(readDscLog(sentence)).toMatchObject([{ line: 1, ok: true, faults: [], ...expected }]);
	});

	it("says of the published empty sentence that it has no format", () => {
		expect(readDscLog("$CDDSC,,,,,,,,,,,*7F")).toMatchObject([{ call: null, ok: false, faults: [{ code: "cut-short" }] }]);
	});

	it("takes no alert from a sentence that holds nothing after its format", () => {
		const [short] = readDscLog(withChecksum("CDDSC,12"));
		expect(short).toMatchObject({ call: null, ok: false, faults: [{ code: "cut-short", message: expect.stringContaining("too short") }] });
		expect(short!.summary).not.toContain("istress");
	});

	it("makes the position finer by the published expansion, for the call it belongs to alone", () => {
		const log = [PUBLISHED[0]![0], PUBLISHED[1]![0], "$CDDSE,1,1,A,2991235050,00,45894494*1B"].join("\r\n");
		const [alert, other] = readDscLog(log);
		const { position } = alert!.call!.distress!;
		expect(position!.latDeg).toBeCloseTo(42 + 31.4589 / 60, 9);
		expect(position!.lonDeg).toBeCloseTo(-(83 + 12.4494 / 60), 9);
		expect(other).toEqual({ ...readDscLog(PUBLISHED[1]![0])[0], line: 2 });
	});

	it("reads frequencies, a test's answer and an area; nine digits as ten; a time stamp before the $", () => {
		const [routine, test, area, nine] = readDscLog(
			[
				"2026-07-01T12:00:00Z $CDDSC,20,2991234560,00,09,26,040650043570,,,,R,*25",
				"$GPGLL,4916.45,N,12311.12,W,225444,A*31",
				"$CDDSC,20,0029999990,08,18,26,,,,,B,*38",
				withChecksum("CDDSC,02,1510060204,10,09,26,021820021820,,,,S,"),
				withChecksum("CDDSC,20,299123456,00,09,26,44146010,,,,R,"),
			].join("\n"),
		);
		expect([routine!.stamp, test!.stamp]).toEqual(["2026-07-01T12:00:00Z", null]);
		expect(readDscLog("10:00:02 $CDDSC,12*7C")[0]!.stamp).toBe("10:00:02");
		expect(routine).toMatchObject({ line: 1, ok: true, call: { message: { receive: { hz: 4_065_000 }, transmit: { hz: 4_357_000 } } } });
		expect(test).toMatchObject({ line: 3, ok: true, call: { from: "002999999", telecommand1: "test", message: null } });
		expect(area).toMatchObject({ faults: [], call: { from: null, area: { northDeg: 51, westDeg: -6, heightDeg: 2, widthDeg: 4 } } });
		expect(nine).toMatchObject({ faults: [], call: { from: "299123456", message: { receive: { hz: 41_460_100 }, transmit: null } } });
	});

	it("names a wrong and a missing checksum, impossible fields, unknown codes, and an expansion that it does not read", () => {
		const faultsOf = (text: string) => readDscLog(text).map(({ ok, faults }) => [ok, ...faults.map(({ code }) => code)]);
		expect(faultsOf("$CDDSC,20,0029999990,08,18,26,,,,,B,*39")).toEqual([[false, "checksum-wrong"]]);
		expect(faultsOf("$CDDSC,20,0029999990,08,18,26,,,,,B,")).toEqual([[false, "checksum-wrong"]]);
		expect(faultsOf(withChecksum("CDDSC,12,2991234560,12,05,09,1500600503,2507,,,S,"))).toEqual([[true, "field-impossible"]]);
		expect(faultsOf(withChecksum("CDDSC,12,2991234560,12,05,09,1990600503,2507,,,S,"))).toEqual([
			[true, "field-impossible", "field-impossible"],
		]);
		expect(faultsOf(withChecksum("CDDSC,20,2991234560,00,19,26,12345,,,,X,"))).toEqual([
			[true, "unknown-code", "field-impossible", "field-impossible"],
		]);
		expect(faultsOf(`${PUBLISHED[0]![0]}\n${withChecksum("CDDSE,1,1,A,2991235050,02,1234")}`)).toEqual([[true, "not-decoded"]]);
	});

	it("never throws, whatever the text", () => {
		const piece = fc.oneof(
			fc.string(),
			fc.constantFrom("$CDDSC", "$CDDSE", ",", "12", "20", "2991234560", "1500600503", "00", "*", "\n", "E"),
		);
		const text = fc.array(piece, { maxLength: 30 }).map((pieces) => pieces.join(""));
		const fields = fc.array(piece, { maxLength: 13 }).map((pieces) => withChecksum(`CDDSC,${pieces.join(",")}`));
		let read = 0;
		fc.assert(
			fc.property(fc.oneof(text, fields), (log) => {
				for (const call of readDscLog(log)) expect(call.summary).toMatch(/\.$/);
				read++;
			}),
			{ seed: 183, numRuns: 5_000 },
		);
		expect(read).toBe(5_000);
	});
});

function withChecksum(body: string): string {
	let sum = 0;
	for (const character of body) sum ^= character.charCodeAt(0);
	return `$${body}*${(sum & 0xff).toString(16).toUpperCase().padStart(2, "0")}`;
}

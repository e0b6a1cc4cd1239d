import { BadInputError } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Profile } from "./profile.ts";
import { readProfile } from "./readProfile.ts";
import { profileNamed, shippedProfiles } from "./shippedProfiles.ts";

const twin = shipped("twin-180");

function shipped(id: string): Profile {
	const profile = profileNamed(id);
	if (profile === null) throw new Error(`no shipped profile ${id}`);
	return profile;
}

/** Faults of a profile text as `line path: expectation, value`. */
function faultsOf(text: string): readonly string[] {
	try {
		readProfile("set.json", text);
		return [];
	} catch (error) {
		if (!(error instanceof BadInputError)) throw error;
		return error.message.split("\n");
	}
}

describe("shipped profiles", () => {
	it("are three, all said to be invented", () => {
		expect(shippedProfiles().map(({ id }) => id)).toEqual(["twin-180", "single-200", "receiver-100"]);
		for (const { source } of shippedProfiles()) expect(source).toMatch(/^Invented/);
		expect(profileNamed("no-such-set")).toBeNull();
	});

	it("twin-180 is as the product defines it: banks, ranges, displays, steps, scan", () => {
		expect(twin.banks.map(({ id, places, blockLength }) => [id, places, blockLength])).toEqual([
			["voice", 180, 20],
			["data", 120, 20],
		]);
		expect(twin.tag.length).toBe(10);
		expect(twin.receive).toEqual([{ fromHz: 500_000, toHz: 29_999_900 }]);
		expect(twin.transmit).toEqual([{ fromHz: 1_600_000, toHz: 27_500_000 }]);
		expect(Object.entries(twin.modes).map(([mode, display]) => [mode, display?.shows])).toEqual([
			["USB", "carrier"],
			["LSB", "carrier"],
			["AM", "carrier"],
			["CW", "carrier"],
			["FSK", "centre"],
		]);
		expect([twin.entry, twin.tuningStepsHz, twin.stepsCarry, twin.receivers]).toEqual(["knob", [100, 1_000, 10_000, 1_000_000], true, 1]);
		expect(twin.scan).toMatchObject({ stopsOn: "squelch", dwellMs: 500, skipsEmpty: true });
	});

	it("single-200 has one bank of 200 in blocks of 10, six letters, a keypad; receiver-100 sends nowhere", () => {
		const single = shipped("single-200");
		expect([single.banks.length, single.banks[0]?.places, single.banks[0]?.blockLength, single.tag.length, single.entry]).toEqual([
			1,
			200,
			10,
			6,
			"keypad",
		]);
		expect(shipped("receiver-100").transmit).toEqual([]);
	});
});

describe("readProfile", () => {
	it("reads what it wrote, with a BOM and CRLF too", () => {
		const text = JSON.stringify(twin, null, 2);
		expect(readProfile("set.json", text)).toEqual(twin);
		expect(readProfile("set.json", `\uFEFF${text.replaceAll("\n", "\r\n")}`)).toEqual(twin);
	});

	it("fills in what may be left out", () => {
		const { dscWatch: _, ...rest } = twin;
		const bank = { id: "a", places: 5, blockLength: 5 };
		const profile = readProfile("set.json", JSON.stringify({ ...rest, banks: [bank] }));
		expect([profile.dscWatch, profile.banks[0]?.holds]).toEqual([null, "any"]);
	});

	it("names line and column of broken JSON", () => {
		expect(faultsOf('{\n  "format": "skipwright-set"\n  "version": 1\n}')).toEqual([
			'set.json: line 3, column 3: expected a comma or } after the value, got "\\"version\\": 1\\n}"',
		]);
		expect(faultsOf("")[0]).toMatch(/line 1, column 1: expected a value.*got the end of the file/);
		expect(faultsOf('{"id":"a","id":"b"}')[0]).toMatch(/expected the name "id" once in this object/);
	});

	it("says so where the text is in another encoding", () => {
		const utf16 = JSON.stringify(twin).replace(/(.)/g, "$1\0");
		const latin1 = JSON.stringify({ ...twin, name: "Funkger\uFFFDt" });
		for (const text of [utf16, latin1])
			expect(faultsOf(text)).toEqual([expect.stringMatching(/line 1, column \d+: expected text in UTF-8/)]);
	});

	it("refuses another format and another version by name, and looks no further", () => {
		expect(faultsOf('{"format":"skipwright-job","version":1}')).toEqual([
			'set.json: line 1, format: expected "skipwright-set", as this is to be a set profile, got "skipwright-job"',
		]);
		expect(faultsOf('{"format":"skipwright-set",\n"version":2}')).toEqual([
			"set.json: line 2, version: expected version 1 or older (this file is from a newer program), got 2",
		]);
		expect(faultsOf('{"format":"skipwright-set","version":"1"}')).toEqual(['set.json: line 1, version: expected version 1, got "1"']);
		expect(faultsOf("[]")).toHaveLength(1);
		expect(faultsOf("null")).toHaveLength(1);
	});

	it("names line, path, value and expectation of every fault at once", () => {
		const text = JSON.stringify(
			{ ...twin, banks: [{ id: "Voice", places: 0, blockLength: 20 }], receivers: 3, colour: "red", modes: { usb: { shows: "carrier" } } },
			null,
			1,
		);
		const lineOf = (fragment: string) => text.slice(0, text.indexOf(fragment)).split("\n").length;
		expect(faultsOf(text)).toEqual([
			`set.json: line ${lineOf('"id": "Voice"')}, banks[0].id: expected a name of lower-case letters, digits and hyphens that begins with a letter, got "Voice"`,
			`set.json: line ${lineOf('"places"')}, banks[0].places: expected at least 1, got 0`,
			`set.json: line ${lineOf('"usb"')}, modes.usb: expected no such name here, got {"shows":"carrier"}`,
			`set.json: line ${lineOf('"receivers"')}, receivers: expected one of 1, 2, got 3`,
			`set.json: line ${lineOf('"colour"')}, colour: expected no such name here, got "red"`,
		]);
	});

	const contradictions: readonly [string, Partial<Record<keyof Profile, unknown>>, string][] = [
		["two banks of one id", { banks: [twin.banks[0], twin.banks[0]] }, "banks[1].id: expected each bank's id once"],
		[
			"a block longer than its bank",
			{ banks: [{ id: "a", places: 10, blockLength: 11 }] },
			"banks[0].blockLength: expected a block no longer",
		],
		["a character twice", { tag: { length: 6, characters: "ABCA" } }, "tag.characters: expected every character once"],
		["a control character", { tag: { length: 6, characters: "AB\t" } }, "tag.characters: expected characters that can be shown"],
		["a tag of no characters", { tag: { length: 6, characters: "" } }, "tag.characters: expected at least one character"],
		[
			"a range that ends before it begins",
			{ receive: [{ fromHz: 2_000_000, toHz: 1_000_000 }] },
			"receive[0].toHz: expected more than fromHz",
		],
		[
			"ranges out of order",
			{
				transmit: [
					{ fromHz: 4_000_000, toHz: 5_000_000 },
					{ fromHz: 5_000_000, toHz: 6_000_000 },
				],
			},
			"transmit[1].fromHz: expected more than the range before it ends at",
		],
		["kilohertz for hertz", { receive: [{ fromHz: 500, toHz: 30_000 }] }, "is this kilohertz?"],
		["falling steps", { tuningStepsHz: [1_000, 100] }, "tuningStepsHz[1]: expected more than the step before it, 1000"],
		["a step of nothing", { tuningStepsHz: [0, 100] }, "tuningStepsHz[0]: expected at least 1"],
		["a step off the finest", { tuningStepsHz: [100, 250] }, "tuningStepsHz[1]: expected a multiple of the finest step, 100"],
		[
			"wheels that do not divide",
			{ tuningStepsHz: [100, 5_000, 9_000], stepsCarry: false },
			"tuningStepsHz[2]: expected a multiple of 5000",
		],
		["no mode", { modes: {}, modeNames: {} }, "modes: expected at least one of USB, LSB, AM, CW, FSK"],
		["a mark without its shift", { modes: { ...twin.modes, FSK: { shows: "mark" } } }, "modes.FSK.shiftHz: expected hertz of shift"],
		[
			"a pitch in USB",
			{ modes: { ...twin.modes, USB: { shows: "carrier", pitchHz: 700 } } },
			"modes.USB.pitchHz: expected a pitch in the mode CW only",
		],
		[
			"USB on the lower sideband",
			{ modes: { ...twin.modes, USB: { shows: "carrier", sideband: "lower" } } },
			'modes.USB.sideband: expected "upper"',
		],
		[
			"a maker's word for a mode that is not there",
			{ modes: { USB: { shows: "carrier" } }, modeNames: { fax: "FSK" } },
			"modeNames.fax: expected a mode that the set has",
		],
		["a maker's word twice", { modeNames: { Fax: "USB", FAX: "FSK" } }, "modeNames.FAX: expected each word once"],
		["a maker's LSB that is USB", { modeNames: { lsb: "USB" } }, "modeNames.lsb: expected LSB, as the word says"],
		["a fine step beyond its range", { fineTune: { rangeHz: 10, stepHz: 20 } }, "fineTune.stepHz: expected no more than rangeHz, 10"],
		["a wait of a scan that never stops", { scan: { ...twin.scan, stopsOn: "nothing" } }, "scan.stopsOn: expected squelch or speech"],
	];
	it.each(contradictions)("refuses %s", (_, change, expected) => {
		const faults = faultsOf(JSON.stringify({ ...twin, ...change }));
		expect(faults.join("\n")).toContain(expected);
		expect(faults).toHaveLength(1);
	});

	it("takes any text without surprises: a profile, or faults", () => {
		const text = JSON.stringify(twin);
		const damaged = fc
			.tuple(fc.nat(text.length), fc.string({ maxLength: 4 }), fc.nat(4))
			.map(([at, put, cut]) => text.slice(0, at) + put + text.slice(at + cut));
		const changed = fc
			.tuple(fc.constantFrom(...Object.keys(twin)), fc.jsonValue())
			.map(([key, value]) => JSON.stringify({ ...twin, [key]: value }));
		let refused = 0;
		fc.assert(
			fc.property(fc.oneof(damaged, changed, fc.string(), fc.json()), (input) => {
				if (faultsOf(input).length > 0) refused++;
			}),
			{ seed: 20261124, numRuns: 2_000 },
		);
		expect(refused).toBeGreaterThan(1_000);
	});
});

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { directory, listingById } from "@skipwright/directory";
import type { Heard } from "@skipwright/modem";
import { profileNamed } from "@skipwright/set";
import { BadInputError, position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Evidence, type EvidenceInput, evidence, readEvidence } from "./evidence.ts";
import { expectationOf } from "./expectationOf.ts";
import { chartItem, dscItem, textItem } from "./heardItems.sample.ts";
import { verdict } from "./verdict.ts";

const SAMPLE = readFileSync(join(import.meta.dirname, "..", "samples", "v1.evidence.json"), "utf8");

function input(id: string, heard: readonly Heard[], chance = 0.9): EvidenceInput {
	const expectation = expectationOf(listingById(directory(), id)!, directory(), profileNamed("twin-180")!);
	if ("cannot" in expectation) throw new Error(expectation.cannot);
	return {
		place: { bank: "data", place: 12, tag: "NAVTEX 518", receiveHz: expectation.dialHz, mode: expectation.mode },
		expectation,
		verdict: verdict(expectation, heard, { chance, isDue: true }, { ownMmsi: "299123456", stepHz: 100 }),
		items: heard,
		ownMmsi: "299123456",
		recordedMs: Date.UTC(2027, 1, 1, 4, 20),
		position: position(-33.91, 18.43),
		audio: { file: "navtex.wav", sha256: "ab".repeat(32), rateHz: 8_000, seconds: 118 },
	};
}

function kept(one: EvidenceInput): Evidence {
	const record = evidence(one);
	if ("refused" in record) throw new Error(record.refused);
	return record;
}

describe("evidence", () => {
	it("holds place, listing, what was heard, offset, time, position, tolerance, verdict and the recording", () => {
		const record = kept(input("navtex-capetown/navtex/518", [textItem({ audioHz: 1_703.004 })]));
		expect(record).toMatchObject({
			place: { bank: "data", place: 12, receiveHz: 518_000, mode: "FSK" },
			listing: "navtex-capetown/navtex/518",
			heard: { kind: "text" },
			offsetHz: 3,
			snrDb: 20,
			time: "2027-02-01T04:20:02Z", // two seconds into the recording
			position: [-33.91, 18.43],
			tolerance: { hz: 10 },
			verdict: "proved",
			audio: { file: "navtex.wav", startS: 2, endS: 62, rateHz: 8_000 },
		});
	});

	it("comes back as written, for each kind that may be kept", () => {
		const records = [
			kept(input("navtex-capetown/navtex/518", [textItem()])),
			kept(input("za-capetown/dsc-watch/8414.5", [dscItem()])),
			kept(input("us-pointreyes/fax/8682", [chartItem()])),
		];
		for (const record of records) expect(readEvidence("e.json", JSON.stringify(record))).toEqual(record);
		expect(new Set(records.map(({ heard }) => heard?.kind)).size).toBe(3);
	});

	it("records silence: what was listened for, when and where, and no content", () => {
		const id = "navtex-capetown/navtex/518";
		const open = kept(input(id, []));
		expect(open).toMatchObject({
			verdict: "not proved",
			listing: id,
			heard: null,
			snrDb: null,
			offsetHz: null,
			time: "2027-02-01T04:20:00Z",
		});
		expect(open.audio).toEqual({ file: "navtex.wav", sha256: "ab".repeat(32), rateHz: 8_000, startS: 0, endS: 118 });
		const closed = kept(input(id, [], 0.03));
		expect(closed).toMatchObject({ verdict: "cannot tell", position: [-33.91, 18.43] });
		expect(closed.why[0]).toBe("Cannot tell: band predicted closed.");
		for (const record of [open, closed]) expect(readEvidence("e.json", JSON.stringify(record))).toEqual(record);
	});

	it("keeps no recording, nor its hash, where other traffic is in it and nothing of what was listened for", () => {
		const record = kept(input("navtex-capetown/navtex/518", [dscItem({ to: "299000111" })]));
		expect(record).toMatchObject({ verdict: "not proved", heard: null, audio: null });
		expect(JSON.stringify(record)).not.toMatch(/299000111|navtex\.wav|abab/);
		expect(readEvidence("e.json", JSON.stringify(record))).toEqual(record);
	});

	it("tells of a frequency that was dialled, with no place of the set", () => {
		const one = input("za-capetown/dsc-watch/8414.5", [dscItem()]);
		const record = kept({ ...one, place: { ...one.place, bank: "dialled", place: null, tag: "" } });
		expect(record.place).toMatchObject({ bank: "dialled", place: null });
		expect(readEvidence("e.json", JSON.stringify(record))).toEqual(record);
	});

	it("is refused for other people's traffic", () => {
		expect(evidence(input("za-capetown/dsc-watch/8414.5", [dscItem({ to: "299000111" })]))).toEqual({
			refused: expect.stringMatching(/Article 17/),
		});
	});
});

describe("readEvidence", () => {
	it("reads the stored sample of version 1 to the last field", () => {
		expect(readEvidence("v1.evidence.json", SAMPLE)).toEqual(JSON.parse(SAMPLE));
	});

	const bad = (change: object) => () => readEvidence("e.json", JSON.stringify({ ...JSON.parse(SAMPLE), ...change }, null, 1));

	it.each([
		["another format", { format: "skipwright-job" }, /format: expected "skipwright-evidence"/],
		["a newer version", { version: 2 }, /newer program/],
		["a bad hash", { audio: { ...JSON.parse(SAMPLE).audio, sha256: "AB".repeat(32) } }, /audio\.sha256: expected 64 hexadecimal digits/],
		["an end before the start", { audio: { ...JSON.parse(SAMPLE).audio, endS: 0 } }, /audio\.endS: expected no earlier than startS/],
		["an offset without its uncertainty", { uncertaintyHz: null }, /uncertaintyHz: expected null together/],
		["a day that is none", { time: "2027-02-30T04:20:00Z" }, /time: expected a time as/],
		["a time without a zone", { time: "2027-02-01T04:20:00" }, /time: expected a time as/],
		["another word as a verdict", { verdict: "passed" }, /verdict: expected one of "proved"/],
		[
			"a proof by nothing",
			{ heard: null, snrDb: null, offsetHz: null, uncertaintyHz: null },
			/heard: expected something with the verdict "proved"/,
		],
		["a proof without its recording", { audio: null }, /audio: expected the recording of what was heard/],
		["no reason", { why: [] }, /why: expected at least 1/],
		["half a hertz of dial", { place: { ...JSON.parse(SAMPLE).place, receiveHz: 518_000.5 } }, /place\.receiveHz: expected a whole number/],
		["a field of its own", { note: "x" }, /note: expected no such name here/],
	])("refuses %s, by name", (_, change, message) => {
		expect(bad(change)).toThrow(BadInputError);
		expect(bad(change)).toThrow(message);
	});

	it("throws nothing but BadInputError, whatever the text, and returns only what its schema says", () => {
		const broken = fc
			.tuple(fc.nat(SAMPLE.length), fc.nat(6), fc.string({ maxLength: 3 }))
			.map(([at, cut, put]) => SAMPLE.slice(0, at) + put + SAMPLE.slice(at + cut));
		const swapped = fc
			.tuple(fc.constantFrom(...Object.keys(JSON.parse(SAMPLE))), fc.jsonValue())
			.map(([key, value]) => JSON.stringify({ ...JSON.parse(SAMPLE), [key]: value }));
		let [read, refused] = [0, 0];
		fc.assert(
			fc.property(fc.oneof(broken, swapped, fc.json(), fc.string()), (text) => {
				try {
					const record = readEvidence("e.json", text);
					read++;
					expect(readEvidence("again.json", JSON.stringify(record))).toEqual(record);
				} catch (error) {
					expect(error).toBeInstanceOf(BadInputError);
					refused++;
				}
			}),
			{ seed: 20_261_127, numRuns: 2_000 },
		);
		expect(read).toBeGreaterThan(20);
		expect(refused).toBeGreaterThan(1_000);
	});
});

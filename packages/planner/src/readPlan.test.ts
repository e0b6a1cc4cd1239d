import { directory } from "@skipwright/directory";
import { readJob, resolveJob } from "@skipwright/job";
import { checkList } from "@skipwright/set";
import { BadInputError, isoDate } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { handbookHearing } from "./handbookHearing.ts";
import { plan } from "./plan.ts";
import { readPlan } from "./readPlan.ts";

const JOB = readJob(
	"small",
	JSON.stringify({
		format: "skipwright-job",
		version: 1,
		title: "small",
		vessel: { name: "Imaginary", licences: { ship: true, amateur: false, operator: "" } },
		set: { profile: "single-200" },
		voyage: { points: [{ name: "Horta", at: [38.53, -28.63], from: "2027-05-01", to: "2027-05-03" }] },
		wants: { time: 1 },
	}),
);
const PLAN = await plan(resolveJob(JOB, new Map()), directory(), { on: isoDate("2026-11-24"), checkList, hearing: handbookHearing() });
const TEXT = JSON.stringify(PLAN, null, "\t");

describe("readPlan", () => {
	it("reads back what was written", () => {
		expect(readPlan("plan.json", TEXT)).toEqual(PLAN);
		expect(PLAN.places.length).toBeGreaterThan(10);
	});

	it.each([
		["another format", TEXT.replace("skipwright-plan", "skipwright-job"), /format: expected "skipwright-plan"/],
		["a newer version", TEXT.replace('"version": 1', '"version": 2'), /version: .*newer/],
		[
			"kilohertz for hertz",
			TEXT.replace(/"receiveHz": 2182000/, '"receiveHz": 2182.5'),
			/places\[0\]\.receiveHz: expected a whole number, got 2182.5/,
		],
		["a day that is not", TEXT.replace("2026-11-24", "2026-13-24"), /on: expected a day/],
	])("refuses %s", (_what, text, message) => {
		expect(() => readPlan("plan.json", text)).toThrow(message);
	});

	it("reads a damaged plan or refuses it with BadInputError, never anything else", () => {
		let refusals = 0;
		fc.assert(
			fc.property(fc.nat({ max: TEXT.length }), fc.nat({ max: 9 }), fc.string({ maxLength: 3 }), (at, cut, put) => {
				try {
					readPlan("x", TEXT.slice(0, at) + put + TEXT.slice(at + cut));
				} catch (error) {
					expect(error).toBeInstanceOf(BadInputError);
					refusals++;
				}
			}),
			{ seed: 20261124, numRuns: 400 },
		);
		expect(refusals).toBeGreaterThan(100);
	});
});

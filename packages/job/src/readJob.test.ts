import { readFileSync } from "node:fs";
import { join } from "node:path";
import { BadInputError } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readJob } from "./readJob.ts";

const SAMPLE = readFileSync(join(import.meta.dirname, "..", "samples", "v1.job.json"), "utf8");

const LEAST = {
	format: "skipwright-job",
	version: 1,
	title: "least",
	vessel: { name: "Imaginary", licences: { ship: true, amateur: false, operator: "none" } },
	set: { profile: "single-200" },
	voyage: { points: [{ name: "Horta", at: [38.53, -28.63], from: "2027-05-01" }] },
	wants: {},
};

/** The message of reading `LEAST` with one value replaced. */
function messageWith(change: object): string {
	try {
		readJob("a.job.json", JSON.stringify({ ...LEAST, ...change }, null, 1));
	} catch (error) {
		expect(error).toBeInstanceOf(BadInputError);
		return (error as Error).message;
	}
	return "nothing was wrong";
}

describe("readJob", () => {
	it("reads the stored sample of version 1 to the last field", () => {
		const job = readJob("v1.job.json", SAMPLE);
		expect(job).toEqual(JSON.parse(SAMPLE)); // the sample fills in every field, so no default adds to it; fields that came later were added to it
		expect(readJob("v1.job.json", `\uFEFF${SAMPLE.replaceAll("\n", "\r\n")}`)).toEqual(job);
	});

	it("fills in what is left out", () => {
		const job = readJob("a", JSON.stringify(LEAST));
		expect(job.options).toEqual({
			reservePlaces: {},
			region: null,
			berth: null,
			sheetFrom: "as-found",
			disturbance: 1,
			leastGainPercent: 0.5,
			clearUnplanned: false,
		});
		expect(job.together).toEqual([]);
		expect([job.asFound, job.listings, job.pins, job.bans, job.noise]).toEqual([null, { rows: [] }, [], [], "residential"]);
		expect(job.settings).toEqual({ asFound: {}, wanted: {} });
	});

	const refused: readonly (readonly [string, object, RegExp])[] = [
		["another format", { format: "skipwright-set" }, /line 2, format: expected "skipwright-job".*got "skipwright-set"/],
		["a newer version", { version: 2 }, /line 3, version: expected version 1 .*newer.*got 2/],
		["a missing voyage", { voyage: undefined }, /voyage: expected an object, got nothing/],
		["a want that is always held", { wants: { guard: 1 } }, /wants\.guard: expected no such name here, got 1/],
		["a negative weight", { wants: { nets: -1 } }, /wants\.nets: expected at least 0, got -1/],
		["an unknown set", { set: { profile: "none-1" } }, /set\.profile: expected the id of a shipped profile: .*twin-180.*got "none-1"/],
		["a set given twice over", { set: {} }, /set: expected either "profile" or "inline"/],
		["a day that is not", { voyage: { points: [{ at: [0, 0], from: "2027-02-30" }] } }, /voyage\.points\[0\]\.from: .*got "2027-02-30"/],
		[
			"a latitude",
			{ voyage: { points: [{ at: [91, 0], from: "2027-02-03" }] } },
			/voyage\.points\[0\]\.at\[0\]: expected at most 90, got 91/,
		],
		[
			"a stay that ends before it begins",
			{ voyage: { points: [{ at: [0, 0], from: "2027-02-03", to: "2027-02-02" }] } },
			/voyage\.points\[0\]\.to: expected a time no earlier than the one before it, got "2027-02-02"/,
		],
		[
			"kilohertz in a hertz field",
			{ pins: [{ bank: "a", place: 1, content: { tag: "", receiveHz: 2187.5, transmitHz: null, mode: "USB" } }] },
			/pins\[0\]\.content\.receiveHz: expected a whole number, got 2187.5/,
		],
		["an MMSI with a letter", { vessel: { ...LEAST.vessel, mmsi: "29900471O" } }, /vessel\.mmsi: expected nine digits, got "29900471O"/],
		["a file elsewhere", { asFound: { csv: "../../etc/passwd" } }, /asFound\.csv: expected the name of a file beside the job/],
		["a file by an absolute path", { asFound: { csv: "/etc/passwd" } }, /asFound\.csv: expected the name of a file beside the job/],
	];
	it.each(refused)("refuses %s by path, value and expectation", (_what, change, message) => {
		expect(messageWith(change)).toMatch(message);
	});

	it("names line and column of malformed JSON", () => {
		const text = '{\n\t"format": "skipwright-job",\n\t"version": 1\n\t"title": "x"\n}';
		expect(() => readJob("a.job.json", text)).toThrow(/a\.job\.json: line 4, column 2: expected a comma or } after the value/);
	});

	it("gives every fault at once", () => {
		const message = messageWith({ wants: { nets: -1, news: "much" }, title: 7 });
		expect(message.split("\n")).toHaveLength(3);
	});

	it("reads a damaged job or refuses it with BadInputError, never anything else", () => {
		let refusals = 0;
		fc.assert(
			fc.property(fc.nat({ max: SAMPLE.length }), fc.nat({ max: 9 }), fc.string({ maxLength: 3, unit: "binary" }), (at, cut, put) => {
				try {
					readJob("x", SAMPLE.slice(0, at) + put + SAMPLE.slice(at + cut));
				} catch (error) {
					expect(error).toBeInstanceOf(BadInputError);
					refusals++;
				}
			}),
			{ seed: 20261124, numRuns: 1_500 },
		);
		expect(refusals).toBeGreaterThan(300);
	});

	it("never takes a value of another kind for a field", () => {
		const paths = leafPaths(JSON.parse(SAMPLE));
		expect(paths.length).toBeGreaterThan(50);
		for (const path of paths) {
			const text = JSON.stringify(withValue(JSON.parse(SAMPLE), path, { odd: true }));
			expect(() => readJob("x", text), path.join(".")).toThrow(BadInputError);
		}
	});
});

type Path = readonly (string | number)[];

function leafPaths(value: unknown, path: Path = []): readonly Path[] {
	if (typeof value !== "object" || value === null) return [path];
	return Object.entries(value).flatMap(([key, inner]) => leafPaths(inner, [...path, Array.isArray(value) ? Number(key) : key]));
}

function withValue(document: unknown, path: Path, value: unknown): unknown {
	let at = document as Record<string | number, unknown>;
	for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, unknown>;
	at[path.at(-1) ?? ""] = value;
	return document;
}

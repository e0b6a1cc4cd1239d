import { readFileSync } from "node:fs";
import { join } from "node:path";
import { directory, stationOf } from "@skipwright/directory";
import { BadInputError } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { readJob } from "./readJob.ts";
import { directoryFor, references, resolveJob } from "./resolveJob.ts";

const SAMPLE = readJob("v1", readFileSync(join(import.meta.dirname, "..", "samples", "v1.job.json"), "utf8"));

describe("resolveJob", () => {
	it("needs no file for a job that refers to none", () => {
		expect(references(SAMPLE)).toEqual([]);
		const { profile, voyage, asFound, ownListings } = resolveJob(SAMPLE, new Map());
		expect(profile.id).toBe("twin-180");
		expect(voyage.points.map(({ name }) => name)).toEqual(["Cape Town", null, "Jamestown"]);
		expect(asFound).toEqual([{ bank: "voice", place: 1, tag: "DIST 2182", receive: 2_182_000, transmit: 2_182_000, mode: "USB", line: 2 }]);
		expect(ownListings.map(({ id, shipTx, origin }) => [id, shipTx, origin])).toEqual([
			["own/morning/voice-working/8294", 8_294_000, "owner"],
		]);
	});

	it("adds the owner's own to the directory, with name and position", () => {
		const resolved = resolveJob(SAMPLE, new Map());
		const merged = directoryFor(resolved, directory());
		const own = merged.listings.find(({ origin }) => origin === "owner");
		expect(own).toBeDefined();
		if (own === undefined) return;
		expect(stationOf(merged, own)).toMatchObject({ name: "Morning net (invented)", position: { latDeg: -15.92, lonDeg: -5.72 } });
		expect(merged.listings.length).toBe(directory().listings.length + 1);
	});

	it("reads the files that a job refers to", () => {
		const job = { ...SAMPLE, voyage: { gpx: "r.gpx" }, listings: { csv: "own.csv" }, asFound: { csv: "found.csv" } };
		expect(references(job)).toEqual(["r.gpx", "own.csv", "found.csv"]);
		const texts = new Map([
			["r.gpx", '<gpx><rte><rtept lat="1" lon="2"><time>2027-02-01T00:00:00Z</time></rtept></rte></gpx>'],
			["own.csv", "name,khz,means,schedule,mode,transmit_khz\nDusk net,12353,carrier,1700,USB,12353\n"],
			["found.csv", "bank,place,tag,receive_khz,transmit_khz,mode\nvoice,3,X,8291,8291,USB\n"],
		]);
		const resolved = resolveJob(job, texts);
		expect([resolved.voyage.points.length, resolved.ownListings.length, resolved.asFound.length]).toEqual([1, 1, 1]);
		const bad = new Map([...texts, ["found.csv", "bank,place\nvoice,3\n"]]);
		expect(() => resolveJob(job, bad)).toThrow(BadInputError);
		expect(() => resolveJob(job, bad)).toThrow(/found\.csv/);
		expect(() => resolveJob(job, new Map())).toThrow(/"r\.gpx" was not given/);
	});

	it("reads an inline entry as the same listing as a row of a file, but for its source", () => {
		const job = { ...SAMPLE, listings: { csv: "own.csv" } };
		const csv = "name,khz,means,schedule,mode,transmit_khz,as_of\nMorning,8294,carrier,0700,USB,8294,2026-11-01\n";
		const [fromFile] = resolveJob(job, new Map([["own.csv", csv]])).ownListings;
		const [inline] = resolveJob(SAMPLE, new Map()).ownListings;
		expect({ ...fromFile, coverage: "" }).toEqual({ ...inline, coverage: "" });
	});
});

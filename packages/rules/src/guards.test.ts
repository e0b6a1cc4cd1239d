import { parseKhz } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { channels } from "./channels.ts";
import { dscCalling } from "./dscCalling.ts";
import { guardOverlapping, guardSpectrum, guards, guardsAt } from "./guards.ts";
import { msiFrequencies } from "./msi.ts";
import { overlaps } from "./spectrum.ts";
import { spectrumAround } from "./spectrumAround.ts";

const figures = (kind: string) =>
	guards()
		.filter((guard) => guard.kind === kind)
		.map(({ hz }) => hz / 1000);

describe("guards", () => {
	it("are the carriers and frequencies of 47 CFR 80.1077, 80.359(b), 80.361(c), 80.369(a)-(b) and 80.379", () => {
		expect(figures("voice")).toEqual([2182, 4125, 6215, 8291, 12290, 16420]);
		expect(figures("dsc")).toEqual([2187.5, 4207.5, 6312, 8414.5, 12577, 16804.5]);
		expect(figures("nbdp")).toEqual([2174.5, 4177.5, 6268, 8376.5, 12520, 16695]);
		expect(figures("sar-voice")).toEqual([3023, 5680]);
		expect(guards()).toHaveLength(20);
	});

	it("requires a place for the six voice carriers alone", () => {
		expect(
			guards()
				.filter(({ required }) => required)
				.map(({ kind }) => kind),
		).toEqual(Array(6).fill("voice"));
	});

	it("says of the former direct-printing frequencies that the newer edition rests on memory", () => {
		for (const guard of guards()) if (guard.kind === "nbdp") expect(guard.note).toContain("from memory");
	});

	it("pairs each alert frequency with a voice carrier of the same band (47 CFR 80.1123(d))", () => {
		const band = (khz: number) => Math.floor(khz / 1000);
		expect(figures("dsc").map(band)).toEqual(figures("voice").map(band));
	});

	it("do not overlap one another, the calling pairs' data or the safety text", () => {
		let compared = 0;
		for (const guard of guards()) {
			expect(guardOverlapping(guardSpectrum(guard))).toEqual([guard]);
			for (const { hz } of msiFrequencies()) {
				expect(overlaps(guardSpectrum(guard), spectrumAround(hz, "F1B"))).toBe(false);
				compared++;
			}
			for (const { ship, coast } of dscCalling()) {
				for (const hz of [ship, coast]) expect(overlaps(guardSpectrum(guard), spectrumAround(hz, "F1B"))).toBe(false);
			}
		}
		expect(compared).toBe(20 * 11);
	});
});

describe("guardOverlapping", () => {
	it("is quiet for every working channel and finds the guard for every channel whose ship side is one", () => {
		const hit = channels().filter(({ ship }) => ship !== null && guardOverlapping(spectrumAround(ship, "J3E")).length > 0);
		expect(hit.map(({ number }) => number)).toEqual([421, 606, 833, 1221, 1621]);
	});

	it("compares spectra, not dials: 1 kHz off a distress carrier still overlaps, full carrier on it too, the next slot does not", () => {
		const labels = (khz: number, emission: "J3E" | "A3E") =>
			guardOverlapping(spectrumAround(khz * 1000, emission)).map(({ hz }) => hz / 1000);
		expect(labels(4124, "J3E")).toEqual([4125]);
		expect(labels(4122, "J3E")).toEqual([]);
		expect(labels(4128, "J3E")).toEqual([]);
		expect(labels(4125, "A3E")).toEqual([4125]);
		expect(labels(4122.6, "A3E")).toEqual([4125]);
		expect(labels(2185, "J3E")).toEqual([2187.5]);
	});
});

describe("guardsAt", () => {
	it("finds 2182 and 8414.5 exactly and nothing beside them (common practice, no source)", () => {
		expect(guardsAt(parseKhz("2182")).map(({ kind }) => kind)).toEqual(["voice"]);
		expect(guardsAt(parseKhz("8414.5")).map(({ kind }) => kind)).toEqual(["dsc"]);
		expect(guardsAt(parseKhz("8414"))).toEqual([]);
	});
});

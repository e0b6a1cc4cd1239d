import { hz, parseKhz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dialFor } from "./dial.ts";
import { guardSpectrum, guardsAt } from "./guards.ts";
import { occupiedSpectrum, overlaps, spectrumOfPublished } from "./spectrum.ts";
import type { DialConvention, EmissionClass } from "./types.ts";

const CARRIERS: DialConvention = {
	USB: { shows: "carrier" },
	LSB: { shows: "carrier" },
	AM: { shows: "carrier" },
	CW: { shows: "carrier" },
	FSK: { shows: "centre" },
};
const khz = (text: string) => parseKhz(text);
const around = (low: number, high: number) => ({ lowHz: low, highHz: high });

describe("spectrumOfPublished", () => {
	it("is carrier +0.35 to +2.7 kHz for speech, mirrored for a lower sideband (ITU-R M.1173, from memory)", () => {
		const published = { hz: khz("8291"), means: "carrier", emission: "J3E" } as const;
		expect(spectrumOfPublished(published)).toEqual(around(8_291_350, 8_293_700));
		expect(spectrumOfPublished({ ...published, sideband: "lower" })).toEqual(around(8_288_300, 8_290_650));
		expect(spectrumOfPublished({ ...published, hz: khz("8292.4"), means: "assigned" })).toEqual(around(8_291_350, 8_293_700));
	});

	it.each([
		["A3E", 3000],
		["H3E", 3000],
		["A1A", 100],
		["F1B", 150],
		["J2B", 150],
		["F3C", 450],
		["J3C", 450],
		["J2D", 1400],
	] as const)("is centre ± for %s", (emission, half) => {
		expect(spectrumOfPublished({ hz: khz("10000"), means: "assigned", emission })).toEqual(around(10_000_000 - half, 10_000_000 + half));
	});

	it("widens teletype with its shift: half of it and 0.1 kHz each side, 450 Hz unless told", () => {
		const published = { hz: khz("10100.8"), means: "centre", emission: "F1B", service: "rtty-weather" } as const;
		expect(spectrumOfPublished(published)).toEqual(around(10_100_475, 10_101_125));
		expect(spectrumOfPublished(published, 850)).toEqual(around(10_100_275, 10_101_325));
	});

	it("puts a figure listed as a dial back on its centre", () => {
		expect(spectrumOfPublished({ hz: khz("8680.1"), means: "dial", emission: "F3C" })).toEqual(around(8_681_550, 8_682_450));
	});
});

describe("occupiedSpectrum", () => {
	it("is the published signal's own spectrum when the dial was made for it, in every mode that receives it", () => {
		const emissions: EmissionClass[] = ["J3E", "A3E", "A1A", "F1B", "F3C"];
		let compared = 0;
		for (const emission of emissions) {
			for (const mode of ["USB", "LSB", "AM", "CW", "FSK"] as const) {
				const published = { hz: khz("8414.5"), means: "assigned", emission } as const;
				const dial = dialFor(published, CARRIERS, { mode });
				if ("cannot" in dial) continue;
				expect(occupiedSpectrum({ dialHz: dial.dialHz, mode, convention: CARRIERS, emission })).toEqual(spectrumOfPublished(published));
				compared++;
			}
		}
		expect(compared).toBe(13);
	});

	it("is as wide as the teletype's own shift, whatever shift the set shows its mark by", () => {
		const published = { hz: khz("10100.8"), means: "centre", emission: "F1B", service: "rtty-weather" } as const;
		const convention: DialConvention = { FSK: { shows: "mark", shiftHz: 170 } };
		const dial = dialFor(published, convention);
		if ("cannot" in dial) throw new Error(dial.cannot);
		expect(dial.dialHz).toBe(khz("10100.715")); // the set's half shift: that is what puts the centre in the middle of its audio
		const spectrum = occupiedSpectrum({ dialHz: dial.dialHz, mode: "FSK", convention, emission: "F1B", service: "rtty-weather" });
		expect(spectrum).toEqual(spectrumOfPublished(published));
	});

	it("takes speech on USB, LSB and AM, Morse on CW, keyed tones on FSK when no emission is named", () => {
		const at = (mode: "USB" | "LSB" | "AM" | "CW" | "FSK") => occupiedSpectrum({ dialHz: khz("4125"), mode, convention: CARRIERS });
		expect(at("USB")).toEqual(around(4_125_350, 4_127_700));
		expect(at("LSB")).toEqual(around(4_122_300, 4_124_650));
		expect(at("AM")).toEqual(around(4_122_000, 4_128_000));
		expect(at("CW")).toEqual(around(4_124_900, 4_125_100));
		expect(at("FSK")).toEqual(around(4_124_850, 4_125_150));
	});

	it("keeps safety text clear of the alert frequencies though their dials lie 0.3 kHz from them (emissions of 47 CFR 80.1077)", () => {
		const neighbours = [
			["4209.5", "4207.5", 300],
			["6314", "6312", 300],
			["8416.5", "8414.5", 300],
			["12579", "12577", 300],
			["16806.5", "16804.5", 300],
		] as const;
		for (const [text, alert, apart] of neighbours) {
			const published = { hz: khz(text), means: "assigned", emission: "F1B", service: "nbdp-msi" } as const;
			const dial = dialFor(published, CARRIERS, { mode: "USB" });
			if ("cannot" in dial) throw new Error(dial.cannot);
			expect(dial.dialHz - khz(alert)).toBe(apart);
			const spectrum = occupiedSpectrum({ dialHz: dial.dialHz, mode: "USB", convention: CARRIERS, emission: "F1B", service: "nbdp-msi" });
			const guard = guardsAt(khz(alert))[0]!;
			expect(overlaps(spectrum, guardSpectrum(guard))).toBe(false);
		}
	});

	it("never throws, whatever the dial", () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 0, max: 1_000_000_000 }),
				fc.constantFrom("USB" as const, "LSB" as const, "AM" as const, "CW" as const, "FSK" as const),
				(dial, mode) => {
					const { lowHz, highHz } = occupiedSpectrum({ dialHz: hz(dial), mode, convention: {} });
					expect(highHz).toBeGreaterThan(lowHz);
				},
			),
			{ seed: 4 },
		);
	});
});

describe("overlaps", () => {
	it("counts a shared edge and nothing less", () => {
		expect(overlaps(around(1, 2), around(2, 3))).toBe(true);
		expect(overlaps(around(1, 2), around(3, 4))).toBe(false);
		expect(overlaps(around(1, 9), around(3, 4))).toBe(true);
	});
});

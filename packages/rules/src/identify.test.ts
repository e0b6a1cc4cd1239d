import { hz, parseKhz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { identify } from "./identify.ts";

const sentence = (khz: string) => identify(parseKhz(khz)).sentence;

describe("identify", () => {
	it("says what a figure is, weightiest first", () => {
		expect(sentence("4125")).toBe(
			"4125 kHz: distress and safety, 4 MHz; ship side of channel 421, calling (coast 4417); maritime mobile band 4063-4438 kHz, all Regions.",
		);
		expect(sentence("8291")).toContain("one-frequency carrier of channel 833");
		expect(sentence("4351")).toContain("coast side of channel 428;");
		expect(sentence("4149")).toContain("one-frequency carrier of Appendix 17 sub-section B, 4 MHz");
	});

	it("reads an assigned frequency as such: 4066.4 is 4065 + 1.4 (RR Ap17 Part A)", () => {
		const found = identify(parseKhz("4066.4"));
		expect(found.channels).toEqual([]);
		expect(found.assignedOf).toMatchObject([{ side: "ship", channel: { number: 401 } }]);
	});

	it("keeps alert, calling and safety text apart: 4207.5, 4208, 4209.5 and 4210 (47 CFR 80.359, 80.1077)", () => {
		expect(identify(parseKhz("4207.5")).guards).toHaveLength(1);
		expect(identify(parseKhz("4208")).dscCalling).toMatchObject([{ side: "ship", calling: { series: "international" } }]);
		expect(identify(parseKhz("4209.5")).msi).toMatchObject([{ service: "navtex" }]);
		expect(identify(parseKhz("4210")).msi).toMatchObject([{ service: "nbdp-msi" }]);
	});

	it("tells both uses of 2177 (47 CFR 80.359(a) note 1)", () => {
		expect(identify(parseKhz("2177")).dscCalling.map(({ calling, side }) => [calling.series, side])).toEqual([
			["international", "coast"],
			["intership", "both"],
		]);
	});

	it("names the Regions where they differ", () => {
		expect(sentence("7250")).toBe("7250 kHz: amateur band 7200-7300 kHz, Region 2; broadcasting band 7200-7300 kHz, Regions 1 and 3.");
		expect(sentence("40000")).toBe("40000 kHz: in none of the tables.");
	});

	it("answers for any frequency", () => {
		fc.assert(
			fc.property(fc.integer({ min: 0, max: 1_000_000_000 }), (value) => {
				const found = identify(hz(value));
				expect(found.sentence).toMatch(/^\d+(\.\d+)? kHz: .+\.$/);
			}),
			{ seed: 1 },
		);
	});
});

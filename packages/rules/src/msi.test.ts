import { describe, expect, it } from "vitest";
import { coverage, REGIONS } from "./allocations.ts";
import { isInAppendix17Voice } from "./appendix17Ranges.ts";
import { msiFrequencies } from "./msi.ts";
import { spectrumAround } from "./spectrumAround.ts";

describe("msiFrequencies", () => {
	it("are those of 47 CFR 80.1077: NAVTEX on 490, 518 and 4209.5, NBDP on eight HF frequencies", () => {
		const of = (service: string) =>
			msiFrequencies()
				.filter((one) => one.service === service)
				.map(({ hz }) => hz / 1000);
		expect(of("navtex")).toEqual([490, 518, 4209.5]);
		expect(of("nbdp-msi")).toEqual([4210, 6314, 8416.5, 12579, 16806.5, 19680.5, 22376, 26100.5]);
	});

	it("lie in maritime bands of every Region and never in voice slots: a misprinted 4120.0 for 4210 would", () => {
		for (const { hz } of msiFrequencies()) {
			const spectrum = spectrumAround(hz, "F1B");
			for (const region of REGIONS) expect(coverage(spectrum, region, ["maritime"])).toBe("wholly");
			expect(isInAppendix17Voice(spectrum)).toBe(false);
		}
		expect(isInAppendix17Voice(spectrumAround(4_120_000, "F1B"))).toBe(true);
		expect(msiFrequencies().some(({ hz }) => hz === 4_120_000)).toBe(false);
	});
});

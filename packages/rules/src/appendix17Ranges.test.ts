import { describe, expect, it } from "vitest";
import { appendix17VoiceRanges, isInAppendix17Voice } from "./appendix17Ranges.ts";
import { channels } from "./channels.ts";
import { spectrumAround } from "./spectrumAround.ts";

/** Hz. A voice slot of RR Appendix 17. */
const SLOT_HZ = 3_000;

const range = (kind: string) => appendix17VoiceRanges().filter((one) => one.kind === kind);
const slots = (kind: string) => range(kind).map(({ lowHz, highHz }) => (highHz - lowHz) / SLOT_HZ);

describe("blocks of RR Appendix 17", () => {
	it("hold exactly 29, 8, 36, 41, 56, 15, 53 and 10 coast slots (47 CFR 80.363(a)(2) lower edges, RR Art. 5 upper edges)", () => {
		expect(slots("coast")).toEqual([29, 8, 36, 41, 56, 15, 53, 10]);
	});

	it("hold 27, 8, 33, 41, 56, 15, 53 and 10 ship slots, 40 one-frequency slots, 21 in C-1 and 31 in C-2 (RR Ap17 Part A)", () => {
		expect(slots("ship")).toEqual([27, 8, 33, 41, 56, 15, 53, 10]);
		expect(slots("simplex")).toEqual([2, 3, 2, 5, 7, 7, 7, 7]);
		expect([...slots("C-1"), ...slots("C-2")]).toEqual([21, 31]);
	});

	it("are filled by the channels without a gap: each slot has its carrier, each carrier its slot", () => {
		const carriers = new Set<number>();
		for (const { ship, coast } of channels()) for (const carrier of [ship, coast]) if (carrier !== null) carriers.add(carrier);
		const raster = appendix17VoiceRanges().flatMap(({ lowHz, highHz }) =>
			Array.from({ length: (highHz - lowHz) / SLOT_HZ }, (_, i) => lowHz + i * SLOT_HZ),
		);
		expect(raster).toHaveLength(243 + 40 + 248 + 21 + 31);
		expect(new Set(raster)).toEqual(carriers);
	});
});

describe("isInAppendix17Voice", () => {
	it("holds the spectrum of every channel", () => {
		for (const { ship, coast } of channels()) {
			for (const carrier of [ship, coast]) if (carrier !== null) expect(isInAppendix17Voice(spectrumAround(carrier, "J3E"))).toBe(true);
		}
	});

	it("takes adjoining ship and one-frequency blocks as one, and stops at the edges", () => {
		const speech = (khz: number) => isInAppendix17Voice(spectrumAround(khz * 1000, "J3E"));
		expect([speech(4145), speech(4149.3), speech(4149.4), speech(4150)]).toEqual([true, true, false, false]);
		expect([speech(8765), speech(8706), speech(8815)]).toEqual([true, false, false]);
		expect([speech(2182), speech(7100)]).toEqual([false, false]);
	});

	it("holds no data frequency where the printed NBDP and safety text figures are right, and shows the misprints up", () => {
		// 47 CFR 80.361(a), channels 68, 69 and 70 coast, and a public training text's 4120.0 for 4210: all fall among ships' voice
		const keyed = (khz: number) => isInAppendix17Voice(spectrumAround(khz * 1000, "F1B"));
		expect([16400, 16400.5, 16411, 4120].map(keyed)).toEqual([true, true, true, true]);
		expect([16840, 16840.5, 16841, 4210].map(keyed)).toEqual([false, false, false, false]);
		// channel 18 ship prints 16992.0: beyond the ships' data part, in the coast wideband block of 47 CFR 80.363(a)(2)
		const coastWideband = { lowHz: 16_904_500, highHz: 17_242_000 };
		const inCoastWideband = (khz: number) => khz * 1000 >= coastWideband.lowHz && khz * 1000 <= coastWideband.highHz;
		expect([16_992, 16_692].map(inCoastWideband)).toEqual([true, false]);
	});
});

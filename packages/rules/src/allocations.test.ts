import { parseKhz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readTruth } from "../truth/readTruth.ts";
import { allocations, allocationsAt, coverage, REGIONS } from "./allocations.ts";
import type { AllocationService, Region } from "./types.ts";

const LETTER: Readonly<Record<AllocationService, string>> = {
	maritime: "M",
	"distress-and-calling": "D",
	amateur: "A",
	broadcasting: "B",
	aeronautical: "E",
	"time-signal": "T",
	"fixed-mobile": "F",
	"radio-astronomy": "R",
};

/** Letters of the services in a stretch, without F where another service is named: sharing with it is a flag and not a row. */
function letters(lowHz: number, highHz: number, region: Region): string {
	const held = [...new Set(allocationsAt({ lowHz, highHz }, region).map(({ service }) => LETTER[service]))].sort().join("");
	return held.length > 1 ? held.replace("F", "") : held;
}

describe("allocations against 47 CFR 2.106", () => {
	/** Where the copy shows another Region's column or merges rows, and what this table holds instead. */
	const FAULTS: Readonly<Record<string, string>> = {
		"2495-2501 region 1": "Region 1 broadcasting goes on to 2498 (a Region 1 national table)",
		"2502-2625 region 2": "standard time goes on to 2505 in Region 2 (47 CFR 80.373(d)(1) starts at 2505)",
		"3200-3230 region 2": "the copy leaves tropical broadcasting out of this part of 3200-3400",
		"3900-3950 region 2": "the copy shows Region 3; amateur in Region 2 (47 CFR 97.301)",
		"3950-4000 region 2": "the copy shows Region 3; amateur in Region 2 (47 CFR 97.301)",
		"4750-4850 region 1": "aeronautical off-route shares the band in Region 1; not held as a row",
	};

	it("agrees row by row for Regions 1 and 2 from 1605 kHz to 28 MHz, the copy's known faults apart", () => {
		const rows = readTruth("article5-copy.csv", ["low_khz", "high_khz", "region1", "region2"]);
		const differing: string[] = [];
		let compared = 0;
		for (const row of rows) {
			for (const region of [1, 2] as const) {
				const printed = [...row[`region${region}`]!.replace("L", "")].sort().join("");
				const wanted = printed.length > 1 ? printed.replace("F", "") : printed;
				// 50 Hz inside the edges: a row of ours may begin or end there
				const held = letters(parseKhz(row["low_khz"]!) + 50, parseKhz(row["high_khz"]!) - 50, region);
				if (held !== wanted) differing.push(`${row["low_khz"]}-${row["high_khz"]} region ${region}`);
				compared++;
			}
		}
		expect(compared).toBe(2 * 165);
		expect(differing).toEqual(Object.keys(FAULTS));
	});
});

describe("allocations as a table", () => {
	it("names no service twice for the same spectrum and Region", () => {
		let compared = 0;
		for (const [i, a] of allocations().entries()) {
			for (const b of allocations().slice(i + 1)) {
				if (a.service !== b.service || !a.regions.some((region) => b.regions.includes(region))) continue;
				expect(a.highHz <= b.lowHz || b.highHz <= a.lowHz, `${a.service} ${a.lowHz} and ${b.lowHz}`).toBe(true);
				compared++;
			}
		}
		expect(compared).toBeGreaterThan(500);
	});

	it("calls two services of one stretch shared, except the secondary amateur bands inside a primary one", () => {
		const unshared = allocations().filter(({ shared }) => !shared);
		const clashes = unshared.flatMap((a, i) =>
			unshared
				.slice(i + 1)
				.filter((b) => a.lowHz < b.highHz && b.lowHz < a.highHz && a.regions.some((region) => b.regions.includes(region)))
				.map((b) => `${a.service} ${a.lowHz}, ${b.service} ${b.lowHz}`),
		);
		expect(clashes).toEqual([]);
		expect(unshared.length).toBeGreaterThan(100);
	});

	it("leaves no gap from 1606.5 kHz to 30 MHz in any Region but the radiolocation bands of Region 1", () => {
		const gaps: string[] = [];
		for (const region of REGIONS) {
			let reached = 1_606_500;
			for (const { lowHz, highHz, regions } of allocations()) {
				if (!regions.includes(region) || highHz <= reached) continue;
				if (lowHz > reached) gaps.push(`${region}: ${reached / 1000}-${lowHz / 1000}`);
				reached = highHz;
			}
			expect(reached).toBe(30_000_000);
		}
		expect(gaps).toEqual(["1: 1625-1635", "1: 1800-1810", "1: 2160-2170"]);
	});

	it("has the maritime HF bands of RR Art. 5 in every Region", () => {
		const hf = allocations().filter(({ service, lowHz, shared }) => service === "maritime" && lowHz >= 4_000_000 && !shared);
		expect(hf.map(({ lowHz, highHz }) => [lowHz / 1000, highHz / 1000])).toEqual([
			[4063, 4438],
			[6200, 6525],
			[8195, 8815],
			[12230, 13200],
			[16360, 17410],
			[18780, 18900],
			[19680, 19800],
			[22000, 22855],
			[25070, 25210],
			[26100, 26175],
		]);
		expect(hf.every(({ regions }) => regions.length === 3)).toBe(true);
	});

	it("has amateur bands by Region as 47 CFR 97.301: 7200-7300 in Region 2 alone, 3500 up to 3800, 4000 and 3900", () => {
		const amateurTop = (region: Region) =>
			Math.max(
				...allocations()
					.filter((a) => a.service === "amateur" && a.regions.includes(region) && a.lowHz >= 3_500_000 && a.highHz <= 4_000_000)
					.map((a) => a.highHz),
			);
		expect(REGIONS.map(amateurTop)).toEqual([3_800_000, 4_000_000, 3_900_000]);
		expect(REGIONS.map((region) => letters(7_250_000, 7_251_000, region))).toEqual(["B", "A", "B"]);
	});
});

describe("allocationsAt and coverage", () => {
	it("gives a band its lower edge and not its upper", () => {
		const at = (hz: number) => allocationsAt({ lowHz: hz, highHz: hz }, 1).map(({ service }) => service);
		expect(at(6_200_000)).toEqual(["maritime"]);
		expect(at(6_525_000)).toEqual(["aeronautical"]);
		expect(allocationsAt({ lowHz: 6_199_000, highHz: 6_200_000 }, 1).map(({ service }) => service)).toEqual(["broadcasting"]);
	});

	it("takes adjoining bands of the same services as one, and tells a straddling spectrum", () => {
		expect(coverage({ lowHz: 4_060_350, highHz: 4_066_000 }, 1, ["maritime"])).toBe("wholly");
		expect(coverage({ lowHz: 2_170_500, highHz: 2_193_000 }, 2, ["maritime"])).toBe("partly");
		expect(coverage({ lowHz: 2_170_500, highHz: 2_193_000 }, 2, ["maritime", "distress-and-calling"])).toBe("wholly");
		expect(coverage({ lowHz: 4_437_000, highHz: 4_439_000 }, 3, ["maritime"])).toBe("partly");
		expect(coverage({ lowHz: 5_000_000, highHz: 5_001_000 }, 3, ["maritime"])).toBe("not");
	});

	it("agrees with a plain walk over the table", () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 400_000, max: 30_100_000 }),
				fc.integer({ min: 0, max: 400_000 }),
				fc.constantFrom(...REGIONS),
				(lowHz, width, region) => {
					const spectrum = { lowHz, highHz: lowHz + width };
					const plain = allocations().filter(
						(a) =>
							a.regions.includes(region) &&
							a.lowHz <= spectrum.highHz &&
							lowHz < a.highHz &&
							(spectrum.highHz > a.lowHz || lowHz === a.lowHz),
					);
					expect(new Set(allocationsAt(spectrum, region))).toEqual(new Set(plain));
				},
			),
			{ seed: 5, numRuns: 500 },
		);
	});
});

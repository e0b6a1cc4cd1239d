import { parseKhz } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { readTruth } from "../truth/readTruth.ts";
import { dscCalling } from "./dscCalling.ts";

describe("dscCalling", () => {
	it("has the worldwide series and series A and B of 47 CFR 80.359(a), and 2177 between ships (note 1)", () => {
		const series = { worldwide: "international", A: "national-a", B: "national-b" } as Record<string, string>;
		const printed = readTruth("cfr80-dsc-calling.csv", ["series", "ship_khz", "coast_khz"]).map((row) => [
			series[row["series"]!],
			parseKhz(row["ship_khz"]!),
			parseKhz(row["coast_khz"]!),
		]);
		const held = dscCalling().map(({ series, ship, coast }) => [series, ship, coast]);
		expect(printed).toHaveLength(26);
		expect(held).toHaveLength(27);
		expect(new Set(held.map(String))).toEqual(new Set([...printed, ["intership", 2_177_000, 2_177_000]].map(String)));
	});

	it("steps 0.5 kHz from series to series at HF", () => {
		const ofSeries = (name: string) => dscCalling().filter(({ series, ship }) => series === name && ship > 4_000_000);
		const world = ofSeries("international");
		expect(world).toHaveLength(8);
		for (const [i, { ship, coast }] of world.entries()) {
			expect(ofSeries("national-a")[i]).toMatchObject({ ship: ship + 500, coast: coast + 500 });
			expect(ofSeries("national-b")[i]).toMatchObject({ ship: ship + 1000, coast: coast + 1000 });
		}
	});
});

import { parseKhz } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { readTruth } from "../truth/readTruth.ts";
import { allocations } from "./allocations.ts";
import { channelByNumber, channels, channelsAt } from "./channels.ts";
import { spectrumAround } from "./spectrumAround.ts";

const khz = (text: string | number) => parseKhz(String(text));
const PAIR_COLUMNS = ["section", "channel", "ship_khz", "coast_khz"];

describe("channels against 47 CFR part 80", () => {
	const pairs = readTruth("cfr80-voice-pairs.csv", PAIR_COLUMNS);

	it("has all 127 printed pairs; 47 CFR 80.371(b)(1) prints one ship carrier wrongly and pairs three coast-only channels nationally", () => {
		const differing: string[] = [];
		let agreeing = 0;
		for (const { channel, ship_khz, coast_khz } of pairs) {
			const found = channelByNumber(Number(channel));
			expect(found?.coast).toBe(khz(coast_khz!));
			if (found?.ship === khz(ship_khz!)) agreeing++;
			else differing.push(`${channel} ${ship_khz}`);
		}
		expect(pairs).toHaveLength(127);
		expect(agreeing).toBe(123);
		expect(differing).toEqual(["428 4060", "836 8113", "837 8128", "1235 12232"]);
	});

	it("marks exactly the pairs of 47 CFR 80.369(d) as calling pairs", () => {
		const printed = pairs.filter(({ section }) => section === "80.369(d)").map(({ channel }) => Number(channel));
		expect(printed).toHaveLength(8);
		expect(
			channels()
				.filter(({ use }) => use === "duplex-calling")
				.map(({ number }) => number),
		).toEqual(printed);
	});

	it("has the one-frequency carriers of 47 CFR 80.371(b)(2) and 80.373(c)(1) in sub-section B, and the carriers of 80.374 in C-1 and C-2", () => {
		const sections = { "80.371(b)(2)": "B", "80.373(c)": "B", "80.374(a)": "C-1", "80.374(b)": "C-2" } as Record<string, string>;
		const rows = readTruth("cfr80-voice-carriers.csv", ["section", "khz"]);
		for (const row of rows) {
			const side = sections[row["section"]!] === "C-1" ? "ship" : "both";
			expect(channelsAt(khz(row["khz"]!)).map((one) => [one.channel.section, one.side])).toEqual([[sections[row["section"]!], side]]);
		}
		expect(rows).toHaveLength(14 + 22 + 20 + 29);
	});
});

describe("channels of RR Appendix 17", () => {
	it("counts 249 numbered channels, 40 one-frequency carriers, 21 in C-1 and 31 in C-2 (RR Ap17 Part A)", () => {
		const count = (section: string) => channels().filter((channel) => channel.section === section).length;
		expect([count("A"), count("B"), count("C-1"), count("C-2")]).toEqual([249, 40, 21, 31]);
	});

	it("numbers every channel of section A once, and no other", () => {
		const numbers = channels().map(({ number }) => number);
		const numbered = numbers.filter((number) => number !== null);
		expect(new Set(numbered).size).toBe(249);
		expect(channels().filter(({ section, number }) => (section === "A") !== (number !== null))).toEqual([]);
		for (const { number, bandMhz } of channels()) if (number !== null) expect(Math.floor(number / 100)).toBe(bandMhz);
	});

	it("keeps each pair's spacing constant within a band (RR Ap17: both sides on the same 3 kHz raster)", () => {
		const spacings = new Map<number, Set<number>>();
		let pairs = 0;
		for (const { bandMhz, ship, coast, use } of channels()) {
			if (ship === null || coast === null || !use.startsWith("duplex")) continue;
			spacings.set(bandMhz, (spacings.get(bandMhz) ?? new Set()).add(coast - ship));
			pairs++;
		}
		expect(pairs).toBe(242);
		expect([...spacings].map(([band, set]) => [band, ...set])).toEqual([
			[4, 292_000],
			[6, 301_000],
			[8, 524_000],
			[12, 847_000],
			[16, 882_000],
			[18, 975_000],
			[22, 696_000],
			[25, 1_075_000],
		]);
	});

	it("has 4149 and 6230 on one frequency, and 8291 the same both ways as channel 833 (common practice, no source)", () => {
		expect(channelsAt(khz(4149)).map(({ side }) => side)).toEqual(["both"]);
		expect(channelsAt(khz(6230)).map(({ side }) => side)).toEqual(["both"]);
		expect(channelsAt(khz(8291))).toMatchObject([{ side: "both", channel: { number: 833, use: "simplex" } }]);
	});

	it("leaves 428, 429 and 834 to 837 without a ship side (from memory of RR Ap17)", () => {
		const coastOnly = channels().filter(({ use }) => use === "coast-only");
		expect(coastOnly.map(({ number, ship }) => [number, ship])).toEqual([428, 429, 834, 835, 836, 837].map((n) => [n, null]));
	});

	it("sends routine calls of 1221 and 1621 elsewhere (from memory: RR 52.221A)", () => {
		expect(channelByNumber(1221)?.note).toContain("12359");
		expect(channelByNumber(1621)?.note).toContain("16537");
		expect(channelByNumber(833)?.note).toContain("never a working channel");
	});

	it("keeps every channel, with its bandwidth, inside one maritime band of all Regions (RR Art. 5)", () => {
		const maritime = allocations().filter(({ service, regions }) => service === "maritime" && regions.length === 3);
		let sides = 0;
		for (const { ship, coast } of channels()) {
			for (const carrier of [ship, coast]) {
				if (carrier === null) continue;
				const { lowHz, highHz } = spectrumAround(carrier, "J3E");
				expect(maritime.some((band) => band.lowHz <= carrier && lowHz >= band.lowHz && highHz <= band.highHz)).toBe(true);
				sides++;
			}
		}
		expect(sides).toBe(341 * 2 - 6 - 21); // six have no ship side, C-1 has no coast side
	});

	it("finds the sides of a pair, and nothing at an assigned frequency or off the raster", () => {
		expect(channelsAt(khz(4125)).map(({ channel, side }) => [channel.number, side])).toEqual([[421, "ship"]]);
		expect(channelsAt(khz(4417)).map(({ channel, side }) => [channel.number, side])).toEqual([[421, "coast"]]);
		expect(channelsAt(khz(4126.4))).toEqual([]);
		expect(channelsAt(khz(4126))).toEqual([]);
		expect(channelByNumber(999)).toBeNull();
	});

	it("gives a source and a confidence with every row; three rows rest on memory", () => {
		expect(channels().filter(({ source }) => source === "")).toEqual([]);
		expect(
			channels()
				.filter(({ confidence }) => confidence === "memory")
				.map(({ number }) => number),
		).toEqual([429, 834, 835]);
	});
});

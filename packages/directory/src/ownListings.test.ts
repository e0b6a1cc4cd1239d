import { BadInputError, hz, isoDate } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { directory, publishedOf, stationOf } from "./directory.ts";
import { freshness } from "./freshness.ts";
import { occurrencesOf } from "./listingSchedule.ts";
import { readListingsCsv, writeListingsCsv } from "./listingsCsv.ts";
import { readOwnListingsCsv } from "./ownListings.ts";

const HEADER = "name,khz,means,mode,schedule,transmit_khz,note,as_of";

describe("readOwnListingsCsv", () => {
	it("reads nets: figure, sideband from the mode, transmit where given", () => {
		const [net, friends] = readOwnListingsCsv(
			"own.csv",
			`${HEADER}\nMorning net,7160,carrier,LSB,0530-0600,7160,winter hours,2026-10-01\nFriends afloat,6516,carrier,USB,1700,,,\n`,
		);
		expect(net).toMatchObject({
			id: "own/morning-net/voice-working/7160",
			service: "voice-working",
			emission: "J3E",
			sideband: "lower",
			shipTx: hz(7_160_000),
			coastTx: hz(7_160_000),
			receiveOnly: false,
			notes: "winter hours",
			confidence: "secondary",
			origin: "owner",
		});
		expect(friends).toMatchObject({ sideband: "upper", shipTx: null, receiveOnly: true, confidence: "memory", asOf: "" });
		expect(publishedOf(net!)).toEqual({
			hz: hz(7_160_000),
			means: "carrier",
			emission: "J3E",
			service: "voice-working",
			sideband: "lower",
		});
		expect(stationOf(directory(), net!).name).toBe("Morning net");
		expect(occurrencesOf(directory(), net!, isoDate("2027-01-01"))).toHaveLength(1);
		expect(freshness(net!, isoDate("2026-11-24")).grade).toBe("fresh");
	});

	it("takes an emission instead of a mode, or both when they agree", () => {
		const read = (mode: string, emission: string) =>
			readOwnListingsCsv("own.csv", `name,khz,means,mode,emission,schedule\nA,8000,centre,${mode},${emission},unknown\n`)[0]?.emission;
		expect([read("", "F1B"), read("FSK", ""), read("USB", "F3C"), read("AM", "")]).toEqual(["F1B", "F1B", "F3C", "A3E"]);
		expect(() => read("", "")).toThrow("a mode (USB, LSB, AM, CW, FSK), or an emission");
		expect(() => read("AM", "J3E")).toThrow("a mode that receives J3E");
		expect(() => read("SSB", "")).toThrow("line 2, column mode");
	});

	it("names line, column and expectation, and imports nothing", () => {
		const text = `${HEADER}\n"  ",7160,carrier,LSB,0530,,,\nNet,seven,carrier,LSB,noon,7.1 MHz,,yesterday\n`;
		try {
			readOwnListingsCsv("own.csv", text);
			expect.unreachable();
		} catch (error) {
			expect(error).toBeInstanceOf(BadInputError);
			const faults = (error as BadInputError).faults.map(({ line, column }) => `${line} ${column}`);
			expect(faults.sort()).toEqual(["2 name", "3 as_of", "3 khz", "3 schedule", "3 transmit_khz"]);
		}
		expect(() => readOwnListingsCsv("own.csv", "name,khz,schedule\n")).toThrow("a column means");
	});

	it("gives two nets of one name on one figure ids of their own, and takes names of any script", () => {
		const ids = readOwnListingsCsv(
			"own.csv",
			"name,khz,means,mode,schedule\nNet,7160,carrier,LSB,0500\nNET!,7160,carrier,LSB,1700\nСеть,7160,carrier,LSB,1\n".replace(
				",1\n",
				",0100\n",
			),
		).map(({ id }) => id);
		expect(ids).toEqual(["own/net/voice-working/7160", "own/net/voice-working/7160/2", "own/сеть/voice-working/7160"]);
	});

	it("goes through an export of listings unchanged", () => {
		const own = readOwnListingsCsv("own.csv", `${HEADER}\nNet,7160,carrier,LSB,0530-0600,7160,"=note",2026-10\n`);
		expect(readListingsCsv("x.csv", writeListingsCsv(own))).toEqual(own);
	});

	it("reads any text whole or not at all", () => {
		const csv = `${HEADER}\nMorning net,7160,carrier,LSB,0530-0600,7160,winter hours,2026-10-01\n`;
		let refused = 0;
		fc.assert(
			fc.property(
				fc.oneof(
					fc.string(),
					fc
						.tuple(fc.nat(csv.length), fc.nat(4), fc.string({ maxLength: 4 }))
						.map(([at, skip, put]) => csv.slice(0, at) + put + csv.slice(at + skip)),
				),
				(text) => {
					try {
						readOwnListingsCsv("own.csv", text);
					} catch (error) {
						expect(error).toBeInstanceOf(BadInputError);
						refused++;
					}
				},
			),
			{ seed: 44, numRuns: 1000 },
		);
		expect(refused).toBeGreaterThan(300);
	});
});

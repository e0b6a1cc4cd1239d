import { channelsAt, guardOverlapping, guardsAt } from "@skipwright/rules";
import { describe, expect, it } from "vitest";
import type { Profile } from "./profile.ts";
import { shippedProfiles } from "./shippedProfiles.ts";
import { tuneUpPlaces } from "./tuneUpPlaces.ts";
import { canTune } from "./tuning.ts";

const [twin, single, receiver] = shippedProfiles() as [Profile, Profile, Profile];

/** Calling and distress carriers of Radio Regulations Appendices 15 and 17 and 47 CFR 80.369, kHz, keyed here by hand. */
const NOT_FOR_TUNING = [2182, 4125, 6215, 8255, 8291, 12290, 12359, 16420, 16537, 18795, 22060, 25097];

describe("tuneUpPlaces", () => {
	it("names one simplex working carrier of Appendix 17 section B for each band", () => {
		const places = tuneUpPlaces(twin);
		expect(places.map(({ bandMhz }) => bandMhz)).toEqual([4, 6, 8, 12, 16, 18, 22, 25]);
		for (const { carrier } of places) {
			expect(channelsAt(carrier).map(({ channel: { section, use }, side }) => [section, use, side])).toEqual([["B", "simplex", "both"]]);
		}
	});

	it("never a guard, calling or distress carrier, nor speech that would reach one", () => {
		const places = [...tuneUpPlaces(twin), ...tuneUpPlaces(single)];
		for (const { carrier } of places) {
			expect(NOT_FOR_TUNING).not.toContain(carrier / 1_000);
			expect(guardsAt(carrier)).toEqual([]);
			expect(guardOverlapping({ lowHz: carrier, highHz: carrier + 2_700 })).toEqual([]);
		}
		expect(places).toHaveLength(16);
	});

	it("takes the carrier farthest from those, 8297 rather than 8294 beside 8291 kHz", () => {
		expect(tuneUpPlaces(twin).map(({ carrier }) => carrier / 1_000)).toEqual([4149, 6230, 8297, 12353, 16528, 18843, 22177, 25118]);
	});

	it("stays within what the set can send on", () => {
		const low: Profile = { ...twin, transmit: [{ fromHz: 1_600_000, toHz: 13_000_000 }] };
		expect(tuneUpPlaces(low).map(({ bandMhz }) => bandMhz)).toEqual([4, 6, 8, 12]);
		for (const { carrier } of tuneUpPlaces(low)) expect(canTune(low, carrier, "transmit")).toBe(true);
	});

	it("names none where the set could not listen first", () => {
		expect(tuneUpPlaces({ ...twin, receive: [{ fromHz: 500_000, toHz: 6_000_000 }] }).map(({ bandMhz }) => bandMhz)).toEqual([4]);
	});

	it("names none where a calling carrier is all that the set can send on", () => {
		expect(tuneUpPlaces({ ...twin, transmit: [{ fromHz: 12_358_000, toHz: 12_360_000 }] })).toEqual([]);
	});

	it("says to listen first, at low power, with the call sign, and that national rules come first", () => {
		for (const { note } of tuneUpPlaces(twin)) {
			for (const words of [/listen first/i, /low power/, /call sign/, /national rules/i]) expect(note).toMatch(words);
		}
	});

	it("gives a receiver none", () => {
		expect(tuneUpPlaces(receiver)).toEqual([]);
	});
});

import { directory, type Listing, listingById } from "@skipwright/directory";
import { emissionFamily } from "@skipwright/rules";
import { type Profile, profileNamed, shippedProfiles } from "@skipwright/set";
import { type Hz, hz } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import type { Expectation } from "./expectation.ts";
import { type DialOfPlace, expectationOf, expectationsOf } from "./expectationOf.ts";

const DIRECTORY = directory();

function expected(id: string, profile: string, at: DialOfPlace | null = null): Expectation {
	const found = expectationOf(listingById(DIRECTORY, id)!, DIRECTORY, profileNamed(profile)!, at);
	if ("cannot" in found) throw new Error(found.cannot);
	return found;
}

/** Hz. Where a tone of this radio frequency comes out of a set, from what its manual says of its display; worked without the product's dial. */
function audioOf(radioHz: number, dialHz: number, { modes }: Profile, mode: Expectation["mode"]): number {
	const display = modes[mode];
	if (display === undefined) throw new Error(`the set has no ${mode}`);
	if (display.shows === "carrier") return mode === "LSB" ? dialHz - radioHz : radioHz - dialHz;
	const centreHz = display.shows === "mark" ? dialHz + display.shiftHz! / 2 : dialHz; // normal sense: the mark is the lower
	return display.audioCentreHz! + radioHz - centreHz;
}

describe("expectationOf", () => {
	it("is where the set's own display puts the published centre, for every listing of every service on all three sets", () => {
		const counts: Record<string, number> = {};
		let cannot = 0;
		for (const profile of shippedProfiles()) {
			for (const listing of DIRECTORY.listings) {
				const found = expectationOf(listing, DIRECTORY, profile);
				if ("cannot" in found) {
					cannot++;
					continue;
				}
				counts[found.kind] = (counts[found.kind] ?? 0) + 1;
				counts[listing.service] = (counts[listing.service] ?? 0) + 1;
				expect(found.dialHz % profile.tuningStepsHz[0]!).toBe(0);
				if (found.kind === "voice" || found.kind === "tone") {
					expect(found.audioHz).toBeNull();
					continue;
				}
				const centreHz = listing.means === "carrier" || listing.means === "dial" ? null : listing.hz;
				if (centreHz === null) continue;
				expect(found.audioHz, listing.id).toBeCloseTo(audioOf(centreHz, found.dialHz, profile, found.mode), 6);
				// no further from the usual centre than rounding the dial leaves
				const usual = found.kind === "chart" && found.mode !== "FSK" ? 1_900 : 1_700;
				expect(Math.abs(found.audioHz! - usual), listing.id).toBeLessThanOrEqual(profile.tuningStepsHz[0]! / 2);
			}
		}
		expect(counts).toMatchObject({
			dsc: expect.any(Number),
			text: expect.any(Number),
			teletype: 22, // eight on three sets, less 147.3 kHz, which two of them do not reach
			chart: expect.any(Number),
			tone: expect.any(Number),
			voice: expect.any(Number),
		});
		expect(Object.keys(counts).filter((key) => key.includes("-") || ["fax", "navtex", "volmet"].includes(key))).toHaveLength(10);
		const kinds = ["dsc", "text", "teletype", "chart", "tone", "voice"].map((kind) => counts[kind]!);
		expect(kinds.reduce((sum, count) => sum + count, 0) + cannot).toBe(3 * DIRECTORY.listings.length);
		expect(Math.min(counts["dsc"]!, counts["text"]!, counts["chart"]!)).toBeGreaterThan(300);
	});

	it("agrees with sums done by hand, one of each kind", () => {
		// DSC: middle of the tones at 1700 Hz on USB (ITU-R M.493): 8414.5 - 1.7 = 8412.8 kHz on a set that shows the carrier
		expect(expected("za-capetown/dsc-watch/8414.5", "single-200")).toMatchObject({
			kind: "dsc",
			dialHz: 8_412_800,
			audioHz: 1_700,
			mode: "USB",
		});
		// the same on a set whose FSK shows the centre, and puts it at 1700 Hz
		expect(expected("za-capetown/dsc-watch/8414.5", "twin-180")).toMatchObject({ dialHz: 8_414_500, audioHz: 1_700, mode: "FSK" });
		// NAVTEX 518 kHz on a set that shows the mark, 85 Hz below: 517.915, which steps of 10 Hz round to 517.92; 5 Hz too high, so 1695 Hz
		expect(expected("navtex-capetown/navtex/518", "receiver-100")).toMatchObject({
			kind: "text",
			dialHz: 517_920,
			audioHz: 1_695,
			mode: "FSK",
		});
		// chart: 1900 Hz between 1500 black and 2300 white (WMO practice): 8682 - 1.9 = 8680.1
		expect(expected("us-pointreyes/fax/8682", "twin-180")).toMatchObject({ kind: "chart", dialHz: 8_680_100, audioHz: 1_900, mode: "USB" });
		// teletype of 450 Hz shift on 10100.8 (listing), USB by a set without FSK: 10099.1
		expect(expected("de-pinneberg/rtty-weather/10100.8", "single-200")).toMatchObject({
			kind: "teletype",
			dialHz: 10_099_100,
			audioHz: 1_700,
			keying: { shiftsHz: [450, 850], bauds: [50], sense: "any" },
		});
		// time: 500 and 600 Hz as sent, in AM, however the dial stands
		expect(expected("us-wwv/time-signal/10000", "twin-180")).toMatchObject({
			kind: "tone",
			mode: "AM",
			tonesHz: [500, 600],
			tellsTuning: false,
		});
		expect(expected("za-capetown/voice-working/8779", "twin-180")).toMatchObject({
			kind: "voice",
			dialHz: 8_779_000,
			audioHz: null,
			tellsTuning: false,
			isWatch: true,
			isToAll: false,
		});
	});

	it("takes the carrier's own note where the place stands 1 kHz below it, and the tones with it", () => {
		const at = { receiveHz: hz(9_999_000), mode: "USB" as const };
		expect(expected("us-wwv/time-signal/10000", "twin-180", at)).toMatchObject({
			mode: "USB",
			tonesHz: [1_000, 1_500, 1_600],
			tellsTuning: true,
		});
		expect(expected("us-wwv/time-signal/10000", "twin-180", { receiveHz: hz(10_001_000), mode: "LSB" })).toMatchObject({
			sidebandSign: -1,
			tonesHz: [1_000, 1_500, 1_600],
		});
		expect(expected("ru-rwm/time-signal/9996", "twin-180", { receiveHz: hz(9_995_000), mode: "USB" })).toMatchObject({ tonesHz: [1_000] });
	});

	it("says who it should be, and who it is meant for", () => {
		expect(expected("navtex-capetown/navtex/518", "twin-180")).toMatchObject({
			identity: { navtexLetter: "C" },
			isToAll: true,
			isWatch: false,
			times: { known: "timed" },
		});
		expect(expected("za-capetown/dsc-watch/8414.5", "twin-180")).toMatchObject({
			identity: { mmsi: "006010001" },
			isToAll: false,
			isWatch: true,
		});
		const toAll = DIRECTORY.listings.filter((listing) => {
			const found = expectationOf(listing, DIRECTORY, profileNamed("receiver-100")!);
			return !("cannot" in found) && found.isToAll;
		});
		expect(new Set(toAll.map(({ service }) => service)).size).toBe(8); // all ten but the two that answer when called
		const own: Listing = { ...listingById(DIRECTORY, "za-capetown/voice-weather/8719")!, origin: "owner" };
		expect(expectationOf(own, DIRECTORY, profileNamed("twin-180")!)).toMatchObject({ isToAll: false }); // a net
	});

	it("keeps the place's mode where it can receive the emission, and takes the right one where it cannot", () => {
		const place = (mode: Expectation["mode"]) => ({ receiveHz: hz(516_300) as Hz, mode, hears: ["navtex-capetown/navtex/518"] });
		const one = (mode: Expectation["mode"]) =>
			expectationsOf(place(mode), DIRECTORY, profileNamed("twin-180")!, (id) => listingById(DIRECTORY, id))[0];
		expect(one("USB")).toMatchObject({ mode: "USB", dialHz: 516_300, audioHz: 1_700 });
		expect(one("LSB")).toMatchObject({ mode: "LSB", dialHz: 519_700, audioHz: 1_700, sidebandSign: -1 });
		expect(one("AM")).toMatchObject({ mode: "FSK", dialHz: 518_000 });
	});

	it("says what a set cannot receive: below its range, or a mode that it lacks", () => {
		const narrow: Profile = { ...profileNamed("twin-180")!, receive: [{ fromHz: hz(4_000_000), toHz: hz(29_999_900) }] };
		expect(expectationOf(listingById(DIRECTORY, "navtex-capetown/navtex/518")!, DIRECTORY, narrow)).toEqual({
			cannot: "518 kHz is outside what twin-180 receives.",
		});
		expect(
			expectationsOf({ receiveHz: hz(518_000), mode: "FSK", hears: ["navtex-capetown/navtex/518", "gone"] }, DIRECTORY, narrow, (id) =>
				listingById(DIRECTORY, id),
			),
		).toEqual([]);
		const noTones = DIRECTORY.listings.filter(({ emission }) => emissionFamily(emission) === "morse");
		expect(noTones.length).toBe(8);
	});
});

import { hz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Profile } from "./profile.ts";
import { shippedProfiles } from "./shippedProfiles.ts";
import { canTune, decimalsShown, dialText, finestStep, inRange, nearestDial } from "./tuning.ts";

const [twin, single, receiver] = shippedProfiles() as [Profile, Profile, Profile];

describe("twin-180", () => {
	it("tunes both ends of its ranges and nothing beyond", () => {
		expect(canTune(twin, 500_000, "receive")).toBe(true);
		expect(canTune(twin, 29_999_900, "receive")).toBe(true);
		expect(canTune(twin, 30_000_000, "receive")).toBe(false);
		expect(canTune(twin, 1_600_000, "transmit")).toBe(true);
		expect(canTune(twin, 27_500_100, "transmit")).toBe(false);
	});

	it("cannot receive NAVTEX on 490 kHz with USB: the dial of 488.3 kHz lies below its range", () => {
		expect(inRange(twin, 488_300, "receive")).toBe(false);
		expect(nearestDial(twin, hz(488_300), "receive")).toEqual({ dialHz: 500_000, residueHz: -11_700 });
	});

	it("stores tenths of a kilohertz", () => {
		expect([finestStep(twin), decimalsShown(twin)]).toEqual([100, 1]);
		expect(canTune(twin, 8_113_050, "receive")).toBe(false);
		expect(nearestDial(twin, hz(8_113_050), "receive")).toEqual({ dialHz: 8_113_100, residueHz: -50 });
		expect(nearestDial(twin, hz(8_113_020), "receive")).toEqual({ dialHz: 8_113_000, residueHz: 20 });
	});

	it("shows a dial with its own decimals, and exactly where it could not show it", () => {
		expect(dialText(twin, hz(8_113_000))).toBe("8113.0");
		expect(dialText(twin, hz(8_113_050))).toBe("8113.05");
		expect(dialText(receiver, hz(8_113_050))).toBe("8113.05");
		expect(dialText(receiver, hz(8_113_000))).toBe("8113.00");
	});
});

it.each([
	[1, 3],
	[10, 2],
	[25, 3],
	[50, 2],
	[100, 1],
	[500, 1],
	[1_000, 0],
	[5_000, 0],
])("a finest step of %d Hz needs %d decimals of a kilohertz", (step, decimals) => {
	expect(decimalsShown({ ...twin, tuningStepsHz: [step] })).toBe(decimals);
});

it("single-200 has a gap in its transmit ranges; the nearest dial is at its nearer edge", () => {
	expect(canTune(single, 3_500_000, "transmit")).toBe(false);
	expect(nearestDial(single, hz(3_100_000), "transmit")?.dialHz).toBe(2_999_900);
	expect(nearestDial(single, hz(3_900_000), "transmit")?.dialHz).toBe(4_000_000);
});

it("a receiver has no transmit dial", () => {
	expect(canTune(receiver, 4_149_000, "transmit")).toBe(false);
	expect(nearestDial(receiver, hz(4_149_000), "transmit")).toBeNull();
});

it("the nearest dial can be tuned and none lies nearer, for every shipped set", () => {
	let compared = 0;
	fc.assert(
		fc.property(fc.constantFrom(...shippedProfiles()), fc.integer({ min: 0, max: 31_000_000 }), (profile, wanted) => {
			const nearest = nearestDial(profile, hz(wanted), "receive");
			expect(nearest).not.toBeNull();
			if (nearest === null) return;
			const { dialHz, residueHz } = nearest;
			expect(canTune(profile, dialHz, "receive")).toBe(true);
			expect(dialHz + residueHz).toBe(wanted);
			const step = finestStep(profile);
			for (const other of [dialHz - step, dialHz + step]) {
				if (canTune(profile, other, "receive")) expect(Math.abs(wanted - other)).toBeGreaterThanOrEqual(Math.abs(residueHz));
			}
			compared++;
		}),
		{ seed: 20261124, numRuns: 2_000 },
	);
	expect(compared).toBe(2_000);
});

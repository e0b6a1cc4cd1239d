import { type Profile, profileNamed } from "@skipwright/set";
import { describe, expect, it } from "vitest";
import { catchChance, NOTICE_MS, revisitS, stopS } from "./scanTimes.ts";

type Scan = NonNullable<Profile["scan"]>;
const TWIN = profileNamed("twin-180")!.scan!;

/** Seeded numbers from 0 up to but without 1. Source: Marsaglia, Xorshift RNGs (2003). */
function seeded(seed: number): () => number {
	let state = (seed * 2_654_435_761) >>> 0 || 1;
	return () => {
		state ^= state << 13;
		state ^= state >>> 17;
		state ^= state << 5;
		state >>>= 0;
		return state / 4_294_967_296;
	};
}

interface Case {
	readonly scan: Scan;
	readonly places: number;
	readonly callS: number;
	readonly busyShare: number;
	readonly busyS: number;
}

/**
 * A set that goes from place to place, event by event, and calls that come at random moments on random places: how many are caught. Written
 * apart from the formula: each place is visited in turn and keeps its last window; a wait is drawn at each visit of another place.
 */
function simulated({ scan, places, callS, busyShare, busyS }: Case, calls: number, seed: number): number {
	const random = seeded(seed);
	const dwell = scan.dwellMs / 1_000;
	const notice = Math.min(dwell, NOTICE_MS[scan.stopsOn] / 1_000);
	let caught = 0;
	let now = 0;
	let at = 0;
	/** Moves to the next place; `quiet` is the place on which nothing else is heard. */
	const visit = (quiet: number): { readonly place: number; readonly from: number; readonly to: number } => {
		const window = { place: at, from: now, to: now + dwell };
		now = window.to;
		if (at !== quiet && random() < busyShare && scan.stopsOn !== "nothing") {
			const whole = busyS + scan.resumeMs / 1_000;
			now += scan.holdMs > 0 && scan.holdMs / 1_000 < busyS ? scan.holdMs / 1_000 : whole;
		}
		at = (at + 1) % places;
		return window;
	};
	for (let call = 0; call < calls; call++) {
		const place = Math.floor(random() * places);
		// long enough that the moment falls anywhere in a round, with nothing left of the call before
		const begins = now + (2 + 6 * random()) * places * (dwell + busyShare * (busyS + scan.resumeMs / 1_000)) + callS;
		const ends = begins + callS;
		let isCaught = false;
		while (now < ends) {
			const window = visit(place);
			if (window.place === place && Math.min(window.to, ends) - Math.max(window.from, begins) >= notice) isCaught = true;
		}
		if (isCaught) caught++;
	}
	return caught / calls;
}

const CALLS = 4_000;

describe("catchChance", () => {
	it("agrees with a simulation, event by event, within its binomial error", () => {
		const scans: readonly Scan[] = ["twin-180", "single-200", "receiver-100"].map((id) => profileNamed(id)!.scan!);
		let compared = 0;
		let between = 0;
		let seed = 1;
		for (const scan of scans) {
			for (const [places, callS] of [
				[2, 1.5],
				[6, 5],
				[20, 5],
				[20, 10],
				[40, 30],
				[11, 0.7],
			] as const) {
				for (const [busyShare, busyS] of [
					[0, 10],
					[0.08, 10],
					[0.3, 3],
				] as const) {
					const one = { scan, places, callS, busyShare, busyS };
					const told = catchChance(scan, places, callS, { busyShare, busyS });
					const seen = simulated(one, CALLS, seed++);
					// 4 sigma: one in 16 000 cases by chance
					expect(Math.abs(told - seen), JSON.stringify({ ...one, told, seen })).toBeLessThanOrEqual(
						4 * Math.sqrt((told * (1 - told)) / CALLS) + 1e-9,
					);
					compared++;
					if (told > 0.02 && told < 0.98) between++;
				}
			}
		}
		expect(compared).toBe(54);
		expect(between).toBeGreaterThan(30);
	});

	it("is (dwell + call - 2 notice) / revisit where nothing else is on the air", () => {
		// 20 places of 0.5 s: a call of 5 s is met by dwells that begin in 5.3 of 10 s
		expect(revisitS(TWIN, 20)).toBe(10);
		expect(catchChance(TWIN, 20, 5)).toBeCloseTo((0.5 + 5 - 0.2) / 10, 12);
		expect(catchChance(TWIN, 20, 10)).toBe(1);
		expect(catchChance(TWIN, 20, 0.05)).toBe(0);
		expect(catchChance(TWIN, 1, 0.2)).toBe(1);
	});

	it("falls with more places and with more traffic, rises with the call, and never leaves 0 to 1", () => {
		let compared = 0;
		for (const scan of [TWIN, profileNamed("single-200")!.scan!]) {
			for (let places = 2; places < 60; places++) {
				for (const callS of [1, 5, 30]) {
					const chance = catchChance(scan, places, callS, { busyShare: 0.1 });
					expect(chance).toBeGreaterThanOrEqual(0);
					expect(chance).toBeLessThanOrEqual(1);
					expect(catchChance(scan, places + 1, callS, { busyShare: 0.1 })).toBeLessThanOrEqual(chance + 1e-12);
					expect(catchChance(scan, places, callS, { busyShare: 0.2 })).toBeLessThanOrEqual(chance + 1e-12);
					expect(catchChance(scan, places, callS + 1, { busyShare: 0.1 })).toBeGreaterThanOrEqual(chance - 1e-12);
					compared++;
				}
			}
		}
		expect(compared).toBe(348);
	});
});

describe("stopS", () => {
	it("is the traffic and the pause after it, cut by the longest wait, and nothing where the set does not stop", () => {
		expect(stopS(TWIN, 3)).toBe(5); // 2 s pause
		expect(stopS(TWIN, 30)).toBe(5); // held 5 s
		expect(stopS({ ...TWIN, holdMs: 0 }, 30)).toBe(32);
		expect(stopS({ ...TWIN, stopsOn: "nothing" }, 30)).toBe(0);
		expect(revisitS(TWIN, 11, { busyShare: 0.5, busyS: 3 })).toBe(5.5 + 25);
	});
});

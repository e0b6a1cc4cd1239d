import { airtimeOf, directory, listingById, scheduleKnown, scheduleOf, stationOf } from "@skipwright/directory";
import { directoryFor } from "@skipwright/job";
import { isRelevant, marineBand, type Plan, plan, planSamples } from "@skipwright/planner";
import { serviceWant } from "@skipwright/rules";
import { checkList } from "@skipwright/set";
import { isoDate } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { fakeContext } from "./fakeContext.ts";
import { jobGiven } from "./planJob.ts";
import { hearingsFor } from "./reachHearing.ts";

const resolved = jobGiven(fakeContext(), "examples/south-atlantic.job.json");
const all = directoryFor(resolved, directory());
const samples = planSamples(resolved.voyage);
const { hearing } = hearingsFor(resolved, all);
const planned: Plan = await plan(resolved, directory(), { on: isoDate("2026-11-24"), checkList, hearing });

/** Share of one hour that a listing is on the air: minute by minute. */
function onAir(id: string, date: (typeof samples)[number]["date"], hour: number): number {
	const listing = listingById(all, id)!;
	const known = scheduleKnown(scheduleOf(listing));
	if (known === "continuous") return 1;
	if (known === "cannot-tell") return 1 / 24; // about an hour a day, nobody knows when
	const times = airtimeOf(all, listing, date);
	let minutes = 0;
	for (let minute = hour * 60; minute < hour * 60 + 60; minute++) {
		if (times.some(({ fromMin, toMin }) => minute >= fromMin && minute < toMin)) minutes++;
	}
	return known === "off" ? 0 : minutes / 60;
}

/** What one listing gives in one hour at one sample; null where it cannot be told. */
function gives(id: string, at: number, hour: number): number | null {
	const listing = listingById(all, id)!;
	const station = stationOf(all, listing);
	const sample = samples[at]!;
	if (!isRelevant(listing, station, sample)) return 0;
	const chance = hearing.heard({ listing, station }, sample, hour * 60 + 30);
	return chance === null ? null : chance * onAir(id, sample.date, hour) * (listing.status === "unknown" ? 0.5 : 1);
}

/** Hours a day on a leg: what an outsider makes of plan.json and the reach table. */
function hoursOn(want: string, leg: string): number {
	const heard = [...new Set(planned.places.flatMap(({ hears }) => hears))]
		.map((id) => listingById(all, id)!)
		.filter((one) => (one.origin === "owner" ? "nets" : serviceWant(one.service)) === want);
	const bands = new Set(planned.places.filter((one) => one.want === "ship-calling").map(({ receiveHz }) => marineBand(receiveHz)));
	let hours = 0;
	let days = 0;
	for (const [at, sample] of samples.entries()) {
		if (sample.stage !== leg) continue;
		days += sample.days;
		for (let hour = 0; hour < 24; hour++) {
			if (want === "ship-calling") {
				// bands are not independent: the best of them counts
				hours += sample.days * Math.max(...[...bands].map((band) => hearing.heardShip(band, sample, hour * 60 + 30, "near") ?? 0));
				continue;
			}
			let missed = 1;
			for (const station of new Set(heard.map(({ stationId }) => stationId))) {
				const own = heard.filter(({ stationId }) => stationId === station).map(({ id }) => gives(id, at, hour) ?? 0);
				let best = Math.max(...own);
				if (want === "coast-calling") {
					// a call is only answered where the station's selective calling watch hears it
					const watches = all.listings
						.filter((one) => one.stationId === station && one.service === "dsc-watch" && one.status !== "closed")
						.flatMap(({ id }) => gives(id, at, hour) ?? []);
					if (watches.length > 0) best = Math.min(best, Math.max(...watches));
				}
				missed *= 1 - best;
			}
			hours += sample.days * (1 - missed);
		}
	}
	return hours / days;
}

describe("the example's hours served", () => {
	it("are what the reach table, the schedules and the places give, worked out another way", () => {
		let compared = 0;
		let worst = 0;
		for (const { want, leg, hoursPerDay } of planned.served) {
			const off = Math.abs(hoursPerDay.after - hoursOn(want, leg));
			worst = Math.max(worst, off);
			expect(off, `${want}, ${leg}: ${hoursPerDay.after} h`).toBeLessThan(0.0051); // two decimals
			compared++;
		}
		console.log(`hours served: ${compared} figures worked out again, worst ${worst.toFixed(4)} h from the plan's`);
		expect(compared).toBe(planned.legs.length * 9);
		expect(planned.served.filter(({ hoursPerDay }) => hoursPerDay.after > 1).length).toBeGreaterThan(30);
	});

	it("never fall by the plan", () => {
		for (const { want, leg, hoursPerDay } of planned.served) {
			expect(hoursPerDay.after, `${want}, ${leg}`).toBeGreaterThanOrEqual(hoursPerDay.before - 0.01);
		}
	});

	it("hold to capacity, reserve, pins and blocks, as an outsider counts them from plan.json", () => {
		for (const { id, places } of resolved.profile.banks) {
			const filled = planned.places.filter(({ bank }) => bank === id);
			expect(new Set(filled.map(({ place }) => place)).size).toBe(filled.length);
			expect(filled.length).toBeLessThanOrEqual(places - (resolved.job.options.reservePlaces[id] ?? 0));
			expect(filled.every(({ place }) => place >= 1 && place <= places)).toBe(true);
		}
		const pinned = planned.places.filter((one) => one.pinned).map(({ bank, place }) => `${bank} ${place}`);
		expect(pinned.toSorted()).toEqual(resolved.job.pins.map(({ bank, place }) => `${bank} ${place}`).toSorted());
	});
});

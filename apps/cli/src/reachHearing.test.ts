import { type Directory, directory, type Listing, stationOf } from "@skipwright/directory";
import { directoryFor, type VoyageSample } from "@skipwright/job";
import { planSamples } from "@skipwright/planner";
import { mapIonosphere, reach, skyMonth, type Terminal } from "@skipwright/sky";
import { expect, test } from "vitest";
import { fakeContext } from "./fakeContext.ts";
import { jobGiven } from "./planJob.ts";
import { hearingsFor } from "./reachHearing.ts";
import { coastPower, coastTerminal, signalOf, vesselTerminal } from "./terminals.ts";

const SUNSPOTS = 60;
const resolved = jobGiven(fakeContext(), "examples/south-atlantic.job.json");
const all: Directory = directoryFor(resolved, directory());
/** A few stations along the voyage, every service of theirs: the whole directory is the planner's own test. */
const few: Directory = {
	...all,
	listings: all.listings.filter(({ stationId }) => ["za-capetown", "za-capenaval", "us-boston"].includes(stationId)),
};
const samples = planSamples(resolved.voyage);
const { hearing } = hearingsFor(resolved, few, { sunspots: SUNSPOTS });

/** Chances of both directions at an hour, by `reach`. */
function bothWays(listing: Listing, { date, position }: VoyageSample, hour: number) {
	const station = stationOf(few, listing);
	if (station.position === null) throw new Error(`${station.id} has no position`);
	const [year = 0, month = 0] = date.split("-").map(Number);
	const sky = { month: skyMonth({ year, month, sunspots: SUNSPOTS }), ionosphere: mapIonosphere({ year, month, r12: SUNSPOTS }) };
	const coast = coastTerminal(station.position, coastPower(station, listing.service).powerW);
	const vessel: Terminal = { ...vesselTerminal(resolved.job), position };
	const chance = (from: Terminal, to: Terminal) => reach({ from, to, ...sky }, [signalOf(listing)])[0]!.hours![hour]!.chance;
	return { toVessel: chance(coast, vessel), toCoast: chance(vessel, coast) };
}

test("a broadcast is heard as reach to the vessel has it; where the vessel sends too, the worse direction counts", () => {
	let broadcasts = 0;
	let twoWay = 0;
	let worseBack = 0;
	for (const sample of [samples[0]!, samples[Math.floor(samples.length / 2)]!]) {
		for (const listing of few.listings.filter(({ status }) => status !== "closed")) {
			for (const hour of [2, 14]) {
				const heard = hearing.heard({ listing, station: stationOf(few, listing) }, sample, hour * 60);
				const { toVessel, toCoast } = bothWays(listing, sample, hour);
				const isTwoWay = listing.service === "voice-working" || listing.service === "dsc-watch";
				expect(heard).toBeCloseTo(isTwoWay ? Math.min(toVessel, toCoast) : toVessel, 9);
				if (isTwoWay) twoWay++;
				else broadcasts++;
				if (isTwoWay && toCoast < toVessel - 0.01) worseBack++;
			}
		}
	}
	expect(Math.min(broadcasts, twoWay)).toBeGreaterThan(40);
	expect(worseBack).toBeGreaterThan(10);
});

test("of a station without a position, and of a listing that it was not asked for, it cannot tell", () => {
	const placeless = all.listings.find((listing) => stationOf(all, listing).position === null);
	expect(placeless).toBeDefined();
	const { hearing: lone } = hearingsFor(resolved, { ...all, listings: [placeless!] }, { sunspots: SUNSPOTS });
	expect(lone.heard({ listing: placeless!, station: stationOf(all, placeless!) }, samples[0]!, 600)).toBeNull();
	expect(hearing.heard({ listing: placeless!, station: stationOf(all, placeless!) }, samples[0]!, 600)).toBeNull();
});

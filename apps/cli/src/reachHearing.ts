import { type Directory, stationById } from "@skipwright/directory";
import { type ResolvedJob, type VoyageSample, voyageSamples } from "@skipwright/job";
import { type Hearing, STEP_DAYS } from "@skipwright/planner";
import type { ServiceId } from "@skipwright/rules";
import {
	chanceAtMinute,
	mapIonosphere,
	reachTable,
	type Sunspots,
	skyMonth,
	sunspots,
	type Terminal,
	type VesselSample,
} from "@skipwright/sky";
import { coastPower, coastTerminal, signalOf, vesselTerminal } from "./terminals.ts";

const HOURS_PER_DAY = 24;
/** Services in which the vessel sends too: the worse direction holds. */
const TWO_WAY: ReadonlySet<ServiceId> = new Set(["voice-working", "dsc-watch"]);

/** Predicted reach along a job's voyage, worked out once for every listing of the directory: what the planner asks for. */
export function reachHearing(resolved: ResolvedJob, directory: Directory, givenSunspots?: number): Hearing {
	const samples = voyageSamples(resolved.voyage, STEP_DAYS);
	const senders = new Map<string, { readonly index: number; readonly terminal: Terminal }>();
	const rows = directory.listings.flatMap((listing) => {
		const station = stationById(directory, listing.stationId);
		if (listing.status === "closed" || station === null || station.position === null) return [];
		const { powerW } = coastPower(station, listing.service);
		const key = `${powerW} ${station.id}`;
		const sender = senders.get(key) ?? { index: senders.size, terminal: coastTerminal(station.position, powerW) };
		senders.set(key, sender);
		return [{ id: listing.id, station: sender.index, signal: signalOf(listing) }];
	});
	const months = new Map<string, ReturnType<typeof monthOf>>();
	const vesselSamples = samples.map(({ date, position }): VesselSample => {
		const name = date.slice(0, 7);
		const known = months.get(name) ?? monthOf(name, givenSunspots);
		months.set(name, known);
		return { position, ...known };
	});
	const { toVessel, toCoast } = reachTable({
		vessel: vesselTerminal(resolved.job),
		stations: [...senders.values()].map(({ terminal }) => terminal),
		rows,
		samples: vesselSamples,
		bothWays: true,
	});
	const rowOf = new Map(rows.map(({ id }, index) => [id, index]));
	const sampleOf = new Map(samples.map(({ atMs }, index) => [atMs, index]));
	const numbers = [...months.values()].map(({ spots }) => Math.round(spots.r12Old));
	return {
		basis: `predicted reach by sky wave and ground wave, sunspot number ${Math.min(...numbers)} to ${Math.max(...numbers)} (old scale): monthly medians, not promises`,
		heard({ listing }, sample: VoyageSample, minute) {
			const row = rowOf.get(listing.id);
			const at = sampleOf.get(sample.atMs);
			if (row === undefined || at === undefined) return null;
			const start = (row * samples.length + at) * HOURS_PER_DAY;
			const chanceBy = (table: Float64Array) => chanceAtMinute(table.subarray(start, start + HOURS_PER_DAY), minute);
			const chance = TWO_WAY.has(listing.service) ? Math.min(chanceBy(toVessel), chanceBy(toCoast!)) : chanceBy(toVessel);
			return Number.isNaN(chance) ? null : chance;
		},
	};
}

function monthOf(name: string, given: number | undefined) {
	const spots: Sunspots = sunspots(name, given);
	const [year = 0, month = 0] = name.split("-").map(Number);
	const r12 = spots.r12Old;
	return { spots, month: skyMonth({ year, month, sunspots: r12 }), ionosphere: mapIonosphere({ year, month, r12 }) };
}

import type { Directory } from "@skipwright/directory";
import { type ResolvedJob, stagesOf } from "@skipwright/job";
import { channels, guards, msiFrequencies } from "@skipwright/rules";
import { distanceKm, NAUTICAL_MILE_KM } from "@skipwright/sphere";
import { formatKhz } from "@skipwright/units";

const MS_PER_HOUR = 3_600_000;
/** Knots. No vessel with such a set makes more over a leg: a figure of its position or date is wrong. Own choice. */
const FASTEST_KNOTS = 30;

/** What in a job can hardly be meant, in sentences: it is planned as it stands. */
export function doubts({ job, voyage }: ResolvedJob, directory: Directory): readonly string[] {
	return [...tooFast(voyage), ...unknownBans(job.bans, directory), ...brokenGroups(job, directory), ...unlicensed(job.vessel.licences)];
}

function tooFast(voyage: ResolvedJob["voyage"]): readonly string[] {
	return stagesOf(voyage).flatMap(({ name, points }) =>
		points.slice(1).flatMap((to, i) => {
			const from = points[i]!;
			const nm = distanceKm(from.position, to.position) / NAUTICAL_MILE_KM;
			const hours = (to.arriveMs - from.departMs) / MS_PER_HOUR;
			const isMeant = nm <= FASTEST_KNOTS * hours;
			return isMeant
				? []
				: [`${name}: ${Math.round(nm)} nautical miles in ${Math.round(hours)} hours; are the dates right, and latitude before longitude?`];
		}),
	);
}

function unknownBans(bans: readonly string[], { listings, stations }: Directory): readonly string[] {
	const known = new Set([
		...listings.map(({ id }) => id),
		...stations.map(({ id }) => id),
		...guards().map(({ hz }) => `guard/${formatKhz(hz)}`),
		...msiFrequencies().map(({ hz }) => `safety/${formatKhz(hz)}`),
		...channels().flatMap(({ number, ship }) => [`ap17/${number}`, ...(ship === null ? [] : [`ap17/${formatKhz(ship)}`])]),
	]);
	return bans.flatMap((id) => {
		if (/^(guard|safety)\//.test(id) && known.has(id))
			return [`banned ${JSON.stringify(id)}: held all the same, distress and safety are never traded`];
		return known.has(id) ? [] : [`banned ${JSON.stringify(id)}: no listing, station or channel has this id`];
	});
}

/** Groups of which a member cannot be held: the rest is planned without it. */
function brokenGroups({ together, bans }: ResolvedJob["job"], { listings }: Directory): readonly string[] {
	const known = new Map(listings.map((listing) => [listing.id, listing]));
	return together.flat().flatMap((id) => {
		const listing = known.get(id);
		const isBanned = bans.includes(id) || (listing !== undefined && bans.includes(listing.stationId));
		const why = isBanned
			? "banned"
			: listing?.status === "closed"
				? "closed"
				: listing === undefined && !/^(ap17|guard|safety)\//.test(id)
					? "in no list"
					: null;
		return why === null ? [] : [`together with ${JSON.stringify(id)}: it is ${why}, so the others are planned without it`];
	});
}

function unlicensed({ ship }: ResolvedJob["job"]["vessel"]["licences"]): readonly string[] {
	if (ship) return [];
	return ["no ship station licence is held: nothing is laid out to send but the distress carriers, for distress alone; see to the licence"];
}

import type { Listing } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import { type Candidate, namingOf, WANT_ORDER, type Want } from "./candidate.ts";
import type { Coverage } from "./choiceModel.ts";
import { anyHeard, perDay, round, stationsFor } from "./heardPlaces.ts";
import type { PlanLevel, Swayed } from "./planDocument.ts";

/** Hours a day over the whole voyage. */
export function hoursBy(
	wants: readonly Want[],
	listings: readonly Listing[],
	coverage: Coverage,
	samples: readonly VoyageSample[],
): PlanLevel["hours"] {
	const all = samples.map((_, index) => index);
	return WANT_ORDER.filter((want) => wants.includes(want)).flatMap((want) => {
		const heard = anyHeard(stationsFor(want, listings, coverage).values());
		return heard === null ? [] : [{ want, hoursPerDay: round(perDay(heard, samples, all), 2) }];
	});
}

/** What another choice takes in, and what it leaves out. */
export function swayed(chosen: readonly Candidate[], other: readonly Candidate[]): Pick<PlanLevel, "enters" | "leaves"> {
	const only = (these: readonly Candidate[], those: readonly Candidate[]) =>
		these.filter((one) => !those.includes(one)).map((one): Swayed => ({ listing: one.id, what: namingOf(one).what }));
	return { enters: only(other, chosen), leaves: only(chosen, other) };
}

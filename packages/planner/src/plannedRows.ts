import type { PlannedRow } from "@skipwright/set";
import type { Plan } from "./planDocument.ts";

/** The places of a plan as rows of a list, with what each is for; `line` is the one that it will have in the CSV. */
export function plannedRows({ places }: Pick<Plan, "places">): readonly PlannedRow[] {
	return places.map(({ bank, place, tag, receiveHz, transmitHz, mode, listing, what }, index) => ({
		bank,
		place,
		tag,
		receive: receiveHz,
		transmit: transmitHz,
		mode,
		line: index + 2,
		listing,
		what,
	}));
}

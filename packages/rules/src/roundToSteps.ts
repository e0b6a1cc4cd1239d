import { type Hz, hz } from "@skipwright/units";

/**
 * The nearest dial that the set's finest step can store (a tie goes up), and what is left over.
 * `residueHz` = wanted - tunable.
 */
export function roundToSteps(dialHz: Hz, finestStepHz: Hz): { readonly tunableHz: Hz; readonly residueHz: number } {
	const tunableHz = hz(Math.floor(dialHz / finestStepHz + 0.5) * finestStepHz);
	return { tunableHz, residueHz: dialHz - tunableHz };
}

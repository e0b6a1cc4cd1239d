import type { Plan } from "@skipwright/planner";

/** How good the choice is known to be. */
export function planStatusWords({ status, gap }: Pick<Plan, "status" | "gap">): string {
	if (status === "infeasible") return "the choice cannot keep everything that must be held";
	if (status === "optimal") return "no choice is worth more under the wants given (proved)";
	return gap === null
		? "the choice is a good one, not proved best"
		: `the best choice found, at most ${(gap * 100).toFixed(2)} % from the best possible`;
}

/** How good the order of the places is known to be. */
export function planOrderWords({ layout: { status, gap } }: Pick<Plan, "layout">): string {
	if (status === "optimal") return "the order of the places is proved best";
	if (gap === null) return "the order of the places is a good one, not proved best";
	return `the order of the places is at most ${(gap * 100).toFixed(2)} % from the best`;
}

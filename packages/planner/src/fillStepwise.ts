import type { Entry } from "./entry.ts";
import type { Layout } from "./layout.ts";
import { inUseOrder } from "./useOrder.ts";

/**
 * Gives places to what has none, one after another: what the owner has had before what is new to him, guard carriers apart. For where room
 * is short and no solver is at hand: what must be held takes the place of something else.
 * @returns what found no place, of what came and of what stood, and what it gave way to
 */
export function fillStepwise(layout: Layout, arrivals: readonly Entry[]): readonly { readonly entry: Entry; readonly for: Entry | null }[] {
	const isNew = ({ found, want }: Entry) => found === null && want !== "guard";
	const homeless: { entry: Entry; for: Entry | null }[] = [];
	for (const entry of inUseOrder(arrivals).toSorted((a, b) => Number(isNew(a)) - Number(isNew(b)))) {
		if (layout.place(entry)) continue;
		const isTraded = entry.want !== "guard" && entry.want !== "safety-text";
		const gone = isTraded ? null : layout.placeInstead(entry);
		homeless.push(gone === null ? { entry, for: null } : { entry: gone, for: entry });
	}
	return homeless;
}

import type { Row } from "./types.ts";

/** One text for each bank and place, to look rows up by. */
export function placeKey({ bank, place }: Pick<Row, "bank" | "place">): string {
	return `${place} ${bank}`;
}

import type { PlaceContent } from "@skipwright/set";

export type Content = Pick<PlaceContent, "receive" | "transmit" | "mode">;

/** One text for all places that do the same. */
export function contentKey({ receive, transmit, mode }: Content): string {
	return `${receive} ${transmit} ${mode}`;
}

/** One text for all places that hear the same. */
export function hearingKey({ receive, mode }: Pick<Content, "receive" | "mode">): string {
	return `${receive} ${mode}`;
}

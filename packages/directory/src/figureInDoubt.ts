import type { Listing } from "./types.ts";

/** Whether the source leaves open if the figure is the centre or a dial reading: both must be tried on the air before a dial is stored. */
export function figureInDoubt({ notes }: Listing): boolean {
	return notes.includes("centre or dial not stated");
}

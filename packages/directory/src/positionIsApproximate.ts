import type { Station } from "./types.ts";

/**
 * Whether the position is only that of a town or an area, or rests on memory: no bearing or distance may be shown finer than that.
 * True without a position.
 */
export function positionIsApproximate({ position, notes, source, confidence }: Station): boolean {
	if (position === null || /approx|site not known|not surely|position from memory/.test(notes)) return true;
	return /position[^;]*: from memory/.test(source) || (confidence === "memory" && !notes.includes("position"));
}

import { roundToSteps } from "@skipwright/rules";
import { formatKhz, formatKhzFixed, type Hz, hz } from "@skipwright/units";
import type { Profile } from "./profile.ts";

export type Direction = "receive" | "transmit";

/** The finest step that the set stores. */
export function finestStep(profile: Profile): Hz {
	return hz(profile.tuningStepsHz[0] ?? 1);
}

/** Whether a dial reading lies in one of the set's ranges for that direction; both ends count. */
export function inRange(profile: Profile, dialHz: number, direction: Direction): boolean {
	return profile[direction].some(({ fromHz, toHz }) => dialHz >= fromHz && dialHz <= toHz);
}

/** Whether the set can be put on exactly this dial reading: in range, and a multiple of the finest step. */
export function canTune(profile: Profile, dialHz: number, direction: Direction): boolean {
	return inRange(profile, dialHz, direction) && dialHz % finestStep(profile) === 0;
}

export interface NearestDial {
	readonly dialHz: Hz;
	/** Wanted less tunable, hertz: positive where the set stays below what is wanted. */
	readonly residueHz: number;
}

/** The dial reading nearest to the one wanted that the set can be put on; of two equally near the higher. Null for a receiver's transmit side. */
export function nearestDial(profile: Profile, dialHz: Hz, direction: Direction): NearestDial | null {
	const step = finestStep(profile);
	let nearest: NearestDial | null = null;
	for (const { fromHz, toHz } of profile[direction]) {
		const lowest = Math.ceil(fromHz / step) * step;
		const highest = Math.floor(toHz / step) * step;
		if (lowest > highest) continue;
		const dial = Math.min(highest, Math.max(lowest, roundToSteps(dialHz, step).tunableHz));
		if (nearest === null || Math.abs(dialHz - dial) <= Math.abs(nearest.residueHz))
			nearest = { dialHz: hz(dial), residueHz: dialHz - dial };
	}
	return nearest;
}

/** Decimals of a kilohertz that the set's display needs for its finest step: 0 to 3. @example 1 for a step of 100 Hz */
export function decimalsShown(profile: Profile): number {
	const step = finestStep(profile);
	return [0, 1, 2].find((decimals) => step % 10 ** (3 - decimals) === 0) ?? 3;
}

/** A dial reading as the set shows it, kHz; exact with more decimals where the set could not show it. @example `"8113.0"` */
export function dialText(profile: Profile, dialHz: Hz): string {
	const decimals = decimalsShown(profile);
	return dialHz % 10 ** (3 - decimals) === 0 ? formatKhzFixed(dialHz, decimals) : formatKhz(dialHz);
}

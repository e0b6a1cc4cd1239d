import type { Predicted } from "./verdict.ts";

/** Chance below which a band counts as closed: one day in seven. The steps of reach call this "none". */
export const CLOSED_BELOW = 0.15;
/** nm within which a station may be the one heard where no chance is predicted. Own choice: as far as NAVTEX is about the same waters. */
const NEAR_NM = 600;

/** Whether the station may be the one that was heard: on the air about then, and in reach. Null where that is not known. */
export function fitsHere({ chance, isDue, isNearDue = isDue, distanceNm = null }: Predicted): boolean | null {
	const isInReach = chance !== null ? chance >= CLOSED_BELOW : distanceNm !== null ? distanceNm <= NEAR_NM : null;
	if (isInReach === false || isNearDue === false) return false;
	return isInReach === null || isNearDue === null ? null : true;
}

import { destination } from "@skipwright/sphere";
import type { Position } from "@skipwright/units";
import type { Ionosphere } from "./controlPoints.ts";
import { skyPath } from "./path.ts";
import { skyDay, skyHour } from "./skyWaveHour.ts";
import type { SkyMonth } from "./skyWaveMonth.ts";
import { basicMufMHz } from "./skyWaveMuf.ts";

export interface SkipWanted {
	readonly from: Position;
	/** True, degrees. */
	readonly bearingDeg: number;
	readonly fMHz: number;
	/** 0 to 23. */
	readonly utcHour: number;
}

/** km. No single hop goes further. */
const FARTHEST_KM = 4000;
const COARSE_KM = 100;
/** To which the edge is halved down. */
const FINE_KM = 1;

/**
 * The shortest distance in km, to 1 km, at which the path's basic MUF reaches the frequency: nearer, a sky wave is skipped over. 0 where
 * even the steepest ray comes back; null where none does within 4000 km.
 */
export function skipDistanceKm({ from, bearingDeg, fMHz, utcHour }: SkipWanted, ionosphere: Ionosphere, month: SkyMonth): number | null {
	const comesBack = (km: number) => {
		const path = skyPath(from, destination(from, bearingDeg, km));
		return basicMufMHz(skyHour(skyDay(path, ionosphere, month), utcHour)) >= fMHz;
	};
	let within = COARSE_KM;
	while (!comesBack(within)) {
		within += COARSE_KM;
		if (within > FARTHEST_KM) return null;
	}
	let skipped = within - COARSE_KM;
	if (skipped === 0 && comesBack(0)) return 0;
	while (within - skipped > FINE_KM) {
		const middle = (within + skipped) / 2;
		if (comesBack(middle)) within = middle;
		else skipped = middle;
	}
	return within;
}

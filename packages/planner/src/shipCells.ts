import type { VoyageSample } from "@skipwright/job";
import { HOURS_PER_DAY } from "./coverage.ts";
import type { Hearing, ShipDistance } from "./hearing.ts";

/** Chance that another ship is reached on a marine band, by sample and UTC hour; null where it cannot be told. */
export function shipCells(
	bandMhz: number,
	distance: ShipDistance,
	samples: readonly VoyageSample[],
	hearing: Hearing,
): Float64Array | null {
	const cells = new Float64Array(samples.length * HOURS_PER_DAY);
	for (const [index, sample] of samples.entries()) {
		for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
			const chance = hearing.heardShip(bandMhz, sample, hour * 60 + 30, distance);
			if (chance === null) return null;
			cells[index * HOURS_PER_DAY + hour] = chance;
		}
	}
	return cells;
}

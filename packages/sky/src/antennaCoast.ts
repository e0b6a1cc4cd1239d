import { type Antenna, verticalAntenna } from "./antenna.ts";
import { MEMORY } from "./fromMemory.ts";

const MF_MHZ = 4;
const { below4MHz, from4MHz } = MEMORY.coastAntenna.value;

/** A coast station's aerial where nothing is published about it (`MEMORY.coastAntenna`). */
export function coastAntenna(): Antenna {
	return verticalAntenna((fMHz) => (fMHz < MF_MHZ ? below4MHz : from4MHz), [MEMORY.coastAntenna.id, MEMORY.steepestGain.id]);
}

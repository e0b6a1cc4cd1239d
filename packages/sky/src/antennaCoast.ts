import { type Antenna, verticalAntenna } from "./antenna.ts";
import { MEMORY } from "./fromMemory.ts";

const MF_MHZ = 4;
const { below4MHz, from4MHz } = MEMORY.coastAntenna.value;

const COAST_ANTENNA = verticalAntenna((fMHz) => (fMHz < MF_MHZ ? below4MHz : from4MHz), [MEMORY.coastAntenna.id, MEMORY.steepestGain.id]);

/** A coast station's aerial where nothing is published about it (`MEMORY.coastAntenna`): one object for all, so that tables of it are shared. */
export function coastAntenna(): Antenna {
	return COAST_ANTENNA;
}

import { secIncidence } from "./elevation.ts";
import { MEMORY } from "./fromMemory.ts";
import { E_MIRROR_KM } from "./mirrorHeight.ts";

/** MHz under which the E layer keeps a ray of that elevation from the F2 layer, f_s of ITU-R P.533 section 4. */
export function screeningMHz(foEMHz: number, cosineOfElevation: number): number {
	return MEMORY.screening.value * foEMHz * secIncidence(cosineOfElevation, E_MIRROR_KM);
}

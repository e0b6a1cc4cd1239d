import { log10 } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";
import { powerOf } from "./noiseCombined.ts";

/**
 * The receiver's own noise as dB above kT0b at a lossless aerial, so that it adds to the noise from outside: f - 1, f the noise figure with
 * the aerial's loss before it (ITU-R P.372's f = fa - 1 + fc ft fr). The aerial's efficiency moves nothing else on receive: what is
 * lost of the signal is lost of the noise. It counts at quiet places in the upper bands, or where hardly anything of the aerial is left.
 * @param efficiency of the receiving aerial, above 0 to 1
 */
export function receiverNoiseDb(efficiency: number): number {
	return 10 * log10(powerOf(MEMORY.receiverNoise.value) / efficiency - 1);
}

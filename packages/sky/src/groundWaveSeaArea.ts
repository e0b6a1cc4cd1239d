import { log10 } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";
import { GROUNDS } from "./groundConstants.ts";
import { groundWaveTable } from "./groundWaveTable.ts";
import { noiseFieldDb } from "./noiseField.ts";

/** MHz: the carrier of the speech that IMO's criteria are for. */
const SPEECH_MHZ = 2.182;

/**
 * Radius in km of sea area A2 by IMO's criteria (`MEMORY.seaAreaA2` and `safetySpeech`): out to where a ship's speech on 2182 kHz
 * reaches the coast station by ground wave over sea. What an administration has declared prevails.
 * @param faDb noise at the coast station in dB above kT0b at 2.182 MHz, not passed for the share of time that is wanted
 */
export function seaAreaA2Km(faDb: number): number {
	const { peakW, efficiency, fadingMarginDb } = MEMORY.seaAreaA2.value;
	const { snrDb, bandwidthHz, meanBelowPeakDb } = MEMORY.safetySpeech.value;
	const neededDb = noiseFieldDb({ faDb, fMHz: SPEECH_MHZ, bandwidthHz }) + snrDb + fadingMarginDb + meanBelowPeakDb;
	return groundWaveTable(SPEECH_MHZ, GROUNDS.sea).rangeKm(neededDb - 10 * log10((peakW * efficiency) / 1000));
}

import { type Antenna, verticalAntenna } from "./antenna.ts";
import { MEMORY } from "./fromMemory.ts";

export interface VesselAntenna {
	/** m from the tuner's terminal to the far end. */
	readonly lengthM: number;
	/** A whip stands upright; of a backstay or wire a share of the length counts as height. Default backstay. */
	readonly kind?: "whip" | "backstay";
}

/** m. The longest and shortest wire that the model means anything for. */
const SHORTEST_M = 1;
const LONGEST_M = 60;
/** m MHz: the speed of light. */
const LIGHT = 299.792458;

const { lossOhms, mostRadiationOhms, heightShare } = MEMORY.shortVertical.value;

/**
 * An end-fed whip or backstay with its tuner (`MEMORY.shortVertical`): radiation resistance against losses that fall with frequency.
 * Own model, meant for a good sea ground; a poor one or a wire among rigging costs more. The pattern is a short vertical's; wires
 * longer than half a wave have lobes, which are not drawn.
 * @throws RangeError when lengthM is not 1 to 60 m
 */
export function vesselAntenna({ lengthM, kind = "backstay" }: VesselAntenna): Antenna {
	if (!(lengthM >= SHORTEST_M && lengthM <= LONGEST_M)) {
		throw new RangeError(`Cannot reckon with an aerial of ${lengthM} m: expected ${SHORTEST_M} to ${LONGEST_M} m`);
	}
	const heightM = kind === "whip" ? lengthM : heightShare * lengthM;
	const efficiency = (fMHz: number): number => {
		const waves = (heightM * fMHz) / LIGHT;
		const radiation = Math.min(40 * Math.PI * Math.PI * waves * waves, mostRadiationOhms);
		return radiation / (radiation + lossAt(fMHz));
	};
	return verticalAntenna(efficiency, [MEMORY.shortVertical.id, MEMORY.steepestGain.id]);
}

/** Ohms, linear between the table's frequencies and level beyond them. */
function lossAt(fMHz: number): number {
	let [belowMHz, ohms]: readonly [number, number] = lossOhms[0];
	for (const [aboveMHz, next] of lossOhms) {
		if (fMHz <= belowMHz) return ohms;
		if (fMHz < aboveMHz) return ohms + ((fMHz - belowMHz) / (aboveMHz - belowMHz)) * (next - ohms);
		belowMHz = aboveMHz;
		ohms = next;
	}
	return ohms;
}

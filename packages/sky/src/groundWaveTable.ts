import { log, pow } from "@skipwright/units";
import type { Ground } from "./groundConstants.ts";
import { groundWaveAt } from "./groundWaveField.ts";

/** Nodes an octave of distance: with 3 the table lies within 0.02 dB of the field (tested). */
const NODES_PER_OCTAVE = 3;
/** dB(uV/m) of 1 kW: far under any noise, so that a table may end here. */
const LOWEST_FIELD_DB = -60;
/** km. Half the earth's circumference, rounded up. */
const FARTHEST_KM = 20_100;
const NODES_PER_NEPER = NODES_PER_OCTAVE / Math.LN2;
/** km. */
const NODE_KM = new Float64Array(44);
for (let i = 0; i < NODE_KM.length; i++) NODE_KM[i] = pow(2, i / NODES_PER_OCTAVE);

export interface GroundWaveTable {
	/**
	 * dB(uV/m) of 1 kW e.m.r.p., falling with distance. Nearer than 1 km the field at 1 km; past the table's end, where the field is
	 * under -60 dB(uV/m), its last value.
	 */
	readonly fieldAt: (distanceKm: number) => number;
	/** km at which the field has fallen to so many dB(uV/m) of 1 kW: from 1 km to the table's end. */
	readonly rangeKm: (fieldDb: number) => number;
	/** km. */
	readonly endKm: number;
}

/**
 * The ground wave of one frequency over one ground, for many distances: within 0.02 dB of `groundWaveField`, by a monotone cubic in the
 * logarithm of distance.
 */
export function groundWaveTable(fMHz: number, ground: Ground): GroundWaveTable {
	const field = fieldAtNodes(fMHz, ground);
	const slope = monotoneSlopes(field);
	const last = field.length - 1;
	const fieldAt = (distanceKm: number): number => {
		const along = distanceKm > 1 ? log(distanceKm) * NODES_PER_NEPER : 0;
		if (along >= last) return field[last]!;
		const i = Math.floor(along);
		const t = along - i;
		const rest = 1 - t;
		const left = field[i]! + t * (slope[i]! + 2 * field[i]!);
		const right = field[i + 1]! - rest * (slope[i + 1]! - 2 * field[i + 1]!);
		return rest * rest * left + t * t * right;
	};
	return { fieldAt, rangeKm: (fieldDb) => rangeOf(fieldAt, NODE_KM[last]!, fieldDb), endKm: NODE_KM[last]! };
}

function fieldAtNodes(fMHz: number, ground: Ground): Float64Array {
	const at = groundWaveAt(fMHz, ground);
	const field = new Float64Array(NODE_KM.length);
	let count = 0;
	while (count === 0 || (field[count - 1]! > LOWEST_FIELD_DB && NODE_KM[count - 1]! < FARTHEST_KM)) {
		field[count] = at(NODE_KM[count]!);
		count++;
	}
	return field.subarray(0, count);
}

/** Slopes per node step: from the four or five nodes around, held within three times either neighbour's step (Fritsch and Carlson). */
function monotoneSlopes(field: Float64Array): Float64Array {
	const last = field.length - 1;
	return field.map((value, i) => {
		const fromEnd = Math.min(i, last - i);
		const inward = i < last / 2 ? 1 : -1;
		const at = (k: number): number => field[i + k * inward]!;
		if (fromEnd === 0) return (inward * (-11 * value + 18 * at(1) - 9 * at(2) + 2 * at(3))) / 6;
		const slope = fromEnd === 1 ? (-2 * at(-1) - 3 * value + 6 * at(1) - at(2)) / 6 : (at(-2) - 8 * at(-1) + 8 * at(1) - at(2)) / 12;
		return Math.max(inward * slope, 3 * (field[i + 1]! - value), 3 * (value - field[i - 1]!));
	});
}

function rangeOf(fieldAt: (distanceKm: number) => number, endKm: number, fieldDb: number): number {
	let near = 1;
	let far = endKm;
	if (fieldAt(near) <= fieldDb) return near;
	if (fieldAt(far) >= fieldDb) return far;
	while (far - near > 0.001) {
		const middle = (near + far) / 2;
		if (fieldAt(middle) > fieldDb) near = middle;
		else far = middle;
	}
	return near;
}

import type { Ground } from "./groundConstants.ts";
import { groundWaveAt } from "./groundWaveField.ts";

/** A stretch of one ground; in order from the sender. */
export interface GroundSection {
	readonly ground: Ground;
	readonly lengthKm: number;
}

/** A stretch with its own field against distance, as a table's `fieldAt`. */
export interface FieldSection {
	readonly fieldAt: (distanceKm: number) => number;
	readonly lengthKm: number;
}

/**
 * Field in dB(uV/m) of 1 kW e.m.r.p. at the far end of a path that runs over land and sea in turn (`MEMORY.mixedPath`): forward
 * E1(d1) - E2(d1) + E2(d1 + d2) and so on, backward the same from the other end, the mean of the two in dB. Sections of no length are passed over.
 * @throws RangeError when no section has a length, or one is negative; and as `groundWaveField`
 */
export function mixedGroundWaveField(sections: readonly GroundSection[], fMHz: number): number {
	return mixedField(sections.map(({ ground, lengthKm }) => ({ fieldAt: groundWaveAt(fMHz, ground), lengthKm })));
}

/** As `mixedGroundWaveField`, from tables. */
export function mixedField(sections: readonly FieldSection[]): number {
	const bad = sections.find(({ lengthKm }) => !(lengthKm >= 0));
	if (bad !== undefined) throw new RangeError(`Cannot lay out a section of ${bad.lengthKm} km: expected 0 km or more`);
	const laid = sections.filter(({ lengthKm }) => lengthKm > 0);
	if (laid.length === 0) throw new RangeError("Cannot reckon a mixed path without length: expected a section above 0 km");
	return (oneWay(laid) + oneWay(laid.toReversed())) / 2;
}

function oneWay(sections: readonly FieldSection[]): number {
	let passedKm = 0;
	let field = 0;
	for (const { fieldAt, lengthKm } of sections) {
		field += fieldAt(passedKm + lengthKm) - (passedKm === 0 ? 0 : fieldAt(passedKm));
		passedKm += lengthKm;
	}
	return field;
}

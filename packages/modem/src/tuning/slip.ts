import type { TuningExpectation } from "./expectation.ts";

/** A usual slip of whoever keyed the dial in, by name. */
export type TuningSlip =
	| "offset missing"
	| "offset taken twice"
	| "offset of the other service"
	| "1 kHz slip"
	| "assigned keyed as carrier"
	| "another dial keyed"
	| "wrong sideband";

/** Hz. A slip is known by its figure to within what a set may be off tune besides; as near as two frequencies match (contracts). */
const SLIP_WITHIN_HZ = 50;

/** Hz. What charts, and what calls and texts, take off the centre. */
const CHART_OFFSET_HZ = 1_900,
	KEYED_OFFSET_HZ = 1_700;
/** Hz. The assigned frequency of speech lies so far above its carrier (RR Appendix 17). */
const ASSIGNED_HZ = 1_400;

export interface KnownSlip {
	readonly slip: TuningSlip;
	/** Hz, as an offset of the dial: positive where the dial stands too low. */
	readonly offsetHz: number;
	readonly words: string;
}

/** The slip that this offset looks like, or null; the nearest of those that come within reach. */
export function slipOf(offsetHz: number, { kind, nominalAudioHz, toleranceHz }: TuningExpectation): KnownSlip | null {
	if (Math.abs(offsetHz) <= toleranceHz) return null;
	const slips = [...ofKind(kind, nominalAudioHz[0] ?? 0), ...ONE_KHZ];
	const distance = (one: KnownSlip) => Math.abs(offsetHz - one.offsetHz);
	const nearest = slips.reduce((best, one) => (distance(one) < distance(best) ? one : best));
	return distance(nearest) <= SLIP_WITHIN_HZ ? nearest : null;
}

const ONE_KHZ: readonly KnownSlip[] = [
	{ slip: "1 kHz slip", offsetHz: 1_000, words: "1 kHz slip: the dial stands 1 kHz too low" },
	{ slip: "1 kHz slip", offsetHz: -1_000, words: "1 kHz slip: the dial stands 1 kHz too high" },
];

function ofKind(kind: TuningExpectation["kind"], nominalHz: number): readonly KnownSlip[] {
	if (kind === "tone") {
		return [
			{
				slip: "assigned keyed as carrier",
				offsetHz: -ASSIGNED_HZ,
				words: "the assigned frequency was keyed as the carrier: the dial stands 1.4 kHz too high",
			},
		];
	}
	const khz = nominalHz / 1_000;
	const otherHz = kind === "chart" ? KEYED_OFFSET_HZ : CHART_OFFSET_HZ;
	return [
		{
			slip: "offset missing",
			offsetHz: -nominalHz,
			words: `the offset of ${khz} kHz is missing: the published centre was keyed as the carrier`,
		},
		{
			slip: "offset taken twice",
			offsetHz: nominalHz,
			words: `the offset of ${khz} kHz was taken twice: the published figure or the set's mode has it already`,
		},
		{
			slip: "offset of the other service",
			offsetHz: otherHz - nominalHz,
			words: `the offset of ${otherHz / 1_000} kHz was taken in place of ${khz} kHz`,
		},
	];
}

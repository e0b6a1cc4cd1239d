import { ASSIGNED_ABOVE_CARRIER_HZ, CHART_AUDIO_CENTRE_HZ, KEYED_AUDIO_CENTRE_HZ } from "@skipwright/rules";
import type { Expectation } from "./expectation.ts";

/** Hz within which an offset is taken for a slip's: a set in order and its sender's tolerance add to it. Own choice. */
const NEAR_HZ = 30;
/** Hz. Digits of a dial that are keyed wrong by one. */
const DIGITS_HZ = [100, 1_000, 10_000];

/** The usual slip that puts a signal so far from its nominal audio, in words; null where none does. */
export function usualSlip({ audioHz, kind }: Pick<Expectation, "audioHz" | "kind">, offsetHz: number): string | null {
	const isNear = (hz: number) => Math.abs(offsetHz - hz) <= NEAR_HZ;
	const centre = kind === "chart" ? CHART_AUDIO_CENTRE_HZ : KEYED_AUDIO_CENTRE_HZ;
	const between = CHART_AUDIO_CENTRE_HZ - KEYED_AUDIO_CENTRE_HZ;
	if (audioHz !== null && isNear(centre)) return `the audio centre of ${centre} Hz was taken off twice`;
	if (audioHz !== null && isNear(-centre)) return `the audio centre of ${centre} Hz was not taken off`;
	if (kind === "chart" && isNear(-between)) return "the 1700 Hz of text and calls was taken off in place of the 1900 Hz of charts";
	if (kind !== "chart" && audioHz !== null && isNear(between)) {
		return "the 1900 Hz of charts was taken off in place of the 1700 Hz of text and calls";
	}
	if (isNear(-ASSIGNED_ABOVE_CARRIER_HZ)) return "the assigned frequency was keyed as the carrier, 1400 Hz too high";
	const digit = DIGITS_HZ.find((hz) => isNear(hz) || isNear(-hz));
	return digit === undefined ? null : `a digit of the dial is wrong by one (${digit} Hz)`;
}

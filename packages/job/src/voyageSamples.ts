import { intermediate } from "@skipwright/sphere";
import { dateOfMs, type IsoDate, type Position } from "@skipwright/units";
import { type Stage, stagesOf, type Voyage } from "./voyage.ts";

/** Where the ship is at one moment, and for how much of the voyage that stands. */
export interface VoyageSample {
	readonly atMs: number;
	/** UTC day of `atMs`. */
	readonly date: IsoDate;
	readonly position: Position;
	/** Name of the stage: "Cape Town to St Helena", "at St Helena". */
	readonly stage: string;
	/** Days of the voyage that the sample stands for. */
	readonly days: number;
}

const MS_PER_DAY = 86_400_000;

/**
 * Dated positions along a voyage: on legs along great circles between the points, at an even speed from point to point; on stays fixed. Each
 * stage is cut into equal parts no longer than `stepDays`, with a sample in the middle of each, so that no stage goes without one and the
 * days add up to the voyage. A voyage that takes no time gets one sample of one day at its first point.
 * @throws RangeError unless `stepDays` is a positive number
 */
export function voyageSamples(voyage: Voyage, stepDays: number): readonly VoyageSample[] {
	if (!(stepDays > 0)) throw new RangeError(`Cannot sample a voyage every ${stepDays} days: expected more than 0`);
	const samples = stagesOf(voyage).flatMap((stage) => samplesOf(stage, stepDays));
	const first = voyage.points[0];
	if (samples.length > 0 || first === undefined) return samples;
	const { arriveMs: atMs, position } = first;
	return [{ atMs, date: dateOfMs(atMs), position, stage: stagesOf(voyage)[0]?.name ?? "", days: 1 }];
}

function samplesOf(stage: Stage, stepDays: number): readonly VoyageSample[] {
	const lengthMs = stage.endMs - stage.startMs;
	const count = Math.ceil(lengthMs / MS_PER_DAY / stepDays);
	return Array.from({ length: count }, (_, i) => {
		const atMs = Math.round(stage.startMs + (lengthMs * (i + 0.5)) / count);
		return { atMs, date: dateOfMs(atMs), position: positionAt(stage, atMs), stage: stage.name, days: lengthMs / MS_PER_DAY / count };
	});
}

function positionAt({ points }: Stage, atMs: number): Position {
	const next = points.findIndex((point) => point.arriveMs > atMs);
	const to = points[next];
	const from = points[next - 1] ?? points[0]!; // a stage has a point
	if (to === undefined || next === 0) return (points.at(-1) ?? from).position;
	const fraction = (atMs - from.departMs) / (to.arriveMs - from.departMs);
	return intermediate(from.position, to.position, Math.min(1, Math.max(0, fraction)));
}

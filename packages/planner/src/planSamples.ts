import { type Voyage, type VoyageSample, voyageSamples } from "@skipwright/job";

/** Days between dated positions that the choice looks at. Own choice: the sun and a yacht move little in two days. */
const STEP_DAYS = 2;
/** A long voyage is looked at in so many steps at most: what is predicted is a month's middle anyway. Own choice. */
const MOST_STEPS = 72;
const MS_PER_DAY = 86_400_000;

/** The dated positions of a voyage that a plan rests on: a hearing worked out beforehand takes the same. */
export function planSamples(voyage: Voyage): readonly VoyageSample[] {
	const { points } = voyage;
	const days = ((points.at(-1)?.departMs ?? 0) - (points[0]?.arriveMs ?? 0)) / MS_PER_DAY;
	return voyageSamples(voyage, Math.max(STEP_DAYS, days / MOST_STEPS));
}

/** So many of them are enough to tell choices of the same worth apart: more only make the proof long. Own choice. */
const MOST_LOW_SKY_SAMPLES = 16;

/** Those of the samples at which a sky with few sunspots is looked at. */
export function lowSkySamples(samples: readonly VoyageSample[]): readonly VoyageSample[] {
	const every = Math.ceil(samples.length / MOST_LOW_SKY_SAMPLES);
	return samples.filter((_, index) => index % every === 0);
}

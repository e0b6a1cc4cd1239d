import type { VoyageSample } from "@skipwright/job";
import { solarZenithDeg, subsolarPoint, ZENITH_DEG } from "@skipwright/sphere";
import { dayStartMs } from "@skipwright/units";
import { HOURS_PER_DAY } from "./reachInk.ts";

const MS_PER_HOUR = 3_600_000;

/** By UTC hour, whether the sun is down aboard in the middle of it on most of these days. */
export function usualNight(samples: readonly VoyageSample[]): readonly boolean[] {
	const days = samples.reduce((sum, sample) => sum + sample.days, 0);
	return Array.from({ length: HOURS_PER_DAY }, (_, hour) => {
		const dark = samples.filter(({ date, position }) => {
			const sun = subsolarPoint(dayStartMs(date) + (hour + 0.5) * MS_PER_HOUR);
			return solarZenithDeg(position, sun) > ZENITH_DEG.sunrise;
		});
		return dark.reduce((sum, sample) => sum + sample.days, 0) > days / 2;
	});
}

/** Hours, `from` to the start of `to`, in which something holds. */
export function hourRunsOf(holds: readonly boolean[]): readonly { readonly from: number; readonly to: number }[] {
	const runs: { from: number; to: number }[] = [];
	for (const [hour, isSo] of holds.entries()) {
		const last = runs.at(-1);
		if (!isSo) continue;
		if (last?.to === hour) last.to = hour + 1;
		else runs.push({ from: hour, to: hour + 1 });
	}
	return runs;
}

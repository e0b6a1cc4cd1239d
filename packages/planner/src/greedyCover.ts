import { fitsRoom, type KindCounts } from "./bankRoom.ts";
import { type CoverItem, type CoverProblem, takesRoom } from "./coverProblem.ts";
import { type CoverScore, scoreOf } from "./coverScore.ts";

/**
 * At each step whatever adds most and finds a place, until nothing adds anything: quick, and where one capacity alone binds never below
 * 1 - 1/e of the best (Nemhauser, Wolsey and Fisher 1978). What is taken together counts as one. Ties fall to the earlier item.
 * @returns numbers of the items chosen beside what is present or must be held, in the order chosen
 */
export function greedyCover(problem: CoverProblem): readonly number[] {
	const { items, room, together = [] } = problem;
	const score = scoreOf(problem, []);
	let counts: KindCounts = countKinds(items.filter((item) => item.isMust && takesRoom(item)));
	let open = unitsOf(items, together);
	const chosen: number[] = [];
	for (;;) {
		const gains = open.map((unit) => ({ unit, gain: gainOf(problem, score, chosen, unit) })).filter(({ gain }) => gain > 0);
		const best = gains.reduce<(typeof gains)[number] | null>((most, one) => (most === null || one.gain > most.gain ? one : most), null);
		if (best === null) return chosen;
		open = gains.flatMap(({ unit }) => (unit === best.unit ? [] : [unit])); // what adds nothing now never will
		const more = countKinds(best.unit.map((index) => items[index]!).filter(takesRoom));
		const filled = { speech: counts.speech + more.speech, timed: counts.timed + more.timed, data: counts.data + more.data };
		if (!fitsRoom(room, filled)) continue;
		counts = filled;
		for (const index of best.unit) score.add(index);
		chosen.push(...best.unit);
	}
}

/** What may be chosen, each alone or with what it is taken together with, in the order of the first. */
function unitsOf(items: readonly CoverItem[], together: readonly (readonly number[])[]): readonly (readonly number[])[] {
	return items.flatMap(({ isPresent, isMust }, index) => {
		if (isPresent || isMust) return [];
		const group = together.find((one) => one.includes(index));
		return group === undefined ? [[index]] : index === Math.min(...group) ? [group] : [];
	});
}

function gainOf(problem: CoverProblem, score: CoverScore, chosen: readonly number[], unit: readonly number[]): number {
	const [only, ...others] = unit;
	if (only === undefined) return 0;
	return others.length === 0 ? score.gain(only) : scoreOf(problem, [...chosen, ...unit]).net - score.net;
}

export function countKinds(items: readonly CoverItem[]): KindCounts {
	const count = (kind: CoverItem["kind"]) => items.filter((item) => item.kind === kind).length;
	return { speech: count("speech"), timed: count("timed"), data: count("data") };
}

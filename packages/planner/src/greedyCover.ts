import { fitsRoom, type KindCounts } from "./bankRoom.ts";
import { type CoverItem, type CoverProblem, takesRoom } from "./coverProblem.ts";
import { scoreOf } from "./coverScore.ts";

/**
 * At each step whatever adds most and finds a place, until nothing adds anything: quick, and where one capacity alone binds never below
 * 1 - 1/e of the best (Nemhauser, Wolsey and Fisher 1978). Ties fall to the earlier item.
 * @returns numbers of the items chosen beside what is present or must be held, in the order chosen
 */
export function greedyCover(problem: CoverProblem): readonly number[] {
	const { items, room } = problem;
	const score = scoreOf(problem, []);
	let counts: KindCounts = countKinds(items.filter((item) => item.isMust && takesRoom(item)));
	let open = items.flatMap(({ isPresent, isMust }, index) => (isPresent || isMust ? [] : [index]));
	const chosen: number[] = [];
	for (;;) {
		const gains = open.map((index) => ({ index, gain: score.gain(index) })).filter(({ gain }) => gain > 0);
		const best = gains.reduce<(typeof gains)[number] | null>((most, one) => (most === null || one.gain > most.gain ? one : most), null);
		if (best === null) return chosen;
		open = gains.flatMap(({ index }) => (index === best.index ? [] : [index])); // what adds nothing now never will
		const item = items[best.index]!;
		const filled = takesRoom(item) ? { ...counts, [item.kind]: counts[item.kind] + 1 } : counts;
		if (!fitsRoom(room, filled)) continue;
		counts = filled;
		score.add(best.index);
		chosen.push(best.index);
	}
}

export function countKinds(items: readonly CoverItem[]): KindCounts {
	const count = (kind: CoverItem["kind"]) => items.filter((item) => item.kind === kind).length;
	return { speech: count("speech"), timed: count("timed"), data: count("data") };
}

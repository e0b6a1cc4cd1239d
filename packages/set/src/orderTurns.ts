import type { Hz } from "@skipwright/units";
import type { Turn } from "./types.ts";

export interface DialRange {
	readonly fromHz: number;
	readonly toHz: number;
}

/**
 * The same clicks in an order that keeps the dial within the range, as near to the order given as that allows; a step may then
 * be taken up twice. Returned as they are where no such order was found. For turns that carry.
 */
export function orderTurns(from: Hz, turns: readonly Turn[], range: DialRange): readonly Turn[] {
	const left = turns.map(({ stepHz, clicks }) => ({ stepHz, clicks }));
	const ordered: { stepHz: Hz; clicks: number }[] = [];
	let dial: number = from;
	for (;;) {
		const pending = left.filter(({ clicks }) => clicks !== 0);
		if (pending.length === 0) return ordered;
		const next = pending.find((turn) => roomFor(turn, dial, range) > 0);
		if (next === undefined) return turns;
		const clicks = Math.sign(next.clicks) * Math.min(Math.abs(next.clicks), roomFor(next, dial, range));
		ordered.push({ stepHz: next.stepHz, clicks });
		next.clicks -= clicks;
		dial += clicks * next.stepHz;
	}
}

/** Clicks in the turn's own direction before the dial would leave the range. */
function roomFor({ stepHz, clicks }: Turn, dial: number, { fromHz, toHz }: DialRange): number {
	return Math.floor((clicks > 0 ? toHz - dial : dial - fromHz) / stepHz);
}

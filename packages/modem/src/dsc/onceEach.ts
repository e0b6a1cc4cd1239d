import type { HeardDsc } from "./heardDsc.ts";

/** A call that waits, in case the same is heard better or again. */
export interface WaitingCall {
	readonly heard: HeardDsc;
	/** Natural logarithm of how much likelier than chance. */
	readonly evidence: number;
	readonly dueS: number;
}

/** Seconds after its end within which an alert that comes again is part of the same attempt. */
export const REPEAT_S = 4;
/** Hz within which two calls at once are one. */
export const SAME_HZ = 200;
/** Least share of symbols that must have been read in both for an alert to be the one before. */
const SHARE_COMPARED = 0.5;

/** One call, one item: the same heard twice at once, worse copies beside a better, and an alert that is sent again. */
export function onceEach(waiting: readonly WaitingCall[], found: WaitingCall): readonly WaitingCall[] {
	const twins = waiting.filter(({ heard }) => isSameSignal(heard, found.heard));
	if (twins.length > 0) return [...waiting.filter((one) => !twins.includes(one)), twins.reduce(better, found)];
	const first = waiting.find(({ heard }) => isRepeat(heard, found.heard));
	if (first === undefined) return [...waiting, found];
	const { heard, evidence, dueS } = better(first, found);
	const { startS, times } = first.heard;
	const whole = { ...heard, startS, endS: found.heard.endS, times: times + 1 };
	return waiting.map((one) => (one === first ? { heard: whole, evidence, dueS: Math.max(dueS, found.dueS) } : one));
}

function isSameSignal(a: HeardDsc, b: HeardDsc): boolean {
	const common = Math.min(a.endS, b.endS) - Math.max(a.startS, b.startS);
	const atOnce = common > 0.5 * Math.min(a.endS - a.startS, b.endS - b.startS);
	const isSame = a.symbols.length === b.symbols.length && a.symbols.every((symbol, i) => symbol === b.symbols[i]);
	return atOnce && (isSame || (Math.abs(a.audioHz - b.audioHz) < SAME_HZ && !(a.ok && b.ok)));
}

/** An alert that follows on the same alert, as far as either could be read. */
function isRepeat(before: HeardDsc, after: HeardDsc): boolean {
	if (before.call?.format !== "distress alert" || after.call?.format !== "distress alert") return false;
	if (Math.abs(after.startS - before.endS) > REPEAT_S || before.isInverted !== after.isInverted) return false;
	const pairs = before.symbols.map((symbol, i) => [symbol, after.symbols[i] ?? null]).filter((pair) => !pair.includes(null));
	return pairs.length >= SHARE_COMPARED * before.symbols.length && pairs.every(([a, b]) => a === b);
}

function better(a: WaitingCall, b: WaitingCall): WaitingCall {
	if (a.heard.ok !== b.heard.ok) return a.heard.ok ? a : b;
	return b.evidence > a.evidence ? b : a;
}

import type { HeardTone } from "../tone/heardTone.ts";
import type { HeardVoice } from "../voice/heardVoice.ts";
import { chartTone } from "./chartTone.ts";
import type { Heard } from "./heard.ts";
import type { KeyedInTurn } from "./keyedInTurn.ts";
import { type Claimant, type KeyedPair, unclaimed } from "./unclaimed.ts";

/** Settles who has a sound that more than one receiver claims. */
export interface Settling {
	/** Takes what receivers have heard by `nowS`; returns what is settled, in order of its start. */
	take(heard: readonly Heard[], nowS: number, isChartUnderWay: boolean): readonly Heard[];
	/** The stream has ended: the rest. */
	end(): readonly Heard[];
}

/**
 * Seconds for which a tone or a voice waits. A chart shows itself as one some 45 s after its start tone, a text its first
 * characters when its phasing is over; both are told later still, and until then a chart under way keeps tones waiting.
 */
const WAIT_S = 90;

/** Seconds for which what was told may still claim a tone: the longest that a tone may come after it, and more. */
const REMEMBERED_S = 180;

/** Seconds within which tones begin that belong together. */
const TOGETHER_S = 0.5;

/** Seconds that two tones must have in common to be tried as one keyed signal, and how many of the loudest are tried with each. */
const LEAST_COMMON_S = 1,
	MOST_PARTNERS = 4;

/** What may be part of something surer. */
type Weak = HeardTone | HeardVoice;

export function createSettling(inTurn: Pick<KeyedInTurn, "isKeyed">): Settling {
	let waiting: readonly Weak[] = [];
	let told: readonly Claimant[] = [];

	/** Pairs of the tones that have just been told with others that sound at the same time. */
	function keyedPairs(fresh: readonly Weak[]): readonly KeyedPair[] {
		const tones = waiting.filter((one) => one.kind === "tone");
		return fresh.flatMap((one) => {
			if (one.kind !== "tone") return [];
			const others = tones.filter((other) => Math.min(one.endS, other.endS) - Math.max(one.startS, other.startS) > LEAST_COMMON_S);
			const loudest = others.toSorted((a, b) => b.snrDb - a.snrDb).slice(0, MOST_PARTNERS);
			return loudest.filter((other) => inTurn.isKeyed(one, other)).map((other) => pairOf(one, other));
		});
	}

	return {
		take(heard, nowS, isChartUnderWay) {
			if (heard.length === 0 && waiting.length === 0) return [];
			const surer = heard.filter((one): one is Exclude<Heard, Weak> => !isWeak(one));
			const weak = heard.filter(isWeak);
			waiting = [...waiting, ...weak];
			if (heard.length > 0) {
				told = told.filter(({ endS }) => nowS - endS < REMEMBERED_S);
				told = [...told, ...surer.map(withoutContents), ...weak.filter((one) => one.kind === "voice"), ...keyedPairs(weak)];
				waiting = waiting.flatMap((weak) => told.reduce<Weak | null>((left, by) => left && unclaimed(left, by), weak) ?? []);
			}
			if (isChartUnderWay) return [...surer].sort(byStart);
			const ready = waiting.filter(({ endS }) => nowS - endS > WAIT_S);
			if (ready.length > 0) waiting = waiting.filter((one) => !ready.includes(one));
			return [...surer, ...withChartTones(ready)].sort(byStart);
		},
		end() {
			const rest = [...withChartTones(waiting)].sort(byStart);
			[waiting, told] = [[], []];
			return rest;
		},
	};
}

function pairOf(a: HeardTone, b: HeardTone): KeyedPair {
	const [startS, endS] = [Math.min(a.startS, b.startS), Math.max(a.endS, b.endS)];
	return { kind: "pair", startS, endS, audioHz: (a.audioHz + b.audioHz) / 2, shiftHz: Math.abs(a.audioHz - b.audioHz) };
}

function isWeak(heard: Heard): heard is Weak {
	return heard.kind === "tone" || heard.kind === "voice";
}

function byStart(a: Heard, b: Heard): number {
	return a.startS - b.startS || a.audioHz - b.audioHz;
}

/** Where and when it was: a chart's picture is not kept. */
function withoutContents(heard: Exclude<Heard, Weak>): Claimant {
	const { kind, startS, endS, audioHz } = heard;
	if (kind === "chart") return { kind, startS, endS, audioHz, whiteHz: heard.whiteHz, blackHz: heard.blackHz };
	return kind === "teletype" ? { kind, startS, endS, audioHz, shiftHz: heard.shiftHz } : { kind, startS, endS, audioHz };
}

/** Tones that begin together and are a chart's start or stop tone as one item, the others as they are. */
function withChartTones(weak: readonly Weak[]): readonly Weak[] {
	let left = weak.filter((one) => one.kind === "tone").sort(byStart);
	const settled: Weak[] = weak.filter((one) => one.kind === "voice");
	while (left.length > 0) {
		const { startS } = left[0]!;
		const together = left.filter((tone) => tone.startS - startS < TOGETHER_S);
		left = left.slice(together.length);
		const one = chartTone(together);
		settled.push(...(one === null ? together : [one]));
	}
	return settled;
}

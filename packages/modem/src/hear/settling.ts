import type { HeardTone } from "../tone/heardTone.ts";
import type { HeardVoice } from "../voice/heardVoice.ts";
import { chartTone } from "./chartTone.ts";
import type { Heard } from "./heard.ts";
import { type Claimant, isClaimed } from "./isClaimed.ts";

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

/** What may be part of something surer. */
type Weak = HeardTone | HeardVoice;

export function createSettling(): Settling {
	let waiting: readonly Weak[] = [];
	let told: readonly Claimant[] = [];

	return {
		take(heard, nowS, isChartUnderWay) {
			if (heard.length === 0 && waiting.length === 0) return [];
			const surer = heard.filter((one): one is Exclude<Heard, Weak> => !isWeak(one));
			waiting = [...waiting, ...heard.filter(isWeak)];
			if (heard.length > 0) {
				told = [...told.filter(({ endS }) => nowS - endS < REMEMBERED_S), ...surer.map(withoutContents)];
				waiting = waiting.filter((weak) => !told.some((by) => isClaimed(weak, by)));
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

import { atan2, log10 } from "@skipwright/units";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { type BitClock, clockError, findClock } from "./bitClock.ts";
import { bitTones } from "./bitTones.ts";
import { envelopeEvidence } from "./envelopeEvidence.ts";
import { createPairSearch } from "./pairSearch.ts";
import { withPhase } from "./phaseTrellis.ts";
import { type ToneSums, toneSums } from "./toneSums.ts";

export interface SoftBits {
	/** Which carrier: a new number for each signal found; bits of one carrier come in order without gaps. */
	readonly carrier: number;
	/** Estimates as of now; the ratio is that in 2700 Hz. */
	readonly centreHz: number;
	readonly uncertaintyHz: number;
	readonly snrDb: number;
	/** Log-likelihood ratio of each bit, positive: the higher tone. */
	readonly softs: Float64Array;
	/** Seconds from the stream's start, middle of each bit. */
	readonly atS: Float64Array;
	/** The carrier has gone; no more bits of it follow. */
	readonly isOver: boolean;
}

export interface FskOptions {
	readonly baud: number;
	readonly shiftHz: number;
	/** Span in which the centre may lie. Default 500 to 2700 Hz. */
	readonly lowestHz?: number;
	readonly highestHz?: number;
}

const DEFAULT_SPAN = { lowestHz: 500, highestHz: 2_700 };
const SNR_BANDWIDTH_HZ = 2_700;
/** Bits worked on at once, and those before and after them that help to estimate clock, centre and levels. */
const SEGMENT_BITS = 64;
const CONTEXT_BITS = 32;
/** Bits in which a new carrier must show itself. */
const FINDING_BITS = 128;
/** Seconds of the past that are kept, so that a carrier is followed back to its start. */
const KEPT_S = 12;
/** What is asked of a new carrier, and of a segment of a known one. */
const NEW = { lead: 0.57, deviations: 5, leastShare: 0.1, mostShift: 60 };
const ALIVE = { lead: 0.6, deviations: 3.5 };
/** Segments without evidence before a carrier is given up. */
const PATIENCE = 5;
/** Hz. Pairs nearer to a live carrier than this are it. */
const SAME_HZ = 130;

/** What a pair found in a pause must share with the carrier before it to be that carrier and no other. */
const SAME = { centreHz: 6, bits: 0.15 };

/** A carrier as far as it has been followed: bit 0 is the next one not handed back yet. */
interface Track {
	readonly number: number;
	centreHz: number;
	clock: BitClock;
	centreWeight: number;
	ebN0: number;
	silent: number;
}

interface Segment {
	readonly softs: Float64Array;
	readonly atS: Float64Array;
	readonly isAlive: boolean;
}

/** Soft bits of synchronous keying of two tones, wherever in the span a pair of them is found. */
export function createFskDemodulator(options: FskOptions): {
	/** Takes a frame of `FRAME_SAMPLES`. */
	frame(samples: Float64Array): readonly SoftBits[];
	end(): readonly SoftBits[];
} {
	const { baud, shiftHz, lowestHz, highestHz } = { ...DEFAULT_SPAN, ...options };
	const nominal = MODEM_RATE_HZ / baud;
	const search = createPairSearch(shiftHz, lowestHz, highestHz);
	const kept = KEPT_S * MODEM_RATE_HZ;
	const past = new Float64Array(2 * kept);
	let pastStart = 0; // sample number of past[0]
	let taken = 0;
	let carriers = 0;
	let tracks: Track[] = [];
	const refused = new Map<number, number>();

	const view = (from: number, to: number) => past.subarray(Math.max(0, from - pastStart), Math.max(0, to - pastStart));
	const sumsOf = (from: number, to: number, centreHz: number) => toneSums(view(from, to), centreHz - shiftHz / 2, centreHz + shiftHz / 2);

	return {
		frame(samples) {
			if (taken - pastStart + FRAME_SAMPLES > past.length) {
				past.copyWithin(0, taken - pastStart - kept, taken - pastStart);
				pastStart = taken - kept;
			}
			past.set(samples, taken - pastStart);
			taken += FRAME_SAMPLES;
			const out: SoftBits[] = [];
			const places = search.frame(samples);
			for (const track of tracks) follow(track, taken, out);
			for (const centreHz of places) look(centreHz, out);
			tracks = tracks.filter(({ silent }) => silent < PATIENCE);
			return out;
		},
		end() {
			const out: SoftBits[] = [];
			for (const track of tracks) {
				follow(track, taken, out);
				while (track.silent < PATIENCE && track.clock.startSample + track.clock.bitSamples < taken) {
					const bits = Math.min(SEGMENT_BITS, Math.floor((taken - track.clock.startSample) / track.clock.bitSamples));
					out.push(handed(track, advance(track, bits), false));
				}
				if (track.silent < PATIENCE)
					out.push(handed(track, { softs: new Float64Array(0), atS: new Float64Array(0), isAlive: false }, true));
			}
			tracks = [];
			return out;
		},
	};

	/** Hands back every segment whose context is complete. */
	function follow(track: Track, until: number, out: SoftBits[]): void {
		while (track.silent < PATIENCE && track.clock.startSample + (SEGMENT_BITS + CONTEXT_BITS + 1) * track.clock.bitSamples < until) {
			const segment = advance(track, SEGMENT_BITS);
			track.silent = segment.isAlive ? 0 : track.silent + 1;
			out.push(handed(track, segment, track.silent >= PATIENCE));
		}
	}

	function handed(track: Track, { softs, atS }: Segment, isOver: boolean): SoftBits {
		return {
			carrier: track.number,
			centreHz: track.centreHz,
			uncertaintyHz: 1 / Math.sqrt(Math.max(track.centreWeight, 1e-6)),
			snrDb: 10 * log10(Math.max(1e-3, (track.ebN0 * baud) / SNR_BANDWIDTH_HZ)),
			softs,
			atS,
			isOver,
		};
	}

	/** Bits of a track from bit `first` on, after clock and centre have been set right by them and their neighbours. */
	function segmentAt(track: Track, first: number, bits: number): Segment {
		const { bitSamples } = track.clock;
		const startSample = track.clock.startSample + first * bitSamples;
		const before = Math.min(CONTEXT_BITS, Math.floor((startSample - pastStart) / bitSamples) - 1);
		const from = Math.max(pastStart, Math.floor(startSample - (before + 0.5) * bitSamples));
		const after = Math.min(CONTEXT_BITS, Math.floor((taken - startSample) / bitSamples) - bits);
		const to = Math.min(taken, Math.ceil(startSample + (bits + after + 0.5) * bitSamples));
		const sums = sumsOf(from, to, track.centreHz);
		const local = { startSample: startSample - from, bitSamples };
		const { lateSamples, deviations } = clockError(sums, local, -before, bits + after, nominal / 8);
		const isClear = deviations > ALIVE.deviations;
		const moved = isClear ? 0.5 * lateSamples : 0;
		const clock = { startSample: local.startSample + moved, bitSamples };
		const tones = bitTones(sums, clock, -before, before + bits + after);
		const evidence = envelopeEvidence(tones);
		const turns = (shiftHz * (clock.startSample - before * bitSamples)) / MODEM_RATE_HZ;
		const { softs } = withPhase(tones, evidence, (shiftHz * bitSamples) / MODEM_RATE_HZ, turns);
		const isAlive = isClear && evidence.lead > ALIVE.lead;
		const middle = softs.slice(before, before + bits);
		const atS = Float64Array.from({ length: bits }, (_, k) => (from + clock.startSample + (k + 0.5) * bitSamples) / MODEM_RATE_HZ);
		if (isAlive) {
			const error = centreError(sums, clock, -before, before + bits + after, evidence.softs);
			track.centreWeight = Math.min(track.centreWeight * 0.9 + 0.4, 4);
			track.centreHz += 0.4 * Math.min(8, Math.max(-8, error));
			const drift = (0.15 * lateSamples) / SEGMENT_BITS;
			const limit = 0.012 * nominal;
			const next = Math.min(nominal + limit, Math.max(nominal - limit, bitSamples + (first < 0 ? -drift : drift)));
			track.clock = { startSample: from + clock.startSample - first * next, bitSamples: next };
			track.ebN0 = evidence.ebN0;
		}
		return { softs: middle, atS, isAlive };
	}

	function advance(track: Track, bits: number): Segment {
		const segment = segmentAt(track, 0, bits);
		const { startSample, bitSamples } = track.clock;
		track.clock = { startSample: startSample + bits * bitSamples, bitSamples };
		return segment;
	}

	/** Looks closely at a place that the search has pointed out. */
	function look(roughHz: number, out: SoftBits[]): void {
		const place = Math.round(roughHz / 50);
		if ((refused.get(place) ?? -1) > taken) return;
		if (tracks.some((track) => Math.abs(track.centreHz - roughHz) < SAME_HZ && track.silent < 1)) return;
		const from = taken - Math.round((FINDING_BITS + 2) * nominal);
		if (from < pastStart) return;
		let centreHz = roughHz;
		let close = closely(from, centreHz);
		for (let round = 0; round < 2; round++) {
			centreHz += close.errorHz;
			close = closely(from, centreHz);
		}
		const { clock, deviations, evidence } = close;
		const highs = evidence.softs.reduce((sum, soft) => sum + (soft > 0 ? 1 : 0), 0) / evidence.softs.length;
		const isNew =
			Math.abs(centreHz - roughHz) < NEW.mostShift &&
			centreHz >= lowestHz &&
			centreHz <= highestHz &&
			evidence.lead > NEW.lead &&
			deviations > NEW.deviations &&
			highs > NEW.leastShare &&
			highs < 1 - NEW.leastShare;
		if (!isNew) {
			refused.set(place, taken + MODEM_RATE_HZ);
			return;
		}
		const rivals = tracks.filter((track) => Math.abs(track.centreHz - centreHz) < SAME_HZ);
		if (rivals.some((track) => track.silent < 1)) return;
		const start = from + clock.startSample;
		if (rivals.some((track) => Math.abs(track.centreHz - centreHz) < SAME.centreHz && bitsApart(track.clock, start) < SAME.bits)) return;
		for (const rival of rivals) {
			rival.silent = PATIENCE;
			out.push(handed(rival, { softs: new Float64Array(0), atS: new Float64Array(0), isAlive: false }, true));
		}
		begin(from, centreHz, clock, evidence.ebN0, Math.max(pastStart, ...rivals.map(({ clock }) => clock.startSample)), out);
	}

	/** Everything from sample `from` on, as bits of a pair at that centre. */
	function closely(from: number, centreHz: number) {
		const sums = sumsOf(from, taken, centreHz);
		const { clock, deviations } = findClock(sums, nominal);
		const count = Math.floor((taken - from - clock.startSample) / clock.bitSamples);
		const evidence = envelopeEvidence(bitTones(sums, clock, 0, count));
		return { clock, deviations, evidence, errorHz: centreError(sums, clock, 0, count, evidence.softs) };
	}

	/** Follows a new carrier back as far as it can be heard, hands that back and keeps the track. */
	function begin(from: number, centreHz: number, clock: BitClock, ebN0: number, notBefore: number, out: SoftBits[]): void {
		carriers++;
		const track: Track = {
			number: carriers,
			centreHz,
			clock: { startSample: from + clock.startSample, bitSamples: clock.bitSamples },
			centreWeight: 0.5,
			ebN0,
			silent: 0,
		};
		const forwards = { ...track };
		const earlier: Segment[] = [];
		let silent = 0;
		while (silent < 2 && track.clock.startSample - SEGMENT_BITS * track.clock.bitSamples > notBefore) {
			const segment = segmentAt(track, -SEGMENT_BITS, SEGMENT_BITS);
			track.clock = { ...track.clock, startSample: track.clock.startSample - SEGMENT_BITS * track.clock.bitSamples };
			earlier.unshift(segment);
			silent = segment.isAlive ? 0 : silent + 1;
		}
		for (const segment of earlier) out.push(handed(forwards, segment, false));
		tracks.push(forwards);
		follow(forwards, taken, out);
	}
}

/** How far a bit border of `clock` lies from that sample, in bits: at most 1/2. */
function bitsApart(clock: BitClock, sample: number): number {
	const bits = (sample - clock.startSample) / clock.bitSamples;
	return Math.abs(bits - Math.round(bits));
}

/** Hz by which the tones lie higher than assumed: how much their phase turns from the first half of each bit to the second. */
function centreError(sums: ToneSums, clock: BitClock, first: number, count: number, softs: Float64Array): number {
	const early = bitTones(sums, clock, first, count, 0, 0.5);
	const late = bitTones(sums, clock, first, count, 0.5, 1);
	let [re, im] = [0, 0];
	for (let k = 0; k < count; k++) {
		const isHigh = softs[k]! > 0;
		const [ar, ai] = isHigh ? [early.highRe[k]!, early.highIm[k]!] : [early.lowRe[k]!, early.lowIm[k]!];
		const [br, bi] = isHigh ? [late.highRe[k]!, late.highIm[k]!] : [late.lowRe[k]!, late.lowIm[k]!];
		re += br * ar + bi * ai;
		im += bi * ar - br * ai;
	}
	const halfBitS = clock.bitSamples / 2 / MODEM_RATE_HZ;
	return atan2(im, re) / (2 * Math.PI * halfBitS);
}

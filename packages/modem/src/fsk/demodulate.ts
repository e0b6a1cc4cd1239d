import { log10, sin } from "@skipwright/units";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { type BitClock, clockError, findClock } from "./bitClock.ts";
import { bitTones } from "./bitTones.ts";
import { type CentreError, centreError } from "./centreError.ts";
import { correctedClock, foundClock, movedClock, type TrackedClock } from "./clockFilter.ts";
import { envelopeEvidence, toneLead } from "./envelopeEvidence.ts";
import { keyingScore } from "./keyingScore.ts";
import { createPairSearch } from "./pairSearch.ts";
import { withPhase } from "./phaseTrellis.ts";
import { createToneSums } from "./toneSums.ts";

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
const SEGMENT_BITS = 96;
const CONTEXT_BITS = 24;
/** Bits in which a new carrier must show itself. */
const FINDING_BITS = 128;
/** Places looked at in a quarter of a second. */
const MOST_LOOKS = 2;
/** How long, and how far around, a place that has been looked at in vain is left alone. */
const REFUSED_S = 1;
const REFUSED_HZ = 40;
/** Looks at a place, each with the centre put right by the one before. */
const ROUNDS = 3;
/** Hz squared in a segment: how much a centre may wander; Hz: most it is moved in one. */
const CENTRE_WANDER = 0.02;
const MOST_STEP_HZ = 8;
/** Greatest error of a bit clock, share of its speed. */
const WIDEST_ERROR = 0.012;
/** Seconds of the past that are kept, so that a carrier is followed back to its start. */
const KEPT_S = 12;
/** What is asked of a new carrier, and of a segment of a known one: deviations of chance, see `keyingScore`. */
const NEW = { score: 6, deviations: 2, leastShare: 0.1, mostShiftHz: 60 };
/** Scores below which a look is broken off: a first one before its centre is put right and after, and one at twice the bits. */
const HOPELESS = { rough: 1, first: 3, second: 4 };
/** Of a known one also: bits of either tone, as a share, and Hz beside chance within which both lie where they are looked for: another's steady tone seems keyed, its bits all alike or far from there. */
const ALIVE = { score: 3, deviations: 1, leastShare: 0.05, mostOffHz: 20 };
/** Deviations beyond which a centre's error was not foreseen: so little is then known of the centre. */
const UNFORESEEN = 3;
/** Deviations by which bit borders stand out in noise, where their place is known and where the best was looked for (measured). */
const CHANCE = { known: 0.6, found: 1.65 };
/** Samples squared: variance of a clock's error times the square of its deviations (measured from 4 to 15 dB of Eb/N0, on the safe side). */
const CLOCK_VARIANCE = 100;
/** Segments without evidence before a carrier is given up. */
const PATIENCE = 4;
/** Shifts. Pairs nearer to a live carrier than this are it, or share a tone with it. */
const APART_SHIFTS = 1.5;

/** What a pair found in a pause must share with the carrier before it to be that carrier and no other. */
const SAME = { centreHz: 6, bits: 0.15 };

/** How much stronger than one tone's edges a pair near a carrier must be. */
const SPLATTER_FACTOR = 4;

/** A carrier as far as it has been followed: bit 0 is the next one not handed back yet. */
interface Track {
	readonly number: number;
	centreHz: number;
	/** Hz squared. */
	centreVariance: number;
	clock: TrackedClock;
	/** Share of the bits whose phase was continuous, lately. */
	continuity: number;
	/** Energy of a bit, as `EnvelopeEvidence` has it, and over the noise density. */
	level: number;
	ebN0: number;
	/** Segments in turn without evidence, and the sample up to which there was. */
	silent: number;
	heardTo: number;
}

/** A place looked at closely. */
interface Close {
	readonly centreHz: number;
	/** Hz squared. */
	readonly variance: number;
	readonly clock: TrackedClock;
	readonly deviations: number;
	readonly score: number;
	/** Share of the bits that are the higher tone. */
	readonly highs: number;
	readonly level: number;
	readonly ebN0: number;
}

interface Segment {
	readonly softs: Float64Array;
	readonly atS: Float64Array;
	readonly isAlive: boolean;
}

const NOTHING: Segment = { softs: new Float64Array(0), atS: new Float64Array(0), isAlive: false };

/** Soft bits of synchronous keying of two tones, wherever in the span a pair of them is found. */
export function createFskDemodulator(options: FskOptions): {
	/** Takes a frame of `FRAME_SAMPLES`. */
	frame(samples: Float64Array): readonly SoftBits[];
	end(): readonly SoftBits[];
} {
	const { baud, shiftHz, lowestHz, highestHz } = { ...DEFAULT_SPAN, ...options };
	const nominal = MODEM_RATE_HZ / baud;
	const apartHz = APART_SHIFTS * shiftHz;
	const h = (Math.PI * shiftHz) / baud;
	const leak = (sin(h) / h) * (sin(h) / h);
	const search = createPairSearch(shiftHz, lowestHz, highestHz);
	const kept = KEPT_S * MODEM_RATE_HZ;
	const past = new Float64Array(2 * kept);
	let pastStart = 0; // sample number of past[0]
	let taken = 0;
	let carriers = 0;
	let tracks: Track[] = [];
	let refused: { readonly hz: number; readonly until: number }[] = [];

	const view = (from: number, to: number) => past.subarray(Math.max(0, from - pastStart), Math.max(0, to - pastStart));
	const toneSums = createToneSums(Math.ceil((2 * FINDING_BITS + 4) * nominal));
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
			for (const track of tracks) follow(track, out);
			let looks = 0;
			for (const centreHz of places) if (looks < MOST_LOOKS && look(centreHz, out)) looks++;
			tracks = tracks.filter(({ silent }) => silent < PATIENCE);
			return out;
		},
		end() {
			const out: SoftBits[] = [];
			for (const track of tracks) {
				follow(track, out);
				while (track.silent < PATIENCE && track.clock.startSample + track.clock.bitSamples < taken) {
					const bits = Math.min(SEGMENT_BITS, Math.floor((taken - track.clock.startSample) / track.clock.bitSamples));
					out.push(handed(track, advance(track, bits), false));
				}
				if (track.silent < PATIENCE) out.push(handed(track, NOTHING, true));
			}
			tracks = [];
			return out;
		},
	};

	/** Hands back every segment whose context is complete. */
	function follow(track: Track, out: SoftBits[]): void {
		while (track.silent < PATIENCE && track.clock.startSample + (SEGMENT_BITS + CONTEXT_BITS + 1) * track.clock.bitSamples < taken) {
			const segment = advance(track, SEGMENT_BITS);
			track.silent = segment.isAlive ? 0 : track.silent + 1;
			if (segment.isAlive) track.heardTo = track.clock.startSample;
			out.push(handed(track, segment, track.silent >= PATIENCE));
		}
	}

	function handed(track: Track, { softs, atS }: Segment, isOver: boolean): SoftBits {
		return {
			carrier: track.number,
			centreHz: track.centreHz,
			uncertaintyHz: Math.sqrt(track.centreVariance),
			snrDb: 10 * log10(Math.max(1e-3, (track.ebN0 * baud) / SNR_BANDWIDTH_HZ)),
			softs,
			atS,
			isOver,
		};
	}

	/**
	 * The `bits` bits of a track that start at its clock, or with a negative number end there; clock and centre are set right by them and
	 * their neighbours, and the clock is left at their far end.
	 */
	function advance(track: Track, bits: number): Segment {
		const wanted = Math.abs(bits);
		const expected = bits < 0 ? movedClock(track.clock, bits) : track.clock;
		const { startSample, bitSamples } = expected;
		const before = Math.min(CONTEXT_BITS, Math.floor((startSample - pastStart) / bitSamples));
		const after = Math.min(CONTEXT_BITS, Math.floor((taken - startSample) / bitSamples) - wanted);
		const from = Math.max(pastStart, Math.floor(startSample - (before + 0.5) * bitSamples));
		const to = Math.min(taken, Math.ceil(startSample + (wanted + after + 0.5) * bitSamples));
		const count = before + wanted + after;
		const sums = sumsOf(from, to, track.centreHz);
		const { lateSamples, deviations } = clockError(
			sums,
			{ startSample: startSample - from, bitSamples },
			-before,
			count - before,
			nominal / 8,
		);
		const middle = (wanted + after - before) / 2;
		const clock = deviations > 1 ? correctedClock(expected, middle, lateSamples, CLOCK_VARIANCE / (deviations * deviations)) : expected;
		const local = { startSample: clock.startSample - from, bitSamples: clock.bitSamples };
		const tones = bitTones(sums, local, -before, count);
		const envelopes = envelopeEvidence(tones, leak);
		const turns = (shiftHz * (local.startSample - before * local.bitSamples)) / MODEM_RATE_HZ;
		const phase = withPhase(tones, envelopes, (shiftHz * local.bitSamples) / MODEM_RATE_HZ, turns);
		const error = centreError(sums, local, -before, envelopes.softs);
		const highs = shareOfHighs(envelopes.softs);
		const isAlive =
			deviations > ALIVE.deviations &&
			keyingScore(toneLead(tones), count, deviations, CHANCE.known) > ALIVE.score &&
			highs > ALIVE.leastShare &&
			highs < 1 - ALIVE.leastShare &&
			Math.abs(error.hz) < ALIVE.mostOffHz + UNFORESEEN * Math.sqrt(error.variance);
		track.clock = bits < 0 ? clock : movedClock(clock, bits);
		if (isAlive) {
			const limit = WIDEST_ERROR * nominal;
			track.clock = { ...track.clock, bitSamples: Math.min(nominal + limit, Math.max(nominal - limit, track.clock.bitSamples)) };
			const speed = MODEM_RATE_HZ / bitSamples;
			const byPhase = { hz: phase.drift * speed, variance: phase.driftVariance * speed * speed };
			correctCentre(track, phase.continuity > 0.9 ? byPhase : error, wanted / count);
			track.continuity += 0.4 * (phase.continuity - track.continuity);
			track.level += 0.4 * (envelopes.level - track.level);
			track.ebN0 += 0.4 * (envelopes.ebN0 - track.ebN0);
		}
		const atS = Float64Array.from({ length: wanted }, (_, k) => (clock.startSample + (k + 0.5) * clock.bitSamples) / MODEM_RATE_HZ);
		return { softs: phase.softs.slice(before, before + wanted), atS, isAlive };
	}

	/** Looks closely at a place that the search has pointed out, unless it is a known carrier's or was refused lately: then false. */
	function look(roughHz: number, out: SoftBits[]): boolean {
		refused = refused.filter(({ until }) => until > taken);
		if (refused.some(({ hz }) => Math.abs(hz - roughHz) < REFUSED_HZ)) return false;
		if (tracks.some((track) => Math.abs(track.centreHz - roughHz) < apartHz && track.silent < 1)) return false;
		if (taken < FINDING_BITS * 1.1 * nominal) return false;
		let close = closely(roughHz, FINDING_BITS, HOPELESS.rough, HOPELESS.first);
		if (close !== null && close.score < NEW.score) close = closely(close.centreHz, 2 * FINDING_BITS, HOPELESS.second, HOPELESS.second);
		if (close === null || !isNew(close, roughHz)) {
			refused.push({ hz: roughHz, until: taken + REFUSED_S * MODEM_RATE_HZ });
			return true;
		}
		const { centreHz, clock } = close;
		const rivals = tracks.filter((track) => Math.abs(track.centreHz - centreHz) < apartHz);
		if (rivals.some((track) => track.silent < 1)) return true;
		if (rivals.some((track) => isSame(track, close))) return true;
		for (const rival of rivals) {
			rival.silent = PATIENCE;
			out.push(handed(rival, NOTHING, true));
		}
		carriers++;
		const track: Track = {
			number: carriers,
			centreHz,
			centreVariance: 4 * close.variance, // the same bits are about to be looked at again
			continuity: 0,
			clock,
			level: close.level,
			ebN0: close.ebN0,
			silent: 0,
			heardTo: taken,
		};
		out.push(...earlier(track, Math.max(pastStart, ...rivals.map((rival) => rival.heardTo - SEGMENT_BITS * nominal))));
		tracks.push(track);
		follow(track, out);
		return true;
	}

	function isNew({ score, deviations, centreHz, highs, level }: Close, roughHz: number): boolean {
		return (
			score > NEW.score &&
			deviations > NEW.deviations &&
			Math.abs(centreHz - roughHz) < NEW.mostShiftHz &&
			centreHz >= lowestHz &&
			centreHz <= highestHz &&
			highs > NEW.leastShare &&
			highs < 1 - NEW.leastShare &&
			!tracks.some((track) => isSplatter(track, centreHz, level, shiftHz))
		);
	}

	/** The last so many bits, as those of a pair near that centre; null before so many were there, and where they do not look like bits: scores below `leastRough` at first, `least` later. */
	function closely(roughHz: number, bits: number, leastRough: number, least: number): Close | null {
		const from = taken - Math.round((bits + 2) * nominal);
		if (from < pastStart) return null;
		let centreHz = roughHz;
		for (let round = 1; ; round++) {
			const sums = sumsOf(from, taken, centreHz);
			const { clock, deviations } = findClock(sums, nominal);
			const count = Math.floor((taken - from - clock.startSample) / clock.bitSamples);
			const tones = bitTones(sums, clock, 0, count);
			const score = keyingScore(toneLead(tones), count, deviations, CHANCE.found);
			if (score < (round === 1 ? leastRough : least)) return null;
			const { softs, level, ebN0 } = envelopeEvidence(tones, leak);
			const error = centreError(sums, clock, 0, softs);
			centreHz += error.hz;
			if (round < ROUNDS) continue;
			return {
				centreHz,
				variance: error.variance,
				clock: foundClock({ startSample: from + clock.startSample, bitSamples: clock.bitSamples }, count),
				deviations,
				score,
				highs: shareOfHighs(softs),
				level,
				ebN0,
			};
		}
	}

	/** Follows a new carrier back as far as it can be heard, and a little further, but not before that sample. */
	function earlier(track: Track, notBefore: number): readonly SoftBits[] {
		const back = { ...track };
		const found: SoftBits[] = [];
		let silent = 0;
		while (silent < 2) {
			const bits = Math.min(SEGMENT_BITS, Math.floor((back.clock.startSample - notBefore) / back.clock.bitSamples));
			if (bits < 1) break;
			const segment = advance(back, -bits);
			found.push(handed(back, segment, false));
			silent = segment.isAlive ? 0 : silent + 1;
		}
		return found.reverse();
	}
}

/** `share` of the error's evidence is new: neighbours are looked at twice. */
function correctCentre(track: Track, { hz, variance }: CentreError, share: number): void {
	const foreseen = track.centreVariance + CENTRE_WANDER;
	const isForeseen = hz * hz < UNFORESEEN * UNFORESEEN * (foreseen + variance / share);
	const before = isForeseen ? foreseen : foreseen + hz * hz;
	const gain = before / (before + variance / share);
	const step = Math.min(MOST_STEP_HZ, Math.max(-MOST_STEP_HZ, hz));
	track.centreHz += gain * step;
	track.centreVariance = (1 - gain) * before + (hz - step) * (hz - step);
}

function shareOfHighs(softs: Float64Array): number {
	return softs.reduce((sum, soft) => sum + (soft > 0 ? 1 : 0), 0) / softs.length;
}

/**
 * Whether a pair may be what the edges of a known carrier's bits spread around it. A sender that switches between two oscillators spreads
 * (baud / pi d)^2 of a bit's energy to d Hz from a tone, both tones together up to four times that; one of continuous phase far less.
 */
function isSplatter(track: Track, centreHz: number, level: number, shiftHz: number): boolean {
	if (track.continuity > 0.9) return false;
	const crossings = (Math.PI * (Math.abs(centreHz - track.centreHz) - shiftHz) * track.clock.bitSamples) / MODEM_RATE_HZ;
	return level < (SPLATTER_FACTOR * track.level) / (crossings * crossings);
}

/** Whether a pair found in a carrier's pause is that carrier: as near in pitch, and in step. */
function isSame(track: Track, pair: Close): boolean {
	return Math.abs(track.centreHz - pair.centreHz) < SAME.centreHz && bitsApart(track.clock, pair.clock.startSample) < SAME.bits;
}

/** How far a bit border of `clock` lies from that sample, in bits: at most 1/2. */
function bitsApart(clock: BitClock, sample: number): number {
	const bits = (sample - clock.startSample) / clock.bitSamples;
	return Math.abs(bits - Math.round(bits));
}

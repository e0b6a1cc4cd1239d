import { log10 } from "@skipwright/units";
import { FRAME_SAMPLES, MODEM_RATE_HZ, type Receiver } from "../receiver.ts";
import { createFrameSpectrum } from "../signal/frameSpectrum.ts";
import { SNR_BANDWIDTH_HZ } from "../signal/noise.ts";
import { type HeardTone, toneSummary } from "./heardTone.ts";
import { measureTrack } from "./measureTrack.ts";
import { createToneTrack, FRAME_S, type ToneTrack } from "./toneTrack.ts";

/** Frames of a spectrum: 0.5 s, bins of 2 Hz; a look every third frame. */
const WINDOW_FRAMES = 16;
const LOOK_FRAMES = 3;
/** Hz. Where tones are looked for. */
const TONES_HZ = { from: 250, to: 3_500 };
/** Power of a bin over the median of those about it from which a tone may be there: 12 dB, which noise reaches in one bin of 60 000. */
const LEAST_POWER = 16;
/** Bins about a tone in which its noise is sought, and those of its own that are left out. */
const NOISE_BINS = { from: 6, to: 60 };
/** Power below a stronger tone's within so many bins that is taken for its keying or hum. */
const SIDEBAND_PART = 1 / 50,
	SIDEBAND_BINS = 25;
/**
 * Power below the strongest tone of the same moment, wherever it lies, that is taken for that tone's distortion or the rounding of samples:
 * 50 dB. Sets and recorders distort by 0.3 % at best; 8-bit samples round 50 dB below full scale, 16-bit ones 60 dB below a tone of 1 %.
 */
const DISTORTION_PART = 1e-5;
/** Hz within which a peak belongs to a track. */
const SAME_HZ = 1.5;
/** Looks in which a tone must have stood out, within the first second and a half; and for how long it may be gone. */
const LEAST_LOOKS = 6;
/** Looks that do where the stream ends on a tone: a recording of a second holds no more. */
const LOOKS_AT_END = 5;
const GONE_FRAMES = 47;
/** Frames kept for what was there before a tone stood out. */
const KEPT_FRAMES = 16;
/** Frames of the longest part: a minute. */
const PART_FRAMES = 1_875;
const MOST_TRACKS = 64;
/** A track that stood out so seldom is given up after so many frames. */
const FEW_LOOKS = 3,
	FEW_GONE_FRAMES = 8;
/** Part of its power that must turn as one tone, and of the time that it must be on. */
const LEAST_COHERENCE = 0.5,
	LEAST_ON = 0.15;
const LEAST_ON_S = 0.5;
/** Largest sample that is believed. Full scale is 1. */
const LARGEST = 100;
/** dB in 2700 Hz. A weaker line is the set's own hum or another's leak sooner than a note to measure. */
const LEAST_SNR_DB = -12;
/** dB. What 16-bit samples can hold. */
const MOST_SNR_DB = 90;

interface Tracked {
	readonly track: ToneTrack;
	looks: number;
	lastFrame: number;
	noise: number;
}

/**
 * Steady and keyed tones, several at once: time signals, carriers, selective calling. A tone counts when it stands out of the noise
 * about it for the better part of a second at one frequency and turns as one tone; what glides or wavers, as speech does, gives nothing.
 */
export function createToneReceiver(): Receiver<HeardTone> {
	const spectrum = createFrameSpectrum(WINDOW_FRAMES);
	const kept: Float64Array[] = [];
	let tracks: Tracked[] = [];
	let frames = 0;

	function keep(samples: Float64Array): Float64Array {
		const frame = kept.length < KEPT_FRAMES ? new Float64Array(FRAME_SAMPLES) : kept.shift()!;
		for (let i = 0; i < FRAME_SAMPLES; i++) frame[i] = Math.max(-LARGEST, Math.min(LARGEST, samples[i]!));
		kept.push(frame);
		return frame;
	}

	function look(power: Float64Array): void {
		for (const { hz, noise } of peaksOf(power, spectrum.binHz)) {
			const known = tracks.find(({ track }) => Math.abs(track.toneHz - hz) < SAME_HZ);
			if (known !== undefined) {
				known.looks++;
				known.lastFrame = frames;
				known.noise += (noise - known.noise) / known.looks;
			} else if (tracks.length < MOST_TRACKS) {
				const track = createToneTrack(hz, frames - kept.length);
				for (const frame of kept) track.frame(frame);
				tracks.push({ track, looks: 1, lastFrame: frames, noise });
			}
		}
	}

	/** What a track has come to, or nothing. */
	function heardOf({ track, looks, noise }: Tracked, leastLooks = LEAST_LOOKS): readonly HeardTone[] {
		if (looks < leastLooks) return [];
		const tone = measureTrack(track, noise);
		if (tone === null || tone.coherence < LEAST_COHERENCE || tone.onRatio < LEAST_ON) return [];
		const onS = (tone.to - tone.from) * tone.onRatio * FRAME_S;
		if (onS < LEAST_ON_S) return [];
		const snrDb = 10 * log10(tone.power / Math.max((noise * SNR_BANDWIDTH_HZ) / (MODEM_RATE_HZ / 2), 1e-30));
		if (snrDb < LEAST_SNR_DB) return [];
		const heard = {
			kind: "tone",
			startS: (track.firstFrame + tone.from) * FRAME_S,
			endS: (track.firstFrame + tone.to) * FRAME_S,
			audioHz: tone.hz,
			uncertaintyHz: tone.uncertaintyHz,
			snrDb: Math.min(MOST_SNR_DB, snrDb),
			onRatio: tone.onRatio,
		} as const;
		return [{ ...heard, summary: toneSummary(heard) }];
	}

	return {
		frame(samples) {
			const frame = keep(samples);
			frames++;
			for (const { track } of tracks) track.frame(frame);
			if (frames % LOOK_FRAMES === 0 && frames >= WINDOW_FRAMES) look(spectrum.frame(frame));
			else spectrum.hold(frame);
			const isOver = ({ track, looks, lastFrame }: Tracked) =>
				frames - lastFrame > (looks < FEW_LOOKS ? FEW_GONE_FRAMES : GONE_FRAMES) || track.re.length >= PART_FRAMES;
			if (!tracks.some(isOver)) return [];
			const over = tracks.filter(isOver);
			tracks = tracks.filter((one) => !isOver(one));
			return over.flatMap((one) => heardOf(one)).sort((a, b) => a.startS - b.startS || a.audioHz - b.audioHz);
		},
		end: () => tracks.flatMap((one) => heardOf(one, LOOKS_AT_END)).sort((a, b) => a.startS - b.startS || a.audioHz - b.audioHz),
	};
}

interface Peak {
	readonly hz: number;
	/** Mean square of a sample of white noise as dense as that about it. */
	readonly noise: number;
	readonly power: number;
}

/** Narrow peaks of a spectrum, strongest first, their frequency by a parabola through the logarithms. */
function peaksOf(power: Float64Array, binHz: number): readonly Peak[] {
	const found: Peak[] = [];
	const [first, last] = [Math.ceil(TONES_HZ.from / binHz), Math.floor(TONES_HZ.to / binHz)];
	for (let bin = first; bin <= last; bin++) {
		const here = power[bin]!;
		if (here <= power[bin - 1]! || here < power[bin + 1]! || here === 0) continue;
		// A tone's own lobe under the Hann window is gone three bins away.
		if (here < LEAST_POWER * Math.max(power[bin - 3]!, power[bin + 3]!)) continue;
		const belowFrom = Math.max(1, bin - NOISE_BINS.to);
		const [belowTo, aboveFrom, aboveTo] = [bin - NOISE_BINS.from, bin + NOISE_BINS.from, bin + NOISE_BINS.to];
		// Whether it stands out of the median is known by counting; only then the median itself is worth its sorting.
		const half = (belowTo - belowFrom + aboveTo - aboveFrom) >> 1;
		const most = here / LEAST_POWER;
		if (countUpTo(most, power, belowFrom, belowTo) + countUpTo(most, power, aboveFrom, aboveTo) <= half) continue;
		let strongest = 0;
		for (let other = Math.max(1, bin - SIDEBAND_BINS); other <= bin + SIDEBAND_BINS && other < power.length; other++)
			strongest = Math.max(strongest, power[other]!);
		if (here < SIDEBAND_PART * strongest) continue;
		const median = Float64Array.of(...power.subarray(belowFrom, belowTo), ...power.subarray(aboveFrom, aboveTo)).sort()[half]!;
		const [a, b, c] = [power[bin - 1]!, here, power[bin + 1]!].map((p) => log10(p + 1e-300)) as [number, number, number];
		found.push({ hz: (bin + (0.5 * (a - c)) / (a - 2 * b + c)) * binHz, noise: median / Math.LN2, power: here });
	}
	found.sort((a, b) => b.power - a.power);
	return found.filter(({ power }) => power >= DISTORTION_PART * found[0]!.power);
}

function countUpTo(most: number, values: Float64Array, from: number, to: number): number {
	let count = 0;
	for (let i = from; i < to; i++) if (values[i]! <= most) count++;
	return count;
}

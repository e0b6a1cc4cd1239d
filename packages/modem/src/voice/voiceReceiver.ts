import { log10 } from "@skipwright/units";
import { FRAME_SAMPLES, MODEM_RATE_HZ, type Receiver } from "../receiver.ts";
import { createFrameSpectrum } from "../signal/frameSpectrum.ts";
import { SNR_BANDWIDTH_HZ } from "../signal/noise.ts";
import type { HeardVoice } from "./heardVoice.ts";
import { createPitchFinder, type Pitch } from "./pitch.ts";

const WINDOW_FRAMES = 2;
/** Hz. Where speech is looked for. */
const BAND_HZ = { from: 150, to: 3_300 };
/** Frames that are judged together, 4 s. */
const BLOCK_FRAMES = 125;
/** The part of the time that a bin is taken to hold noise alone, and what part of noise's mean it is below in that time. */
const QUIET_PART = 0.15;
const QUIET_OF_MEAN = 0.1625; // -ln(1 - 0.15)
/** Power over the noise, in the whole band, from which a frame has a voice in it: 3 dB. */
const LEAST_POWER = 2;
/** A voiced frame repeats so well, and so much better than at other periods. */
const LEAST_HEIGHT = 0.45,
	LEAST_CONTRAST = 0.3;
/** Change of the period from frame to frame in a voice, and frames that such a stretch lasts: a tenth of a second. */
const MOST_GLIDE = 0.12,
	LEAST_RUN = 3;
/** Part of the frames that must be voiced in stretches, and part that must be quiet beside the loudest (10 dB). */
const LEAST_VOICED = 0.12,
	LEAST_QUIET = 0.06,
	QUIET_DB = 10;
/** Middle half of the periods must spread so far, and the steps from frame to frame by so much: keyed tones repeat exactly. */
const LEAST_SPREAD = 0.06,
	LEAST_STEP = 0.004;
/** Hz and part of the power: speech tuned right has most of its power below. */
const LOW_HZ = 1_000,
	LEAST_LOW_PART = 0.25;
const LARGEST = 100;
/** Blocks in the longest item: about a minute. */
const MOST_BLOCKS = 15;
/** dB. What 16-bit samples can hold. */
const MOST_SNR_DB = 90;

/**
 * Says where speech is likely and which band it fills; it decodes nothing. Speech is what repeats at the pitch of a voice, in
 * stretches, its pitch gliding, with pauses between. Conservative: weak speech is passed over sooner than data or noise is taken for it.
 */
export function createVoiceReceiver(): Receiver<HeardVoice> {
	const spectrum = createFrameSpectrum(WINDOW_FRAMES);
	const first = Math.ceil(BAND_HZ.from / spectrum.binHz);
	const bins = Math.floor(BAND_HZ.to / spectrum.binHz) - first + 1;
	const finder = createPitchFinder(WINDOW_FRAMES * FRAME_SAMPLES, first, bins);
	const block = Array.from({ length: BLOCK_FRAMES }, () => new Float64Array(bins));
	const frame = new Float64Array(FRAME_SAMPLES);
	let inBlock = 0;
	let frames = 0;
	let spoken: { readonly startFrame: number; endFrame: number; blocks: number; readonly power: Float64Array; noise: number } | null = null;

	function judge(): readonly HeardVoice[] {
		const rows = block.slice(0, inBlock);
		inBlock = 0;
		const speech = speechIn(rows, finder);
		if (speech === null) return close();
		const endFrame = frames;
		spoken ??= { startFrame: frames - rows.length, endFrame, blocks: 0, power: new Float64Array(bins), noise: 0 };
		spoken.endFrame = endFrame;
		spoken.blocks++;
		spoken.noise += speech.noise;
		for (let bin = 0; bin < bins; bin++) spoken.power[bin]! += speech.power[bin]!;
		return spoken.blocks === MOST_BLOCKS ? close() : [];
	}

	function close(): readonly HeardVoice[] {
		if (spoken === null) return [];
		const { startFrame, endFrame, blocks, power, noise } = spoken;
		spoken = null;
		const all = power.reduce((sum, value) => sum + value, 0);
		const hzAt = (part: number) => {
			let sum = 0;
			for (let bin = 0; bin < bins; bin++) {
				sum += power[bin]!;
				if (sum >= part * all) return (first + bin) * spectrum.binHz;
			}
			return BAND_HZ.to;
		};
		const [lowHz, highHz] = [hzAt(0.01), hzAt(0.99)];
		let low = 0;
		for (let bin = 0; (first + bin) * spectrum.binHz < LOW_HZ; bin++) low += power[bin]!;
		const isOutOfPlace = low / all < LEAST_LOW_PART;
		const noiseIn2700 = ((noise / blocks / bins) * SNR_BANDWIDTH_HZ) / spectrum.binHz;
		const seconds = (count: number) => (count * FRAME_SAMPLES) / MODEM_RATE_HZ;
		const where = isOutOfPlace ? "; its power lies too high: wrong sideband, or far off tune" : "";
		return [
			{
				kind: "voice",
				startS: seconds(startFrame),
				endS: seconds(endFrame),
				audioHz: hzAt(0.5),
				uncertaintyHz: (highHz - lowHz) / 2,
				snrDb: Math.min(MOST_SNR_DB, 10 * log10(all / blocks / Math.max(noiseIn2700, 1e-30))),
				lowHz,
				highHz,
				lowPart: low / all,
				isOutOfPlace,
				summary: `Likely speech, from ${Math.round(lowHz)} to ${Math.round(highHz)} Hz in the audio${where}.`,
			},
		];
	}

	return {
		frame(samples) {
			for (let i = 0; i < FRAME_SAMPLES; i++) frame[i] = Math.max(-LARGEST, Math.min(LARGEST, samples[i]!));
			block[inBlock]!.set(spectrum.frame(frame).subarray(first, first + bins));
			inBlock++;
			frames++;
			return inBlock === BLOCK_FRAMES ? judge() : [];
		},
		end: () => [...(inBlock >= BLOCK_FRAMES / 2 ? judge() : []), ...close()],
	};
}

interface Speech {
	/** Mean power by bin while the voice was on, noise taken off; and mean power of the noise in the band. */
	readonly power: Float64Array;
	readonly noise: number;
}

/** The speech in a block of spectra, or null where there likely is none. */
function speechIn(rows: readonly Float64Array[], finder: { pitch(power: Float64Array): Pitch }): Speech | null {
	const bins = rows[0]!.length;
	const noise = noiseOf(rows);
	const noiseAll = noise.reduce((sum, value) => sum + value, 0);
	const levels = rows.map((row) => row.reduce((sum, value) => sum + value, 0));
	const loudest = levels.toSorted((a, b) => a - b)[Math.floor(0.95 * levels.length)]!;
	const quiet = levels.filter(
		(level) => 10 * log10((level + 1e-30) / (loudest + 1e-30)) < -QUIET_DB || level < LEAST_POWER * noiseAll,
	).length;
	if (loudest < LEAST_POWER * noiseAll || quiet < LEAST_QUIET * rows.length) return null;
	const clean = new Float64Array(bins);
	const periods = rows.map((row, i) => {
		if (levels[i]! < LEAST_POWER * noiseAll || levels[i]! === 0) return null;
		for (let bin = 0; bin < bins; bin++) clean[bin] = Math.max(0, row[bin]! - noise[bin]!);
		const { period, height, valley } = finder.pitch(clean);
		return height > LEAST_HEIGHT && height - valley > LEAST_CONTRAST ? period : null;
	});
	const runs = runsOf(periods).filter((run) => run.length >= LEAST_RUN);
	const voiced = runs.flat();
	if (voiced.length < LEAST_VOICED * rows.length) return null;
	const sorted = voiced.toSorted((a, b) => a - b);
	const at = (part: number) => sorted[Math.floor(part * (sorted.length - 1))]!;
	if ((at(0.75) - at(0.25)) / at(0.5) < LEAST_SPREAD) return null;
	const steps = runs.flatMap((run) => run.slice(1).map((period, i) => Math.abs(period / run[i]! - 1))).sort((a, b) => a - b);
	if (steps[steps.length >> 1]! < LEAST_STEP) return null;
	const power = new Float64Array(bins);
	let on = 0;
	for (const [i, row] of rows.entries()) {
		if (levels[i]! < LEAST_POWER * noiseAll) continue;
		on++;
		for (let bin = 0; bin < bins; bin++) power[bin]! += row[bin]! - noise[bin]!;
	}
	return { power: power.map((sum) => Math.max(0, sum) / on), noise: noiseAll };
}

/** Mean of the noise in each bin: what a bin falls to part of the time. */
function noiseOf(rows: readonly Float64Array[]): Float64Array {
	const column = new Float64Array(rows.length);
	return rows[0]!.map((_, bin) => {
		for (const [i, row] of rows.entries()) column[i] = row[bin]!;
		column.sort();
		return column[Math.floor(QUIET_PART * rows.length)]! / QUIET_OF_MEAN;
	});
}

/** Stretches in which one period follows from the one before. */
function runsOf(periods: readonly (number | null)[]): readonly (readonly number[])[] {
	const runs: number[][] = [];
	let before: number | null = null;
	for (const period of periods) {
		if (period !== null) {
			if (before !== null && Math.abs(period / before - 1) < MOST_GLIDE) runs.at(-1)!.push(period);
			else runs.push([period]);
		}
		before = period;
	}
	return runs;
}

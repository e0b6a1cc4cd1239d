import { createFrameSpectrum } from "../signal/frameSpectrum.ts";

/** Hz. Where tones are looked for, and how far apart a pair's may lie; a little beyond 85 and 850, for a set's and a sender's faults. */
const TONES_HZ = { from: 250, to: 3_350 },
	SHIFT_HZ = { from: 70, to: 900 };
/** Frames in one block of the average, and blocks in it: 8 s in all. */
const BLOCK_FRAMES = 31;
const BLOCKS = 8;
/** Power of a tone over the noise, both over three bins (47 Hz), below which it is not looked at. */
const LEAST_POWER = 1.6;
/** Strongest tones that are paired with one another. */
const TONES = 6;
/** Hz from a tone within which its noise is sought, and closer than which its keying is. */
const NOISE_HZ = { from: 110, to: 450 };

/** Beside a pair, on both sides together: more than half, as one side may lie beyond the edge of the set's filter. */
const BESIDE_QUANTILE = 0.55;

export interface TonePair {
	readonly lowHz: number;
	readonly highHz: number;
}

export interface PairFinder {
	/** Takes a frame; true when a block of the average is complete. */
	frame(samples: Float64Array): boolean;
	/** Pairs of tones that stand out of the average, strongest first, within some hertz. */
	pairs(): readonly TonePair[];
	/** Mean square of a sample of white noise as dense as that about the two tones. */
	noisePower(pair: TonePair): number;
}

/** Averages spectra of 16 Hz over some seconds, and finds what tones stand out. */
export function createPairFinder(): PairFinder {
	const spectrum = createFrameSpectrum(2);
	const { binHz } = spectrum;
	const bins = 257;
	const blocks = Array.from({ length: BLOCKS }, () => new Float64Array(bins));
	const sum = new Float64Array(bins);
	let frames = 0;

	function total(): number {
		sum.fill(0);
		for (const block of blocks) for (let bin = 0; bin < bins; bin++) sum[bin]! += block[bin]!;
		return Math.min(frames, BLOCKS * BLOCK_FRAMES);
	}
	const three = (bin: number) => sum[bin - 1]! + sum[bin]! + sum[bin + 1]!;

	return {
		frame(samples) {
			const block = blocks[Math.floor(frames / BLOCK_FRAMES) % BLOCKS]!;
			if (frames % BLOCK_FRAMES === 0) block.fill(0);
			const power = spectrum.frame(samples);
			for (let bin = 0; bin < bins; bin++) block[bin]! += power[bin]!;
			frames++;
			return frames % BLOCK_FRAMES === 0;
		},
		pairs() {
			total();
			const [first, last] = [Math.ceil(TONES_HZ.from / binHz), Math.floor(TONES_HZ.to / binHz)];
			const tones: { readonly hz: number; readonly power: number }[] = [];
			for (let bin = first; bin <= last; bin++) {
				const power = three(bin);
				if (power < three(bin - 1) || power < three(bin - 2) || power <= three(bin + 1) || power <= three(bin + 2)) continue;
				if (power < LEAST_POWER * 3 * quantile(sum.slice(binAt(bin * binHz - NOISE_HZ.to), binAt(bin * binHz + NOISE_HZ.to)), 0.25))
					continue;
				tones.push({ hz: (bin + (sum[bin + 1]! - sum[bin - 1]!) / power) * binHz, power });
			}
			tones.sort((a, b) => b.power - a.power);
			tones.length = Math.min(tones.length, TONES);
			const found: (TonePair & { readonly power: number })[] = [];
			for (const [i, a] of tones.entries()) {
				for (const b of tones.slice(i + 1)) {
					const [lowHz, highHz] = [Math.min(a.hz, b.hz), Math.max(a.hz, b.hz)];
					if (highHz - lowHz < SHIFT_HZ.from || highHz - lowHz > SHIFT_HZ.to) continue;
					found.push({ lowHz, highHz, power: Math.sqrt(a.power * b.power) });
				}
			}
			return found.sort((a, b) => b.power - a.power);
		},
		noisePower({ lowHz, highHz }) {
			const blocksFrames = total();
			if (blocksFrames === 0) return 0;
			const beside = [
				...sum.slice(binAt(lowHz - NOISE_HZ.to), binAt(lowHz - NOISE_HZ.from)),
				...sum.slice(binAt(highHz + NOISE_HZ.from), binAt(highHz + NOISE_HZ.to)),
			];
			return quantile(beside, BESIDE_QUANTILE) / blocksFrames;
		},
	};

	function binAt(hz: number): number {
		return Math.min(Math.max(2, Math.round(hz / binHz)), bins - 1);
	}
}

function quantile(values: Iterable<number>, part: number): number {
	const sorted = Float64Array.from(values).sort();
	return sorted[Math.floor(sorted.length * part)] ?? 0;
}

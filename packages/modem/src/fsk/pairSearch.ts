import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { createFrameSpectrum } from "../signal/frameSpectrum.ts";

/** Hz. Two frames a spectrum. */
const BIN_HZ = MODEM_RATE_HZ / (2 * FRAME_SAMPLES);
/** Frames in one block of the average, and blocks in it: about a second in all. */
const BLOCK_FRAMES = 8;
const BLOCKS = 4;
/** Bins on either side that are summed for one tone: keying at 100 Bd spreads it about so far. */
const REACH_BINS = 2;
/** Power of each tone over the floor below which a pair is not looked at. */
const LEAST_POWER = 1.35;
/** How far a tone must stand over what the keying of others may spread to its place. */
const SKIRT_FACTOR = 2;
/** Shifts. Only the strongest pair within this distance is looked at: others share a tone with it. */
const APART_SHIFTS = 1.5;

/** Finds where in the spectrum a pair of keyed tones may lie: cheap, and wrong often enough that each place must be looked at closely. */
export function createPairSearch(shiftHz: number, lowestHz: number, highestHz: number) {
	const spectrum = createFrameSpectrum(2);
	const bins = Math.floor(MODEM_RATE_HZ / 2 / BIN_HZ);
	const blocks = Array.from({ length: BLOCKS }, () => new Float64Array(bins));
	let frames = 0;

	return {
		/** Takes a frame; returns centres in Hz, strongest first, when a block is complete. */
		frame(samples: Float64Array): readonly number[] {
			const power = spectrum.frame(samples);
			const block = blocks[Math.floor(frames / BLOCK_FRAMES) % BLOCKS]!;
			if (frames % BLOCK_FRAMES === 0) block.fill(0);
			for (let i = 0; i < bins; i++) block[i]! += power[i]!;
			frames++;
			return frames % BLOCK_FRAMES === 0 ? places() : [];
		},
	};

	function places(): readonly number[] {
		const sum = new Float64Array(bins);
		for (const block of blocks) for (let i = 0; i < bins; i++) sum[i]! += block[i]!;
		const power = new Float64Array(bins);
		for (let i = REACH_BINS; i < bins - REACH_BINS; i++) {
			for (let j = i - REACH_BINS; j <= i + REACH_BINS; j++) power[i]! += sum[j]!;
		}
		const half = shiftHz / 2 / BIN_HZ;
		const from = Math.max(REACH_BINS, Math.floor((lowestHz - shiftHz) / BIN_HZ));
		const to = Math.min(bins - REACH_BINS, Math.ceil((highestHz + shiftHz) / BIN_HZ));
		const floor = power.slice(from, to).sort()[Math.floor((to - from) / 2)]!;
		const least = LEAST_POWER * floor;
		const found: Place[] = [];
		for (let i = Math.ceil(lowestHz / BIN_HZ); i * BIN_HZ <= highestHz; i++) {
			const [low, high] = [at(power, i - half), at(power, i + half)];
			if (low > least && high > least) found.push({ bin: i, low, high });
		}
		found.sort((a, b) => score(b) - score(a));
		const kept: number[] = [];
		for (const { bin, low, high } of found) {
			if (kept.some((other) => Math.abs(other - bin) * BIN_HZ <= APART_SHIFTS * shiftHz)) continue;
			if (Math.min(low, high) > SKIRT_FACTOR * Math.max(skirtAt(power, bin - half), skirtAt(power, bin + half))) kept.push(bin);
		}
		return kept.map((bin) => bin * BIN_HZ);
	}
}

interface Place {
	readonly bin: number;
	/** Power at either tone. */
	readonly low: number;
	readonly high: number;
}

/** The power of both tones, less for a pair that is uneven: that would be a tone of another pair and no tone. */
function score({ low, high }: Place): number {
	const uneven = Math.sqrt(low) - Math.sqrt(high);
	return low + high - 2 * uneven * uneven;
}

/** Greatest power that the keying of any other tone spreads to bin `index`: T sinc(d T)^2 at its crests, for bits of 10 ms. */
function skirtAt(power: Float64Array, index: number): number {
	let most = 0;
	for (let j = 0; j < power.length; j++) {
		const crossings = (Math.PI * (j - index) * BIN_HZ) / 100;
		if (Math.abs(crossings) > 2 * Math.PI) most = Math.max(most, power[j]! / (crossings * crossings));
	}
	return most;
}

function at(values: Float64Array, index: number): number {
	const below = Math.floor(index);
	const part = index - below;
	return (values[below] ?? 0) * (1 - part) + (values[below + 1] ?? 0) * part;
}

import { logBesselI0 } from "../fsk/logBessel.ts";
import { CELL_MASK, CELL_SAMPLES, CELLS_PER_FRAME, type ToneCells } from "./toneCells.ts";

/**
 * Elements of a tone over which its level is followed: 3 costs 0.1 dB in noise alone beside 8, and halves the errors where fades
 * last half a second.
 */
const LEVEL_ELEMENTS = 3;
/** Mean square over all windows in which a tone leads, part of that of a full element: windows that straddle a change hold less. */
const STRADDLED = 0.8;
/**
 * Power of a tone over noise, by cell of the element, beyond which nobody is surer (20 dB in 20 ms): echoes, hum and what one tone
 * leaves in the other's window are not in the noise.
 */
const SUREST_PER_CELL = 2.5;

/** ln I0(x) for x = 0, 1/8, ... 256: a straight line between two of them is within 0.001, and quicker than the function. */
const TABLE_STEPS = 8,
	TABLE_TO = 256;
const TABLE = Float64Array.from({ length: TABLE_TO * TABLE_STEPS + 2 }, (_, i) => logBesselI0(i / TABLE_STEPS));

/** One of the two tones over a sliding element. */
export interface ElementLevel {
	/** Log likelihood, nats, against noise alone, of this tone over the element that ends with each cell of the frame. Used again. */
	readonly nats: Float64Array;
	/** Power of the tone over the noise in an element (Es/N0, a plain ratio). */
	ratio: number;
}

interface Following extends ElementLevel {
	readonly square: Float64Array;
	level: number;
	leadingCells: number;
}

export interface ElementLevels {
	readonly low: ElementLevel;
	readonly high: ElementLevel;
	/**
	 * Takes the frame that both tones' cells end with. `noisePower` is the mean square of a sample of white noise as dense as that
	 * about the tones.
	 */
	frame(lowCells: ToneCells, highCells: ToneCells, noisePower: number): void;
}

/**
 * Correlates two tones over a sliding element and follows the level of each, so that a tone that fades keeps its say:
 * the envelope R of an element says ln I0(2 A R / N) - A^2 / N, A the level of its tone and N the noise (Rice against Rayleigh).
 */
export function createElementLevels(elementCells: number): ElementLevels {
	const create = (): Following => ({
		nats: new Float64Array(CELLS_PER_FRAME),
		square: new Float64Array(CELLS_PER_FRAME),
		ratio: 0,
		level: 0,
		leadingCells: 0,
	});
	const [low, high] = [create(), create()];
	const slowest = 1 / (LEVEL_ELEMENTS * elementCells);
	let done = 0;

	/** Sums anew for each frame, so that no rounding of an old loud sound stays behind. */
	function slide(square: Float64Array, { re, im }: ToneCells): void {
		let sumRe = 0;
		let sumIm = 0;
		for (let cell = done - elementCells; cell < done; cell++) {
			sumRe += re[cell & CELL_MASK]!;
			sumIm += im[cell & CELL_MASK]!;
		}
		for (let i = 0; i < CELLS_PER_FRAME; i++) {
			const now = (done + i) & CELL_MASK;
			const old = (done + i - elementCells) & CELL_MASK;
			sumRe += re[now]! - re[old]!;
			sumIm += im[now]! - im[old]!;
			square[i] = sumRe * sumRe + sumIm * sumIm;
		}
	}
	function follow(tone: Following, square: number, noise: number): void {
		const rate = Math.max(slowest, 1 / (1 + tone.leadingCells++));
		tone.level += rate * (Math.max(0, square / STRADDLED - noise) - tone.level);
	}
	function natsOf(level: number, square: number, floor: number): number {
		return tabled((2 * Math.sqrt(level * square)) / floor) - level / floor;
	}

	return {
		low,
		high,
		frame(lowCells, highCells, noisePower) {
			slide(low.square, lowCells);
			slide(high.square, highCells);
			done += CELLS_PER_FRAME;
			const noise = Math.max(noisePower * elementCells * CELL_SAMPLES, 1e-30);
			for (let i = 0; i < CELLS_PER_FRAME; i++) {
				const lowSquare = low.square[i]!;
				const highSquare = high.square[i]!;
				const floor = Math.max(noise, Math.max(low.level, high.level) / (SUREST_PER_CELL * elementCells));
				low.nats[i] = natsOf(low.level, lowSquare, floor);
				high.nats[i] = natsOf(high.level, highSquare, floor);
				if (lowSquare > highSquare) follow(low, lowSquare, noise);
				else follow(high, highSquare, noise);
			}
			low.ratio = low.level / noise;
			high.ratio = high.level / noise;
		},
	};
}

function tabled(x: number): number {
	if (!(x < TABLE_TO)) return logBesselI0(x);
	const place = x * TABLE_STEPS;
	const at = Math.floor(place);
	const here = TABLE[at]!;
	return here + (place - at) * (TABLE[at + 1]! - here);
}

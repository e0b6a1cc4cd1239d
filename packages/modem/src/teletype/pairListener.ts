import { createElementLevels, type ElementLevels } from "./elementLevels.ts";
import type { TonePair } from "./findPairs.ts";
import { createFraming, type Framing } from "./framing.ts";
import type { Sense } from "./makeTeletype.ts";
import { type MeasuredCharacter, measureCharacter } from "./measureCharacter.ts";
import { createStartStopPath, type StartStopPath } from "./startStopPath.ts";
import { exactBaud, type TeletypeBaud } from "./teletypeBaud.ts";
import { createToneCells, type ToneCells } from "./toneCells.ts";

const BAUDS: readonly TeletypeBaud[] = [45.45, 50, 75];
/**
 * Bits of proof from which a pair is a teletype: about 20 characters of a clear text. Ten minutes of random keying reached 16 at the
 * most.
 */
const LOCK_BITS = 20;
/** Power of each tone over the noise in an element, a plain ratio, below which it is not there: noise alone gives up to 1. */
const LEAST_RATIO = 2;
/** Characters kept of a reading that has not proved itself yet. */
const MOST_PENDING = 400;

/** One way to read a pair of tones. */
export interface Reading {
	readonly baud: TeletypeBaud;
	readonly sense: Sense;
	readonly levels: ElementLevels;
	readonly path: StartStopPath;
	readonly framing: Framing;
	/** Characters that belong together so far. */
	readonly pending: MeasuredCharacter[];
}

export interface PairListener {
	readonly pair: TonePair;
	readonly low: ToneCells;
	readonly high: ToneCells;
	/** Takes a frame, and the mean square of a sample of noise as dense as that about the tones. */
	frame(samples: Float64Array, noisePower: number): void;
	/** No more frames come: settles the last characters. */
	finish(): void;
	/** The reading that has proved itself, if any. */
	proved(): Reading | null;
}

/** Reads a pair of tones at every speed and in both senses until one of them proves itself by its starts and stops. */
export function createPairListener(pair: TonePair): PairListener {
	const [low, high] = [createToneCells(pair.lowHz), createToneCells(pair.highHz)];
	const groups = BAUDS.map((baud) => {
		const paths = [createStartStopPath(exactBaud(baud)), createStartStopPath(exactBaud(baud))] as const;
		const levels = createElementLevels(paths[0].elementCells);
		const readings = (["mark low", "mark high"] as const).map(
			(sense, i): Reading => ({ baud, sense, levels, path: paths[i]!, framing: createFraming(), pending: [] }),
		);
		return { levels, readings };
	});
	const readings = groups.flatMap((group) => group.readings);
	return {
		pair,
		low,
		high,
		frame(samples, noisePower) {
			low.frame(samples);
			high.frame(samples);
			for (const { levels, readings } of groups) {
				levels.frame(low, high, noisePower);
				for (const reading of readings) {
					pushLevels(reading);
					for (const character of reading.path.settle()) take(reading, measureCharacter(character, reading, low, high));
				}
			}
		},
		finish() {
			for (const reading of readings)
				for (const character of reading.path.finish()) take(reading, measureCharacter(character, reading, low, high));
		},
		proved() {
			// The likeliest course of all: other speeds can make sense of parts of a signal, as 75 baud of RYRY at 50.
			const likeliest = readings.reduce((a, b) => (b.path.score() > a.path.score() ? b : a));
			const { framing, levels } = likeliest;
			const isThere = levels.low.ratio > LEAST_RATIO && levels.high.ratio > LEAST_RATIO;
			return isThere && framing.proof().bits >= LOCK_BITS ? likeliest : null;
		},
	};
}

function take({ framing, pending }: Reading, character: MeasuredCharacter): void {
	framing.add(character);
	if (framing.belonging().bits === 0) pending.length = 0;
	else pending.push(character);
	if (pending.length > MOST_PENDING) pending.shift();
}

/** Gives the levels of a frame to the path, mark and space as the sense has them. */
export function pushLevels({ levels: { low, high }, path, sense }: Reading): void {
	if (sense === "mark low") path.push(low.nats, high.nats);
	else path.push(high.nats, low.nats);
}

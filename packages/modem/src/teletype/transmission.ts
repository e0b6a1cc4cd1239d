import { log10 } from "@skipwright/units";
import { SNR_BANDWIDTH_HZ } from "../signal/noise.ts";
import type { TonePair } from "./findPairs.ts";
import { isThere } from "./framing.ts";
import type { HeardTeletype } from "./heardTeletype.ts";
import { createIta2Printer, LOST_CODE } from "./ita2.ts";
import { createMeanReading } from "./meanReading.ts";
import { type MeasuredCharacter, measureCharacter } from "./measureCharacter.ts";
import { type PairListener, pushLevels, type Reading } from "./pairListener.ts";
import type { PathCharacter, StartStopPath } from "./startStopPath.ts";
import { CELLS_PER_FRAME, CELLS_PER_SECOND } from "./toneCells.ts";

/** A part is given out at the first line's end after so many characters, and at the latest after so many. */
const PART_CHARACTERS = 1_000,
	LONGEST_PART = 1_500;
/** Nats: odds of seven to one against a start or stop mark the character as lost. */
const BROKEN_NATS = -2;
/** How likely a first character and its start must be, as part of the mean of all. */
const FIRST_PART = 0.2;
/** Bits of score lost since the last good character that end a transmission: some 20 characters that are none. */
const OVER_BITS = 40;
/** The stronger tone below this ratio to the noise in an element, on the mean of a second, for so long: the sender has gone. */
const GONE_RATIO = 2,
	STRONG_RATIO = 10,
	STRENGTH_FRAMES = 31,
	GONE_CELLS = 6 * CELLS_PER_SECOND;
/** Rest for so long ends a transmission. */
const LONGEST_REST_CELLS = 60 * CELLS_PER_SECOND;
/** Characters after which the tones are looked at again, and by how many hertz they must be off to be followed. */
const RETUNE_CHARACTERS = 32,
	RETUNE_HZ = 1.5;

/** Characters of doubt that are kept at most: idle patterns neither add to the score nor take from it. */
const MOST_DOUBTFUL = 200;
/** Hz, one sigma. What no averaging takes away: the tones' mirror images in short windows, and what one tone leaves in the other's. */
const SYSTEMATIC_HZ = 0.15;
/** dB. What 16-bit samples can hold; made signals have no noise at all. */
const MOST_SNR_DB = 90;

/** A teletype that has proved itself, from its first character to its last. */
export interface Transmission {
	pair(): TonePair;
	/** Takes a frame, and the mean square of a sample of noise as dense as that about the tones; returns parts that are full. */
	frame(samples: Float64Array, noisePower: number): readonly HeardTeletype[];
	/** It is over: `end` has the rest. */
	isOver(): boolean;
	/** Frames since its last character that counts. */
	restFrames(): number;
	end(): readonly HeardTeletype[];
}

/** Goes on with a reading that has proved itself; `originS` is the time of its first cell. */
export function createTransmission({ low, high }: PairListener, reading: Reading, originS: number): Transmission {
	const { levels, path, framing } = reading;
	const print = createIta2Printer();
	/** Characters since the score was highest: they count once it is so again. */
	let doubtful: MeasuredCharacter[] = [];
	let part = createPart();
	let parts = 0;
	let full: HeardTeletype[] = [];
	let cells = 0; // since this began
	let [presentCell, characterCell] = [0, 0];
	let fallenBits = 0;
	let strength = STRONG_RATIO;
	let tuning = { low: createMeanReading(), high: createMeanReading(), count: 0 };

	function accept(characters: readonly MeasuredCharacter[]): void {
		for (const character of characters) {
			const { startNats, stopNats, code } = character;
			const isLost = startNats < BROKEN_NATS || stopNats < BROKEN_NATS || !isThere(character);
			const printed = print(isLost ? LOST_CODE : code);
			part.add(character, printed, isLost);
			if (part.characters() >= LONGEST_PART || (part.characters() >= PART_CHARACTERS && printed === "\n")) close(true);
		}
	}
	function close(continues: boolean): void {
		const { baud, sense } = reading;
		const item = { ...part.item(originS, path), part: ++parts, continues, baud, sense };
		full.push({ ...item, summary: summaryOf(item) });
		part = createPart();
	}
	function given(): readonly HeardTeletype[] {
		const items = full;
		full = [];
		return items;
	}
	function follow(character: MeasuredCharacter): void {
		tuning.low.add(character.low);
		tuning.high.add(character.high);
		if (++tuning.count < RETUNE_CHARACTERS) return;
		for (const [tone, mean] of [[low, tuning.low] as const, [high, tuning.high] as const]) {
			if (Math.abs(mean.hz() - tone.toneHz()) > RETUNE_HZ) tone.retune(mean.hz());
		}
		tuning = { low: createMeanReading(), high: createMeanReading(), count: 0 };
	}
	/**
	 * A tone has stood over the noise for about a second, and is there in this frame: in silence what was there last would do so for
	 * ever.
	 */
	function isPresent(): boolean {
		const { low, high } = levels;
		strength += (Math.min(STRONG_RATIO, Math.max(low.ratio, high.ratio)) - strength) / STRENGTH_FRAMES;
		let sum = 0;
		for (let i = 0; i < CELLS_PER_FRAME; i++) sum += Math.max(low.nats[i]!, high.nats[i]!);
		return strength > GONE_RATIO && sum > 0;
	}
	function take(characters: readonly PathCharacter[]): void {
		for (const character of characters) {
			const measured = measureCharacter(character, reading, low, high);
			doubtful.push(measured);
			framing.add(measured);
			const { bits, highestBits } = framing.belonging();
			fallenBits = bits === 0 ? Number.POSITIVE_INFINITY : highestBits - bits;
			if (fallenBits === 0 || doubtful.length > MOST_DOUBTFUL) {
				accept(doubtful);
				characterCell = cells;
				doubtful = [];
			}
			follow(measured);
		}
	}
	accept(withoutNoise(reading.pending));

	return {
		pair: () => ({ lowHz: low.toneHz(), highHz: high.toneHz() }),
		frame(samples, noisePower) {
			cells += CELLS_PER_FRAME;
			low.frame(samples);
			high.frame(samples);
			levels.frame(low, high, noisePower);
			if (isPresent()) presentCell = cells;
			pushLevels(reading);
			take(path.settle());
			return given();
		},
		restFrames: () => (cells - characterCell) / CELLS_PER_FRAME,
		isOver: () => fallenBits > OVER_BITS || cells - presentCell > GONE_CELLS || cells - characterCell > LONGEST_REST_CELLS,
		end() {
			take(path.finish());
			if (part.characters() > 0) close(false);
			return given();
		},
	};
}

/** Leaves out, at the beginning, what noise and the first of the mark have made of themselves. */
function withoutNoise(characters: readonly MeasuredCharacter[]): readonly MeasuredCharacter[] {
	const mean = (of: (character: MeasuredCharacter) => number) => characters.reduce((sum, one) => sum + of(one), 0) / characters.length;
	const [least, leastStart] = [FIRST_PART * mean(({ nats }) => nats), FIRST_PART * mean(({ startNats }) => startNats)];
	return characters.slice(
		Math.max(
			0,
			characters.findIndex(({ startNats, nats }) => startNats > leastStart && nats > least),
		),
	);
}

function createPart() {
	const low = createMeanReading();
	const high = createMeanReading();
	let text = "";
	let [characters, lostCharacters, ratios] = [0, 0, 0];
	let [firstCell, lastCell] = [0, 0];
	return {
		characters: () => characters,
		add(character: MeasuredCharacter, printed: string, isLost: boolean): void {
			if (characters++ === 0) firstCell = character.startCell;
			lastCell = character.startCell;
			text += printed;
			ratios += character.ratio;
			if (isLost) lostCharacters++;
			low.add(character.low);
			high.add(character.high);
		},
		item(
			originS: number,
			{ elementCells, characterCells }: StartStopPath,
		): Omit<HeardTeletype, "part" | "continues" | "baud" | "sense" | "summary"> {
			const perElementDb = 10 * log10(ratios / characters);
			const [lowHz, highHz] = [low.hz(), high.hz()];
			const [lowOff, highOff] = [low.uncertaintyHz(), high.uncertaintyHz()];
			return {
				kind: "teletype",
				startS: originS + firstCell / CELLS_PER_SECOND,
				endS: originS + (lastCell + characterCells) / CELLS_PER_SECOND,
				audioHz: (lowHz + highHz) / 2,
				uncertaintyHz: Math.sqrt((lowOff * lowOff + highOff * highOff) / 4 + SYSTEMATIC_HZ * SYSTEMATIC_HZ),
				snrDb: Math.min(MOST_SNR_DB, perElementDb + 10 * log10(CELLS_PER_SECOND / elementCells / SNR_BANDWIDTH_HZ)),
				text,
				shiftHz: highHz - lowHz,
				characters,
				lostCharacters,
				errorRatio: lostCharacters / characters,
			};
		},
	};
}

function summaryOf({ baud, shiftHz, sense, characters, lostCharacters, part, continues }: Omit<HeardTeletype, "summary">): string {
	const tone = sense === "mark low" ? "lower" : "higher";
	const lost = lostCharacters === 0 ? "none lost" : `${lostCharacters} lost`;
	const which = part > 1 || continues ? `, part ${part}` : "";
	return `Teletype at ${baud} baud, shift ${Math.round(shiftHz)} Hz, resting on the ${tone} tone${which}: ${characters} characters, ${lost}.`;
}

import type { Bench } from "../../../../tools/bench-types.ts";
import { measure } from "../../../../tools/measure.ts";
import { type CharacterErrors, type CharacterReceivers, characterErrors } from "../../truth/characterErrors.ts";
import { textbookSofts } from "../../truth/textbookBits.ts";
import { createFskDemodulator } from "../fsk/demodulate.ts";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { HF_CHANNELS, throughHfChannel } from "../signal/hfChannel.ts";
import { joined, meanPower, silence } from "../signal/join.ts";
import { withNoiseAtEbN0 } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { codesOfText } from "./codesOfText.ts";
import { collectiveBits } from "./collective.ts";
import { makeText } from "./makeText.ts";
import { createTextReceiver } from "./textReceiver.ts";
import { TEXT_BAUD, TEXT_SHIFT_HZ } from "./textSignal.ts";

const PHASING_PAIRS = 16;
const BEFORE_S = 1;
const ONE_PERCENT = 0.01;

/** 600 characters without shifts, by chance. */
function textBy(seed: number): string {
	const random = prng(seed);
	return Array.from({ length: 600 }, () => "ABCDEFGHIJKLMNOPQRSTUVWXYZ "[Math.floor(27 * random())]).join("");
}

function textbook(ebN0Db: number, seed: number): CharacterReceivers {
	const text = textBy(seed);
	return characterErrors(textbookSofts([...collectiveBits(text)], ebN0Db, seed), codesOfText(text), PHASING_PAIRS);
}

/** The whole way by sound; bits that the demodulator missed count as not heard. */
function bySound(ebN0Db: number, seed: number, channel?: { readonly delayS: number; readonly spreadHz: number }): CharacterReceivers {
	const text = textBy(seed);
	const random = prng(seed + 1_000);
	const made = joined(silence(BEFORE_S), makeText(text, { centreHz: 1_700 + ((seed * 37) % 121) - 60 }), silence(1));
	const signal = channel === undefined ? made : throughHfChannel(made, channel, random);
	const audio = withNoiseAtEbN0(signal, ebN0Db, { random, signalPower: 0.125, bitsPerSecond: TEXT_BAUD });
	const demodulator = createFskDemodulator({ baud: TEXT_BAUD, shiftHz: TEXT_SHIFT_HZ });
	const softs = new Float64Array(collectiveBits(text).length);
	for (const carrier of [...framesOf(audio).flatMap((frame) => demodulator.frame(frame)), ...demodulator.end()]) {
		for (const [i, soft] of carrier.softs.entries()) {
			const bit = Math.floor((carrier.atS[i]! - BEFORE_S) * TEXT_BAUD);
			if (bit >= 0 && bit < softs.length) softs[bit] = soft;
		}
	}
	return characterErrors(softs, codesOfText(text), PHASING_PAIRS);
}

function framesOf(audio: Float64Array): readonly Float64Array[] {
	const frames = Math.floor(audio.length / FRAME_SAMPLES);
	return Array.from({ length: frames }, (_, i) => audio.subarray(i * FRAME_SAMPLES, (i + 1) * FRAME_SAMPLES));
}

/** Lost and wrong together, mean of `texts` texts, for each receiver. */
function errorsOf(receive: (seed: number) => CharacterReceivers, texts: number) {
	const runs = Array.from({ length: texts }, (_, i) => receive(i + 1));
	const mean = (pick: (run: CharacterReceivers) => CharacterErrors) => ({
		all: runs.reduce((sum, run) => sum + pick(run).lost + pick(run).wrong, 0) / texts,
		wrong: runs.reduce((sum, run) => sum + pick(run).wrong, 0) / texts,
	});
	return [mean(({ firstCopy }) => firstCopy), mean(({ eitherCopy }) => eitherCopy), mean(({ together }) => together)] as const;
}

const percent = (share: number) => `${(100 * share).toFixed(2).padStart(6)} %`;

/** Prints a row for each level; returns the level at which each receiver's errors fall to 1 %, dB, by a straight line of the logarithm. */
function printErrors(
	title: string,
	levelsDb: readonly number[],
	texts: number,
	receive: (db: number, seed: number) => CharacterReceivers,
): void {
	console.log(`\n${title}\n  Eb/N0   first copy   either copy   both together   of it wrong`);
	const rows = levelsDb.map((db) => ({ db, errors: errorsOf((seed) => receive(db, seed), texts) }));
	for (const { db, errors } of rows) {
		const [first, either, together] = errors.map(({ all }) => percent(all));
		console.log(`  ${db.toFixed(1).padStart(4)}    ${first}     ${either}      ${together}        ${percent(errors[2].wrong)}`);
	}
	const crossings = ([0, 1, 2] as const).map((which) => {
		const after = rows.findIndex(({ errors }) => errors[which].all < ONE_PERCENT);
		const [above, below] = [rows[after - 1], rows[after]];
		if (above === undefined || below === undefined) return after === 0 ? `under ${levelsDb[0]}` : `over ${levelsDb.at(-1)}`;
		const [from, to] = [Math.log(above.errors[which].all), Math.log(Math.max(1e-5, below.errors[which].all))];
		return (above.db + ((below.db - above.db) * (from - Math.log(ONE_PERCENT))) / (from - to)).toFixed(1);
	});
	console.log(`  1 % of characters lost or wrong at ${crossings.join(", ")} dB`);
}

export const bench: Bench = {
	name: "characters",
	run: () => {
		console.log(
			"Characters lost or wrong: the first copy's bits one by one; the same of either copy; the program's, both weighed together.",
		);
		printErrors("Bits of the textbook (non-coherent, orthogonal)", [3, 4, 5, 6, 7, 8, 9, 10, 11, 12], 10, textbook);
		printErrors("By sound, up to 60 Hz off", [2, 3, 4, 5, 6, 7, 8, 9, 10], 4, bySound);
		const moderate = (db: number, seed: number) => bySound(db, seed, HF_CHANNELS.midModerate);
		printErrors("Through ITU-R F.1487, mid latitudes, moderate (1 ms, 0.5 Hz); mean Eb/N0", [8, 11, 14, 17, 20, 23, 26], 4, moderate);
		const audio = withNoiseAtEbN0(makeText(textBy(1)), 10, { random: prng(1), bitsPerSecond: TEXT_BAUD });
		const frames = framesOf(audio);
		const hear = () => {
			const receiver = createTextReceiver();
			return [...frames.flatMap((frame) => receiver.frame(frame)), ...receiver.end()].length;
		};
		const seconds = Math.round(audio.length / MODEM_RATE_HZ);
		const what = `hear a text of ${seconds} s at 8 kHz`;
		const floor = "mean power of the same samples";
		return Promise.resolve([{ what, floor, count: seconds, unit: "s of audio", ...measure(hear, () => meanPower(audio), 3) }]);
	},
};

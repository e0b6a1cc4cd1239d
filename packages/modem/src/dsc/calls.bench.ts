import { readFileSync } from "node:fs";
import type { Bench } from "../../../../tools/bench-types.ts";
import { measure } from "../../../../tools/measure.ts";
import { asCarrier, hardCallChance, textbookSofts } from "../../truth/textbookBits.ts";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { HF_CHANNELS, throughHfChannel } from "../signal/hfChannel.ts";
import { joined, meanPower, silence } from "../signal/join.ts";
import { withNoiseAtEbN0 } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { createDscBits } from "./createDscBits.ts";
import { createDscReceiver } from "./createDscReceiver.ts";
import { dscAudio } from "./dscCall.ts";
import type { HeardDsc } from "./heardDsc.ts";
import { elementsOfCall } from "./sequence.ts";

const CALLS: readonly (readonly number[])[] = JSON.parse(
	readFileSync(new URL("../../truth/dsc-vectors.json", import.meta.url), "utf8"),
).examples.map(({ message_symbols }: { message_symbols: number[] }) => message_symbols.slice(1, -3));

/** Calls tried at each level. */
const TRIED = 110;

/** Bits of the textbook; with `copies` 1 the second copies are wiped out. */
function hearBits(symbols: readonly number[], ebN0Db: number, seed: number, copies: 1 | 2): readonly HeardDsc[] {
	const dots = 20;
	const softs = textbookSofts([...elementsOfCall(symbols, dots), ...new Array<number>(100).fill(0)], ebN0Db, seed);
	const isSecond = (i: number) => i >= dots + 160 && Math.floor((i - dots) / 10) % 2 === 1;
	const receiver = createDscBits();
	const heard = receiver.take(asCarrier(softs.map((soft, i) => (copies === 1 && isSecond(i) ? 0 : soft))), 0);
	return [...heard, ...receiver.end()];
}

function audioOf(i: number): Float64Array {
	const audio = dscAudio(CALLS[i % CALLS.length]!, { centreHz: 1_640 + ((i * 37) % 121), dots: i % 2 === 0 ? 200 : 20 });
	return joined(silence(1), audio, silence(1));
}

function hearAudio(audio: Float64Array): readonly HeardDsc[] {
	const receiver = createDscReceiver();
	const heard: HeardDsc[] = [];
	for (let at = 0; at + FRAME_SAMPLES <= audio.length; at += FRAME_SAMPLES)
		heard.push(...receiver.frame(audio.subarray(at, at + FRAME_SAMPLES)));
	return [...heard, ...receiver.end()];
}

/** As "83 read, 20 in part, 0 wrong". */
function tally(hear: (i: number) => readonly HeardDsc[]): string {
	let [read, part, wrong] = [0, 0, 0];
	for (let i = 0; i < TRIED; i++) {
		const heard = hear(i);
		const sent = CALLS[i % CALLS.length]!.join();
		if (heard.some(({ ok, symbols }) => ok && symbols.join() === sent)) read++;
		else if (heard.length > 0) part++;
		if (heard.some(({ ok, symbols }) => ok && symbols.join() !== sent)) wrong++;
	}
	return `${String(read).padStart(3)} read, ${part} in part, ${wrong} wrong`;
}

function printSuccess(): void {
	console.log(
		`Calls of ${TRIED} at each Eb/N0. Bits of the textbook, non-coherent and orthogonal; hard: by the error rate 0.5 exp(-Eb/2N0).`,
	);
	for (const db of [4, 4.5, 5, 5.5, 6, 7, 8, 9, 10]) {
		const [both, first] = [2 as const, 1 as const].map((copies) => tally((i) => hearBits(CALLS[i % 11]!, db, i + 1, copies)));
		const hard = [2 as const, 1 as const].map((copies) => {
			const sum = CALLS.reduce((total, { length }) => total + hardCallChance(length, db, copies), 0);
			return Math.round((TRIED * sum) / CALLS.length);
		});
		console.log(`${db} dB: both copies ${both} (hard ${hard[0]}); first copy alone ${first} (hard ${hard[1]})`);
	}
	console.log("The whole receiver, up to 60 Hz off, half of the calls with the short dot pattern:");
	for (const db of [2, 3, 4, 5, 6, 8]) {
		const noisy = (i: number) => withNoiseAtEbN0(audioOf(i), db, { random: prng(i + 1), signalPower: 0.125, bitsPerSecond: 100 });
		console.log(`${db} dB: ${tally((i) => hearAudio(noisy(i)))}`);
	}
	console.log("The same through the channel of ITU-R F.1487, mid latitudes, moderate (1 ms, 0.5 Hz); mean Eb/N0:");
	for (const db of [8, 12, 16, 20]) {
		const faded = (i: number) => {
			const random = prng(i + 1);
			const signal = throughHfChannel(audioOf(i), HF_CHANNELS.midModerate, random);
			return withNoiseAtEbN0(signal, db, { random, signalPower: 0.125, bitsPerSecond: 100 });
		};
		console.log(`${db} dB: ${tally((i) => hearAudio(faded(i)))}`);
	}
}

export const bench: Bench = {
	name: "calls",
	run: () => {
		printSuccess();
		const calls = Array.from({ length: 6 }, (_, i) =>
			withNoiseAtEbN0(audioOf(i), 10, { random: prng(i), signalPower: 0.125, bitsPerSecond: 100 }),
		);
		const audio = joined(...calls);
		const result = {
			what: "hear six calls at 8 kHz",
			floor: "mean power of the same samples",
			count: Math.round(audio.length / MODEM_RATE_HZ),
			unit: "s of audio",
			...measure(
				() => hearAudio(audio).length,
				() => meanPower(audio),
				3,
			),
		};
		return Promise.resolve([result]);
	},
};

import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import {
	createListener,
	dscAudio,
	HEARD_KINDS,
	type HeardKind,
	joined,
	keyedTones,
	MODEM_RATE_HZ,
	makeChart,
	makeTeletype,
	makeText,
	meanPower,
	prng,
	resample,
	silence,
	withNoiseAtSnr,
} from "@skipwright/modem";
import type { Bench, BenchResult } from "../../../tools/bench-types.ts";
import { measure } from "../../../tools/measure.ts";
import { OTHER_SIGNALS } from "./otherSignals.sample.ts";
import { testCard } from "./pictureGiven.ts";

const RATE_HZ = 48_000;
const RUNS = 3;
const CALL = [120, 0, 29, 99, 99, 90, 108, 29, 91, 23, 45, 60, 118, 126, 126, 126, 126, 126, 126, 126, 117];

/** Three minutes with everything in it, and as much noise alone, at 48 000 samples a second. */
function everything(): Float64Array {
	const pause = silence(5);
	const signals = [
		dscAudio(CALL),
		makeText("GALE WARNING 49-30N 006W\nWIND SOUTHWEST 8 TO 9\n".repeat(3)),
		makeTeletype("THE QUICK BROWN FOX JUMPS OVER THE LAZY DOG\n".repeat(3), { baud: 50, centreHz: 1_500, shiftHz: 450 }),
		makeChart(testCard(905, 60), { ioc: 288, linesPerMinute: 120 }),
		keyedTones([{ toneHz: 1_000, seconds: 10 }]),
	];
	const whole = joined(...signals.flatMap((signal) => [signal, pause]));
	const audio = joined(whole, silence(whole.length / MODEM_RATE_HZ));
	return resample(withNoiseAtSnr(audio, 12, { random: prng(1), signalPower: 0.125 }), MODEM_RATE_HZ, RATE_HZ);
}

function listen(audio: Float64Array, kinds: readonly HeardKind[]): number {
	const listener = createListener({ rateHz: RATE_HZ, kinds });
	let heard = 0;
	for (let at = 0; at < audio.length; at += RATE_HZ) heard += listener.push(audio.subarray(at, at + RATE_HZ)).length;
	return heard + listener.end().length;
}

/** Audio seconds a second of the processor's own time, which other programs beside do not disturb. */
function cpuRatio(audio: Float64Array, kinds: readonly HeardKind[]): number {
	const before = process.cpuUsage();
	listen(audio, kinds);
	const { user, system } = process.cpuUsage(before);
	return audio.length / RATE_HZ / ((user + system) / 1e6);
}

function printSpeed(audio: Float64Array): void {
	console.log("Audio seconds a second of processor time, 48 000 samples a second in; wanted 300 alone, 60 all together:");
	const choices: readonly (readonly HeardKind[])[] = [...HEARD_KINDS.map((kind) => [kind]), HEARD_KINDS];
	for (const kinds of choices) {
		listen(audio, kinds);
		const ratios = Array.from({ length: RUNS }, () => Math.round(cpuRatio(audio, kinds)));
		console.log(`  ${kinds.length === 1 ? kinds[0] : "all"}: ${Math.min(...ratios)} to ${Math.max(...ratios)}`);
	}
}

function printMemory(audio: Float64Array): void {
	setFlagsFromString("--expose-gc");
	const collect = runInNewContext("gc") as () => void;
	const listener = createListener({ rateHz: RATE_HZ });
	const held: string[] = [];
	let next = 0;
	let heard = 0;
	while (listener.takenS() < 3_600) {
		for (let at = 0; at < audio.length; at += RATE_HZ) {
			heard += listener.push(audio.subarray(at, at + RATE_HZ)).length;
			if (listener.takenS() < next) continue;
			collect();
			const { heapUsed, arrayBuffers } = process.memoryUsage();
			held.push(((heapUsed + arrayBuffers) / 2 ** 20).toFixed(1));
			next += 600;
		}
	}
	console.log(
		`Memory over an hour of audio, ${heard} items heard, MiB held after each ten minutes (the audio itself included): ${held.join(" ")}`,
	);
}

function printOthers(): void {
	console.log("Ten minutes each of what is no call, text, chart or teletype; heard of these four, of others:");
	for (const [name, make] of Object.entries(OTHER_SIGNALS)) {
		const listener = createListener();
		const heard = [...listener.push(make(600)), ...listener.end()];
		const four = heard.filter(({ kind }) => kind !== "tone" && kind !== "voice").length;
		console.log(`  ${name}: ${four}, ${heard.length - four}`);
	}
}

export const bench: Bench = {
	name: "hear",
	run: () => {
		const audio = everything();
		printSpeed(audio);
		printMemory(audio);
		printOthers();
		const result: BenchResult = {
			what: "listen for everything, 48 kHz",
			floor: "mean power of the same samples",
			count: Math.round(audio.length / RATE_HZ),
			unit: "s of audio",
			...measure(
				() => listen(audio, HEARD_KINDS),
				() => meanPower(audio),
				RUNS,
			),
		};
		return Promise.resolve([result]);
	},
};

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { HF_CHANNELS, throughHfChannel } from "../signal/hfChannel.ts";
import { joined, silence } from "../signal/join.ts";
import { keyedBits } from "../signal/keyed.ts";
import { whiteNoise, withNoiseAtEbN0 } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { resample } from "../signal/resample.ts";
import { readWav } from "../signal/wav.ts";
import { makeText } from "../text/makeText.ts";
import { createDscReceiver } from "./createDscReceiver.ts";
import { dscAudio, dscCall } from "./dscCall.ts";
import type { HeardDsc } from "./heardDsc.ts";
import { parseDsc } from "./parseDsc.ts";

const truthFile = (name: string) => new URL(`../../truth/${name}`, import.meta.url);
const vectors = JSON.parse(readFileSync(truthFile("dsc-vectors.json"), "utf8"));
const CALLS: readonly (readonly number[])[] = vectors.examples.map((example: { message_symbols: number[] }) =>
	example.message_symbols.slice(1, -3),
);

/** Whole frames of it, with silence to fill the last, and the end. */
function hear(audio: Float64Array): readonly HeardDsc[] {
	const receiver = createDscReceiver();
	const padded = joined(audio, new Float64Array(FRAME_SAMPLES - (audio.length % FRAME_SAMPLES)));
	const heard: HeardDsc[] = [];
	for (let at = 0; at < padded.length; at += FRAME_SAMPLES) heard.push(...receiver.frame(padded.subarray(at, at + FRAME_SAMPLES)));
	return [...heard, ...receiver.end()];
}

const noisy = (audio: Float64Array, ebN0Db: number, seed: number) =>
	withNoiseAtEbN0(joined(silence(1.5), audio, silence(1.5)), ebN0Db, { random: prng(seed), signalPower: 0.125, bitsPerSecond: 100 });

describe("createDscReceiver", () => {
	const signals: readonly { file: string; symbols: number[]; ecc: number; audioHz: number; isInverted: boolean }[] = JSON.parse(
		readFileSync(truthFile("dsc-signals.json"), "utf8"),
	);

	it.each(signals)("reads $file, made apart from this program (tools/oracles/dsc.py)", ({ file, symbols, ecc, audioHz, isInverted }) => {
		const heard = hear(readWav(file, readFileSync(truthFile(file))).data);
		expect(heard).toMatchObject([{ kind: "dsc", symbols, ecc, ok: true, isInverted, faults: [] }]);
		expect(Math.abs(heard[0]!.audioHz - audioHz)).toBeLessThan(2);
	});

	it("reads each of the four signals once", () => expect(signals).toHaveLength(4));

	it("reads every worked example at 12 dB, in either sense, up to 100 Hz off, and tells where, when and how", () => {
		for (const [i, symbols] of CALLS.entries()) {
			const [centreHz, dots, isInverted] = [1_600 + 20 * i, i % 2 === 0 ? 200 : 20, i % 3 === 2];
			const audio = dscAudio(symbols, { centreHz, dots, isInverted });
			const heard = hear(noisy(audio, 12, i + 1));
			expect(heard).toMatchObject([{ symbols, ecc: vectors.examples[i].ecc, ok: true, isInverted, times: 1 }]);
			const { audioHz, uncertaintyHz, startS, endS } = heard[0]!;
			expect(Math.abs(audioHz - centreHz)).toBeLessThan(Math.max(2, 4 * uncertaintyHz));
			expect(Math.abs(startS - 1.5)).toBeLessThan(0.15); // noise may carry the dots on by some bits
			expect(endS).toBeCloseTo(1.5 + audio.length / 8_000, 1);
		}
		expect(CALLS).toHaveLength(11);
	});

	it("reads what dscCall makes of a call read before: the long dot pattern for an alert, the short one towards the coast", () => {
		for (const i of [0, 2]) {
			const { call } = parseDsc(CALLS[i]!, vectors.examples[i].ecc);
			const audio = dscCall(call!);
			expect(audio.length).toBe(i === 0 ? 6.4 * 8_000 : 7.2 * 8_000);
			expect(hear(noisy(audio, 14, i + 30))).toMatchObject([{ ok: true, call }]);
		}
	});

	it("reads two calls back to back, and an alert sent three times on end as one", () => {
		const [test, answer, alert] = [CALLS[0]!, CALLS[1]!, CALLS[2]!].map((symbols) => dscAudio(symbols, { dots: 20 }));
		expect(hear(noisy(joined(test!, answer!), 12, 3))).toMatchObject([
			{ ok: true, symbols: CALLS[0] },
			{ ok: true, symbols: CALLS[1] },
		]);
		expect(hear(noisy(joined(alert!, alert!, alert!), 12, 4))).toMatchObject([{ ok: true, symbols: CALLS[2], times: 3 }]);
	});

	it("reads near the limit: 5 dB in noise alone, 16 dB through a moderate channel of mid latitudes (ITU-R F.1487)", () => {
		let [inNoise, inFading, wrong] = [0, 0, 0];
		for (let i = 0; i < 22; i++) {
			const symbols = CALLS[i % 11]!;
			const audio = dscAudio(symbols, { centreHz: 1_640 + ((i * 37) % 121), dots: i % 2 === 0 ? 200 : 20 });
			const faded = throughHfChannel(joined(audio, silence(0.1)), HF_CHANNELS.midModerate, prng(i + 1));
			const [first, second] = [hear(noisy(audio, 5, i + 1)), hear(noisy(faded, 16, i + 1))];
			if (first.some(({ ok }) => ok)) inNoise++;
			if (second.some(({ ok }) => ok)) inFading++;
			for (const one of [...first, ...second]) if (one.ok && one.symbols.join() !== symbols.join()) wrong++;
		}
		expect(inNoise).toBeGreaterThanOrEqual(20);
		expect(inFading).toBeGreaterThanOrEqual(20);
		expect(wrong).toBe(0);
	});

	it("reads the same wherever frames are cut", () => {
		const audio = noisy(dscAudio(CALLS[8]!, { dots: 20 }), 8, 5);
		for (const later of [0, 1, 77, 200]) {
			const [heard] = hear(joined(new Float64Array(later), audio));
			expect(heard).toMatchObject({ symbols: CALLS[8], ok: true });
			expect(Math.abs(heard!.endS - later / MODEM_RATE_HZ - 1.5 - 6.4)).toBeLessThan(0.005);
		}
	});

	it("invents nothing from noise, random keying of the same kind, text of the same keying, Morse-like keying and silence", () => {
		const random = prng(8);
		const keying = (shiftHz: number, baud: number) => {
			const bits = Array.from({ length: 40 * baud }, () => (random() < 0.5 ? 1 : 0));
			return keyedBits(bits, { baud, lowHz: 1_700 - shiftHz / 2, highHz: 1_700 + shiftHz / 2 });
		};
		const morse = keying(0, 20).map((sample, n) => ((Math.floor(n / 640) * 7_919) % 5 < 2 ? sample : 0));
		const text = makeText("THE QUICK BROWN FOX JUMPS OVER THE LAZY DOG 0123456789 ".repeat(4));
		const others = [text, whiteNoise(60 * 8_000, 0.05, random), keying(170, 100), keying(850, 50), morse, silence(20)];
		for (const audio of others) expect(hear(audio.map((sample) => sample + 0.01 * (random() - 0.5)))).toEqual([]);
		expect(others).toHaveLength(6);
	});

	const recordings = new URL("../../../../../shared/recordings/", import.meta.url);
	it.skipIf(!existsSync(recordings))(
		"invents nothing from real recordings of other emissions (skipped: ../shared/recordings is absent)",
		() => {
			const files = readdirSync(recordings).filter((name) => name.endsWith(".wav"));
			for (const name of files) {
				const { data, format } = readWav(name, readFileSync(new URL(name, recordings)));
				expect(hear(resample(data, format.rateHz, MODEM_RATE_HZ)), name).toEqual([]);
			}
			expect(files.length).toBeGreaterThan(20);
		},
	);
});

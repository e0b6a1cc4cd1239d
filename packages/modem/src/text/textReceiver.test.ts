import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { dscAudio } from "../dsc/dscCall.ts";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { joined, mixed, silence } from "../signal/join.ts";
import { keyedBits, keyedTones } from "../signal/keyed.ts";
import { whiteNoise, withNoiseAtEbN0 } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { createResampler } from "../signal/resample.ts";
import { readWav } from "../signal/wav.ts";
import type { HeardText } from "./heardText.ts";
import { makeText } from "./makeText.ts";
import { navtexText } from "./navtex.ts";
import { createTextReceiver } from "./textReceiver.ts";

const TRUTH = join(import.meta.dirname, "../../truth");
const RECORDINGS = join(import.meta.dirname, "../../../../../shared/recordings");
const present = existsSync(RECORDINGS);
if (!present) console.info("recordings off the air are not at hand (../shared/recordings): not heard");

function hear(samples: Float64Array, rateHz = MODEM_RATE_HZ): readonly HeardText[] {
	const receiver = createTextReceiver();
	const resampler = createResampler(rateHz);
	const frames = [...resampler.push(samples), ...resampler.end()];
	return [...frames.flatMap((frame) => receiver.frame(frame)), ...receiver.end()];
}

function hearFile(path: string): readonly HeardText[] {
	const { data, format } = readWav(path, readFileSync(path));
	return hear(data, format.rateHz);
}

const SELECTIVE_CALLS: readonly (readonly number[])[] = JSON.parse(readFileSync(join(TRUTH, "dsc-vectors.json"), "utf8")).examples.map(
	({ message_symbols }: { message_symbols: number[] }) => message_symbols.slice(1, -3),
);
const GALE = "ZCZC KB04\nGALE WARNING 49-30N 006W\nNNNN";

describe("createTextReceiver on signals made by tools/oracles/collectiveFec.py", () => {
	it("prints a message in noise at 9 dB, its centre 38 Hz off and its clock 300 ppm fast", () => {
		const [message, ...more] = hearFile(join(TRUTH, "text-noise.wav"));
		expect(more).toEqual([]);
		expect(message).toMatchObject({ kind: "text", text: GALE, gaps: [], lostCharacters: 0, errorRatio: 0, isInverted: false });
		expect(message!.identity).toEqual({ station: "K", subject: "B", about: "meteorological warnings", number: "04" });
		expect(Math.abs(message!.audioHz - 1_738)).toBeLessThan(2);
		expect(message!.startS).toBeCloseTo(17 * 0.14, 1); // 16 pairs of phasing and the first shift
	});

	it("prints a message through two paths that fade", () => {
		const [message, ...more] = hearFile(join(TRUTH, "text-fading.wav"));
		expect(more).toEqual([]);
		expect(message!.text).toBe(GALE);
		expect(message!.gaps).toEqual([]);
	});

	it("finds its way into a text under way, with the tones exchanged, and says what is missing", () => {
		const [late, cut, ...more] = hearFile(join(TRUTH, "text-exchanged.wav"));
		expect(more).toEqual([]);
		expect(late).toMatchObject({ gaps: ["joined late"], identity: null, lostCharacters: 0, isInverted: true });
		const sent = "ALL SHIPS NORTH OF CAPE ALL SHIPS NORTH OF CAPE KEEP CLEAR\nNNNN\nZCZC LA00\nNAVIGATIONAL WARNING 12";
		// both copies of so much lie within; at the edges one copy of a few more does
		expect(late!.text).toContain("OF CAPE ALL SHIPS NORTH OF CAPE KEEP CLEAR\nNNNN");
		expect(sent).toContain(late!.text);
		expect(cut).toMatchObject({ gaps: ["recording stopped"], lostCharacters: 0, isInverted: true });
		expect(cut!.text).toContain("ZCZC LA00\nNAVIGATIONAL W");
		expect(sent).toContain(cut!.text);
		expect(cut!.identity!.number).toBe("00");
		expect(cut!.summary).toContain("Message LA00 of station L: navigational warnings");
		expect(cut!.summary).toContain("tones came exchanged");
	});
});

describe.skipIf(!present)("createTextReceiver on recordings", () => {
	it("prints the bulletin off the air, as far as the recording goes", () => {
		const [message, ...more] = hearFile(join(RECORDINGS, "text-518-118s.wav"));
		expect(more).toEqual([]);
		expect(message!.text.startsWith("ZCZC EE39\n062040 UTC NOV 21\n")).toBe(true);
		expect(message!.text).toContain("SETTENTRIONALE, ADRIATICO SETT");
		expect(message).toMatchObject({ gaps: ["recording stopped"], isInverted: false });
		expect(message!.identity).toMatchObject({ station: "E", subject: "E", number: "39" });
		expect(message!.lostCharacters).toBe(0);
		expect(message!.characters).toBeGreaterThanOrEqual(828);
		expect(Math.abs(message!.audioHz - 1_002)).toBeLessThan(3);
	});

	it.each([
		["text-bench.wav", "NOW IS THE TIME FOR ALL GOOD MEN TO COME TO THE AID OF THEIR COUNTRY.", 997.5],
		["text-slow-clock.wav", "WELCOME TO WIKIPEDIA, THE FREE ENCYCLOPEDIA THAT ANYONE CAN EDIT.", 1_698],
	])("prints %s whole", (file, text, centreHz) => {
		const [heard, ...more] = hearFile(join(RECORDINGS, file));
		expect(more).toEqual([]);
		expect(heard).toMatchObject({ text, identity: null, gaps: [], errorRatio: 0 });
		expect(Math.abs(heard!.audioHz - centreHz)).toBeLessThan(4);
	});

	it("prints nothing of what is no text", () => {
		const others = ["neg-cw", "neg-fsk-50bd-850hz", "neg-hf-ale", "neg-am-music-talk", "noise-lowband", "noise-midband", "noise-highband"];
		const teletype = ["teletype-50bd-450hz", "teletype-45bd-170hz"];
		const heard = [...others, ...teletype].map((file) => hearFile(join(RECORDINGS, `${file}.wav`)));
		expect(heard.length).toBe(9);
		expect(heard.flat()).toEqual([]);
	});
});

describe("createTextReceiver", () => {
	const noisy = (samples: Float64Array, ebN0Db: number, seed: number) =>
		withNoiseAtEbN0(samples, ebN0Db, { bitsPerSecond: 100, random: prng(seed), signalPower: 0.125 });

	it("prints two messages of one emission and the plain text after them", () => {
		const first = navtexText({ station: "A", subject: "D", number: 0, body: "MAYDAY RELAY 299000001" });
		const second = navtexText({ station: "A", subject: "Z", number: 17, body: "NO MESSAGES ON HAND" });
		const audio = joined(makeText(first), makeText(second), silence(4), makeText("TEST OF EMISSION, 1/2 POWER"), silence(3));
		const heard = hear(noisy(audio, 14, 1));
		expect(heard.map(({ text }) => text)).toEqual([first.trim(), second.trim(), "TEST OF EMISSION, 1/2 POWER"]);
		expect(heard.map(({ identity }) => identity?.about)).toEqual([
			"search and rescue, piracy, tsunami and other natural phenomena",
			"no message on hand",
			undefined,
		]);
		expect(heard.flatMap(({ gaps }) => gaps)).toEqual([]);
	});

	it("prints at 5 dB, where one bit in twenty is wrong by itself", () => {
		const body = "STORM WARNING FOR ALL AREAS. WIND NORTHWEST 8 TO 10 ";
		const [message, ...more] = hear(
			noisy(joined(silence(1), makeText(navtexText({ station: "B", subject: "B", number: 31, body: body.repeat(6) }))), 5, 6),
		);
		expect(more).toEqual([]);
		expect(message!.identity).toMatchObject({ station: "B", subject: "B", number: "31" });
		expect(message!.errorRatio).toBeLessThan(0.02);
		expect(message!.text.split("\n")[1]!.replaceAll("*", "").length).toBeGreaterThan(0.97 * 6 * body.length);
	});

	it("gives nothing for idle signals", () => {
		const idle = makeText("", { phasingPairs: 72, closingPairs: 72 });
		expect(hear(noisy(idle, 20, 2))).toEqual([]);
		expect(idle.length).toBeGreaterThan(20 * MODEM_RATE_HZ);
	});

	it("gives nothing for ten minutes of noise", () => {
		const receiver = createTextReceiver();
		const random = prng(3);
		const heard: HeardText[] = [];
		const frames = Math.ceil((600 * MODEM_RATE_HZ) / FRAME_SAMPLES);
		for (let i = 0; i < frames; i++) heard.push(...receiver.frame(whiteNoise(FRAME_SAMPLES, 0.01, random)));
		expect([...heard, ...receiver.end()]).toEqual([]);
	});

	it("gives nothing for other keying in the same place", () => {
		const random = prng(4);
		const bits = (count: number) => Array.from({ length: count }, () => (random() < 0.5 ? 0 : 1));
		const start = (five: readonly number[]) => [0, 0, ...five.flatMap((bit) => [bit, bit]), 1, 1, 1]; // 50 baud in halves
		const teletype = Array.from({ length: 300 }, () => start(bits(5))).flat();
		const morse = keyedTones(bits(600).map((on) => ({ toneHz: on ? 1_785 : 0, seconds: 0.06 })));
		const signals = {
			"random bits": keyedBits(bits(4_000), { baud: 100, lowHz: 1_615, highHz: 1_785 }),
			"850 Hz shift": keyedBits(bits(2_000), { baud: 50, lowHz: 1_000, highHz: 1_850 }),
			"850 Hz shift, 100 baud": keyedBits(bits(4_000), { baud: 100, lowHz: 1_000, highHz: 1_850 }),
			"dots as of selective calling": keyedBits(
				Array.from({ length: 4_000 }, (_, i) => i % 2),
				{ baud: 100, lowHz: 1_615, highHz: 1_785 },
			),
			"selective calls": joined(...SELECTIVE_CALLS.map((symbols) => dscAudio(symbols))),
			"teletype, 50 baud": keyedBits(teletype, { baud: 100, lowHz: 1_615, highHz: 1_785 }),
			"teletype, 45 baud": keyedBits(teletype, { baud: 90.9, lowHz: 1_615, highHz: 1_785 }),
			morse,
			"two Morse tones": mixed(morse, keyedTones(bits(600).map((on) => ({ toneHz: on ? 1_615 : 0, seconds: 0.05 })))),
		};
		const heard = Object.entries(signals).map(([name, samples]) => [name, hear(noisy(samples, 15, 5)).map(({ text }) => text)]);
		expect(heard).toEqual(Object.keys(signals).map((name) => [name, []]));
		expect(heard.length).toBe(9);
		expect(SELECTIVE_CALLS.length).toBe(11);
	});
});

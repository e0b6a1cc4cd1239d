import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { HF_CHANNELS, throughHfChannel } from "../signal/hfChannel.ts";
import { joined, silence } from "../signal/join.ts";
import { keyedBits, keyedTones } from "../signal/keyed.ts";
import { whiteNoise, withImpulses, withNoiseAtSnr } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { createResampler } from "../signal/resample.ts";
import { readWav } from "../signal/wav.ts";
import { makeTeletype } from "../teletype/makeTeletype.ts";
import type { HeardVoice } from "./heardVoice.ts";
import { speechLike } from "./speech.sample.ts";
import { createVoiceReceiver } from "./voiceReceiver.ts";

function hear(samples: Float64Array): readonly HeardVoice[] {
	const receiver = createVoiceReceiver();
	const heard: HeardVoice[] = [];
	for (let at = 0; at + FRAME_SAMPLES <= samples.length; at += FRAME_SAMPLES) {
		heard.push(...receiver.frame(samples.subarray(at, at + FRAME_SAMPLES)));
	}
	return [...heard, ...receiver.end()];
}

describe("createVoiceReceiver", () => {
	it("finds what resembles speech, its band and where it lies", () => {
		let compared = 0;
		for (let seed = 1; seed <= 6; seed++) {
			const spoken = (options: { readonly movedHz?: number; readonly isInverted?: boolean }) => {
				const heard = hear(withNoiseAtSnr(speechLike({ seconds: 16, seed, ...options }), 15, { random: prng(seed) }));
				expect(heard).toHaveLength(1);
				compared++;
				return heard[0]!;
			};
			const right = spoken({});
			expect(right.isOutOfPlace).toBe(false);
			expect(right.lowPart).toBeGreaterThan(0.5);
			expect([right.startS, right.endS]).toEqual([0, 16]);
			// The maker's band is 300 to 2700 Hz; its highest part holds little power.
			expect(Math.abs(right.lowHz - 320)).toBeLessThan(50);
			const moved = spoken({ movedHz: 300 });
			expect(Math.abs(moved.lowHz - right.lowHz - 300)).toBeLessThan(35);
			expect(Math.abs(moved.audioHz - right.audioHz - 300)).toBeLessThan(35);
			expect(spoken({ isInverted: true }).isOutOfPlace).toBe(true);
		}
		expect(compared).toBe(18);
	});

	it("tells from when to when, in noise before and after", () => {
		const noisy = joined(silence(12), speechLike({ seconds: 20, seed: 7 }), silence(16));
		const [item, ...more] = hear(withNoiseAtSnr(noisy, 12, { random: prng(1), signalPower: 0.001 }));
		expect(more).toEqual([]);
		expect(Math.abs(item!.startS - 12)).toBeLessThan(4.1);
		expect(Math.abs(item!.endS - 32)).toBeLessThan(4.1);
	});

	it("takes no noise, data, Morse or tones for speech", () => {
		const random = prng(2);
		expect(hear(whiteNoise(240 * MODEM_RATE_HZ, 0.01, random))).toEqual([]);
		expect(hear(withImpulses(whiteNoise(60 * MODEM_RATE_HZ, 1e-3, random), { random, perSecond: 5, amplitude: 0.5 }))).toEqual([]);
		const bursts = Array.from({ length: 20 }, (_, i) => {
			const bits = Array.from({ length: 150 + 50 * (i % 5) }, () => (random() < 0.5 ? 0 : 1));
			return joined(keyedBits(bits, { baud: 100, lowHz: 1_615, highHz: 1_785 }), silence(0.4 + random()));
		});
		expect(hear(withNoiseAtSnr(joined(...bursts), 15, { random }))).toEqual([]);
		const teletype = makeTeletype("CQ CQ DE TEST RYRYRY 12345 ".repeat(12), { baud: 50, centreHz: 1_700, shiftHz: 170 });
		expect(hear(withNoiseAtSnr(throughHfChannel(teletype, HF_CHANNELS.midDisturbed, random), 15, { random }))).toEqual([]);
		const morse = Array.from({ length: 300 }, () => [
			{ toneHz: 700, seconds: random() < 0.5 ? 0.06 : 0.18 },
			{ toneHz: 0, seconds: random() < 0.7 ? 0.06 : 0.3 },
		]).flat();
		expect(hear(withNoiseAtSnr(keyedTones(morse), 20, { random }))).toEqual([]);
		const eightTones = Array.from({ length: 4_000 }, () => ({ toneHz: 750 + 250 * Math.floor(8 * random()), seconds: 0.008 }));
		expect(hear(withNoiseAtSnr(keyedTones(eightTones), 20, { random }))).toEqual([]);
		const picture = Array.from({ length: 4_000 }, () => ({ toneHz: 1_500 + 800 * random(), seconds: 0.005 + 0.02 * random() }));
		expect(hear(withNoiseAtSnr(keyedTones(picture), 20, { random }))).toEqual([]);
	});

	it("never throws, whatever it is given", () => {
		const random = prng(3);
		const wild = joined(
			silence(5),
			new Float64Array(40_000).fill(1),
			Float64Array.from({ length: 40_000 }, () => 1e300 * (random() - 0.5)),
			speechLike({ seconds: 8, seed: 4 }).map((sample) => Math.max(-1, Math.min(1, 50 * sample))),
		);
		expect(JSON.stringify(hear(wild))).not.toContain("null");
	});
});

const RECORDINGS = join(import.meta.dirname, "../../../../../shared/recordings");
const present = existsSync(RECORDINGS);
if (!present) console.info("recordings off the air are not at hand (../shared/recordings): not heard");

describe.skipIf(!present)("createVoiceReceiver on recordings", () => {
	it("hears a voice in music and talk, and in nothing else", () => {
		const voices = readdirSync(RECORDINGS)
			.filter((name) => name.endsWith(".wav"))
			.filter((name) => {
				const { data, format } = readWav(name, readFileSync(join(RECORDINGS, name)));
				const resampler = createResampler(format.rateHz);
				const receiver = createVoiceReceiver();
				const heard = [...resampler.push(data), ...resampler.end()].flatMap((frame) => receiver.frame(frame));
				return [...heard, ...receiver.end()].length > 0;
			});
		expect(voices).toEqual(["neg-am-music-talk.wav"]);
	});
});

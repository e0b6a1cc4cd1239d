import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { createResampler } from "../signal/resample.ts";
import { readWav } from "../signal/wav.ts";
import type { HeardTone } from "./heardTone.ts";
import { toneOffset } from "./toneOffset.ts";
import { createToneReceiver } from "./toneReceiver.ts";

const TIME_TONES_HZ = [500, 600, 1_000, 2_000];

function heardAt(...tonesHz: readonly number[]): readonly HeardTone[] {
	return tonesHz.map((audioHz) => ({
		kind: "tone",
		startS: 0,
		endS: 20,
		audioHz,
		uncertaintyHz: 0.01,
		snrDb: 10,
		onRatio: 1,
		summary: "",
	}));
}

describe("toneOffset", () => {
	it("tells the set from the recorder: the examples of a technician's guide", () => {
		const set = toneOffset(heardAt(497, 597, 997, 1_997), TIME_TONES_HZ);
		expect(set).toMatchObject({ verdict: "shift" });
		if (set.verdict === "shift") expect(set.offsetHz).toBeCloseTo(-3, 6);
		const recorder = toneOffset(heardAt(502.5, 603, 1_005, 2_010), TIME_TONES_HZ);
		expect(recorder).toMatchObject({ verdict: "scale" });
		if (recorder.verdict === "scale") expect(recorder.partsPerMillion).toBeCloseTo(5_000, 0);
		expect(toneOffset(heardAt(500.5, 600.6, 1_001, 2_002), TIME_TONES_HZ)).toMatchObject({ verdict: "scale" });
		const none = toneOffset(heardAt(500.01, 1_000.02, 2_000), TIME_TONES_HZ);
		expect(none).toMatchObject({ verdict: "shift" });
		if (none.verdict === "shift") expect(Math.abs(none.offsetHz)).toBeLessThan(none.uncertaintyHz);
	});

	it("cannot tell where tones disagree, are absent, or stand alone", () => {
		expect(toneOffset(heardAt(316.1, 1_490.1, 350.3, 800.3), [312.6, 1_479.1, 346.7, 794.3])).toMatchObject({ verdict: "cannot tell" });
		expect(toneOffset([], TIME_TONES_HZ)).toMatchObject({ verdict: "cannot tell", why: "None of the expected tones was heard." });
		expect(toneOffset(heardAt(1_502), [1_500])).toMatchObject({ verdict: "cannot tell", pairs: [{ expectedHz: 1_500, heardHz: 1_502 }] });
	});

	it("is not led astray by hum beside the tones", () => {
		const shift = toneOffset(heardAt(376.2, 496.2, 596.2, 616.2, 736.2, 996.2), TIME_TONES_HZ);
		expect(shift).toMatchObject({ verdict: "shift" });
		if (shift.verdict === "shift") expect(shift.offsetHz).toBeCloseTo(-3.8, 6);
	});
});

const RECORDINGS = join(import.meta.dirname, "../../../../../shared/recordings");
const present = existsSync(RECORDINGS);
if (!present) console.info("recordings off the air are not at hand (../shared/recordings): not heard");

function hearFile(name: string): readonly HeardTone[] {
	const { data, format } = readWav(name, readFileSync(join(RECORDINGS, name)));
	const resampler = createResampler(format.rateHz);
	const receiver = createToneReceiver();
	return [...[...resampler.push(data), ...resampler.end()].flatMap((frame) => receiver.frame(frame)), ...receiver.end()];
}

/** Hz. Of aeronautical selective calling, by letter: as the folder's README gives them. */
const CALLING_HZ: Readonly<Record<string, number>> = {
	A: 312.6,
	B: 346.7,
	C: 384.6,
	F: 524.8,
	H: 645.7,
	K: 794.3,
	L: 881,
	M: 977.2,
	P: 1_083.9,
	Q: 1_202.3,
	R: 1_333.5,
	S: 1_479.1,
};

describe.skipIf(!present)("toneOffset on recordings", () => {
	it("finds the set's error in pairs of selective-calling tones, and does not where the tones are wrong themselves", () => {
		let compared = 0;
		for (const [name, letters, expectedHz] of [
			["tones-ahkm.wav", "AHKM", 28],
			["tones-bqps.wav", "BQPS", 46],
			["tones-flac.wav", "FLAC", -3.5],
			["tones-krch-am.wav", "KRCH", 0],
		] as const) {
			const offset = toneOffset(
				hearFile(name),
				[...letters].map((letter) => CALLING_HZ[letter]!),
			);
			expect([name, offset.verdict, offset.pairs.length]).toEqual([name, "shift", 4]);
			if (offset.verdict !== "shift") continue;
			console.info(`${name}: ${offset.offsetHz.toFixed(2)} Hz, ±${offset.uncertaintyHz.toFixed(2)}`);
			expect(Math.abs(offset.offsetHz - expectedHz)).toBeLessThan(0.5);
			compared++;
		}
		expect(compared).toBe(4);
		const wrong = toneOffset(
			hearFile("tones-asbk.wav"),
			[..."ASBK"].map((letter) => CALLING_HZ[letter]!),
		);
		expect(wrong.verdict).toBe("cannot tell");
	});

	it("finds the set's error on a standard-time station", () => {
		for (const name of ["time-10mhz-a.wav", "time-10mhz-b.wav"]) {
			const offset = toneOffset(hearFile(name), TIME_TONES_HZ);
			expect([name, offset.verdict]).toEqual([name, "shift"]);
			if (offset.verdict === "shift") expect(Math.abs(offset.offsetHz + 3.9)).toBeLessThan(0.15);
		}
	});

	it("measures a keyed time carrier to some thousandths of a hertz, in a file of 12001 samples a second", () => {
		const [carrier, ...more] = hearFile("time-carrier-500.wav");
		expect(more).toEqual([]);
		expect(Math.abs(carrier!.audioHz - 499.996)).toBeLessThan(0.003);
	});

	it("hears no tone in music and talk, and in noise off the air", () => {
		for (const name of ["neg-am-music-talk.wav", "noise-lowband.wav", "noise-midband.wav", "noise-highband.wav"]) {
			expect([name, hearFile(name)]).toEqual([name, []]);
		}
	});
});

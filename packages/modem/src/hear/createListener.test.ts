import { describe, expect, it } from "vitest";
import { makeChart } from "../chart/makeChart.ts";
import { dscCall } from "../dsc/dscCall.ts";
import { TEST_CALL } from "../dsc/testCall.sample.ts";
import { MODEM_RATE_HZ } from "../receiver.ts";
import { joined, silence } from "../signal/join.ts";
import { keyedBits, keyedTones } from "../signal/keyed.ts";
import { whiteNoise, withNoiseAtSnr } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { makeTeletype } from "../teletype/makeTeletype.ts";
import { makeText } from "../text/makeText.ts";
import { navtexText } from "../text/navtex.ts";
import { speechLike } from "../voice/speech.sample.ts";
import { createListener, type HeardItem, type ListenerOptions } from "./createListener.ts";

const NAVTEX = navtexText({ station: "C", subject: "E", number: 7, body: "GALE WARNING 49-30N\nWIND SOUTHWEST 8" });
const IMAGE = {
	width: 200,
	height: 24,
	pixels: Uint8Array.from({ length: 4_800 }, (_, i) => (i % 200 < 10 || (i * 7) % 200 > 60 ? 255 : 0)),
};
const SENTENCE = "THE QUICK BROWN FOX JUMPS OVER THE LAZY DOG 1234567890";

function hear(
	samples: Float64Array,
	options: ListenerOptions = {},
	blocks: (i: number) => number = () => samples.length,
): readonly HeardItem[] {
	const listener = createListener(options);
	const items: HeardItem[] = [];
	for (let at = 0, i = 0; at < samples.length; i++) {
		const to = at + blocks(i);
		items.push(...listener.push(samples.subarray(at, to)));
		at = to;
	}
	return [...items, ...listener.end()];
}

/** With gaps of noise about it. */
function inNoise(snrDb: number, ...parts: readonly Float64Array[]): Float64Array {
	return withNoiseAtSnr(joined(...parts.flatMap((part) => [part, silence(3)])), snrDb, { random: prng(1), signalPower: 0.125 });
}
const kinds = (items: readonly HeardItem[]) => items.map(({ kind }) => kind);

describe("createListener", () => {
	const several = inNoise(
		12,
		silence(1),
		dscCall(TEST_CALL),
		makeText(NAVTEX, { phasingPairs: 30 }),
		makeTeletype(SENTENCE, { baud: 50, centreHz: 1_500, shiftHz: 450 }),
		keyedTones([{ toneHz: 1_000, seconds: 4 }]),
	);

	it("hears the same whatever the blocks are cut to", () => {
		const whole = hear(several);
		expect(kinds(whole).sort()).toEqual(["dsc", "teletype", "text", "tone"]);
		const byStart = (items: readonly HeardItem[]) => items.toSorted((a, b) => a.startS - b.startS);
		const random = prng(2);
		expect(byStart(hear(several, {}, () => 1 + Math.floor(5_000 * random())))).toEqual(byStart(whole));
	});

	it("listens for what was chosen alone, with the same result; calls and texts need not both be wanted", () => {
		const whole = hear(several);
		let compared = 0;
		for (const kind of ["dsc", "text", "teletype"] as const) {
			expect(hear(several, { kinds: [kind] })).toEqual(whole.filter((item) => item.kind === kind));
			compared++;
		}
		expect(compared).toBe(3);
	});

	it("is certain of what was well received, less so of what was not", () => {
		expect(hear(several).map(({ kind, sure }) => [kind, sure])).toEqual(
			expect.arrayContaining([
				["dsc", "certain"],
				["text", "certain"],
				["tone", "certain"],
			]),
		);
		const weak = hear(inNoise(-7.5, silence(1), makeText(NAVTEX, { phasingPairs: 40 })), { kinds: ["text"] });
		for (const item of weak) if (item.kind === "text" && item.errorRatio > 0.04) expect(item.sure).not.toBe("certain");
		expect(hear(inNoise(15, speechLike({ seconds: 12, seed: 3 })), { kinds: ["voice"] }).map(({ sure }) => sure)).toEqual(["likely"]);
	});

	it("takes the tones of a chart's start, phasing, stop and black for the chart's own", () => {
		const audio = inNoise(20, silence(2), makeChart(IMAGE, { ioc: 576, linesPerMinute: 120, phasingS: 8, startS: 3, stopS: 3, blackS: 3 }));
		expect(kinds(hear(audio))).toEqual(["chart"]);
		expect(hear(audio, { kinds: ["tone"] }).length).toBeGreaterThan(1); // they are there
	});

	it("tells a tone that comes after a teletype or a chart on one of its pitches, or goes on after it, and no more of it", () => {
		const teletype = makeTeletype(SENTENCE, { baud: 50, centreHz: 1_700, shiftHz: 450 });
		const chart = makeChart(IMAGE, { ioc: 576, linesPerMinute: 120, phasingS: 8, startS: 3, stopS: 5, blackS: 10 });
		const tone = keyedTones([{ toneHz: 1_500, seconds: 10 }]);
		for (const [kind, signal] of [
			["teletype", teletype],
			["chart", chart],
		] as const) {
			const after = hear(inNoise(24, silence(1), signal, tone));
			expect(kinds(after)).toEqual([kind, "tone"]);
			expect(Math.abs(after[1]!.startS - (7 + signal.length / MODEM_RATE_HZ))).toBeLessThan(0.2);
			expect(Math.abs(after[1]!.endS - after[1]!.startS - 10)).toBeLessThan(0.2);
			const before = hear(inNoise(24, silence(1), tone, signal)).toSorted((a, b) => a.startS - b.startS);
			expect(kinds(before)).toEqual(["tone", kind]);
			expect(Math.abs(before[0]!.endS - before[0]!.startS - 10)).toBeLessThan(0.2);
		}
		const [first, rest, ...more] = hear(inNoise(24, silence(1), joined(teletype, keyedTones([{ toneHz: 1_925, seconds: 10 }]))));
		expect([first!.kind, rest!.kind, more]).toEqual(["teletype", "tone", []]);
		expect(rest!.startS).toBeGreaterThan(first!.endS);
		expect(rest).toMatchObject({ summary: expect.stringMatching(/^Tone of 19\d\d\.\d\d Hz for (8|9)\./) });
	});

	it("tells a start or stop tone alone as one item, at the middle of black and white", () => {
		const shades = (alternationHz: number, middleHz: number) =>
			keyedTones(
				Array.from({ length: Math.round(2 * alternationHz * 2) }, (_, i) => ({
					toneHz: middleHz + (i % 2 === 0 ? -400 : 400),
					seconds: 0.5 / alternationHz,
				})),
			);
		for (const [alternationHz, words] of [
			[300, "index of cooperation 576"],
			[675, "index of cooperation 288"],
			[450, "Stop tone"],
		] as const) {
			const [item, ...more] = hear(inNoise(20, silence(1), shades(alternationHz, 1_893)));
			expect([alternationHz, more]).toEqual([alternationHz, []]);
			expect(item).toMatchObject({ kind: "tone", summary: expect.stringContaining(words) });
			expect(Math.abs(item!.audioHz - 1_893)).toBeLessThan(0.5);
		}
	});

	it("does not hear a keyed pair as two tones, but two tones at once it does", () => {
		const random = prng(4);
		const bits = Array.from({ length: 1_500 }, () => (random() < 0.5 ? 0 : 1));
		const pair = inNoise(15, silence(1), keyedBits(bits, { baud: 50, lowHz: 1_275, highHz: 2_125 }));
		expect(hear(pair)).toEqual([]);
		expect(hear(pair, { kinds: ["tone"] })).toEqual([]);
		const seconds = 5;
		const tones = [500, 1_300].map((toneHz) => keyedTones([{ toneHz, seconds }], { amplitude: 0.4 }));
		const both = tones[0]!.map((sample, i) => sample + tones[1]![i]!);
		expect(hear(inNoise(15, silence(1), both)).map(({ audioHz }) => Math.round(audioHz))).toEqual([500, 1_300]);
	});

	it("says no speech inside a text, nor tones inside speech; speech beside a call it does", () => {
		const audio = inNoise(20, silence(1), dscCall(TEST_CALL), speechLike({ seconds: 16, seed: 5 }));
		expect(kinds(hear(audio))).toEqual(["dsc", "voice"]);
	});

	it("gives times from the stream's start, at any rate, and never beyond its end", () => {
		const tone = keyedTones([{ toneHz: 1_000, seconds: 3 }], { rateHz: 44_100 });
		const audio = joined(silence(2, 44_100), tone, silence(1, 44_100));
		const [item] = hear(withNoiseAtSnr(audio, 15, { random: prng(6), signalPower: 0.125, rateHz: 44_100 }), { rateHz: 44_100 });
		expect(Math.abs(item!.startS - 2)).toBeLessThan(0.2);
		expect(Math.abs(item!.endS - 5)).toBeLessThan(0.2);
		const cut = hear(tone, { rateHz: 44_100 });
		expect(cut.length).toBe(1);
		expect(cut[0]!.endS).toBeLessThanOrEqual(3);
	});

	it("hears nothing in noise, in silence, in nothing, and survives what is no number", () => {
		expect(hear(whiteNoise(60 * MODEM_RATE_HZ, 0.01, prng(7)))).toEqual([]);
		expect(hear(silence(20))).toEqual([]);
		expect(hear(new Float64Array(0))).toEqual([]);
		const listener = createListener();
		expect(listener.push([Number.NaN, Number.POSITIVE_INFINITY, 1e300, ...whiteNoise(8_000, 0.01, prng(8))])).toEqual([]);
		expect(listener.end()).toEqual([]);
		expect(listener.badSamples()).toBe(3);
	});
});

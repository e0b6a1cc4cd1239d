import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { MODEM_RATE_HZ } from "../receiver.ts";
import { HF_CHANNELS, throughHfChannel } from "../signal/hfChannel.ts";
import { joined, silence } from "../signal/join.ts";
import { whiteNoise, withNoiseAtEbN0, withNoiseAtSnr } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { createResampler, resample } from "../signal/resample.ts";
import { readWav } from "../signal/wav.ts";
import { editErrors } from "./editErrors.sample.ts";
import type { HeardTeletype } from "./heardTeletype.ts";
import { makeTeletype } from "./makeTeletype.ts";
import { createTeletypeReceiver } from "./teletypeReceiver.ts";

const BULLETIN = "WEATHER BULLETIN 1200 UTC\nBISCAY: WIND SW 5 TO 6, SEA 3 M.\nFINISTERRE: NW 4, GOOD.\n";

function hear(samples: Float64Array, rateHz = MODEM_RATE_HZ, block = samples.length): readonly HeardTeletype[] {
	const resampler = createResampler(rateHz);
	const receiver = createTeletypeReceiver();
	const heard: HeardTeletype[] = [];
	const give = (frames: readonly Float64Array[]) => {
		for (const frame of frames) heard.push(...receiver.frame(frame));
	};
	for (let at = 0; at < samples.length; at += block) give(resampler.push(samples.subarray(at, at + block)));
	give(resampler.end());
	return [...heard, ...receiver.end()];
}

describe("createTeletypeReceiver", () => {
	it("finds tones, speed and sense by itself, and prints the text whole", () => {
		const tones = [
			[85, 1_000.4, 1.5],
			[170, 2_210, 1.5],
			[450, 1_976, 1],
			[850, 2_850, 2],
			[850, 731.7, 1.5],
		] as const;
		const speeds = [45.45, 50, 75] as const;
		let compared = 0;
		for (const [i, [shiftHz, centreHz, stopElements]] of [...tones, ...tones, ...tones].entries()) {
			const [baud, sense] = [speeds[i % 3]!, i % 2 === 0 ? "mark low" : "mark high"] as const;
			const made = makeTeletype(BULLETIN, { baud, centreHz, shiftHz, sense, stopElements });
			const noisy = withNoiseAtSnr(made, 10, { random: prng(i) });
			const [item, ...more] = hear(joined(whiteNoise(9_000, 0.03, prng(2)), noisy));
			expect(more).toEqual([]);
			expect(item).toMatchObject({
				kind: "teletype",
				text: BULLETIN,
				baud,
				sense,
				lostCharacters: 0,
				errorRatio: 0,
				part: 1,
				continues: false,
			});
			expect(Math.abs(item!.audioHz - centreHz)).toBeLessThan(3 * item!.uncertaintyHz);
			expect(item!.uncertaintyHz).toBeLessThan(0.2);
			expect(Math.abs(item!.shiftHz - shiftHz)).toBeLessThan(1);
			expect(Math.abs(item!.snrDb - 10)).toBeLessThan(2);
			expect(item!.startS).toBeCloseTo(9_000 / MODEM_RATE_HZ + 0.5, 1);
			compared++;
		}
		expect(compared).toBe(15);
	});

	it("gives the same whatever the blocks and the rate of the input", () => {
		const made = withNoiseAtSnr(makeTeletype(BULLETIN, { baud: 50, centreHz: 1_700, shiftHz: 450 }), 3, { random: prng(7) });
		const whole = hear(made);
		expect(whole).toHaveLength(1);
		expect(hear(made, MODEM_RATE_HZ, 160)).toEqual(whole);
		expect(hear(made, MODEM_RATE_HZ, 4_097)).toEqual(whole);
		const [again] = hear(resample(made, MODEM_RATE_HZ, 44_100), 44_100);
		expect(again!.text).toBe(whole[0]!.text);
		expect(Math.abs(again!.audioHz - whole[0]!.audioHz)).toBeLessThan(0.05);
	});

	it("waits through long rests of a hand at the keys, and follows a sender 1 % fast", () => {
		const rests = (seconds: number) => ({ baud: 50, centreHz: 1_500, shiftHz: 170, leadS: seconds, tailS: seconds }) as const;
		const byHand = joined(
			...["THE GALE ", "CENTRED ", "NORTH OF ", "ROCKALL ", "MOVES EAST"].map((word, i) => makeTeletype(word, rests(1 + i))),
		);
		const [slow, ...more] = hear(withNoiseAtSnr(byHand, 5, { random: prng(3) }));
		expect(more).toEqual([]);
		expect(slow!.text).toBe("THE GALE CENTRED NORTH OF ROCKALL MOVES EAST");
		const fast = makeTeletype(BULLETIN, { baud: 50, centreHz: 1_500, shiftHz: 170, stopElements: 1, rateHz: 7_920 }); // played at 8000
		expect(hear(withNoiseAtSnr(fast, 5, { random: prng(3) })).map(({ text }) => text)).toEqual([BULLETIN]);
	});

	it("gives a long transmission in parts, cut at the ends of lines, and two transmissions as two", () => {
		const long = `${"GALE WARNING FOR ALL AREAS WEST OF 10 W\n".repeat(60)}NNNN`;
		const [a, b] = [
			{ baud: 75, centreHz: 1_700, shiftHz: 450 } as const,
			{ baud: 45.45, centreHz: 1_200, shiftHz: 170, sense: "mark low" } as const,
		];
		const gap = silence(3);
		const heard = hear(
			withNoiseAtSnr(joined(makeTeletype(long, a), gap, makeTeletype(BULLETIN, b)), 8, { random: prng(1), signalPower: 0.125 }),
		);
		expect(heard.map(({ part, continues, baud }) => ({ part, continues, baud }))).toEqual([
			{ part: 1, continues: true, baud: 75 },
			{ part: 2, continues: true, baud: 75 },
			{ part: 3, continues: false, baud: 75 },
			{ part: 1, continues: false, baud: 45.45 },
		]);
		expect(
			heard
				.slice(0, 3)
				.map(({ text }) => text)
				.join(""),
		).toBe(long);
		expect(heard[0]!.text.endsWith("W\n")).toBe(true);
		expect(heard[3]!.text).toBe(BULLETIN);
		expect(heard[1]!.summary).toBe(
			`Teletype at 75 baud, shift 450 Hz, resting on the higher tone, part 2: ${heard[1]!.characters} characters, none lost.`,
		);
	});

	it("marks what a fade takes away, and keeps the text whole about it", () => {
		const made = makeTeletype(BULLETIN.repeat(3), { baud: 50, centreHz: 1_700, shiftHz: 450 });
		for (let i = 20 * MODEM_RATE_HZ; i < 21.5 * MODEM_RATE_HZ; i++) made[i] = 0;
		const [item, ...more] = hear(withNoiseAtSnr(made, 6, { random: prng(4) }));
		expect(more).toEqual([]);
		expect(item!.lostCharacters).toBeGreaterThan(3);
		expect(item!.lostCharacters).toBeLessThan(12);
		expect(item!.errorRatio).toBeCloseTo(item!.lostCharacters / item!.characters, 10);
		expect(item!.text.match(/\*/g)).toHaveLength(item!.lostCharacters);
		expect(item!.text.startsWith(BULLETIN)).toBe(true);
		expect(item!.text.endsWith(BULLETIN.slice(30))).toBe(true);
	});

	it("reads through two paths that fade (ITU-R F.1487, mid latitudes, moderate)", () => {
		const made = makeTeletype(BULLETIN.repeat(8), { baud: 50, centreHz: 1_700, shiftHz: 450 });
		const faded = throughHfChannel(made, HF_CHANNELS.midModerate, prng(11));
		const heard = hear(withNoiseAtEbN0(faded, 20, { bitsPerSecond: 50, random: prng(12), signalPower: 0.125 }));
		expect(heard).toHaveLength(1);
		const errors = editErrors(BULLETIN.repeat(8), heard[0]!.text) / heard[0]!.text.length;
		// Flat Rayleigh fading alone: each element wrong with 1 / (2 + Eb/N0), one in 102, so five with 4.8 %; shifts and marks add to that.
		console.info(
			`teletype 50 Bd through F.1487 mid moderate at a mean Eb/N0 of 20 dB: ${(100 * errors).toFixed(1)} % of the characters wrong or lost`,
		);
		expect(errors).toBeLessThan(0.06);
	});

	it("never throws, whatever it is given", () => {
		const random = prng(9);
		const wild: readonly Float64Array[] = [
			silence(5),
			new Float64Array(40_000).fill(1),
			Float64Array.from({ length: 40_000 }, (_, i) => (i % 2 === 0 ? 1e300 : -1e300)),
			Float64Array.from({ length: 40_000 }, () => Math.sign(random() - 0.5)),
			makeTeletype(BULLETIN, { baud: 50, centreHz: 1_700, shiftHz: 450, amplitude: 1e9 }).subarray(0, 60_000),
			Float64Array.from(makeTeletype(BULLETIN, { baud: 50, centreHz: 1_700, shiftHz: 450, amplitude: 9 }), (x) =>
				Math.max(-1, Math.min(1, x)),
			),
		];
		expect(wild.map((samples) => hear(samples).length)).toEqual([0, 0, 0, 0, 1, 1]);
		const all = hear(joined(...wild.slice(0, 5), silence(12), wild[5]!)); // and what is long past leaves nothing behind
		expect(all.at(-1)!.text).toBe(BULLETIN);
		expect(JSON.stringify(all)).not.toContain("null");
	});
});

const RECORDINGS = join(import.meta.dirname, "../../../../../shared/recordings");
const present = existsSync(RECORDINGS);
if (!present) console.info("recordings off the air are not at hand (../shared/recordings): not heard");

function hearFile(name: string): readonly HeardTeletype[] {
	const { data, format } = readWav(name, readFileSync(join(RECORDINGS, name)));
	return hear(data, format.rateHz);
}

describe.skipIf(!present)("createTeletypeReceiver on recordings", () => {
	it("reads a weather teletype off the air without an error", () => {
		const [item, ...more] = hearFile("teletype-50bd-450hz.wav");
		expect(more).toEqual([]);
		expect(item).toMatchObject({ baud: 50, sense: "mark low", characters: 286, lostCharacters: 0 });
		expect(item!.text).toMatch(/^RYRYRY\nCQ CQ CQ DE/);
		expect(item!.text.match(/FREQUENCIES {3}4583 KHZ {3}7646 KHZ {3}10100\.8 KHZ\n/g)).toHaveLength(2);
		expect(Math.abs(item!.audioHz - 1_976)).toBeLessThan(1.5); // as the folder's README has it, to a hertz or so
		expect(Math.abs(item!.shiftHz - 446)).toBeLessThan(1.5);
	});

	it("reads the sample at 45.45 baud", () => {
		const [item, ...more] = hearFile("teletype-45bd-170hz.wav");
		expect(more).toEqual([]);
		expect(item).toMatchObject({ baud: 45.45, sense: "mark low", lostCharacters: 0 });
		expect(item!.text.trim()).toBe("WELCOME TO WIKIPEDIA, THE FREE ENCYCLOPEDIA THAT ANYONE CAN EDIT.");
	});

	it("hears no teletype in anything else", () => {
		const others = readdirSync(RECORDINGS).filter((name) => name.endsWith(".wav") && !name.startsWith("teletype"));
		expect(others.length).toBeGreaterThanOrEqual(20);
		for (const name of others) expect([name, hearFile(name)]).toEqual([name, []]);
	});
});

import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BadSoundError } from "./badSound.ts";
import { joined } from "./join.ts";
import { prng } from "./random.ts";
import { type ChannelChoice, createWavDecoder, readWav, type WavEnd, writeWav } from "./wav.ts";

const NOISE = Float64Array.from({ length: 500 }, prng(1)).map((x) => 2 * x - 1);

/** Bytes of a file from texts, numbers of so many bytes each, and further bytes. */
function file(...parts: readonly (string | readonly [bytes: number, value: number] | Uint8Array)[]): Uint8Array {
	return Uint8Array.from(
		parts.flatMap((part) => {
			if (typeof part === "string") return [...part].map((character) => character.charCodeAt(0));
			if (part instanceof Uint8Array) return [...part];
			return Array.from({ length: part[0] }, (_, i) => Math.floor(part[1] / 256 ** i) % 256);
		}),
	);
}

interface Form {
	readonly tag?: number;
	readonly channels?: number;
	readonly rateHz?: number;
	readonly bits?: number;
	readonly frameBytes?: number;
}

function fmt({ tag = 1, channels = 1, rateHz = 8_000, bits = 16, frameBytes = (channels * bits) / 8 }: Form = {}): Uint8Array {
	return file("fmt ", [4, 16], [2, tag], [2, channels], [4, rateHz], [4, rateHz * frameBytes], [2, frameBytes], [2, bits]);
}

function wav(...chunks: readonly (string | readonly [number, number] | Uint8Array)[]): Uint8Array {
	const body = file("WAVE", ...chunks);
	return file("RIFF", [4, body.length], body);
}

const DATA = file("data", [4, 6], [2, 1], [2, 2], [2, 0xffff]);
const SAMPLES = Float64Array.of(1, 2, -1).map((x) => x / 32_768);

function inPieces(bytes: Uint8Array, size: () => number, channel?: ChannelChoice): WavEnd & { readonly data: Float64Array } {
	const decoder = createWavDecoder("a.wav", channel);
	const parts: Float64Array[] = [];
	const block = Buffer.alloc(bytes.length); // its slice() copies nothing
	for (let at = 0; at < bytes.length; ) {
		const count = Math.min(bytes.length - at, size());
		block.set(bytes.subarray(at, at + count)); // one array used again and again, as a reader of a file does
		parts.push(decoder.push(block.subarray(0, count)));
		block.fill(0xaa);
		at += count;
	}
	return { ...decoder.end(), data: joined(...parts) };
}

describe("readWav", () => {
	it("reads back what writeWav wrote", () => {
		const pcm = readWav("a.wav", writeWav(NOISE, 12_001));
		expect(pcm.format).toEqual({ rateHz: 12_001, channels: 1, encoding: "pcm16", samples: 500 });
		for (let i = 0; i < 500; i++) expect(Math.abs(pcm.data[i]! - NOISE[i]!)).toBeLessThanOrEqual(0.5 / 32_768);
		const float = readWav("a.wav", writeWav(NOISE, 48_000, "float32"));
		expect(float.format).toEqual({ rateHz: 48_000, channels: 1, encoding: "float32", samples: 500 });
		expect(float.data).toEqual(NOISE.map(Math.fround));
	});

	it("clips on writing, and writes 0 for what is no number", () => {
		const samples = Float64Array.of(1, 2, -1, -2, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY);
		expect([...readWav("a.wav", writeWav(samples, 8_000)).data].map((x) => x * 32_768)).toEqual([
			32_767, 32_767, -32_768, -32_768, 0, 32_767, -32_768,
		]);
		expect(readWav("a.wav", writeWav(samples, 8_000, "float32")).data).toEqual(samples);
	});

	const cases: readonly (readonly [string, Uint8Array, readonly number[], ChannelChoice?])[] = [
		["8 bits without a sign", wav(fmt({ bits: 8 }), "data", [4, 3], [1, 0], [1, 128], [1, 255]), [-1, 0, 127 / 128]],
		["24 bits", wav(fmt({ bits: 24 }), "data", [4, 6], [3, 0x800000], [3, 0x7fffff]), [-1, 1 - 2 ** -23]],
		["32 bits", wav(fmt({ bits: 32 }), "data", [4, 8], [4, 0x80000000], [4, 1]), [-1, 2 ** -31]],
		["20 bits in 3 bytes", wav(fmt({ bits: 20, frameBytes: 3 }), "data", [4, 3], [3, 0x400000]), [0.5]],
		["the mean of two channels", wav(fmt({ channels: 2 }), "data", [4, 8], [2, 0x4000], [2, 0xc000], [2, 0x4000], [2, 0]), [0, 0.25]],
		[
			"the second of two channels",
			wav(fmt({ channels: 2 }), "data", [4, 8], [2, 0x4000], [2, 0xc000], [2, 0], [2, 0x2000]),
			[-0.5, 0.25],
			2,
		],
		["an odd chunk with its padding", wav(fmt(), "LIST", [4, 3], "abc", [1, 0], DATA), [...SAMPLES]],
		["a format of odd length", wav("fmt ", [4, 17], fmt().subarray(8), [1, 0], [1, 0], DATA), [...SAMPLES]],
		["a chunk before the format", wav("JUNK", [4, 4], "data", fmt(), DATA), [...SAMPLES]],
		["chunks after the data", wav(fmt(), DATA, "data", [4, 2], [2, 9]), [...SAMPLES]],
		["bytes after the file", file(wav(fmt(), DATA), "garbage"), [...SAMPLES]],
		["no sample at all", wav(fmt(), "data", [4, 0]), []],
		["no sample, then a chunk", wav(fmt(), "data", [4, 0], "LIST", [4, 2], [2, 7]), []],
		["a size of 0 as streamed", file("RIFF", [4, 0], "WAVE", fmt(), "data", [4, 0], [2, 1], [2, 2], [2, 0xffff]), [...SAMPLES]],
		[
			"a size of 2^32 - 1",
			file("RIFF", [4, 0xffffffff], "WAVE", fmt(), "data", [4, 0xffffffff], [2, 1], [2, 2], [2, 0xffff]),
			[...SAMPLES],
		],
		[
			"a size of nearly 2^31",
			file("RIFF", [4, 0x7ffff024], "WAVE", fmt(), "data", [4, 0x7ffff000], [2, 1], [2, 2], [2, 0xffff], [1, 7]),
			[...SAMPLES],
		],
		[
			"RF64",
			file(
				"RF64",
				[4, 0xffffffff],
				"WAVE",
				"ds64",
				[4, 28],
				[8, 86],
				[8, 6],
				[8, 3],
				[4, 0],
				fmt(),
				"data",
				[4, 0xffffffff],
				DATA.subarray(8),
				"LIST",
			),
			[...SAMPLES],
		],
	];
	it.each(cases.map(([what, bytes, wanted, channel]) => ({ what, bytes, wanted, channel })))(
		"reads $what",
		({ bytes, wanted, channel }) => {
			const { data, missing, samples } = readWav("a.wav", bytes, channel);
			expect([...data]).toEqual(wanted);
			expect([missing, samples]).toEqual([0, wanted.length]);
			expect(inPieces(bytes, () => 1, channel).data).toEqual(data);
		},
	);

	it("reads the files of another library as it does, each channel and their mean, and refuses its other formats by name", () => {
		interface Row {
			readonly form: string;
			readonly subtype: string;
			readonly file: string;
			readonly samples?: readonly (readonly number[])[];
		}
		const rows: readonly Row[] = JSON.parse(readFileSync(join(import.meta.dirname, "../../truth/sounds.json"), "utf8"));
		let [channels, refusals] = [0, 0];
		for (const { form, subtype, file: text, samples } of rows) {
			const bytes = Uint8Array.from(Buffer.from(text, "base64"));
			if (samples === undefined) {
				const name = {
					FLAC: "a FLAC file",
					OGG: "an Ogg file",
					MP3: "an MP3 file",
					AIFF: "an AIFF file",
					AU: "an AU file",
					CAF: "a CAF file",
				}[form];
				const wanted = form === "W64" ? "a Wave64 file" : form === "WAV" ? "mu-law" : name;
				expect(wanted).toBeDefined();
				expect(() => readWav("a", bytes)).toThrow(`got ${wanted}`);
				refusals++;
				continue;
			}
			for (let channel = 1; channel <= samples[0]!.length; channel++, channels++) {
				expect([...readWav(`${form} ${subtype}`, bytes, channel).data]).toEqual(samples.map((frame) => frame[channel - 1]!));
			}
			const mean = samples.map((frame) => frame.reduce((sum, sample) => sum + sample, 0) / frame.length);
			expect([...readWav("a", bytes).data]).toEqual(mean);
		}
		expect([channels, refusals]).toEqual([19, 9]);
	});

	it("keeps what there is of a file that was cut short, and says how much is missing", () => {
		const whole = writeWav(NOISE, 8_000);
		const { data, samples, missing } = readWav("a.wav", whole.subarray(0, 44 + 2 * 120 + 1));
		expect([data.length, samples, missing]).toEqual([120, 120, 380]);
		expect(data).toEqual(readWav("a.wav", whole).data.subarray(0, 120));
	});

	const WANTED = "a WAV file with PCM or float samples (save it as WAV, PCM 16 bit)";
	const refused: readonly (readonly [string, Uint8Array, number, string, string, ChannelChoice?])[] = [
		["FLAC", file("fLaC", [8, 34], [8, 0]), 0, "a FLAC file", WANTED],
		["Ogg", file("OggS", [4, 2], "vorb"), 0, "an Ogg file (Vorbis or Opus)", WANTED],
		["MP3 with a tag", file("ID3", [9, 3]), 0, "an MP3 file", WANTED],
		["MP3 without", file([2, 0xfbff], [10, 0]), 0, "an MP3 file", WANTED],
		["AAC", file([2, 0xf1ff], [10, 0]), 0, "an AAC file", WANTED],
		["AIFF", file("FORM", [4, 100], "AIFF"), 0, "an AIFF file", WANTED],
		["AIFF-C", file("FORM", [4, 100], "AIFC"), 0, "an AIFF file", WANTED],
		["AU", file(".snd", [8, 24]), 0, "an AU file", WANTED],
		["CAF", file("caff", [8, 1]), 0, "a CAF file", WANTED],
		["M4A", file([4, 32 * 2 ** 24], "ftypM4A "), 0, "an M4A or MP4 file", WANTED],
		["WebM", file("\x1aE\xdf\xa3", [8, 0]), 0, "a WebM or Matroska file", WANTED],
		["RIFX", file("RIFX", [4, 0], "WAVE"), 0, "a WAV file with its bytes in big-endian order (RIFX)", WANTED],
		["AVI", file("RIFF", [4, 0], "AVI "), 0, "an AVI file", WANTED],
		["another RIFF", file("RIFF", [4, 0], "WEBP"), 0, '"RIFF"', WANTED],
		["text", file("bank,place,tag"), 0, '"bank"', WANTED],
		["a short FLAC", file("fLaC"), 0, "a FLAC file", WANTED],
		["three bytes", file("abc"), 0, '"abc"', WANTED],
		["nothing", file(), 0, "an empty file", WANTED],
		["no data", wav(fmt()), 36, "the end of the file", "a chunk with the samples"],
		["data before the format", wav(DATA, fmt()), 12, "the data", 'the chunk "fmt " before them'],
		["a format too short", wav("fmt ", [4, 14], [8, 0], [6, 0]), 16, "14 bytes", 'a chunk "fmt " of 16 bytes or some more'],
		["a format too long", wav("fmt ", [4, 2 ** 24], [8, 0]), 16, "16777216 bytes", 'a chunk "fmt " of 16 bytes or some more'],
		["mu-law", wav(fmt({ tag: 7, bits: 8 }), DATA), 20, "mu-law (number 7)", "PCM or float samples (save it as WAV, PCM 16 bit)"],
		[
			"an encoding of its own",
			wav(fmt({ tag: 999 }), DATA),
			20,
			"an unknown encoding (number 999)",
			"PCM or float samples (save it as WAV, PCM 16 bit)",
		],
		["no channel", wav(fmt({ channels: 0, frameBytes: 0 }), DATA), 22, "0", "one channel or more"],
		["a rate too low", wav(fmt({ rateHz: 6_000 }), DATA), 24, "6000", "a sample rate from 7000 to 192000 Hz"],
		["40 bits", wav(fmt({ bits: 40 }), DATA), 34, "40", "8, 16, 24 or 32 bits a sample"],
		["0 bits", wav(fmt({ bits: 0 }), DATA), 34, "0", "8, 16, 24 or 32 bits a sample"],
		["floats of 16 bits", wav(fmt({ tag: 3 }), DATA), 34, "16", "32 or 64 bits a sample, as they are floats"],
		["frames that do not add up", wav(fmt({ frameBytes: 3 }), DATA), 32, "3", "2 bytes for 1 samples of 16 bits"],
		["a channel that is not there", wav(fmt(), DATA), 22, "1", "at least as many channels as the one asked for, number 2", 2],
		["channel 0", wav(fmt(), DATA), 22, "1", "at least as many channels as the one asked for, number 0", 0],
	];
	const rows = refused.map(([what, bytes, atByte, value, expected, channel]) => ({ what, bytes, atByte, value, expected, channel }));
	it.each(rows)("refuses $what", ({ bytes, atByte, value, expected, channel }) => {
		for (const read of [() => readWav("a.wav", bytes, channel), () => inPieces(bytes, () => 1, channel)]) {
			let caught: unknown;
			try {
				read();
			} catch (error) {
				caught = error;
			}
			expect(caught).toBeInstanceOf(BadSoundError);
			expect(caught).toMatchObject({ atByte, value, expected, source: "a.wav" });
			expect((caught as BadSoundError).message).toBe(`a.wav: byte ${atByte}: expected ${expected}, got ${value}`);
		}
	});

	it("answers any damage with samples or BadSoundError, and the same in pieces of any size", () => {
		const seeds = [...cases.map(([, bytes]) => bytes), writeWav(NOISE, 8_000, "float32"), writeWav(NOISE.subarray(0, 20), 44_100)];
		let [read, refusals] = [0, 0];
		const damaged = fc
			.tuple(fc.constantFrom(...seeds), fc.nat({ max: 120 }), fc.nat({ max: 8 }), fc.uint8Array({ maxLength: 6 }), fc.nat({ max: 2_100 }))
			.map(([bytes, at, cut, put, keep]) => file(bytes.subarray(0, at), put, bytes.subarray(at + cut)).subarray(0, keep));
		const anything = fc.oneof(
			{ arbitrary: damaged, weight: 4 },
			fc.uint8Array({ maxLength: 200 }).map((bytes) => file("RIFF", [4, 99], "WAVE", bytes)),
		);
		const answer = (make: () => WavEnd & { readonly data: Float64Array }) => {
			try {
				const { format, samples, missing, data } = make();
				expect(data).toHaveLength(samples);
				expect(missing).toBeGreaterThanOrEqual(0);
				return { format, missing, bits: [...data].map(String).join() };
			} catch (error) {
				expect(error).toBeInstanceOf(BadSoundError);
				return { message: (error as Error).message };
			}
		};
		fc.assert(
			fc.property(anything, fc.nat({ max: 1_000_000 }), (bytes, seed) => {
				const random = prng(seed);
				const whole = answer(() => readWav("a.wav", bytes));
				expect(answer(() => inPieces(bytes, () => 1 + Math.floor(random() * 40)))).toEqual(whole);
				if ("message" in whole) refusals++;
				else read++;
			}),
			{ seed: 20261127, numRuns: 3_000 },
		);
		expect(refusals).toBeGreaterThan(500);
		expect(read).toBeGreaterThan(500);
	});
});

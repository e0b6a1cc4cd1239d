import { asText, BadSoundError, soundFormatName } from "./badSound.ts";
import { RATE_LIMITS_HZ } from "./resample.ts";

/** How each sample is written. */
export type WavEncoding = "pcm8" | "pcm16" | "pcm24" | "pcm32" | "float32" | "float64";

export interface WavFormat {
	readonly rateHz: number;
	readonly channels: number;
	readonly encoding: WavEncoding;
	/** Samples of each channel by the header; null where a streamed file does not say. */
	readonly samples: number | null;
}

/** Mean of all channels, or one of them, the first being 1. */
export type ChannelChoice = "mean" | number;

/** Takes a WAV file in pieces of any size, so that an hour of audio needs no more memory than a piece. */
export interface WavDecoder {
	/** Takes the next bytes; returns the samples that are complete with them, full scale ±1. */
	push(bytes: Uint8Array): Float64Array;
	/** Null until its part of the file has been taken. */
	format(): WavFormat | null;
	/** The file ends. */
	end(): WavEnd;
}

export interface WavEnd {
	readonly format: WavFormat;
	/** Samples of each channel that were given out. */
	readonly samples: number;
	/** Samples of each channel that the header promised and the file lacks: it was cut short. */
	readonly missing: number;
}

export interface Sound extends WavEnd {
	readonly data: Float64Array;
}

/** Data sizes from here on are what recorders and pipes write that cannot go back to correct them: the data go on to the end of the file. */
const STREAMED_BYTES = 0x7fff_0000;

/** Bytes. No chunk that is read whole is longer; a longer one is damage. */
const LONGEST_CHUNK = 65_536;

/** Format tags that are read, and others by name. Source: Multimedia Registration Kit and WAVEFORMATEXTENSIBLE, from memory. */
const PCM = 1,
	FLOAT = 3,
	EXTENSIBLE = 0xfffe;
const OTHER_TAGS: Readonly<Record<number, string>> = {
	2: "ADPCM",
	6: "A-law",
	7: "mu-law",
	17: "ADPCM",
	49: "GSM",
	80: "MPEG",
	85: "MP3",
	255: "AAC",
};

/** What follows the tag in an extensible format's identifier. */
const GUID_REST = "\0\0\0\0\x10\0\x80\0\0\xaa\0\x38\x9b\x71";

const ADVICE = "a WAV file with PCM or float samples (save it as WAV, PCM 16 bit)";

/**
 * Decodes RIFF WAVE and its forms for more than 4 GB (RF64, EBU Tech 3306; BW64, ITU-R BS.2088): PCM of 8 to 32 bits and floats.
 * @param source name of the file, for messages
 * @throws BadSoundError from push or end, nothing else
 */
export function createWavDecoder(source: string, channel: ChannelChoice = "mean"): WavDecoder {
	let held: Uint8Array = new Uint8Array(0); // taken, not yet used
	let at = 0; // byte of the file at which `held` begins
	let skip = 0; // bytes to pass over
	let riffEnd: number | null = null; // null until the first 12 bytes are read
	let dataBytes64: number | null = null;
	let coding: Coding | null = null;
	let format: WavFormat | null = null;
	let left = 0; // bytes of data still to come, once the data are reached
	let isInData = false;
	let given = 0;

	const bad = (atByte: number, value: string, expected: string) => new BadSoundError(source, { atByte, value, expected });

	/** The next `count` bytes, or null when they are not there yet. */
	function next(count: number): DataView | null {
		if (held.length < count) return null;
		const view = new DataView(held.buffer, held.byteOffset, count);
		held = held.subarray(count);
		at += count;
		return view;
	}

	/** Reads on up to the data; false when more bytes are needed. */
	function readHeader(): boolean {
		while (!isInData) {
			const passed = Math.min(skip, held.length);
			held = held.subarray(passed);
			at += passed;
			skip -= passed;
			if (skip > 0 || !readPart()) return false;
		}
		return true;
	}

	function readPart(): boolean {
		if (riffEnd === null) {
			const start = held;
			const view = next(12);
			if (view === null) return false;
			checkStart(start);
			riffEnd = view.getUint32(4, true) + 8;
			return true;
		}
		if (held.length < 8) return false;
		const head = new DataView(held.buffer, held.byteOffset, 8);
		const id = asText(held.subarray(0, 4));
		const size = head.getUint32(4, true);
		if (id === "data") {
			next(8);
			startData(size);
			return true;
		}
		if (id !== "fmt " && id !== "ds64") {
			next(8);
			skip = size + (size % 2); // chunks begin at even bytes
			return true;
		}
		const least = id === "fmt " ? 16 : 28;
		if (size < least || size > LONGEST_CHUNK) throw bad(at + 4, `${size} bytes`, `a chunk "${id}" of ${least} bytes or some more`);
		if (held.length < 8 + size) return false;
		next(8);
		const chunkAt = at;
		const view = next(size)!;
		skip = size % 2;
		if (id === "fmt ") coding = codingOf(view, (offset, value, expected) => bad(chunkAt + offset, value, expected), channel);
		else dataBytes64 = view.getUint32(8, true) + view.getUint32(12, true) * 4_294_967_296;
		return true;
	}

	function checkStart(bytes: Uint8Array): void {
		const id = asText(bytes.subarray(0, 4));
		const isWave = asText(bytes.subarray(8, 12)) === "WAVE";
		if (isWave && (id === "RIFF" || id === "RF64" || id === "BW64")) return;
		throw bad(0, soundFormatName(bytes) ?? JSON.stringify(id), ADVICE);
	}

	function startData(size: number): void {
		if (coding === null) throw bad(at - 8, "the data", `the chunk "fmt " before them`);
		const isOpen = size >= STREAMED_BYTES || (size === 0 && riffEnd! <= at);
		left = size === 0xffff_ffff && dataBytes64 ? dataBytes64 : isOpen ? Number.POSITIVE_INFINITY : size;
		isInData = true;
		const { rateHz, channels, encoding, frameBytes } = coding;
		format = { rateHz, channels, encoding, samples: left === Number.POSITIVE_INFINITY ? null : Math.floor(left / frameBytes) };
	}

	return {
		push(bytes) {
			held = held.length === 0 ? bytes : concatenated(held, bytes);
			if (!readHeader()) {
				held = new Uint8Array(held); // the caller may use the array again (and a Node buffer's slice does not copy)
				return new Float64Array(0);
			}
			const { frameBytes } = coding!;
			const frames = Math.floor(Math.min(held.length, left) / frameBytes);
			const view = next(frames * frameBytes)!;
			left -= view.byteLength;
			given += frames;
			held = left < frameBytes ? new Uint8Array(0) : new Uint8Array(held);
			return decoded(view, coding!);
		},
		format: () => format,
		end() {
			if (format === null) {
				if (riffEnd !== null) throw bad(at + held.length, "the end of the file", "a chunk with the samples");
				throw bad(0, held.length === 0 ? "an empty file" : (soundFormatName(held) ?? JSON.stringify(asText(held))), ADVICE);
			}
			return { format, samples: given, missing: format.samples === null ? 0 : format.samples - given };
		},
	};
}

/** The whole file at once; see `createWavDecoder`. A file that was cut short is read as far as it goes: `missing` says how much is not there. */
export function readWav(source: string, bytes: Uint8Array, channel: ChannelChoice = "mean"): Sound {
	const decoder = createWavDecoder(source, channel);
	const data = decoder.push(bytes);
	return { ...decoder.end(), data };
}

/** What must be known to turn bytes into samples. */
interface Coding {
	readonly rateHz: number;
	readonly channels: number;
	readonly encoding: WavEncoding;
	readonly sampleBytes: number;
	readonly frameBytes: number;
	/** Channels that are averaged: from the first up to, not including, the last. */
	readonly fromChannel: number;
	readonly toChannel: number;
}

type Fault = (offset: number, value: string, expected: string) => BadSoundError;

function codingOf(view: DataView, bad: Fault, channel: ChannelChoice): Coding {
	const tag = view.getUint16(0, true);
	const isExtensible = tag === EXTENSIBLE && view.byteLength >= 40;
	const kind = isExtensible ? view.getUint16(24, true) : tag;
	const rest = isExtensible ? asText(new Uint8Array(view.buffer, view.byteOffset + 26, 14)) : GUID_REST;
	if ((kind !== PCM && kind !== FLOAT) || rest !== GUID_REST) {
		throw bad(0, `${OTHER_TAGS[kind] ?? "an unknown encoding"} (number ${kind})`, "PCM or float samples (save it as WAV, PCM 16 bit)");
	}
	const [channels, rateHz] = [view.getUint16(2, true), view.getUint32(4, true)];
	const [frameBytes, bits] = [view.getUint16(12, true), view.getUint16(14, true)];
	if (channels === 0) throw bad(2, "0", "one channel or more");
	if (rateHz < RATE_LIMITS_HZ.from || rateHz > RATE_LIMITS_HZ.to) {
		throw bad(4, `${rateHz}`, `a sample rate from ${RATE_LIMITS_HZ.from} to ${RATE_LIMITS_HZ.to} Hz`);
	}
	const sampleBytes = Math.ceil(bits / 8);
	const encoding = encodingOf(kind, sampleBytes);
	if (encoding === null) {
		throw bad(14, `${bits}`, kind === PCM ? "8, 16, 24 or 32 bits a sample" : "32 or 64 bits a sample, as they are floats");
	}
	if (frameBytes !== channels * sampleBytes) {
		throw bad(12, `${frameBytes}`, `${channels * sampleBytes} bytes for ${channels} samples of ${bits} bits`);
	}
	if (channel !== "mean" && !(Number.isInteger(channel) && channel >= 1 && channel <= channels)) {
		throw bad(2, `${channels}`, `at least as many channels as the one asked for, number ${channel}`);
	}
	const [fromChannel, toChannel] = channel === "mean" ? [0, channels] : [channel - 1, channel];
	return { rateHz, channels, encoding, sampleBytes, frameBytes, fromChannel, toChannel };
}

function encodingOf(kind: number, sampleBytes: number): WavEncoding | null {
	if (kind === FLOAT) return sampleBytes === 4 ? "float32" : sampleBytes === 8 ? "float64" : null;
	return ([null, "pcm8", "pcm16", "pcm24", "pcm32"] as const)[sampleBytes] ?? null;
}

function decoded(view: DataView, { encoding, sampleBytes, frameBytes, fromChannel, toChannel }: Coding): Float64Array {
	const samples = new Float64Array(view.byteLength / frameBytes);
	const read = READERS[encoding];
	for (let channel = fromChannel; channel < toChannel; channel++) {
		for (let i = 0, at = channel * sampleBytes; i < samples.length; i++, at += frameBytes) samples[i] = samples[i]! + read(view, at);
	}
	const averaged = toChannel - fromChannel;
	if (averaged > 1) for (let i = 0; i < samples.length; i++) samples[i] = samples[i]! / averaged;
	return samples;
}

const READERS: Readonly<Record<WavEncoding, (view: DataView, at: number) => number>> = {
	pcm8: (view, at) => (view.getUint8(at) - 0x80) / 0x80, // the one encoding without a sign
	pcm16: (view, at) => view.getInt16(at, true) / 0x8000,
	pcm24: (view, at) => (view.getInt16(at + 1, true) * 0x100 + view.getUint8(at)) / 0x80_0000,
	pcm32: (view, at) => view.getInt32(at, true) / 0x8000_0000,
	float32: (view, at) => view.getFloat32(at, true),
	float64: (view, at) => view.getFloat64(at, true),
};

function concatenated(a: Uint8Array, b: Uint8Array): Uint8Array {
	const whole = new Uint8Array(a.length + b.length);
	whole.set(a);
	whole.set(b, a.length);
	return whole;
}

/** A WAV file of one channel. PCM 16 bit is clipped at full scale, and what is no number written as 0. */
export function writeWav(samples: Float64Array, rateHz: number, encoding: "pcm16" | "float32" = "pcm16"): Uint8Array {
	const isFloat = encoding === "float32";
	const sampleBytes = isFloat ? 4 : 2;
	const dataBytes = samples.length * sampleBytes;
	const formatBytes = isFloat ? 18 : 16; // formats other than PCM say that they have no extension, and how many samples there are
	const dataAt = 12 + 8 + formatBytes + (isFloat ? 12 : 0) + 8;
	const view = new DataView(new ArrayBuffer(dataAt + dataBytes));
	const write = (at: number, id: string, number: number) => {
		for (let i = 0; i < 4; i++) view.setUint8(at + i, id.charCodeAt(i));
		view.setUint32(at + 4, number, true);
	};
	write(0, "RIFF", dataAt - 8 + dataBytes);
	write(8, "WAVE", 0);
	write(12, "fmt ", formatBytes);
	view.setUint16(20, isFloat ? FLOAT : PCM, true);
	view.setUint16(22, 1, true);
	view.setUint32(24, rateHz, true);
	view.setUint32(28, rateHz * sampleBytes, true);
	view.setUint16(32, sampleBytes, true);
	view.setUint16(34, 8 * sampleBytes, true);
	if (isFloat) {
		write(38, "fact", 4);
		view.setUint32(46, samples.length, true);
	}
	write(dataAt - 8, "data", dataBytes);
	for (let i = 0; i < samples.length; i++) {
		if (isFloat) view.setFloat32(dataAt + 4 * i, samples[i]!, true);
		else view.setInt16(dataAt + 2 * i, Math.max(-0x8000, Math.min(0x7fff, Math.round(samples[i]! * 0x8000))), true);
	}
	return new Uint8Array(view.buffer);
}

import { BadInputError } from "@skipwright/units";

/** A sound file that could not be read: at which byte, what was there, what was expected. */
export class BadSoundError extends BadInputError {
	readonly atByte: number;
	readonly value: string;
	readonly expected: string;
	constructor(source: string, { atByte, value, expected }: { readonly atByte: number; readonly value: string; readonly expected: string }) {
		super(source, [{ line: 1, column: `byte ${atByte}`, value, expected }]);
		this.name = "BadSoundError";
		this.message = `${source}: byte ${atByte}: expected ${expected}, got ${value}`;
		this.atByte = atByte;
		this.value = value;
		this.expected = expected;
	}
}

/** What other files begin with: from byte, characters. The formats' own specifications, from memory. */
const STARTS: readonly (readonly [what: string, ...signs: readonly (readonly [atByte: number, text: string])[]])[] = [
	["a FLAC file", [0, "fLaC"]],
	["an Ogg file (Vorbis or Opus)", [0, "OggS"]],
	["an MP3 file", [0, "ID3"]],
	["an AIFF file", [0, "FORM"], [8, "AIF"]],
	["an AU file", [0, ".snd"]],
	["a CAF file", [0, "caff"]],
	["an M4A or MP4 file", [4, "ftyp"]],
	["a WebM or Matroska file", [0, "\x1aE\xdf\xa3"]],
	["an AMR file", [0, "#!AMR"]],
	["a WavPack file", [0, "wvpk"]],
	["a WMA file", [0, "0&\xb2u"]],
	["a Wave64 file", [0, "riff"]],
	["a WAV file with its bytes in big-endian order (RIFX)", [0, "RIFX"]],
	["an AVI file", [0, "RIFF"], [8, "AVI "]],
	["a MIDI file, which holds notes and no sound", [0, "MThd"]],
];

/** "a FLAC file", by the first bytes of a file; null when it is none that is known. */
export function soundFormatName(bytes: Uint8Array): string | null {
	const text = asText(bytes.subarray(0, 16));
	const found = STARTS.find(([, ...signs]) => signs.every(([atByte, sign]) => text.startsWith(sign, atByte)));
	if (found !== undefined) return found[0];
	// eleven set bits begin each MPEG audio frame; layer bits 00 mark AAC in its ADTS frames
	if (bytes[0] !== 0xff || (bytes[1] ?? 0) < 0xe0) return null;
	return (bytes[1]! & 6) === 0 ? "an AAC file" : "an MP3 file";
}

/** Bytes as characters of the same numbers. */
export function asText(bytes: Uint8Array): string {
	return String.fromCharCode(...bytes);
}

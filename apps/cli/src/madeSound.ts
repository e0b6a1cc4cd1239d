import {
	HF_CHANNELS,
	joined,
	MODEM_RATE_HZ,
	meanPower,
	offTune,
	prng,
	RATE_LIMITS_HZ,
	recordedFast,
	resample,
	silence,
	throughHfChannel,
	withNoiseAtSnr,
	writeWav,
} from "@skipwright/modem";
import { type Context, EXIT, type Exit, UsageError } from "./context.ts";
import { given } from "./given.ts";

export interface ImpairFlags {
	readonly snr?: string;
	readonly offset?: string;
	readonly clock?: string;
	readonly channel?: string;
	readonly seed?: string;
	readonly rate?: string;
	readonly before?: string;
}

/** Peak of what is written, full scale 1. */
const MOST_PEAK = 0.95;
const RATES = { from: 8_000, to: RATE_LIMITS_HZ.to } as const;

/** Hz. Where a signal off tune must still lie: above this, and so far below half the sample rate. */
const LOWEST_HZ = 100,
	BELOW_HALF_RATE_HZ = 200;

/**
 * A made signal as a set and a recorder would bring it: off tune, faded, in noise, sampled by a wrong clock; written as WAV.
 * @param spanHz its lowest and highest tone
 */
export function writeMade(
	context: Context,
	file: string,
	signal: Float64Array,
	flags: ImpairFlags,
	[lowHz, highHz]: readonly [number, number],
): Exit {
	const number = (flag: string, text: string | undefined, usual: number) =>
		text === undefined ? usual : given(flag, text, (digits) => finite(digits));
	const beforeS = number("--before", flags.before, 1);
	const seed = number("--seed", flags.seed, 1);
	const rateHz = number("--rate", flags.rate, MODEM_RATE_HZ);
	const offsetHz = number("--offset", flags.offset, 0);
	const ppm = number("--clock", flags.clock, 0);
	if (beforeS < 0 || beforeS > 600) throw new UsageError(`cannot take --before ${flags.before}: expected seconds from 0 to 600`);
	if (Math.abs(ppm) > 20_000)
		throw new UsageError(`cannot take --clock ${flags.clock}: expected at most 20000 parts in a million either way`);
	if (!Number.isInteger(rateHz) || rateHz < RATES.from || rateHz > RATES.to) {
		throw new UsageError(`cannot take --rate ${flags.rate}: expected whole samples a second from ${RATES.from} to ${RATES.to}`);
	}
	const mostHz = Math.min(rateHz, MODEM_RATE_HZ) / 2 - BELOW_HALF_RATE_HZ;
	if (offsetHz !== 0 && (lowHz + offsetHz < LOWEST_HZ || highHz + offsetHz > mostHz)) {
		throw new UsageError(
			`cannot take --offset ${flags.offset}: the signal would lie from ${lowHz + offsetHz} to ${highHz + offsetHz} Hz; expected ${LOWEST_HZ} to ${mostHz} Hz`,
		);
	}
	const random = prng(seed);
	const tuned = offsetHz === 0 ? signal : offTune(signal, offsetHz);
	const alone = joined(silence(beforeS), tuned, silence(beforeS));
	const faded = flags.channel === undefined ? alone : throughHfChannel(alone, channelGiven(flags.channel), random);
	const noisy =
		flags.snr === undefined ? faded : withNoiseAtSnr(faded, number("--snr", flags.snr, 0), { random, signalPower: meanPower(signal) });
	const clocked = ppm === 0 ? noisy : recordedFast(noisy, ppm);
	const samples = rateHz === MODEM_RATE_HZ ? clocked : resample(clocked, MODEM_RATE_HZ, rateHz);
	const peak = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
	const fitting = peak <= MOST_PEAK ? samples : samples.map((sample) => (sample * MOST_PEAK) / peak);
	context.writeFile(file, writeWav(fitting, rateHz));
	context.out(`${file}: ${(samples.length / rateHz).toFixed(1)} s at ${rateHz} samples a second\n`);
	return EXIT.ok;
}

function finite(digits: string): number {
	const value = digits.trim() === "" ? Number.NaN : Number(digits);
	if (Number.isFinite(value)) return value;
	throw new RangeError("expected a number");
}

/** As "mid-moderate". */
export const CHANNEL_WORDS: readonly string[] = Object.keys(HF_CHANNELS).map(hyphened);

function channelGiven(word: string): (typeof HF_CHANNELS)[keyof typeof HF_CHANNELS] {
	const found = Object.entries(HF_CHANNELS).find(([name]) => hyphened(name) === word);
	if (found !== undefined) return found[1];
	throw new UsageError(`cannot take --channel ${word}: expected ${CHANNEL_WORDS.join(", ")}`);
}

function hyphened(name: string): string {
	return name.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

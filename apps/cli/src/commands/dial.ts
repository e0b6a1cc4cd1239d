import {
	type DialConvention,
	dialFor,
	emission,
	LISTED_MEANS,
	type ListedMeans,
	MODES,
	type Mode,
	type Published,
	roundToSteps,
} from "@skipwright/rules";
import { finestStep, modeOf, type Profile } from "@skipwright/set";
import { formatKhz, type Hz, parseKhz } from "@skipwright/units";
import { type Context, EXIT, type Exit, UsageError } from "../context.ts";
import { profileGiven } from "../sources.ts";

export interface DialFlags {
	readonly published: string;
	readonly emission: string;
	readonly set?: string;
	readonly mode?: string;
	readonly audioCentre?: string;
	readonly ship?: string;
	readonly json?: boolean;
}

/** Without a set: a plain one whose every mode shows the suppressed carrier. */
const PLAIN: DialConvention = { USB: { shows: "carrier" }, LSB: { shows: "carrier" }, AM: { shows: "carrier" }, CW: { shows: "carrier" } };

/** Hz. A set that comes no nearer than this cannot be said to tune to it (contracts: commands' JSON). */
const MOST_RESIDUE_HZ = 100;

/** `dial KHZ --published HOW --emission CLASS`: what the dial must read, what the set can store of it, and why. */
export function dialCommand(context: Context, khz: string, flags: DialFlags): Exit {
	const profile = flags.set === undefined ? null : profileGiven(context, flags.set);
	const convention = profile?.modes ?? PLAIN;
	const options = { mode: modeGiven(profile, flags.mode), audioCentreHz: audioCentreGiven(flags.audioCentre) };
	const published = publishedGiven(khz, flags);
	const dial = dialFor(published, convention, options);
	if ("cannot" in dial) throw new UsageError(`cannot say the dial for ${khz} kHz: ${dial.cannot}`);
	const ship =
		flags.ship === undefined
			? null
			: dialFor({ ...published, hz: khzGiven(flags.ship, "--ship") }, convention, { ...options, mode: dial.mode });
	if (ship !== null && "cannot" in ship) throw new UsageError(`cannot say the dial for ${flags.ship} kHz: ${ship.cannot}`);
	const step = profile === null ? null : finestStep(profile);
	const { tunableHz, residueHz } = step === null ? { tunableHz: dial.dialHz, residueHz: 0 } : roundToSteps(dial.dialHz, step);
	const answer = { receiveHz: dial.dialHz, transmitHz: ship?.dialHz ?? null, mode: dial.mode, tunableHz, residueHz, why: dial.why };
	const tunes = profile === null ? null : tuningFault(profile, tunableHz, residueHz);
	if (tunes !== null && flags.json === true) context.err(`skipwright: cannot-tune: ${tunes}\n`);
	context.out(flags.json === true ? `${JSON.stringify(answer, null, "\t")}\n` : dialText(answer, tunes));
	return tunes === null ? EXIT.ok : EXIT.found;
}

interface Answer {
	readonly receiveHz: Hz;
	readonly transmitHz: Hz | null;
	readonly mode: Mode;
	readonly tunableHz: Hz;
	readonly residueHz: number;
	readonly why: string;
}

function dialText({ receiveHz, transmitHz, mode, tunableHz, residueHz, why }: Answer, fault: string | null): string {
	const transmit = transmitHz === null ? "" : `, transmit ${formatKhz(transmitHz)}`;
	const rounded = residueHz === 0 ? "" : `\nThe set comes to ${formatKhz(tunableHz)} kHz, ${residueHz} Hz left over.`;
	const stop = fault === null ? "" : `\nSTOP cannot-tune: ${fault}`;
	return `${mode} ${formatKhz(receiveHz)} kHz${transmit}\n${why}${rounded}${stop}\n`;
}

function tuningFault(profile: Profile, dialHz: Hz, residueHz: number): string | null {
	const isInside = profile.receive.some(({ fromHz, toHz }) => dialHz >= fromHz && dialHz <= toHz);
	if (!isInside) return `${formatKhz(dialHz)} kHz is outside what ${profile.id} receives`;
	return Math.abs(residueHz) > MOST_RESIDUE_HZ ? `${Math.abs(residueHz)} Hz are left over, more than ${MOST_RESIDUE_HZ}` : null;
}

function publishedGiven(khz: string, flags: DialFlags): Published {
	const means = LISTED_MEANS.find((word): word is ListedMeans => word === flags.published);
	if (means === undefined) throw new UsageError(`cannot take --published ${flags.published}: expected ${LISTED_MEANS.join(", ")}`);
	return { hz: khzGiven(khz, "the frequency"), means, emission: emissionGiven(flags.emission) };
}

function emissionGiven(text: string): Published["emission"] {
	try {
		return emission(text).emissionClass;
	} catch (error) {
		throw new UsageError(`cannot take --emission ${text}: ${(error as Error).message}`);
	}
}

function khzGiven(text: string, what: string): Hz {
	try {
		return parseKhz(text);
	} catch (error) {
		throw new UsageError(`cannot take ${what} ${text}: ${(error as Error).message}`);
	}
}

function modeGiven(profile: Profile | null, word: string | undefined): Mode | undefined {
	if (word === undefined) return undefined;
	try {
		return modeOf(profile, word);
	} catch {
		throw new UsageError(`cannot take --mode ${word}: expected ${MODES.join(", ")}`);
	}
}

/** Hz. Audio that a marine set passes; a centre outside it is a slip of units. */
const AUDIO_HZ = { lowest: 200, highest: 4_000 };

function audioCentreGiven(text: string | undefined): number | undefined {
	if (text === undefined) return undefined;
	const value = Number(text);
	if (Number.isInteger(value) && value >= AUDIO_HZ.lowest && value <= AUDIO_HZ.highest) return value;
	throw new UsageError(`cannot take --audio-centre ${text}: expected whole hertz from ${AUDIO_HZ.lowest} to ${AUDIO_HZ.highest}`);
}

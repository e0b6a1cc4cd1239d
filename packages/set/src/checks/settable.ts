import { type Mode, roundToSteps } from "@skipwright/rules";
import { formatKhz, type Hz, hz } from "@skipwright/units";
import type { Profile } from "../profile.ts";
import { finestStep, inRange } from "../tuning.ts";

/** The multiple of the set's finest step that lies nearest, in range or not. */
export function settableHz(profile: Profile, dialHz: number): Hz {
	return roundToSteps(hz(dialHz), finestStep(profile)).tunableHz;
}

/** A figure for a remedy, kHz: the nearest multiple of the set's finest step. @example `"517.92"` for 517915 Hz in steps of 10 Hz */
export function settableKhz(profile: Profile, dialHz: number): string {
	return formatKhz(settableHz(profile, dialHz));
}

/** What to key instead, in words: mode and settable dial, and a warning where the set cannot receive it. */
export function settableText(profile: Profile, { mode, dialHz }: { readonly mode: Mode; readonly dialHz: Hz }): string {
	const beyond = inRange(profile, dialHz, "receive") ? "" : ", which the set cannot receive";
	return `${mode} ${settableKhz(profile, dialHz)} kHz${beyond}`;
}

/** Hz left over between what is wanted and what can be set, signed; beyond 10 kHz in kilohertz. @example `"-343.2 kHz"` */
export function residueText(residueHz: number): string {
	const size = Math.abs(residueHz);
	if (size <= 10_000) return `${residueHz} Hz`;
	return `${residueHz < 0 ? "-" : ""}${formatKhz(hz(size))} kHz`;
}

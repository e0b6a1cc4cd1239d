import type { Profile } from "./profile.ts";
import type { SettingLine, SheetStep } from "./types.ts";

/** Seconds for each movement of keying in. Common practice, no source; an estimate, to be replaced by the shop's own timing. */
export const SECONDS = {
	/** One click of the knob, with looking at the display. */
	click: 0.4,
	/** To turn to a figure from a dial that is not known. */
	turnFromAny: 20,
	/** One key of a keypad. */
	key: 0.7,
	/** One character of a tag, chosen with knob or keys. */
	tagCharacter: 3,
	/** Choosing bank and place, and storing at the end. */
	place: 8,
	/** Choosing the mode. */
	mode: 2,
	/** Marking a place receive only. */
	receiveOnly: 3,
	/** Emptying a place. */
	clear: 6,
	/** Calling the place up again and reading it back. */
	readBack: 8,
	/** One setting beside the places, found in the menus and read back. */
	setting: 40,
} as const;

export interface LoadingTime {
	/** Rounded up to a whole minute. */
	readonly minutes: number;
	/** What was counted, and what the seconds rest on. */
	readonly restsOn: string;
}

/** Estimated time to key in the steps and settings and read them back. */
export function loadingTime(profile: Profile, steps: readonly SheetStep[], settings: readonly SettingLine[]): LoadingTime {
	const writes = steps.filter(({ action }) => action === "write");
	const clears = steps.length - writes.length;
	const tagCharacters = writes.reduce((sum, { tag }) => sum + [...tag.trimEnd()].length, 0);
	let clicks = 0;
	let keys = 0;
	let fromAny = 0;
	for (const step of writes) {
		for (const side of ["receive", "transmit"] as const) {
			const turned = step[`${side}Turns`]?.reduce((sum, turn) => sum + Math.abs(turn.clicks), 0) ?? null;
			const keyed = step[`${side}Keys`]?.length ?? null;
			const turnSeconds = turned === null ? Number.POSITIVE_INFINITY : turned * SECONDS.click;
			if (keyed !== null && keyed * SECONDS.key <= turnSeconds) keys += keyed;
			else if (turned !== null) clicks += turned;
			else if (side === "receive") fromAny++;
		}
	}
	const seconds =
		writes.length * (SECONDS.place + SECONDS.mode) +
		writes.filter(({ transmit }) => transmit === null).length * (profile.transmit.length > 0 ? SECONDS.receiveOnly : 0) +
		tagCharacters * SECONDS.tagCharacter +
		clicks * SECONDS.click +
		keys * SECONDS.key +
		fromAny * SECONDS.turnFromAny +
		clears * SECONDS.clear +
		steps.length * SECONDS.readBack +
		settings.length * SECONDS.setting;
	const counted = [
		`places to write ${writes.length}`,
		`places to clear ${clears}`,
		...(clicks > 0 ? [`clicks of the knob ${clicks} at ${SECONDS.click} s`] : []),
		...(keys > 0 ? [`keys ${keys} at ${SECONDS.key} s`] : []),
		`characters of tags ${tagCharacters} at ${SECONDS.tagCharacter} s`,
		`settings ${settings.length} at ${SECONDS.setting} s`,
		`read-back at ${SECONDS.readBack} s a place`,
	];
	return {
		minutes: Math.ceil(seconds / 60),
		restsOn: `Counted: ${counted.join(", ")}. The seconds are common practice, no source; an estimate.`,
	};
}

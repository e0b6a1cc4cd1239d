import { MODES } from "@skipwright/rules";
import type { Profile } from "./profile.ts";

export interface Contradiction {
	readonly path: readonly PropertyKey[];
	/** What was expected at the path. */
	readonly expected: string;
}

/** Hz. Below this even the top of a marine MF/HF set's range can only be kilohertz typed for hertz. */
const LOWEST_TOP_HZ = 1_000_000;

type Parts = Omit<Profile, "format" | "version">;

/** What no single field shows: two statements of one profile that cannot both be true. */
export function profileContradictions(profile: Parts): readonly Contradiction[] {
	return [
		...bankContradictions(profile),
		...tagContradictions(profile),
		...rangeContradictions("receive", profile.receive),
		...rangeContradictions("transmit", profile.transmit),
		...stepContradictions(profile),
		...modeContradictions(profile),
		...modeNameContradictions(profile),
		...otherContradictions(profile),
	];
}

function bankContradictions({ banks }: Parts): readonly Contradiction[] {
	return banks.flatMap((bank, i) => [
		...when(banks.findIndex(({ id }) => id === bank.id) < i, ["banks", i, "id"], "each bank's id once"),
		...when(bank.blockLength > bank.places, ["banks", i, "blockLength"], `a block no longer than the bank's ${bank.places} places`),
	]);
}

function tagContradictions({ tag }: Parts): readonly Contradiction[] {
	const characters = [...tag.characters];
	const path = ["tag", "characters"];
	return [
		...when(new Set(characters).size < characters.length, path, "every character once"),
		...when(
			characters.some((character) => /[\p{Cc}\p{Cs}]/u.test(character)),
			path,
			"characters that can be shown, no control characters",
		),
		...when(tag.length > 0 && characters.length === 0, path, "at least one character, or a tag length of 0"),
	];
}

function rangeContradictions(name: "receive" | "transmit", ranges: Parts["receive"]): readonly Contradiction[] {
	const top = ranges.at(-1);
	return [
		...ranges.flatMap(({ fromHz, toHz }, i) => {
			const below = ranges[i - 1];
			return [
				...when(fromHz >= toHz, [name, i, "toHz"], `more than fromHz, ${fromHz}`),
				...when(below !== undefined && fromHz <= below.toHz, [name, i, "fromHz"], `more than the range before it ends at, ${below?.toHz}`),
			];
		}),
		...when(
			top !== undefined && top.toHz < LOWEST_TOP_HZ,
			[name, ranges.length - 1, "toHz"],
			`whole hertz, at least ${LOWEST_TOP_HZ} for the highest range (is this kilohertz?)`,
		),
	];
}

function stepContradictions({ tuningStepsHz: steps, stepsCarry, entry }: Parts): readonly Contradiction[] {
	const finest = steps[0] ?? 0;
	if (finest < 1) return []; // refused by the schema already
	return steps.flatMap((step, i) => {
		const below = steps[i - 1];
		const path = ["tuningStepsHz", i];
		if (below === undefined) return [];
		if (step <= below) return [{ path, expected: `more than the step before it, ${below}` }];
		if (step % finest !== 0) return [{ path, expected: `a multiple of the finest step, ${finest}, which is what the set stores` }];
		const wheels = !stepsCarry && entry !== "keypad";
		return when(wheels && step % below !== 0, path, `a multiple of ${below}, as each digit turns by itself (stepsCarry is false)`);
	});
}

function modeContradictions({ modes }: Parts): readonly Contradiction[] {
	const held = MODES.filter((mode) => modes[mode] !== undefined);
	return [
		...when(held.length === 0, ["modes"], `at least one of ${MODES.join(", ")}`),
		...held.flatMap((mode) => {
			const display = modes[mode];
			return [
				...when(
					display?.shows === "mark" && display.shiftHz === undefined,
					["modes", mode, "shiftHz"],
					"hertz of shift, as the mode shows the mark",
				),
				...when(display?.pitchHz !== undefined && mode !== "CW", ["modes", mode, "pitchHz"], "a pitch in the mode CW only"),
				...when(mode === "USB" && display?.sideband === "lower", ["modes", mode, "sideband"], '"upper", as the mode is USB'),
				...when(mode === "LSB" && display?.sideband === "upper", ["modes", mode, "sideband"], '"lower", as the mode is LSB'),
			];
		}),
	];
}

function modeNameContradictions({ modes, modeNames }: Parts): readonly Contradiction[] {
	const seen = new Set<string>();
	return Object.entries(modeNames).flatMap(([word, mode]) => {
		const path = ["modeNames", word];
		const key = word.trim().toUpperCase();
		const repeated = seen.has(key);
		seen.add(key);
		return [
			...when(repeated, path, "each word once, whatever the case of its letters"),
			...when(key === "", path, "a word"),
			...when(modes[mode] === undefined, path, "a mode that the set has"),
			...when(
				MODES.some((five) => five === key && five !== mode),
				path,
				`${key}, as the word says`,
			),
		];
	});
}

function otherContradictions({ fineTune, scan }: Parts): readonly Contradiction[] {
	return [
		...when(fineTune !== null && fineTune.stepHz > fineTune.rangeHz, ["fineTune", "stepHz"], `no more than rangeHz, ${fineTune?.rangeHz}`),
		...when(
			scan?.stopsOn === "nothing" && (scan.holdMs > 0 || scan.resumeMs > 0),
			["scan", "stopsOn"],
			"squelch or speech where holdMs or resumeMs is more than 0",
		),
	];
}

function when(wrong: boolean, path: readonly PropertyKey[], expected: string): readonly Contradiction[] {
	return wrong ? [{ path, expected }] : [];
}

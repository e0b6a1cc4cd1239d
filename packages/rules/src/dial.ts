import { formatKhz, type Hz, hz } from "@skipwright/units";
import { type DialOptions, dialOffsetHz } from "./dialOffset.ts";
import { whyDial } from "./dialWhy.ts";
import { modesThatReceive } from "./emission.ts";
import { emissionFacts } from "./emissionTable.ts";
import { publishedOffsetHz } from "./reference.ts";
import { type Dial, type DialConvention, MODES, type Mode, type Published } from "./types.ts";

export type { DialOptions } from "./dialOffset.ts";

/** Hz. No frequency of this package lies above it; `hz` refuses more. */
const HIGHEST_HZ = 1_000_000_000;

/**
 * What the dial must read for a published frequency, exact to the hertz, or why no dial does it.
 * Without `options.mode` the set's best mode is taken.
 * @example `dialFor({ hz: hz(8_682_000), means: "assigned", emission: "F3C" }, { USB: { shows: "carrier" } })` has `dialHz` 8680100
 */
export function dialFor(
	published: Published,
	convention: DialConvention,
	options: DialOptions & { readonly mode?: Mode | undefined } = {},
): Dial | { readonly cannot: string } {
	const chosen = options.mode ?? bestMode(published, convention);
	if (chosen === null) return { cannot: noModeWords(published, convention) };
	const problem = modeProblem(chosen, published, convention);
	if (problem !== null) return { cannot: problem };
	const dialHz = published.hz - publishedOffsetHz(published) + dialOffsetHz(chosen, convention, published, options);
	if (dialHz < 0 || dialHz > HIGHEST_HZ) {
		return { cannot: `The dial for ${formatKhz(published.hz)} kHz on ${chosen} would lie at ${dialHz} Hz, where no set can tune.` };
	}
	const dial = hz(dialHz);
	return { dialHz: dial, mode: chosen, why: whyDial(dial, chosen, published, convention, options) };
}

/**
 * The published figure that a dial stands for: the inverse of `dialFor`, for every mode, also one that cannot receive the
 * emission. A figure that would lie below 0 Hz is given as 0, which no list publishes.
 */
export function publishedFor(
	dialHz: Hz,
	mode: Mode,
	published: Omit<Published, "hz">,
	convention: DialConvention,
	options: DialOptions = {},
): Hz {
	const figure = dialHz - dialOffsetHz(mode, convention, published, options) + publishedOffsetHz(published);
	return hz(Math.min(Math.max(figure, 0), HIGHEST_HZ));
}

/** First of the modes that receive the emission, best first, that the set has. */
function bestMode(published: Published, convention: DialConvention): Mode | null {
	const { right, poor } = modesThatReceive(published.emission, published.sideband);
	return [...right, ...poor].find((mode) => convention[mode] !== undefined) ?? null;
}

function modeProblem(mode: Mode, published: Published, convention: DialConvention): string | null {
	if (convention[mode] === undefined) return `The set has no ${mode}; it has ${modesOf(convention)}.`;
	const { right, poor } = modesThatReceive(published.emission, published.sideband);
	if (right.includes(mode) || poor.includes(mode)) return null;
	const { meaning } = emissionFacts(published.emission);
	return `${mode} cannot receive ${published.emission} (${meaning}${lowerWords(published)}); ${[...right, ...poor].join(" or ")} can.`;
}

function noModeWords(published: Published, convention: DialConvention): string {
	const { right, poor } = modesThatReceive(published.emission, published.sideband);
	const { meaning } = emissionFacts(published.emission);
	const wanted = [...right, ...poor].join(" or ");
	return `${published.emission} (${meaning}${lowerWords(published)}) needs ${wanted}, and the set has ${modesOf(convention)}.`;
}

function lowerWords({ emission, sideband }: Published): string {
	return sideband === "lower" && emissionFacts(emission).family === "speech" ? ", lower sideband" : "";
}

function modesOf(convention: DialConvention): string {
	return MODES.filter((mode) => convention[mode] !== undefined).join(", ") || "no mode at all";
}

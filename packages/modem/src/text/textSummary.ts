import type { HeardText, TextGap } from "./heardText.ts";
import { LOST_MARK } from "./printer.ts";

const WORDS: Readonly<Record<TextGap, string>> = {
	"joined late": "its beginning was not heard",
	"faded out": "the signal was lost before the end",
	"recording stopped": "the recording stopped before the end",
	"next message began": "the next message began before its end",
	"ended without NNNN": "its sender stopped without NNNN",
};

/** What was heard, in a sentence or two. */
export function textSummary({
	identity,
	gaps,
	characters,
	lostCharacters,
	isInverted,
}: Pick<HeardText, "identity" | "gaps" | "characters" | "lostCharacters" | "isInverted">): string {
	const what =
		identity === null
			? "Text by collective FEC, no identity heard"
			: `Message ${identity.station}${identity.subject}${identity.number} of station ${identity.station}: ${identity.about}`;
	const lost = lostCharacters === 0 ? "none lost" : `${lostCharacters} lost (${LOST_MARK})`;
	const whole = gaps.length === 0 ? "whole" : `not whole: ${gaps.map((gap) => WORDS[gap]).join(", ")}`;
	const inverted = isInverted ? " The tones came exchanged: wrong sideband or sense." : "";
	return `${what}; ${characters} characters, ${lost}; ${whole}.${inverted}`;
}

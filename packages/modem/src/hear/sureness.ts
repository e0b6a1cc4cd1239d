import type { Heard } from "./heard.ts";

/** How sure it is that what was heard is what it is said to be, and reads as it is told. */
export type Sureness = "certain" | "likely" | "doubtful";

/** Share of lost characters up to which a text counts as well received. Source: IMO's figure for NAVTEX, 4 % (facts). */
const WELL_RECEIVED = 0.04;
/** Share up to which what is read still hangs together. */
const READABLE = 0.2;
/** Characters of a text, lines of a chart and seconds of a tone that leave no doubt of their kind. */
const SURE_CHARACTERS = 30,
	SURE_LINES = 60,
	SURE_TONE_S = 2;

/** From what the receiver itself tells: its check, its losses, how much there was to judge by. */
export function surenessOf(heard: Heard): Sureness {
	switch (heard.kind) {
		case "dsc":
			if (heard.ok) return "certain";
			return heard.symbols.filter((symbol) => symbol === null).length <= READABLE * heard.symbols.length ? "likely" : "doubtful";
		case "text":
		case "teletype":
			if (heard.errorRatio > READABLE) return "doubtful";
			return heard.errorRatio <= WELL_RECEIVED && heard.characters >= SURE_CHARACTERS ? "certain" : "likely";
		case "chart":
			if (heard.began !== "mid-chart") return "certain";
			return heard.image.height >= SURE_LINES ? "likely" : "doubtful";
		case "tone":
			return heard.endS - heard.startS >= SURE_TONE_S ? "certain" : "likely";
		case "voice":
			return "likely"; // it is not understood
	}
}

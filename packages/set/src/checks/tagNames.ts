import { formatKhz } from "@skipwright/units";
import type { Known } from "./knownDials.ts";

/** Shortest piece of a station's name that counts as naming it: "HORT" for Horta, not "HO". */
const NAME_LETTERS = 4;

/** Whether a tag names this listing, channel or frequency: call sign, channel number, figure in kHz, or the start of the place's name. */
export function tagNames(tag: string, known: Known): boolean {
	const words = tag
		.toUpperCase()
		.split(/[^A-Z0-9.]+/)
		.filter((word) => word !== "");
	const { station, channel, published } = known;
	const figure = formatKhz(published.hz);
	const whole = figure.split(".")[0] ?? figure;
	const number = channel?.number ?? known.listing?.channel ?? null;
	return words.some(
		(word) =>
			word === figure ||
			word === whole ||
			(number !== null && word.replace(/^CH/, "") === String(number)) ||
			(station !== null && station.callSign.length >= 3 && word.startsWith(station.callSign)) ||
			(station !== null && startsPlaceName(word, station.name)),
	);
}

function startsPlaceName(word: string, name: string): boolean {
	const places = name.toUpperCase().split(/[^\p{L}]+/u);
	return places.some(
		(place) => place.length >= NAME_LETTERS && word.length >= NAME_LETTERS && (place.startsWith(word) || word.startsWith(place)),
	);
}

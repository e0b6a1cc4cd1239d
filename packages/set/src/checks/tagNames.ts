import { formatKhz, type Hz } from "@skipwright/units";

/** What a tag may use to name a listing, channel or frequency; capitals. */
export interface Names {
	/** The figure in kHz, exact and without decimals. */
	readonly figures: readonly string[];
	readonly channel: string | null;
	readonly callSign: string | null;
	/** Words of the place's name that are long enough to name it. */
	readonly places: readonly string[];
}

/** Shortest piece of a station's name that counts as naming it: "HORT" for Horta, not "HO". */
const NAME_LETTERS = 4;
/** What stands in the names of many stations and so names none. */
const ANY_STATION: readonly string[] = ["NAVTEX", "RADIO", "MARITIME", "COAST", "STATION"];
/** Shortest call sign that is no mere abbreviation. */
const CALL_SIGN_LETTERS = 3;

export function namesOf(hz: Hz, channel: number | null, station: { readonly name: string; readonly callSign: string } | null): Names {
	const figure = formatKhz(hz);
	const callSign = station?.callSign ?? "";
	const words = (station?.name ?? "").toUpperCase().split(/[^\p{L}]+/u);
	return {
		figures: [figure, figure.split(".")[0] ?? figure],
		channel: channel === null ? null : String(channel),
		callSign: callSign.length >= CALL_SIGN_LETTERS ? callSign : null,
		places: words.filter((word) => word.length >= NAME_LETTERS && !ANY_STATION.includes(word)),
	};
}

/** The words of a tag, capitals. */
export function tagWords(tag: string): readonly string[] {
	return tag
		.toUpperCase()
		.split(/[^A-Z0-9.]+/)
		.filter((word) => word !== "");
}

/** Whether a tag, as words, names it: call sign, channel number, figure in kHz, or the start of the place's name. */
export function tagNames(words: readonly string[], { figures, channel, callSign, places }: Names): boolean {
	return words.some(
		(word) =>
			figures.includes(word) ||
			(channel !== null && word.endsWith(channel) && word.replace(/^CH/, "") === channel) ||
			(callSign !== null && word.startsWith(callSign)) ||
			(word.length >= NAME_LETTERS && places.some((place) => place.startsWith(word) || word.startsWith(place))),
	);
}

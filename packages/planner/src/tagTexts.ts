import type { Listing, Station } from "@skipwright/directory";
import { formatKhz, type Hz } from "@skipwright/units";

/** Texts for a guard carrier: each holds a guard word or the carrier figure, as the checks ask of a place that sends there. */
export function guardTexts(carrier: Hz): readonly string[] {
	return withFigure(["DIST", "D"], carrier);
}

export function callingTexts(channel: number): readonly string[] {
	return [`CALL ${channel}`, `CALL${channel}`, `C${channel}`, String(channel)];
}

export function shipTexts(carrier: Hz): readonly string[] {
	return withFigure(["SHIP", "S"], carrier);
}

export function safetyTexts(centre: Hz, service: "navtex" | "nbdp-msi"): readonly string[] {
	return withFigure(service === "navtex" ? ["NAVTEX", "NAV", "N"] : ["MSI", "M"], centre);
}

/** Call sign or place, with the channel where the ship answers on it, else the published figure, which is what lists and books give. */
export function listingTexts(listing: Listing, { name, callSign }: Station): readonly string[] {
	const place = (name.split(/[,(]/)[0] ?? name).toUpperCase().trim();
	const sign = callSign.split("/")[0] ?? "";
	const who = [
		...(sign === "" ? [place, place.slice(0, 5)] : [sign]),
		(sign || place).slice(0, 3),
		(sign || place).slice(0, 2),
		(sign || place).slice(0, 1),
	];
	const channel = listing.channel !== null && !listing.receiveOnly ? [`${who[0]} ${listing.channel}`, `${who[0]}${listing.channel}`] : [];
	return [...channel, ...withFigure(who, listing.hz)];
}

/** An owner knows a net by its name. */
export function ownTexts(listing: Listing, { name }: Station): readonly string[] {
	const words = name.toUpperCase().trim();
	const first = words.split(/\s+/)[0] ?? words;
	return [words, first, ...withFigure([first.slice(0, 5), first.slice(0, 3), first.slice(0, 1)], listing.hz)];
}

function withFigure(who: readonly string[], published: Hz): readonly string[] {
	const figure = formatKhz(published);
	const whole = figure.split(".")[0] ?? figure;
	const figures = figure === whole ? [whole] : [figure, whole];
	return [...who.flatMap((text) => figures.flatMap((number) => [`${text} ${number}`, `${text}${number}`])), ...figures];
}

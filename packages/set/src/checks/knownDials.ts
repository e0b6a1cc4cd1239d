import { type Directory, type Freshness, freshness, type Listing, publishedOf, stationById } from "@skipwright/directory";
import type { Channel, DialConvention, Guard, Mode, Published, ServiceId } from "@skipwright/rules";
import { channels, dscCalling, guards, msiFrequencies } from "@skipwright/rules";
import { formatKhz, type Hz, type IsoDate } from "@skipwright/units";
import { type ExpectedDial, expectedDials, FITS } from "./expectedDials.ts";
import { type Names, namesOf } from "./tagNames.ts";

/** Something that a place may be for: a listing, one side of a channel, a guarded, calling or safety frequency. */
export interface Known {
	readonly published: Published;
	/** For a person: "channel 424, coast side", "us-boston weather charts 6340.5 kHz". */
	readonly name: string;
	readonly listing: Listing | null;
	readonly channel: Channel | null;
	/** Which side of `channel` it is; a simplex carrier is both. */
	readonly side: "ship" | "coast" | "both" | null;
	readonly guard: Guard | null;
	/** What a tag may call it. */
	readonly names: Names;
	/** Age of the listing on the day of the check; what the Regulations fix is always fresh. */
	readonly freshness: Freshness["grade"];
}

export interface KnownDial extends ExpectedDial {
	readonly known: Known;
}

/** Readings of each mode, ascending. */
export type DialIndex = Readonly<Record<Mode, readonly KnownDial[]>>;

/** Every dial reading that means something on a day, right or as a usual slip, for the five modes under a set's convention. */
export function indexDials(convention: DialConvention, directory: Directory, on: IsoDate): DialIndex {
	const known = [...fromRules(), ...directory.listings.map((listing) => fromListing(directory, listing, on))];
	const dialsIn = (mode: Mode): readonly KnownDial[] =>
		known
			.flatMap((one) => expectedDials(one.published, mode, convention).map((dial) => ({ ...dial, known: one })))
			.sort((a, b) => a.dialHz - b.dialHz);
	return { USB: dialsIn("USB"), LSB: dialsIn("LSB"), AM: dialsIn("AM"), CW: dialsIn("CW"), FSK: dialsIn("FSK") };
}

function fromRules(): readonly Known[] {
	const fixed = (published: Published, channel: Channel | null = null) => {
		const names = namesOf(published.hz, channel?.number ?? null, null);
		return { published, listing: null, channel, side: null, guard: null, names, freshness: "fresh" as const };
	};
	const voice = (hz: Hz): Published => ({ hz, means: "carrier", emission: "J3E" });
	const out: Known[] = [];
	for (const channel of channels()) {
		for (const { hz, side } of sidesOf(channel)) out.push({ ...fixed(voice(hz), channel), name: sideName(channel, side), side });
	}
	for (const guard of guards()) {
		const means = guard.kind === "voice" || guard.kind === "sar-voice" ? "carrier" : "assigned";
		out.push({ ...fixed({ hz: guard.hz, means, emission: guard.emission }), name: guard.label, guard });
	}
	const data = (hz: Hz, service: ServiceId): Published => ({ hz, means: "assigned", emission: "F1B", service });
	for (const { ship, coast, series } of dscCalling()) {
		for (const hz of new Set([ship, coast])) out.push({ ...fixed(data(hz, "dsc-watch")), name: `DSC calling, ${series}` });
	}
	for (const { hz, service, label } of msiFrequencies()) out.push({ ...fixed(data(hz, service)), name: label });
	return out;
}

function sidesOf(channel: Channel): readonly { hz: Hz; side: "ship" | "coast" | "both" }[] {
	const { ship, coast } = channel;
	if (ship !== null && ship === coast) return [{ hz: ship, side: "both" }];
	return [
		...(ship === null ? [] : [{ hz: ship, side: "ship" as const }]),
		...(coast === null ? [] : [{ hz: coast, side: "coast" as const }]),
	];
}

/** Name of a channel for a person. */
export function channelName({ number, section, ship, coast }: Channel): string {
	if (number !== null && section === "A") return `channel ${number}`;
	const hz = ship ?? coast;
	return `${section === "B" ? "simplex" : section} carrier ${hz === null ? "" : formatKhz(hz)}`;
}

function sideName(channel: Channel, side: "ship" | "coast" | "both"): string {
	return side === "both" ? channelName(channel) : `${channelName(channel)}, ${side} side`;
}

function fromListing(directory: Directory, listing: Listing, on: IsoDate): Known {
	return {
		published: publishedOf(listing),
		name: listingName(directory, listing),
		listing,
		channel: null,
		side: null,
		guard: null,
		names: namesOf(listing.hz, listing.channel, stationById(directory, listing.stationId)),
		freshness: freshness(listing, on).grade,
	};
}

/** A listing for a person: "Boston, Massachusetts, fax, 6340.5 kHz assigned". */
export function listingName(directory: Directory, { stationId, service, hz, means }: Listing): string {
	return `${stationById(directory, stationId)?.name ?? stationId}, ${service}, ${formatKhz(hz)} kHz ${means}`;
}

/** Readings of `mode` within `toleranceHz` of `dialHz`, the best fit first, then the nearest. */
export function dialsNear(index: DialIndex, mode: Mode, dialHz: number, toleranceHz: number): readonly KnownDial[] {
	const dials = index[mode];
	let low = 0;
	let high = dials.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if (dials[middle]!.dialHz < dialHz - toleranceHz) low = middle + 1;
		else high = middle;
	}
	const out: KnownDial[] = [];
	for (let i = low; i < dials.length && dials[i]!.dialHz <= dialHz + toleranceHz; i++) out.push(dials[i]!);
	const miss = (dial: KnownDial) => Math.abs(dial.dialHz - dialHz);
	return out.sort((a, b) => FITS.indexOf(a.fit) - FITS.indexOf(b.fit) || miss(a) - miss(b));
}

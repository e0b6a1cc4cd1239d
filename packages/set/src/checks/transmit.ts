import type { Directory } from "@skipwright/directory";
import { listingsNear, publishedOf } from "@skipwright/directory";
import type { DialConvention, Guard, Region, Spectrum } from "@skipwright/rules";
import {
	allocationsAt,
	guardOverlapping,
	guards,
	guardsAt,
	isGuardTag,
	mayTransmit,
	msiFrequencies,
	occupiedSpectrum,
	overlaps,
	spectrumOfPublished,
} from "@skipwright/rules";
import type { Hz } from "@skipwright/units";
import { formatKhz, hz } from "@skipwright/units";
import type { FindingCode, Row, Severity } from "../types.ts";
import { carrierOf, isChart, isData } from "./expectedDials.ts";
import { type DialIndex, dialsNear, type KnownDial, listingName } from "./knownDials.ts";
import type { PairState } from "./pairs.ts";

export interface TransmitContext {
	readonly convention: DialConvention;
	readonly directory: Directory;
	readonly index: DialIndex;
	readonly toleranceHz: number;
	readonly region: Region | null;
	readonly amateurLicence: boolean;
}

/** What sending on a row would do. */
export interface TransmitFault {
	readonly code: Extract<
		FindingCode,
		"distress-used-as-working" | "amateur-without-licence" | "amateur-other-region" | "transmit-on-broadcast" | "transmit-outside-service"
	>;
	readonly severity: Severity;
	/** What is overlapped or missing, in words. */
	readonly detail: string;
	/** Carrier to use instead, where there is one. */
	readonly instead: Hz | null;
	/** The guard that is overlapped. */
	readonly guard: Guard | null;
}

/** Routine calls belong there instead of on the distress carrier. Source: RR 52.221A (from memory); 47 CFR 80.369. */
const ROUTINE_CALLING: Readonly<Record<number, Hz>> = { 1221: hz(12_359_000), 1621: hz(16_537_000) };
/** Calling pairs whose ship side is a distress carrier and which may be called on. Source: RR Appendix 17, 47 CFR 80.369(d). */
const CALLING_PAIRS: readonly number[] = [421, 606];

/** Distress first; the other faults only where the pair itself is sound, since mending a pair mends them. */
export function distressFault(row: Row, matched: KnownDial | null, pair: PairState, context: TransmitContext): TransmitFault | null {
	const spectrum = sentSpectrum(row, matched, context);
	if (spectrum === null) return null;
	const met = guardsMet(spectrum);
	const guard = met[0];
	if (guard === undefined || met.some((one) => isGuardPlace(row, one))) return null;
	const number = pair.kind === "good" ? pair.channel.number : null;
	if (number !== null && CALLING_PAIRS.includes(number)) return null;
	const instead = number === null ? undefined : ROUTINE_CALLING[number];
	const severity = instead === undefined ? "stop" : "fix";
	const detail = `${formatKhz(guard.hz)} kHz (${guard.label})`;
	return { code: "distress-used-as-working", severity, detail, instead: instead ?? null, guard };
}

/** Guards whose speech or tones a transmission would fall on, or whose carrier itself: a key held down there is heard as a whistle. */
function guardsMet(spectrum: Spectrum): readonly Guard[] {
	const overlapped = guardOverlapping(spectrum);
	return overlapped.length > 0 ? overlapped : guards().filter(({ hz: at }) => spectrum.lowHz <= at && at <= spectrum.highHz);
}

/** A place made for guarding: one frequency, the exact carrier, USB, and a tag that says so. */
function isGuardPlace(row: Row, guard: Guard): boolean {
	return isVoiceGuard(guard) && row.mode === "USB" && row.receive === guard.hz && row.transmit === guard.hz && isGuardTag(row.tag, guard);
}

/** Whether a guard is spoken on; DSC and direct printing have no places of their own that send. */
export function isVoiceGuard({ kind }: Guard): boolean {
	return kind === "voice" || kind === "sar-voice";
}

/** The first of the remaining transmit faults; with no Region given, all three are looked at and a difference is only a `mind`. */
export function serviceFault(row: Row, matched: KnownDial | null, context: TransmitContext): TransmitFault | null {
	const spectrum = sentSpectrum(row, matched, context);
	if (spectrum === null || guardsAt(row.receive).some((guard) => isGuardPlace(row, guard))) return null;
	const ship = isShipCarrier(row, context);
	const broadcasts = ship ? [] : broadcastsUnder(spectrum, row, matched, context);
	const inRegion = (region: Region) => faultInRegion(spectrum, region, ship, broadcasts, context);
	if (context.region !== null) return inRegion(context.region);
	const faults = ([1, 2, 3] as const).map((region) => ({ region, fault: inRegion(region) }));
	const found = faults.flatMap(({ region, fault }) => (fault === null ? [] : [{ region, fault }]));
	const first = found[0];
	if (first === undefined) return null;
	if (found.length === faults.length) return first.fault;
	const regions = found.map(({ region }) => region).join(" and ");
	return { ...first.fault, severity: "mind", detail: `in ITU Region ${regions}: ${first.fault.detail}` };
}

function faultInRegion(
	spectrum: Spectrum,
	region: Region,
	isShip: boolean,
	broadcasts: readonly Broadcast[],
	context: TransmitContext,
): TransmitFault | null {
	const rights = mayTransmit(spectrum, region)[0];
	const fault = (code: TransmitFault["code"], detail: string): TransmitFault => ({
		code,
		severity: "stop",
		detail,
		instead: null,
		guard: null,
	});
	const isAmateur = rights?.amateur ?? false;
	if (isAmateur && !isShip && !context.amateurLicence)
		return fault("amateur-without-licence", "an amateur band, and no amateur licence is given");
	const elsewhere = mayTransmit(spectrum, null).filter((other) => other.amateur && other.region !== region);
	if (!isAmateur && !isShip && rights?.ship === "no" && elsewhere.length > 0) {
		return fault("amateur-other-region", `an amateur band only in Region ${elsewhere.map((other) => other.region).join(" and ")}`);
	}
	if (isAmateur && context.amateurLicence) return null;
	const mayShip = isShip || (rights !== undefined && rights.ship !== "no");
	const isReused = mayShip && spectrum.highHz <= REUSED_BELOW_HZ;
	const surely = broadcasts.find(({ isHeard }) => isHeard || !isReused)?.name ?? (isShip ? null : broadcastBand(spectrum, region, mayShip));
	if (surely !== null) return fault("transmit-on-broadcast", surely);
	const [perhaps] = broadcasts;
	if (perhaps !== undefined) return { ...fault("transmit-on-broadcast", `${perhaps.name}, perhaps out of reach`), severity: "mind" };
	if (!isShip && rights?.ship === "no") return fault("transmit-outside-service", "no maritime or amateur band");
	return null;
}

/** Hz. Below it coast stations' figures serve again in other seas, and a ship's own there is only its neighbour on paper. */
const REUSED_BELOW_HZ = 4_000_000;

/**
 * The standard-time or broadcasting band that a transmission would fall on. A band that broadcasting only shares (a tropical one)
 * does not count where ships may send.
 */
function broadcastBand(spectrum: Spectrum, region: Region, mayShip: boolean): string | null {
	const band = allocationsAt(spectrum, region).find(
		({ service, shared }) => service === "time-signal" || (service === "broadcasting" && !(shared && mayShip)),
	);
	if (band === undefined) return null;
	return band.service === "time-signal" ? "a standard-time band" : "a broadcasting band";
}

/** Something published as receive only that a transmission would fall on. */
interface Broadcast {
	readonly name: string;
	/** The row itself receives it. */
	readonly isHeard: boolean;
}

/** Hz. Half of the widest listing (A3E) and of the widest transmission together, for the look-up before the exact comparison. */
const WIDEST_REACH_HZ = 6_000;

/** Receive-only listings that are not closed, what the row is for first, then the nearest, then the safety text frequencies. */
function broadcastsUnder(spectrum: Spectrum, row: Row, matched: KnownDial | null, context: TransmitContext): readonly Broadcast[] {
	const { directory, index, toleranceHz } = context;
	const middle = hz(Math.max(0, Math.round((spectrum.lowHz + spectrum.highHz) / 2)));
	const listings = listingsNear(directory, middle, WIDEST_REACH_HZ).filter(
		(listing) => listing.receiveOnly && listing.status !== "closed" && overlaps(spectrum, spectrumOfPublished(publishedOf(listing))),
	);
	const own = listings.filter(({ id }) => id === matched?.known.listing?.id);
	const heard = dialsNear(index, row.mode, row.receive, toleranceHz).map(({ known }) => known.listing?.id);
	const text = msiFrequencies().filter((msi) =>
		overlaps(spectrum, spectrumOfPublished({ hz: msi.hz, means: "assigned", emission: "F1B", service: msi.service })),
	);
	const receiveOnly = "which ships only receive";
	return [
		...[...new Set([...own, ...listings])].map((listing) => ({
			name: `${listingName(directory, listing)}, ${receiveOnly}`,
			isHeard: heard.includes(listing.id),
		})),
		...text.map(({ label, hz: at }) => ({ name: `${label}, ${formatKhz(at)} kHz, ${receiveOnly}`, isHeard: true })),
	];
}

/**
 * Whether the transmit side is a carrier given to ships: a ship or simplex carrier of Appendix 17, or the ship side of a
 * published working listing (not the owner's own). Coast stations do broadcast on simplex carriers that ships use.
 */
function isShipCarrier(row: Row, { index, toleranceHz }: TransmitContext): boolean {
	const { transmit } = row;
	if (transmit === null) return false;
	const isNear = (carrier: number) => Math.abs(carrier - transmit) <= toleranceHz;
	// a working listing is found by its coast side; its ship side may be anywhere
	const near = [...dialsNear(index, row.mode, transmit, toleranceHz), ...dialsNear(index, row.mode, row.receive, toleranceHz)];
	return near.some(({ known: { channel, side, listing, published } }) => {
		if (channel !== null) return side !== "coast" && isNear(carrierOf(published));
		if (listing === null || listing.origin === "owner" || listing.receiveOnly || listing.service !== "voice-working") return false;
		return isNear(listing.shipTx ?? listing.hz);
	});
}

function sentSpectrum(row: Row, matched: KnownDial | null, { convention }: TransmitContext): Spectrum | null {
	if (row.transmit === null) return null;
	const whole: DialConvention =
		convention[row.mode] === undefined ? { ...convention, [row.mode]: { shows: row.mode === "FSK" ? "centre" : "carrier" } } : convention;
	const published = matched?.fit === "right" ? matched.known.published : undefined;
	const emission = published?.emission;
	// a chart or data signal through the voice modes, rightly tuned, is narrower than speech; everything else is the mode's usual emission
	const isNarrow = emission !== undefined && (isChart(emission) || isData(emission)) && row.mode !== "AM" && row.mode !== "CW";
	const sent = isNarrow ? { emission, service: published?.service } : {};
	return occupiedSpectrum({ dialHz: row.transmit, mode: row.mode, convention: whole, ...sent });
}

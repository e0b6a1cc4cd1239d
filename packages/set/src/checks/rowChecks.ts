import { confidenceText } from "@skipwright/directory";
import { type Guard, isInAppendix17Voice, mayTransmit } from "@skipwright/rules";
import { formatKhz, hz, type IsoDate } from "@skipwright/units";
import type { Profile } from "../profile.ts";
import { inRange } from "../tuning.ts";
import type { Finding, FindingCode, Row } from "../types.ts";
import { carrierOf, isChart } from "./expectedDials.ts";
import { rowFinding } from "./findings.ts";
import { dialsNear, type KnownDial } from "./knownDials.ts";
import { isTuned, type Match, matchRow } from "./matchRow.ts";
import { nearMiss } from "./nearMiss.ts";
import { type PairState, pairState, pairText } from "./pairs.ts";
import { settableHz, settableKhz, settableText } from "./settable.ts";
import { tagNames, tagWords } from "./tagNames.ts";
import { distressFault, isVoiceGuard, serviceFault, type TransmitContext, type TransmitFault } from "./transmit.ts";

export interface RowContext extends TransmitContext {
	readonly profile: Profile;
	readonly on: IsoDate;
}

const khz = (value: number) => formatKhz(hz(value));

/**
 * What is wrong with one row by what it means on the air: at most one finding about what the dial stands for, one about
 * the mode, one about sending, one about the listing's age. A distress carrier used for working outranks the first kind.
 */
export function checkRow(row: Row, match: Match, pair: PairState, context: RowContext): readonly Finding[] {
	const tuned = match.best !== null && isTuned(match.fit) ? match.best : null;
	const distress = distressFault(row, tuned, pair, context);
	const meaning = distress === null ? meaningFinding(row, match, pair, context) : null;
	const isPairFault = meaning?.code === "pair-swapped" || meaning?.code === "pair-broken";
	const sending = distress ?? (isPairFault ? null : serviceFault(row, tuned, context));
	return [
		meaning,
		tuned !== null ? modeFinding(row, tuned, context) : meaning === null || meaning.code === "no-listing" ? amateurCustom(row) : null,
		sending === null ? null : sendingFinding(row, sending, mendedText(row, match, meaning, context)),
		tuned === null ? null : ageFinding(row, match, context.on),
	].filter((finding) => finding !== null);
}

function meaningFinding(row: Row, match: Match, pair: PairState, context: RowContext): Finding | null {
	return assigned(row, match, context) ?? pairFinding(row, pair) ?? offset(row, match, context) ?? unmatched(row, match, context);
}

/** The sides that are keyed on an assigned frequency; where both are one, the receive side speaks for them. */
function assignedSlips(row: Row, match: Match, { index, toleranceHz }: RowContext) {
	const { receive, transmit, mode } = row;
	const sent = transmit === null || transmit === receive ? undefined : dialsNear(index, mode, transmit, toleranceHz)[0];
	return {
		receiveSlip: match.fit === "assigned-as-carrier" ? match.best : null,
		transmitSlip: sent?.fit === "assigned-as-carrier" ? sent : null,
	};
}

/** The row as it is once its dial is mended as the finding about it says, where that moves what is sent; else null. */
function mendedRow(row: Row, match: Match, code: FindingCode, context: RowContext): Row | null {
	const bothWays = (dialHz: number, mode = row.mode): Row | null => {
		const held = settableHz(context.profile, dialHz);
		return row.transmit === row.receive ? { ...row, receive: held, transmit: held, mode } : null;
	};
	switch (code) {
		case "assigned-as-carrier": {
			const { receiveSlip, transmitSlip } = assignedSlips(row, match, context);
			const carrier = (slip: KnownDial) => settableHz(context.profile, carrierOf(slip.known.published));
			if (receiveSlip !== null && row.transmit === row.receive) return bothWays(carrier(receiveSlip));
			if (transmitSlip === null) return null;
			return { ...row, receive: receiveSlip === null ? row.receive : carrier(receiveSlip), transmit: carrier(transmitSlip) };
		}
		case "offset-missing":
		case "offset-twice": {
			const right = match.best?.right ?? null;
			return right === null ? null : bothWays(right.dialHz, right.mode);
		}
		case "near-miss": {
			const near = nearSlip(row, context);
			return near === null ? null : bothWays(near.dialHz);
		}
		default:
			return null;
	}
}

/** What a row sends on once mended, in words, where that mends the sending too; else null. */
function mendedText(row: Row, match: Match, meaning: Finding | null, context: RowContext): string | null {
	const mended = meaning === null ? null : mendedRow(row, match, meaning.code, context);
	if (mended === null || mended.transmit === null) return null;
	const then = matchRow(mended, context.index, context.toleranceHz);
	const tuned = then.best !== null && isTuned(then.fit) ? then.best : null;
	const pair = pairState(mended, context.index, context.toleranceHz);
	const isFault = pair.kind === "swapped" || pair.kind === "broken";
	if (isFault || distressFault(mended, tuned, pair, context) !== null || serviceFault(mended, tuned, context) !== null) return null;
	const sides =
		mended.transmit === mended.receive
			? `${khz(mended.receive)} kHz both ways`
			: `receive ${khz(mended.receive)}, transmit ${khz(mended.transmit)} kHz`;
	return `key ${mended.mode} ${sides} as ${meaning?.code} says, and this is mended too; until then receive only`;
}

function nearSlip(row: Row, { index, profile }: RowContext): KnownDial | null {
	return nearMiss(row, index, (dialHz) => inRange(profile, dialHz, "receive"));
}

function assigned(row: Row, match: Match, context: RowContext): Finding | null {
	const { transmit } = row;
	const { receiveSlip, transmitSlip } = assignedSlips(row, match, context);
	if (receiveSlip === null && transmitSlip === null) return null;
	const side = (name: string, value: number, slip: KnownDial | null) =>
		slip === null
			? []
			: [
					`${name} ${khz(value)} is the assigned frequency of ${slip.known.name}; key the carrier ${settableKhz(context.profile, carrierOf(slip.known.published))}`,
				];
	const parts = [...side("receive", row.receive, receiveSlip), ...(transmit === null ? [] : side("transmit", transmit, transmitSlip))];
	const bothSame = receiveSlip !== null && transmit === row.receive ? ", both ways" : "";
	return rowFinding(
		row,
		"assigned-as-carrier",
		"fix",
		"an assigned frequency is keyed where the set wants the carrier",
		`${parts.join("; ")} kHz${bothSame}`,
	);
}

function pairFinding(row: Row, pair: PairState): Finding | null {
	const sides = `receive ${khz(row.receive)}, transmit ${row.transmit === null ? "-" : khz(row.transmit)} kHz`;
	if (pair.kind === "swapped") {
		return rowFinding(
			row,
			"pair-swapped",
			"stop",
			`${sides}: the two sides of ${pairText(pair.channel, khz)} are exchanged`,
			`key ${pairText(pair.channel, khz)}`,
		);
	}
	if (pair.kind !== "broken") return null;
	const choices = pair.channels.map((channel) => pairText(channel, khz)).join(" or ");
	return rowFinding(
		row,
		"pair-broken",
		"stop",
		`${sides}: the two do not belong together`,
		`key ${choices}, or make the place receive only`,
	);
}

function offset(row: Row, { best, fit }: Match, { profile }: RowContext): Finding | null {
	if (best === null || best.right === null || (fit !== "offset-missing" && fit !== "offset-twice")) return null;
	const { name, published } = best.known;
	const below = published.hz - best.right.dialHz;
	const step = `${below < 0 ? "plus" : "less"} ${khz(Math.abs(below))}`;
	const how =
		fit === "offset-twice"
			? `the step from the published figure is taken twice, or where the mode already shows the centre`
			: `the step from the published ${published.emission === "A1A" || published.emission === "J2A" ? "carrier" : "centre"} ${khz(published.hz)} to the dial is missing, the other service's, or the wrong way`;
	const remedy = `${settableText(profile, best.right)}${below === 0 ? " (the set shows the centre)" : ` (published ${khz(published.hz)} ${step})`}`;
	return rowFinding(row, fit, "fix", `${row.mode} ${khz(row.receive)} kHz for ${name}: ${how}`, remedy);
}

function unmatched(row: Row, match: Match, context: RowContext): Finding | null {
	const isVoice = row.mode === "USB" || row.mode === "LSB" || row.mode === "AM";
	const receiveUnknown = match.best === null;
	const transmitUnknown = row.transmit !== null && dialsNear(context.index, row.mode, row.transmit, context.toleranceHz).length === 0;
	if (receiveUnknown && !isBroadcastListening(row)) {
		const near = nearSlip(row, context);
		if (near !== null) {
			const meant = settableKhz(context.profile, near.dialHz);
			const what = `${row.mode} ${khz(row.receive)} kHz matches nothing; ${meant} is one keying slip away: ${near.known.name}`;
			return rowFinding(row, "near-miss", "fix", what, `if that is meant, key ${meant} kHz`);
		}
	}
	const offGrid = [...(receiveUnknown ? [row.receive] : []), ...(transmitUnknown && row.transmit !== null ? [row.transmit] : [])].find(
		isVoiceSlot,
	);
	if (isVoice && offGrid !== undefined) {
		const carriers = nearestCarriers(offGrid, context).map(khz);
		const what = `${khz(offGrid)} kHz lies among the marine voice channels but is no carrier of them`;
		return rowFinding(
			row,
			"off-raster",
			"fix",
			what,
			`the nearest ${carriers.length === 1 ? "carrier is" : "carriers are"} ${carriers.join(" and ")} kHz`,
		);
	}
	if (!receiveUnknown || isLicensedAmateur(row, context)) return null;
	const what = `${row.mode} ${khz(row.receive)} kHz matches no channel, listing or guarded frequency known here`;
	return rowFinding(row, "no-listing", "mind", what, "say what it is in your own listings (--own), or free the place");
}

/** Receive-only AM in a broadcasting band is what it looks like, not a slip of some other figure. */
function isBroadcastListening(row: Row): boolean {
	if (row.mode !== "AM" || row.transmit !== null) return false;
	const at = { lowHz: row.receive, highHz: row.receive };
	return mayTransmit(at, null).some(({ services }) =>
		services.some(({ service, covers }) => service === "broadcasting" && covers === "wholly"),
	);
}

function isLicensedAmateur(row: Row, { amateurLicence }: RowContext): boolean {
	return amateurLicence && isAmateurBand(row.receive);
}

function isAmateurBand(dialHz: number): boolean {
	return mayTransmit({ lowHz: dialHz, highHz: dialHz }, null).some(({ amateur }) => amateur);
}

function isVoiceSlot(dialHz: number): boolean {
	return isInAppendix17Voice({ lowHz: dialHz, highHz: dialHz });
}

/** Hz. Wider than any gap between Appendix 17 voice carriers inside a block. */
const RASTER_REACH_HZ = 3_000;

function nearestCarriers(dialHz: number, { index }: RowContext): readonly number[] {
	const carriers = dialsNear(index, "USB", dialHz, RASTER_REACH_HZ)
		.filter(({ fit, known }) => fit === "right" && known.channel !== null)
		.map((dial) => dial.dialHz as number);
	const below = Math.max(...carriers.filter((carrier) => carrier <= dialHz));
	const above = Math.min(...carriers.filter((carrier) => carrier > dialHz));
	return [below, above].filter(Number.isFinite);
}

function modeFinding(row: Row, { fit, known, right }: KnownDial, { profile }: RowContext): Finding | null {
	const should = right === null ? known.published.emission : settableText(profile, right);
	const isMirroredChart = fit === "poor" && isChart(known.published.emission);
	if (isMirroredChart)
		return rowFinding(row, "wrong-sideband", "mind", `a chart taken on LSB comes out as a negative: ${known.name}`, should);
	if (fit === "wrong-sideband") {
		const severity = isAmateurBand(known.published.hz) ? "mind" : "fix";
		return rowFinding(row, "wrong-sideband", severity, `${row.mode} is the wrong sideband for ${known.name}`, should);
	}
	if (fit === "wrong-mode")
		return rowFinding(row, "wrong-mode", "fix", `${row.mode} cannot receive ${known.published.emission}: ${known.name}`, should);
	if (fit !== "poor") return null;
	return rowFinding(row, "wrong-mode", "mind", `${row.mode} hears ${known.published.emission} only as a beat note: ${known.name}`, should);
}

/** Hz. Below it amateurs speak on lower sideband, above on upper (5 MHz excepted). Common practice, no source. */
const AMATEUR_LSB_BELOW_HZ = 10_000_000;

function amateurCustom(row: Row): Finding | null {
	if ((row.mode !== "USB" && row.mode !== "LSB") || !isAmateurBand(row.receive)) return null;
	const isFiveMegahertz = row.receive > 5_000_000 && row.receive < 6_000_000;
	const custom = row.receive < AMATEUR_LSB_BELOW_HZ && !isFiveMegahertz ? "LSB" : "USB";
	if (row.mode === custom) return null;
	return rowFinding(row, "wrong-sideband", "mind", `amateurs use ${custom} at ${khz(row.receive)} kHz by custom`, `try ${custom}`);
}

/** @param mended the remedy where mending the dial mends the sending */
function sendingFinding(row: Row, { code, severity, detail, instead, guard }: TransmitFault, mended: string | null): Finding {
	const sent = row.transmit === null ? "" : `transmit ${khz(row.transmit)} kHz ${row.mode}`;
	switch (code) {
		case "distress-used-as-working": {
			const remedy = instead === null ? guardRemedy(guard) : `routine calls belong on ${khz(instead)} kHz; make this place receive only`;
			return rowFinding(row, code, severity, `${sent} falls on ${detail}, tagged "${row.tag}"`, remedy);
		}
		case "amateur-without-licence":
			return rowFinding(
				row,
				code,
				severity,
				`${sent}: ${detail}`,
				mended ?? "make it receive only, or give the amateur licence (--licence amateur)",
			);
		case "amateur-other-region":
			return rowFinding(row, code, severity, `${sent}: ${detail}`, mended ?? "make it receive only in this Region");
		case "transmit-on-broadcast":
			return rowFinding(row, code, severity, `${sent} falls on ${detail}`, mended ?? "make it receive only");
		case "transmit-outside-service":
			return rowFinding(row, code, severity, `${sent}: ${detail}`, mended ?? "make it receive only");
	}
}

function guardRemedy(guard: Guard | null): string {
	if (guard === null || !isVoiceGuard(guard)) return "make it receive only";
	const figure = khz(guard.hz);
	return `make it receive only, or a guard place: ${figure} kHz both ways, USB, tag DIST ${figure}`;
}

function ageFinding(row: Row, match: Match, on: IsoDate): Finding | null {
	const listings = match.equals.flatMap(({ known }) => (known.listing === null ? [] : [known]));
	const regulated = match.equals.some(({ known }) => known.listing === null);
	const words = tagWords(row.tag);
	const isNamed = listings.some(({ names }) => tagNames(words, names) && !isFigureOnly(row.tag));
	const closed = listings.filter(({ listing }) => listing?.status === "closed");
	if (closed.length > 0 && closed.length === listings.length && (!regulated || isNamed)) {
		const what = closed.map(({ name, listing }) => `${name} (${listing?.asOf})`).join("; ");
		return rowFinding(row, "listing-closed", "fix", `closed: ${what}`, "free the place");
	}
	const { listing } = match.best?.known ?? {};
	if (listing === null || listing === undefined) return null;
	if (match.best?.known.freshness !== "stale") return null;
	const best = `${match.best.known.name}: ${confidenceText(listing, on)}`;
	const isBestNamed = tagNames(words, match.best.known.names);
	const alike = new Map(
		listings.flatMap((known) =>
			known.listing?.status !== "closed" && tagNames(words, known.names) === isBestNamed ? [[known.listing?.id, known]] : [],
		),
	);
	const isAllStale = [...alike.values()].every((known) => known.freshness === "stale");
	const what = alike.size > 1 && isAllStale ? `the ${alike.size} listings here are all stale, the best: ${best}` : best;
	return rowFinding(row, "listing-stale", "mind", what, "confirm it in a current list or on the air before relying on it");
}

function isFigureOnly(tag: string): boolean {
	return /^[\d.\s]*$/.test(tag);
}

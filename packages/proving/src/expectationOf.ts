import { type Directory, type Listing, navtexLetter, publishedOf, scheduleKnown, scheduleOf, stationOf } from "@skipwright/directory";
import type { HeardKind } from "@skipwright/modem";
import {
	audioCentreHz,
	dialFor,
	displayOf,
	emissionFamily,
	type Mode,
	modesThatReceive,
	SERVICE_WORDS,
	type ServiceId,
	sidebandSign,
} from "@skipwright/rules";
import { convention, nearestDial, type Profile } from "@skipwright/set";
import { formatKhz, type Hz } from "@skipwright/units";
import type { Expectation } from "./expectation.ts";
import { keyingOf } from "./keyingOf.ts";
import { PULSES_WORDS, SOUND_WORDS } from "./soundWords.ts";
import { timeTones } from "./timeTones.ts";
import { TOLERANCES } from "./tolerance.ts";

/** How a place of the set stands: what matters of it to the ear. */
export interface DialOfPlace {
	readonly receiveHz: Hz;
	readonly mode: Mode;
}

/** Services that answer when called, and send nothing at a stated time. */
const WATCHES: ReadonlySet<ServiceId> = new Set(["voice-working", "dsc-watch"]);
/** Hz. Nothing that rounding to a set's steps leaves is larger; a dial further off lies outside its range. */
const MOST_RESIDUE_HZ = 100;
/** Hz. Audio in which a carrier's own note can be measured: what a marine set passes. Speech band by ITU-R M.1173 (from memory). */
const NOTE_HZ = { from: 350, to: 2_700 };

/**
 * What a listing sounds like on a set that is loaded right, or why the set cannot receive it.
 * @param at how the place stands; its mode is taken where it can receive the emission, its dial only for the note of a time carrier
 */
export function expectationOf(
	listing: Listing,
	directory: Directory,
	profile: Profile,
	at: DialOfPlace | null = null,
): Expectation | { readonly cannot: string } {
	const published = publishedOf(listing);
	const modes = convention(profile);
	const { right, poor } = modesThatReceive(listing.emission, listing.sideband);
	const own = at !== null && [...right, ...poor].includes(at.mode) ? at.mode : undefined;
	const dial = dialFor(published, modes, { mode: own });
	if ("cannot" in dial) return dial;
	const nearest = nearestDial(profile, dial.dialHz, "receive");
	if (nearest === null) return { cannot: `${profile.id} receives nothing.` };
	if (Math.abs(nearest.residueHz) > MOST_RESIDUE_HZ) {
		return { cannot: `${formatKhz(dial.dialHz)} kHz is outside what ${profile.id} receives.` };
	}
	const display = displayOf(dial.mode, modes);
	const sign = sidebandSign(dial.mode, display);
	const kind = kindOf(listing);
	const isKeyed = kind === "dsc" || kind === "text" || kind === "teletype";
	const tones = kind === "tone" ? tonesOf(listing, nearest.dialHz, dial.mode, sign, at) : [];
	const station = stationOf(directory, listing);
	return {
		listing: listing.id,
		station: listing.stationId,
		service: listing.service,
		what: `${station.name}, ${SERVICE_WORDS[listing.service]}, ${formatKhz(listing.hz)} kHz`,
		kind,
		hz: listing.hz,
		dialHz: nearest.dialHz,
		mode: dial.mode,
		sidebandSign: sign,
		audioHz: isKeyed || kind === "chart" ? audioCentreHz(display, listing, {}) + sign * nearest.residueHz : null,
		tonesHz: tones,
		tellsTuning: isKeyed || kind === "chart" || (tones.length > 0 && dial.mode !== "AM"),
		tolerance: TOLERANCES[kind],
		keying: keyingOf(listing, kind),
		identity: { navtexLetter: navtexLetter(listing), mmsi: station.mmsi },
		isToAll: listing.origin !== "owner" && !WATCHES.has(listing.service),
		isWatch: WATCHES.has(listing.service),
		times: { known: scheduleKnown(scheduleOf(listing)), published: listing.schedule },
		sounds: kind === "tone" && tones.length === 0 ? PULSES_WORDS : SOUND_WORDS[kind],
	};
}

/** One for each listing that a place hears and the set can receive. */
export function expectationsOf(
	place: DialOfPlace & { readonly hears: readonly string[] },
	directory: Directory,
	profile: Profile,
	listingOf: (id: string) => Listing | null,
): readonly Expectation[] {
	return place.hears.flatMap((id) => {
		const listing = listingOf(id);
		const expectation = listing === null ? null : expectationOf(listing, directory, profile, place);
		return expectation === null || "cannot" in expectation ? [] : [expectation];
	});
}

function kindOf({ service, emission }: Listing): HeardKind {
	if (service === "dsc-watch") return "dsc";
	if (service === "time-signal") return "tone";
	if (service === "rtty-weather") return "teletype";
	switch (emissionFamily(emission)) {
		case "chart":
			return "chart";
		case "keyed":
			return "text";
		case "morse":
			return "tone";
		default:
			return "voice";
	}
}

/** Audio of a time station: its tones as far as known, and the carrier's own note where the dial stands aside of it. */
function tonesOf({ hz, stationId, emission }: Listing, dialHz: Hz, mode: Mode, sign: 1 | -1, at: DialOfPlace | null): readonly number[] {
	if (mode === "AM") return timeTones(stationId);
	const carrierNote = sign * (hz - (at?.receiveHz ?? dialHz));
	const isHeard = carrierNote >= NOTE_HZ.from && carrierNote <= NOTE_HZ.to;
	const tones = emissionFamily(emission) === "morse" ? [] : timeTones(stationId).map((tone) => carrierNote + tone);
	return [...(isHeard ? [carrierNote] : []), ...tones.filter((tone) => tone > 0)].sort((a, b) => a - b);
}

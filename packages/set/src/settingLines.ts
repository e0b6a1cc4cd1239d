import { MODES, mmsi } from "@skipwright/rules";
import { formatKhz, hz } from "@skipwright/units";
import { DSC_WATCH_RULE, dscWatchProblems } from "./dscWatchProblems.ts";
import { isReceiver, type Profile } from "./profile.ts";
import type { Settings } from "./settings.ts";
import type { SettingLine } from "./types.ts";

const NOT_READ = "not read";
const AS_FOUND = "as found";

/**
 * The settings beside the places, one line each in a fixed order, to be read back like places. Settings that this set cannot have
 * are left out, and so is what was neither read nor is wanted, unless the set is unsafe or useless without it: then the line says
 * what to put there. What the profile says of a display is to be proved: the dials were worked out for it. A wish that cannot be
 * kept as it stands ends in a question mark, and its note says what is to be decided.
 * @param found null where nothing was read
 */
export function settingLines(profile: Profile, found: Settings | null, wanted: Settings): readonly SettingLine[] {
	const sends = !isReceiver(profile);
	const { FSK } = profile.modes;
	return [
		...dialForms(profile, found, wanted),
		...squelch(profile, found, wanted),
		...(FSK === undefined
			? []
			: [
					...line("FSK sense", found?.sense, wanted.sense ?? FSK.sense, "normal: mark is the lower radio frequency"),
					...line("FSK shift", hertz(found?.shiftHz), hertz(wanted.shiftHz ?? FSK.shiftHz), ""),
				]),
		...(sends
			? [
					...power(found, wanted),
					...line("antenna tuner", found?.tuner, wanted.tuner, "out: the antenna is not matched, do not send at full power"),
					...line(
						"transmit lock",
						found?.transmitLock,
						wanted.transmitLock ?? "on",
						"receive-only places must not send: prove it on a dummy load, never on the air",
					),
				]
			: []),
		...(profile.dscWatch === null ? [] : dscWatch(profile.dscWatch.size, found, wanted)),
		...(sends || profile.dscWatch !== null ? positionFeed(found, wanted) : []),
		...(sends ? identity(found, wanted) : []),
	];
}

/** One line, or none where nothing was read and nothing is wanted. */
function line(name: string, asFound: string | undefined, wanted: string | undefined, note: string): readonly SettingLine[] {
	if (asFound === undefined && wanted === undefined) return [];
	return [{ name, asFound: asFound ?? NOT_READ, wanted: wanted ?? AS_FOUND, note }];
}

function dialForms({ modes }: Profile, found: Settings | null, wanted: Settings): readonly SettingLine[] {
	return MODES.flatMap((mode) => {
		const display = modes[mode];
		if (display === undefined) return [];
		const want = wanted.dialForms?.[mode] ?? display.shows;
		const has = found?.dialForms?.[mode];
		const name = `dial shows, ${mode}`;
		const words = showsText(want, display.pitchHz);
		if (want !== display.shows) {
			const profiled = showsText(display.shows, display.pitchHz);
			const note = `to be decided: the profile says ${profiled}, and the dials of this sheet are for that: change one of the two`;
			return line(name, has, `${words}?`, note);
		}
		if (has !== undefined && has !== want) return line(name, has, words, `until this is changed every ${mode} dial of this sheet is wrong`);
		return line(name, has, `prove: ${words}`, "not to be set: prove it on a station of known frequency");
	});
}

function squelch({ scan }: Profile, found: Settings | null, wanted: Settings): readonly SettingLine[] {
	const name = "squelch";
	if (scan === null || scan.stopsOn === "nothing") return line(name, found?.squelch, wanted.squelch, "");
	const stops = `the scan stops on ${scan.stopsOn}`;
	if ((wanted.squelch ?? found?.squelch) === "off") {
		const blind = `${stops}: with the squelch off it cannot tell a signal from noise`;
		return line(name, found?.squelch, wanted.squelch === "off" ? "off?" : "as found?", `to be decided: ${blind}`);
	}
	const other = found?.squelch === undefined ? (scan.stopsOn === "speech" ? "speech" : "level") : undefined;
	return line(name, found?.squelch, wanted.squelch ?? other, `${stops}: set it on an empty frequency, antenna connected`);
}

/** Low comes first whatever is wanted: the set is tuned up before it is used. */
function power(found: Settings | null, wanted: Settings): readonly SettingLine[] {
	const want = wanted.power === undefined ? undefined : wanted.power === "low" ? "low" : `${wanted.power}, after tuning up`;
	const unread = found?.power === undefined ? "low until tuned up" : undefined;
	return line("power", found?.power, want ?? unread, "low while tuning up, also where more is wanted afterwards");
}

/** @example `"carrier less 800 Hz"` where a CW display is offset by its pitch */
function showsText(shows: "carrier" | "centre" | "mark", pitchHz = 0): string {
	return shows === "carrier" && pitchHz > 0 ? `carrier less ${pitchHz} Hz` : shows;
}

function hertz(value: number | undefined): string | undefined {
	return value === undefined ? undefined : `${value} Hz`;
}

function dscWatch(size: number, found: Settings | null, wanted: Settings): readonly SettingLine[] {
	const list = wanted.dscWatchHz ?? found?.dscWatchHz;
	const problems = list === undefined ? [] : dscWatchProblems(list, size);
	const want = watchText(wanted.dscWatchHz) ?? (list === undefined ? "as the rule beside says" : AS_FOUND);
	const note = [...(problems.length > 0 ? ["to be decided"] : []), ...problems, DSC_WATCH_RULE].join("; ");
	return line("DSC watch, kHz", watchText(found?.dscWatchHz), problems.length > 0 ? `${want}?` : want, note);
}

function watchText(list: readonly number[] | undefined): string | undefined {
	if (list === undefined) return undefined;
	return list.length === 0 ? "none" : list.map((value) => formatKhz(hz(value))).join(", ");
}

function positionFeed(found: Settings | null, wanted: Settings): readonly SettingLine[] {
	// IMO A.806(19), as restated: alarm without a feed or with a hand-entered position over 4 h old, erased after 23.5 h
	const note =
		(wanted.positionFeed ?? found?.positionFeed) === "automatic"
			? "wait for a fix and compare it with the plotter"
			: "without a feed the position is entered by hand with its time, again at least every 4 hours";
	const unread = found?.positionFeed === undefined ? "automatic where there is a feed" : undefined;
	return line("position feed", found?.positionFeed, wanted.positionFeed ?? unread, note);
}

const TWO_PERSONS = "two persons read it back digit by digit from the ship licence before it is stored; many sets take it only once";

function identity(found: Settings | null, wanted: Settings): readonly SettingLine[] {
	const problemsOf = (text: string | undefined) => (text === undefined ? [] : mmsi(text, "own").problems.map(({ message }) => message));
	const problems = [
		...problemsOf(wanted.mmsi).map((message) => `wanted: ${message}`),
		...(found?.mmsi === wanted.mmsi ? [] : problemsOf(found?.mmsi).map((message) => `as found: ${message}`)),
	];
	const other =
		found?.mmsi !== undefined && wanted.mmsi !== undefined && found.mmsi !== wanted.mmsi
			? ["the set holds another identity: a previous owner's?"]
			: [];
	return line("MMSI", found?.mmsi, wanted.mmsi ?? "from the ship licence", [TWO_PERSONS, ...other, ...problems].join("; "));
}

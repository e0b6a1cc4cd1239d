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
 * are left out. What the profile says of a display is wanted unless `wanted` says otherwise: the dials were worked out for it.
 * @param found null where nothing was read
 */
export function settingLines(profile: Profile, found: Settings | null, wanted: Settings): readonly SettingLine[] {
	const sends = !isReceiver(profile);
	return [
		...dialForms(profile, found, wanted),
		line("squelch", found?.squelch, wanted.squelch, squelchNote(profile, wanted.squelch ?? found?.squelch)),
		...(profile.modes.FSK === undefined
			? []
			: [
					line("FSK sense", found?.sense, wanted.sense ?? profile.modes.FSK.sense, "normal: mark is the lower radio frequency"),
					line("FSK shift", hertz(found?.shiftHz), hertz(wanted.shiftHz ?? profile.modes.FSK.shiftHz), ""),
				]),
		...(sends
			? [
					line("power", found?.power, wanted.power, "low while tuning up; set it back afterwards"),
					line("antenna tuner", found?.tuner, wanted.tuner, "out: the antenna is not matched, do not send at full power"),
					line(
						"transmit lock",
						found?.transmitLock,
						wanted.transmitLock ?? "on",
						"receive-only places must not send: prove it on a dummy load, never on the air",
					),
				]
			: []),
		...(profile.dscWatch === null ? [] : [dscWatch(profile.dscWatch.size, found, wanted)]),
		...(sends || profile.dscWatch !== null ? [positionFeed(found, wanted)] : []),
		...(sends ? [identity(found, wanted)] : []),
	];
}

function line(name: string, asFound: string | undefined, wanted: string | undefined, note: string): SettingLine {
	return { name, asFound: asFound ?? NOT_READ, wanted: wanted ?? AS_FOUND, note };
}

function dialForms({ modes }: Profile, found: Settings | null, wanted: Settings): readonly SettingLine[] {
	return MODES.flatMap((mode) => {
		const display = modes[mode];
		if (display === undefined) return [];
		const want = wanted.dialForms?.[mode] ?? display.shows;
		const has = found?.dialForms?.[mode];
		const note =
			want !== display.shows
				? `the profile says ${display.shows}, and the dials of this sheet are for that: change one of the two`
				: has !== undefined && has !== want
					? `until this is changed every ${mode} dial of this sheet is wrong`
					: "";
		return [line(`dial shows, ${mode}`, has, want, note)];
	});
}

function hertz(value: number | undefined): string | undefined {
	return value === undefined ? undefined : `${value} Hz`;
}

function squelchNote({ scan }: Profile, squelch: Settings["squelch"]): string {
	if (scan === null || scan.stopsOn === "nothing") return "";
	if (squelch === "off") return `the scan stops on ${scan.stopsOn}: with the squelch off it cannot tell a signal from noise`;
	return `the scan stops on ${scan.stopsOn}: set it on an empty frequency, antenna connected`;
}

function dscWatch(size: number, found: Settings | null, wanted: Settings): SettingLine {
	const list = wanted.dscWatchHz ?? found?.dscWatchHz;
	const problems = list === undefined ? [] : dscWatchProblems(list, size);
	const note = [...problems, DSC_WATCH_RULE].join("; ");
	return line("DSC watch, kHz", watchText(found?.dscWatchHz), watchText(wanted.dscWatchHz), note);
}

function watchText(list: readonly number[] | undefined): string | undefined {
	if (list === undefined) return undefined;
	return list.length === 0 ? "none" : list.map((value) => formatKhz(hz(value))).join(", ");
}

function positionFeed(found: Settings | null, wanted: Settings): SettingLine {
	// IMO A.806(19), as restated: alarm without a feed or with a hand-entered position over 4 h old, erased after 23.5 h
	const note =
		(wanted.positionFeed ?? found?.positionFeed) === "automatic"
			? "wait for a fix and compare it with the plotter"
			: "without a feed the position is entered by hand with its time, again at least every 4 hours";
	return line("position feed", found?.positionFeed, wanted.positionFeed, note);
}

const TWO_PERSONS = "two persons read it back digit by digit from the ship licence before it is stored; many sets take it only once";

function identity(found: Settings | null, wanted: Settings): SettingLine {
	const problemsOf = (text: string | undefined) => (text === undefined ? [] : mmsi(text, "own").problems.map(({ message }) => message));
	const problems = [
		...problemsOf(wanted.mmsi).map((message) => `wanted: ${message}`),
		...(found?.mmsi === wanted.mmsi ? [] : problemsOf(found?.mmsi).map((message) => `as found: ${message}`)),
	];
	const other =
		found?.mmsi !== undefined && wanted.mmsi !== undefined && found.mmsi !== wanted.mmsi
			? ["the set holds another identity: a previous owner's?"]
			: [];
	return line("MMSI", found?.mmsi, wanted.mmsi, [TWO_PERSONS, ...other, ...problems].join("; "));
}

import type { Listing } from "@skipwright/directory";
import type { LoadingSheetPaper } from "@skipwright/papers";
import type { Mode } from "@skipwright/rules";
import { type Finding, loadingSheet, type PlannedRow, type Profile, profileNamed, type Row, settingLines } from "@skipwright/set";
import { hz, isoDate } from "@skipwright/units";

/** The shipped twin-180, with a keypad beside its knob. */
const PROFILE: Profile = { ...shipped("twin-180"), entry: "both" };

function shipped(id: string): Profile {
	const profile = profileNamed(id);
	if (profile === null) throw new RangeError(`Cannot find ${id} among the shipped profiles`);
	return profile;
}

interface SampleGroup {
	readonly bank: string;
	readonly first: number;
	readonly count: number;
	readonly mode: Mode;
	readonly firstHz: number;
	readonly stepHz: number;
	/** Added to the receive dial for the transmit dial; null = receive only. */
	readonly shiftHz: number | null;
	readonly tag: string;
	readonly what: string;
	readonly listing: keyof typeof SLOTS | null;
}

const GROUPS: readonly SampleGroup[] = [
	{
		bank: "voice",
		first: 1,
		count: 12,
		mode: "USB",
		firstHz: 4_357_000,
		stepHz: 3_000,
		shiftHz: -292_000,
		tag: "CH 4",
		what: "Cape Town Radio (ZSC), coast station, voice, channel 4",
		listing: "v",
	},
	{
		bank: "voice",
		first: 13,
		count: 8,
		mode: "USB",
		firstHz: 8_291_000,
		stepHz: 3_000,
		shiftHz: 0,
		tag: "SHIP 8",
		what: "Ship to ship, Appendix 17 simplex",
		listing: null,
	},
	{
		bank: "voice",
		first: 21,
		count: 20,
		mode: "USB",
		firstHz: 8_719_000,
		stepHz: 3_000,
		shiftHz: -524_000,
		tag: "CH 8",
		what: "Saint Helena, Ascension and Tristan da Cunha coast radio service, weather by voice with gale warnings for the whole south-east",
		listing: "m",
	},
	{
		bank: "voice",
		first: 41,
		count: 1,
		mode: "AM",
		firstHz: 10_000_000,
		stepHz: 0,
		shiftHz: null,
		tag: "WWV 10",
		what: "Fort Collins, standard time and frequency",
		listing: "t",
	},
	{
		bank: "voice",
		first: 61,
		count: 3,
		mode: "LSB",
		firstHz: 7_060_000,
		stepHz: 5_000,
		shiftHz: 0,
		tag: "NET 40",
		what: "South Atlantic net, owner's own",
		listing: null,
	},
	{
		bank: "data",
		first: 1,
		count: 18,
		mode: "USB",
		firstHz: 4_346_100,
		stepHz: 3_711_000 / 10,
		shiftHz: null,
		tag: "FAX ZSJ",
		what: "Cape Naval, weather charts",
		listing: "f",
	},
	{
		bank: "data",
		first: 21,
		count: 16,
		mode: "FSK",
		firstHz: 4_209_500,
		stepHz: 500,
		shiftHz: null,
		tag: "MSI",
		what: "Safety text by NBDP, Puerto Belgrano",
		listing: "m",
	},
	{
		bank: "data",
		first: 41,
		count: 12,
		mode: "USB",
		firstHz: 16_803_900,
		stepHz: 700,
		shiftHz: null,
		tag: "TTY/RTTY-9",
		what: "Offenbach-Pinneberg DDK, weather by teletype",
		listing: "f",
	},
];

const SLOTS = { v: "ZSC/voice-working/4357", m: "ZHH/voice-weather/8719", t: "WWV/time-signal/10000", f: "ZSJ/fax/4348" } as const;

const PLANNED: readonly PlannedRow[] = GROUPS.flatMap((group) =>
	Array.from({ length: group.count }, (_, i) => {
		const receive = hz(Math.round((group.firstHz + i * group.stepHz) / 100) * 100);
		return {
			bank: group.bank,
			place: group.first + i,
			line: i + 2,
			tag: group.tag.length < 8 ? `${group.tag}-${String(i + 1).padStart(2, "0")}` : group.tag,
			receive,
			transmit: group.shiftHz === null ? null : hz(receive + group.shiftHz),
			mode: group.mode,
			listing: group.listing === null ? null : SLOTS[group.listing],
			what: group.what,
		};
	}),
);

/** Two of three places hold the ship side's figure, both ways; voice 60 and 99 are in no plan. */
const FOUND: readonly Row[] = [
	...PLANNED.filter((_, i) => i % 3 !== 0).map((row) => ({
		...row,
		receive: hz(row.receive + 1_400),
		transmit: hz(row.receive + 1_400),
		tag: "OLD",
	})),
	{ bank: "voice", place: 60, line: 200, receive: hz(14_300_000), transmit: hz(14_300_000), mode: "USB", tag: "OLDNET" },
	{ bank: "voice", place: 99, line: 201, receive: hz(5_680_000), transmit: null, mode: "USB", tag: "" },
];

function sampleListing(id: string, confidence: Listing["confidence"], asOf: string, source: string): Listing {
	return {
		id,
		stationId: id.split("/")[0] ?? "",
		service: "fax",
		hz: hz(4_348_000),
		means: "assigned",
		coastTx: null,
		shipTx: null,
		channel: null,
		emission: "F3C",
		schedule: "continuous",
		coverage: "",
		notes: "",
		receiveOnly: true,
		sideband: "upper",
		source,
		asOf,
		confidence,
		status: "active",
		origin: "shipped",
	};
}

const LISTINGS: readonly Listing[] = [
	sampleListing(SLOTS.v, "official", "2026-03", "Official list of coast stations, edition of March 2026"),
	sampleListing(SLOTS.m, "memory", "2024", "from memory"),
	sampleListing(SLOTS.t, "official", "2025-01", "National standards institute, time and frequency services"),
	sampleListing(
		SLOTS.f,
		"secondary",
		"2025",
		"hobby shortwave schedule list, summer 2025 (secondary); last logged 2018-12; frequencies also in a weather service's radiofacsimile schedule, station page (government text, undated copy, label F3C so about 2011 to 2013)",
	),
];

const FINDINGS: readonly Finding[] = [
	{
		code: "listing-stale",
		severity: "mind",
		bank: "voice",
		place: 41,
		line: 41,
		message: "The listing behind WWV 10 is as of 2025-01, 22 months old.",
		source: "contract of freshness: official over 12 months is ageing",
		remedy: "Look it up in a current official list before sailing.",
	},
	{
		code: "pair-swapped",
		severity: "stop",
		bank: "voice",
		place: 21,
		line: 21,
		message: "Receive 8195 is the ship side and transmit 8719 the coast side of channel 801.",
		source: "RR Appendix 17, Part B, Section I",
		remedy: "Key receive 8719.0, transmit 8195.0.",
	},
	{
		code: "guard-missing",
		severity: "fix",
		bank: null,
		place: null,
		line: null,
		message: "No place holds the distress and safety carrier 12290 kHz.",
		source: "RR Appendix 15",
		remedy: "Put 12290.0 USB into a free place, both ways on this carrier.",
	},
];

/** A sheet of 90 places to write and 2 to clear, with everything in it that is long. */
export const SAMPLE_PAPER: LoadingSheetPaper = {
	sheet: loadingSheet({
		profile: PROFILE,
		found: FOUND,
		planned: PLANNED,
		settings: settingLines(
			PROFILE,
			{ mmsi: "999000111", power: "low", dscWatchHz: [2_187_500, 8_414_500], transmitLock: "off", squelch: "off" },
			{
				mmsi: "601000000",
				power: "high",
				dscWatchHz: [2_187_500, 8_414_500, 4_207_500, 6_312_000, 12_577_000, 16_804_500],
				squelch: "level",
			},
		),
		clearOthers: true,
	}),
	profile: PROFILE,
	vessel: { name: "Wandering Albatross of the Southern Ocean", callSign: "ZR 1234", mmsi: "601000000" },
	jobTitle: "Cape Town to Horta by St Helena, Ascension and Fernando de Noronha, February to May 2027",
	date: isoDate("2026-11-24"),
	directoryEdition: "2026-09-30",
	listings: LISTINGS,
	findings: FINDINGS,
};

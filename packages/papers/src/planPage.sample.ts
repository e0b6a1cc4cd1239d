import type { Directory } from "@skipwright/directory";
import type { Plan, PlannedPlace } from "@skipwright/planner";
import { profileNamed } from "@skipwright/set";
import { hz, isoDate, position } from "@skipwright/units";
import type { PlanPage } from "./planPage.ts";
import { GRADES, swell } from "./reach.sample.ts";

/** A small plan for a small set. Made up, as all of this file. */

function place(bank: string, number: number, part: Partial<PlannedPlace>): PlannedPlace {
	return {
		bank,
		place: number,
		tag: `TAG ${number}`,
		receiveHz: hz(8_294_000),
		transmitHz: null,
		mode: "USB",
		listing: null,
		pinned: false,
		changed: false,
		what: "channel as found",
		want: null,
		notes: [],
		hears: [],
		serves: [],
		day: { leg: null, chances: null, broadcasts: null },
		...part,
	};
}

const PLACES: readonly PlannedPlace[] = [
	place("voice", 1, {
		tag: "DIST 2182",
		receiveHz: hz(2_182_000),
		transmitHz: hz(2_182_000),
		listing: "guard/2182",
		pinned: true,
		what: "distress, safety and calling, 2 MHz",
		want: "guard",
		day: { leg: "Here to There", chances: swell(1, 8, 0.6), broadcasts: null },
	}),
	place("voice", 2, {
		tag: "CH 821",
		receiveHz: hz(8_779_000),
		transmitHz: hz(8_255_000),
		what: "channel 821",
		want: "coast-calling",
		serves: [{ want: "coast-calling", hoursPerDay: 6.2, lostPerDay: 1.5, rank: 1, of: 2, bestLeg: "Here to There" }],
		day: { leg: "Here to There", chances: swell(22, 9, 0.95), broadcasts: null },
	}),
	place("voice", 5, {
		tag: "FAR WX",
		receiveHz: hz(6_507_000),
		changed: true,
		what: "Far Cape Radio, weather by voice",
		want: "weather-voice",
		notes: ["put right, near-miss: one keying slip away"],
		serves: [{ want: "weather-voice", hoursPerDay: 0.4, lostPerDay: 0.4, rank: 1, of: 1, bestLeg: "at There" }],
		day: { leg: "Here to There", chances: swell(20, 7, 0.5), broadcasts: [{ fromMin: 1_425, toMin: 1_455 }] },
	}),
	place("voice", 6, {}),
	place("data", 1, {
		tag: "FAR CHART",
		receiveHz: hz(8_680_100),
		changed: true,
		what: "Far Cape Radio, weather charts",
		want: "weather-charts",
		serves: [{ want: "weather-charts", hoursPerDay: 3.1, lostPerDay: 3.1, rank: 1, of: 1, bestLeg: "Here to There" }],
		day: {
			leg: "Here to There",
			chances: swell(12, 11, 1),
			broadcasts: [
				{ fromMin: 300, toMin: 400 },
				{ fromMin: 900, toMin: 1_000 },
			],
		},
	}),
];

const PLAN: Plan = {
	format: "skipwright-plan",
	version: 1,
	status: "feasible",
	gap: 0.0023,
	worth: 4.5,
	layout: { status: "optimal", gap: 0 },
	on: isoDate("2026-11-24"),
	basis: "made-up reach, monthly medians, not promises",
	places: PLACES,
	legs: [
		{ name: "Here to There", from: isoDate("2027-03-01"), days: 9 },
		{ name: "at There", from: isoDate("2027-03-10"), days: 3 },
	],
	served: [
		{ want: "coast-calling", leg: "Here to There", hoursPerDay: { before: 4, after: 6 }, broadcastsPerDay: null },
		{ want: "coast-calling", leg: "at There", hoursPerDay: { before: 8, after: 8 }, broadcastsPerDay: null },
		{ want: "weather-charts", leg: "Here to There", hoursPerDay: { before: 0, after: 3.1 }, broadcastsPerDay: { before: 0, after: 1.8 } },
		{ want: "weather-charts", leg: "at There", hoursPerDay: { before: 0, after: 2.7 }, broadcastsPerDay: { before: 0, after: 1.5 } },
	],
	use: [
		{
			want: "coast-calling",
			leg: "Here to There",
			fromHour: 0,
			toHour: 4,
			first: { bank: "voice", place: 2, chance: 0.8 },
			second: { bank: "voice", place: 6, chance: 0.3 },
		},
		{
			want: "coast-calling",
			leg: "Here to There",
			fromHour: 18,
			toHour: 24,
			first: { bank: "voice", place: 2, chance: 0.5 },
			second: null,
		},
		{ want: "weather-charts", leg: "at There", fromHour: 5, toHour: 6, first: { bank: "data", place: 1, chance: 0.2 }, second: null },
	],
	watch: {
		tableHz: [hz(2_187_500), hz(8_414_500)],
		problems: ["one more frequency is asked for"],
		off: [
			{
				leg: "Here to There",
				minutes: 130,
				times: [
					{ fromMin: 300, toMin: 400, want: "weather-charts", bank: "data", place: 1 },
					{ fromMin: 390, toMin: 430, want: "weather-charts", bank: "data", place: 1 },
				],
			},
			{ leg: "at There", minutes: 0, times: [] },
		],
	},
	levels: [
		{
			db: -6,
			hours: [{ want: "weather-charts", hoursPerDay: 2 }],
			enters: [],
			leaves: [{ listing: "far/volmet/1", what: "Far Cape, aviation weather" }],
		},
		{ db: 6, hours: [{ want: "weather-charts", hoursPerDay: 5 }], enters: [], leaves: [] },
	],
	leftOut: [
		{ listing: "ap17/1221", why: "its ship side is a distress carrier" },
		{ listing: "ap17/8297", why: "adds little to what is chosen" },
		{ listing: "unheard/of", why: "adds little to what is chosen" },
	],
	removed: [{ bank: "voice", place: 4, tag: "OLD", why: "held at another place" }],
	blocks: [
		{
			bank: "voice",
			first: 1,
			last: 4,
			filled: 2,
			kind: "speech",
			isScanned: true,
			swept: 2,
			revisitS: 1,
			catches: [
				{ callS: 2, chance: 0.4 },
				{ callS: 5, chance: 0.925 },
				{ callS: 10, chance: 1 },
				{ callS: 30, chance: 1 },
			],
		},
		{ bank: "voice", first: 5, last: 7, filled: 2, kind: "mixed", isScanned: false, swept: 0, revisitS: null, catches: [] },
		{ bank: "data", first: 1, last: 2, filled: 1, kind: "data", isScanned: false, swept: 0, revisitS: null, catches: [] },
		{ bank: "data", first: 3, last: 4, filled: 0, kind: "empty", isScanned: false, swept: 0, revisitS: null, catches: [] },
	],
	conflicts: ["two pins want voice 1"],
	doubts: ["the wanted net is at noon ashore"],
	findings: [
		{
			code: "pair-swapped",
			severity: "stop",
			bank: "voice",
			place: 2,
			line: 3,
			message: "the two sides are exchanged",
			source: "made up",
			remedy: "exchange them",
		},
		{
			code: "listing-stale",
			severity: "mind",
			bank: "voice",
			place: 5,
			line: 4,
			message: "last heard in 2019",
			source: "made up",
			remedy: "confirm it",
		},
		{
			code: "listing-stale",
			severity: "mind",
			bank: "data",
			place: 1,
			line: 5,
			message: "as of 2015",
			source: "made up",
			remedy: "confirm it",
		},
	],
};

const twin = profileNamed("twin-180");
if (twin === null) throw new Error("no twin-180");

const NOBODY: Directory = { stations: [], listings: [], edition: "2026-09-01" };

export const SAMPLE_PAGE: PlanPage = {
	plan: PLAN,
	jobTitle: "Here to There",
	vessel: { name: "Tern", callSign: "QQ1ABC", mmsi: null },
	profile: {
		...twin,
		banks: [
			{ id: "voice", places: 7, blockLength: 4, holds: "speech" },
			{ id: "data", places: 4, blockLength: 2, holds: "data" },
		],
	},
	directory: NOBODY,
	samples: [
		{ atMs: 0, date: isoDate("2027-03-05"), position: position(0, 0), stage: "Here to There", days: 9 },
		{ atMs: 0, date: isoDate("2027-03-11"), position: position(0, 90), stage: "at There", days: 3 },
	],
	words: (chances) => `words for ${chances.length} hours`,
	grades: GRADES,
};

import { addDays, isoDate } from "@skipwright/units";
import type { ReachDay } from "./reachDay.ts";
import type { ReachVoyage } from "./reachVoyage.ts";

/** The words and steps that the rest of the product gives to chances. */
export const GRADES = [
	{ word: "good", from: 0.75 },
	{ word: "fair", from: 0.45 },
	{ word: "poor", from: 0.15 },
	{ word: "none", from: 0 },
] as const;

/** Chances that rise to `best` at an hour and fall to both sides of it, to nothing at `hours` from it. Made up, as all of this file. */
export function swell(hour: number, hours: number, best: number): readonly number[] {
	return Array.from({ length: 24 }, (_, i) => {
		const away = Math.min(Math.abs(i - hour), 24 - Math.abs(i - hour)) / hours;
		return Math.max(0, best * (1 - away * away));
	});
}

export const UNKNOWN: readonly number[] = Array.from({ length: 24 }, () => Number.NaN);

export const DAY: ReachDay = {
	title: "Reach at St Helena, March 2027",
	grades: GRADES,
	night: [{ fromMin: 1_115, toMin: 390 }],
	boatTimeOffsetMin: -30,
	rows: [
		{
			label: "Cape Town\n4435 kHz, weather by voice",
			chances: swell(1, 7, 0.97),
			broadcasts: [
				{ fromMin: 575, toMin: 600 },
				{ fromMin: 1_055, toMin: 1_080 },
			],
			note: "good 2200-0500, fair 2000-2200 and 0500-0700; not heard otherwise",
		},
		{
			label: "Cape Town\n8711 kHz, weather by voice",
			chances: swell(22, 10, 0.9),
			broadcasts: [
				{ fromMin: 575, toMin: 600 },
				{ fromMin: 1_410, toMin: 1_455 },
			],
			note: "good 1800-0300, fair 1500-1800",
		},
		{
			label: "Rio de Janeiro\n12665 kHz, weather charts",
			chances: swell(20, 12, 0.83).map((chance, hour) => (hour === 5 ? Number.NaN : chance)),
			broadcasts: [
				{ fromMin: 450, toMin: 540 },
				{ fromMin: 990, toMin: 1_100 },
			],
			note: "good 1700-0000, fair 1200-1700 and 0000-0500",
		},
		{
			label: "Rio de Janeiro\n16978 kHz, weather charts",
			chances: swell(15, 6, 0.6),
			broadcasts: [
				{ fromMin: 450, toMin: 540 },
				{ fromMin: 990, toMin: 1_100 },
			],
			note: "fair 1300-1800, poor before and after",
		},
		{ label: "Ascension\n6230 kHz, calling", chances: UNKNOWN, broadcasts: [], note: "cannot tell: where it stands is not known" },
		{
			label: "Standard time\n10000 kHz",
			chances: Array.from({ length: 24 }, (_, hour) => hour / 23),
			broadcasts: [{ fromMin: 0, toMin: 1_440 }],
		},
	],
};

const DATES = Array.from({ length: 33 }, (_, i) => addDays(isoDate("2027-02-02"), 3 * i));

export const VOYAGE: ReachVoyage = {
	title: "Reach from Cape Town to Horta, February to May 2027",
	grades: GRADES,
	boatTimeOffsetMin: -60,
	legs: [
		{ name: "Cape Town", from: isoDate("2027-02-01"), to: isoDate("2027-02-04"), stay: true },
		{ name: "Cape Town to St Helena", from: isoDate("2027-02-04"), to: isoDate("2027-02-22") },
		{ name: "St Helena", from: isoDate("2027-02-22"), to: isoDate("2027-03-01"), stay: true },
		{ name: "St Helena to Ascension", from: isoDate("2027-03-01"), to: isoDate("2027-03-07") },
		{ name: "Ascension", from: isoDate("2027-03-07"), to: isoDate("2027-03-11"), stay: true },
		{ name: "Ascension to Fernando de Noronha", from: isoDate("2027-03-11"), to: isoDate("2027-03-20") },
		{ name: "Fernando de Noronha", from: isoDate("2027-03-20"), to: isoDate("2027-03-30"), stay: true },
		{ name: "Fernando de Noronha to Horta", from: isoDate("2027-03-30"), to: isoDate("2027-05-04") },
		{ name: "Horta", from: isoDate("2027-05-04"), to: isoDate("2027-05-11"), stay: true },
	],
	nights: DATES.map((date, i) => ({ date, night: [{ fromMin: 1_080 + 3 * i, toMin: 330 + 2 * i }] })),
	rows: [
		{
			label: "Cape Town\n4435 kHz, weather by voice",
			cells: DATES.map((date, i) => ({ date, chances: swell(0, 8 - 0.12 * i, Math.max(0, 1 - 0.04 * i)) })),
			broadcasts: [
				{ fromMin: 575, toMin: 600 },
				{ fromMin: 1_055, toMin: 1_080 },
			],
		},
		{
			label: "Rio de Janeiro\n12665 kHz, weather charts",
			cells: DATES.map((date, i) => ({ date, chances: i > 20 && i < 24 ? UNKNOWN : swell(21, 6 + 0.15 * i, Math.min(1, 0.4 + 0.02 * i)) })),
			broadcasts: [
				{ fromMin: 450, toMin: 540 },
				{ fromMin: 990, toMin: 1_100 },
			],
		},
		{ label: "Standard time\n10000 kHz", cells: DATES.map((date, i) => ({ date, chances: swell(2 + 0.2 * i, 13, 0.9) })) },
	],
};

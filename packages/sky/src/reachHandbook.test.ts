import { destination } from "@skipwright/sphere";
import { afterAll, describe, expect, test } from "vitest";
import { BANDS_MHZ, type Cell, DISTANCES_NM, handbookGrid, MONTHS, PATHS, SUNSPOTS } from "../truth/handbookGrid.ts";
import { mapIonosphere } from "./mapIonosphere.ts";
import { skyPath } from "./path.ts";
import { skyDay, skyHour } from "./skyWaveHour.ts";
import { skyMonth } from "./skyWaveMonth.ts";
import { basicMufMHz } from "./skyWaveMuf.ts";

/*
 * Rules of handbooks for choosing a band, held against the prediction for a yacht of 150 W and a coast station of 1 kW, both ways. The rules:
 * "distance in miles is roughly 100 times the megahertz by day and two to three times that by night; use a lower frequency at night for the
 * same distance" (sea observers' manual of the U.S. oceanic administration's fisheries programme, part 2, radios, restated); bands by
 * distance as common practice has them, no one source. Where the two disagree the test says how often and why, and holds the number.
 */

/** Chances this near to the best one are the same: a rule is broken only where none of these bands keeps it. */
const SAME = 0.05;
/** Under this a band is not offered at all. */
const LEAST = 0.15;

const grid = handbookGrid();
const report: string[] = [];
afterAll(() => console.log(report.join("\n")));

const keyOf = ({ path, sunspots, month, local, nm }: Omit<Cell, "chances" | "recommended" | "vessel" | "utcHour">) =>
	[path.name, sunspots, month, local, nm].join("|");
const cells = new Map(grid.map((cell) => [keyOf(cell), cell]));
const at = (cell: Cell, other: Partial<Pick<Cell, "sunspots" | "month" | "local" | "nm">>) => cells.get(keyOf({ ...cell, ...other }))!;

/** Bands as good as the best. */
function offered({ chances }: Cell): readonly number[] {
	const best = Math.max(...chances);
	return best < LEAST ? [] : chances.flatMap((chance, band) => (chance >= best - SAME ? [band] : []));
}
const lowest = (cell: Cell) => Math.min(...offered(cell));
const highest = (cell: Cell) => Math.max(...offered(cell));

function told(cell: Cell): string {
	const { path, sunspots, month, local, nm, chances } = cell;
	return `${path.name}, ${nm} nm, ${local}, month ${month}, R12 ${sunspots}: ${chances.map((chance) => Math.round(chance * 100)).join(" ")}`;
}

/** Compared cells, and those that break a rule in words for the report. */
function broken(rule: string, compared: readonly Cell[], breaks: (cell: Cell) => boolean): readonly Cell[] {
	const bad = compared.filter(breaks);
	const strict = compared.length - bad.length;
	report.push(`${rule}: ${strict} of ${compared.length} hold`, ...bad.slice(0, 3).map((cell) => `    not: ${told(cell)}`));
	return bad;
}

test("the grid is whole", () => {
	expect(grid.length).toBe(PATHS.length * SUNSPOTS.length * MONTHS.length * DISTANCES_NM.length * 2);
	expect(cells.size).toBe(grid.length);
	expect(grid.filter((cell) => offered(cell).length > 0).length).toBeGreaterThan(1700);
});

describe("(1) the band does not fall as distance grows", () => {
	const farther = (cell: Cell) => at(cell, { nm: DISTANCES_NM[DISTANCES_NM.indexOf(cell.nm as 150) + 1] ?? Number.NaN });
	const pairs = (upTo: number) =>
		grid.filter((cell) => {
			if (cell.nm < 300 || cell.nm >= upTo) return false;
			return offered(cell).length > 0 && offered(farther(cell)).length > 0;
		});
	const falls = (cell: Cell) => highest(farther(cell)) < lowest(cell);

	test("from 300 to 1500 nm, but for three falls where one hop would leave under the lowest elevation that counts", () => {
		const compared = pairs(1500);
		expect(compared.length).toBeGreaterThan(980);
		const bad = broken("(1) distance, to 1500 nm", compared, falls);
		expect(bad.length).toBeLessThanOrEqual(3);
		expect(bad.every(({ nm }) => nm === 1250)).toBe(true);
	});

	test("on to 2000 nm it does in up to 42 of 1300: two hops take over before one hop's 4000 km are up (`MEMORY.lowestElevation`)", () => {
		const compared = pairs(2000);
		expect(compared.length).toBeGreaterThan(1250);
		expect(broken("(1) distance, to 2000 nm", compared, falls).length).toBeLessThanOrEqual(42);
	});
});

test("why: the basic MUF falls where two hops take over, and comes back past 4000 km (docs/reach.md)", () => {
	const [path] = PATHS;
	for (const [sunspots, month, utcHour] of [
		[10, 1, 15],
		[60, 1, 15],
		[60, 4, 15],
		[60, 7, 3],
	] as const) {
		const ionosphere = mapIonosphere({ year: 2027, month, r12: sunspots });
		const mufs = [2800, 3000, 3200, 3400, 3600, 3800, 4000, 4200].map((km) => {
			const there = destination(path!.coast, path!.bearingDeg, km);
			return basicMufMHz(skyHour(skyDay(skyPath(path!.coast, there), ionosphere, skyMonth({ year: 2027, month, sunspots })), utcHour));
		});
		report.push(`basic MUF from 2800 to 4200 km, month ${month}, R12 ${sunspots}: ${mufs.map((muf) => muf.toFixed(1)).join(" ")}`);
		const falls = mufs.map((muf, i) => muf / (mufs[i - 1] ?? muf));
		expect(Math.min(...falls)).toBeGreaterThan(0.7);
		expect(Math.min(...falls)).toBeLessThan(0.85);
	}
});

test("(2) from noon to midnight the band falls on 800 nm", () => {
	const noons = grid.filter(({ nm, local }) => nm === 800 && local === "noon");
	expect(noons.length).toBe(72);
	const bad = broken("(2) noon to midnight", noons, (noon) => lowest(at(noon, { local: "midnight" })) >= highest(noon));
	expect(bad).toEqual([]);
	// to the letter, but for one evening of high summer and high sunspots, where 12 MHz stays open all night
	const rises = noons.filter((noon) => at(noon, { local: "midnight" }).recommended! >= noon.recommended!);
	expect(rises.length).toBeLessThanOrEqual(1);
});

describe("(3) bands by distance, one band either way", () => {
	/** Indices into `BANDS_MHZ`. Common practice, no source. */
	const TABLE = [
		{ local: "noon", nm: 150, from: 0, to: 1 },
		{ local: "noon", nm: 300, from: 1, to: 3 },
		{ local: "noon", nm: 500, from: 1, to: 3 },
		{ local: "noon", nm: 800, from: 3, to: 4 },
		{ local: "noon", nm: 2000, from: 4, to: 5 },
		{ local: "noon", nm: 4000, from: 5, to: 7 },
		{ local: "midnight", nm: 300, from: 0, to: 1 },
		{ local: "midnight", nm: 1000, from: 1, to: 2 },
		{ local: "midnight", nm: 2500, from: 2, to: 3 },
	] as const;
	const rowCells = (row: (typeof TABLE)[number], ...numbers: readonly number[]) =>
		grid.filter(({ local, nm, sunspots }) => local === row.local && nm === row.nm && numbers.includes(sunspots));
	const near = TABLE.filter(({ nm }) => nm <= 1000);

	test.each(near)("$local, $nm nm: all at low sunspot numbers", (row) => {
		const compared = rowCells(row, 10);
		expect(compared.length).toBe(24);
		const bad = broken(
			`(3) ${row.local} ${row.nm} nm, R12 10`,
			compared,
			(cell) => highest(cell) < row.from - 1 || lowest(cell) > row.to + 1,
		);
		expect(bad).toEqual([]);
	});

	test.each(near)("$local, $nm nm: what disagrees at higher numbers lies higher, as rule (4) wants, and is a seventh or less", (row) => {
		const compared = rowCells(row, 60, 130);
		expect(compared.length).toBe(48);
		const rule = `(3) ${row.local} ${row.nm} nm, R12 60 and 130`;
		const bad = broken(rule, compared, (cell) => highest(cell) < row.from - 1 || lowest(cell) > row.to + 1);
		expect(bad.length).toBeLessThanOrEqual(7);
		expect(bad.every((cell) => lowest(cell) > row.to + 1)).toBe(true);
	});

	// 2000 nm by day is 20 MHz by the manual's 100 miles a megahertz, where practice has 12 to 16: the two rules disagree with one another
	test.each(TABLE.filter(({ nm }) => nm > 1000))("$local, $nm nm: never lower; often higher, and by day often not at all", (row) => {
		const compared = rowCells(row, 10, 60, 130);
		expect(compared.length).toBe(72);
		const rule = `(3) ${row.local} ${row.nm} nm`;
		const heard = compared.filter((cell) => offered(cell).length > 0);
		report.push(`${rule}: offered at all in ${heard.length} of ${compared.length}`);
		const bad = broken(rule, heard, (cell) => highest(cell) < row.from - 1 || lowest(cell) > row.to + 1);
		expect(bad.filter((cell) => highest(cell) < row.from - 1)).toEqual([]);
	});

	test("by day from 500 to 2000 nm miles over megahertz of the recommended band have a median between 50 and 200 (the manual: 100)", () => {
		const ratios = grid
			.filter((cell) => cell.local === "noon" && cell.nm >= 500 && cell.nm <= 2000 && offered(cell).length > 0)
			.map(({ nm, recommended }) => nm / BANDS_MHZ[recommended!]!)
			.sort((a, b) => a - b);
		expect(ratios.length).toBeGreaterThan(450);
		const [tenth, median, ninth] = [0.1, 0.5, 0.9].map((share) => ratios[Math.floor(share * ratios.length)]!);
		report.push(`miles a megahertz by day: median ${median!.toFixed(0)}, deciles ${tenth!.toFixed(0)} and ${ninth!.toFixed(0)}`);
		expect(median).toBeGreaterThan(50);
		expect(median).toBeLessThan(200);
	});
});

describe("(4) with more sunspots the band does not fall", () => {
	const next = new Map<number, number>([
		[10, 60],
		[60, 130],
	]);
	const compared = (ocean: "north" | "south") =>
		grid.filter((cell) => {
			const more = next.get(cell.sunspots);
			if (more === undefined || cell.path.ocean !== ocean || cell.nm < 300 || cell.nm > 2500) return false;
			return offered(cell).length > 0 && offered(at(cell, { sunspots: more })).length > 0;
		});
	const falls = (cell: Cell) => highest(at(cell, { sunspots: next.get(cell.sunspots)! })) < lowest(cell);

	test("in the North Atlantic, nowhere", () => {
		const all = compared("north");
		expect(all.length).toBeGreaterThan(480);
		expect(broken("(4) sunspots, North Atlantic", all, falls)).toEqual([]);
	});

	test("in the South Atlantic, but for nights of southern winter, where the maps of foF2 themselves fall, and one noon of more absorption", () => {
		const all = compared("south");
		expect(all.length).toBeGreaterThan(480);
		const bad = broken("(4) sunspots, South Atlantic", all, falls);
		expect(bad.length).toBeLessThanOrEqual(11);
		expect(bad.filter(({ month, local }) => month !== 7 || local !== "midnight").length).toBeLessThanOrEqual(1);
	});
});

describe("(5) skip: 12 MHz and above are not offered from 200 to 400 nm", () => {
	const near = grid.filter(({ nm }) => nm >= 200 && nm <= 400);
	const offersHigh = ({ chances }: Cell) => chances.slice(4).some((chance) => chance >= 0.45);

	test("at low sunspot numbers, but for 4 of 144 at 400 nm", () => {
		const low = near.filter(({ sunspots }) => sunspots === 10);
		expect(low.length).toBe(144);
		const bad = broken("(5) skip, R12 10", low, offersHigh);
		expect(bad.length).toBeLessThanOrEqual(4);
		expect(bad.every(({ nm }) => nm === 400)).toBe(true);
	});

	test("and never where the path's basic MUF is under 11.5 MHz: the rest is the rule's, made for lower critical frequencies", () => {
		const bad = broken("(5) skip, all", near, offersHigh);
		expect(near.length).toBe(432);
		expect(bad.length).toBeLessThanOrEqual(86);
		for (const { path, sunspots, month, vessel, utcHour } of bad) {
			const ionosphere = mapIonosphere({ year: 2027, month, r12: sunspots });
			const day = skyDay(skyPath(path.coast, vessel), ionosphere, skyMonth({ year: 2027, month, sunspots }));
			expect(basicMufMHz(skyHour(day, utcHour))).toBeGreaterThan(11.5);
		}
	});
});

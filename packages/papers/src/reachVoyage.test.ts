import { addDays, daysBetween, type IsoDate, isoDate } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { GRADES, swell, UNKNOWN, VOYAGE } from "./reach.sample.ts";
import { type ReachVoyage, reachVoyage } from "./reachVoyage.ts";
import {
	everyElement,
	faultyFigures,
	greyOf,
	partsIn,
	pathParts,
	withClass,
	wordsIn,
	type XmlElement,
	xmlElement,
} from "./reachXml.sample.ts";

const day = isoDate;
const MARCH = Array.from({ length: 10 }, (_, i) => addDays(day("2027-03-01"), i));
/** Ten days in March, one leg. */
const TEN_DAYS: ReachVoyage = {
	title: "Ten days",
	grades: GRADES,
	legs: [{ name: "Out", from: day("2027-03-01"), to: day("2027-03-11") }],
	rows: [{ label: "Station", cells: MARCH.map((date, i) => ({ date, chances: Array.from({ length: 24 }, () => i / 9) })) }],
};

function pictured(voyage: Partial<ReachVoyage>): XmlElement {
	return xmlElement(reachVoyage({ ...TEN_DAYS, ...voyage }));
}

/** Where a reader finds the start of a day in March: by the dates under the strips. */
function xOfDate(picture: XmlElement, date: IsoDate): number {
	const dates = everyElement(withClass(picture, "reach-dates")[0]!);
	const at = (words: string) => Number(dates.find(({ text }) => text === words)?.attributes["x"]);
	return at("1 Mar 2027") + ((at("6 Mar") - at("1 Mar 2027")) * daysBetween(day("2027-03-01"), date)) / 5;
}

/** Where a reader finds a minute of the day in the first strip: by the figures beside it. */
function yOfMinute(picture: XmlElement, minute: number): number {
	const figures = everyElement(withClass(withClass(picture, "reach-row")[0]!, "reach-utc")[0]!);
	const at = (words: string) => Number(figures.find(({ text }) => text === words)?.attributes["y"]) - 3.5; // a figure stands so far under its line
	return at("0000") + ((at("2400") - at("0000")) * minute) / 1_440;
}

/** Grey of one hour of one day in the first strip; null where there is no ink. */
function greyAt(picture: XmlElement, date: IsoDate, hour: number): number | null {
	const [ink] = withClass(withClass(picture, "reach-row")[0]!, "reach-ink");
	const x = (xOfDate(picture, date) + xOfDate(picture, addDays(date, 1))) / 2;
	const y = yOfMinute(picture, hour * 60 + 30);
	const found = partsIn(ink!).filter((part) => part.fill !== "none" && part.x1 < x && x < part.x2 && part.y1 < y && y < part.y2);
	expect(found.length).toBeLessThanOrEqual(1);
	return found[0]?.fill === undefined ? null : greyOf(found[0].fill);
}

test("the picture of a voyage", async () => {
	await expect(reachVoyage(VOYAGE)).toMatchFileSnapshot("../golden/reachVoyage.svg");
});

test("ink grows with chance, day by day, in the shades of a day's bar", () => {
	const picture = pictured({});
	const greys = MARCH.map((date) => greyAt(picture, date, 12));
	expect(greys[0]).toBeNull();
	for (let i = 2; i < 10; i++) expect(greys[i]!).toBeLessThan(greys[i - 1]!);
	expect(greys[9]).toBeCloseTo(greyOf("#0f3050"), 5);
});

test("hours run down, each from its figure to the next hour", () => {
	const picture = pictured({ rows: [{ label: "", cells: MARCH.map((date) => ({ date, chances: swell(6, 0.5, 1) })) }] });
	expect(Array.from({ length: 24 }, (_, hour) => greyAt(picture, MARCH[4]!, hour) !== null).indexOf(true)).toBe(6);
	const [ink] = partsIn(withClass(withClass(picture, "reach-row")[0]!, "reach-ink")[0]!);
	expect([ink!.y1, ink!.y2]).toEqual([360, 420].map((minute) => expect.closeTo(yOfMinute(picture, minute), 3)));
});

test("a sample stands for the days halfway to its neighbours", () => {
	const cells = [day("2027-03-02"), day("2027-03-08")].map((date, i) => ({ date, chances: Array.from({ length: 24 }, () => 0.5 + i / 2) }));
	const picture = pictured({ rows: [{ label: "", cells }] });
	const parts = partsIn(withClass(withClass(picture, "reach-row")[0]!, "reach-ink")[0]!);
	const border = (xOfDate(picture, day("2027-03-05")) + xOfDate(picture, day("2027-03-06"))) / 2;
	expect(parts.map(({ x2 }) => x2)[0]).toBeCloseTo(border, 2);
	expect(parts.map(({ x1 }) => x1)[1]).toBeCloseTo(border, 2);
});

test.each([Number.NaN, -0.01, 1.01, Number.POSITIVE_INFINITY])("an hour of chance %d is empty with a dot", (chance) => {
	const chances = Array.from({ length: 24 }, (_, hour) => (hour === 7 ? chance : 0.9));
	const picture = pictured({ rows: [{ label: "", cells: MARCH.map((date) => ({ date, chances })) }] });
	expect([6, 7, 8].map((hour) => greyAt(picture, MARCH[3]!, hour) === null)).toEqual([false, true, false]);
	const dots = pathParts(withClass(picture, "reach-unknown")[0]!.attributes["d"]!);
	expect(dots.length).toBe(10);
	expect(dots[3]!.y1).toBeCloseTo(yOfMinute(picture, 450), 2);
});

describe("legs", () => {
	test("lie over their days; stays are blocks", () => {
		const legs = [
			{ name: "Out", from: day("2027-03-01"), to: day("2027-03-05") },
			{ name: "In port", from: day("2027-03-05"), to: day("2027-03-08"), stay: true },
			{ name: "Back", from: day("2027-03-08"), to: day("2027-03-11") },
		];
		const picture = pictured({ legs });
		const [stay] = pathParts(withClass(picture, "reach-stays")[0]!.attributes["d"]!);
		expect([stay!.x1, stay!.x2]).toEqual([legs[1]!.from, legs[1]!.to].map((date) => expect.closeTo(xOfDate(picture, date), 2)));
		const arrows = pathParts(withClass(picture, "reach-under-way")[0]!.attributes["d"]!).filter(({ x1, x2 }) => x2 - x1 > 5);
		expect(arrows.map(({ x1, x2 }) => [x1 - 1, x2 + 1])).toEqual(
			[legs[0]!, legs[2]!].map(({ from, to }) => [from, to].map((date) => expect.closeTo(xOfDate(picture, date), 2))),
		);
		const names = everyElement(withClass(picture, "reach-legs")[0]!).filter(({ name }) => name === "text");
		expect(names.map(({ text }) => text)).toEqual(["Out", "In port", "Back"]);
		expect(Number(names[1]!.attributes["x"])).toBeCloseTo((stay!.x1 + stay!.x2) / 2, 2);
		const borders = pathParts(withClass(picture, "reach-borders")[0]!.attributes["d"]!).map(({ x1 }) => x1);
		expect(borders.length).toBe(4);
	});

	test("have a number over them where the name is too long, and the name under the strips", () => {
		const picture = xmlElement(reachVoyage(VOYAGE));
		const over = wordsIn(withClass(picture, "reach-legs")[0]!).join(" ");
		const key = wordsIn(withClass(picture, "reach-key")[0]!).join(" ").replaceAll("\u00a0", " ");
		const numbered = [...key.matchAll(/(\d+) ([^;]+)/g)].map(([, number, name]) => ({ number: Number(number), name }));
		expect(numbered.map(({ number }) => number)).toEqual(numbered.map((_, i) => i + 1));
		expect(numbered.length).toBeGreaterThan(3);
		for (const { name } of VOYAGE.legs) expect(over.includes(name) || numbered.some((entry) => entry.name === name), name).toBe(true);
	});

	test("that crowd keep their numbers apart", () => {
		const legs = Array.from({ length: 200 }, (_, i) => ({
			name: `Leg ${i}`,
			from: addDays(day("2027-01-01"), i),
			to: addDays(day("2027-01-01"), i + 1),
		}));
		const names = everyElement(withClass(pictured({ legs, rows: [] }), "reach-legs")[0]!).filter(({ name }) => name === "text");
		expect(names.length).toBe(200);
		const places = names.map(({ text, attributes }) => ({ y: attributes["y"], x: Number(attributes["x"]), half: text.length * 3.2 }));
		for (const [i, a] of places.entries()) {
			for (const b of places.slice(i + 1)) if (a.y === b.y) expect(Math.abs(a.x - b.x)).toBeGreaterThan(a.half + b.half);
		}
	});
});

test("night is hatched between dusk and dawn of its days, and its edges lie over the ink", () => {
	const nights = MARCH.map((date) => ({ date, night: [{ fromMin: 1_080, toMin: 360 }] }));
	const picture = pictured({ nights });
	const [row] = withClass(picture, "reach-row");
	const parts = partsIn(withClass(row!, "reach-night")[0]!);
	const [dawn, dusk] = [yOfMinute(picture, 360), yOfMinute(picture, 1_080)];
	expect(parts.length).toBeGreaterThan(50);
	for (const { y1, y2 } of parts) expect(y2 <= dawn + 0.001 || y1 >= dusk - 0.001).toBe(true);
	const edges = new Set(partsIn(withClass(row!, "reach-night-edges")[0]!).map(({ y1 }) => y1));
	expect([...edges].sort((a, b) => a - b)).toEqual([dawn, dusk].map((y) => expect.closeTo(y, 3)));
	const classes = row!.children.map(({ attributes }) => attributes["class"]);
	expect(classes.indexOf("reach-night-edges")).toBeGreaterThan(classes.indexOf("reach-ink"));
});

test("broadcasts lie across at their start, with pennants as deep as they last", () => {
	const [row] = TEN_DAYS.rows;
	const picture = pictured({
		rows: [
			{
				...row!,
				broadcasts: [
					{ fromMin: 450, toMin: 540 },
					{ fromMin: 1_410, toMin: 30 },
				],
			},
		],
	});
	const [strip] = withClass(picture, "reach-row");
	const lines = withClass(strip!, "reach-staffs").flatMap(partsIn);
	expect(lines.map(({ y1 }) => y1)).toEqual([450, 1_410].map((minute) => expect.closeTo(yOfMinute(picture, minute), 3)));
	const pennants = withClass(strip!, "reach-pennants").flatMap(partsIn);
	expect(pennants.length).toBe(6);
	expect([pennants[0]!.y1, pennants[0]!.y2]).toEqual([450, 540].map((minute) => expect.closeTo(yOfMinute(picture, minute), 3)));
});

describe("words", () => {
	test("title and description for a screen reader", () => {
		const [title, desc] = xmlElement(reachVoyage(VOYAGE)).children;
		expect(title).toMatchObject({ name: "title", text: VOYAGE.title });
		expect(desc!.text).toContain("Voyage: stay, Cape Town 1 Feb 2027 to 4 Feb 2027; Cape Town to St Helena 4 Feb 2027 to 22 Feb 2027;");
		expect(desc!.text).toMatch(
			/Rio de Janeiro, 12665 kHz, weather charts: of 33 dates the best hour is good on \d+, fair on \d+, poor on \d+, cannot tell on 3; broadcasts 0730-0900, 1630-1820\./,
		);
	});

	test("labels in full, boat time to the right of the strips where it is given", () => {
		const picture = xmlElement(reachVoyage(VOYAGE));
		const rows = withClass(picture, "reach-row");
		expect(rows.length).toBe(3);
		for (const [i, row] of rows.entries()) {
			expect(wordsIn(withClass(row, "reach-label")[0]!).join(" ")).toBe(VOYAGE.rows[i]!.label.replace("\n", " "));
			expect(wordsIn(withClass(row, "reach-boat-time")[0]!)).toEqual(["2300", "0500", "1100", "1700", "2300"]);
		}
		expect(withClass(pictured({}), "reach-boat-time")).toEqual([]);
	});

	test("the legend explains only what is on the picture", () => {
		expect(wordsIn(withClass(pictured({}), "reach-legend")[0]!)).not.toContain("night aboard");
		expect(wordsIn(withClass(xmlElement(reachVoyage(VOYAGE)), "reach-legend")[0]!)).toEqual(
			expect.arrayContaining(["good 75 % and more", "none under 15 %", "cannot tell", "night aboard", "stay"]),
		);
	});
});

describe("any input", () => {
	const text = fc.oneof(fc.string({ unit: "binary" }), fc.constantFrom("<b>&amp;", "]]>", '" onload="x', "a\nb"));
	const date = fc.integer({ min: 0, max: 700 }).map((offset) => addDays(day("2026-06-01"), offset));
	const dates = fc.array(date, { maxLength: 8 }).map((some) => some.sort());
	const chances = fc.array(fc.oneof(fc.double(), fc.double({ min: 0, max: 1 })), { minLength: 24, maxLength: 24 });
	const span = fc.record({ fromMin: fc.integer({ min: 0, max: 1_440 }), toMin: fc.integer({ min: 0, max: 1_440 }) });
	const cells = dates.chain((some) => fc.tuple(...some.map((at) => chances.map((day) => ({ date: at, chances: day })))));
	const leg = fc.record({ name: text, at: fc.tuple(date, date), stay: fc.boolean() }).map(({ name, at, stay }) => {
		const [from, to] = [...at].sort() as [IsoDate, IsoDate];
		return { name, from, to, stay };
	});

	test("gives well-formed markup, finite figures within the picture, and the same bytes again", () => {
		let strips = 0;
		fc.assert(
			fc.property(
				fc.record({
					title: text,
					rows: fc.array(fc.record({ label: text, cells, broadcasts: fc.array(span, { maxLength: 3 }) }), { maxLength: 3 }),
					legs: fc.array(leg, { minLength: 1, maxLength: 5 }),
					nights: dates.map((some) => some.map((at, i) => ({ date: at, night: [{ fromMin: 1_000 + i, toMin: 300 }] }))),
					width: fc.integer({ min: 420, max: 1_500 }),
				}),
				(voyage) => {
					const markup = reachVoyage({ ...voyage, grades: GRADES });
					const picture = xmlElement(markup);
					expect(faultyFigures(picture)).toEqual([]);
					expect(markup).not.toMatch(/="[^"]*(?:NaN|Infinity|undefined|null)[^"]*"/);
					const [, , wide, high] = picture.attributes["viewBox"]!.split(" ").map(Number) as [number, number, number, number];
					for (const { x1, x2, y1, y2 } of partsIn(picture)) {
						expect(Math.min(x1, y1)).toBeGreaterThanOrEqual(0);
						expect(x2).toBeLessThanOrEqual(wide);
						expect(y2).toBeLessThanOrEqual(high);
					}
					expect(reachVoyage({ ...voyage, grades: GRADES })).toBe(markup);
					strips += withClass(picture, "reach-row").length;
				},
			),
			{ seed: 20_261_124, numRuns: 200 },
		);
		expect(strips).toBeGreaterThan(200);
	});

	test.each<[string, Partial<ReachVoyage>, string]>([
		[
			"25 chances",
			{ rows: [{ label: "", cells: [{ date: MARCH[0]!, chances: [...UNKNOWN, 1] }] }] },
			"Cannot draw rows[0].cells[0].chances: expected 24",
		],
		[
			"a leg that ends before it begins",
			{ legs: [{ name: "x", from: MARCH[3]!, to: MARCH[1]! }] },
			"Cannot draw legs[0] from 2027-03-04 to 2027-03-02",
		],
		["nothing dated", { legs: [], rows: [] }, 'Cannot draw "Ten days": expected a dated cell or leg'],
		["a century", { legs: [{ name: "x", from: MARCH[3]!, to: day("2127-03-04") }] }, "expected 3660 days at most"],
		[
			"a night that is no time",
			{ nights: [{ date: MARCH[0]!, night: [{ fromMin: 0, toMin: -4 }] }] },
			"Cannot draw nights[0].night from minute 0",
		],
	])("that is wrong is refused by name: %s", (_, voyage, message) => {
		expect(() => pictured(voyage)).toThrow(message);
	});
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CAUTIONS } from "./cautions.ts";
import { DAY, GRADES, swell, UNKNOWN } from "./reach.sample.ts";
import { type ReachDay, type ReachDayRow, reachDay } from "./reachDay.ts";
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

const [FIRST] = DAY.rows as readonly [ReachDayRow];

function pictured(day: Partial<ReachDay>): XmlElement {
	return xmlElement(reachDay({ ...DAY, ...day }));
}

function pictureOfRow(row: Partial<ReachDayRow>, day: Partial<ReachDay> = {}): XmlElement {
	return pictured({ night: [], rows: [{ ...FIRST, broadcasts: [], ...row }], ...day });
}

/** Where a reader finds a minute of the day: by the figures of the scale over the bars. */
function xOfMinute(picture: XmlElement, minute: number): number {
	const [scale] = withClass(picture, "reach-utc");
	const at = (words: string) => Number(everyElement(scale!).find(({ text }) => text === words)?.attributes["x"]);
	return at("0000") + ((at("2400") - at("0000")) * minute) / 1_440;
}

/** The ink of one hour in the first bar: its grey and its breadth; null where there is none. */
function inkAt(picture: XmlElement, hour: number) {
	const [ink] = withClass(withClass(picture, "reach-row")[0]!, "reach-ink");
	const x = xOfMinute(picture, hour * 60 + 30);
	const found = partsIn(ink!).filter(({ x1, x2, fill }) => fill !== "none" && x1 < x && x < x2);
	expect(found.length).toBeLessThanOrEqual(1);
	const [part] = found;
	return part === undefined ? null : { grey: greyOf(part.fill!), breadth: part.y2 - part.y1, x1: part.x1, x2: part.x2 };
}

test("the picture of a day", async () => {
	await expect(reachDay(DAY)).toMatchFileSnapshot("../golden/reachDay.svg");
});

test("the picture of a day under the lamp, its rows more than one scale serves", async () => {
	const rows = [...DAY.rows, ...DAY.rows.map((row) => ({ ...row, broadcasts: [] }))];
	await expect(reachDay({ ...DAY, rows, theme: "lamp", id: "reach-lamp", night: [] })).toMatchFileSnapshot("../golden/reachDayLamp.svg");
});

describe("ink", () => {
	test("grows darker and broader with chance, from nothing to the full bar", () => {
		const picture = pictureOfRow({ chances: Array.from({ length: 24 }, (_, hour) => hour / 23) });
		const ink = Array.from({ length: 24 }, (_, hour) => inkAt(picture, hour));
		expect(ink[0]).toBeNull();
		for (let hour = 2; hour < 24; hour++) {
			expect(ink[hour]!.grey).toBeLessThanOrEqual(ink[hour - 1]!.grey);
			expect(ink[hour]!.breadth).toBeGreaterThanOrEqual(ink[hour - 1]!.breadth);
		}
		// none 1-3, poor 4-10, fair 11-17, good 18-23
		expect([3, 10, 17, 23].map((hour) => ink[hour]!.breadth)).toEqual(
			[2.5, 20 / 3, 40 / 3, 20].map((breadth) => expect.closeTo(breadth, 2)),
		);
		expect([4, 11, 18].every((hour) => ink[hour]!.grey < ink[hour - 1]!.grey - 10)).toBe(true);
	});

	test("of an hour lies from that hour to the next, as in the hours in words", () => {
		const picture = pictureOfRow({ chances: swell(9, 0.5, 1) });
		expect(inkAt(picture, 9)).toMatchObject({ x1: xOfMinute(picture, 540), x2: xOfMinute(picture, 600) });
		expect([8, 10].map((hour) => inkAt(picture, hour))).toEqual([null, null]);
	});

	test("is one hue from white to ink", () => {
		const fills = withClass(pictured({}), "reach-ink").flatMap((ink) => everyElement(ink).map(({ attributes }) => attributes["fill"]));
		const colours = new Set(fills.filter((fill) => fill?.startsWith("#")));
		expect(colours.size).toBeGreaterThan(10);
		for (const colour of colours) {
			const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => 255 - Number.parseInt(colour!.slice(at, at + 2), 16));
			expect(Math.abs(g / r - 207 / 240)).toBeLessThan(0.06);
			expect(Math.abs(b / r - 175 / 240)).toBeLessThan(0.06);
		}
	});

	test.each([Number.NaN, -0.01, 1.01, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
		"of %d is an empty hour with a dot",
		(chance) => {
			const picture = pictureOfRow({
				chances: Array.from({ length: 24 }, (_, hour) => (hour === 7 ? chance : 0.9)),
			});
			expect(inkAt(picture, 7)).toBeNull();
			expect([6, 8].map((hour) => inkAt(picture, hour)?.breadth)).toEqual([20, 20]);
			const [unknown] = withClass(picture, "reach-unknown");
			const x = xOfMinute(picture, 450);
			expect(partsIn(unknown!).map(({ x1, x2 }) => [x1, x2])).toEqual([[x, x]]);
		},
	);

	test("has a line through the hours of the last grade, trace or none, and through no other", () => {
		const chances = [...UNKNOWN.slice(0, 6), 0, 0.1, 0.14, 0.2, 0.9, 0, ...swell(12, 1, 1).slice(12)];
		const picture = pictureOfRow({ chances });
		const parts = partsIn(withClass(withClass(picture, "reach-row")[0]!, "reach-last-grade")[0]!);
		const lined = chances.map((_, hour) => {
			const x = xOfMinute(picture, hour * 60 + 30);
			return parts.some(({ x1, x2 }) => x1 < x && x < x2);
		});
		expect(lined).toEqual(chances.map((chance) => chance < 0.15));
		expect(lined.filter(Boolean).length).toBe(15);
	});
});

describe("broadcasts", () => {
	function marksOf(picture: XmlElement, name: string) {
		return withClass(withClass(picture, "reach-row")[0]!, name).flatMap(({ attributes }) => pathParts(attributes["d"]!));
	}

	test("start at their staff and last as long as their pennant", () => {
		const picture = pictureOfRow({ broadcasts: [{ fromMin: 575, toMin: 635 }] });
		const [start, end] = [575, 635].map((minute) => expect.closeTo(xOfMinute(picture, minute), 3));
		expect(marksOf(picture, "reach-staffs").map(({ x1, x2 }) => [x1, x2])).toEqual([[start, start]]);
		expect(marksOf(picture, "reach-pennants").map(({ x1, x2 }) => [x1, x2])).toEqual([[start, end]]);
	});

	test("over midnight go on at the left without a second staff", () => {
		const picture = pictureOfRow({ broadcasts: [{ fromMin: 1_380, toMin: 60 }] });
		expect(marksOf(picture, "reach-staffs").map(({ x1 }) => x1)).toEqual([xOfMinute(picture, 1_380)]);
		expect(marksOf(picture, "reach-pennants").map(({ x1, x2 }) => [x1, x2])).toEqual(
			[
				[1_380, 1_440],
				[0, 60],
			].map((ends) => ends.map((minute) => xOfMinute(picture, minute))),
		);
	});

	test("of a moment can be seen, also the last one of the day", () => {
		const picture = pictureOfRow({
			broadcasts: [
				{ fromMin: 600, toMin: 600 },
				{ fromMin: 1_439, toMin: 1_439 },
			],
		});
		for (const { x1, x2 } of marksOf(picture, "reach-pennants")) {
			expect(x2 - x1).toBeCloseTo(4, 3);
			expect(x2).toBeLessThanOrEqual(xOfMinute(picture, 1_440));
		}
		expect(marksOf(picture, "reach-staffs").length).toBe(2);
	});

	test("all day long are a line without a staff; one every five minutes leaves the ink in sight", () => {
		expect(marksOf(pictureOfRow({ broadcasts: [{ fromMin: 0, toMin: 1_440 }] }), "reach-staffs")).toEqual([]);
		const many = pictureOfRow({ broadcasts: Array.from({ length: 288 }, (_, i) => ({ fromMin: 5 * i, toMin: 5 * i + 1 })) });
		const staffs = marksOf(many, "reach-staffs").map(({ x1 }) => x1);
		expect(marksOf(many, "reach-pennants").length).toBe(288);
		expect(staffs.length).toBeGreaterThan(50);
		for (const [i, x] of staffs.entries()) expect(x - (staffs[i - 1] ?? Number.NEGATIVE_INFINITY)).toBeGreaterThanOrEqual(5);
	});
});

describe("night", () => {
	function hatchOf(night: ReachDay["night"]) {
		const picture = pictureOfRow({}, { night });
		return { picture, parts: withClass(withClass(picture, "reach-row")[0]!, "reach-night").flatMap(partsIn) };
	}

	test("is hatched from dusk to dawn over midnight, and day is not", () => {
		const { picture, parts } = hatchOf([{ fromMin: 1_115, toMin: 390 }]);
		const [dusk, dawn] = [xOfMinute(picture, 1_115), xOfMinute(picture, 390)];
		expect(parts.length).toBeGreaterThan(40);
		for (const { x1, x2 } of parts) expect(x2 <= dawn + 0.001 || x1 >= dusk - 0.001).toBe(true);
		// edges stand where night begins and ends, and no part of night is left bare
		expect(parts.filter(({ x1, x2 }) => x1 === x2).map(({ x1 }) => x1)).toEqual([dusk, dawn].map((x) => expect.closeTo(x, 3)));
		for (let minute = 3; minute < 1_440; minute += 10) {
			const x = xOfMinute(picture, minute);
			const hatched = parts.some(({ x1, x2 }) => x1 - 3 <= x && x <= x2 + 3);
			if (Math.abs(minute - 1_115) > 15 && Math.abs(minute - 390) > 15)
				expect(hatched, `minute ${minute}`).toBe(minute < 390 || minute > 1_115);
		}
	});

	test("of the whole day, of no time at all, and none", () => {
		const whole = hatchOf([{ fromMin: 0, toMin: 1_440 }]);
		expect(Math.min(...whole.parts.map(({ x1 }) => x1))).toBeCloseTo(xOfMinute(whole.picture, 0), 0);
		expect(Math.max(...whole.parts.map(({ x2 }) => x2))).toBeCloseTo(xOfMinute(whole.picture, 1_440), 0);
		expect(hatchOf([{ fromMin: 600, toMin: 600 }]).parts.filter(({ x1, x2 }) => x2 > x1)).toEqual([]);
		expect(hatchOf([]).parts).toEqual([]);
	});

	test("stays in sight behind the fullest ink", () => {
		const picture = pictureOfRow({ chances: Array.from({ length: 24 }, () => 1) }, { night: [{ fromMin: 0, toMin: 1_440 }] });
		const hatch = partsIn(withClass(withClass(picture, "reach-row")[0]!, "reach-night")[0]!);
		const ink = inkAt(picture, 3)!;
		expect(Math.max(...hatch.map(({ y2 }) => y2)) - Math.min(...hatch.map(({ y1 }) => y1))).toBeGreaterThanOrEqual(ink.breadth + 9);
	});
});

describe("words", () => {
	test("title and description for a screen reader", () => {
		const picture = pictured({});
		expect(picture.attributes).toMatchObject({ role: "img", "aria-labelledby": "reach-day-title", "aria-describedby": "reach-day-desc" });
		const [title, desc] = picture.children;
		expect(title).toMatchObject({ name: "title", attributes: { id: "reach-day-title" }, text: DAY.title });
		expect(desc).toMatchObject({ name: "desc", attributes: { id: "reach-day-desc" } });
		expect(desc!.text).toContain("by hour of day, UTC. Night aboard 1835-0630.");
		expect(desc!.text).toContain("Cape Town, 8711 kHz, weather by voice: good 1800-0300, fair 1500-1800; broadcasts 0935-1000, 2330-0015.");
		// without a note: counted
		expect(desc!.text).toContain(
			"Standard time, 10000 kHz: good in 6 hours, fair in 7 hours, poor in 7 hours, none in 4 hours; broadcasts 0000-2400.",
		);
	});

	test("labels to the left of the bars, notes to the right, whole", () => {
		const picture = pictured({});
		const rows = withClass(picture, "reach-row");
		expect(rows.length).toBe(DAY.rows.length);
		for (const [i, row] of rows.entries()) {
			const { label, note = "" } = DAY.rows[i]!;
			const [labelled] = withClass(row, "reach-label");
			expect(wordsIn(labelled!).join(" ")).toBe(label.replace("\n", " "));
			expect(withClass(row, "reach-note").flatMap(wordsIn).join(" ")).toBe(note);
			for (const { attributes } of everyElement(labelled!).filter(({ name }) => name === "text")) {
				expect(Number(attributes["x"])).toBeLessThan(xOfMinute(picture, 0));
			}
		}
	});

	test("UTC over the bars with boat time under it", () => {
		const picture = pictured({ boatTimeOffsetMin: -30 });
		expect(wordsIn(withClass(picture, "reach-utc")[0]!)).toEqual([
			"UTC",
			"0000",
			"0300",
			"0600",
			"0900",
			"1200",
			"1500",
			"1800",
			"2100",
			"2400",
		]);
		expect(wordsIn(withClass(picture, "reach-boat-time")[0]!)).toEqual([
			"boat time",
			"2330",
			"0230",
			"0530",
			"0830",
			"1130",
			"1430",
			"1730",
			"2030",
			"2330",
		]);
		expect(withClass(xmlElement(reachDay({ title: "", rows: [], night: [], grades: GRADES })), "reach-boat-time")).toEqual([]);
		expect(wordsIn(withClass(pictured({ boatTimeOffsetMin: 0 }), "reach-boat-time")[0]!).at(-1)).toBe("0000");
	});

	test("the legend says each grade with its figures, and what a prediction is worth", () => {
		const words = wordsIn(withClass(pictured({}), "reach-legend")[0]!);
		expect(words).toEqual(
			expect.arrayContaining(["good 75 % and more", "fair 45-75 %", "poor 15-45 %", "none under 15 %", "cannot tell", "night aboard"]),
		);
		const bare = wordsIn(withClass(pictureOfRow({}), "reach-legend")[0]!);
		expect(bare).not.toContain("night aboard");
		expect(bare.some((line) => line.startsWith("broadcast"))).toBe(false);
		const caution = wordsIn(withClass(pictured({}), "reach-caution")[0]!).join(" ");
		expect(caution).toBe("Predictions are monthly medians, not promises. The fitter and the skipper decide.");
		expect(CAUTIONS.flatMap(({ lines }) => lines)).toContain(caution);
	});
});

describe("any input", () => {
	const text = fc.oneof(
		fc.string({ unit: "binary" }),
		fc.string({ unit: "grapheme" }),
		fc.constantFrom("<b>&amp;", "]]>", '" onload="x', "a\nb\n\nc", "--&gt;"),
	);
	const span = fc.record({ fromMin: fc.integer({ min: 0, max: 1_440 }), toMin: fc.integer({ min: 0, max: 1_440 }) });
	const chances = fc.array(fc.oneof(fc.double(), fc.double({ min: 0, max: 1 }), fc.constant(Number.NaN)), { minLength: 24, maxLength: 24 });
	const row = fc.record({ label: text, note: text, chances, broadcasts: fc.array(span, { maxLength: 4 }) });

	test("gives well-formed markup, finite figures, words within the picture, and the same bytes again", () => {
		let bars = 0;
		fc.assert(
			fc.property(
				fc.record({
					title: text,
					rows: fc.array(row, { maxLength: 4 }),
					night: fc.array(span, { maxLength: 2 }),
					width: fc.integer({ min: 420, max: 1_500 }),
					boatTimeOffsetMin: fc.integer({ min: -1_439, max: 1_439 }),
				}),
				(day) => {
					const markup = reachDay({ ...day, grades: GRADES });
					const picture = xmlElement(markup);
					expect(faultyFigures(picture)).toEqual([]);
					expect(markup).not.toMatch(/="[^"]*(?:NaN|Infinity|undefined|null)[^"]*"/);
					const [, , wide, high] = picture.attributes["viewBox"]!.split(" ").map(Number) as [number, number, number, number];
					for (const { attributes } of everyElement(picture).filter(({ name }) => name === "text")) {
						expect(Number(attributes["x"])).toBeLessThan(wide);
						expect(Number(attributes["y"])).toBeLessThan(high);
					}
					for (const { x1, x2, y1, y2 } of partsIn(picture)) {
						expect(Math.min(x1, y1)).toBeGreaterThanOrEqual(0);
						expect(x2).toBeLessThanOrEqual(wide);
						expect(y2).toBeLessThanOrEqual(high);
					}
					expect(reachDay({ ...day, grades: GRADES })).toBe(markup);
					bars += withClass(picture, "reach-row").length;
				},
			),
			{ seed: 20_261_124, numRuns: 300 },
		);
		expect(bars).toBeGreaterThan(300);
	});

	test.each<[string, Partial<ReachDay>, string]>([
		[
			"23 chances",
			{ rows: [FIRST, { ...FIRST, chances: UNKNOWN.slice(1) }] },
			"Cannot draw rows[1].chances: expected 24, one an hour, got 23",
		],
		[
			"a broadcast out of the day",
			{ rows: [{ ...FIRST, broadcasts: [{ fromMin: 2_000, toMin: 2_010 }] }] },
			"Cannot draw rows[0].broadcasts from minute 2000",
		],
		["a night that is no time", { night: [{ fromMin: Number.NaN, toMin: 3 }] }, "Cannot draw night[0] from minute NaN"],
		["too narrow", { width: 100 }, "Cannot draw reach 100 px wide: expected 420 to 10000"],
		["no width", { width: Number.NaN }, "Cannot draw reach NaN px wide"],
		["boat time a day off", { boatTimeOffsetMin: 1_440 }, "Cannot draw boat time 1440 minutes from UTC"],
		["an id of two words", { id: "a b" }, 'Cannot name a picture "a b"'],
		["no grades", { grades: [] }, "Cannot draw reach in grades from []"],
	])("that is wrong is refused by name: %s", (_, day, message) => {
		expect(() => pictured(day)).toThrow(message);
	});
});

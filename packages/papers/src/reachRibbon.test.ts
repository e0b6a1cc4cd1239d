import { expect, test } from "vitest";
import { GRADES, swell, UNKNOWN } from "./reach.sample.ts";
import { reachRibbon } from "./reachRibbon.ts";
import { faultyFigures, partsIn, withClass, xmlElement } from "./reachXml.sample.ts";

const SIZE = { width: 60, height: 14, grades: GRADES };

test("the ribbon of a cell", async () => {
	await expect(`${reachRibbon(swell(21, 9, 1), { ...SIZE, label: "good 1800-0000" })}\n`).toMatchFileSnapshot("../golden/reachRibbon.svg");
});

test("fills its size, a day from edge to edge, with nothing but ink", () => {
	const ribbon = xmlElement(
		reachRibbon(
			Array.from({ length: 24 }, () => 1),
			SIZE,
		),
	);
	expect(ribbon.attributes).toMatchObject({ width: "60", height: "14", viewBox: "0 0 60 14" });
	const [ink] = withClass(ribbon, "reach-ink");
	expect(partsIn(ink!).filter(({ fill }) => fill !== "none")).toEqual([{ x1: 0, y1: 0, x2: 60, y2: 14, fill: "#0f3050" }]);
	expect(ribbon.children.length).toBe(1);
});

test("hours lie a twenty-fourth of the width apart", () => {
	const ink = withClass(xmlElement(reachRibbon(swell(8, 0.5, 1), SIZE)), "reach-ink")[0]!;
	expect(
		partsIn(ink)
			.filter(({ fill }) => fill !== "none")
			.map(({ x1, x2 }) => [x1, x2]),
	).toEqual([[20, 22.5]]);
});

test("tells a screen reader what it shows, or hides from it", () => {
	const told = xmlElement(reachRibbon(UNKNOWN, { ...SIZE, label: "<cannot> tell" }));
	expect(told.attributes["role"]).toBe("img");
	expect(told.children[0]).toMatchObject({ name: "title", text: "<cannot> tell" });
	const hidden = xmlElement(reachRibbon(UNKNOWN, SIZE));
	expect(hidden.attributes).toMatchObject({ "aria-hidden": "true" });
	expect(withClass(hidden, "reach-unknown").flatMap(partsIn).length).toBe(24);
	expect(faultyFigures(hidden)).toEqual([]);
});

test("what cannot be drawn is refused", () => {
	expect(() => reachRibbon(UNKNOWN.slice(1), SIZE)).toThrow("Cannot draw chances: expected 24, one an hour, got 23");
	expect(() => reachRibbon(UNKNOWN, { ...SIZE, height: 0 })).toThrow("Cannot draw a ribbon of 60 by 0 px");
	expect(() => reachRibbon(UNKNOWN, { ...SIZE, width: Number.NaN })).toThrow(RangeError);
});

import type { Listing } from "@skipwright/directory";
import { profileNamed, type SheetStep } from "@skipwright/set";
import { hz, isoDate } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CAUTIONS, RECEIVER_CAUTIONS } from "./cautions.ts";
import { LOADING_SHEET_TEMPLATE } from "./loadingSheetTemplate.ts";
import { type LoadingSheetPaper, loadingSheetTypst } from "./loadingSheetTypst.ts";

const receiver = profileNamed("receiver-100") ?? expect.fail("no receiver-100");
const twin = profileNamed("twin-180") ?? expect.fail("no twin-180");

const chart: Listing = {
	id: "za-cape-naval/fax/4014",
	stationId: "za-cape-naval",
	service: "fax",
	hz: hz(4_014_000),
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
	source: "a list for this test",
	asOf: "2026-03",
	confidence: "official",
	status: "active",
	origin: "shipped",
};

const working: SheetStep = {
	order: 1,
	action: "write",
	bank: "voice",
	place: 21,
	tag: "CAPE 421",
	receive: hz(4_417_000),
	transmit: hz(4_125_000),
	mode: "USB",
	receiveTurns: [
		{ stepHz: hz(10_000), clicks: 5 },
		{ stepHz: hz(1_000), clicks: -2 },
	],
	transmitTurns: [{ stepHz: hz(10_000), clicks: -29 }],
	receiveKeys: null,
	transmitKeys: null,
	before: "empty",
	listing: null,
	what: "Cape Town, coast station, voice",
};

const chartStep: SheetStep = {
	...working,
	order: 2,
	bank: "data",
	place: 1,
	tag: "CHART 4",
	receive: hz(4_012_100),
	transmit: null,
	receiveTurns: null,
	transmitTurns: null,
	before: "4014 kHz receive only, USB",
	listing: chart.id,
	what: "Cape Naval, weather charts",
};

const clearing: SheetStep = {
	...working,
	order: 3,
	action: "clear",
	bank: "data",
	place: 2,
	tag: "",
	receive: null,
	transmit: null,
	mode: null,
	receiveTurns: null,
	transmitTurns: null,
	before: "12788 kHz both ways, USB",
	what: "clear this place",
};

const PAPER: LoadingSheetPaper = {
	sheet: {
		steps: [working, chartStep, clearing],
		unchanged: 7,
		fromBlank: false,
		settings: [{ name: "MMSI", asFound: "not read", wanted: "601000000", note: "two persons" }],
		tuneUp: [{ bandMhz: 4, carrier: hz(4_149_000), note: "4149 kHz simplex" }],
		minutes: 6,
		minutesRestOn: "counted by hand",
	},
	profile: twin,
	vessel: { name: "Tern", callSign: "ZR 1234", mmsi: "601000000" },
	jobTitle: "Cape Town to Horta",
	date: isoDate("2026-11-24"),
	directoryEdition: "2026-09-30",
	listings: [chart],
	findings: [
		{
			code: "wrong-mode",
			severity: "mind",
			bank: "data",
			place: 1,
			line: 2,
			message: "It is a beat note.",
			source: "practice",
			remedy: "Look it up.",
		},
		{
			code: "pair-swapped",
			severity: "stop",
			bank: "voice",
			place: 21,
			line: 3,
			message: "The pair is swapped.",
			source: "RR Appendix 17",
			remedy: "Turn it round.",
		},
	],
};

/** The data of a sheet without the template. */
function dataOf(paper: LoadingSheetPaper): string {
	const source = loadingSheetTypst(paper);
	expect(source.endsWith(LOADING_SHEET_TEMPLATE)).toBe(true);
	return source.slice(0, -LOADING_SHEET_TEMPLATE.length);
}

describe("loadingSheetTypst", () => {
	test("a small sheet, as source", async () => {
		await expect(loadingSheetTypst(PAPER)).toMatchFileSnapshot("../golden/loading-sheet.typ");
	});

	test("the same input gives the same source", () => {
		expect(loadingSheetTypst(structuredClone(PAPER))).toBe(loadingSheetTypst(PAPER));
	});

	test("receive only is spelled out by a transmit dial that is none, never by the receive dial", () => {
		const data = dataOf(PAPER);
		expect(data).toContain('"receive": "4012.1",\n"receive-moves": ("from any dial",),\n"transmit": none,');
	});

	test("every caution is on the sheet", () => {
		const lines = CAUTIONS.flatMap((group) => group.lines);
		expect(lines.length).toBeGreaterThan(10);
		for (const line of lines) expect(dataOf(PAPER)).toContain(line);
	});

	test("a receiver's sheet has its own cautions, and no word of a transmit dial", () => {
		const data = dataOf({ ...PAPER, profile: receiver, sheet: { ...PAPER.sheet, steps: [chartStep] }, findings: [] });
		const lines = RECEIVER_CAUTIONS.flatMap((group) => group.lines);
		expect(lines.length).toBeGreaterThan(4);
		for (const line of lines) expect(data).toContain(line);
		expect(data).not.toContain("transmit dial");
		expect(data).not.toContain("Before anyone transmits");
		expect(data).toContain('"sends": false');
	});

	test("a CW dial that is offset by its pitch is said to be so", () => {
		const single = profileNamed("single-200") ?? expect.fail("no single-200");
		expect(dataOf({ ...PAPER, profile: single })).toContain("CW shows the carrier less 800 Hz");
		expect(dataOf({ ...PAPER, profile: receiver })).toContain("CW shows the carrier less 700 Hz");
		expect(dataOf(PAPER)).toContain("USB, LSB, AM, CW show the carrier;");
	});

	test("the receive dial is turned from where the step before ended", () => {
		expect(dataOf(PAPER)).toContain("from where the step before ended: its transmit dial where it has two");
	});

	test("below 4 MHz, where the set sends there, the tuning-up table sends to the administration and never to 2182", () => {
		expect(dataOf(PAPER)).toContain(
			"gives no simplex working carrier; ask the administration for a working frequency; never tune up on 2182",
		);
		expect(dataOf({ ...PAPER, profile: { ...twin, transmit: [{ fromHz: 4_000_000, toHz: 27_500_000 }] } })).toContain(
			'"tune-up-below": none',
		);
		expect(dataOf({ ...PAPER, profile: receiver })).toContain('"tune-up-below": none');
	});

	test("old figures are one paragraph, after all else, and take no number", () => {
		const [mind = expect.fail()] = PAPER.findings;
		const stale = { ...mind, code: "listing-stale", message: "It is old.", remedy: "Look it up." } as const;
		const others = [7, 5, 6].map((place) => ({ ...stale, bank: "voice", place }));
		const data = dataOf({ ...PAPER, findings: [stale, ...others, ...PAPER.findings] });
		expect(data).not.toContain("It is old.");
		expect(data).toContain('"finding-count": "1 stop, 0 fix, 1 mind"');
		expect(data).toContain('"old-figures": "4 places rest on figures too old');
		expect(data).toContain("below tells the age of the 1 that is keyed on this sheet.");
		expect(data).toContain("among the findings of the plan: voice 5–7.");
		expect([...data.matchAll(/"number": (\d),\n"where"/g)].map(([, number]) => number)).toEqual(["1", "2"]);
		expect([...data.matchAll(/"number": (\d),\n"severity"/g)].map(([, number]) => number)).toEqual(["1", "2"]);
		const alone = dataOf({ ...PAPER, findings: [stale] });
		expect(alone).toContain('"old-figures": "1 place rests on a figure');
		expect(alone).toContain('"finding-count": none');
		expect(alone).not.toContain("finding 1 in the list");
		expect(dataOf(PAPER)).toContain('"old-figures": none');
	});

	test("a remedy that is a bare figure gets words", () => {
		const [mind = expect.fail()] = PAPER.findings;
		expect(dataOf({ ...PAPER, findings: [{ ...mind, remedy: "AM 15000 kHz" }] })).toContain('"remedy": "it should hold AM 15000 kHz"');
	});

	test("findings are numbered worst first, and the steps they touch name them", () => {
		const data = dataOf(PAPER);
		expect(data.indexOf("The pair is swapped.")).toBeLessThan(data.indexOf("It is a beat note."));
		expect(data).toContain('"finding-count": "1 stop, 0 fix, 1 mind"');
		const steps = data.slice(data.indexOf('"blocks"'));
		expect(steps.indexOf('"see": ((\n"number": 1,\n"severity": "stop",\n),)')).toBeLessThan(steps.indexOf('"tag": "CHART 4"'));
		expect(steps.indexOf('"see": ((\n"number": 2,\n"severity": "mind",\n),)')).toBeGreaterThan(steps.indexOf('"tag": "CHART 4"'));
	});

	test("findings that ask for the same thing stand together under it, and keep their own numbers at the steps", () => {
		const [mind = expect.fail(), swapped = expect.fail()] = PAPER.findings;
		const data = dataOf({ ...PAPER, findings: [{ ...mind, place: 9 }, { ...mind, remedy: "Another thing." }, swapped, mind] });
		expect(data.match(/"remedy": "Look it up\."/g)).toHaveLength(1);
		expect([...data.matchAll(/"number": (\d),\n"where": "([^"]*)"/g)].map(([, number, where]) => [number, where])).toEqual([
			["1", "voice 21"],
			["2", "data 9"],
			["3", "data 1"],
			["4", "data 1"],
		]);
		const chartStepData = data.slice(data.indexOf('"tag": "CHART 4"'));
		expect([...chartStepData.slice(0, chartStepData.indexOf('"long"')).matchAll(/"number": (\d)/g)].map(([, number]) => number)).toEqual([
			"3",
			"4",
		]);
	});

	test("a listing is never shown without its confidence and age", () => {
		const data = dataOf(PAPER);
		expect(data).toContain('"source": "official source, as of 2026-03: fresh"');
		expect(data).toContain('"confidence": "read in an official publication"');
		expect(data).toContain('"directory": "2026-09-30, 55 days before this sheet"');
	});

	test("what stood in a place is left out when everything is keyed from blank", () => {
		const data = dataOf({ ...PAPER, sheet: { ...PAPER.sheet, fromBlank: true } });
		expect(data).not.toContain("4014 kHz receive only");
		expect(data).toContain('"kind": "From blank: every place is keyed"');
	});

	test("only the signs that the sheet uses are explained", () => {
		const knob = dataOf(PAPER);
		expect(knob).toContain("turns of the knob");
		expect(knob).not.toContain("keys in the order");
		const keypad = dataOf({ ...PAPER, profile: { ...twin, entry: "keypad" }, findings: [] });
		expect(keypad).not.toContain("turns of the knob");
		expect(keypad).toContain("keys in the order");
		expect(keypad).not.toContain("finding 1 in the list");
	});

	test("nothing to key is said, and counted", () => {
		expect(dataOf({ ...PAPER, sheet: { ...PAPER.sheet, steps: [] } })).toContain("Nothing to key: 7 places already hold what is wanted.");
	});

	test("a long name is shortened at the head of the page alone", () => {
		const name = "Tern of the very far and very cold southern ocean";
		const data = dataOf({ ...PAPER, vessel: { ...PAPER.vessel, name } });
		expect(data).toContain(`"vessel": "${name}"`);
		expect(data).toContain('"running-vessel": "Tern of the very far and very cold southe…"');
	});

	test("no text of the input stands outside a quoted string", () => {
		const text = fc.oneof(fc.string({ unit: "binary" }), fc.constantFrom('"', '")\n#panic()', "\\", '\\"', "#[x]", "$x$", "`", "*/"));
		let compared = 0;
		fc.assert(
			fc.property(text, text, text, text, text, (name, tag, what, note, message) => {
				const data = dataOf({
					...PAPER,
					vessel: { name, callSign: note, mmsi: message },
					jobTitle: what,
					directoryEdition: note,
					sheet: {
						...PAPER.sheet,
						minutesRestOn: note,
						settings: [{ name, asFound: tag, wanted: what, note }],
						steps: [{ ...working, tag, what, before: note, bank: name }],
					},
					findings: [{ ...(PAPER.findings[0] ?? expect.fail()), message, remedy: note, source: what, bank: name }],
				});
				const outside = data.replaceAll(/"(?:[^"\\]|\\["\\])*"/g, "");
				expect(outside).toMatch(/^#let sheet = (?:none|true|false|\d+|[(),: \n])*$/);
				compared++;
			}),
			{ seed: 20_261_124, numRuns: 300 },
		);
		expect(compared).toBe(300);
	});
});

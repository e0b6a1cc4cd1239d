import { isoDate, position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { listingName } from "./listingName.ts";
import { placesText } from "./placesText.ts";
import { planHtml } from "./planHtml.ts";
import { hourRunsOf, usualNight } from "./planNight.ts";
import { SAMPLE_PAGE } from "./planPage.sample.ts";
import type { PlanPage } from "./planPage.ts";
import { PAGE_PALETTES, TINTS, tintOf } from "./planPalette.ts";
import { bankLetters } from "./planPlaceLink.ts";
import { everyElement, type XmlElement, xmlElement } from "./reachXml.sample.ts";
import { printable } from "./typstValue.ts";

const DOCTYPE = "<!doctype html>\n";

/** Reads the page strictly: what XML refuses is refused. */
function pageOf(html: string): XmlElement {
	expect(html.startsWith(DOCTYPE)).toBe(true);
	return xmlElement(html.slice(DOCTYPE.length).trimEnd());
}

const named = (root: XmlElement, ...names: readonly string[]) => everyElement(root).filter(({ name }) => names.includes(name));
const classed = (root: XmlElement, word: string) =>
	everyElement(root).filter(({ attributes }) => (attributes["class"] ?? "").split(" ").includes(word));
const byId = (root: XmlElement, id: string) =>
	everyElement(root).find(({ attributes }) => attributes["id"] === id) ?? expect.fail(`no #${id}`);
const wordsOf = (element: XmlElement): string => [element.text, ...element.children.map(wordsOf)].join(" ");

describe("the page of a plan", () => {
	const html = planHtml(SAMPLE_PAGE);
	const page = pageOf(html);
	const { plan } = SAMPLE_PAGE;

	test("is drawn as last time", async () => {
		await expect(html).toMatchFileSnapshot("../golden/plan.html");
	});

	test("asks nobody for anything, runs nothing, and forbids both", () => {
		expect(html).not.toMatch(/https?:|url\(|@import|\bsrc=|<script|<link|<iframe|<object|\bon\w+=/i);
		const [first, second] = named(page, "meta").map(({ attributes }) => attributes);
		expect(first).toEqual({ charset: "utf-8" });
		expect(second).toEqual({
			"http-equiv": "Content-Security-Policy",
			content: "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'",
		});
	});

	test("every colour that a picture asks for is there, in each light", () => {
		const used = new Set([...html.matchAll(/"var\((--on-[0-9a-f]{6})\)"/g)].map(([, name]) => name));
		expect(used.size).toBeGreaterThan(5);
		for (const name of used) expect(html.split(`${name}: #`)).toHaveLength(1 + 3);
		expect(html).not.toMatch(/ (fill|stroke)="#/);
	});

	test("has landmarks, headings in order, named tables, and links that lead somewhere", () => {
		expect(page.attributes["lang"]).toBe("en");
		for (const landmark of ["header", "nav", "main", "footer", "h1"]) expect(named(page, landmark)).toHaveLength(1);
		const levels = named(page, "h1", "h2", "h3", "h4").map(({ name }) => Number(name[1]));
		expect(levels.length).toBeGreaterThan(15);
		for (const [i, level] of levels.entries()) expect(level).toBeLessThanOrEqual((levels[i - 1] ?? 0) + 1);
		const tables = named(page, "table");
		expect(tables.length).toBeGreaterThanOrEqual(7);
		for (const table of tables) {
			expect(table.children[0]?.name).toBe("caption");
			for (const head of named(table, "th")) expect(["row", "col", "rowgroup"]).toContain(head.attributes["scope"]);
		}
		const ids = everyElement(page).flatMap(({ attributes }) => attributes["id"] ?? []);
		expect(new Set(ids).size).toBe(ids.length);
		const links = named(page, "a", "use").map(({ attributes }) => attributes["href"] ?? "");
		expect(links.length).toBeGreaterThan(20);
		for (const link of links) expect(ids).toContain(link.slice(1));
		for (const picture of named(page, "svg").filter(({ attributes }) => attributes["role"] === "img")) {
			expect(picture.children[0]?.name).toBe("title");
		}
	});

	test("holds every place once in the layout and once with its reason", () => {
		expect(plan.places).toHaveLength(5);
		const cells = classed(byId(page, "layout"), "cell").filter(({ attributes }) => attributes["id"] !== undefined);
		expect(cells.map(({ attributes }) => attributes["id"])).toEqual(plan.places.map(({ bank, place }) => `cell-${bank}-${place}`));
		const reasons = named(byId(page, "reasons"), "tr").flatMap(({ attributes }) => attributes["id"] ?? []);
		expect(reasons).toEqual(plan.places.map(({ bank, place }) => `why-${bank}-${place}`));
		for (const { bank, place, tag, what } of plan.places) {
			expect(wordsOf(byId(page, `cell-${bank}-${place}`))).toContain(tag);
			expect(wordsOf(byId(page, `why-${bank}-${place}`))).toContain(what);
		}
		const empties = classed(byId(page, "layout"), "empty").map(wordsOf);
		expect(empties.map((text) => text.trim().replace(/ +/g, " "))).toEqual(["empty 3–4", "empty 7", "empty 2"]);
	});

	test("tells guards, what sends, what is pinned, new or mended", () => {
		const guards = classed(page, "guard").map(({ attributes }) => attributes["id"]);
		expect(guards).toEqual(["cell-voice-1"]);
		const cell = (id: string) => wordsOf(byId(page, id)).replace(/\s+/g, " ");
		expect(cell("cell-voice-1")).toMatch(/guard: distress.*2182\.0 USB.*sends here too.*pinned/);
		expect(cell("cell-voice-2")).toMatch(/8779\.0 USB.*sends 8255\.0/);
		expect(cell("cell-voice-5")).toMatch(/receive only.*mended/);
		expect(cell("cell-data-1")).toMatch(/receive only.*new here/);
		expect(cell("cell-voice-6")).not.toMatch(/pinned|new here|mended/);
	});

	test("shows hours served by want and leg, and over the whole voyage by its days", () => {
		const rows = classed(byId(page, "served"), "part");
		expect(rows).toHaveLength(plan.served.length);
		const figures = classed(byId(page, "served"), "whole").map((row) => classed(row, "figure").map(({ text }) => text));
		expect(figures).toEqual([
			["5.0", "6.5", ""],
			["0.0", "3.0", ""],
		]);
	});

	test("every run of the use plan fills its hours, and every day is whole", () => {
		const use = byId(page, "use");
		expect(classed(use, "first")).toHaveLength(plan.use.length);
		expect(classed(use, "second")).toHaveLength(plan.use.filter(({ second }) => second !== null).length);
		expect(classed(use, "first").map((first) => wordsOf(first).trim().split(/\s+/)[0])).toEqual(["v2", "v2", "d1"]);
		const rows = named(use, "tbody").flatMap(({ children }) => children);
		expect(rows).toHaveLength(plan.legs.length * (2 + 1)); // two wants and the night
		for (const row of rows) {
			const hours = named(row, "td").reduce((sum, { attributes }) => sum + Number(attributes["colspan"]), 0);
			expect(hours).toBe(24);
		}
		expect(classed(use, "g0").length - 1).toBe(1); // one of each in the legend
		expect(classed(use, "g1").length - 1).toBe(1);
		expect(classed(use, "g2").length - 1).toBe(1);
	});

	test("tells the watch and when it is off, broadcasts that overlap as one", () => {
		const text = wordsOf(byId(page, "watch"));
		expect(text).toMatch(/2187\.5.*8414\.5.*one more frequency is asked for/);
		expect(text).toMatch(/2\.2.*0500-0710/);
		expect(text).toContain("never");
	});

	test("left out, swayed, removed, findings and conflicts are all there", () => {
		expect(
			named(byId(page, "left-out"), "li")
				.map(wordsOf)
				.map((text) => text.trim()),
		).toEqual(["ship to ship, 8297 kHz", "unheard/of", "channel 1221"]);
		expect(wordsOf(byId(page, "levels"))).toMatch(/6 dB weaker.*6 dB stronger.*Would be left out.*Far Cape, aviation weather/s);
		expect(named(byId(page, "removed"), "tr")).toHaveLength(plan.removed.length + 1);
		const minded = wordsOf(byId(page, "minded"));
		expect(minded).toContain("two pins want voice 1");
		expect(minded).toContain("the wanted net is at noon ashore");
		expect(minded).toMatch(/voice 2: .*stop.*the two sides are exchanged.*exchange them/);
		expect(minded).toContain("2 places rest on figures too old");
		expect(named(byId(page, "findings"), "li")).toHaveLength(2);
		expect(wordsOf(byId(page, "findings"))).toContain("2: voice 5; data 1");
		const header = wordsOf(named(page, "header")[0]!);
		expect(header).toContain("at most 0.23 % from the best possible");
		expect(header).toContain("the order of the places is ");
	});

	test("each block says how it scans, or why not", () => {
		const heads = named(byId(page, "layout"), "h4").map((head) => wordsOf(head).replace(/\s+/g, " ").trim());
		expect(heads).toEqual([
			"Places 1 to 4 : 2 filled; for scanning, each place every 1.0 seconds; it catches 40 % of calls of 2 seconds, 93 % of 5 seconds, all of 10 seconds or more",
			"Places 5 to 7 : 2 filled; of several kinds: not for scanning",
			"Places 1 to 2 : 1 filled; charts and text, which need the set to themselves: not scanned",
			"Places 3 to 4 : empty",
		]);
	});

	test("an empty plan is a whole page too", () => {
		const empty = {
			places: [],
			served: [],
			use: [],
			legs: [],
			levels: [],
			leftOut: [],
			removed: [],
			conflicts: [],
			doubts: [],
			findings: [],
		} as const;
		const watch = { tableHz: null, problems: [], off: null };
		const bare = pageOf(planHtml({ ...SAMPLE_PAGE, samples: [], plan: { ...plan, ...empty, watch } }));
		expect(wordsOf(bare)).toContain("Nothing in the layout has to be stopped for or fixed.");
		expect(everyElement(bare).some(({ attributes }) => attributes["id"] === "levels")).toBe(false);
		expect(() => planHtml({ ...SAMPLE_PAGE, grades: [] })).toThrow(RangeError);
	});
});

/** The page with other words wherever a person, a file or another part gives some. */
function withWords(words: (harmless: string) => string): PlanPage {
	const { plan, vessel, profile } = SAMPLE_PAGE;
	const inside = <T>(data: T, keys: ReadonlySet<string>): T =>
		JSON.parse(JSON.stringify(data), (key, value) => (keys.has(key) && typeof value === "string" ? words(value) : value)) as T;
	const keys = new Set(["tag", "what", "why", "message", "remedy", "source", "basis"]);
	return {
		...SAMPLE_PAGE,
		jobTitle: words(SAMPLE_PAGE.jobTitle),
		vessel: { name: words(vessel.name), callSign: words("QQ1ABC"), mmsi: words("299000000") },
		profile: { ...profile, name: words(profile.name) },
		directory: { ...SAMPLE_PAGE.directory, edition: words("2026") },
		plan: {
			...inside(plan, keys),
			conflicts: plan.conflicts.map(words),
			doubts: plan.doubts.map(words),
			watch: { ...plan.watch, problems: plan.watch.problems.map(words) },
			legs: plan.legs.map((leg) => ({ ...leg, name: words(leg.name) })),
			served: plan.served.map((row) => ({ ...row, leg: words(row.leg) })),
			use: plan.use.map((run) => ({ ...run, leg: words(run.leg) })),
			leftOut: plan.leftOut.map((one) => ({ why: words(one.why), listing: words(one.listing) })),
			places: inside(plan.places, new Set([...keys, "bestLeg"])).map((place) => ({ ...place, notes: place.notes.map(words) })),
		},
	};
}

test("whatever a person typed is shown, never obeyed", () => {
	const evil = [
		"</style><script>alert(1)</script>",
		'"></bdi><img src=x onerror=1>',
		"'><a href='javascript:1'>",
		"&lt;b&gt;&amp;&#x41;",
		"]]>",
		"<!--",
		"-->",
		"\u202eevil\u2066",
		"\ud800",
		"\u0000\u0007",
		"}</style>",
		"\\",
		'"; content: "x',
		"\u05d0\u05d1",
		"x".repeat(300),
	];
	const shape = (root: XmlElement) => everyElement(root).map(({ name, attributes }) => [name, Object.keys(attributes)]);
	const harmless = shape(pageOf(planHtml(withWords((text) => `~${text}`))));
	expect(harmless.length).toBeGreaterThan(400);
	let compared = 0;
	const text = fc.array(fc.oneof(fc.constantFrom(...evil), fc.string({ unit: "binary", maxLength: 20 })), { minLength: 1, maxLength: 4 });
	fc.assert(
		fc.property(text, (parts) => {
			const typed = parts.join(" ");
			// the words at the end keep one reason, leg or tag apart from another
			const page = pageOf(planHtml(withWords((text) => `${typed}~${text}`)));
			expect(shape(page)).toEqual(harmless);
			expect(wordsOf(named(page, "h1")[0]!)).toContain(printable(typed).replace(/[\ufffe\uffff]/g, "\ufffd"));
			compared++;
		}),
		{ seed: 20_261_124, numRuns: 25 },
	);
	expect(compared).toBe(25);
});

/** Relative luminance, WCAG 2.2. */
function luminance(colour: string): number {
	const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
		const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
		return part <= 0.040_45 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
	});
	return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

test("words stand out from what is behind them: WCAG 2.2, 4.5 to 1", () => {
	let compared = 0;
	for (const palette of Object.values(PAGE_PALETTES)) {
		const { paper, card, text, quiet, mark } = palette;
		const tints = TINTS.map((_, grade) => tintOf(grade, palette));
		const pairs = [
			...[paper, card, ...tints].map((ground) => [text, ground]),
			...[paper, card].map((ground) => [quiet, ground]),
			[mark, paper],
		] as const;
		for (const [words, ground] of pairs) {
			const [light = 0, dark = 0] = [luminance(words!), luminance(ground!)].sort((a, b) => b - a);
			expect((light + 0.05) / (dark + 0.05), `${words} on ${ground}`).toBeGreaterThanOrEqual(4.5);
			compared++;
		}
	}
	expect(compared).toBe(3 * 8);
});

test("night is when the sun is down on most days", () => {
	const at = (lonDeg: number, days: number) => ({ atMs: 0, date: isoDate("2027-03-20"), position: position(0, lonDeg), stage: "", days });
	expect(hourRunsOf(usualNight([at(0, 1)]))).toEqual([
		{ from: 0, to: 6 },
		{ from: 18, to: 24 },
	]);
	expect(hourRunsOf(usualNight([at(0, 1), at(90, 3)]))).toEqual([{ from: 12, to: 24 }]);
});

test("bank letters are as short as they can be", () => {
	const { profile } = SAMPLE_PAGE;
	const [bank] = profile.banks;
	if (bank === undefined) expect.fail("no bank");
	const letters = (...ids: readonly string[]) => [...bankLetters({ ...profile, banks: ids.map((id) => ({ ...bank, id })) }).values()];
	expect(letters("memory")).toEqual([""]);
	expect(letters("voice", "data")).toEqual(["v", "d"]);
	expect(letters("day", "data", "d")).toEqual(["day", "dat", "d"]);
});

test("places by bank, runs as such", () => {
	const spots = [3, 9, 5, 6, 8, 7].map((place) => ({ bank: "voice", place }));
	expect(placesText([...spots, { bank: "data", place: 1 }, { bank: null, place: null }])).toBe("voice 3, 5–9; data 1; whole list");
});

test("a listing has a name for people", () => {
	expect(listingName("nobody/knows", SAMPLE_PAGE.directory)).toBe("nobody/knows");
	expect(listingName("ap17/401", SAMPLE_PAGE.directory)).toBe("channel 401");
});

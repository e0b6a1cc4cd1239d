import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { directory } from "@skipwright/directory";
import { directoryFor, readJob, references, resolveJob } from "@skipwright/job";
import { planHtml } from "@skipwright/papers";
import { handbookHearing, plan, planSamples } from "@skipwright/planner";
import { checkList } from "@skipwright/set";
import { GRADES_OF_CHANCE, hoursInWords } from "@skipwright/sky";
import { isoDate } from "@skipwright/units";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type BrowserPage, browserPage, findChromium } from "./browserPage.sample.ts";

const EXAMPLES = join(import.meta.dirname, "..", "..", "..", "examples");
const read = (name: string) => readFileSync(join(EXAMPLES, name), "utf8");
const JOB = readJob("job", read("south-atlantic.job.json"));
const RESOLVED = resolveJob(JOB, new Map(references(JOB).map((name) => [name, read(name)])));
const LONGEST_MS = 60_000;

const planned = await plan(RESOLVED, directory(), { on: isoDate("2026-11-24"), checkList, hearing: handbookHearing() });
const PAGE = {
	plan: planned,
	jobTitle: JOB.title,
	vessel: JOB.vessel,
	profile: RESOLVED.profile,
	directory: directoryFor(RESOLVED, directory()),
	samples: planSamples(RESOLVED.voyage),
	words: hoursInWords,
	grades: [...GRADES_OF_CHANCE, { word: "none", from: 0 }],
};
/** Names without a space that are wider than any screen. */
const LONG = "Wanderer".repeat(60);
const STRETCHED = {
	...PAGE,
	jobTitle: LONG,
	vessel: { name: LONG, callSign: LONG, mmsi: LONG },
	plan: {
		...planned,
		conflicts: [LONG],
		places: planned.places.map((place) => ({ ...place, tag: LONG.slice(0, 64), what: LONG, notes: [LONG] })),
		leftOut: planned.leftOut.map((one) => ({ ...one, listing: LONG, why: LONG })),
		findings: planned.findings.map((finding) => ({ ...finding, message: LONG, remedy: LONG })),
	},
};

const chromium = findChromium();
const path = "path" in chromium ? chromium.path : null;
const name = "path" in chromium ? "in Chromium" : `in Chromium (${chromium.why})`;

describe.skipIf(path === null)(`the example's page ${name}`, () => {
	const folder = mkdtempSync(join(tmpdir(), "plan-page-"));
	let browser: BrowserPage;
	beforeAll(async () => {
		browser = await browserPage(path ?? "");
	}, LONGEST_MS);
	afterAll(async () => {
		await browser?.close();
		rmSync(folder, { recursive: true, force: true });
	});

	async function open(html: string): Promise<string> {
		const file = join(folder, "plan.html");
		writeFileSync(file, html);
		const url = pathToFileURL(file).href;
		await browser.open(url);
		return url;
	}
	const widthAt = async (width: number) => {
		await browser.send("Emulation.setDeviceMetricsOverride", { width, height: 800, deviceScaleFactor: 1, mobile: width < 500 });
		return Number(await browser.evaluate("document.documentElement.scrollWidth"));
	};
	const unfold = () => browser.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })");

	test.each([
		["as it is", PAGE],
		["with endless words", STRETCHED],
	])("never scrolls sideways, %s", { timeout: LONGEST_MS }, async (_, page) => {
		await open(planHtml(page));
		for (const width of [360, 768, 1_280]) {
			expect(await widthAt(width)).toBeLessThanOrEqual(width);
		}
		await unfold();
		for (const width of [360, 768, 1_280]) {
			expect(await widthAt(width)).toBeLessThanOrEqual(width);
		}
	});

	test("asks for nothing but itself, and nothing goes wrong", { timeout: LONGEST_MS }, async () => {
		const asked = browser.asked.length;
		const url = await open(planHtml(PAGE));
		expect(browser.asked.slice(asked)).toEqual([url]);
		expect(browser.said).toEqual([]);
		// the policy that the page carries is in force: a picture put in afterwards is refused
		await browser.evaluate(
			`document.body.append(Object.assign(document.createElement("img"), { src: "data:image/gif;base64,R0lGODlhAQABAAAAACw=" }))`,
		);
		await browser.evaluate("new Promise((resolve) => setTimeout(resolve, 300))");
		expect(browser.said.some((text) => text.includes("Content Security Policy"))).toBe(true);
	});

	test("reads the same as HTML as it was written", { timeout: LONGEST_MS }, async () => {
		const html = planHtml(PAGE);
		await open(html);
		const count = (selector: string) => browser.evaluate(`document.querySelectorAll(${JSON.stringify(selector)}).length`);
		expect(await count("#layout [id^='cell-']")).toBe(planned.places.length);
		expect(await count("#reasons tr[id]")).toBe(planned.places.length);
		expect(await count("#served .part")).toBe(planned.served.length);
		expect(await count("#use .first")).toBe(planned.use.length);
		expect(await count("#left-out li")).toBe(planned.leftOut.length);
		expect(await count("*")).toBe(html.match(/<[a-z]/g)?.length);
		expect(planned.places.length).toBeGreaterThan(150);
	});

	test("turns red on near black, and back", { timeout: LONGEST_MS }, async () => {
		await open(planHtml(PAGE));
		const ground = () => browser.evaluate("getComputedStyle(document.body).backgroundColor");
		const ink = async () => {
			const fill = await browser.evaluate("getComputedStyle(document.querySelector('.ribbon .reach-ink path[fill^=var]')).fill");
			return String(fill).match(/\d+/g)?.map(Number) ?? [];
		};
		const [red = 255, , blue = 0] = await ink();
		expect(await ground()).toBe("rgb(255, 255, 255)");
		expect(red).toBeLessThan(blue);
		await browser.evaluate("document.getElementById('lamp').click()");
		const [lampRed = 0, , lampBlue = 255] = await ink();
		expect(await ground()).toBe("rgb(12, 0, 0)");
		expect(lampRed).toBeGreaterThan(2 * lampBlue);
		await browser.evaluate("document.getElementById('lamp').click()");
		expect(await ground()).toBe("rgb(255, 255, 255)");
	});

	test("prints on a sane number of A4 pages, what is folded among it", { timeout: LONGEST_MS }, async () => {
		await open(planHtml(PAGE));
		const print = async () => {
			const { data } = await browser.send("Page.printToPDF", { preferCSSPageSize: true });
			return Buffer.from(String(data), "base64").toString("latin1");
		};
		const pagesOf = (pdf: string) => pdf.match(/\/Type \/Page\b/g)?.length ?? 0;
		const folded = await print();
		const box = /\/MediaBox \[([^\]]*)\]/
			.exec(folded)?.[1]
			?.trim()
			.split(/\s+/)
			.map((figure) => Math.round(Number(figure)));
		expect(box).toEqual([0, 0, 595, 842]);
		expect(pagesOf(folded)).toBeGreaterThanOrEqual(12);
		expect(pagesOf(folded)).toBeLessThanOrEqual(40);
		await unfold();
		expect(pagesOf(await print())).toBe(pagesOf(folded));
		// a picture for each of a few hundred hatched cells once made it sixty megabytes
		expect(folded.length).toBeLessThan(4_000_000);
	});
});

import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { NodeCompiler } from "@myriaddreamin/typst-ts-node-compiler";
import { CAUTIONS, loadingSheetTypst } from "@skipwright/papers";
import { profileNamed } from "@skipwright/set";
import { isoDate } from "@skipwright/units";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { SAMPLE_PAPER } from "./pdf.sample.ts";
import { compilePdf, PdfError } from "./pdf.ts";
import { pdfPages } from "./pdfPages.ts";

const DAY = isoDate("2026-11-24");
const OURS = ["SourceCodePro-Bold", "SourceCodePro-Regular", "SourceSans3-Bold", "SourceSans3-Regular"];

/** Points. The page, its margin at the sides and the height of its foot as the template sets them (12 and 16 mm). */
const A4_PT = { width: 595.2756, height: 841.8898 };
const MARGIN_PT = 34;
const FOOT_PT = 45.3;

let folder = "";
beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), "pdf-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function sha256(bytes: Uint8Array): string {
	return createHash("sha256").update(bytes).digest("hex");
}

describe("compilePdf", () => {
	const source = loadingSheetTypst(SAMPLE_PAPER);

	test("the same bytes twice, and other bytes for another day or text", () => {
		const once = sha256(compilePdf(source, { createdAt: DAY }));
		expect(sha256(compilePdf(source, { createdAt: DAY }))).toBe(once);
		expect(sha256(compilePdf(source, { createdAt: isoDate("2026-11-25") }))).not.toBe(once);
		expect(sha256(compilePdf(`${source}.`, { createdAt: DAY }))).not.toBe(once);
	});

	test("the same bytes in other processes, time zones, languages and folders, and beside a system font of the same name", () => {
		const here = sha256(compilePdf(source, { createdAt: DAY }));
		writeFileSync(join(folder, "sheet.typ"), source);
		const home = join(folder, "home");
		mkdirSync(join(home, ".local/share/fonts"), { recursive: true });
		writeFileSync(join(home, ".local/share/fonts/decoy.ttf"), decoy());
		const pdf = new URL("./pdf.ts", import.meta.url).href;
		const script = `
			import { readFileSync } from "node:fs";
			import { createHash } from "node:crypto";
			import { compilePdf } from ${JSON.stringify(pdf)};
			const bytes = compilePdf(readFileSync(process.argv[1], "utf8"), { createdAt: "2026-11-24" });
			console.log(createHash("sha256").update(bytes).digest("hex"));`;
		const elsewhere = [
			{ TZ: "Pacific/Kiritimati", LANG: "de_DE.UTF-8" },
			{ TZ: "America/Adak", LANG: "C", HOME: home, XDG_DATA_HOME: join(home, ".local/share") },
		].map((env) =>
			execFileSync(process.execPath, ["--input-type=module", "-e", script, join(folder, "sheet.typ")], {
				cwd: folder,
				env: { ...process.env, ...env },
				encoding: "utf8",
			}).trim(),
		);
		expect(elsewhere).toEqual([here, here]);
	});

	test.runIf(process.platform === "linux")("the font of the same name would be taken if ours were not there", () => {
		const home = join(folder, "home");
		const script = `
			const { NodeCompiler } = require("@myriaddreamin/typst-ts-node-compiler");
			const pdf = NodeCompiler.create({}).pdf({ mainFileContent: '#set text(font: "Source Sans 3", fallback: false)\\nwas' }, {});
			console.log(pdf.toString("latin1").match(/BaseFont \\/\\w{6}\\+(\\S+)/)?.[1] ?? "none");`;
		const taken = execFileSync(process.execPath, ["-e", script], {
			cwd: new URL(".", import.meta.url),
			env: { ...process.env, HOME: home, XDG_DATA_HOME: join(home, ".local/share") },
			encoding: "utf8",
		});
		expect(taken.trim()).toBe("SourceSans3-Bold");
	});

	test("a fault in the source is told in Typst's words", () => {
		const fault = (text: string) => () => compilePdf(text, { createdAt: DAY });
		expect(fault("#let a = (")).toThrow(PdfError);
		expect(fault("#let a = (")).toThrow("unclosed delimiter");
		expect(fault('#panic("told so")')).toThrow("told so");
		expect(compilePdf("good again", { createdAt: DAY }).length).toBeGreaterThan(1_000);
	});

	test("a document cannot read files", () => {
		writeFileSync(join(folder, "secret.txt"), "secret");
		expect(() => compilePdf(`#read(${JSON.stringify(join(folder, "secret.txt"))})`, { createdAt: DAY })).toThrow("file not found");
	});

	test("memory stays flat over many different documents", () => {
		// measured: 0.6 MB a document, 32 MB where the cache is not emptied
		const residentMb = () => process.memoryUsage().rss / 1e6;
		const page = (i: number) =>
			compilePdf(loadingSheetTypst({ ...SAMPLE_PAPER, vessel: { ...SAMPLE_PAPER.vessel, name: `Tern ${i}` } }), { createdAt: DAY });
		for (let i = 0; i < 5; i++) page(i);
		const before = residentMb();
		for (let i = 5; i < 25; i++) page(i);
		expect((residentMb() - before) / 20).toBeLessThan(4);
	});
});

describe("the printed loading sheet", () => {
	const { pages, runs, fonts } = pdfPages(compilePdf(loadingSheetTypst(SAMPLE_PAPER), { createdAt: DAY }));
	const whole = pages.join(" ");

	test("is drawn in our own faces alone", () => {
		expect(fonts).toEqual(OURS);
	});

	test("has vessel, day and page number on every page", () => {
		expect(pages.length).toBeGreaterThanOrEqual(8);
		expect(pages.length).toBeLessThanOrEqual(16);
		pages.forEach((text, i) => {
			expect(text).toContain("Wandering Albatross of the Southern Ocean");
			expect(text).toContain("2026-11-24");
			expect(text).toContain(`Page ${i + 1} of ${pages.length}`);
		});
	});

	test("holds every step with its tag and dials, and no step a dial that it must not have", () => {
		const { steps } = SAMPLE_PAPER.sheet;
		expect(steps).toHaveLength(92);
		let found = 0;
		for (const { order, place, tag, receive, transmit } of steps) {
			if (receive === null) continue;
			const dials = new RegExp(
				`\\b${order} ${place} ${tag.replaceAll("/", "\\/")} ${(receive / 1000).toFixed(1)} .*?${transmit === null ? "receive only" : (transmit / 1000).toFixed(1)} `,
			);
			expect(whole).toMatch(dials);
			found++;
		}
		expect(found).toBe(90);
		expect(whole.match(/CLEAR this place/g)).toHaveLength(2);
		expect(whole.match(/receive only/g)).toHaveLength(
			steps.filter(({ action, transmit }) => action === "write" && transmit === null).length + 3,
		);
	});

	test("repeats the heads of columns and of the block on every page of steps", () => {
		const withSteps = pages.filter((text) => /\d [A-Z].*kHz both ways|was empty/.test(text));
		expect(withSteps.length).toBeGreaterThanOrEqual(5);
		for (const text of withSteps) {
			expect(text).toContain("keyed step place");
			expect(text).toMatch(/Bank (voice|data), block \d+, places \d+ to \d+/);
		}
	});

	test("a block's heading is followed by two of its steps on the same page, where it has two", () => {
		const blocks = [...whole.matchAll(/Bank (?:voice|data), block \d+, places (\d+) to \d+ (\d+) steps? (.*?)(?=Bank |Page )/g)];
		expect(blocks.length).toBeGreaterThanOrEqual(8);
		for (const [, , count, text = ""] of blocks) {
			const steps = text.match(/was empty|was \d|CLEAR/g)?.length ?? 0;
			expect(steps).toBeGreaterThanOrEqual(Math.min(2, Number(count)));
		}
	});

	test("says every caution", () => {
		const lines = CAUTIONS.flatMap((group) => group.lines);
		expect(lines.length).toBeGreaterThan(10);
		for (const line of lines) expect(pages[0]).toContain(line);
		expect(whole).toContain("Tuning up radiates.");
	});

	test("shows the stop before anything is keyed, and again at its step", () => {
		expect(pages[0]).toContain("STOP: settle this before keying 1. voice 21: Receive 8195 is the ship side");
		expect(whole).toContain("STOP, see 1 Saint Helena");
	});

	test.each(["a4", "us-letter"] as const)("fits %s", (paper) => {
		const pdf = compilePdf(loadingSheetTypst({ ...SAMPLE_PAPER, paper }), { createdAt: DAY });
		const box = /\/MediaBox \[([^\]]*)\]/.exec(Buffer.from(pdf).toString("latin1"))?.[1]?.split(" ").map(Number);
		expect(box?.map(Math.round)).toEqual(paper === "a4" ? [0, 0, 595, 842] : [0, 0, 612, 792]);
		const drawn = pdfPages(pdf).pages;
		expect(drawn.filter((text) => text.includes("read back by"))).toHaveLength(1);
		expect(drawn.at(-1)).toMatch(/Where the figures come from|sources age|never counts as fresh/);
	});

	test("nothing runs off the page or into its foot, however long the words are", () => {
		const word = "W".repeat(64);
		const long = `Unbroken${"x".repeat(400)}`;
		const { sheet, vessel, findings, profile } = SAMPLE_PAPER;
		const pathological = {
			...SAMPLE_PAPER,
			vessel: { ...vessel, name: long, callSign: word, mmsi: word },
			jobTitle: long,
			directoryEdition: long,
			profile: { ...profile, name: long },
			sheet: {
				...sheet,
				minutesRestOn: long,
				settings: sheet.settings.map(() => ({ name: word, asFound: word, wanted: word, note: long })),
				tuneUp: sheet.tuneUp.map((place) => ({ ...place, note: long })),
				steps: sheet.steps.map((step, i) => ({ ...step, tag: word, before: word, what: i % 20 === 0 ? long.repeat(20) : long })),
			},
			findings: findings.map((finding) => ({ ...finding, message: long.repeat(9), remedy: long, source: long })),
		};
		const stretched = pdfPages(compilePdf(loadingSheetTypst(pathological), { createdAt: DAY }));
		const drawn = stretched.runs
			.flat()
			.map(({ text }) => text)
			.join("")
			.replaceAll("\u200b", "");
		expect(drawn.match(/W/g)?.length).toBeGreaterThan(64 * 2 * sheet.steps.length);
		let compared = 0;
		for (const page of [...runs, ...stretched.runs]) {
			const foot = page.filter(({ y }) => y < FOOT_PT).map(({ text }) => text.trim());
			expect(foot.filter((text) => text !== "")).toEqual([
				expect.stringContaining("Loading sheet"),
				"twin-180",
				expect.stringContaining("Page "),
			]);
			for (const { text, x, y } of page) {
				// more of these letters than the widest line of the smallest type holds
				expect(text.replaceAll("\u200b", "")).not.toMatch(/W{60}|x{150}/);
				expect(x).toBeGreaterThanOrEqual(MARGIN_PT);
				expect(x).toBeLessThan(A4_PT.width - MARGIN_PT);
				expect(y).toBeGreaterThan(15);
				expect(y).toBeLessThan(A4_PT.height - 15);
				compared++;
			}
		}
		expect(compared).toBeGreaterThan(3_000);
	});

	test("a receiver's sheet has no MMSI box and nothing to tune up", () => {
		const profile = profileNamed("receiver-100") ?? expect.fail("no receiver-100");
		const sheet = { ...SAMPLE_PAPER.sheet, steps: [], settings: [], tuneUp: [] };
		const text = pdfPages(compilePdf(loadingSheetTypst({ ...SAMPLE_PAPER, profile, sheet, findings: [] }), { createdAt: DAY })).pages.join(
			" ",
		);
		expect(text).toContain("Nothing to key");
		expect(text).toContain("This set has no transmitter");
		expect(text).not.toContain("first person reads");
	});

	test("a receiver's sheet has one column of dials, and every step in it", () => {
		const profile = profileNamed("receiver-100") ?? expect.fail("no receiver-100");
		const steps = SAMPLE_PAPER.sheet.steps.map((step) => ({ ...step, transmit: null, transmitTurns: null, transmitKeys: null }));
		const paper = { ...SAMPLE_PAPER, profile, sheet: { ...SAMPLE_PAPER.sheet, steps, settings: [], tuneUp: [] } };
		const text = pdfPages(compilePdf(loadingSheetTypst(paper), { createdAt: DAY })).pages.join(" ");
		expect(text).toContain("receive dial mode read back");
		expect(text).not.toContain("transmit dial");
		const keyed = steps.filter(({ action }) => action === "write");
		expect(keyed).toHaveLength(90);
		for (const { order, place, tag } of keyed) expect(text).toContain(` ${order} ${place} ${tag} `);
		expect(text.match(/CLEAR this place/g)).toHaveLength(2);
	});

	test("old figures are told in one paragraph, apart from the others", () => {
		expect(whole).toContain("Findings that still stand: 1 stop, 1 fix, 0 mind; old figures below");
		expect(whole).toContain("Old figures, to mind. 1 place rests on a figure");
		expect(whole).not.toContain("The listing behind WWV 10");
	});

	test("the tuning-up table begins below 4 MHz, where no carrier is given", () => {
		expect(whole).toContain("2 MHz below 4 MHz: Appendix 17 gives no simplex working carrier;");
	});

	test("whatever a person typed is printed, never obeyed", () => {
		const evil = [
			'#panic("no")',
			"*bold*",
			"$x$",
			"`raw`",
			"]",
			'"',
			'") #panic("no")',
			"\\",
			"\\u{41}",
			"#[",
			"//",
			"/*",
			"<label>",
			"@ref",
			"= head",
			"~",
			"--",
		];
		const text = fc
			.array(fc.oneof(fc.constantFrom(...evil), fc.string({ unit: "binary", maxLength: 30 })), { maxLength: 6 })
			.map((parts) => parts.join(" "));
		const [step] = SAMPLE_PAPER.sheet.steps;
		if (step === undefined) expect.fail("no step");
		let compiled = 0;
		fc.assert(
			fc.property(text, text, text, text, (name, tag, what, note) => {
				const source = loadingSheetTypst({
					...SAMPLE_PAPER,
					vessel: { name, callSign: note, mmsi: tag },
					jobTitle: what,
					directoryEdition: note,
					sheet: {
						...SAMPLE_PAPER.sheet,
						minutesRestOn: what,
						settings: [{ name, asFound: tag, wanted: what, note }],
						tuneUp: SAMPLE_PAPER.sheet.tuneUp.map((place) => ({ ...place, note })),
						steps: [{ ...step, tag, what, before: note, bank: name }],
					},
					findings: SAMPLE_PAPER.findings.map((finding) => ({ ...finding, message: what, remedy: note, source: tag, bank: name })),
				});
				compilePdf(source, { createdAt: DAY });
				compiled++;
			}),
			{ seed: 20_261_124, numRuns: 60 },
		);
		expect(compiled).toBe(60);
		const [first] = pdfPages(compilePdf(loadingSheetTypst({ ...SAMPLE_PAPER, jobTitle: evil.join(" ") }), { createdAt: DAY })).pages;
		expect(first).toContain(evil.join(" "));
	});

	test("Typst reads back exactly the text that was put in", () => {
		const texts = ['"', "\\", '\\"', "#{}", "a\\u{41}", "Ω ж é", "😀", "x  y", " lead", "trail "];
		const source = loadingSheetTypst({ ...SAMPLE_PAPER, jobTitle: texts.join("|") });
		const compiler = NodeCompiler.create({});
		const probe = compiler.compile({ mainFileContent: `${source.slice(0, source.indexOf("\n#let mono"))}\n#metadata(sheet.job) <probe>` });
		if (probe.result === null) expect.fail("does not compile");
		expect(compiler.query(probe.result, { selector: "<probe>" })[0].value).toBe(texts.join("|"));
	});
});

/** Our bold face passed off as the regular one: what a system font of the same name but another shape would be. */
function decoy(): Buffer {
	const fonts = createRequire(import.meta.url).resolve("@skipwright/papers/fonts/SourceSans3-Bold.ttf");
	const font = readFileSync(fonts);
	for (let entry = 12; entry < 12 + 16 * font.readUInt16BE(4); entry += 16) {
		const table = font.toString("latin1", entry, entry + 4);
		const offset = font.readUInt32BE(entry + 8);
		if (table === "head") font.writeUInt16BE(0, offset + 44); // macStyle: not bold
		if (table !== "OS/2") continue;
		font.writeUInt16BE(400, offset + 4); // usWeightClass
		font.writeUInt16BE(0x40, offset + 62); // fsSelection: regular
	}
	return font;
}

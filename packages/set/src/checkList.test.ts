import { directory, type Listing, publishedOf, readOwnListingsCsv } from "@skipwright/directory";
import { dialFor } from "@skipwright/rules";
import { type Hz, hz, isoDate } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CheckOptions, checkList } from "./checkList.ts";
import { readList } from "./list.ts";
import { profileNamed } from "./shippedProfiles.ts";
import type { Finding, FindingCode, Row } from "./types.ts";

const twin180 = profileNamed("twin-180")!;
const receiver100 = profileNamed("receiver-100")!;
const OPTIONS: CheckOptions = { profile: twin180, directory: directory(), on: isoDate("2026-11-24"), region: null, amateurLicence: false };

/** A list from "bank place tag receive transmit mode" lines; transmit "-" is receive only. */
function list(...lines: readonly string[]): readonly Row[] {
	const csv = lines.map((line) =>
		line
			.split(" ")
			.map((cell) => (cell === "-" ? "" : cell.replaceAll("_", " ")))
			.join(","),
	);
	return readList("test.csv", `bank,place,tag,receive_khz,transmit_khz,mode\n${csv.join("\n")}\n`, twin180);
}

const GUARDS = [2182, 4125, 6215, 8291, 12290, 16420].map((khz, i) => `voice ${171 + i} DIST${khz} ${khz} ${khz} USB`);

/** Codes of one line, findings about the whole list and stale listings aside. */
function codes(line: string, options: Partial<CheckOptions> = {}): readonly FindingCode[] {
	return findings(line, options)
		.map(({ code }) => code)
		.filter((code) => code !== "listing-stale");
}

function findings(line: string, options: Partial<CheckOptions> = {}): readonly Finding[] {
	return checkList(list(line), { ...OPTIONS, ...options }).filter(({ bank }) => bank !== null);
}

describe("what the dial stands for", () => {
	test.each([
		["voice 1 CH424 4426 4134 USB", []],
		["voice 1 CH424 4427.4 4135.4 USB", ["assigned-as-carrier"]],
		["voice 1 CH424 4426 4135.4 USB", ["assigned-as-carrier"]],
		["voice 1 CH424 4134 4426 USB", ["pair-swapped"]],
		["voice 1 CH424 4426 4137 USB", ["pair-broken"]],
		["voice 1 CH424 4134 4134 USB", ["pair-broken"]],
		["voice 1 KSM4 4146 4146 USB", []],
		["voice 1 SHIP4B 4149 4149 USB", []],
		["voice 1 SHIP6C 6230 6230 USB", []],
		["voice 1 CH428 4351 4060 USB", []],
		["voice 1 CH836 8713 8113 USB", []],
		["voice 1 X8 8101 8101 USB", []],
	] as const)("RR Appendix 17 pairs: %s gives %j", (line, expected) => {
		expect(codes(line)).toEqual(expected);
	});

	test("US voice weather on a coast side receive only is right; 4426 both ways is a broken pair, 12788 both ways a broadcast slip (facts: stations, trap 4)", () => {
		expect(codes("voice 1 NMC_4426 4426 - USB")).toEqual([]);
		expect(codes("voice 1 NMC_4426 4426 4426 USB")).toEqual(["pair-broken"]);
		expect(codes("voice 1 NMG12788 12788 - USB")).toEqual([]);
		expect(codes("voice 1 NMG12788 12788 12788 USB")).toEqual(["transmit-on-broadcast"]);
	});

	test.each([
		["voice 1 NMF_FAX 6338.6 - USB", []],
		["voice 1 NMF_FAX 6340.5 - USB", ["offset-missing"]],
		["voice 1 NMF_FAX 6338.8 - USB", ["offset-missing"]],
		["voice 1 NMF_FAX 6342.4 - USB", ["offset-missing"]],
		["voice 1 NMF_FAX 6336.7 - USB", ["offset-twice"]],
		["data 1 NMF_FAX 6338.6 - FSK", ["offset-twice"]],
		["data 1 NTX518 518 - FSK", []],
		["data 1 NTX518 516.3 - USB", []],
		["data 1 NTX518 516.3 - FSK", ["offset-twice"]],
		["data 1 NTX518 518 - USB", ["offset-missing"]],
		["data 1 NTX518 516.1 - USB", ["offset-missing"]],
		["data 1 MSI8 8416.5 - FSK", []],
		["data 1 MSI8 8414.8 - USB", []],
	] as const)("WMO 1.9 kHz and ITU-R 1.7 kHz offsets: %s gives %j", (line, expected) => {
		expect(codes(line)).toEqual(expected);
	});

	test("a data mode that shows the carrier, or the mark: the step is the set's own, above the centre on lower sideband", () => {
		const inMode = (FSK: NonNullable<CheckOptions["profile"]["modes"]["FSK"]>) => ({
			profile: { ...twin180, modes: { ...twin180.modes, FSK } },
		});
		const lower = inMode({ shows: "carrier", audioCentreHz: 2_200, sideband: "lower" });
		expect(codes("data 1 NTX518 520.2 - FSK", lower)).toEqual([]);
		expect(codes("data 1 NTX518 515.8 - FSK", lower)).toEqual(["offset-missing"]);
		expect(codes("data 1 NTX518 518 - FSK", lower)).toEqual(["offset-missing"]);
		expect(codes("data 1 NTX518 522.4 - FSK", lower)).toEqual(["offset-twice"]);
		expect(findings("data 1 NTX518 518 - FSK", lower)[0]?.remedy).toBe("FSK 520.2 kHz (published 518 plus 2.2)");
		const upper = inMode({ shows: "carrier", audioCentreHz: 2_200 });
		expect(codes("data 1 NTX518 515.8 - FSK", upper)).toEqual([]);
		expect(codes("data 1 NTX518 520.2 - FSK", upper)).toEqual(["offset-missing"]);
		const mark = inMode({ shows: "mark", shiftHz: 170, sense: "reversed" });
		expect(codes("data 1 NTX518 518.1 - FSK", mark)).toEqual([]);
		expect(codes("data 1 NTX518 518 - FSK", mark)).toEqual(["offset-missing"]);
	});

	test("Morse where the set shows the carrier less its pitch: the bare carrier lacks the step (9996 is RWM, pitch 700)", () => {
		const set = { ...OPTIONS, profile: receiver100 };
		const morse = (khz: number) => {
			const csv = `bank,place,tag,receive_khz,transmit_khz,mode\nmemory,1,TIME,${khz},,CW\n`;
			const found = checkList(readList("test.csv", csv, receiver100), set).filter(({ line }) => line !== null);
			return found.filter(({ code }) => code !== "listing-stale").map(({ code, remedy }) => [code, remedy]);
		};
		const remedy = "CW 9995.3 kHz (published 9996 less 0.7)";
		expect(morse(9995.3)).toEqual([]);
		expect(morse(9996)).toEqual([["offset-missing", remedy]]);
		expect(morse(9996.7)).toEqual([["offset-missing", remedy]]);
		expect(morse(9994.6)).toEqual([["offset-twice", remedy]]);
	});

	test("a remedy names a dial that the set can be put on: FSK shows the mark of 518 at 517.915, stored in steps of 10 Hz", () => {
		const csv = "bank,place,tag,receive_khz,transmit_khz,mode\nmemory,1,NTX518,518,,FSK\nmemory,2,NTX516,516.3,,CW\n";
		const found = checkList(readList("test.csv", csv, receiver100), { ...OPTIONS, profile: receiver100 });
		const remedies = found.flatMap(({ code, remedy }) => (code === "offset-missing" || code === "wrong-mode" ? [[code, remedy]] : []));
		expect(remedies).toEqual([
			["offset-missing", "FSK 517.92 kHz (published 518 less 0.085)"],
			["wrong-mode", "FSK 517.92 kHz"],
		]);
	});

	test("what the set cannot hear is no slip of a key: 156.8 is channel 16 of another band, not 456.8", () => {
		const [found, ...rest] = findings("voice 1 VHF16 156.8 156.8 USB").filter(({ code }) => code !== "transmit-outside-service");
		expect([found?.code, ...rest.map(({ code }) => code)]).toEqual(["no-listing", "cannot-tune"]);
		expect(rest[0]?.remedy).toContain("receive 500 kHz is the nearest, -343.2 kHz left over");
		const [slip] = findings("data 1 NTX490 490 - USB");
		expect([slip?.code, slip?.remedy]).toEqual(["offset-missing", "FSK 490 kHz, which the set cannot receive (the set shows the centre)"]);
	});

	test("the USB dials of 4209.5, 6314, 8416.5, 12579 and 16806.5 lie 0.3 kHz from DSC and are right (facts: emissions, trap)", () => {
		const dials = [4207.8, 6312.3, 8414.8, 12577.3, 16804.8];
		for (const dial of dials) expect(codes(`data 1 MSI ${dial} - USB`), String(dial)).toEqual([]);
	});

	test("one keying slip away: a digit, two neighbours, a moved point; inside the voice ranges only what the tag names", () => {
		expect(codes("voice 1 NMF_FAX 6368.6 - USB")).toEqual(["near-miss"]);
		expect(codes("voice 1 NMF_FAX 3638.6 - USB")).toEqual(["near-miss"]);
		expect(codes("voice 1 CHU 333 - AM")).toEqual(["near-miss", "cannot-tune"]);
		expect(codes("voice 1 CH816 8746.3 8240 USB")).not.toContain("near-miss");
		expect(codes("voice 1 WX_8764 8763 - USB")).toContain("near-miss");
		expect(codes("voice 1 WX 8763 - USB")).toEqual(["off-raster"]);
	});

	test("a row that sends is taken for no broadcast, and nothing for former distress traffic, unless the tag names it", () => {
		expect(codes("voice 1 SHIP 2049 2049 USB")).toEqual(["no-listing"]); // 2749 is a broadcast of Sydney
		expect(codes("voice 1 WX 2049 - USB")).toEqual(["near-miss"]);
		expect(codes("voice 1 SYDNEY 2049 2049 USB")).toContain("near-miss");
		expect(codes("data 1 NBDP12 12580 12477.5 FSK")).toEqual(["no-listing"]); // 12520, one digit away, is a guard
		expect(codes("voice 1 WWV 10 - AM")).toEqual(["near-miss", "cannot-tune"]); // megahertz for kilohertz
	});

	test("off the 3 kHz raster, and nothing known at all", () => {
		expect(codes("voice 1 SHIP 4099 4099 USB")).toEqual(["off-raster"]);
		expect(codes("voice 1 MYSTERY 7777.7 - USB")).toEqual(["no-listing"]);
	});
});

describe("the mode", () => {
	test.each([
		["voice 1 DIST4125 4125 4125 AM", "wrong-mode", "fix"],
		["voice 1 CH424 4426 4134 LSB", "wrong-sideband", "fix"],
		["voice 1 NMF_FAX 6338.6 - CW", "wrong-mode", "fix"],
		["voice 1 NMF_FAX 6342.4 - LSB", "wrong-sideband", "mind"],
		["voice 1 NMF_FAX 6338.6 - LSB", "wrong-sideband", "fix"],
		["voice 1 WWV10 10000 - USB", "wrong-mode", "mind"],
	] as const)("%s gives %s, %s", (line, code, severity) => {
		const found = findings(line).filter((finding) => finding.code.startsWith("wrong-"));
		expect(found.map((finding) => [finding.code, finding.severity])).toEqual([[code, severity]]);
	});
});

describe("sending", () => {
	test("distress carriers as working channels (RR Appendix 15)", () => {
		expect(codes("voice 1 DIST8 8291 8291 USB")).toEqual([]);
		expect(codes("voice 1 8291 8291 8291 USB")).toEqual([]);
		expect(codes("voice 1 BOB 8291 8291 USB")).toEqual(["distress-used-as-working"]);
		expect(codes("voice 1 BOB 8289 8289 USB")).toEqual(["distress-used-as-working"]);
		expect(codes("voice 1 BOB 8291 - USB")).toEqual([]);
		expect(codes("data 1 DSC8 8414.5 8414.5 FSK")).toEqual(["distress-used-as-working"]);
		expect(codes("data 1 DSC8 8414.5 - FSK")).toEqual([]);
	});

	test("the guard's own carrier counts too: Morse on it, the edge of AM; LSB from above falls on it", () => {
		expect(codes("voice 1 KEY 4125 4125 CW")).toEqual(["wrong-mode", "distress-used-as-working"]);
		expect(codes("voice 1 AM 8288 8288 AM")).toContain("distress-used-as-working");
		expect(codes("voice 1 LSB 8294 8294 LSB")).toContain("distress-used-as-working");
		expect(codes("voice 1 X 8297 8297 LSB")).toEqual(["wrong-sideband"]);
	});

	test("only a data dial rightly tuned is as narrow as data; the same figure on LSB is speech", () => {
		expect(codes("data 1 DSC4 4217.8 4206.3 USB")).toEqual([]); // 4208 and 4219.5, 47 CFR 80.359(a)
		expect(codes("voice 1 BOB 4209.7 4209.7 LSB")).toContain("distress-used-as-working");
		expect(codes("voice 1 BOB 2187.8 2187.8 LSB")).toContain("distress-used-as-working");
	});

	test("the remedy of a distress finding, carried out, ends it", () => {
		const [voice] = findings("voice 1 BOB 8289 8289 USB");
		expect(voice?.remedy).toBe("make it receive only, or a guard place: 8291 kHz both ways, USB, tag DIST 8291");
		expect(codes("voice 1 DIST_8291 8291 8291 USB")).toEqual([]);
		const [data] = findings("data 1 DSC8 8414.5 8414.5 FSK");
		expect(data?.message).toContain("8414.5 kHz");
		expect(data?.remedy).toBe("make it receive only"); // no tag makes a DSC frequency a place that sends
	});

	test("search and rescue carriers as guard places are right, though the band is aeronautical (RR Appendix 15)", () => {
		for (const khz of [3023, 5680]) {
			expect(codes(`voice 1 SAR_${khz} ${khz} ${khz} USB`)).toEqual([]);
			expect(codes(`voice 1 BOB ${khz} ${khz} USB`)).toEqual(["distress-used-as-working"]);
		}
	});

	test("calling pairs: 421 and 606 pass, 1221 and 1621 are a fix that names 12359 and 16537 (RR 52.221A, from memory)", () => {
		expect(codes("voice 1 CH421 4417 4125 USB")).toEqual([]);
		expect(codes("voice 1 CH606 6516 6215 USB")).toEqual([]);
		const [twelve] = findings("voice 1 CH1221 13137 12290 USB");
		expect([twelve?.code, twelve?.severity]).toEqual(["distress-used-as-working", "fix"]);
		expect(twelve?.remedy).toContain("12359");
		expect(findings("voice 1 CH1621 17302 16420 USB")[0]?.remedy).toContain("16537");
	});

	test("a stop that mending the dial ends says so: 8295.4 falls on a broadcast on 8297, its carrier 8294 is a ship's own", () => {
		const [slip, stop] = findings("voice 1 SHIP8A 8295.4 8295.4 USB");
		expect([slip?.code, stop?.code, stop?.severity]).toEqual(["assigned-as-carrier", "transmit-on-broadcast", "stop"]);
		expect(stop?.remedy).toBe("key USB 8294 kHz both ways as assigned-as-carrier says, and this is mended too; until then receive only");
		expect(codes("voice 1 SHIP8A 8294 8294 USB")).toEqual([]);
		const [, still] = findings("voice 1 X 6312 6312 USB"); // the right dial is a DSC frequency, and sends no better
		expect(still?.remedy).toBe("make it receive only");
	});

	test("amateur bands by licence and Region (RR Article 5, 47 CFR 97.301)", () => {
		expect(codes("voice 1 NET 14300 14300 USB")).toContain("amateur-without-licence");
		expect(codes("voice 1 NET 14300 14300 USB", { amateurLicence: true })).toEqual([]);
		expect(codes("voice 1 NET 14300 - USB")).not.toContain("amateur-without-licence");
		expect(codes("voice 1 NET 7250 7250 LSB", { amateurLicence: true, region: 1 })).toEqual(["amateur-other-region"]);
		expect(codes("voice 1 NET 7250 7250 LSB", { amateurLicence: true, region: 2 })).toEqual([]);
		const everywhere = findings("voice 1 NET 7250 7250 LSB", { amateurLicence: true });
		expect(everywhere.map(({ code, severity }) => [code, severity])).toEqual([["amateur-other-region", "mind"]]);
	});

	test("broadcasts, standard time and what no ship may use", () => {
		expect(codes("voice 1 BC 9650 9650 AM")).toContain("transmit-on-broadcast");
		expect(codes("voice 1 WWV10 10000 10000 AM")).toContain("transmit-on-broadcast");
		expect(codes("voice 1 AIR 8950 8950 USB")).toContain("transmit-outside-service");
	});

	test("safety text frequencies count as broadcasts whether or not a station is listed on them (47 CFR 80.1077)", () => {
		for (const khz of [4209.5, 4210, 6314, 8416.5, 12579, 16806.5, 19680.5, 22376, 26100.5]) {
			expect(codes(`data 1 MSI ${khz} ${khz} FSK`), String(khz)).toEqual(["transmit-on-broadcast"]);
		}
	});

	test("a DSC watch that coast stations keep makes no ship's carrier of its figure", () => {
		expect(codes("voice 1 X 6312 6312 USB")).toEqual(["offset-missing", "transmit-on-broadcast"]); // speech falls on 6314
	});

	test("a tropical broadcasting band counts where no ship may send (RR 5.113), not where one may", () => {
		expect(codes("voice 1 BC 4900 4900 USB")).toContain("transmit-on-broadcast");
		expect(codes("voice 1 SHIP 3220 3220 USB")).not.toContain("transmit-on-broadcast");
	});

	test("below 4 MHz another sea's broadcast beside a ship's own figure is a mind; the broadcast itself keyed both ways stays a stop", () => {
		const severities = (line: string) =>
			findings(line).flatMap(({ code, severity }) => (code === "transmit-on-broadcast" ? [severity] : []));
		expect(severities("voice 1 SHIP 2638 2638 USB")).toEqual(["mind"]);
		expect(severities("voice 1 FARSUND 1785 2056 USB")).toEqual(["mind"]);
		expect(severities("voice 1 VMW 2056 2056 USB")).toEqual(["stop"]);
	});
});

describe("the set's limits and the list", () => {
	test("tuning: range by direction, finest step, mode; the remedy gives the nearest dial and what is left over", () => {
		const [low] = findings("data 1 NTX490 490 - FSK").filter(({ code }) => code === "cannot-tune");
		expect(low?.remedy).toContain("500 kHz is the nearest, -10000 Hz left over");
		expect(codes("data 1 NTX490 488.3 - USB")).toEqual(["cannot-tune"]); // facts: emissions; below twin-180's range on USB
		expect(codes("voice 1 X 28300 28300 USB")).toContain("cannot-tune");
		expect(codes("voice 1 CH424 4426.05 4134 USB")).toContain("cannot-tune");
	});

	test("tags and repeats", () => {
		expect(codes("voice 1 CAPE_TOWN_RADIO 4426 4134 USB")).toEqual(["tag-too-long"]);
		const rows = list(
			"voice 1 A 4146 4146 USB",
			"voice 2 a_ 4149 4149 USB",
			"voice 3 B 4146 4146 USB",
			"voice 3 C 6224 6224 USB",
			"voice 181 D 6227 6227 USB",
		);
		const found = checkList(rows, OPTIONS).flatMap(({ code, line }) => (line === null ? [] : [[line, code]]));
		expect(found.filter(([, code]) => code !== "tag-too-long")).toEqual([
			[3, "tag-duplicate"],
			[4, "duplicate-entry"],
			[5, "place-duplicate"],
			[6, "place-out-of-range"],
		]);
	});

	test("the example for a tag that does not fit keeps its figure, and is never empty", () => {
		const six = { ...OPTIONS, profile: { ...twin180, tag: { ...twin180.tag, length: 6 } } };
		const remedyOf = (line: string) => findings(line, six).find(({ code }) => code === "tag-too-long")?.remedy;
		expect(remedyOf("voice 1 DIST_12290 12290 12290 USB")).toBe('for example "D12290"');
		expect(remedyOf("voice 1 DIST_16420 16420 16420 USB")).toBe('for example "D16420"');
		expect(remedyOf("voice 1 \u2693 8294 8294 USB")).toBe('for example "8294"');
	});

	test("a tag stands against every earlier row of its bank, not the first alone", () => {
		const rows = list("voice 1 A 4146 4146 USB", "voice 2 A 4149 4149 USB", "voice 3 A 4146 4146 USB", "voice 4 B 4146 4146 USB");
		const found = checkList(rows, OPTIONS).filter(({ code }) => code === "tag-duplicate");
		expect(found.map(({ line }) => line)).toEqual([3, 4]);
		expect(found[1]?.message).toContain("voice 2");
	});

	test("a mode that the set lacks: the remedy gives the dial in one that it has, and what is left over", () => {
		const rows = readList("test.csv", "bank,place,tag,receive_khz,transmit_khz,mode\nmemory,1,NTX518,518,,FSK\n", null);
		const [found] = checkList(rows, { ...OPTIONS, profile: profileNamed("single-200")! }).filter(({ code }) => code === "cannot-tune");
		expect(found?.remedy).toBe("its modes are USB, LSB, AM, CW: USB 516.3 kHz, 0 Hz left over");
	});

	test("guard places may be repeated in other blocks, not in the same", () => {
		const rows = list("voice 1 DIST8 8291 8291 USB", "voice 21 DIST8 8291 8291 USB", "voice 22 DIST8 8291 8291 USB");
		expect(
			checkList(rows, OPTIONS)
				.filter(({ code }) => code === "duplicate-entry")
				.map(({ line }) => line),
		).toEqual([4]);
	});

	test("a block that mixes speech and charts is told once, at the first of the fewer kind", () => {
		const rows = list(
			"voice 1 S1 4146 4146 USB",
			"voice 2 S2 4149 4149 USB",
			"voice 3 NMF_FAX 6338.6 - USB",
			"voice 4 F2 9108.1 - USB",
			"voice 5 S3 6224 6224 USB",
		);
		expect(
			checkList(rows, OPTIONS)
				.filter(({ code }) => code === "block-mixed")
				.map(({ place }) => place),
		).toEqual([3]);
	});

	test("the owner's nets are speech in a scanned block, heard only or not, and grow stale like any listing", () => {
		const own = readOwnListingsCsv(
			"own.csv",
			"name,khz,means,mode,schedule,transmit_khz,as_of\nNet,14313,carrier,USB,1700,,2024-01-01\nFriends,8104,carrier,USB,0700,8104,2026-10-01\n",
		);
		const withOwn = { ...OPTIONS, directory: { ...directory(), listings: [...directory().listings, ...own] } };
		const rows = list("voice 1 NET 14313 - USB", "voice 2 FRIENDS 8104 8104 USB", "voice 3 S1 4146 4146 USB");
		const found = checkList(rows, withOwn).filter(({ line }) => line !== null);
		expect(found.map(({ line, code, severity }) => [line, code, severity])).toEqual([[2, "listing-stale", "mind"]]);
	});

	test("a stale frequency that many share is told for all of them, or for the station that the tag names", () => {
		const usable = directory().listings.filter(({ service, hz: at }) => service === "navtex" && at === 518_000);
		expect(usable.length).toBeGreaterThan(5);
		expect(findings("data 1 NAVTEX 516.3 - USB")).toEqual([]); // no station's name; the Regulations' own 518 is never stale
		const [named] = findings("data 1 ALEXANDRIA 518 - FSK").filter(({ code }) => code === "listing-stale");
		expect(named?.message).toMatch(/^Alexandria/);
		const own = readOwnListingsCsv(
			"own.csv",
			"name,khz,means,mode,schedule,transmit_khz,as_of\nNorth,8104,carrier,USB,1700,,2024-01-01\nSouth,8104,carrier,USB,0700,,2023-10-01\n",
		);
		const withOwn = { ...OPTIONS, directory: { ...directory(), listings: [...directory().listings, ...own] } };
		const [shared] = findings("voice 1 NET 8104 - USB", withOwn);
		expect(shared?.message).toMatch(/^the 2 listings here are all stale, the best: /);
	});

	test("every guard carrier that no row holds is told; a receiver need only hear it", () => {
		const missing = checkList(list("voice 1 S1 4146 4146 USB"), OPTIONS).filter(({ code }) => code === "guard-missing");
		expect(missing.map(({ message }) => Number(/holds ([\d.]+)/.exec(message)?.[1]))).toEqual([2182, 4125, 6215, 8291, 12290, 16420]);
		expect(checkList(list(...GUARDS), OPTIONS).filter(({ severity }) => severity !== "mind")).toEqual([]);
		const heard = list(...GUARDS.map((line) => line.replace(/(\d+) \d+ USB/, "$1 - USB").replace(/^voice 17/, "main ")));
		const onReceiver = checkList(heard, { ...OPTIONS, profile: receiver100 });
		expect(onReceiver.filter(({ code }) => code === "guard-missing")).toEqual([]);
		expect(checkList(heard, OPTIONS).filter(({ code }) => code === "guard-missing")).toHaveLength(6);
	});
});

describe("invariants", () => {
	const anyRow = fc.record({
		bank: fc.constantFrom("voice", "data", "none"),
		place: fc.integer({ min: 0, max: 200 }),
		tag: fc.string({ maxLength: 14 }),
		receive: fc.integer({ min: 0, max: 30_000_000 }).map((value) => hz(value)),
		transmit: fc.option(fc.integer({ min: 0, max: 30_000_000 }).map((value) => hz(value))),
		mode: fc.constantFrom("USB", "LSB", "AM", "CW", "FSK" as const),
		line: fc.integer({ min: 2, max: 1_000 }),
	}) as fc.Arbitrary<Row>;
	const GROUPS: readonly (readonly FindingCode[])[] = [
		["assigned-as-carrier", "pair-swapped", "pair-broken", "offset-missing", "offset-twice", "near-miss", "off-raster", "no-listing"],
		["wrong-mode", "wrong-sideband"],
		["distress-used-as-working", "amateur-without-licence", "amateur-other-region", "transmit-on-broadcast", "transmit-outside-service"],
		["listing-closed", "listing-stale"],
	];

	test("any list at all: no throw, at most one finding of each group a row, one finding a code and place", () => {
		let rowsSeen = 0;
		fc.assert(
			fc.property(fc.array(anyRow, { maxLength: 12 }), fc.constantFrom(null, 1, 2, 3), (rows, region) => {
				const numbered = rows.map((row, i) => ({ ...row, line: i + 2 }));
				const found = checkList(numbered, { ...OPTIONS, region: region as CheckOptions["region"] });
				for (const row of numbered) {
					const here = found.filter(({ line }) => line === row.line).map(({ code }) => code);
					expect(new Set(here).size).toBe(here.length);
					for (const group of GROUPS) expect(here.filter((code) => group.includes(code)).length).toBeLessThanOrEqual(1);
					if (here.includes("distress-used-as-working")) expect(here.some((code) => GROUPS[0]!.includes(code))).toBe(false);
					rowsSeen++;
				}
			}),
			{ seed: 20261124, numRuns: 40 },
		);
		expect(rowsSeen).toBeGreaterThan(50);
	});

	test("every open listing keyed as its dial says is no stop and no fix", () => {
		const open = directory().listings.filter(({ status }) => status !== "closed");
		expect(open.length).toBeGreaterThan(800);
		expect(wrongRows(open)).toEqual([]);
	});
});

/** Listings that, keyed receive only in the set's preferred mode, still give a stop or a fix, tuning limits aside. */
function wrongRows(listings: readonly Listing[]): readonly string[] {
	const { dialRows, ids } = dialled(listings);
	const found = checkList(dialRows, OPTIONS).filter(
		({ severity, code, line }) => line !== null && severity !== "mind" && !code.startsWith("place-") && code !== "cannot-tune",
	);
	return found.map(({ line, code, message }) => `${ids.get(line ?? 0)}: ${code}: ${message}`);
}

function dialled(listings: readonly Listing[]): { dialRows: readonly Row[]; ids: ReadonlyMap<number, string> } {
	const rows = listings.flatMap((listing, i) => {
		const dial = dialFor(publishedOf(listing), twin180.modes);
		if ("cannot" in dial) throw new Error(`${listing.id}: ${dial.cannot}`);
		const tunable: Hz = hz(Math.round(dial.dialHz / 100) * 100);
		return [{ bank: "voice", place: i + 1, tag: "", receive: tunable, transmit: null, mode: dial.mode, line: i + 2 }];
	});
	return { dialRows: rows, ids: new Map(listings.map(({ id }, i) => [i + 2, id])) };
}

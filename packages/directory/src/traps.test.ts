import { formatKhz, hz, isoDate } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { dayHoursOf } from "./dayHours.ts";
import { directory, listingById, listingsNear, publishedOf, stationById, stationOf } from "./directory.ts";
import { figureInDoubt } from "./figureInDoubt.ts";
import { freshness, lastHeard } from "./freshness.ts";
import { occurrencesOf, scheduleOf } from "./listingSchedule.ts";
import { navtexLetter, navtexSlots } from "./navtex.ts";
import { occurrences, scheduleKnown } from "./occurrences.ts";
import { parseSchedule } from "./parseSchedule.ts";
import { positionIsApproximate } from "./positionIsApproximate.ts";
import type { Listing } from "./types.ts";

// The traps that the gathering of the data named, by their numbers there. 15 and 16 are about sunspot numbers, which this package does not hold.

const all = directory().listings;
const WINTER = isoDate("2027-01-15");

function of(stationId: string, service: string): readonly Listing[] {
	const found = all.filter((listing) => listing.stationId === stationId && listing.service === service);
	expect(found.length).toBeGreaterThan(0);
	return found;
}

function khz(listings: readonly Listing[]): readonly string[] {
	return listings.map((listing) => formatKhz(listing.hz));
}

describe("traps in lists of coast stations", () => {
	it("1: chart figures are the centre, never a dial figure; where the source does not say, that is shown", () => {
		const charts = all.filter(({ service }) => service === "fax");
		expect(charts).toHaveLength(111);
		for (const listing of charts) expect(["assigned", "centre"]).toContain(publishedOf(listing).means);
		expect(khz(of("jp-jmh", "fax"))).toEqual(["3622.5", "7795", "13988.5"]);
		expect(of("jp-jmh", "fax").every(({ means }) => means === "centre")).toBe(true);
		// Seoul is printed 5855.6 in the list of 2025: the centre less 1.9 kHz
		expect(khz(of("kr-hll", "fax"))).toContain("5857.5");
		expect(all.some((listing) => listing.hz === hz(5_855_600))).toBe(false);
		const doubtful = new Set(all.filter(figureInDoubt).map(({ stationId }) => stationId));
		expect([...doubtful].sort()).toEqual([
			"ca-halifaxmil",
			"cn-beijing",
			"cn-guangzhou",
			"cn-shanghai",
			"jp-jfx",
			"nz-zklf",
			"ru-murmanskfax",
			"sg-9vf",
		]);
		expect(all.filter(figureInDoubt)).toHaveLength(39);
	});

	it("2: charts keep F3C, Pinneberg F1C, and the two Brazilian ones J3C as published", () => {
		const emissions = Map.groupBy(
			all.filter(({ service }) => service === "fax"),
			({ emission }) => emission,
		);
		expect([...emissions.keys()].sort()).toEqual(["F1C", "F3C", "J3C"]);
		expect(emissions.get("F1C")?.every(({ stationId }) => stationId === "de-pinneberg")).toBe(true);
		expect(emissions.get("J3C")?.map(({ stationId }) => stationId)).toEqual(["br-rionaval", "br-rionaval"]);
	});

	it("3: NAVTEX, NBDP and DSC give the assigned (centre) figure", () => {
		const text = all.filter(({ service }) => service === "navtex" || service === "nbdp-msi" || service === "dsc-watch");
		expect(text).toHaveLength(407);
		for (const { means, emission } of text) expect([means, emission]).toEqual(["assigned", "F1B"]);
	});

	it("4: voice figures are carriers; US voice weather sits on coast sides and is receive-only; New Orleans pairs with no ship side", () => {
		for (const { means } of all.filter(({ emission }) => emission === "J3E")) expect(means).toBe("carrier");
		const paired = all.filter(
			({ stationId, service, channel }) => stationId.startsWith("us-") && service === "voice-weather" && channel !== null,
		);
		expect(new Set(paired.map(({ channel }) => channel))).toEqual(new Set([424, 601, 816, 1205, 1625]));
		for (const { hz, coastTx, shipTx, receiveOnly } of paired) {
			expect(coastTx).toBe(hz);
			expect(shipTx).not.toBe(hz);
			expect(receiveOnly).toBe(true);
		}
		const newOrleans = of("us-neworleans", "voice-weather");
		expect(khz(newOrleans)).toEqual(["4316", "8502", "12788"]);
		for (const { channel, shipTx, receiveOnly } of newOrleans) expect([channel, shipTx, receiveOnly]).toEqual([null, null, true]);
	});

	it("5: look-alikes stay apart: 4316 voice and 4317.9 charts; 4125 voice, 4207.5 DSC, 4210 NBDP", () => {
		const inUse = (figure: number) => listingsNear(directory(), hz(figure), 50).filter(({ status }) => status !== "unknown");
		const service = (figure: number) => [...new Set(inUse(figure).map((listing) => listing.service))];
		expect(service(4_316_000)).toEqual(["voice-weather"]);
		expect(service(4_317_900)).toEqual(["fax"]);
		expect([4_125_000, 6_215_000].map(service)).toEqual([["voice-working"], ["voice-working"]]);
		expect([4_207_500, 6_312_000].map(service)).toEqual([["dsc-watch"], ["dsc-watch"]]);
		expect(service(6_314_000)).toEqual(["nbdp-msi"]);
	});

	it("6: NAVTEX times follow the letter slot everywhere but in the United States, at Haifa and where the data says so", () => {
		const navtex = all.filter(({ service, status }) => service === "navtex" && status !== "closed");
		expect(navtex).toHaveLength(162);
		const off = navtex.filter((listing) => {
			const letter = navtexLetter(listing);
			expect(letter).not.toBeNull();
			const slots = navtexSlots(letter ?? "");
			return occurrencesOf(directory(), listing, WINTER).some(({ fromMin }) => !slots.includes(fromMin));
		});
		const elsewhere = off.filter(({ stationId }) => !stationId.startsWith("navtex-us-")).map(({ id }) => id);
		expect(elsewhere).toEqual(["navtex-oostende/navtex/518/3", "navtex-haifa/navtex/518"]);
		// of the 13 rows of the United States only Charleston E and Miami A happen to fit
		expect(off).toHaveLength(13);
		const computed = navtex.filter(({ notes }) => notes.includes("times from the B1 slot rule"));
		expect(computed.length).toBe(137);
		for (const listing of computed) {
			const slots = occurrences(parseSchedule(`slot ${navtexLetter(listing)}`), WINTER, null).map(({ fromMin }) => fromMin);
			expect(occurrencesOf(directory(), listing, WINTER).map(({ fromMin }) => fromMin)).toEqual(slots);
		}
	});

	it("7: one place can use several letters: Niton E, K and I, Oostende M, T and, in doubt, V; Tallinn's letter is in doubt", () => {
		const letters = (stationId: string) => of(stationId, "navtex").map(navtexLetter).sort();
		expect(letters("navtex-niton")).toEqual(["E", "I", "K"]);
		expect(letters("navtex-oostende")).toEqual(["M", "T", "V"]);
		const doubtful = of("navtex-oostende", "navtex").find((listing) => navtexLetter(listing) === "V");
		expect(doubtful?.notes).toContain("does not fit the 0200 slot");
		expect(of("navtex-tallinn", "navtex")[0]?.notes).toContain("letter in doubt");
		expect(stationById(directory(), "navtex-pinneberg")?.notes).toContain("other copy gives 53.667,9.800");
	});

	it("8: Shanghai and Dalian have their real longitudes, not those of the copied table of 2001", () => {
		expect(stationById(directory(), "navtex-shanghai")?.position?.lonDeg).toBe(121.55);
		expect(stationById(directory(), "navtex-dalian")?.position?.lonDeg).toBe(121.517);
		for (const id of ["navtex-shanghai", "navtex-dalian"])
			expect(stationById(directory(), id)?.notes).toContain("a copying slip, corrected");
	});

	it("9: what is closed is closed: New Zealand charts, Inuvik, Danish HF, old Australian stations, four Italian NAVTEX sites; Halifax is unknown", () => {
		const closed = Map.groupBy(
			all.filter(({ status }) => status === "closed"),
			({ stationId }) => stationId,
		);
		expect([...closed].map(([id, group]) => [id, group.length])).toEqual([
			["ca-inuvik", 1],
			["nz-zklf", 5],
			["navtex-old-rome", 1],
			["navtex-old-cagliari", 1],
			["navtex-old-augusta", 1],
			["navtex-old-trieste", 1],
		]);
		for (const listing of [...closed.values()].flat()) expect(occurrencesOf(directory(), listing, WINTER)).toEqual([]);
		expect(stationById(directory(), "dk-lyngby")?.status).toBe("closed");
		expect(all.filter(({ stationId }) => stationId === "dk-lyngby").map(({ id, status }) => [id, status])).toEqual([
			["dk-lyngby/dsc-watch/2187.5", "active"],
		]);
		expect(stationById(directory(), "au-oldcoast")?.status).toBe("closed");
		for (const { status } of of("ca-halifaxmil", "fax")) expect(status).toBe("unknown");
	});

	it("10: the US HF voice watch stands only at Kodiak and Guam, there by hours; no US watch on 2187.5", () => {
		const watch = all.filter(({ stationId, service }) => stationId.startsWith("us-") && service === "voice-working");
		expect(watch.map(({ id, schedule }) => [id, schedule])).toEqual([
			["us-kodiak/voice-working/4125", "continuous"],
			["us-kodiak/voice-working/6215", "continuous"],
			["us-kodiak/voice-working/8291", "continuous"],
			["us-guam/voice-working/6215", "0900-2100"],
			["us-guam/voice-working/12290", "2100-0900"],
		]);
		expect(all.filter(({ stationId, hz }) => stationId.startsWith("us-") && hz === 2_187_500)).toEqual([]);
	});

	it("11: Australian day and night go by station local time; that two sources differ by an hour is told", () => {
		for (const id of ["au-charleville", "au-wiluna"]) {
			const hours = dayHoursOf(id);
			expect(hours?.doubt).toContain("1800 or 1900");
			const spans = (word: string) =>
				occurrences({ ...parseSchedule(word), dayHours: hours }, WINTER, null).map(({ fromMin, toMin }) => [fromMin, toMin]);
			const timed = of(id, "voice-weather").filter((listing) => scheduleKnown(scheduleOf(listing)) === "timed");
			expect(timed).toHaveLength(4);
			for (const listing of timed) {
				const [own] = occurrencesOf(directory(), listing, WINTER).map(({ fromMin, toMin }) => [fromMin, toMin]);
				expect([spans("day")[0], spans("night")[0]]).toContainEqual(own);
				expect(listing.notes).toContain("another source says 1900");
			}
		}
	});

	it("12: Greek warnings come by local time, an hour earlier by UTC in summer; the weather stays", () => {
		const starts = (id: string, date: string) =>
			of(id, "voice-weather").map((listing) => occurrencesOf(directory(), listing, isoDate(date)).map(({ fromMin }) => fromMin));
		expect(starts("gr-kerkyra", "2027-01-15")).toEqual([[273, 423, 513, 543, 873, 933, 1293, 1353]]);
		expect(starts("gr-kerkyra", "2027-07-15")).toEqual([[213, 423, 453, 543, 813, 933, 1293, 1293]]);
		expect(starts("gr-athens", "2027-07-15")).toEqual([[213, 573, 813, 1173]]);
		const greek = all.filter((listing) => scheduleOf(listing).fine.localTimes !== null);
		expect(greek.map(({ stationId }) => stationId)).toEqual(["gr-athens", "gr-iraklion", "gr-kerkyra", "gr-limnos", "gr-rhodes"]);
	});

	it("13: an identity can stand for one site, two sites or a whole country", () => {
		expect(stationById(directory(), "us-uscg-group")).toMatchObject({ mmsi: "003669999", position: null });
		expect(stationById(directory(), "au-amsa")).toMatchObject({ mmsi: "005030001" });
		expect(stationById(directory(), "au-amsa")?.notes).toContain("two transmitter sites, one identity");
	});

	it("14: positions that are only a town's are marked", () => {
		const marked = directory().stations.filter(positionIsApproximate);
		expect(marked.length).toBe(234);
		expect(positionIsApproximate(stationById(directory(), "us-pointreyes")!)).toBe(false);
		expect(positionIsApproximate(stationById(directory(), "us-kodiak")!)).toBe(true);
		expect(positionIsApproximate(stationById(directory(), "gb-rafvolmet")!)).toBe(true);
	});

	it("17: the three Spanish sites whose coordinates the list mixes up are marked approximate", () => {
		const mixed = directory().stations.filter(({ notes }) => notes.includes("looks mixed up between sites"));
		expect(mixed.map(({ id }) => id)).toEqual(["es-coruna", "es-huelva", "es-cabodegata"]);
		for (const station of mixed) expect(positionIsApproximate(station)).toBe(true);
	});

	it("18: one broadcast is sent from several sites on several figures: one row per site, windows of about a quarter of an hour", () => {
		const norway = all.filter(({ stationId, service }) => stationId.startsWith("no-") && service === "voice-weather");
		expect(new Set(norway.map(({ stationId }) => stationId)).size).toBe(16);
		const lengths = norway.flatMap((listing) => occurrencesOf(directory(), listing, WINTER).map(({ fromMin, toMin }) => toMin - fromMin));
		expect(lengths.length).toBeGreaterThan(100);
		for (const length of lengths) expect(length).toBeLessThanOrEqual(15);
	});

	it("19: Guangzhou charts are on the four figures of 2025; the four old ones are kept as unknown, from memory", () => {
		const charts = of("cn-guangzhou", "fax");
		const now = charts.filter(({ status }) => status === "active");
		expect(khz(now)).toEqual(["4159.5", "8310.5", "12375.5", "16562.5"]);
		const old = charts.filter(({ status }) => status === "unknown");
		expect(old).toHaveLength(4);
		for (const { confidence } of old) expect(confidence).toBe("memory");
	});

	it("20: what the list of 2025 does not hold any more is unknown, not active", () => {
		const absent = [
			...of("jp-jjc", "news-broadcast").filter(({ confidence }) => confidence === "memory"),
			...of("us-nyvolmet", "volmet"),
			...of("us-honoluluvolmet", "volmet"),
			...of("tw-taipeifax", "fax"),
			...of("cl-magallanes", "fax"),
			...of("br-rionaval", "fax"),
			...of("ar-lsd836", "fax"),
		];
		expect(absent).toHaveLength(5 + 4 + 4 + 3 + 2 + 2 + 3);
		for (const { status } of absent) expect(status).toBe("unknown");
		const northwood = of("gb-northwood", "fax").filter(({ status }) => status === "unknown");
		expect(khz(northwood)).toEqual(["8040", "11086.5"]);
		for (const { notes } of of("ca-halifaxmil", "fax")) expect(notes).toContain("teletype");
	});

	it("21: Beijing VOLMET is lower sideband, everything else upper; what was never logged is stale", () => {
		const lower = all.filter(({ sideband }) => sideband === "lower");
		expect(khz(lower)).toEqual(["3458", "5673", "8849", "13285"]);
		for (const { stationId } of lower) expect(stationId).toBe("cn-beijingvolmet");
		const beijing = listingById(directory(), "cn-beijingvolmet/volmet/13285")!;
		expect(publishedOf(beijing).sideband).toBe("lower");
		expect(lastHeard(beijing)).toBeNull();
		expect(freshness(beijing, isoDate("2025-05-01")).grade).toBe("stale");
	});

	it("22: New Zealand voice on 8 and 16 MHz is at the times of 2025; Honolulu 0000 is printed as 0005", () => {
		for (const figure of ["8297", "16531"]) {
			const listing = of("nz-taupo", "voice-weather").find((one) => formatKhz(one.hz) === figure);
			expect([figure, listing?.schedule]).toEqual([figure, "0333;1003;1533;2203"]);
		}
		const honolulu = of("us-honolulu", "voice-weather").map(({ schedule }) => schedule);
		expect(honolulu.join(";")).toContain("0005");
		expect(honolulu.join(";")).not.toContain("0000");
	});

	it("23: the Rio naval figures are filed as NBDP with the mode from memory, and say so", () => {
		const rio = of("br-rionaval", "nbdp-msi");
		expect(khz(rio)).toEqual(["4266", "6448", "8580", "12709", "16974"]);
		for (const { source } of rio) expect(source).toContain("mode: from memory");
	});

	it("tells the station of each listing by name", () => {
		for (const listing of all) expect(stationOf(directory(), listing).name).not.toBe("");
	});
});

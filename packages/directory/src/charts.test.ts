import { formatHhmm, isoDate } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { chartsOf, chartText, chartTimetable, LONGEST_CHART_MIN } from "./charts.ts";
import { directory, listingById } from "./directory.ts";

const DAY = isoDate("2027-03-10");

describe("chartTimetable", () => {
	it("gives a station's rows in order of time, with products where they were read", () => {
		const rows = chartTimetable("us-pointreyes");
		expect(rows).toHaveLength(91);
		expect(rows.map(({ startMin }) => startMin)).toEqual(rows.map(({ startMin }) => startMin).toSorted((a, b) => a - b));
		expect(rows.filter(({ kind }) => kind === "window")).toHaveLength(8);
		const final = rows.find(({ startMin }) => formatHhmm(startMin) === "0331");
		expect(final && chartText(final)).toBe("0331 final surface analysis (part 1 north-east Pacific), valid 00, area 2");
		expect(chartTimetable("nowhere")).toEqual([]);
	});

	it("gives start times without products where only those were read", () => {
		const japan = chartTimetable("jp-jmh");
		expect(japan).toHaveLength(68);
		expect(new Set(japan.map(({ product }) => product))).toEqual(new Set(["chart, content not named"]));
		expect(chartTimetable("us-kodiak").map(chartText)[0]).toBe("0340-0610 on the air, charts not named");
	});
});

describe("chartsOf", () => {
	it("joins the timetable to a listing and tells which charts its own times have on the air", () => {
		const charts = chartsOf(directory(), listingById(directory(), "us-pointreyes/fax/8682")!, DAY);
		expect(charts).toHaveLength(83);
		for (const { fromMin, toMin } of charts) {
			expect(toMin - fromMin).toBeGreaterThan(0);
			expect(toMin - fromMin).toBeLessThanOrEqual(LONGEST_CHART_MIN);
		}
		expect(charts.every(({ onAir }) => onAir)).toBe(true);
		const low = chartsOf(directory(), listingById(directory(), "us-pointreyes/fax/4346")!, DAY);
		expect(low.filter(({ onAir }) => onAir)).toHaveLength(15 + 20 + 8 + 13); // counted by hand in the four windows
		const short = { ...listingById(directory(), "us-pointreyes/fax/8682")!, schedule: "0140-0143" };
		const onAir = chartsOf(directory(), short, DAY).filter((chart) => chart.onAir);
		expect(onAir.map(({ fromMin, toMin }) => [fromMin, toMin])).toEqual([[100, 103]]);
	});

	it("cannot tell where the listing does not say when, and gives nothing for a closed one or another service", () => {
		const [first] = directory().listings.filter(({ service, schedule }) => service === "fax" && schedule === "continuous");
		expect(chartsOf(directory(), first!, DAY).every(({ onAir }) => onAir !== false)).toBe(true);
		const unsaid = { ...listingById(directory(), "us-pointreyes/fax/8682")!, schedule: "see list" };
		expect(chartsOf(directory(), unsaid, DAY).map(({ onAir }) => onAir)).toEqual(Array.from({ length: 83 }, () => null));
		expect(chartsOf(directory(), listingById(directory(), "nz-zklf/fax/5807")!, DAY)).toEqual([]);
		expect(chartsOf(directory(), listingById(directory(), "us-pointreyes/voice-weather/4426")!, DAY)).toEqual([]);
	});
});

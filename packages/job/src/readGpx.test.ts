import { BadInputError } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readGpx } from "./readGpx.ts";
import { stagesOf } from "./voyage.ts";

// Element and attribute names: GPX 1.1 schema, topografix.com, from memory.
const ROUTE = `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1">
  <metadata><name>ignored</name><time>2026-01-01T00:00:00Z</time></metadata>
  <wpt lat="1" lon="2"><name>a mark, not used</name></wpt>
  <rte><name>South Atlantic</name>
    <rtept lat="-33.9" lon="18.43"><time>2027-02-01T06:00:00Z</time><name>Cape Town</name></rtept>
    <!-- a turn --><rtept lat="-25" lon="8"><time>2027-02-08T06:00:00Z</time></rtept>
    <rtept lat="-15.92" lon="-5.72"><name><![CDATA[Jamestown]]> &amp; roads</name><time>2027-02-15T08:00:00+02:00</time>
      <extensions><speed xmlns="x">5</speed><time>nonsense</time></extensions></rtept>
    <rtept lat="-15.92" lon="-5.72"><time>2027-02-20T06:00:00Z</time></rtept>
  </rte>
</gpx>`;

describe("readGpx", () => {
	it("reads a dated route with comments, CDATA, entities and extensions", () => {
		const { points } = readGpx("r.gpx", ROUTE);
		expect(points.map(({ name }) => name)).toEqual(["Cape Town", null, "Jamestown & roads"]);
		expect(points[2]).toEqual({
			name: "Jamestown & roads",
			position: { latDeg: -15.92, lonDeg: -5.72 },
			arriveMs: Date.UTC(2027, 1, 15, 6),
			departMs: Date.UTC(2027, 1, 20, 6),
		});
		expect(stagesOf({ points }).map(({ name }) => name)).toEqual(["Cape Town to Jamestown & roads", "at Jamestown & roads"]);
	});

	const refused: readonly (readonly [string, string, RegExp])[] = [
		["no time", ROUTE.replace("<time>2027-02-08T06:00:00Z</time>", ""), /line 7: expected a time with its zone/],
		["a day without time", ROUTE.replace("2027-02-08T06:00:00Z", "2027-02-08"), /line 7: .*got "2027-02-08"/],
		["local time", ROUTE.replace("2027-02-08T06:00:00Z", "2027-02-08T06:00:00"), /line 7: .*with its zone/],
		["back in time", ROUTE.replace("2027-02-08", "2027-01-08"), /line 7: expected a point no earlier/],
		["a latitude beyond the pole", ROUTE.replace('lat="-25"', 'lat="-95"'), /line 7: expected lat/],
		["a decimal comma", ROUTE.replace('lat="-25"', 'lat="-25,0"'), /line 7: expected lat/],
		["an entity of its own", ROUTE.replace("&amp;", "&boom;"), /line 8: expected only &amp;/],
		["a document type", ROUTE.replace("<gpx", "<!DOCTYPE gpx [<!ENTITY a 'b'>]>\n<gpx"), /line 2: expected no document type/],
		["a tag left open", ROUTE.replace("</rte>", ""), /expected <\/rte>/],
		["no points", "<gpx></gpx>", /track, route or way points/],
		["another format", "<kml/>", /<gpx> as the root/],
		["nothing", "", /a root element/],
	];
	it.each(refused)("refuses %s and names the line", (_what, text, message) => {
		expect(() => readGpx("r.gpx", text)).toThrow(message);
		expect(() => readGpx("r.gpx", text)).toThrow(BadInputError);
	});

	it("reads a damaged file or refuses it with BadInputError, never anything else", () => {
		let refusals = 0;
		const damaged = fc
			.tuple(fc.nat({ max: ROUTE.length }), fc.nat({ max: 12 }), fc.string({ maxLength: 4, unit: "grapheme-composite" }))
			.map(([at, cut, put]) => ROUTE.slice(0, at) + put + ROUTE.slice(at + cut));
		fc.assert(
			fc.property(
				fc.oneof(
					damaged,
					fc.string({ unit: "binary" }).map((text) => `<gpx>${text}</gpx>`),
				),
				(text) => {
					try {
						expect(readGpx("r.gpx", text).points.length).toBeGreaterThan(0);
					} catch (error) {
						expect(error).toBeInstanceOf(BadInputError);
						refusals++;
					}
				},
			),
			{ seed: 20261124, numRuns: 2_000 },
		);
		expect(refusals).toBeGreaterThan(200);
	});

	it("takes the track when there is one", () => {
		const track =
			'<gpx><wpt lat="0" lon="0"/><trk><trkseg><trkpt lat="1" lon="2"><time>2027-02-01T00:00:00Z</time></trkpt></trkseg></trk></gpx>';
		expect(readGpx("t.gpx", track).points).toHaveLength(1);
	});
});

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

	const NAMED = "only &amp; &lt; &gt; &quot; &apos; and character references after &";
	const refused: readonly (readonly [string, string, string])[] = [
		["no time", ROUTE.replace("<time>2027-02-08T06:00:00Z</time>", ""), "line 7, column 20: expected a time with its zone"],
		["a day without time", ROUTE.replace("2027-02-08T06:00:00Z", "2027-02-08"), 'T06:30:00Z</time>, got "2027-02-08"'],
		["local time", ROUTE.replace("2027-02-08T06:00:00Z", "2027-02-08T06:00:00"), "line 7, column 20: expected a time with its zone"],
		["back in time", ROUTE.replace("2027-02-08", "2027-01-08"), "line 7, column 20: expected a point no earlier"],
		["a latitude beyond the pole", ROUTE.replace('lat="-25"', 'lat="-95"'), 'line 7, column 20: expected lat="..."'],
		["a decimal comma", ROUTE.replace('lat="-25"', 'lat="-25,0"'), 'line 7, column 20: expected lat="..."'],
		["no latitude", ROUTE.replace('lat="-25"', ""), 'line 7, column 20: expected lat="..."'],
		["a point in a point", ROUTE.replace("<name>Cape Town</name>", '<wpt lat="1" lon="2"/>'), "no <wpt> inside another point"],
		["an entity of its own", ROUTE.replace("&amp;", "&boom;"), `line 8, column 65: expected ${NAMED}, got "&boom; roads`],
		["a bare &", ROUTE.replace("&amp;", "&"), `line 8, column 65: expected ${NAMED}, got "& roads`],
		["a bare & before a good reference", ROUTE.replace("&amp;", "& a &gt;"), `line 8, column 65: expected ${NAMED}, got "& a`],
		["a bare & in an attribute", ROUTE.replace('"test"', '"this & that"'), `line 2, column 34: expected ${NAMED}, got "& that`],
		["a character that XML has not", ROUTE.replace("&amp;", "&#0;"), `line 8, column 65: expected ${NAMED}, got "&#0; roads`],
		["a document type", ROUTE.replace("<gpx", "<!DOCTYPE gpx [<!ENTITY a 'b'>\n]>\n<gpx"), "line 2, column 1: expected no document type"],
		["a tag left open", ROUTE.replace("</rte>", ""), 'line 12, column 1: expected </rte>, got "</gpx>"'],
		["a file cut short", ROUTE.slice(0, ROUTE.indexOf("<rtept")), 'line 6, column 5: expected </rte> before the end, got ""'],
		[
			"an attribute without quotes",
			ROUTE.replace('lat="-25"', "lat=-25"),
			"line 7, column 31: expected well-formed XML (unquoted attribute",
		],
		["an attribute twice", ROUTE.replace('lat="-25"', 'lat="-25" lat="-26"'), "expected well-formed XML (duplicate attribute: lat)"],
		["a second root", `${ROUTE}<gpx/>`, "line 12, column 11: expected well-formed XML (documents may contain only one root)"],
		["no points", "<gpx></gpx>", "line 1, column 1: expected a GPX file with track, route or way points"],
		["another format", '<?xml version="1.0"?>\n<kml/>', "line 2, column 1: expected a GPX file: <gpx> as the root element"],
		["nothing", "", "line 1, column 1: expected a root element"],
	];
	it.each(refused)("refuses %s and names line and column", (_what, text, message) => {
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

import { magneticField } from "@skipwright/sphere";
import { position } from "@skipwright/units";
import { afterAll, describe, expect, it } from "vitest";
import { type MapRow, mapRows, pyiriRows } from "../truth/readMaps.ts";
import { MEMORY } from "./fromMemory.ts";
import { monthMaps } from "./mapMonth.ts";
import { hourlyMapInto, hourlyMapsInto, type PointMap, pointMap } from "./mapPoint.ts";

const report: string[] = [];
afterAll(() => console.info(`worst errors of the maps\n${report.join("\n")}`));

const EPOCHS = [
	{ file: "maps-2020.csv", rows: 240 },
	{ file: "maps-1960.csv", rows: 48 },
] as const;

function worstOf(rows: readonly MapRow[], dipOf: (row: MapRow) => number) {
	const worst = { foF2: 0, m3000: 0 };
	for (const row of rows) {
		const map = pointMap({ month: row.month, r12: row.r12, position: row.where, modifiedDipDeg: dipOf(row) });
		worst.foF2 = Math.max(worst.foF2, Math.abs(map.foF2MHz(row.utcHour) - row.foF2MHz));
		worst.m3000 = Math.max(worst.m3000, Math.abs(map.m3000F2(row.utcHour) - row.m3000F2));
	}
	return worst;
}

describe("the maps of ITU-R P.1239", () => {
	for (const { file, rows: count } of EPOCHS) {
		const rows = mapRows(file);

		it(`meet every row of ${file} within 0.002 at the row's modified dip, 0.02 from place and epoch alone`, () => {
			expect(rows.length).toBe(count);
			const given = worstOf(rows, (row) => row.modifiedDipDeg);
			const own = worstOf(rows, (row) => magneticField(row.where, 300, row.fieldEpoch).modifiedDipDeg);
			for (const [what, { foF2, m3000 }] of Object.entries({ "given dip": given, "own field": own })) {
				report.push(`${file}, ${what}: ${count} rows, foF2 ${foF2.toExponential(1)} MHz, M(3000)F2 ${m3000.toExponential(1)}`);
			}
			expect(Math.max(given.foF2, given.m3000)).toBeLessThan(0.002);
			expect(Math.max(own.foF2, own.m3000)).toBeLessThan(0.02);
		});
	}

	it("meet PyIRI 0.1.6's own maps at this field's modified dip, all months, half hours (maps-pyiri.csv)", () => {
		const rows = pyiriRows();
		expect(rows.length).toBe(500);
		expect(new Set(rows.map(({ month }) => month)).size).toBe(12);
		expect(rows.filter(({ utcHour }) => utcHour % 1 !== 0).length).toBeGreaterThan(200);
		expect(rows.filter(({ r12 }) => r12 > 160).length).toBeGreaterThan(50);
		const worst = { foF2: 0, m3000: 0, dip: 0 };
		let floored = 0;
		for (const row of rows) {
			const { modifiedDipDeg } = magneticField(row.where, 300, row.fieldEpoch);
			const map = pointMap({ month: row.month, r12: row.r12, position: row.where, modifiedDipDeg });
			const line = ({ low, high }: { low: number; high: number }, r12: number) => low + ((high - low) * r12) / 100;
			const m3000 = line(row.m3000F2, row.r12);
			if (m3000 < 1.8) floored++;
			worst.dip = Math.max(worst.dip, Math.abs(modifiedDipDeg - row.modifiedDipDeg));
			worst.foF2 = Math.max(worst.foF2, Math.abs(map.foF2MHz(row.utcHour) - line(row.foF2MHz, Math.min(row.r12, 160))));
			worst.m3000 = Math.max(worst.m3000, Math.abs(map.m3000F2(row.utcHour) - Math.max(1.8, m3000)));
		}
		report.push(
			`PyIRI: ${rows.length} rows, foF2 ${worst.foF2.toExponential(1)} MHz, M(3000)F2 ${worst.m3000.toExponential(1)} (${floored} at the floor)`,
		);
		expect(worst.dip).toBeLessThan(1e-9); // the rows were asked at the field as it is now
		expect(Math.max(worst.foF2, worst.m3000)).toBeLessThan(1e-8); // ten decimals; beyond R12 = 100 their error doubles
	});
});

describe("the maps over the globe", () => {
	const EPOCH = 2027;
	const mapAt = (lat: number, lon: number, month = 3, r12 = 75): PointMap => {
		const where = position(lat, lon);
		return pointMap({ month, r12, position: where, modifiedDipDeg: magneticField(where, 300, EPOCH).modifiedDipDeg });
	};

	it("do not step at 180 degrees, at the poles or at midnight", () => {
		let compared = 0;
		for (let hour = 0; hour < 24; hour += 1.5) {
			for (let lat = -85; lat <= 85; lat += 10) {
				const [west, east] = [mapAt(lat, -180), mapAt(lat, 180 - 1e-9)];
				expect(Math.abs(west.foF2MHz(hour) - east.foF2MHz(hour))).toBeLessThan(1e-7);
				expect(Math.abs(west.m3000F2(hour) - east.m3000F2(hour))).toBeLessThan(1e-7);
				compared++;
			}
			for (const pole of [-90, 90]) {
				const here = mapAt(pole, 0);
				for (const lon of [-150, 60, 120]) {
					expect(Math.abs(mapAt(pole, lon).foF2MHz(hour) - here.foF2MHz(hour))).toBeLessThan(1e-7);
					// the modified dip runs into the pole as the root of cos(latitude) does, so a micro-degree is felt
					expect(Math.abs(mapAt(pole * (1 - 1e-12), lon).foF2MHz(hour) - here.foF2MHz(hour))).toBeLessThan(1e-4);
					compared++;
				}
			}
		}
		expect(compared).toBe(16 * (18 + 6));
		const map = mapAt(-33.9, 18.43);
		expect(map.foF2MHz(24)).toBe(map.foF2MHz(0));
		expect(map.foF2MHz(-1)).toBe(map.foF2MHz(23));
		for (let hour = 1; hour <= 24; hour++) expect(Math.abs(map.foF2MHz(hour) - map.foF2MHz(hour - 1e-9))).toBeLessThan(1e-7);
	});

	it("give sane numbers on a dense grid: every month, five sunspot numbers, every hour", () => {
		const foF2 = new Float64Array(24);
		const m3000 = new Float64Array(24);
		const ranges = { foF2: [Infinity, -Infinity], m3000: [Infinity, -Infinity] };
		const dips = new Map<string, number>();
		let compared = 0;
		for (let month = 1; month <= 12; month++) {
			for (const r12 of [0, 40, 100, 160, 250]) {
				const maps = monthMaps(month, r12);
				for (let lat = -90; lat <= 90; lat += 5) {
					for (let lon = -180; lon < 180; lon += 10) {
						const key = `${lat} ${lon}`;
						const modifiedDipDeg = dips.get(key) ?? magneticField(position(lat, lon), 300, EPOCH).modifiedDipDeg;
						dips.set(key, modifiedDipDeg);
						hourlyMapInto(maps, { latDeg: lat, lonDeg: lon, modifiedDipDeg }, foF2, m3000, 0);
						for (let hour = 0; hour < 24; hour++) {
							ranges.foF2 = [Math.min(ranges.foF2[0]!, foF2[hour]!), Math.max(ranges.foF2[1]!, foF2[hour]!)];
							ranges.m3000 = [Math.min(ranges.m3000[0]!, m3000[hour]!), Math.max(ranges.m3000[1]!, m3000[hour]!)];
							compared++;
						}
					}
				}
			}
		}
		expect(compared).toBe(12 * 5 * 37 * 36 * 24);
		report.push(
			`grid of ${compared}: foF2 ${ranges.foF2.map((v) => v.toFixed(2)).join(" to ")} MHz, M(3000)F2 ${ranges.m3000.map((v) => v.toFixed(2)).join(" to ")}`,
		);
		expect(ranges.foF2[0]).toBeGreaterThan(0.4); // NaN would have spread into the range
		expect(ranges.foF2[1]).toBeLessThan(25);
		expect(ranges.m3000[0]).toBeGreaterThanOrEqual(1.8);
		expect(ranges.m3000[1]).toBeLessThan(4.5);
	});

	it("hold foF2 above R12 = 160 and let M(3000)F2 go on, down to its floor (ITU-R P.533 s.3.4; own floor)", () => {
		const [at160, at200] = [mapAt(40, 10, 6, 160), mapAt(40, 10, 6, 200)];
		expect(at200.foF2MHz(12)).toBe(at160.foF2MHz(12));
		expect(at200.m3000F2(12)).toBeLessThan(at160.m3000F2(12));
		expect(mapAt(5, 100, 6, 400).m3000F2(8)).toBe(MEMORY.m3000F2Floor.value);
		expect(() => monthMaps(6, -1)).toThrow(/-1/);
		expect(() => monthMaps(6, Number.NaN)).toThrow(RangeError);
	});

	it("are the same to the bit one by one, by the hour and in bulk", () => {
		const places = Array.from({ length: 200 }, (_, i) => position(-90 + 0.9 * i, ((i * 37.3) % 360) - 180));
		const dips = places.map((where) => magneticField(where, 300, EPOCH).modifiedDipDeg);
		const points = {
			latDeg: Float64Array.from(places, ({ latDeg }) => latDeg),
			lonDeg: Float64Array.from(places, ({ lonDeg }) => lonDeg),
			modifiedDipDeg: Float64Array.from(dips),
		};
		const foF2 = new Float64Array(24 * places.length);
		const m3000 = new Float64Array(24 * places.length);
		hourlyMapsInto(monthMaps(9, 120), points, foF2, m3000);
		for (const [p, where] of places.entries()) {
			const map = pointMap({ month: 9, r12: 120, position: where, modifiedDipDeg: dips[p]! });
			for (let hour = 0; hour < 24; hour++) {
				expect(map.foF2MHz(hour)).toBe(foF2[24 * p + hour]);
				expect(map.m3000F2(hour)).toBe(m3000[24 * p + hour]);
			}
		}
	});
});

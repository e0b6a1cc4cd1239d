import { subsolarPoint } from "@skipwright/sphere";
import { position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { mapIonosphere } from "./mapIonosphere.ts";

/** Places all over the globe, poles and 180 degrees among them. */
const PLACES = Array.from({ length: 19 * 18 }, (_, i) => position(Math.floor(i / 18) * 10 - 90, (i % 18) * 20 - 180));

describe("mapIonosphere", () => {
	it("gives the same bits in every engine: a sum over 4 months, 342 places, all hours, as first computed under Node 26", () => {
		const view = new DataView(new ArrayBuffer(8));
		let [hash, count] = [0x811c9dc5, 0]; // FNV-1a of the numbers' bytes, low byte first
		for (const month of [1, 3, 6, 10]) {
			const ionosphere = mapIonosphere({ year: 2027, month, r12: 66 });
			for (const where of PLACES) {
				const { foF2MHz, m3000, foEMHz, zenithDeg, gyro300MHz, gyro100MHz } = ionosphere(where);
				for (const series of [foF2MHz, m3000, foEMHz, zenithDeg, [gyro300MHz, gyro100MHz]]) {
					for (let i = 0; i < series.length; i++) {
						view.setFloat64(0, series[i]!, true);
						for (let byte = 0; byte < 8; byte++) hash = Math.imul(hash ^ view.getUint8(byte), 0x01000193) >>> 0;
						expect(Number.isFinite(series[i])).toBe(true);
						count++;
					}
				}
			}
		}
		expect(count).toBe(4 * 342 * 98);
		expect(hash.toString(16)).toBe("ec36f917");
	});

	it("has no step at 180 degrees and one sky at a pole", () => {
		const ionosphere = mapIonosphere({ year: 2027, month: 9, r12: 80 });
		let compared = 0;
		for (let lat = -80; lat <= 80; lat += 20) {
			const [west, east] = [ionosphere(position(lat, -180)), ionosphere({ latDeg: lat, lonDeg: 180 - 1e-9 })];
			for (let hour = 0; hour < 24; hour++) {
				for (const name of ["foF2MHz", "m3000", "foEMHz", "zenithDeg"] as const) {
					expect(Math.abs(west[name][hour]! - east[name][hour]!)).toBeLessThan(1e-6);
					compared++;
				}
			}
		}
		for (const pole of [-90, 90]) {
			const [one, other] = [ionosphere(position(pole, 0)), ionosphere(position(pole, 137))];
			for (let hour = 0; hour < 24; hour++) expect(Math.abs(one.foF2MHz[hour]! - other.foF2MHz[hour]!)).toBeLessThan(1e-6);
			expect(Math.abs(one.gyro100MHz - other.gyro100MHz)).toBeLessThan(1e-9);
		}
		expect(compared).toBe(9 * 24 * 4);
	});

	it("stands under the sun of the month's 15th, and under the field that it is told", () => {
		const noon = subsolarPoint(Date.UTC(2027, 2, 15, 12));
		expect(mapIonosphere({ year: 2027, month: 3, r12: 80 })(noon).zenithDeg[12]).toBeLessThan(1e-5);
		const where = position(-22.7, -45);
		const [now, then] = [undefined, 1960].map((fieldEpoch) =>
			mapIonosphere({ year: 2027, month: 3, r12: 80, ...(fieldEpoch === undefined ? {} : { fieldEpoch }) })(where),
		);
		expect(Math.abs(now!.foF2MHz[12]! - then!.foF2MHz[12]!)).toBeGreaterThan(0.1); // the South Atlantic's field has changed most
	});

	it("refuses what is none", () => {
		for (const wanted of [
			{ year: 2027, month: 13, r12: 80 },
			{ year: 2027, month: 3, r12: -1 },
			{ year: 1850, month: 3, r12: 80 },
		]) {
			expect(() => mapIonosphere(wanted)).toThrow(RangeError);
		}
	});
});

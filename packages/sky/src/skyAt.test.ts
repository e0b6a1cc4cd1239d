import { magneticField } from "@skipwright/sphere";
import { parsePosition, position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { mapRows } from "../truth/readMaps.ts";
import { mapIonosphere } from "./mapIonosphere.ts";
import { skyAt } from "./skyAt.ts";

describe("skyAt", () => {
	it("meets the maps' check rows with their epoch (maps-2020.csv)", () => {
		const rows = mapRows("maps-2020.csv");
		expect(rows.length).toBe(240);
		for (const row of rows) {
			const month = `2020-${String(row.month).padStart(2, "0")}`;
			const sky = skyAt({ position: row.where, month, utcHour: row.utcHour, r12: row.r12, fieldEpoch: row.fieldEpoch });
			expect(Math.abs(sky.foF2MHz - row.foF2MHz)).toBeLessThan(0.02);
			expect(Math.abs(sky.m3000F2 - row.m3000F2)).toBeLessThan(0.02);
			expect(Math.abs(sky.modifiedDipDeg - row.modifiedDipDeg)).toBeLessThan(0.01);
		}
	});

	it("takes the field of the month's middle unless told otherwise, 300 km up", () => {
		const ask = { position: parsePosition("-33.9,18.43"), month: "2027-03", utcHour: 12, r12: 66 };
		const field = magneticField(ask.position, 300, 2027 + 73 / 365);
		expect(skyAt(ask)).toMatchObject({ dipDeg: field.dipDeg, modifiedDipDeg: field.modifiedDipDeg, gyroMHz: field.gyroMHz });
		expect(skyAt({ ...ask, fieldEpoch: 1960 }).foF2MHz).not.toBe(skyAt(ask).foF2MHz);
	});

	it("is the same to the bit as the ionosphere that paths are asked over", () => {
		const ionosphere = mapIonosphere({ year: 2027, month: 3, r12: 66 });
		let compared = 0;
		for (const where of [position(0, 0), position(-33.9, 18.43), position(70, -180), position(90, 0), position(-90, 12)]) {
			const day = ionosphere(where);
			for (let utcHour = 0; utcHour < 24; utcHour++) {
				const sky = skyAt({ position: where, month: "2027-03", utcHour, r12: 66 });
				expect([sky.foF2MHz, sky.m3000F2, sky.foEMHz, sky.gyroMHz]).toEqual([
					day.foF2MHz[utcHour],
					day.m3000[utcHour],
					day.foEMHz[utcHour],
					day.gyro300MHz,
				]);
				compared++;
			}
			expect(day.gyro100MHz).toBe(magneticField(where, 100, 2027 + 73 / 365).gyroMHz);
		}
		expect(compared).toBe(5 * 24);
	});

	it("refuses an hour, month, sunspot number or epoch that is none", () => {
		const ask = { position: position(0, 0), month: "2027-03", utcHour: 12, r12: 66 };
		for (const utcHour of [-0.5, 24.5, Number.NaN]) expect(() => skyAt({ ...ask, utcHour })).toThrow(RangeError);
		expect(() => skyAt({ ...ask, month: "March" })).toThrow(SyntaxError);
		expect(() => skyAt({ ...ask, r12: -5 })).toThrow(RangeError);
		expect(() => skyAt({ ...ask, fieldEpoch: 1850 })).toThrow(RangeError);
	});
});

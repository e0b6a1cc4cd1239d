import { afterAll, describe, expect, it } from "vitest";
import { seaAreaA2Km } from "./groundWaveSeaArea.ts";

const KM_PER_NMI = 1.852;

const lines: string[] = [];
afterAll(() => console.log(lines.join("\n")));

describe("sea area A2 by IMO A.801(19), ITU-R M.1467-1", () => {
	// Worked out from the same criteria by code apart from this.
	it.each([
		[40, 774],
		[50, 598],
		[60, 426],
		[70, 268],
		[80, 136],
	])("noise of %d dB gives %d km", (faDb, km) => {
		const found = seaAreaA2Km(faDb);
		lines.push(`Fa ${faDb} dB: ${found.toFixed(0)} km, ${(found / KM_PER_NMI).toFixed(0)} nmi (table ${km} km)`);
		expect(Math.abs(found / km - 1)).toBeLessThan(0.01);
	});

	it("lies among the printed ranges, 100 to 230 nautical miles, for noise of 60 to 75 dB; 60 dB itself is the upper one to the mile or so", () => {
		const miles = [60, 60.5, 65, 70, 75].map((faDb) => seaAreaA2Km(faDb) / KM_PER_NMI);
		expect(miles).toEqual(miles.toSorted((a, b) => b - a));
		expect(miles[0]).toBeLessThan(232);
		expect(miles[1]).toBeLessThan(230);
		expect(miles.at(-1)).toBeGreaterThan(100);
	});
});

import { describe, expect, it } from "vitest";
import { f2Spread } from "./mufSpread.ts";

describe("spread of the F2 layer's MUF, own table", () => {
	it("goes by latitude and local time, in classes", () => {
		expect(f2Spread(0, false, 22)).toEqual({ lower: 0.81, upper: 1.27 });
		expect(f2Spread(-29.9, false, 3.9)).toEqual({ lower: 0.81, upper: 1.27 });
		expect(f2Spread(30, false, 4)).toEqual({ lower: 0.88, upper: 1.13 });
		expect(f2Spread(-45, false, 12)).toEqual({ lower: 0.9, upper: 1.11 });
		expect(f2Spread(60, false, 16)).toEqual({ lower: 0.78, upper: 1.25 });
	});

	it("takes the highest latitudes' row for a path that comes to geomagnetic latitude 60", () => {
		for (let hour = 0; hour < 24; hour++) expect(f2Spread(20, true, hour)).toEqual(f2Spread(70, false, hour));
	});
});

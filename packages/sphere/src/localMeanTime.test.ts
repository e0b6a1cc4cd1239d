import { describe, expect, it } from "vitest";
import { localMeanTimeMin } from "./localMeanTime.ts";

describe("localMeanTimeMin", () => {
	it("is four minutes a degree, within the day", () => {
		const at = (lonDeg: number, utcMin: number) => localMeanTimeMin(lonDeg, utcMin);
		expect([at(0, 720), at(15, 720), at(-15, 0), at(-180, 0), at(179, 1439), at(18.5, 0), at(0, 1440), at(-90, -60)]).toEqual([
			720, 780, 1380, 720, 715, 74, 0, 1020,
		]);
	});
});

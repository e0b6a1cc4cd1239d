import { expect, test } from "vitest";
import { logBesselI0 } from "./logBessel.ts";

/** Power series of I0, with the largest term taken out. */
function series(x: number): number {
	let [sum, term] = [1, 1];
	for (let k = 1; k < 2_000; k++) {
		term *= (x / (2 * k)) ** 2;
		sum += term;
		if (term < sum * 1e-17) break;
	}
	return Math.log(sum);
}

test("log I0 is the series' within 5e-7 from 0 to 500", () => {
	let compared = 0;
	for (let x = 0; x <= 500; x += 0.05) {
		expect(Math.abs(logBesselI0(x) - series(x))).toBeLessThan(5e-7);
		compared++;
	}
	expect(compared).toBeGreaterThan(9_990);
});

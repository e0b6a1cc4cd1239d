import { expect, it } from "vitest";
import { phaseAngle } from "./phaseAngle.ts";

it("phaseAngle keeps within 3e-8 of the arc tangent, all round", () => {
	let worst = 0;
	for (let n = 0; n < 100_000; n++) {
		const angle = -Math.PI + (2 * Math.PI * (n + 0.5)) / 100_000;
		const size = 10 ** ((n % 13) - 6);
		worst = Math.max(worst, Math.abs(phaseAngle(size * Math.sin(angle), size * Math.cos(angle)) - angle));
	}
	expect(worst).toBeLessThan(3e-8);
	expect([phaseAngle(0, 0), phaseAngle(0, 2), phaseAngle(3, 0), phaseAngle(-3, 0), phaseAngle(0, -1)]).toEqual([
		0,
		0,
		Math.PI / 2,
		-Math.PI / 2,
		Math.PI,
	]);
});

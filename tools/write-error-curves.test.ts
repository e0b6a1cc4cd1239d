import { expect, test } from "vitest";
import { errorCurveSvg } from "./write-error-curves.ts";

test("A curve has a point for each count with errors, where its rate and ratio lie, and every name in its legend", () => {
	const counts = [
		{ ebN0Db: 5, bits: 1_000, wrong: 100 },
		{ ebN0Db: 10, bits: 1_000, wrong: 1 },
		{ ebN0Db: 15, bits: 1_000, wrong: 0 },
	];
	const svg = errorCurveSvg("Title", 0, 20, [{ name: "halves", rate: (db) => 0.5 / (1 + db) }], [{ name: "counted", counts }]);
	expect(svg).not.toContain("NaN");
	for (const words of ["Title", "halves", "counted", "1e-5"]) expect(svg).toContain(`>${words}</text>`);
	// 640 wide from 64 for 20 dB, 372 high from 40 for five powers of ten
	expect(svg).toContain(`<path d="M224 114.4L384 263.2" fill="none"`);
	expect(svg.match(/<path transform="translate/g)).toHaveLength(2 + 1);
});

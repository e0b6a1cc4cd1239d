import { readFileSync } from "node:fs";
import { join } from "node:path";
import { directory } from "@skipwright/directory";
import { isoDate, readCsv } from "@skipwright/units";
import { expect, test } from "vitest";
import { checkList } from "./checkList.ts";
import { readList } from "./list.ts";
import { profileNamed } from "./shippedProfiles.ts";

const EXAMPLES = join(import.meta.dirname, "..", "..", "..", "examples");
const text = (name: string) => readFileSync(join(EXAMPLES, name), "utf8");

/** The seeded slips are declared in the file beside the list; a finding elsewhere is a false alarm. */
test("the example's as-found list: every seeded slip under its code, no stop or fix on a right row", () => {
	const profile = profileNamed("twin-180")!;
	const rows = readList("as-found", text("south-atlantic.as-found.csv"), profile);
	const shape = { required: ["bank", "place", "line", "code", "severity", "what"] };
	const seeded = readCsv("seeded", text("south-atlantic.seeded.csv"), shape).rows.map(({ cells }) => ({
		key: `${cells["line"]} ${cells["code"]} ${cells["severity"]}`,
		severity: cells["severity"],
	}));
	const found = checkList(rows, { profile, directory: directory(), on: isoDate("2026-11-24"), region: null, amateurLicence: false });
	const foundKeys = found.map(({ line, code, severity }) => `${line ?? ""} ${code} ${severity}`);
	const seededKeys = seeded.map(({ key }) => key);

	const missed = seededKeys.filter((key) => !foundKeys.includes(key));
	const falseAlarms = foundKeys.filter((key) => !seededKeys.includes(key) && !key.endsWith(" mind"));
	const count = (severity: string) => {
		const declared = seeded.filter((slip) => slip.severity === severity).length;
		return `${severity} ${declared} seeded, ${found.filter((finding) => finding.severity === severity).length} found`;
	};
	console.log(`${rows.length} rows: ${count("stop")}; ${count("fix")}; ${count("mind")} (minds also on right rows: stale listings)`);

	expect(rows.length).toBeGreaterThan(195);
	expect(seeded.length).toBeGreaterThanOrEqual(25);
	expect(missed).toEqual([]);
	expect(falseAlarms).toEqual([]);
});

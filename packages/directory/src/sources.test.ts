import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readTimetable } from "./charts.ts";
import { FAX_TIMETABLE_CSV } from "./data.gen.ts";
import { directory } from "./directory.ts";

/** Beginnings of source clauses as data/SOURCES.md lists them. */
function publications(): readonly string[] {
	const text = readFileSync(join(import.meta.dirname, "../data/SOURCES.md"), "utf8");
	const rows = text.slice(text.indexOf("## Publications")).split("\n");
	const cells = rows.filter((row) => row.startsWith("| ")).map((row) => row.split("|")[1] ?? "");
	return cells.slice(2).flatMap((cell) => cell.split(";").map((name) => name.trim()));
}

describe("data/SOURCES.md", () => {
	it("names every publication that a source cell names, and no other", () => {
		const names = publications();
		const clauses = [...directory().stations, ...directory().listings, ...readTimetable("t", FAX_TIMETABLE_CSV)]
			.flatMap(({ source }) => source.split("; "))
			.filter((clause) => !/^(note: |last logged |no log date given$)/.test(clause) && !/from memory|\(memory/.test(clause))
			.map((clause) =>
				clause.replace(/^[A-Za-z][A-Za-z ,]*: /, "").replace(/^(also in|also|agrees with|frequency and weather times in) /, ""),
			);
		expect(clauses.length).toBeGreaterThan(1000);
		const unnamed = clauses.filter((clause) => !names.some((name) => clause.startsWith(name) || clause.startsWith(`a ${name}`)));
		expect([...new Set(unnamed)]).toEqual([]);
		const unused = names.filter((name) => !clauses.some((clause) => clause.startsWith(name) || clause.startsWith(`a ${name}`)));
		expect(unused).toEqual([]);
	});
});

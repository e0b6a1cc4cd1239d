import { readFileSync } from "node:fs";
import { join } from "node:path";
import { directory } from "@skipwright/directory";
import { directoryFor, readJob, references, resolveJob } from "@skipwright/job";
import { describe, expect, it } from "vitest";
import { doubts } from "./doubts.ts";

const EXAMPLES = join(import.meta.dirname, "..", "..", "..", "examples");
const read = (name: string) => readFileSync(join(EXAMPLES, name), "utf8");
const JOB = readJob("job", read("south-atlantic.job.json"));
const EXAMPLE = resolveJob(JOB, new Map(references(JOB).map((name) => [name, read(name)])));
const of = (resolved: typeof EXAMPLE) => doubts(resolved, directoryFor(resolved, directory()));

describe("doubts", () => {
	it("has none about the example", () => {
		expect(of(EXAMPLE)).toEqual([]);
	});

	it("asks about a leg that no vessel makes, as with latitude and longitude swapped", () => {
		const points = EXAMPLE.voyage.points.map((point) =>
			point.name === "Horta" ? { ...point, position: { latDeg: -28.63, lonDeg: 138.53 as number } } : point,
		);
		expect(of({ ...EXAMPLE, voyage: { points } as typeof EXAMPLE.voyage })).toEqual([
			expect.stringMatching(/^Fernando de Noronha to Horta: \d+ nautical miles in 216 hours; are the dates right, and latitude before/),
		]);
	});

	it("names a ban that bans nothing, and says what no licence means", () => {
		const bans = ["us-kodiak", "us-kodiac", "ap17/401", "ap17/4146", "guard/2182", "ap17/99999"];
		const job = { ...JOB, bans, vessel: { ...JOB.vessel, licences: { ...JOB.vessel.licences, ship: false } } };
		expect(of({ ...EXAMPLE, job })).toEqual([
			expect.stringMatching(/banned "us-kodiac"/),
			expect.stringMatching(/banned "guard\/2182": held all the same/),
			expect.stringMatching(/banned "ap17\/99999"/),
			expect.stringMatching(/no ship station licence/),
		]);
	});
});

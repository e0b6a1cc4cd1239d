import { destination } from "@skipwright/sphere";
import { position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { smoothIonosphere } from "../truth/madeUpIonosphere.ts";
import { coastAntenna } from "./antennaCoast.ts";
import { vesselAntenna } from "./antennaVessel.ts";
import { type Circuit, reach } from "./reach.ts";
import { reachTable, reachTables, type TableQuestion, type TableRow, type VesselSample } from "./reachTable.ts";
import { HOURS_PER_DAY, skyMonth } from "./skyWaveMonth.ts";
import type { Signal, Terminal } from "./terminal.ts";

const march = { month: skyMonth({ year: 2027, month: 3, sunspots: 90 }), ionosphere: smoothIonosphere(2027, 3) };
const december = {
	month: skyMonth({ year: 2027, month: 12, sunspots: 10, winterAnomaly: true }),
	ionosphere: smoothIonosphere(2027, 12),
};

const vessel = { antenna: vesselAntenna({ lengthM: 14 }), powerW: 150, manMade: "residential" } as const;
const coast = (latDeg: number, lonDeg: number, powerW: number): Terminal => ({
	position: position(latDeg, lonDeg),
	antenna: coastAntenna(),
	powerW,
	manMade: "rural",
});
/** Beside the first station, and in all else unlike it. */
const neighbour: Terminal = {
	...coast(50.1, -5.7, 60),
	antenna: { ...vesselAntenna({ lengthM: 6, kind: "whip" }), directivityDb: (elevationDeg) => 2 - elevationDeg / 30 },
	manMade: "city",
};
const stations = [coast(50.1, -5.7, 1000), coast(-33.9, 18.5, 400), coast(-36.9, 174.8, 5000), coast(64.1, -21.9, 150), neighbour];

const signal = (fMHz: number, emission = "J3E"): Signal => ({ fMHz, emission, grade: emission === "J3E" ? "safety" : "just-usable" });
const SIGNALS = [
	signal(0.518, "F1B"),
	signal(2.182),
	signal(4.125),
	signal(8.0381, "F3C"),
	signal(8.0381),
	signal(12.577, "F1B"),
	signal(17.146, "F3C"),
	signal(26.1, "A3E"),
];
const rows: readonly TableRow[] = stations.flatMap((_, station) => SIGNALS.map((one) => ({ station, signal: one })));
/** By a station (where ground waves hold), near, between the forms and far; two of one month, two of another. */
const samples: readonly VesselSample[] = [
	{ position: destination(stations[0]!.position, 240, 90), ...march },
	{ position: position(27.5, -16.2), ...march },
	{ position: position(-15.9, -5.7), ...december },
	{ position: position(-44, -176), ...december },
];
const question: TableQuestion = { vessel, stations, rows, samples, bothWays: true };

/** What `reach` says of one row at one sample, hour by hour. */
function chances({ station, signal: sent }: TableRow, { position: where, month, ionosphere }: VesselSample, way: "toVessel" | "toCoast") {
	const [coastal, aboard]: readonly Terminal[] = [stations[station]!, { ...vessel, position: where }];
	const ends: Pick<Circuit, "from" | "to"> = way === "toVessel" ? { from: coastal!, to: aboard! } : { from: aboard!, to: coastal! };
	const [row] = reach({ ...ends, month, ionosphere }, [sent]);
	return row!.hours!.map(({ chance }) => chance);
}

describe("reach table", () => {
	it("holds what reach says, cell by cell: to the vessel exactly, to the coast but for the path's other sense", () => {
		const { toVessel, toCoast } = reachTable(question);
		let worst = 0;
		let between = 0;
		let compared = 0;
		for (const [rowIndex, row] of rows.entries()) {
			for (const [sampleIndex, sample] of samples.entries()) {
				const at = (rowIndex * samples.length + sampleIndex) * HOURS_PER_DAY;
				for (const [hour, chance] of chances(row, sample, "toVessel").entries()) {
					expect(toVessel[at + hour]).toBe(chance);
					if (chance > 0 && chance < 1) between++;
					compared++;
				}
				for (const [hour, chance] of chances(row, sample, "toCoast").entries()) {
					worst = Math.max(worst, Math.abs(toCoast![at + hour]! - chance));
					if (chance > 0 && chance < 1) between++;
					compared++;
				}
			}
		}
		expect(compared).toBe(2 * rows.length * samples.length * HOURS_PER_DAY);
		expect(toVessel.length + toCoast!.length).toBe(compared);
		expect(between).toBeGreaterThan(1000);
		expect(worst).toBeLessThan(1e-9);
	});

	it("gives one way alone when only that is asked, the same numbers", () => {
		const one = reachTable({ ...question, bothWays: false });
		expect(one.toCoast).toBeNull();
		expect(one.toVessel).toEqual(reachTable(question).toVessel);
	});

	it("does not change by what it drops early, however strong or weak, near or far, noisy or quiet", () => {
		const anywhere = fc
			.tuple(fc.constantFrom(-90, -35.25, 0, 48.5, 90), fc.double({ min: -180, max: 180, noNaN: true }))
			.map(([lat, lon]) => position(lat, lon));
		const level = fc.constantFrom("city", "residential", "rural", "quietRural");
		let cells = 0;
		let heard = 0;
		fc.assert(
			fc.property(
				fc.array(fc.tuple(anywhere, fc.constantFrom(0.1, 10, 1000, 1e6), level), { minLength: 2, maxLength: 2 }),
				fc.tuple(anywhere, fc.constantFrom(0.1, 150, 1e5), level),
				fc.constantFrom(march, december),
				fc.constantFrom(-60, 0, 25),
				fc.constantFrom(0.001, 800, 7500, null),
				(coasts, [where, powerW, manMade], sky, strongerDb, km) => {
					const terminals = coasts.map(([at, watts, noise]) => ({ ...coast(at.latDeg, at.lonDeg, watts), manMade: noise }));
					const asked: TableQuestion = {
						vessel: { ...vessel, powerW, manMade },
						stations: terminals,
						rows: terminals.flatMap((_, station) =>
							[0.4, 1.7, 5.2, 9.1, 14, 30].flatMap((fMHz) =>
								["J3E", "F1B", "A1A"].map((emission) => ({ station, signal: signal(fMHz, emission) })),
							),
						),
						samples: [{ position: km === null ? where : destination(terminals[0]!.position, 50, km), ...sky }],
						bothWays: true,
					};
					const [quick, full] = [true, false].map((dropEarly) => reachTables({ ...asked, dropEarly }, [strongerDb])[0]);
					expect(quick).toEqual(full);
					for (const chance of [...full!.toVessel, ...full!.toCoast!]) {
						cells++;
						if (chance > 0) heard++;
					}
				},
			),
			{ seed: 5, numRuns: 60 },
		);
		expect(cells).toBe(60 * 2 * 36 * HOURS_PER_DAY);
		expect(heard).toBeGreaterThan(cells / 10);
		expect(heard).toBeLessThan(cells / 2);
	});

	it("only gains by stronger signals", () => {
		const tables = reachTables(question, [-20, -3, 0, 6, 30]);
		expect(tables[2]).toMatchObject(reachTable(question));
		let gained = 0;
		let compared = 0;
		for (let step = 1; step < tables.length; step++) {
			for (const way of ["toVessel", "toCoast"] as const) {
				for (const [cell, chance] of tables[step]![way]!.entries()) {
					const before = tables[step - 1]![way]![cell]!;
					if (!(chance >= before)) expect.fail(`${way} ${cell}: ${before}, then ${chance} with stronger signals`);
					if (chance > before) gained++;
					compared++;
				}
			}
		}
		expect(compared).toBe(4 * 2 * rows.length * samples.length * HOURS_PER_DAY);
		expect(gained).toBeGreaterThan(compared / 10);
	});

	it("does not depend on the order of rows, samples and stations, nor on what else is asked", () => {
		const whole = reachTable(question);
		const turned = reachTable({
			...question,
			stations: stations.toReversed(),
			rows: rows.toReversed().map((row) => ({ ...row, station: stations.length - 1 - row.station })),
			samples: samples.toReversed(),
		});
		const one = reachTable({ ...question, rows: [rows[13]!], samples: [samples[2]!] });
		const cellsOf = (table: typeof whole, way: "toVessel" | "toCoast", row: number, sample: number) => {
			const at = (row * samples.length + sample) * HOURS_PER_DAY;
			return table[way]!.slice(at, at + HOURS_PER_DAY);
		};
		let compared = 0;
		for (const way of ["toVessel", "toCoast"] as const) {
			for (let row = 0; row < rows.length; row++) {
				for (let sample = 0; sample < samples.length; sample++) {
					const back = cellsOf(turned, way, rows.length - 1 - row, samples.length - 1 - sample);
					expect(back).toEqual(cellsOf(whole, way, row, sample));
					compared++;
				}
			}
			expect(one[way]).toEqual(cellsOf(whole, way, 13, 2));
		}
		expect(compared).toBe(2 * rows.length * samples.length);
	});

	it("has no number for an emission of which nothing is known, nor outside 0.4 to 30 MHz, and leaves the others alone", () => {
		const strange = [signal(8.4, "P0N"), signal(0.39), signal(30.1)].map((one) => ({ station: 0, signal: one }));
		const known = reachTable({ ...question, rows: [rows[2]!] });
		const { toVessel, toCoast } = reachTable({ ...question, rows: [strange[0]!, rows[2]!, strange[1]!, strange[2]!] });
		const cells = samples.length * HOURS_PER_DAY;
		for (const [all, alone] of [
			[toVessel, known.toVessel],
			[toCoast!, known.toCoast!],
		] as const) {
			expect(all.length).toBe(4 * cells);
			expect(all.slice(cells, 2 * cells)).toEqual(alone);
			expect([...all.slice(0, cells), ...all.slice(2 * cells)].every(Number.isNaN)).toBe(true);
		}
	});

	it("names a row whose station is none", () => {
		for (const station of [-1, 5, 0.5]) {
			expect(() => reachTable({ ...question, rows: [rows[0]!, { ...rows[0]!, station }] })).toThrow(
				new RangeError(`Cannot place row 1: there is no station ${station} of 5`),
			);
		}
	});

	it("is empty where nothing is asked", () => {
		expect(reachTable({ ...question, rows: [] }).toVessel).toHaveLength(0);
		expect(reachTable({ ...question, samples: [] }).toCoast).toHaveLength(0);
	});
});

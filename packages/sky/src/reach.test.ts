import { destination, distanceKm } from "@skipwright/sphere";
import { type Position, position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { coastAntenna } from "./antennaCoast.ts";
import { vesselAntenna } from "./antennaVessel.ts";
import { MEMORY, type MemoryId } from "./fromMemory.ts";
import { mapIonosphere } from "./mapIonosphere.ts";
import { type ReachHour, type ReachRow, reach } from "./reach.ts";
import { reachTable } from "./reachTable.ts";
import { skyMonth } from "./skyWaveMonth.ts";
import type { Signal, Terminal } from "./terminal.ts";

const HOURS = 24;
const sky = (year: number, month: number, r12: number) => ({
	month: skyMonth({ year, month, sunspots: r12 }),
	ionosphere: mapIonosphere({ year, month, r12 }),
});
const march = sky(2027, 3, 66);

const coast = (where: Position, powerW = 1000): Terminal => ({ position: where, antenna: coastAntenna(), powerW, manMade: "rural" });
const vessel = (where: Position, powerW = 150): Terminal => ({
	position: where,
	antenna: vesselAntenna({ lengthM: 12 }),
	powerW,
	manMade: "residential",
});
const speech = (fMHz: number): Signal => ({ fMHz, emission: "J3E", grade: "safety" });
const MARINE = [2.182, 4.146, 8.294, 12.353, 18.825].map(speech);

const horta = position(38.53, -28.62);
const hoursOf = ({ hours }: ReachRow): readonly ReachHour[] => hours ?? expect.fail("the emission is known");

describe("one circuit", () => {
	test("its path loses the same both ways, by every hour, frequency and length", () => {
		let worst = 0;
		let compared = 0;
		for (const [km, bearingDeg] of [
			[30, 10],
			[700, 95],
			[2600, 200],
			[4100, 265],
			[7900, 320],
			[11_500, 180],
			[17_000, 60],
		] as const) {
			const there = destination(horta, bearingDeg, km);
			const out = reach({ from: coast(horta), to: vessel(there), ...march }, MARINE);
			const back = reach({ from: vessel(there), to: coast(horta), ...march }, MARINE);
			for (const [i, row] of out.entries()) {
				for (const [hour, { why, mufMHz }] of hoursOf(row).entries()) {
					const other = hoursOf(back[i]!)[hour]!;
					if (why.way !== other.why.way) continue; // unlike noises and powers may favour the other way round
					worst = Math.max(worst, Math.abs(why.sky.pathDb - other.why.sky.pathDb), Math.abs(mufMHz - other.mufMHz));
					expect(other.why.groundFieldDb).toBeCloseTo(why.groundFieldDb!, 9);
					compared++;
				}
			}
		}
		expect(compared).toBeGreaterThan(0.9 * 7 * MARINE.length * HOURS);
		expect(worst).toBeLessThan(1e-6);
	});

	test("its signal adds up: what is sent, its path, the noise and the need make ratio and chance", () => {
		let compared = 0;
		for (const km of [150, 2000, 12_000]) {
			for (const row of reach({ from: coast(horta), to: vessel(destination(horta, 250, km)), ...march }, MARINE)) {
				for (const { by, signalDbw, noiseDbw, snrDb, chance, neededDb, why } of hoursOf(row)) {
					const isGround = by === "ground wave";
					const { sending, sky: wave, noise } = why;
					if (!isGround) expect(signalDbw).toBeCloseTo(sending.skyPowerDbw + wave.pathDb, 9);
					expect(noiseDbw).toBeCloseTo(noise.medianDb + (isGround ? sending.groundNoiseDbw : sending.skyNoiseDbw), 9);
					expect(snrDb).toBeCloseTo(signalDbw - noiseDbw, 9);
					expect(chance).toBe(Math.max(why.skyChance, why.groundChance));
					if (chance > 0 && chance < 1) expect(chance > 0.5).toBe(snrDb > neededDb);
					compared++;
				}
			}
		}
		expect(compared).toBe(3 * MARINE.length * HOURS);
	});

	test("more power never makes it worse, and makes much of it better; the chance is within 0 and 1", () => {
		const powers = [1, 10, 150, 1000, 5000, 100_000];
		let better = 0;
		let compared = 0;
		for (const km of [300, 1500, 4000, 9500]) {
			const there = vessel(destination(horta, 250, km));
			const days = powers.map((powerW) => reach({ from: coast(horta, powerW), to: there, ...march }, MARINE).map(hoursOf));
			for (let power = 1; power < powers.length; power++) {
				for (let i = 0; i < MARINE.length; i++) {
					for (let hour = 0; hour < HOURS; hour++) {
						const [less, more] = [days[power - 1]![i]![hour]!.chance, days[power]![i]![hour]!.chance];
						expect(more).toBeGreaterThanOrEqual(less);
						expect(more).toBeLessThanOrEqual(1);
						expect(less).toBeGreaterThanOrEqual(0);
						if (more > less) better++;
						compared++;
					}
				}
			}
		}
		expect(compared).toBe(4 * 5 * MARINE.length * HOURS);
		expect(better).toBeGreaterThan(compared / 4);
	});

	test("over land it has no ground wave", () => {
		const near = vessel(destination(horta, 250, 100));
		const [overSea] = reach({ from: coast(horta), to: near, ...march }, [speech(2.182)]);
		const [overLand] = reach({ from: coast(horta), to: near, ...march, overSea: false }, [speech(2.182)]);
		expect(hoursOf(overSea!).every(({ by, why }) => by === "ground wave" && why.groundChance > 0.9)).toBe(true);
		expect(hoursOf(overLand!).every(({ by, why }) => by === "sky wave" && why.groundFieldDb === null && why.groundChance === 0)).toBe(true);
		expect(overLand!.basis).not.toContain("groundWaveFading");
	});

	test("of an emission of which nothing is known, and outside 0.4 to 30 MHz, it tells nothing, and of the others all the same", () => {
		const known = speech(8.294);
		const rows = reach({ from: coast(horta), to: vessel(position(30, -40)), ...march }, [
			{ ...known, emission: "P0N" },
			known,
			{ ...known, fMHz: 0.2 },
			{ ...known, fMHz: 31 },
		]);
		expect(rows.map(({ hours, basis }) => [hours === null, basis.length === 0])).toEqual([
			[true, true],
			[false, false],
			[true, true],
			[true, true],
		]);
	});
});

describe("the worse direction", () => {
	test("is the yacht's call to a coast of 1 kW, and to the yacht where she lies in a city's noise and the coast has her power", () => {
		const samples = [600, 1500, 3000].map((km) => ({ position: destination(horta, 255, km), ...march }));
		const rows = MARINE.map((signal) => ({ station: 0, signal }));
		const worse = [
			{ vessel: vessel(horta), stations: [coast(horta)] },
			{ vessel: { ...vessel(horta), manMade: "city" as const }, stations: [coast(horta, 150)] },
		].map((ends) => {
			const { toVessel, toCoast } = reachTable({ ...ends, rows, samples, bothWays: true });
			expect(toVessel.length).toBe(MARINE.length * samples.length * HOURS);
			return {
				outward: [...toVessel].filter((chance, i) => chance < toCoast![i]!).length,
				back: [...toVessel].filter((chance, i) => chance > toCoast![i]!).length,
			};
		});
		expect(worse[0]!.back).toBeGreaterThan(200);
		expect(worse[0]!.outward).toBe(0);
		expect(worse[1]!.outward).toBeGreaterThan(200);
		expect(worse[1]!.back).toBe(0);
	});
});

describe("places on the globe", () => {
	/** Signals by sky wave at both places, hour by hour, and how far apart. */
	function apart(from: Position, one: Position, other: Position): readonly number[] {
		const [a, b] = [one, other].map((to) => reach({ from: coast(from), to: vessel(to), ...march }, MARINE).map(hoursOf));
		return a!.flatMap((hours, i) => hours.map((hour, at) => Math.abs(hour.why.sky.pathDb - b![i]![at]!.why.sky.pathDb)));
	}

	test("longitude 180 is longitude -180, and a path across it goes on smoothly", () => {
		const suva = position(-18.1, 178.4);
		const exact = [-180, 180].map((lonDeg) => reach({ from: coast(suva), to: vessel(position(-25, lonDeg)), ...march }, MARINE));
		expect(exact[0]).toEqual(exact[1]);
		const steps = [-40, -25, 0, 15].flatMap((lat) =>
			apart(suva, position(lat, 179.9999), position(lat, -179.9999)).map((differenceDb) => differenceDb),
		);
		expect(steps.length).toBe(4 * MARINE.length * HOURS);
		// the method has steps of its own, where a mode is dropped: few may fall just here
		expect(steps.filter((differenceDb) => differenceDb > 0.02).length).toBeLessThanOrEqual(2);
	});

	test("a pole is one place whatever its longitude, and near it nothing jumps", () => {
		for (const pole of [90, -90]) {
			const ways = [0, 77, -150].map((lonDeg) => reach({ from: coast(horta), to: vessel(position(pole, lonDeg)), ...march }, MARINE));
			let compared = 0;
			for (const other of ways.slice(1)) {
				for (const [i, row] of other.entries()) {
					for (const [hour, { signalDbw, noiseDbw, chance }] of hoursOf(row).entries()) {
						const first = hoursOf(ways[0]![i]!)[hour]!;
						expect(Math.abs(signalDbw - first.signalDbw)).toBeLessThan(1e-6);
						expect(Math.abs(noiseDbw - first.noiseDbw)).toBeLessThan(1e-6);
						expect(Math.abs(chance - first.chance)).toBeLessThan(1e-6);
						compared++;
					}
				}
			}
			expect(compared).toBe(2 * MARINE.length * HOURS);
			const across = apart(horta, position(pole - Math.sign(pole) * 1e-4, 10), position(pole - Math.sign(pole) * 1e-4, -170));
			expect(across.filter((differenceDb) => differenceDb > 0.02).length).toBeLessThanOrEqual(2);
		}
	});

	test("the sender's own place, its antipode and both poles have figures", () => {
		const antipode = position(-38.53, 180 - 28.62);
		expect(distanceKm(horta, antipode)).toBeGreaterThan(20_000);
		for (const to of [horta, antipode, position(90, 0), position(-90, 0)]) {
			for (const row of reach({ from: coast(horta), to: vessel(to), ...march }, MARINE)) {
				expect(hoursOf(row).every(({ snrDb, chance, mufMHz }) => Number.isFinite(snrDb) && chance >= 0 && mufMHz > 0)).toBe(true);
			}
		}
	});
});

describe("a dense grid of inputs", () => {
	const PLACES = [-90, -60, -33.9, -5, 0, 28, 47.5, 68, 90].flatMap((lat) =>
		[-180, -120.5, -45, 0, 60, 139.5].map((lon) => position(lat, lon)),
	);
	const EMISSIONS = ["J3E", "H3E", "R3E", "A3E", "A1A", "F1B", "F3C"];
	const MHZ = [0.5, 0.8, 1.6, 2.5, 4, 6, 8.2, 11, 13.5, 17, 22, 26, 30];

	test("has no cell without a number from 0 to 1: positions, months, sunspots 0 to 200, 0.5 to 30 MHz, emissions, both ways", () => {
		const rows = [0, 1].flatMap((station) =>
			MHZ.map((fMHz, i): { station: number; signal: Signal } => ({
				station,
				signal: { fMHz, emission: EMISSIONS[i % EMISSIONS.length]!, grade: (["safety", "just-usable", "good"] as const)[i % 3]! },
			})),
		);
		let cells = 0;
		let heard = 0;
		for (const month of [1, 3, 6, 8, 11]) {
			for (const r12 of [0, 50, 120, 160, 200]) {
				const { toVessel, toCoast } = reachTable({
					vessel: vessel(horta),
					stations: [coast(position(50, -5)), coast(position(-36.9, 174.8))],
					rows,
					samples: PLACES.map((where) => ({ position: where, ...sky(2026, month, r12) })),
					bothWays: true,
				});
				for (const table of [toVessel, toCoast!]) {
					for (const chance of table) {
						if (!(chance >= 0 && chance <= 1)) expect.fail(`${chance} in month ${month}, R12 ${r12}`);
						cells++;
						if (chance > 0) heard++;
					}
				}
			}
		}
		console.log(`${cells} cells, ${heard} above 0`);
		expect(cells).toBe(5 * 5 * 2 * rows.length * PLACES.length * HOURS);
		expect(heard).toBeGreaterThan(cells / 20);
	});

	test("every figure of every hour is a number, anywhere, in any month", () => {
		const anywhere = fc
			.tuple(fc.integer({ min: -90, max: 90 }), fc.integer({ min: -180, max: 179 }))
			.map(([lat, lon]) => position(lat, lon));
		let hours = 0;
		fc.assert(
			fc.property(
				anywhere,
				anywhere,
				fc.integer({ min: 1, max: 12 }),
				fc.integer({ min: 0, max: 200 }),
				fc.integer({ min: 5, max: 300 }),
				fc.constantFrom(...EMISSIONS),
				(from, to, month, r12, tenths, emission) => {
					const signal: Signal = { fMHz: tenths / 10, emission, grade: "just-usable" };
					const [row] = reach({ from: coast(from), to: vessel(to), ...sky(2028, month, r12) }, [signal]);
					for (const hour of hoursOf(row!)) {
						const { why, utcHour, by, ...figures } = hour;
						const strange = Object.entries(figures).filter(([, figure]) => !Number.isFinite(figure));
						if (strange.length > 0) expect.fail(`${strange.join("; ")} at ${utcHour} by ${by}, ${why.km} km`);
						expect(hour.chance).toBeGreaterThanOrEqual(0);
						expect(hour.chance).toBeLessThanOrEqual(1);
						expect(hour.supportChance).toBeLessThanOrEqual(1);
						expect(Math.min(hour.upperDb, hour.lowerDb, hour.mufMHz, hour.optimumMHz)).toBeGreaterThan(0);
						hours++;
					}
				},
			),
			{ seed: 17, numRuns: 300 },
		);
		expect(hours).toBe(300 * HOURS);
	});
});

describe("what an answer rests on", () => {
	const rowOf = (km: number, fMHz: number, to = destination(horta, 250, km)) =>
		reach({ from: coast(horta), to: vessel(to), ...march }, [speech(fMHz)])[0]!;
	const SKY_ALONE: readonly MemoryId[] = ["absorption", "otherLosses", "fieldConstant", "signalDeciles", "withinHour", "controlPoints"];

	test("by ground wave alone: nothing of the sky; by sky wave: nothing of the ground", () => {
		const ground = rowOf(80, 2.182);
		expect(hoursOf(ground).every(({ by }) => by === "ground wave")).toBe(true);
		expect(ground.basis).toContain("groundWaveFading");
		expect(ground.basis.filter((id) => SKY_ALONE.includes(id))).toEqual([]);
		const far = rowOf(2500, 12.353);
		expect(hoursOf(far).every(({ by }) => by === "sky wave")).toBe(true);
		expect(far.basis).not.toContain("groundWaveFading");
		expect(SKY_ALONE.filter((id) => !far.basis.includes(id))).toEqual([]);
	});

	test("a constant is named when, and only when, some hour by sky wave used it", () => {
		const USED: readonly (readonly [MemoryId, (hour: ReachHour) => boolean])[] = [
			["auroralLoss", ({ why }) => why.sky.modes.some(({ losses }) => (losses?.auroralDb ?? 0) > 0)],
			["aboveMuf", ({ why }) => why.sky.modes.some(({ losses }) => (losses?.aboveMufDb ?? 0) > 0)],
			["groundReflection", ({ why }) => why.sky.modes.some(({ losses }) => (losses?.groundDb ?? 0) > 0)],
			["screening", ({ why }) => why.sky.modes.some(({ fate }) => fate === "screened")],
			["longPath", ({ why }) => why.sky.long !== null],
			["longPathJoin", ({ why }) => why.sky.long !== null && why.sky.nearDb !== null],
			["otherLosses", ({ why }) => why.sky.nearDb !== null],
		];
		const seen = { named: 0, notNamed: 0 };
		for (const [km, fMHz] of [
			[120, 1.7],
			[600, 4.1],
			[2000, 6.3],
			[3800, 16.5],
			[8000, 12.3],
			[12_000, 18.8],
		] as const) {
			const row = rowOf(km, fMHz);
			for (const [id, uses] of USED) {
				const isUsed = hoursOf(row).some((hour) => hour.by === "sky wave" && uses(hour));
				expect([km, id, row.basis.includes(id)]).toEqual([km, id, isUsed]);
				seen[isUsed ? "named" : "notNamed"]++;
			}
		}
		expect(seen.named + seen.notNamed).toBe(6 * USED.length);
		expect(Math.min(seen.named, seen.notNamed)).toBeGreaterThan(10);
	});

	test("ids are those of the module of constants from memory, each once, in order", () => {
		for (const km of [80, 2000, 8000, 15_000]) {
			const { basis } = rowOf(km, 8.294);
			expect(basis).toEqual([...new Set(basis)].sort());
			for (const id of basis) expect(MEMORY[id].id).toBe(id);
		}
	});
});

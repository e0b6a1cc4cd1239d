import { position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Antenna, verticalAntenna } from "./antenna.ts";
import { coastAntenna } from "./antennaCoast.ts";
import { groundChance, groundPathDb, HOPELESS_DB, type Sending, sending, skyChance } from "./circuit.ts";
import { MEMORY } from "./fromMemory.ts";
import { GROUNDS } from "./groundConstants.ts";
import { seaAreaA2Km } from "./groundWaveSeaArea.ts";
import { groundWaveTable } from "./groundWaveTable.ts";
import { noiseFieldDb } from "./noiseField.ts";
import type { Signal, Terminal } from "./terminal.ts";

const KM_PER_NM = 1.852;
const HERE = position(0, 0);

function terminal(powerW: number, antenna: Antenna = coastAntenna()): Terminal {
	return { position: HERE, antenna, powerW, manMade: "rural" };
}

const speech: Signal = { fMHz: 2.182, emission: "J3E", grade: "safety" };
const known = (signal: Signal, sender: Terminal): Sending => {
	const sent = sending(signal, sender);
	if (sent === null) throw new Error(`nothing known of ${signal.emission}`);
	return sent;
};

/** Ratio by ground wave as the circuit has it, dB, at a noise of `faDb` above kT0b. */
function groundRatioDb(sent: Sending, pathDb: number, faDb: number): number {
	return sent.groundPowerDbw + pathDb - sent.groundNoiseDbw - faDb;
}

describe("a ground wave's ratio", () => {
	test("is that of the fields: of ITU-R P.368 to that of noise by ITU-R P.372, within 0.06 dB at any distance, frequency, power", () => {
		let compared = 0;
		let worst = 0;
		fc.assert(
			fc.property(
				fc.double({ min: 0.4, max: 30, noNaN: true }),
				fc.double({ min: 1, max: 2000, noNaN: true }),
				fc.double({ min: 1, max: 20_000, noNaN: true }),
				fc.double({ min: 0.01, max: 1, noNaN: true }),
				fc.double({ min: 10, max: 100, noNaN: true }),
				fc.constantFrom("J3E", "A3E", "F1B", "F3C", "A1A"),
				(fMHz, km, powerW, efficiency, faDb, emission) => {
					const sender = terminal(
						powerW,
						verticalAntenna(() => efficiency, []),
					);
					const sent = known({ fMHz, emission, grade: "just-usable" }, sender);
					const table = groundWaveTable(fMHz, GROUNDS.sea);
					const { belowRatedDb, bandwidthHz } = sent.groundNeed;
					const fieldDb = table.fieldAt(km) + 10 * Math.log10((powerW * efficiency) / 1000) - belowRatedDb;
					const byFields = fieldDb - noiseFieldDb({ faDb, fMHz, bandwidthHz });
					worst = Math.max(worst, Math.abs(groundRatioDb(sent, groundPathDb(table, km, fMHz, terminal(1)), faDb) - byFields));
					compared++;
				},
			),
			{ seed: 7, numRuns: 150 },
		);
		console.log(`ratio by powers against ratio by fields: worst ${worst.toFixed(3)} dB of ${compared}`);
		expect(compared).toBe(150);
		expect(worst).toBeLessThan(0.06); // P.372's -95.5, rounded
	});

	test("does not depend on the receiving aerial's efficiency: noise from outside is lost alike", () => {
		const table = groundWaveTable(2.182, GROUNDS.sea);
		const [poor, good] = [0.01, 1].map((share) =>
			terminal(
				1,
				verticalAntenna(() => share, []),
			),
		);
		expect(groundPathDb(table, 200, 2.182, poor!)).toBe(groundPathDb(table, 200, 2.182, good!));
	});

	test.each([60, 65, 70, 75])("meets IMO A.801(19) for a ship of 60 W at noise of %d dB where sea area A2 ends, 100 to 231 nm", (faDb) => {
		const { peakW, efficiency, fadingMarginDb } = MEMORY.seaAreaA2.value;
		const sent = known(
			speech,
			terminal(
				peakW,
				verticalAntenna(() => efficiency, []),
			),
		);
		const table = groundWaveTable(speech.fMHz, GROUNDS.sea);
		const margin = (km: number) =>
			groundRatioDb(sent, groundPathDb(table, km, speech.fMHz, terminal(1)), faDb) - sent.groundNeed.snrDb - fadingMarginDb;
		const endKm = seaAreaA2Km(faDb);
		expect(margin(endKm * 0.99)).toBeGreaterThan(0);
		expect(margin(endKm * 1.01)).toBeLessThan(0);
		expect(endKm / KM_PER_NM).toBeGreaterThan(100);
		expect(endKm / KM_PER_NM).toBeLessThan(231.5); // the printed 230 at 60 dB itself, to a mile
	});
});

describe("what one direction needs and sends", () => {
	test("counts the mean power of speech 8 dB under the peak, as IMO does, and the whole of a keyed signal", () => {
		const sender = terminal(
			100,
			verticalAntenna(() => 0.5, []),
		);
		const peak = 10 * Math.log10(50);
		expect(known(speech, sender).groundPowerDbw).toBeCloseTo(peak - 8, 9);
		expect(known({ fMHz: 8.4145, emission: "F1B", grade: "just-usable" }, sender).skyPowerDbw).toBeCloseTo(peak, 9);
	});

	test("asks more of what fades (ITU-R F.339), never less", () => {
		let compared = 0;
		for (const emission of ["J3E", "H3E", "R3E", "A3E", "A1A", "J2A", "F1B", "J2B", "F1C", "F3C", "J3C", "J2C"]) {
			for (const grade of ["just-usable", "marginal", "good", "safety"] as const) {
				for (const baud of [50, 100] as const) {
					const { skyNeed, groundNeed } = known({ fMHz: 6, emission, grade, baud }, terminal(100));
					expect(skyNeed.snr0DbHz).toBeGreaterThanOrEqual(groundNeed.snr0DbHz);
					compared++;
				}
			}
		}
		expect(compared).toBe(12 * 4 * 2);
	});

	test("is nothing for an emission of which nothing is known, and outside 0.4 to 30 MHz", () => {
		for (const emission of ["J2D", "P0N", ""]) expect(sending({ ...speech, emission }, terminal(100))).toBeNull();
		for (const fMHz of [0, 0.399, 30.001, -8, Number.NaN]) expect(sending({ ...speech, fMHz }, terminal(100))).toBeNull();
		for (const fMHz of [0.4, 30]) expect(sending({ ...speech, fMHz }, terminal(100))).not.toBeNull();
	});
});

describe("chances of a direction", () => {
	const sent = known(speech, terminal(150));
	const noise = [60, 10, 8];
	/** Over the whole of what is between never and always, and beyond. */
	const anywhere = fc.integer({ min: -1600, max: -600 }).map((tenths) => tenths / 10);

	test("lie within 0 and 1 and only grow with the path's strength", () => {
		let between = 0;
		fc.assert(
			fc.property(
				anywhere,
				fc.double({ min: 0, max: 40, noNaN: true }),
				fc.double({ min: 0.1, max: 6, noNaN: true }),
				(weak, by, ratio) => {
					for (const chance of [
						(pathDb: number) => skyChance(sent, pathDb, ratio, "below60", noise),
						(pathDb: number) => groundChance(sent, pathDb, noise),
					]) {
						const [less, more] = [chance(weak), chance(weak + by)];
						expect(less).toBeGreaterThanOrEqual(0);
						expect(more).toBeLessThanOrEqual(1);
						expect(more).toBeGreaterThanOrEqual(less);
						if (less > 0 && more < 1) between++;
					}
				},
			),
			{ seed: 11, numRuns: 400 },
		);
		expect(between).toBeGreaterThan(200);
	});

	test("are a half where the median just meets the need, and none where it is hopeless, by the widest deciles there are", () => {
		const meets = sent.skyNeed.snrDb - sent.skyPowerDbw + sent.skyNoiseDbw + noise[0]!;
		expect(skyChance(sent, meets, 1, "from60", noise)).toBeCloseTo(0.5, 9);
		const widest = [60, 12, 8]; // atmospheric noise by day: lower decile 8 dB, none wider
		let compared = 0;
		for (let ratio = 0; ratio < 6; ratio += 0.05) {
			for (const latitude of ["below60", "from60"] as const) {
				expect(skyChance(sent, meets - HOPELESS_DB + 0.05, ratio, latitude, widest)).toBe(0);
				compared++;
			}
		}
		expect(compared).toBeGreaterThan(230);
	});

	test("read the noise from where they are told", () => {
		const day = [0, 0, 0, ...noise];
		expect(groundChance(sent, -108, day, 3)).toBe(groundChance(sent, -108, noise));
		expect(skyChance(sent, -108, 1.1, "below60", day, 3)).toBe(skyChance(sent, -108, 1.1, "below60", noise));
	});
});

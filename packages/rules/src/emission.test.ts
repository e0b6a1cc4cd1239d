import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { emission, modesThatReceive } from "./emission.ts";
import { emissionFacts } from "./emissionTable.ts";
import { EMISSION_CLASSES } from "./types.ts";

describe("emission", () => {
	it.each([
		["J3E", "J3E", null],
		["2K80J3E", "J3E", 2_800],
		["1K98F3C", "F3C", 1_980], // ITU-R SM.1138, 1100 elements a second and ±400 Hz (from memory)
		["300HF1B", "F1B", 300], // 47 CFR 80.205
		["6K00A3E", "A3E", 6_000],
		["160HA1A", "A1A", 160],
		["25H3A1A", "A1A", 25.3], // RR Appendix 1's way of writing 25.3 Hz (from memory)
		["2K70J3E", "J3E", 2_700],
		[" 2k80j3e ", "J3E", 2_800],
	])("reads %s", (text, emissionClass, bandwidthHz) => {
		expect(emission(text)).toEqual({ emissionClass, bandwidthHz });
	});

	it.each(["", "J3", "2K8J3E", "28K0", "K280J3E", "0K80J3E", "2K800J3E", "2.80J3E", "J3E2K80", "2K80 J3E", "USB", "33E"])(
		"refuses %j with what was expected",
		(text) => {
			expect(() => emission(text)).toThrow(SyntaxError);
			expect(() => emission(text)).toThrow(/expected a class like J3E/);
		},
	);

	it("tells a well-formed class that no marine set uses from nonsense", () => {
		expect(() => emission("16K0F3E")).toThrow(RangeError);
		expect(() => emission("16K0F3E")).toThrow(/Cannot use emission F3E: expected one of J3E/);
	});

	it("reads every designator of the table (47 CFR 80.205) and gives its class back", () => {
		let read = 0;
		for (const emissionClass of EMISSION_CLASSES) {
			expect(emission(emissionClass)).toEqual({ emissionClass, bandwidthHz: null });
			for (const designator of emissionFacts(emissionClass).designators) {
				const found = emission(designator);
				expect(found.emissionClass).toBe(emissionClass);
				expect(found.bandwidthHz).toBeGreaterThan(0);
				read++;
			}
		}
		expect(read).toBe(18);
	});

	it("reads any bandwidth that RR Appendix 1 can write, and throws only its two errors on anything else", () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 100, max: 999 }),
				fc.integer({ min: 1, max: 3 }),
				fc.constantFrom("H", "K", "M", "G"),
				(digits, at, unit) => {
					const text = String(digits);
					const hertz = (digits * { H: 1, K: 1e3, M: 1e6, G: 1e9 }[unit]!) / 10 ** (3 - at);
					expect(emission(`${text.slice(0, at)}${unit}${text.slice(at)}J3E`).bandwidthHz).toBe(hertz);
				},
			),
			{ seed: 2 },
		);
		fc.assert(
			fc.property(fc.string({ unit: "binary", maxLength: 12 }), (text) => {
				try {
					expect(EMISSION_CLASSES).toContain(emission(text).emissionClass);
				} catch (error) {
					expect(error instanceof SyntaxError || error instanceof RangeError).toBe(true);
				}
			}),
			{ seed: 3, numRuns: 500 },
		);
	});
});

describe("modesThatReceive", () => {
	it("is right for speech on its own sideband alone (47 CFR 80.213(a)(3): upper)", () => {
		expect(modesThatReceive("J3E")).toEqual({ right: ["USB"], poor: [] });
		expect(modesThatReceive("J3E", "lower")).toEqual({ right: ["LSB"], poor: [] });
		expect(modesThatReceive("H3E")).toEqual({ right: ["USB", "AM"], poor: [] });
		expect(modesThatReceive("A3E", "lower")).toEqual({ right: ["AM"], poor: ["USB", "LSB"] });
	});

	it("never takes AM or CW for a chart, text or call, and takes the mirrored sideband as poor (common practice, no source)", () => {
		for (const emissionClass of ["F1B", "J2B"] as const)
			expect(modesThatReceive(emissionClass)).toEqual({ right: ["FSK", "USB"], poor: ["LSB"] });
		for (const emissionClass of ["F3C", "J3C", "F1C", "J2C"] as const)
			expect(modesThatReceive(emissionClass)).toEqual({ right: ["USB"], poor: ["LSB", "FSK"] });
		expect(modesThatReceive("A1A")).toEqual({ right: ["CW"], poor: ["USB", "LSB"] });
	});

	it("lists no mode both right and poor, and tells the loss of each poor one", () => {
		let told = 0;
		for (const emissionClass of EMISSION_CLASSES) {
			const { right, poor, note } = emissionFacts(emissionClass);
			expect(right.length).toBeGreaterThan(0);
			for (const mode of poor) {
				expect(right).not.toContain(mode);
				expect(note).toContain(`${mode}: `);
				told++;
			}
		}
		expect(told).toBe(16);
	});
});

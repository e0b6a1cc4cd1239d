import { describe, expect, it } from "vitest";
import type { HeardDsc } from "../dsc/heardDsc.ts";
import type { Heard } from "../hear/heard.ts";
import type { HeardTone } from "../tone/heardTone.ts";
import type { TuningExpectation } from "./expectation.ts";
import { measureTuning } from "./measureTuning.ts";

const BASE = { startS: 0, endS: 20, uncertaintyHz: 0.1, snrDb: 10 };
const CALL: Omit<HeardDsc, "audioHz" | "isInverted"> = {
	...BASE,
	kind: "dsc",
	symbols: [120],
	ecc: 0,
	ok: true,
	from: null,
	to: null,
	summary: "",
	call: null,
	faults: [],
	corrected: 0,
	times: 1,
};
const call = (audioHz: number, isInverted = false): HeardDsc => ({ ...CALL, audioHz, isInverted });
const tone = (audioHz: number): HeardTone => ({ ...BASE, kind: "tone", audioHz, onRatio: 1, summary: "" });
const chart = (audioHz: number, grey = 255): Heard => ({
	...BASE,
	kind: "chart",
	audioHz,
	image: { width: 10, height: 10, pixels: new Uint8Array(100).fill(grey) },
	ioc: 576,
	iocFrom: "start tone",
	linesPerMinute: 120,
	phaseFrom: "phasing",
	began: "start tone",
	ended: "stop tone",
	isComplete: true,
	clockPpm: 0,
	clockUncertaintyPpm: 1,
	blackHz: audioHz - 400,
	whiteHz: audioHz + 400,
});
const ON_USB = { mode: "USB", listedDialHz: null } as const;
const DSC: TuningExpectation = {
	...ON_USB,
	kind: "dsc",
	nominalAudioHz: [1_700],
	toleranceHz: 10,
	dialHz: 2_185_800,
	stepHz: 10,
	usbDialHz: 2_185_800,
};
const CHART: TuningExpectation = {
	...ON_USB,
	kind: "chart",
	nominalAudioHz: [1_900],
	toleranceHz: 20,
	dialHz: 8_680_100,
	stepHz: 100,
	usbDialHz: 8_680_100,
};
const TONES: TuningExpectation = {
	kind: "tone",
	nominalAudioHz: [500, 600, 1_000, 2_000],
	toleranceHz: 10,
	dialHz: 10_000_000,
	stepHz: 10,
	...ON_USB,
	usbDialHz: null,
};

describe("measureTuning", () => {
	it("signs the error as the dial reads it: high where the audio lies high on USB, low on LSB; the right dial follows", () => {
		// a set whose carrier lies 32 Hz below the 2185.8 kHz that it shows puts 2187.5 kHz at 1732 Hz on USB
		const high = measureTuning(call(1_732), DSC);
		expect(high).toMatchObject({ verdict: "off tune", offsetHz: 32, steps: 3, rightDialHz: 2_185_830, slip: null });
		expect(high.words).toBe(
			"The dial reads 32.0 Hz high (±0.1), more than 10 Hz: turn it up 3 steps of 10 Hz, to 2185.83 kHz; 2.0 Hz are left over.",
		);
		const low = measureTuning(call(1_668), DSC);
		expect(low).toMatchObject({ offsetHz: -32, steps: -3, rightDialHz: 2_185_770 });
		expect(low.words).toContain("reads 32.0 Hz low");
		// the same set on LSB with its dial above the signal hears it low instead
		expect(measureTuning(call(1_668, true), { ...DSC, mode: "LSB" })).toMatchObject({ offsetHz: 32, rightDialHz: 2_185_830 });
	});

	it("judges against the tolerance, and says where it is too near to tell", () => {
		expect(measureTuning(call(1_705), DSC)).toMatchObject({
			verdict: "within tolerance",
			words: "The dial reads 5.0 Hz high (±0.1); within tolerance (10 Hz).",
		});
		expect(measureTuning(call(1_700.02), DSC).words).toBe("The dial is right to 0.1 Hz; within tolerance (10 Hz).");
		expect(measureTuning(call(1_709.9), DSC)).toMatchObject({ verdict: "cannot tell" });
		expect(measureTuning(call(1_710.5), DSC)).toMatchObject({ verdict: "off tune" });
		expect(measureTuning({ ...call(1_712), uncertaintyHz: 3 }, DSC)).toMatchObject({ verdict: "cannot tell" });
		// 12 Hz off with steps of 100 Hz: nothing to turn
		expect(measureTuning(call(1_712), { ...DSC, stepHz: 100 })).toMatchObject({
			verdict: "off tune",
			steps: 0,
			rightDialHz: 2_185_800,
			words:
				"The dial reads 12.0 Hz high (±0.1), more than 10 Hz: finer than its steps: use the fine tuning or have the set's reference adjusted.",
		});
	});

	it.each([
		["1 kHz slip", call(2_703), DSC, 2_186_800],
		["1 kHz slip", call(697), DSC, 2_184_800],
		["offset taken twice", call(3_403), DSC, 2_187_500],
		["offset missing", call(2), DSC, 2_184_100],
		["offset of the other service", call(1_897), DSC, 2_186_000],
		["offset of the other service", chart(1_704), CHART, 8_679_900],
		["offset taken twice", chart(3_790), CHART, 8_682_000],
		["1 kHz slip", chart(2_900), CHART, 8_681_100],
		["assigned keyed as carrier", tone(600), { ...TONES, nominalAudioHz: [2_000] }, 9_998_600],
	] as const)("knows a %s", (slip, heard, expected, rightDialHz) => {
		const tuning = measureTuning(heard, expected);
		expect(tuning).toMatchObject({ verdict: "slip", slip });
		expect(Math.abs(tuning.rightDialHz! - rightDialHz)).toBeLessThanOrEqual(expected.stepHz);
	});

	it("parts the place's error of keying from the set's own", () => {
		// keyed 100 Hz low the audio should lie at 1800 Hz: what it lies beside that is the set's
		const low = { ...DSC, nominalAudioHz: [1_800], dialHz: 2_185_700, listedDialHz: 2_185_800 };
		expect(measureTuning(call(1_799.7), low)).toMatchObject({
			verdict: "slip",
			slip: "another dial keyed",
			offsetHz: expect.closeTo(-0.3, 6),
			steps: 10,
			rightDialHz: 2_185_800,
			words:
				"Keyed 100 Hz low against the listing's dial 2185.8 kHz; the set itself is within 10 Hz (offset -0.3 Hz, ±0.1). Turn it up 10 steps of 10 Hz, to 2185.8 kHz.",
		});
		expect(measureTuning(call(1_832), low).words).toContain("the set itself is off by more than 10 Hz (offset 32.0 Hz, ±0.1)");
		expect(measureTuning(call(1_832), low)).toMatchObject({ rightDialHz: 2_185_830 });
		const lsb = { ...DSC, nominalAudioHz: [1_600], dialHz: 2_189_100, listedDialHz: 2_189_200, mode: "LSB" } as const;
		expect(measureTuning(call(1_600, true), lsb)).toMatchObject({ offsetHz: expect.closeTo(0, 6), rightDialHz: 2_189_200 });
		const other = { ...CHART, nominalAudioHz: [1_700], dialHz: 8_680_300, listedDialHz: 8_680_100 };
		expect(measureTuning(chart(1_700), other)).toMatchObject({ slip: "offset of the other service", rightDialHz: 8_680_100 });
		// nearer than half a step nobody could key it
		const nearest = { ...DSC, nominalAudioHz: [1_740], dialHz: 2_185_760, listedDialHz: 2_185_800, stepHz: 100 };
		expect(measureTuning(call(1_740), nearest)).toMatchObject({ verdict: "within tolerance", slip: null });
	});

	it("takes no slip for what lies too far from one", () => {
		expect(measureTuning(call(1_830), DSC)).toMatchObject({ verdict: "off tune", slip: null });
		expect(measureTuning(call(2_640), DSC)).toMatchObject({ verdict: "off tune", slip: null });
	});

	it("names the wrong sideband: exchanged tones, a picture mostly black, speech out of place", () => {
		const exchanged = measureTuning(call(1_700, true), DSC);
		expect(exchanged).toMatchObject({ verdict: "slip", slip: "wrong sideband", rightDialHz: null });
		// the dial that was looked up, wherever the mirrored audio lies
		expect(exchanged.words).toMatch(/The place wants USB at 2185\.8 kHz\.$/);
		expect(measureTuning(call(1_714, true), DSC).words).toBe(exchanged.words);
		const fsk = { ...DSC, dialHz: 2_187_500 };
		expect(measureTuning(call(1_700, true), fsk).words).toBe(exchanged.words);
		expect(measureTuning(call(1_700, true), { ...fsk, usbDialHz: null }).words).not.toContain("wants");
		// on LSB it is the other way round
		const lsb = { ...DSC, dialHz: 2_189_200, mode: "LSB" } as const;
		expect(measureTuning(call(1_700), lsb).words).toBe(exchanged.words);
		expect(measureTuning(call(1_700, true), lsb)).toMatchObject({ verdict: "within tolerance" });
		expect(measureTuning(chart(1_900, 0), { ...CHART, mode: "LSB" })).toMatchObject({ verdict: "within tolerance" });
		expect(measureTuning(chart(1_900, 0), CHART)).toMatchObject({ slip: "wrong sideband" });
		const voice: Heard = {
			...BASE,
			kind: "voice",
			audioHz: 2_000,
			lowHz: 1_600,
			highHz: 2_900,
			lowPart: 0,
			isOutOfPlace: true,
			summary: "",
		};
		expect(measureTuning(voice, { ...DSC, kind: "voice" })).toMatchObject({ slip: "wrong sideband", offsetHz: null });
		expect(measureTuning({ ...voice, isOutOfPlace: false }, { ...DSC, kind: "voice" })).toMatchObject({
			verdict: "cannot tell",
			slip: null,
		});
	});

	it("tells the set from the recorder by several tones; one tone alone is taken as the set", () => {
		const tones = (...all: readonly number[]) => measureTuning(all.map(tone), TONES);
		expect(tones(497, 597, 997, 1_997)).toMatchObject({ verdict: "within tolerance" });
		expect(tones(497, 597, 997, 1_997).offsetHz).toBeCloseTo(-3, 6);
		expect(tones(500.5, 600.6, 1_001, 2_002)).toMatchObject({ verdict: "cannot tell", offsetHz: null });
		expect(tones(500.5, 600.6, 1_001, 2_002).words).toContain("1000 parts in a million: the recorder's clock runs slow");
		expect(tones(503, 606.1, 996, 2_001)).toMatchObject({ verdict: "cannot tell", offsetHz: null });
		const note = { ...TONES, nominalAudioHz: [1_000] };
		expect(measureTuning([tone(1_012), tone(2_200)], note)).toMatchObject({ verdict: "off tune", offsetHz: 12, rightDialHz: 10_000_010 });
		expect(measureTuning([], note)).toMatchObject({ verdict: "cannot tell" });
	});

	it("cannot tell from something else than was expected, or where nothing is nominal", () => {
		expect(measureTuning(tone(1_700), DSC)).toMatchObject({ verdict: "cannot tell", words: "Expected a selective call, heard tones." });
		expect(measureTuning(call(1_700), { ...DSC, nominalAudioHz: [] })).toMatchObject({ verdict: "cannot tell" });
	});
});

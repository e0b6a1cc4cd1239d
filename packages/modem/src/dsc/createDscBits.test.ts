import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { asCarrier, textbookSofts } from "../../truth/textbookBits.ts";
import type { SoftBits } from "../fsk/demodulate.ts";
import { prng } from "../signal/random.ts";
import { createDscBits } from "./createDscBits.ts";
import type { HeardDsc } from "./heardDsc.ts";
import { elementsOfCall } from "./sequence.ts";
import { elementsOf } from "./tenUnitCode.ts";

const truth = JSON.parse(readFileSync(new URL("../../truth/dsc-vectors.json", import.meta.url), "utf8"));
const CALLS: readonly (readonly number[])[] = truth.examples.map((example: { message_symbols: number[] }) =>
	example.message_symbols.slice(1, -3),
);
const ALERT = CALLS[2]!;

const CLEAN = 12;
const chance = (count: number, seed: number) => {
	const random = prng(seed);
	return Array.from({ length: count }, () => (random() < 0.5 ? 1 : 0));
};
const clean = (elements: readonly number[]) => Float64Array.from(elements, (element) => (element === 1 ? CLEAN : -CLEAN));

/** Feeds what a demodulator hands back, the stream's clock going along, and then the end. */
function hear(bits: readonly SoftBits[]): readonly HeardDsc[] {
	const receiver = createDscBits();
	const heard = bits.flatMap((piece) => receiver.take([piece], piece.atS.at(-1) ?? 0));
	return [...heard, ...receiver.end()];
}
const hearSofts = (softs: Float64Array) => hear(asCarrier(softs));

/** Bits of characters `from` up to `to` say nothing; character 0 is the first of the phasing sequence. */
function erased(softs: Float64Array, dots: number, isErased: (character: number) => boolean): Float64Array {
	return softs.map((soft, i) => (i >= dots && isErased(Math.floor((i - dots) / 10)) ? 0 : soft));
}

describe("createDscBits", () => {
	it("hears every worked example once, between other bits, and tells where", () => {
		for (const [i, symbols] of CALLS.entries()) {
			const dots = i % 2 === 0 ? 200 : 20;
			const heard = hearSofts(clean([...chance(137, i), ...elementsOfCall(symbols, dots), ...chance(211, i + 50)]));
			expect(heard).toMatchObject([
				{ kind: "dsc", symbols, ecc: truth.examples[i].ecc, ok: true, corrected: 0, times: 1, isInverted: false },
			]);
			expect(heard[0]!.startS).toBeGreaterThan(1.3); // chance bits before may carry the pattern on by a few
			expect(heard[0]!.startS).toBeLessThan(1.375);
			expect(heard[0]!.endS).toBeCloseTo(1.37 + elementsOfCall(symbols, dots).length / 100, 9);
		}
		expect(CALLS).toHaveLength(11);
	});

	it("knows exchanged tones and says so", () => {
		const heard = hearSofts(clean(elementsOfCall(ALERT, 20)).map((soft) => -soft));
		expect(heard).toMatchObject([{ symbols: ALERT, ok: true, isInverted: true, summary: expect.stringMatching(/^Tones exchanged/) }]);
	});

	it("phases on DX alone, on RX alone, and on any three of the phasing symbols", () => {
		const softs = clean(elementsOfCall(ALERT, 20));
		const only = (kept: readonly number[]) => hearSofts(erased(softs, 20, (character) => character < 16 && !kept.includes(character)));
		expect(only([0, 2, 4, 6, 8, 10])).toMatchObject([{ ok: true, symbols: ALERT }]);
		expect(only([1, 3, 5, 7, 9, 11, 13, 15])).toMatchObject([{ ok: true, symbols: ALERT }]);
		const places = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 15];
		let tried = 0;
		for (let a = 0; a < 14; a += 3) {
			for (let b = a + 1; b < 14; b += 2) {
				for (let c = b + 1; c < 14; c++, tried++) {
					const kept = [places[a]!, places[b]!, places[c]!];
					expect(only(kept), kept.join(" ")).toMatchObject([{ ok: true, symbols: ALERT }]);
				}
			}
		}
		expect(tried).toBe(83);
	});

	it("joins anywhere in the dot pattern and the phasing sequence, to the last three symbols of it", () => {
		const softs = clean(elementsOfCall(ALERT, 200));
		let joined = 0;
		for (let from = 0; from <= 200 + 100; from += 7, joined++)
			expect(hearSofts(softs.slice(from)), `from ${from}`).toMatchObject([{ ok: true }]);
		expect(joined).toBe(43);
	});

	it("takes either copy for the other: every second character gone, and fades of four characters", () => {
		const softs = clean(elementsOfCall(ALERT, 20));
		// the last two ends of sequence have no second copy, so DX cannot be missed there
		expect(hearSofts(erased(softs, 20, (character) => character % 2 === 1))).toMatchObject([{ ok: true, symbols: ALERT }]);
		let faded = 0;
		for (let from = 12; from < 48; from++, faded++) {
			const heard = hearSofts(erased(softs, 20, (character) => character >= from && character < from + 4));
			expect(heard, `from ${from}`).toMatchObject([{ ok: true, symbols: ALERT }]);
		}
		expect(faded).toBe(36);
	});

	it("never fills in a symbol that was not heard, though the check would tell it", () => {
		const softs = clean(elementsOfCall(ALERT, 20));
		const gone = 12 + 2 * 9; // DX of the symbol after the nature: the first of the position; its other copy comes five later
		const heard = hearSofts(erased(softs, 20, (character) => character === gone || character === gone + 5));
		expect(heard).toMatchObject([{ ok: false, ecc: 119, faults: [{ code: "symbol-lost" }, { code: "ecc-wrong" }] }]);
		expect(heard[0]!.symbols).toEqual(ALERT.with(8, null as never));
		expect(heard[0]!.summary).toMatch(/^Not sure.*position not told, 14:07 UTC/);
	});

	it("says that the check is wrong of a call sent with a wrong one, and corrects nothing in it", () => {
		const elements = [...elementsOfCall(ALERT, 20)];
		for (const character of [12 + 2 * 16 + 2, 12 + 2 * 16 + 7]) elements.splice(20 + 10 * character, 10, ...elementsOf(46)); // 119 was right
		const heard = hearSofts(clean(elements));
		expect(heard).toMatchObject([{ symbols: ALERT, ecc: 46, ok: false, corrected: 0, faults: [{ code: "ecc-wrong" }] }]);
	});

	it("reports a call cut off as far as it was read", () => {
		const heard = hearSofts(clean(elementsOfCall(ALERT, 20).slice(0, 20 + 10 * 36)));
		expect(heard).toMatchObject([{ ok: false, ecc: null, from: "299123456", call: { distress: { nature: "sinking" } } }]);
		expect(heard[0]!.faults.map(({ code }) => code)).toContain("cut-short");
		expect(heard[0]!.symbols).toEqual(ALERT.slice(0, heard[0]!.symbols.length));
	});

	it("reports calls back to back each, also the same twice; an alert sent five times on end once", () => {
		const [test, answer] = [CALLS[0]!, CALLS[1]!];
		const several = (...calls: (readonly number[])[]) => hearSofts(clean(calls.flatMap((symbols) => elementsOfCall(symbols, 20))));
		expect(several(test, answer, test).map(({ symbols }) => symbols)).toEqual([test, answer, test]);
		expect(several(test, test)).toHaveLength(2);
		const attempt = several(ALERT, ALERT, ALERT, ALERT, ALERT);
		expect(attempt).toMatchObject([{ symbols: ALERT, ok: true, times: 5, startS: 0 }]);
		expect(attempt[0]!.endS).toBeCloseTo(5 * 5.4, 9);
		expect(several(ALERT, CALLS[3]!)).toHaveLength(2); // another alert is another call
	});

	it("counts an alert of an attempt that could not be read whole, and keeps the best reading", () => {
		const one = clean(elementsOfCall(ALERT, 20));
		const broken = erased(one, 20, (character) => character === 32 || character === 37);
		expect(hearSofts(Float64Array.from([...broken, ...one, ...broken]))).toMatchObject([{ symbols: ALERT, ok: true, times: 3 }]);
	});

	it("adds up the times an alert came, where no single one can be read: textbook bits at 4 dB", () => {
		let [alone, together, wrong] = [0, 0, 0];
		const four = (i: number, count: number) =>
			textbookSofts([...Array.from({ length: count }, () => elementsOfCall(ALERT, 20)).flat(), ...chance(60, i)], 4, i + 1);
		for (let i = 0; i < 8; i++) {
			if (hearSofts(four(i, 1)).some(({ ok }) => ok)) alone++;
			const heard = hearSofts(four(i, 4));
			if (heard.length === 1 && heard[0]!.ok && heard[0]!.times > 1) together++;
			if (heard.some(({ ok, symbols }) => ok && symbols.join() !== ALERT.join())) wrong++;
		}
		expect(alone).toBeLessThanOrEqual(1);
		expect(together).toBeGreaterThanOrEqual(7);
		expect(wrong).toBe(0);
	});

	it("reports a call once that two carriers bring at once, the better of them", () => {
		const good = clean(elementsOfCall(CALLS[0]!, 20));
		const bad = erased(good, 20, (character) => character === 30 || character === 35);
		const pieces = [...asCarrier(bad, { carrier: 1 }), ...asCarrier(good, { carrier: 2 })].sort((a, b) => a.atS[0]! - b.atS[0]!);
		expect(hear(pieces)).toMatchObject([{ symbols: CALLS[0], ok: true }]);
	});

	it("carries a call on where the demodulator loses its carrier and begins another", () => {
		const softs = clean(elementsOfCall(CALLS[0]!, 20));
		let carried = 0;
		for (let at = 120; at < softs.length - 40; at += 30, carried++) {
			const lost = Float64Array.from([...softs.slice(0, at), ...textbookSofts(chance(150, at), 0, at)]);
			const again = softs.slice(at - 7); // some bits come twice, the second time a little off in time
			const heard = hear([...asCarrier(lost, { carrier: 1 }), ...asCarrier(again, { carrier: 2, fromS: (at - 7) / 100 + 0.002 })]);
			expect(heard, `at ${at}`).toMatchObject([{ symbols: CALLS[0], ok: true }]);
		}
		expect(carried).toBe(16);
		const whole = clean([...elementsOfCall(CALLS[0]!, 20), ...chance(150, 1)]);
		const next = clean(elementsOfCall(CALLS[1]!, 20));
		const heard = hear([...asCarrier(whole), ...asCarrier(next, { carrier: 2, fromS: 8 })]);
		expect(heard.map(({ symbols }) => symbols)).toEqual([CALLS[0], CALLS[1]]); // nothing of a call that was read goes on
	});

	it("gives the same whatever the pieces", () => {
		const elements = [...chance(90, 1), ...elementsOfCall(CALLS[4]!, 200), ...elementsOfCall(CALLS[1]!, 20), ...chance(300, 2)];
		const softs = textbookSofts(elements, 7, 3);
		const whole = hear(asCarrier(softs, { piece: softs.length }));
		expect(whole).toHaveLength(2);
		for (const piece of [1, 7, 64, 500]) expect(hear(asCarrier(softs, { piece }))).toEqual(whole);
	});

	it("gains by the second copies: textbook bits at 7 dB, all copies against the first alone", () => {
		let [both, first, wrong] = [0, 0, 0];
		for (let i = 0; i < 55; i++) {
			const symbols = CALLS[i % 11]!;
			const softs = textbookSofts([...elementsOfCall(symbols, 20), ...chance(100, i)], 7, i + 1);
			const [withBoth] = hearSofts(softs);
			const [withFirst] = hearSofts(erased(softs, 20, (character) => character >= 16 && character % 2 === 1));
			if (withBoth?.ok) both++;
			if (withFirst?.ok) first++;
			for (const one of [withBoth, withFirst]) if (one?.ok && one.symbols.join() !== symbols.join()) wrong++;
		}
		expect(both).toBeGreaterThanOrEqual(52);
		expect(first).toBeLessThanOrEqual(10);
		expect(wrong).toBeLessThanOrEqual(1);
	});

	it("invents nothing: chance bits, strong or weak, dots, and a phasing sequence with chance after it", () => {
		const dots = Array.from({ length: 2_000 }, (_, i) => i % 2);
		const phasing = elementsOfCall(ALERT, 20).slice(0, 180);
		expect(hearSofts(clean(dots))).toEqual([]);
		expect(hearSofts(clean(chance(60_000, 7)))).toEqual([]);
		expect(hearSofts(textbookSofts(chance(60_000, 8), -3, 9))).toEqual([]);
		let tried = 0;
		for (let i = 0; i < 40; i++, tried++) expect(hearSofts(clean([...phasing, ...chance(900, i)]))).toEqual([]);
		expect(tried).toBe(40);
		expect(hearSofts(new Float64Array(3_000).fill(Number.NaN))).toEqual([]);
	});
});

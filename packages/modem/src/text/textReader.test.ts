import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SoftBits } from "../fsk/demodulate.ts";
import { gaussian, prng, type Random } from "../signal/random.ts";
import { codesOfText } from "./codesOfText.ts";
import { collectiveBits } from "./collective.ts";
import type { HeardText } from "./heardText.ts";
import { SEVEN_UNIT } from "./sevenUnit.ts";
import { createTextReader } from "./textReader.ts";

const BAUD = 100;
const PHASING_PAIRS = 16;
const TEXT = "ZCZC FA23\nSUBMARINE CABLE WORK, KEEP 1 MILE OFF 29-99N 044-44W UNTIL 31 OCT. LIGHT LF/R 7 UNLIT\nNNNN";

interface Hearing {
	readonly bits: ArrayLike<number>;
	/** Mean of each bit's log-likelihood ratio; its variance is twice that, as white noise has it. */
	readonly strength?: number;
	readonly random?: Random;
	readonly startS?: number;
	readonly carrier?: number;
	readonly centreHz?: number;
	readonly isOver?: boolean;
}

/** What a demodulator would give for bits. */
function softBits({ bits, strength = 12, random = prng(1), startS = 0, carrier = 1, centreHz = 1_700, isOver = false }: Hearing): SoftBits {
	const noise = gaussian(random);
	const softs = Float64Array.from(bits, (bit) => (bit === 1 ? strength : -strength) + Math.sqrt(2 * strength) * noise());
	const atS = Float64Array.from(bits, (_, i) => startS + (i + 0.5) / BAUD);
	return { carrier, centreHz, uncertaintyHz: 1, snrDb: 0, softs, atS, isOver };
}

function read(...hearings: readonly SoftBits[]): readonly HeardText[] {
	const reader = createTextReader();
	const texts = hearings.flatMap((soft) => reader.bits([soft], soft.atS.at(-1) ?? 0));
	return [...texts, ...reader.end(Math.max(...hearings.flatMap(({ atS }) => atS.at(-1) ?? 0)))];
}

const BITS = collectiveBits(TEXT);

/** All in letters: "3" and "E" are one key. */
const keys = (text: string) => [...text].map((sign) => SEVEN_UNIT.find(({ figure }) => figure === sign)?.letter ?? sign).join("");

describe("createTextReader", () => {
	it("prints a text from whichever end of the tones", () => {
		const [upright, ...more] = read(softBits({ bits: BITS }));
		const [inverted] = read(softBits({ bits: BITS.map((bit) => 1 - bit) }));
		expect(more).toEqual([]);
		expect(upright).toMatchObject({ text: TEXT, gaps: [], isInverted: false, errorRatio: 0 });
		expect(inverted).toEqual({
			...upright,
			isInverted: true,
			summary: `${upright!.summary} The tones came exchanged: wrong sideband or sense.`,
		});
	});

	it("keeps of any cut of the stream what lies wholly inside, in its order", () => {
		let compared = 0;
		const codes = codesOfText(TEXT);
		fc.assert(
			fc.property(fc.integer({ min: 0, max: BITS.length - 420 }), fc.integer({ min: 420, max: BITS.length }), (from, length) => {
				const to = Math.min(BITS.length, from + length);
				const [heard] = read(softBits({ bits: BITS.slice(from, to) }));
				const inside = codes.filter((_, i) => 7 * 2 * (PHASING_PAIRS + i) >= from && 7 * (2 * (PHASING_PAIRS + i) + 6) <= to).length;
				if (inside < 20) return; // counted below
				compared++;
				expect(heard!.characters).toBeGreaterThanOrEqual(inside - 3); // shift and line end at the edges print nothing
				expect(heard!.lostCharacters).toBeLessThanOrEqual(1);
				const isLate = 7 * (2 * (PHASING_PAIRS + 4) + 5) < from; // ZCZC in neither copy
				if (isLate) expect(heard!.gaps).toContain("joined late");
				// a shift outside the cut is not known: compared as on the keys
				expect(keys(TEXT)).toMatch(
					new RegExp(
						keys(heard!.text)
							.replaceAll(/[.+?()]/g, "\\$&")
							.replaceAll("*", ".?"),
					),
				);
			}),
			{ seed: 625, numRuns: 150 },
		);
		expect(compared).toBeGreaterThan(100);
	});

	it("never throws nor prints for soft bits by chance, whatever they are", () => {
		let runs = 0;
		const numbers = fc.oneof(fc.double(), fc.double({ min: -20, max: 20, noNaN: true }), fc.constantFrom(0, 1e300, -1e300, Number.NaN));
		fc.assert(
			fc.property(fc.array(numbers, { maxLength: 3_000, size: "max" }), (softs) => {
				runs++;
				expect(read({ ...softBits({ bits: softs }), softs: Float64Array.from(softs) })).toEqual([]);
			}),
			{ seed: 476, numRuns: 40 },
		);
		expect(runs).toBe(40);
	});

	it("gives nothing for an hour of soft bits by chance, sure of themselves or not", () => {
		const random = prng(9);
		const noise = gaussian(random);
		const reader = createTextReader();
		let heard = 0;
		for (let block = 0; block < 5_625; block++) {
			const softs = Float64Array.from({ length: 64 }, () => noise() * (block % 2 === 0 ? 3 : 20));
			heard += reader.bits([{ ...softBits({ bits: softs, startS: block * 0.64 }), softs }], block * 0.64).length;
		}
		expect(heard + reader.end(5_625 * 0.64).length).toBe(0);
	});

	it("gives nothing for idle signals alone, though from any of seven bits on they are another character", () => {
		const idle = Array.from({ length: 3_000 }, (_, i) => (i % 7 < 4 ? 1 : 0));
		for (let from = 0; from < 14; from++) expect(read(softBits({ bits: idle.slice(from) }))).toEqual([]);
	});

	it("tells a plain text that began after phasing and ended in idle signals to be whole", () => {
		const [heard, ...more] = read(softBits({ bits: collectiveBits("MEDICO 299-14") }));
		expect(more).toEqual([]);
		expect(heard).toMatchObject({ text: "MEDICO 299-14", gaps: [], identity: null });
	});

	it("prints once what two carriers give of the same bits, where the second follows the first", () => {
		const [heard, ...more] = read(
			softBits({ bits: BITS.slice(0, 1_000), isOver: true }),
			softBits({ bits: BITS.slice(700), startS: 7, carrier: 2, centreHz: 1_702 }),
		);
		expect(more).toEqual([]);
		expect(heard).toMatchObject({ text: TEXT, gaps: [], lostCharacters: 0 });
	});

	it("finds its place again after a bit slipped, and loses a few characters by it", () => {
		for (const slipped of [[...BITS].toSpliced(700, 1), [...BITS].toSpliced(700, 0, 1)]) {
			const [heard, ...more] = read(softBits({ bits: slipped }));
			expect(more).toEqual([]);
			expect(heard!.text.startsWith(TEXT.slice(0, 25))).toBe(true);
			expect(heard!.text.endsWith(TEXT.slice(-25))).toBe(true);
			expect(heard!.lostCharacters).toBeLessThanOrEqual(5);
			expect(heard!.gaps).toEqual([]);
		}
	});

	it("prints marks of loss for a hole of some seconds, though the demodulator gave the carrier up in it", () => {
		const [heard, ...more] = read(
			softBits({ bits: BITS.slice(0, 700), isOver: true }),
			softBits({ bits: BITS.slice(1_200), startS: 12, carrier: 2, centreHz: 1_703 }),
		);
		expect(more).toEqual([]);
		expect(heard!.gaps).toEqual([]);
		expect(heard!.text).toMatch(/^ZCZC FA23\nSUBMARINE CABLE[^*]*\*+[^*]*LIGHT LF\/R 7 UNLIT\nNNNN$/);
		const missing = 500 / 14;
		expect(heard!.lostCharacters).toBeGreaterThan(missing - 6);
		expect(heard!.lostCharacters).toBeLessThan(missing + 1);
		expect(heard!.characters).toBe(codesOfText(TEXT).length - 1); // the first shift prints nothing and is not counted
	});

	it("says that a signal faded out, once it has been away for long", () => {
		const reader = createTextReader();
		expect(reader.bits([softBits({ bits: BITS.slice(0, 900), isOver: true })], 9)).toEqual([]);
		expect(reader.bits([], 25)).toEqual([]);
		const [heard, ...more] = reader.bits([], 30);
		expect(more).toEqual([]);
		expect(heard!.gaps).toEqual(["faded out"]);
		expect(heard!.text.startsWith("ZCZC FA23\nSUBMARINE CABLE WORK")).toBe(true);
		expect(reader.end(40)).toEqual([]);
	});

	it("reads two senders at once, each by itself", () => {
		const other = "ZCZC LL01\nTARGET TOWING\nNNNN";
		const texts = read(softBits({ bits: BITS }), softBits({ bits: collectiveBits(other), carrier: 2, centreHz: 2_200 }));
		expect(texts.map(({ text, audioHz }) => [text, audioHz])).toEqual([
			[TEXT, 1_700],
			[other, 2_200],
		]);
	});

	it("weighs both copies, and of one bit in twelve wrong loses one character in twelve", () => {
		// as white noise has it, ratios of mean 4 and variance 8: 7.9 % of the signs are wrong. Both copies' sum confuses a signal with
		// one of the twelve that differ in two places in up to 12 Q(sqrt(8)) = 2.8 % of cases at best; some more are too unsure to print
		const circle = "ABCDEFGHIJKLMNOPQRSTUVWXYZ ";
		const bits = collectiveBits(circle.repeat(40));
		const soft = softBits({ bits, strength: 4, random: prng(7) });
		expect(soft.softs.filter((llr, i) => llr > 0 !== (bits[i] === 1)).length / bits.length).toBeGreaterThan(0.07);
		const [heard] = read(soft);
		expect(heard!.characters).toBeGreaterThan(40 * circle.length - 5);
		expect(heard!.errorRatio).toBeLessThan(0.07); // one copy alone has 1 - 0.921^7 = 44 % of its signals wrong
		const neighbours = [...heard!.text].map((sign, i) => sign + (heard!.text[i + 1] ?? "*")).filter((two) => !two.includes("*"));
		const wrong = neighbours.filter((two) => !(circle + circle).includes(two)).length / 2; // each is wrong against both its neighbours
		expect(neighbours.length).toBeGreaterThan(900);
		expect(wrong / neighbours.length).toBeLessThan(0.01);
	});
});

import { describe, expect, it } from "vitest";
import { codesOfText } from "./codesOfText.ts";
import { createMessageSplitter, type SplitText } from "./messageSplitter.ts";
import { LOST } from "./printer.ts";
import { ALPHA, FIGS, LTRS, RPT } from "./sevenUnit.ts";

const IDLE = Array.from({ length: 20 }, () => ALPHA);

/** Splits signals that follow one another without a gap; the stream ends `laterS` after the last. */
function split(codes: readonly number[], laterS = 0.2): readonly SplitText[] {
	const splitter = createMessageSplitter();
	const mark = (i: number) => ({ atS: 1 + i * 0.14, centreHz: 1_700, uncertaintyHz: 1, snrDb: 10 });
	const texts = codes.flatMap((code, i) => splitter.signal({ code, doubt: 0, mark: mark(i), isInverted: false }));
	return [...texts, ...splitter.end(mark(codes.length).atS + laterS)];
}

/** Those of a text, the signal at each place given lost. */
const lossy = (text: string, ...lost: readonly number[]) => codesOfText(text).map((code, i) => (lost.includes(i) ? LOST : code));

describe("createMessageSplitter", () => {
	it.each([
		["whole", [...IDLE, ...codesOfText("ZCZC PB00\nGALE\nNNNN\n"), ...IDLE], []],
		["without its beginning", [...codesOfText("GALE WARNING\nNNNN\n"), ...IDLE], ["joined late"]],
		["without its end", [...IDLE, ...codesOfText("ZCZC PB00\nGALE W")], ["recording stopped"]],
		["with neither", codesOfText("GALE WARN"), ["joined late", "recording stopped"]],
		["let go by its sender", [RPT, RPT, ...codesOfText("ZCZC PB00\nGALE\n"), ...IDLE], ["ended without NNNN"]],
		["plain", [RPT, RPT, ...codesOfText("ALL SHIPS"), ...IDLE], []],
	])("tells a text %s", (_, codes, gaps) => {
		const [text, ...more] = split(codes);
		expect(more).toEqual([]);
		expect(text!.gaps).toEqual(gaps);
	});

	it("tells a signal that went from a recording that stopped", () => {
		expect(split(codesOfText("ZCZC PB01\nGALE WARNING"), 5)[0]!.gaps).toEqual(["faded out"]);
		expect(split([RPT, ...codesOfText("ALL SHIPS"), ...IDLE.slice(0, 5)])[0]!.gaps).toEqual([]); // idle: it had ended
	});

	it("begins a new message where the last had no end", () => {
		const texts = split([RPT, ...codesOfText("ZCZC PA10\nBUOY ADRIFT\nZCZC PA11\nBUOY FOUND\nNNNN\n")]);
		expect(texts.map(({ text, gaps }) => [text, gaps])).toEqual([
			["ZCZC PA10\nBUOY ADRIFT", ["next message began"]],
			["ZCZC PA11\nBUOY FOUND\nNNNN", []],
		]);
	});

	it("knows the frame with one signal of either sign lost", () => {
		const text = "ZCZC PD07\nSHIP ON FIRE\nNNNN\n";
		const codes = codesOfText(text);
		const end = codes.length - 6; // NNNN, carriage return, line feed
		const identity = { station: "P", subject: "D", number: "07" };
		for (const lost of [1, 2, 3, 4]) expect(split([RPT, ...lossy(text, lost)])[0]).toMatchObject({ gaps: [], lostCharacters: 1, identity });
		for (const lost of [0, 1, 2, 3]) expect(split([RPT, ...lossy(text, end + lost)])[0]!.gaps).toEqual([]);
		const two = split([RPT, ...lossy(text, end, end + 1), ...IDLE])[0]!;
		expect(two.gaps).toEqual(["ended without NNNN"]);
	});

	it("reads the frame and the number by their signals where a shift was lost", () => {
		const codes = codesOfText("SPEED 7\nZCZC EB45\nCALM\nNNNN\n").filter((code, i) => !((code === LTRS || code === FIGS) && i > 8));
		const [before, message] = split([RPT, ...codes]);
		expect(before!.gaps).toEqual(["next message began"]);
		expect(message!.text).toBe("ZCZC EBRT\nCALM\nNNNN");
		expect(message!.identity).toEqual({ station: "E", subject: "B", about: "meteorological warnings", number: "45" });
	});

	it("goes back to letters, from the signal lost, where figures no text has show that it was the shift", () => {
		const text = "WIND 7 TO 8 NEAR THE COAST GALE";
		const codes = codesOfText(text);
		const shift = codes.lastIndexOf(LTRS);
		expect(split([RPT, ...lossy(text, shift), ...IDLE])[0]!.text).toBe("WIND 7 TO 8 *NEAR THE COAST GALE");
		expect(split([RPT, ...codesOfText("WIND 7! 8& 9#"), ...IDLE])[0]!.text).toBe("WIND 7! 8& 9#"); // nothing lost: as sent
	});

	it("keeps marks of loss in the identity, and hides no message for them", () => {
		const [text] = split([RPT, ...lossy("ZCZC PD00\nSEARCH\nNNNN\n", 7, 9)]);
		expect(text!.identity).toEqual({ station: "P", subject: "*", about: "subject lost", number: "*0" });
		expect(text!.lostCharacters).toBe(2);
		for (const lost of [5, 8]) expect(split([RPT, ...lossy("ZCZC PD27\nSEARCH\nNNNN\n", lost)])[0]!.identity!.number).toBe("27"); // space, shift
	});

	it("counts lost signals inside a text and not those among idle ones", () => {
		const lost = [LOST, LOST];
		const [text] = split([
			ALPHA,
			...lost,
			ALPHA,
			...codesOfText("ALL SH"),
			...lost,
			...codesOfText("IPS"),
			...lost,
			ALPHA,
			...lost,
			...IDLE,
		]);
		expect(text).toMatchObject({ text: "ALL SH**IPS", characters: 12, lostCharacters: 2 });
	});

	it("gives nothing for idle signals, a few letters, or more losses than print", () => {
		expect(split([...IDLE, ...codesOfText("AAAA"), ...IDLE])).toEqual([]);
		expect(split([...IDLE, RPT, ALPHA, LOST, ...IDLE])).toEqual([]);
		expect(split(lossy("ABCDEFGHIJKLMNOP", 2, 3, 4, 6, 7, 8, 10, 11, 12, 14))).toEqual([]);
	});
});

import { directory, listingById } from "@skipwright/directory";
import type { Heard } from "@skipwright/modem";
import { createTextReceiver, FRAME_SAMPLES, type HeardText, makeText, navtexText, offTune, prng, withNoiseAtSnr } from "@skipwright/modem";
import { profileNamed } from "@skipwright/set";
import { hz } from "@skipwright/units";
import { afterAll, describe, expect, it } from "vitest";
import type { Expectation } from "./expectation.ts";
import { type DialOfPlace, expectationOf } from "./expectationOf.ts";
import { chartItem, dscItem, teletypeItem, textItem, toneItem, voiceItem } from "./heardItems.sample.ts";
import { namedAs } from "./namedAs.ts";
import { placeVerdict } from "./placeVerdict.ts";
import { type Predicted, RESULTS, type Verdict, verdict } from "./verdict.ts";

const OPTIONS = { ownMmsi: "299123456", stepHz: 100 };
const OPEN: Predicted = { chance: 0.9, isDue: true };
const CLOSED: Predicted = { chance: 0.03, isDue: true };
const UNKNOWN: Predicted = { chance: null, isDue: null };
const NEAR: Predicted = { chance: null, isDue: true };
const NOT_IT = "not proved for the station; tuned right";
const OFF_NOT_IT = "off tune; not proved for the station";
const letterItem = (station: string) => textItem({ identity: { ...textItem().identity!, station } });

function expected(id: string, at: DialOfPlace | null = null): Expectation {
	const found = expectationOf(listingById(directory(), id)!, directory(), profileNamed("twin-180")!, at);
	if ("cannot" in found) throw new Error(found.cannot);
	return found;
}

const NAVTEX = expected("navtex-capetown/navtex/518");
const NBDP = expected("za-capetown/nbdp-msi/8428.5");
const DSC = expected("za-capetown/dsc-watch/8414.5");
const CHART = expected("us-pointreyes/fax/8682");
const CHART_LSB = expected("us-pointreyes/fax/8682", { receiveHz: hz(8_683_900), mode: "LSB" });
const dark = { width: 100, height: 600, pixels: new Uint8Array(60_000).fill(10) };
const TELETYPE = expected("de-pinneberg/rtty-weather/10100.8");
const VOICE = expected("za-capetown/voice-weather/8719");
const VOICE_AM = expected("de-pinneberg/voice-weather/6180");
const WORKING = expected("za-capetown/voice-working/8779");
const WWV_AM = expected("us-wwv/time-signal/10000");
const WWV_USB = expected("us-wwv/time-signal/10000", { receiveHz: hz(9_999_000), mode: "USB" });
const RWM = expected("ru-rwm/time-signal/9996");
const NAVTEX_LSB = expected("navtex-capetown/navtex/518", { receiveHz: hz(519_700), mode: "LSB" });

const OWN_CALL = dscItem({ from: "299123456", to: "006010001", end: "acknowledgement asked" }, { snrDb: 50, audioHz: 1_780 });

type Row = readonly [what: string, expectation: Expectation, heard: readonly Heard[], predicted: Predicted, words: string, why: RegExp];

const TABLE: readonly Row[] = [
	// proved
	["NAVTEX of the station expected", NAVTEX, [textItem()], OPEN, "proved", /station C, as expected/],
	["the same a little late", NAVTEX, [textItem()], { chance: 0.9, isDue: false, isNearDue: true }, "proved", /station C, as expected/],
	["the same near by, where nothing predicts it", NAVTEX, [textItem()], { ...NEAR, distanceNm: 599 }, "proved", /station C, as expected/],
	["NAVTEX 10 Hz off less its uncertainty", NAVTEX, [textItem({ audioHz: 1_709 })], OPEN, "proved", /within tolerance/],
	["NAVTEX too near the limit to tell", NAVTEX, [textItem({ audioHz: 1_710.2 })], OPEN, "proved", /too near the tolerance/],
	["text without a name at its time", NBDP, [textItem({ identity: null })], OPEN, "proved", /does not name its sender/],
	["the answer to the ship's own test", DSC, [dscItem()], OPEN, "proved", /receiving and sending both work/],
	["the answer after the louder call itself", DSC, [OWN_CALL, dscItem()], OPEN, "proved", /receiving and sending both work/],
	["the answer by another station of the same system", DSC, [dscItem({ from: "003669999" })], OPEN, "proved", /by 003669999/],
	[
		"any call free of errors",
		DSC,
		[dscItem({ to: "006010001", from: "299000111", end: "acknowledgement asked" })],
		OPEN,
		"proved",
		/nothing shows that this coast station hears the ship/,
	],
	["a chart", CHART, [chartItem()], OPEN, "proved", /chart of 600 lines/],
	[
		"a chart joined in the middle, at its time",
		CHART,
		[chartItem({ began: "mid-chart", phaseFrom: "nothing" })],
		OPEN,
		"proved",
		/at its time/,
	],
	["teletype", TELETYPE, [teletypeItem()], OPEN, "proved", /50 baud, 450 Hz apart/],
	["a time station's tones in AM", WWV_AM, [toneItem(600)], OPEN, "proved", /In AM a tone comes out right/],
	["carrier and tones, 1 kHz below on USB", WWV_USB, [toneItem(1_005), toneItem(1_605)], OPEN, "proved", /reads 5\.0 Hz high/],
	["on LSB black and white come exchanged by right", CHART_LSB, [chartItem({ image: dark })], OPEN, "proved", /within tolerance/],
	["on LSB the tones come exchanged by right", NAVTEX_LSB, [textItem({ isInverted: true })], OPEN, "proved", /within tolerance/],
	[
		"tones that moved in proportion: the recorder's clock",
		WWV_USB,
		[toneItem(1_004), toneItem(1_606.4)],
		OPEN,
		"proved",
		/recorder's clock runs slow/,
	],
	// off tune
	["NAVTEX 23 Hz high", NAVTEX, [textItem({ audioHz: 1_723 })], OPEN, "off tune", /reads 23\.0 Hz high/],
	[
		"NAVTEX 23 Hz high on LSB is a dial that reads low",
		NAVTEX_LSB,
		[textItem({ audioHz: 1_723, isInverted: true })],
		OPEN,
		"off tune",
		/reads 23\.0 Hz low/,
	],
	["a letter out of reach tells the tuning", NAVTEX, [textItem({ audioHz: 1_723 })], CLOSED, OFF_NOT_IT, /reads 23\.0 Hz high/],
	["NAVTEX a step and more low", NAVTEX, [textItem({ audioHz: 1_580 })], OPEN, "off tune", /down 1 step of 100 Hz/],
	[
		"text taken with the offset of charts",
		NBDP,
		[textItem({ identity: null, audioHz: 1_900 })],
		OPEN,
		"off tune",
		/offset of 1\.9 kHz was taken in place/,
	],
	["text with the offset taken twice", NBDP, [textItem({ identity: null, audioHz: 3_402 })], OPEN, "off tune", /taken twice/],
	[
		"a chart taken with the offset of text",
		CHART,
		[chartItem({ audioHz: 1_700, blackHz: 1_300, whiteHz: 2_100 })],
		OPEN,
		"off tune",
		/1\.7 kHz was taken in place/,
	],
	["a chart 30 Hz off", CHART, [chartItem({ audioHz: 1_930 })], OPEN, "off tune", /30\.0 Hz high/],
	["wrong sideband", NAVTEX, [textItem({ isInverted: true })], OPEN, "off tune", /wrong sideband/],
	["wrong sideband on a place for LSB", NAVTEX_LSB, [textItem()], OPEN, "off tune", /wrong sideband/],
	["a dial keyed wrong by 1 kHz", TELETYPE, [teletypeItem({ audioHz: 2_700 })], OPEN, "off tune", /1 kHz slip/],
	["tones all 15 Hz off", WWV_USB, [toneItem(1_015), toneItem(1_615)], OPEN, "off tune", /15\.0 Hz high/],
	["speech where no speech lies", VOICE, [voiceItem({ isOutOfPlace: true })], OPEN, "off tune", /wrong sideband, or far off/],
	["a chart gone dark", CHART, [chartItem({ image: dark })], OPEN, "off tune", /mostly black/],
	["a call 40 Hz off", DSC, [dscItem({}, { audioHz: 1_740 })], OPEN, "off tune", /40\.0 Hz high/],
	// likely
	["speech", VOICE, [voiceItem()], OPEN, "likely", /the ear must say/],
	["text without a name, nobody knows when", NBDP, [textItem({ identity: null })], UNKNOWN, "likely", /its time not known/],
	["text with too many losses", NBDP, [textItem({ identity: null, errorRatio: 0.05 })], OPEN, "likely", /5\.0 % lost/],
	["teletype with another shift", TELETYPE, [teletypeItem({ shiftHz: 170 })], OPEN, "likely", /listed with 50 baud, 450 or 850 Hz apart/],
	["speech in AM", VOICE_AM, [voiceItem({ isOutOfPlace: true })], OPEN, "likely", /the ear must say/],
	["a snatch of teletype", TELETYPE, [teletypeItem({ characters: 12 })], OPEN, "likely", /too short/],
	["a strip of chart", CHART, [chartItem({ startS: 2, endS: 20 })], OPEN, "likely", /too little/],
	[
		"a chart in the middle, nobody knows when",
		CHART,
		[chartItem({ began: "mid-chart", phaseFrom: "nothing" })],
		UNKNOWN,
		"likely",
		/its time not known/,
	],
	["the ship's own test as sent", DSC, [OWN_CALL], OPEN, "likely", /neither the receiver's tuning nor that anybody heard/],
	["a call with errors", DSC, [dscItem({}, { ok: false })], OPEN, "likely", /not free of errors/],
	// not proved
	["nothing, though it was on the air and open", NAVTEX, [], OPEN, "not proved", /chance of 90 %/],
	["a letter predicted not to be heard", NAVTEX, [textItem()], CLOSED, NOT_IT, /no station C is due and in reach here: not the one/],
	["a letter at another's time", NAVTEX, [textItem()], { chance: 0.9, isDue: false }, NOT_IT, /no station C is due and in reach here/],
	["a letter from afar, nothing predicted", NAVTEX, [textItem()], { ...NEAR, distanceNm: 601 }, NOT_IT, /not the one expected/],
	["NAVTEX of another station", NAVTEX, [letterItem("I")], OPEN, NOT_IT, /station I was read; station C was expected/],
	["a letter out of reach, far off tune", NAVTEX, [textItem({ audioHz: 1_002 })], CLOSED, OFF_NOT_IT, /reads 698\.0 Hz low/],
	["something else", NAVTEX, [teletypeItem()], OPEN, "not proved", /Nothing of the kind/],
	[
		"a text too far off to be this one",
		NBDP,
		[textItem({ identity: null, audioHz: 1_150 })],
		OPEN,
		"not proved",
		/sooner another station's/,
	],
	["in AM a tone comes out right or is another's", WWV_AM, [toneItem(612)], OPEN, "not proved", /Nothing of the kind/],
	["no tone near those expected", WWV_AM, [toneItem(1_200)], OPEN, "not proved", /Nothing of the kind/],
	// cannot tell
	[
		"a letter, nobody knows when",
		NAVTEX,
		[textItem()],
		UNKNOWN,
		"cannot tell: which station; tuned right",
		/which station C cannot be told/,
	],
	[
		"a letter, times of sending not known",
		NAVTEX,
		[textItem()],
		{ chance: 0.9, isDue: null },
		"cannot tell: which station; tuned right",
		/within tol/,
	],
	["a dead band", NAVTEX, [], CLOSED, "cannot tell: band predicted closed", /silence is no fault/],
	["a dead band where a watch is kept", DSC, [], CLOSED, "cannot tell: band predicted closed", /3 %/],
	["nothing due", NAVTEX, [], { chance: 0.9, isDue: false }, "cannot tell: nothing was due", /not on the air then/],
	["a station that keeps watch", WORKING, [], OPEN, "cannot tell: nothing was due", /only when called/],
	["nothing predicted", NAVTEX, [], { chance: null, isDue: true }, "cannot tell: nothing predicted", /silence shows nothing/],
	["time not known", NAVTEX, [], { chance: 0.9, isDue: null }, "cannot tell: nothing predicted", /silence shows nothing/],
	["a time station of which no tone is known", RWM, [toneItem(700)], OPEN, "cannot tell: no steady tone is known", /1000 Hz/],
];

const reached = new Map<string, number>();

describe("verdict", () => {
	it.each(TABLE)("%s", (_, expectation, heard, predicted, words, why) => {
		const found = verdict(expectation, heard, predicted, OPTIONS);
		expect(found.words).toBe(words);
		expect(found.why.join("\n")).toMatch(why);
		const isBothWays = found.why.some((line) => line.includes("sending both"));
		if (found.item !== null) expect(found.why.includes("Listening proves nothing of the sending side.")).toBe(!isBothWays);
		reached.set(found.result, (reached.get(found.result) ?? 0) + 1);
	});

	afterAll(() => {
		expect(Object.fromEntries(reached)).toEqual({ proved: 18, "off tune": 16, likely: 10, "not proved": 9, "cannot tell": 9 });
		expect(reached.size).toBe(RESULTS.length);
	});

	it("takes the best of several items", () => {
		const found = verdict(NAVTEX, [textItem({ audioHz: 1_723 }), textItem({ audioHz: 1_701 }), toneItem(500)], OPEN, OPTIONS);
		expect(found).toMatchObject({ result: "proved", offsetHz: 1 });
	});

	it("counts another ship's answered test as a call received, never as the ship's own", () => {
		expect(verdict(DSC, [dscItem()], OPEN, { ...OPTIONS, ownMmsi: "299000111" }).why.join(" ")).toMatch(/nothing shows/);
		expect(verdict(DSC, [dscItem()], OPEN, { ...OPTIONS, ownMmsi: null }).why.join(" ")).toMatch(/nothing shows/);
	});

	it("gives the steps from where the dial stood", () => {
		const found = verdict(NAVTEX, [textItem({ audioHz: 1_960 })], OPEN, { ...OPTIONS, dialHz: 517_700 });
		expect(found).toMatchObject({ result: "off tune", steps: 3, offsetHz: 260 });
		expect(found.why.join(" ")).toMatch(/to 518 kHz/);
	});
});

describe("a made NAVTEX message through receiver and verdict", () => {
	const made = makeText(
		navtexText({ station: "C", subject: "A", number: 12, body: "LIGHT UNLIT IN POSITION 33-54S 018-25E\nMARINERS KEEP CLEAR" }),
	);

	function heard(offsetHz: number): readonly HeardText[] {
		const receiver = createTextReceiver();
		const audio = withNoiseAtSnr(offTune(made, offsetHz), 10, { random: prng(5) });
		const items: HeardText[] = [];
		for (let at = 0; at + FRAME_SAMPLES <= audio.length; at += FRAME_SAMPLES)
			items.push(...receiver.frame(audio.slice(at, at + FRAME_SAMPLES)));
		return [...items, ...receiver.end()];
	}

	it.each([
		[0, "proved"],
		[-8, "proved"],
		[23, "off tune"],
		[-40, "off tune"],
	] as const)("%i Hz: %s", (offsetHz, result) => {
		const found = verdict(NAVTEX, heard(offsetHz), OPEN, OPTIONS);
		expect(found.result).toBe(result);
		expect(Math.abs(found.offsetHz! - offsetHz)).toBeLessThan(1);
	});
});

describe("placeVerdict", () => {
	const port = expected("navtex-portelizabeth/navtex/518"); // letter I
	const open = (expectation: Expectation, chance: number) => ({ expectation, predicted: { chance, isDue: true } });

	it("is of the station whose letter was read, however likely the others are", () => {
		const found = placeVerdict([open(port, 0.99), open(NAVTEX, 0.5)], [textItem()], OPTIONS);
		expect(found).toMatchObject({
			expectation: { listing: "navtex-capetown/navtex/518" },
			verdict: { result: "proved", grade: "identity" },
		});
	});

	it("of several with the letter names the one in reach, none where several are or none is", () => {
		const twin = { ...NAVTEX, listing: "far", what: "Far (NAVTEX)" };
		const both = (chance: number, own: number) =>
			placeVerdict([open(twin, chance), open(NAVTEX, own), open(port, 0.9)], [textItem()], OPTIONS)!;
		expect(both(0.01, 0.5)).toMatchObject({ expectation: { listing: NAVTEX.listing }, verdict: { result: "proved", isNamed: true } });
		const unsure = both(0.3, 0.5);
		expect(unsure.verdict).toMatchObject({ result: "proved", isNamed: false });
		expect(unsure.verdict.why[0]).toMatch(/station C was read; several were due and in reach, .*: Cape Town .*; Far \(NAVTEX\)\.$/);
		expect(namedAs(unsure.expectation, unsure.verdict)).toEqual({ listing: null, what: "NAVTEX text, 518 kHz" });
		const neither = both(0.01, 0.1);
		expect(neither.verdict).toMatchObject({ words: NOT_IT, isNamed: false, offsetHz: 0 });
		expect(neither.verdict.why[0]).toBe("A message of station C was read; no station C is due and in reach here: not the one expected.");
	});

	it("of a letter that no station of the place has names none; without the time it cannot tell which", () => {
		const none = placeVerdict([open(NAVTEX, 0.5), open(port, 0.9)], [letterItem("E")], OPTIONS)!;
		expect(none.verdict).toMatchObject({ words: NOT_IT, isNamed: false });
		expect(none.verdict.why[0]).toMatch(/station E was read; no station of this place has that letter: not the one expected/);
		const unknown = [port, NAVTEX].map((expectation) => ({ expectation, predicted: UNKNOWN }));
		expect(placeVerdict(unknown, [textItem()], OPTIONS)).toMatchObject({
			expectation: { listing: NAVTEX.listing },
			verdict: { words: "cannot tell: which station; tuned right", isNamed: false },
		});
	});

	it("is of the likeliest where none is heard", () => {
		expect(placeVerdict([open(NAVTEX, 0.5), open(port, 0.99)], [], OPTIONS)).toMatchObject({
			expectation: { listing: port.listing },
			verdict: { result: "not proved" },
		});
		expect(placeVerdict([], [], OPTIONS)).toBeNull();
	});

	it("is not proved where one of several should have been heard, cannot tell where none", () => {
		const results = [0.9, 0.1].map(
			(chance): Verdict["result"] => placeVerdict([open(NAVTEX, 0.01), open(port, chance)], [], OPTIONS)!.verdict.result,
		);
		expect(results).toEqual(["not proved", "cannot tell"]);
	});
});

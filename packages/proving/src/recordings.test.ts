import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { directory, listingById } from "@skipwright/directory";
import { createListener, type Heard, type HeardKind, readWav } from "@skipwright/modem";
import { type Profile, profileNamed } from "@skipwright/set";
import { hz } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { expectationOf } from "./expectationOf.ts";
import { verdict } from "./verdict.ts";

const RECORDINGS = join(import.meta.dirname, "../../../../shared/recordings");
const present = existsSync(RECORDINGS);
if (!present) console.info("recordings off the air are not at hand (../shared/recordings): no verdict on them");

function heard(file: string, kinds: readonly HeardKind[]): readonly Heard[] {
	const { data, format } = readWav(file, readFileSync(join(RECORDINGS, file)));
	const listener = createListener({ rateHz: format.rateHz, kinds });
	return [...listener.push(data), ...listener.end()];
}

/** The set as the recorder's was: its tones came out about this centre. */
function judged(file: string, kinds: readonly HeardKind[], id: string, audioCentreHz: number, receiveHz?: number) {
	const profile: Profile = { ...profileNamed("twin-180")!, modes: { USB: { shows: "carrier", audioCentreHz } } };
	const at = receiveHz === undefined ? null : { receiveHz: hz(receiveHz), mode: "USB" as const };
	const expectation = expectationOf(listingById(directory(), id)!, directory(), profile, at);
	if ("cannot" in expectation) throw new Error(expectation.cannot);
	return verdict(expectation, heard(file, kinds), { chance: 0.9, isDue: true }, { stepHz: 10 });
}

describe.skipIf(!present)("recordings off the air", () => {
	it("a NAVTEX message of a station E proves it: its tones, 917 and 1087 Hz, lie about 1000 Hz", () => {
		const found = judged("text-518-118s.wav", ["text"], "navtex-niton/navtex/518", 1_000);
		expect(found).toMatchObject({ result: "proved", grade: "identity" });
		expect(Math.abs(found.offsetHz! - 2)).toBeLessThan(2);
	});

	it("the same with the usual 1700 Hz is far off tune", () => {
		expect(judged("text-518-118s.wav", ["text"], "navtex-niton/navtex/518", 1_700)).toMatchObject({
			result: "off tune",
			grade: "identity",
		});
	});

	it("weather teletype 24 Hz below the 2000 Hz of the recorder's set: dial too high by that", () => {
		const found = judged("teletype-50bd-450hz.wav", ["teletype"], "de-pinneberg/rtty-weather/10100.8", 2_000);
		expect(found).toMatchObject({ result: "off tune", grade: "signal", steps: -2 });
		expect(Math.abs(found.offsetHz! + 24)).toBeLessThan(2);
	});
});

import { describe, expect, it } from "vitest";
import { DSC_WATCH_RULE, dscWatchProblems } from "./dscWatchProblems.ts";
import type { Profile } from "./profile.ts";
import { settingLines } from "./settingLines.ts";
import { type Settings, SettingsSchema } from "./settings.ts";
import { shippedProfiles } from "./shippedProfiles.ts";
import type { SettingLine } from "./types.ts";

const [twin, single, receiver] = shippedProfiles() as [Profile, Profile, Profile];
/** A ship's form with the MID 299, which is allocated to nobody: no vessel's identity. */
const SHIP = "299123450";

function lineOf(name: string, found: Settings | null, wanted: Settings, profile = twin): SettingLine {
	const line = settingLines(profile, found, wanted).find((candidate) => candidate.name === name);
	if (line === undefined) throw new Error(`no line for ${name}`);
	return line;
}

describe("settingLines", () => {
	it("lists every setting beside the places once, in a fixed order", () => {
		const everything: Settings = { sense: "normal", shiftHz: 170, tuner: "in", squelch: "level" };
		expect(settingLines(twin, everything, {}).map(({ name }) => name)).toEqual([
			"dial shows, USB",
			"dial shows, LSB",
			"dial shows, AM",
			"dial shows, CW",
			"dial shows, FSK",
			"squelch",
			"FSK sense",
			"FSK shift",
			"power",
			"antenna tuner",
			"transmit lock",
			"DSC watch, kHz",
			"position feed",
			"MMSI",
		]);
	});

	it("leaves out what a set cannot have: no FSK, no transmit, no DSC", () => {
		expect(settingLines(single, null, {}).some(({ name }) => name.startsWith("FSK"))).toBe(false);
		const names = settingLines(receiver, null, {}).map(({ name }) => name);
		for (const name of ["power", "antenna tuner", "transmit lock", "DSC watch, kHz", "position feed", "MMSI"])
			expect(names).not.toContain(name);
	});

	it("has what the profile says of a display proved, not set, and warns where the set or the wish differs", () => {
		expect(lineOf("dial shows, USB", null, { dialForms: { USB: "carrier" } })).toEqual(lineOf("dial shows, USB", null, {}));
		expect(lineOf("dial shows, USB", null, {})).toMatchObject({ asFound: "not read", wanted: "prove: carrier" });
		expect(lineOf("dial shows, USB", null, {}).note).toMatch(/not to be set: prove it on a station of known frequency/);
		expect(lineOf("dial shows, FSK", { dialForms: { FSK: "mark" } }, {}).wanted).toBe("centre");
		expect(lineOf("dial shows, FSK", null, { dialForms: { FSK: "mark" } }).wanted).toBe("mark?");
		expect(lineOf("dial shows, FSK", { dialForms: { FSK: "mark" } }, {}).note).toMatch(/every FSK dial of this sheet is wrong/);
		expect(lineOf("dial shows, FSK", null, { dialForms: { FSK: "mark" } }).note).toMatch(/the profile says centre/);
		expect(lineOf("FSK shift", { shiftHz: 850 }, {})).toMatchObject({ asFound: "850 Hz", wanted: "170 Hz" });
	});

	it("says that a CW dial shows the carrier less the pitch, where the set has one", () => {
		expect(lineOf("dial shows, CW", null, {}, single).wanted).toBe("prove: carrier less 800 Hz");
		expect(lineOf("dial shows, CW", null, {}, receiver).wanted).toBe("prove: carrier less 700 Hz");
		expect(lineOf("dial shows, CW", null, {}, twin).wanted).toBe("prove: carrier");
		expect(lineOf("dial shows, USB", null, {}, single).wanted).toBe("prove: carrier");
	});

	it("leaves the rest as found where nothing is wanted, and the transmit lock on", () => {
		expect(lineOf("power", { power: "low" }, {})).toMatchObject({ asFound: "low", wanted: "as found" });
		expect(lineOf("transmit lock", { transmitLock: "off" }, {})).toMatchObject({ asFound: "off", wanted: "on" });
	});

	it("never wants as found what was not read: the line says what to put there, or is left out", () => {
		let lines = 0;
		for (const profile of [twin, single, receiver]) {
			for (const { name, asFound, wanted } of settingLines(profile, null, {})) {
				expect(asFound, name).toBe("not read");
				expect(wanted, name).not.toMatch(/as found|not read|^$/);
				lines++;
			}
		}
		expect(lines).toBeGreaterThan(20);
		expect(settingLines(twin, null, {}).map(({ name }) => name)).not.toContain("antenna tuner");
		expect(lineOf("power", null, {}).wanted).toBe("low until tuned up");
	});

	it("asks for more than low power only after tuning up", () => {
		expect(lineOf("power", null, { power: "high" })).toMatchObject({ wanted: "high, after tuning up" });
		expect(lineOf("power", null, { power: "low" })).toMatchObject({ wanted: "low" });
	});

	it("puts a squelch that is off where the scan stops on it as an open question", () => {
		expect(lineOf("squelch", null, { squelch: "off" })).toMatchObject({ wanted: "off?" });
		expect(lineOf("squelch", null, { squelch: "off" }).note).toMatch(/^to be decided: .* cannot tell a signal from noise/);
		expect(lineOf("squelch", { squelch: "off" }, {}).wanted).toBe("as found?");
		expect(lineOf("squelch", { squelch: "off" }, { squelch: "level" }).wanted).toBe("level");
		expect(lineOf("squelch", null, { squelch: "off" }, receiver)).toMatchObject({ wanted: "off", note: "" });
	});

	it("takes the MMSI from the ship licence where the job names none, whatever the set holds", () => {
		for (const found of [null, { mmsi: SHIP }]) expect(lineOf("MMSI", found, {}).wanted).toBe("from the ship licence");
	});

	it("has the MMSI read back digit by digit by two persons, and says what is wrong with its form", () => {
		expect(lineOf("MMSI", null, { mmsi: SHIP }).note.split("; wanted: ")).toEqual([
			lineOf("MMSI", null, {}).note,
			expect.stringMatching(/^299 is allocated to no administration/),
		]);
		expect(lineOf("MMSI", null, {}).note).toMatch(/two persons read it back digit by digit/);
		for (const wrong of ["29912345", "29912345X", "2991234500", "002991234", "029912345", "123456789"]) {
			expect(lineOf("MMSI", null, { mmsi: wrong }).note, wrong).toMatch(/; wanted: /);
		}
		const left = lineOf("MMSI", { mmsi: "002991234" }, { mmsi: SHIP });
		expect(left).toMatchObject({ asFound: "002991234", wanted: SHIP });
		expect(left.note).toMatch(/a previous owner's\?; wanted: .*; as found: /);
	});

	it("shows the DSC watch in kilohertz with what is missing from it", () => {
		const watch = lineOf("DSC watch, kHz", { dscWatchHz: [] }, { dscWatchHz: [2_187_500, 8_414_500, 12_577_000] });
		expect(watch).toMatchObject({ asFound: "none", wanted: "2187.5, 8414.5, 12577" });
		expect(watch.note).toBe(DSC_WATCH_RULE);
		expect(lineOf("DSC watch, kHz", { dscWatchHz: [2_187_500] }, {}).note).toMatch(
			/^to be decided; 8414.5 kHz missing; one of .* missing; 2187.5, 8414.5 and at least one/,
		);
	});
});

describe("dscWatchProblems (47 CFR 80.1123; 80.359 for the frequencies)", () => {
	const all = [2_187_500, 4_207_500, 6_312_000, 8_414_500, 12_577_000, 16_804_500];

	it("finds nothing wrong with all six, nor with the two and one of the others", () => {
		expect(dscWatchProblems(all, 6)).toEqual([]);
		for (const one of [4_207_500, 6_312_000, 12_577_000, 16_804_500]) expect(dscWatchProblems([2_187_500, 8_414_500, one], 6)).toEqual([]);
	});

	it("says what is missing, strange, repeated or too many", () => {
		expect(dscWatchProblems([8_414_500, 6_312_000], 6)).toEqual(["2187.5 kHz missing"]);
		expect(dscWatchProblems([2_187_500, 8_414_500], 6)).toEqual(["one of 4207.5, 6312, 12577, 16804.5 kHz missing"]);
		expect(dscWatchProblems([...all, 2_177_000], 10)).toEqual(["2177 kHz is no DSC distress frequency", "7 frequencies, at most 6"]);
		expect(dscWatchProblems([2_187_500, 8_414_500, 8_414_500, 6_312_000], 3)).toEqual([
			"a frequency stands twice",
			"4 frequencies, at most 3",
		]);
		expect(dscWatchProblems([], 6)).toHaveLength(2);
	});
});

describe("SettingsSchema", () => {
	it("takes nothing at all, and everything", () => {
		const everything: Settings = {
			dialForms: { USB: "carrier", FSK: "centre" },
			squelch: "speech",
			sense: "normal",
			shiftHz: 170,
			power: "high",
			tuner: "in",
			dscWatchHz: [2_187_500],
			positionFeed: "automatic",
			mmsi: SHIP,
			transmitLock: "on",
		};
		expect(SettingsSchema.parse({})).toEqual({});
		expect(SettingsSchema.parse(everything)).toEqual(everything);
	});

	it.each([
		{ power: "full" },
		{ dscWatchHz: [2187.5] },
		{ dscWatchHz: "2187.5" },
		{ shiftHz: 0 },
		{ colour: "red" },
		{ dialForms: { FM: "carrier" } },
	])("refuses %j", (settings) => {
		expect(SettingsSchema.safeParse(settings).success).toBe(false);
	});
});

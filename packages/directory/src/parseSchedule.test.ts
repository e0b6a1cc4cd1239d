import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { directory } from "./directory.ts";
import { formatSchedule, parseSchedule } from "./parseSchedule.ts";
import { SCHEDULE_WORDS } from "./schedule.ts";

const minute = fc.integer({ min: 0, max: 1439 });
const hhmm = minute.map((at) => String(Math.floor(at / 60)).padStart(2, "0") + String(at % 60).padStart(2, "0"));
const past = fc.integer({ min: 0, max: 59 }).map((at) => `H+${String(at).padStart(2, "0")}`);
const entry = fc.oneof(
	hhmm,
	fc.tuple(hhmm, fc.oneof(hhmm, fc.constant("2400"))).map(([from, to]) => `${from}-${to}`),
	past,
	fc.tuple(past, fc.oneof(past, fc.constant("H+60"))).map(([from, to]) => `${from}-${to}`),
	fc.constantFrom(..."ABCDEFGHIJKLMNOPQRSTUVWX").map((letter) => `slot ${letter}`),
);
const hasNoEmptySpan = (text: string) => {
	const [from, to] = text.split("-");
	return from !== to && !(from === "0000" && to === "2400");
};

describe("parseSchedule", () => {
	it("reads each form", () => {
		expect(parseSchedule("0340-0610;2150-0030").items).toEqual([
			{ kind: "span", fromMin: 220, toMin: 370 },
			{ kind: "span", fromMin: 1310, toMin: 30 },
		]);
		expect(parseSchedule(" 0203 ; 1645 ").items).toEqual([
			{ kind: "at", minute: 123 },
			{ kind: "at", minute: 1005 },
		]);
		expect(parseSchedule("H+00;h+20-H+30;H+50-H+60").items).toEqual([
			{ kind: "hourly", minute: 0 },
			{ kind: "hourly-span", fromMin: 20, toMin: 30 },
			{ kind: "hourly-span", fromMin: 50, toMin: 60 },
		]);
		expect(parseSchedule("slot n").items).toEqual([{ kind: "slot", letter: "N" }]);
		for (const word of SCHEDULE_WORDS) expect(parseSchedule(word)).toMatchObject({ word, items: [] });
		expect(parseSchedule("After DSC Alert").word).toBe("after DSC alert");
	});

	it.each([
		["", "empty"],
		["2400", "no start at 2400"],
		["0060", "no 60th minute"],
		["2500-0100", "no 25th hour"],
		["0100-0100", "no span of nothing"],
		["0000-2400", "a whole day has a word"],
		["H+60", "no start at the 60th minute"],
		["H+20-H+20", "no span of nothing"],
		["H+50-H+61", "no 61st minute"],
		["slot Y", "no letter Y"],
		["0100;", "nothing after the semicolon"],
		["0100,0200", "a comma"],
		["continuous;0100", "a word among times"],
		["8:30", "a colon"],
		["０１００", "figures of another script"],
	])("refuses %j (%s), naming the text and the accepted forms", (text) => {
		expect(() => parseSchedule(text)).toThrow(SyntaxError);
		expect(() => parseSchedule(text)).toThrow(`got "${text}"`);
		expect(() => parseSchedule(text)).toThrow("hhmm, hhmm-hhmm, H+mm, H+mm-H+mm or slot A..X");
	});

	it("reads its own notation back the same", () => {
		const list = fc.array(entry.filter(hasNoEmptySpan), { minLength: 1, maxLength: 8 }).map((entries) => entries.join(";"));
		fc.assert(
			fc.property(fc.oneof(list, fc.constantFrom(...SCHEDULE_WORDS)), (text) => {
				const schedule = parseSchedule(text);
				expect(formatSchedule(schedule)).toBe(text);
				expect(parseSchedule(formatSchedule(schedule))).toEqual(schedule);
			}),
			{ seed: 11, numRuns: 500 },
		);
	});

	it("throws nothing but SyntaxError, whatever it is given", () => {
		const near = fc.array(fc.constantFrom(..."0123456789H+-;: slotnday"), { maxLength: 14 }).map((letters) => letters.join(""));
		let refused = 0;
		fc.assert(
			fc.property(fc.oneof(fc.string(), near, list()), (text) => {
				try {
					const schedule = parseSchedule(text);
					expect(parseSchedule(formatSchedule(schedule))).toEqual(schedule);
				} catch (error) {
					expect(error).toBeInstanceOf(SyntaxError);
					refused++;
				}
			}),
			{ seed: 12, numRuns: 2000 },
		);
		expect(refused).toBeGreaterThan(500);
	});

	it("gives back every shipped schedule as it is printed", () => {
		const printed = directory().listings.map(({ schedule }) => schedule);
		expect(printed).toHaveLength(856);
		for (const text of printed) expect(formatSchedule(parseSchedule(text))).toBe(text);
		expect(new Set(printed).size).toBe(216);
	});
});

function list() {
	return fc.array(fc.oneof(entry, fc.string({ maxLength: 5 })), { maxLength: 4 }).map((entries) => entries.join(";"));
}

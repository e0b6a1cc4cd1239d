/** Chance from which a signal is called so: share of days on which it is copied. Own steps; 0.9 is what a service would plan for. */
export const GRADES_OF_CHANCE = [
	{ word: "good", from: 0.75 },
	{ word: "fair", from: 0.45 },
	{ word: "poor", from: 0.15 },
] as const;
export type ChanceWord = (typeof GRADES_OF_CHANCE)[number]["word"] | "none";

export function chanceWord(chance: number): ChanceWord {
	return GRADES_OF_CHANCE.find(({ from }) => chance >= from)?.word ?? "none";
}

export interface HourRun {
	readonly word: ChanceWord;
	/** UTC hours, 0 to 23; the run lasts to the start of `toHour` (1 to 24), or past midnight when that is not after `fromHour`. */
	readonly fromHour: number;
	readonly toHour: number;
}

/** A chance this near to where a grade begins may be told as either. */
const NEAR_A_GRADE = 0.03;

/**
 * Runs of hours of one word through a day that closes on itself: a run over midnight is one. Hour h stands for h - 30 minutes to
 * h + 30 minutes; runs are told in whole hours, from the first hour to the one after the last. A single hour that only just differs from
 * the hours on both sides of it is told as they are.
 * @param chances 24, by UTC hour
 */
export function hourRuns(chances: ArrayLike<number>): readonly HourRun[] {
	const words = withoutSpecks(chances);
	const starts = words.flatMap((word, hour) => (word === words[(hour + 23) % 24] ? [] : [hour]));
	if (starts.length === 0) return [{ word: words[0] ?? "none", fromHour: 0, toHour: 24 }];
	return starts.map((fromHour, i) => {
		const next = starts[(i + 1) % starts.length] ?? fromHour;
		return { word: words[fromHour] ?? "none", fromHour, toHour: next === 0 ? 24 : next };
	});
}

function withoutSpecks(chances: ArrayLike<number>): readonly ChanceWord[] {
	const plain = Array.from(chances, chanceWord);
	return plain.map((word, hour) => {
		const before = plain[(hour + 23) % 24]!;
		const isSpeck = word !== before && before === plain[(hour + 1) % 24];
		const couldBe = [chanceWord(chances[hour]! - NEAR_A_GRADE), chanceWord(chances[hour]! + NEAR_A_GRADE)];
		return isSpeck && couldBe.includes(before) ? before : word;
	});
}

export const NOT_HEARD = "not heard";

/**
 * Best grade first, the runs of each in the order of the day.
 * @example `"good 0600-1000; fair 0400-0600, 1000-1200; not heard otherwise"`
 */
export function hoursInWords(chances: ArrayLike<number>): string {
	const runs = hourRuns(chances);
	const [first] = runs;
	if (runs.length === 1 && first !== undefined) return first.word === "none" ? NOT_HEARD : `${first.word} all day`;
	const byGrade = GRADES_OF_CHANCE.flatMap(({ word }) => {
		const hours = runs.filter((run) => run.word === word).map(({ fromHour, toHour }) => `${hhmm(fromHour)}-${hhmm(toHour)}`);
		return hours.length === 0 ? [] : [`${word} ${hours.join(", ")}`];
	});
	return [...byGrade, ...(runs.some(({ word }) => word === "none") ? ["not heard otherwise"] : [])].join("; ");
}

/** @example `hhmm(7)` is `"0700"` */
export function hhmm(hour: number): string {
	return `${String(hour).padStart(2, "0")}00`;
}

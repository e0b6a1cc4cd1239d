/** A word for chances from `from` (0 to 1) up to the grade before it. */
export interface ReachGrade {
	readonly word: string;
	readonly from: number;
}

/** Shades within a grade: finer than an eye tells apart, coarse enough for a short file. */
const SHADES_IN_GRADE = 6;

/** Part of the full breadth that the last grade keeps, so that a trace of a chance still leaves a trace of ink. */
const TRACE_BREADTH = 1 / 8;

/** @throws RangeError unless there is a grade, `from` falls from one to the next, and the last is 0 */
export function checkGrades(grades: readonly ReachGrade[]): void {
	const froms = grades.map(({ from }) => from);
	const falling = froms.every((from, i) => from >= 0 && from <= 1 && (i === 0 || from < froms[i - 1]!));
	if (!falling || froms.at(-1) !== 0) {
		throw new RangeError(`Cannot draw reach in grades from ${JSON.stringify(froms)}: expected falling figures from 1 or less down to 0`);
	}
}

/** Place of the grade that `chance` belongs to, best first; null when it is no chance: not a number, or outside 0 to 1. */
export function gradeIndex(chance: number | undefined, grades: readonly ReachGrade[]): number | null {
	if (chance === undefined || !(chance >= 0 && chance <= 1)) return null;
	return grades.findIndex(({ from }) => chance >= from);
}

/** How much of its full breadth the ink takes in a grade: 1 in the best, then in equal steps down. */
export function gradeBreadth(index: number, grades: readonly ReachGrade[]): number {
	const last = grades.length - 1;
	return index === 0 ? 1 : Math.max(TRACE_BREADTH, (last - index) / last);
}

/**
 * How dark a chance is drawn, 0 (bare paper) to 1 (full ink), or null when it is no chance. Grades have equal parts of the scale and, but
 * for the best, keep to the paler half of theirs, so that one grade stands off from the next in any print; within a grade the ink still
 * grows with chance.
 */
export function shadeOf(chance: number | undefined, grades: readonly ReachGrade[]): number | null {
	const index = gradeIndex(chance, grades);
	if (index === null) return null;
	const from = grades[index]!.from;
	const to = grades[index - 1]?.from ?? 1;
	const within = to === from ? 1 : Math.round(((chance! - from) / (to - from)) * SHADES_IN_GRADE) / SHADES_IN_GRADE;
	const level = grades.length - 1 - index;
	return (level + within * (index === 0 ? 1 : 0.5)) / grades.length;
}

/** @throws RangeError unless there are 24 chances */
export function checkDay(chances: ArrayLike<number>, what: string): void {
	if (chances.length !== 24) throw new RangeError(`Cannot draw ${what}: expected 24, one an hour, got ${chances.length}`);
}

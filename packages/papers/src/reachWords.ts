import { gradeIndex, type ReachGrade } from "./reachGrades.ts";

/** How many hours of a day have which grade: `"good in 6 hours, none in 18 hours"`. */
export function hoursByGrade(chances: ArrayLike<number>, grades: readonly ReachGrade[]): string {
	return counted(
		Array.from(chances, (chance) => gradeIndex(chance, grades)),
		grades,
	)
		.map(({ word, count }) => `${word} in ${count} ${count === 1 ? "hour" : "hours"}`)
		.join(", ");
}

/** What the best hour of the day is on how many days: `"of 20 dates the best hour is good on 12, fair on 8"`. */
export function daysByBestHour(days: readonly ArrayLike<number>[], grades: readonly ReachGrade[]): string {
	const best = days.map((chances) => {
		const found = Array.from(chances, (chance) => gradeIndex(chance, grades)).filter((grade) => grade !== null);
		return found.length === 0 ? null : Math.min(...found);
	});
	const told = counted(best, grades).map(({ word, count }) => `${word} on ${count}`);
	return told.length === 0 ? "no dates" : `of ${days.length} ${days.length === 1 ? "date" : "dates"} the best hour is ${told.join(", ")}`;
}

function counted(found: readonly (number | null)[], grades: readonly ReachGrade[]) {
	const words = grades.map(({ word }, i) => ({ word, count: found.filter((grade) => grade === i).length }));
	return [...words, { word: "cannot tell", count: found.filter((grade) => grade === null).length }].filter(({ count }) => count > 0);
}

import { CONFIDENCES, type Confidence } from "./types.ts";

/** A clause about something else than the frequency: "times: ...", "MMSI and position: from memory", "note: ...". */
const OTHER_ROLE = /^[A-Za-z][A-Za-z ,]*: /;
/** What a list says about when it was heard. */
const LOG = /^(last logged \d{4}-\d{2}|no log date given)$/;

/**
 * Grade of a source cell: that of the lowest source behind the frequency.
 *
 * Clauses are joined by "; ". One that begins with a role and a colon stands behind something else (times, letter, MMSI, position) and does
 * not count, nor does a log date. Of the rest "from memory" is memory, "(secondary" is secondary, "(official" is official; a clause that
 * says none of these is memory. A confirming clause ("also in", "agrees with") counts like any other, because the date of the row
 * is that of its newest source. A copy of an official text on somebody else's page is secondary.
 */
export function gradeOfSource(source: string): Confidence {
	const grades = source
		.split("; ")
		.filter((clause) => !OTHER_ROLE.test(clause) && !LOG.test(clause))
		.map(gradeOfClause);
	const lowest = grades.length === 0 ? CONFIDENCES.length - 1 : Math.max(...grades.map((grade) => CONFIDENCES.indexOf(grade)));
	return CONFIDENCES[lowest] ?? "memory";
}

function gradeOfClause(clause: string): Confidence {
	if (clause.includes("from memory")) return "memory";
	if (clause.includes("(secondary")) return "secondary";
	return clause.includes("(official") ? "official" : "memory";
}

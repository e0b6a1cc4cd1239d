import type { Plan, UsePlace, UseRun } from "@skipwright/planner";
import { WANT_WORDS } from "@skipwright/rules";

/** What to use when, for a person: by leg, a line for each want, first choice and in brackets the second. */
export function useText({ legs, use }: Plan): string {
	return legs
		.map(({ name, from, days }) => {
			const own = Map.groupBy(
				use.filter(({ leg }) => leg === name),
				({ want }) => want,
			);
			const lines = [...own].flatMap(([want, runs]) => wrapped(WANT_WORDS[want], runs.map(runText)));
			const head = `${name} (from ${from}, ${Math.round(days)} ${Math.round(days) === 1 ? "day" : "days"})`;
			return [head, ...(lines.length === 0 ? ["  nothing is heard for any want"] : lines)].join("\n");
		})
		.join("\n");
}

/** Columns of a terminal that is not made wider. */
const COLUMNS = 100;
const INDENT = 27;

/** @example `wrapped("time", ["00-05 voice 1", "05-24 voice 2"])` is one line; more runs than fit go on under the first */
function wrapped(want: string, runs: readonly string[]): readonly string[] {
	const lines: string[] = [];
	for (const [i, run] of runs.entries()) {
		const text = i < runs.length - 1 ? `${run}, ` : run;
		const last = lines.at(-1);
		if (last === undefined || INDENT + last.length + text.length > COLUMNS) lines.push(text);
		else lines[lines.length - 1] = last + text;
	}
	return lines.map((line, i) => `  ${(i === 0 ? want : "").padEnd(24)} ${line.trimEnd()}`);
}

function runText(run: UseRun): string {
	const second = run.second === null ? "" : ` (${placeName(run.second)})`;
	return `${hourSpan(run)} ${placeName(run.first)}${second}`;
}

/** @example `"04-09"`, hours UTC */
export function hourSpan({ fromHour, toHour }: Pick<UseRun, "fromHour" | "toHour">): string {
	return `${twoDigits(fromHour)}-${twoDigits(toHour)}`;
}

function placeName({ bank, place }: UsePlace): string {
	return `${bank} ${place}`;
}

function twoDigits(hour: number): string {
	return String(hour).padStart(2, "0");
}

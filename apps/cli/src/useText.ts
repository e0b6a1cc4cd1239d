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
			const lines = [...own].map(([want, runs]) => `  ${WANT_WORDS[want].padEnd(24)} ${runs.map(runText).join(", ")}`);
			const head = `${name} (from ${from}, ${Math.round(days)} ${Math.round(days) === 1 ? "day" : "days"})`;
			return [head, ...(lines.length === 0 ? ["  nothing is heard for any want"] : lines)].join("\n");
		})
		.join("\n");
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

import { UsageError } from "./context.ts";

/** A smoothed sunspot number on the old scale. @throws UsageError */
export function sunspotsGiven(text: string): number {
	const number = Number(text);
	if (text.trim() !== "" && number >= 0 && number <= 300) return number;
	throw new UsageError(`cannot take --sunspots ${text}: expected a smoothed sunspot number from 0 to 300, old scale`);
}

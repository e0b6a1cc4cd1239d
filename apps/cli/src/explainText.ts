import { type DayInWords, placeReason } from "@skipwright/papers";
import type { Plan, PlannedPlace, UseRun } from "@skipwright/planner";
import { WANT_WORDS } from "@skipwright/rules";
import { formatKhz } from "@skipwright/units";
import { UsageError } from "./context.ts";
import { hourSpan } from "./useText.ts";

/**
 * Why something is in a plan, or is not.
 * @param asked a place ("voice 12", "voice/12") or the id of a listing, channel or guard carrier
 * @throws UsageError where the plan knows neither
 */
export function explainText(plan: Plan, asked: string, words: DayInWords): string {
	const place = placeAsked(plan, asked);
	if (place !== null) return placeText(plan, place, words);
	const holders = plan.places.filter(({ listing, hears }) => listing === asked || hears.includes(asked));
	if (holders.length > 0) return holders.map((one) => placeText(plan, one, words)).join("\n");
	const out = plan.leftOut.filter(({ listing }) => listing === asked || listing.startsWith(`${asked}/`));
	if (out.length > 0) return out.map(({ listing, why }) => `${listing}: not in the plan; ${why}\n`).join("");
	throw new UsageError(
		`cannot explain ${JSON.stringify(asked)}: neither a filled place ("voice 12") nor a listing that serves a want of this job (find its id with: skipwright directory find)`,
	);
}

function placeAsked({ places }: Plan, asked: string): PlannedPlace | null {
	const [, bank, number] = /^(.+?)[\s/:]+(\d+)$/.exec(asked.trim()) ?? [];
	return places.find((one) => one.bank === bank && one.place === Number(number)) ?? null;
}

function placeText(plan: Plan, place: PlannedPlace, words: DayInWords): string {
	const { bank, place: number, tag, receiveHz, transmitHz, mode, what, changed } = place;
	const sends = transmitHz === null ? "receive only" : transmitHz === receiveHz ? "sends too" : `sends on ${formatKhz(transmitHz)}`;
	const uses = plan.use.filter(({ first }) => first.bank === bank && first.place === number);
	const findings = plan.findings.filter((finding) => finding.bank === bank && finding.place === number);
	return [
		`${bank} ${number}  ${tag}  ${formatKhz(receiveHz)} ${mode}, ${sends}: ${what}`,
		`  ${changed ? "new, moved or mended against as found" : "as found"}`,
		`  ${placeReason(place, words)}`,
		...useLines(uses),
		...findings.map(({ severity, message, remedy }) => `  ${severity}: ${message}; ${remedy}`),
		"",
	].join("\n");
}

function useLines(uses: readonly UseRun[]): readonly string[] {
	const groups = Map.groupBy(uses, ({ want, leg }) => `  first choice for ${WANT_WORDS[want]}, ${leg}: `);
	return [...groups].map(([head, runs]) => head + runs.map(hourSpan).join(", "));
}

import type { Directory } from "@skipwright/directory";
import type { ResolvedJob } from "@skipwright/job";
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
	throw unknownTo(asked);
}

/**
 * Refuses what no plan could explain, before anything is worked out.
 * @throws UsageError
 */
export function checkAsked(asked: string, { profile }: ResolvedJob, { listings, stations }: Directory): void {
	const isPlace = profile.banks.some(({ id }) => id === placeOf(asked)?.bank);
	const isId = /^(ap17|guard|safety)\//.test(asked) || stations.some(({ id }) => id === asked) || listings.some(({ id }) => id === asked);
	if (!isPlace && !isId && !listings.some(({ id }) => id.startsWith(`${asked}/`))) throw unknownTo(asked);
}

function unknownTo(asked: string): UsageError {
	return new UsageError(
		`cannot explain ${JSON.stringify(asked)}: neither a filled place ("voice 12") nor a listing that serves a want of this job (find its id with: skipwright directory find)`,
	);
}

function placeAsked({ places }: Plan, asked: string): PlannedPlace | null {
	const wanted = placeOf(asked);
	return places.find(({ bank, place }) => bank === wanted?.bank && place === wanted.place) ?? null;
}

function placeOf(asked: string): { readonly bank: string; readonly place: number } | null {
	const [, bank, number] = /^(.+?)[\s/:]+(\d+)$/.exec(asked.trim()) ?? [];
	return bank === undefined ? null : { bank, place: Number(number) };
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

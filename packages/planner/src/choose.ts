import type { Listing } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import type { WantId } from "@skipwright/rules";
import { fitsRoom } from "./bankRoom.ts";
import { type BestCover, type BestOptions, bestCover } from "./bestCover.ts";
import type { Candidate, LeftOut } from "./candidate.ts";
import { isNeverTraded } from "./candidates.ts";
import { type Coverage, coverProblem, type LowSky, WHOLE_WORTH, wantsOf } from "./choiceModel.ts";
import { type Relaxed, relaxedRoom, type TakenRoom } from "./coverConflicts.ts";
import { coveredBy } from "./coveredBy.ts";
import { type CoverItem, type CoverProblem, priceOf, takesRoom } from "./coverProblem.ts";
import { type CoverScore, scoreOf } from "./coverScore.ts";
import { countKinds, greedyCover } from "./greedyCover.ts";
import type { Solver } from "./solver.ts";

export interface ChoiceInput {
	readonly candidates: readonly Candidate[];
	readonly samples: readonly VoyageSample[];
	/** As `coverageOf` gives it, by chance. */
	readonly coverage: Coverage;
	/** As `coverageOf` gives it, by grades: what the choice counts. */
	readonly graded: Coverage;
	/** The same for a sky with few sunspots, which decides between equals; null: not looked at. */
	readonly low: LowSky | null;
	readonly weights: Readonly<Partial<Record<WantId, number>>>;
	/** Ids of candidates that the layout holds whatever is chosen: pinned, standing, put right. They count, and take no room. */
	readonly present: ReadonlySet<string>;
	/** Ids of further candidates that stand at a place, to stay there if they are chosen. They take no room. */
	readonly standing: ReadonlySet<string>;
	/** Ids of candidates that are taken rather than others of the same worth. */
	readonly preferred: ReadonlySet<string>;
	readonly room: readonly TakenRoom[];
	/** Ids of candidates of which all are held or none: where one is held whatever is chosen, all are. */
	readonly together: readonly (readonly string[])[];
	/** Per cent of what its want could have at all that a place must bring to be worth its keys. */
	readonly leastGainPercent: number;
	/** What is heard at a candidate's place: its own sources, and what others of its kind send on the same dial. */
	readonly hears: (candidate: Candidate) => readonly Listing[];
	/** Of what use a marine band is over such distances, 0 to 1. */
	readonly bandUse: (bandMhz: number) => number;
}

export interface ChoiceOptions extends BestOptions {
	/** Without one the choice is made step by step, best first, and nothing is proved. */
	readonly solver?: Solver;
}

export interface Choice {
	/** Never-traded ones first, then by id. */
	readonly chosen: readonly Candidate[];
	/** Sum over the wants of weight times the share of what could be had at all, 0 to the sum of the weights. */
	readonly worth: number;
	readonly leftOut: readonly LeftOut[];
	/** `optimal`: proved best under the model; `infeasible`: `conflicts` say what keeps out something that must be held. */
	readonly status: "optimal" | "feasible" | "infeasible";
	/** How much better a choice can be at most, as a share of this one's worth less the price of its keys; null where nothing tells. */
	readonly gap: number | null;
	readonly conflicts: readonly string[];
}

/** What to hold: everything that is never traded, and of the rest what is worth most in the room that is left. */
export async function choose(input: ChoiceInput, { solver, ...options }: ChoiceOptions = {}): Promise<Choice> {
	const { present, standing } = input;
	const unheard = input.candidates.filter((candidate) => isSafety(candidate) && !mustBeHeld(candidate, input.coverage));
	const candidates = input.candidates.filter((one) => (isSafety(one) ? mustBeHeld(one, input.coverage) : isWanted(one, input.weights)));
	const known = new Map(candidates.map(({ id }, index) => [id, index]));
	const groups = input.together.map((ids) => ids.filter((id) => known.has(id)));
	const isHeld = (id: string) => present.has(id) || isSafety(candidates[known.get(id)!]!);
	const musts = new Set([
		...candidates.filter((candidate) => isSafety(candidate)).map(({ id }) => id),
		...groups.filter((ids) => ids.some(isHeld)).flat(),
	]);
	const together = groups.filter((ids) => ids.length > 1 && !ids.some(isHeld)).map((ids) => ids.map((id) => known.get(id)!));
	const asked = withHomeless(coverProblem({ ...input, candidates, musts, present, standing }), input.room);
	const { room, conflicts } = solver === undefined ? { room: input.room, conflicts: [] } : await roomForMusts(asked, input.room, solver);
	const problem: CoverProblem = { ...asked, room, together };
	const answer: BestCover = solver === undefined ? { status: "infeasible" } : await bestCover(problem, solver, options);
	const isSolved = answer.status !== "infeasible";
	const numbers = isSolved ? answer.chosen : greedyCover(problem);
	const score = scoreOf(problem, numbers);
	const isIn = new Set(numbers);
	const held = candidates.filter(({ id }, index) => musts.has(id) || present.has(id) || isIn.has(index));
	const betterThan = coveredBy(held, input.graded);
	const gainPercent = (index: number) => {
		const wholes = wantsOf(candidates[index]!)
			.map((want) => input.weights[want] ?? 0)
			.filter((one) => one > 0);
		const whole = (WHOLE_WORTH * Math.min(...wholes)) / weight;
		return (100 * (score.gain(index) + priceOf(problem.items[index]!))) / whole;
	};
	const weight = Object.values(input.weights).reduce((sum, one) => sum + one, 0);
	return {
		chosen: held.toSorted((a, b) => Number(musts.has(b.id)) - Number(musts.has(a.id))),
		worth: (weight * score.gross) / WHOLE_WORTH,
		leftOut: [
			...unheard.map(({ id }) => ({ listing: id, why: NOT_HEARD })),
			...candidates.flatMap((candidate, index) => {
				if (held.includes(candidate)) return [];
				const why =
					whyNot(candidate, input, score.gain(index)) ?? addsLittle(betterThan(candidate), gainPercent(index), input.leastGainPercent);
				return [{ listing: candidate.id, why }];
			}),
		],
		status: conflicts.length > 0 ? "infeasible" : isSolved ? answer.status : "feasible",
		gap: isSolved && conflicts.length === 0 ? gapOf(answer.bound, score) : null,
		conflicts,
	};
}

/** What has to leave its place finds one before anything is chosen, as long as there is room for it beside what must be held. */
function withHomeless(problem: CoverProblem, room: readonly TakenRoom[]): CoverProblem {
	const homeless = room.flatMap(({ bank, taken }) =>
		taken.homeless.map((kind, i): CoverItem => {
			return { id: `from ${bank} ${i}`, kind, isPresent: false, isMust: true, isStanding: false, bonus: 0, price: 0 };
		}),
	);
	const items = [...problem.items, ...homeless];
	return fitsRoom(room, countKinds(items.filter((item) => item.isMust && takesRoom(item)))) ? { ...problem, items } : problem;
}

/** Room in which what must be held fits, and what had to be given up for it. */
function roomForMusts({ items }: CoverProblem, room: readonly TakenRoom[], solver: Solver): Promise<Relaxed> {
	const counts = countKinds(items.filter((item) => item.isMust && takesRoom(item)));
	return fitsRoom(room, counts) ? Promise.resolve({ room, conflicts: [] }) : relaxedRoom(room, counts, solver);
}

function gapOf(bound: number | null, { net }: CoverScore): number | null {
	if (bound === null) return null;
	return bound <= net ? 0 : net <= 0 ? null : (bound - net) / net;
}

function isSafety({ want }: Candidate): boolean {
	return want === "guard" || want === "safety-text";
}

/** Guards and the safety frequencies of the Regulations always; a station's safety text where there is a chance anywhere, or no telling. */
function mustBeHeld({ want, id, sources }: Candidate, coverage: Coverage): boolean {
	if (isNeverTraded(id, want)) return true;
	return sources.some(({ listing }) => coverage(listing)?.some((cell) => cell > 0) ?? true);
}

function isWanted(candidate: Candidate, weights: ChoiceInput["weights"]): boolean {
	return wantsOf(candidate).some((want) => (weights[want] ?? 0) > 0);
}

const NO_FREE_PLACE =
	"no free place that it may be scanned at; what stands in the list as found stays unless options.clearUnplanned lets it go";
const NOT_HEARD = "not heard on this voyage at its times, or about other waters";

/** null: it could be heard, but adds little. */
function whyNot({ want, content, sources }: Candidate, { coverage, graded }: ChoiceInput, gain: number): string | null {
	if (gain > 0) return NO_FREE_PLACE;
	if (want === "coast-calling" && content.transmit === null)
		return "it could only be listened to: a call needs an answer, and this place could not send";
	const listings = sources.map(({ listing }) => listing);
	if (listings.length > 0 && listings.every((listing) => coverage(listing) === null))
		return "cannot tell whether it is heard: the station's position is not known";
	const none = (read: Coverage) => listings.length > 0 && listings.every((listing) => read(listing)?.every((cell) => cell === 0) ?? true);
	if (none(coverage)) return NOT_HEARD;
	return none(graded) ? "heard too badly on this voyage at its times" : null;
}

function addsLittle(better: string | null, gainPercent: number, leastPercent: number): string {
	const gain = `would bring ${gainPercent < 0.005 ? "nothing" : `${gainPercent.toFixed(2)} % of what its want could have`}`;
	const asked = gainPercent < 0.005 || gainPercent >= leastPercent ? "" : ` (${leastPercent} % is asked: leastGainPercent)`;
	return `adds little: ${better === null ? "" : `${better}; `}${gain}${asked}`;
}

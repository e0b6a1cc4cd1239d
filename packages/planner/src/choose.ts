import type { Listing } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import type { WantId } from "@skipwright/rules";
import { type Candidate, type LeftOut, WANT_ORDER, type Want } from "./candidate.ts";
import { HOURS_PER_DAY } from "./coverage.ts";
import { listingWant } from "./listingWant.ts";
import { type Room, roomFor } from "./room.ts";

export interface ChoiceInput {
	readonly candidates: readonly Candidate[];
	readonly samples: readonly VoyageSample[];
	/** As `coverageOf` gives it; null where it cannot be told. */
	readonly coverage: (listing: Listing) => Float64Array | null;
	readonly weights: Readonly<Partial<Record<WantId, number>>>;
	/** Ids of candidates that the layout holds whatever is chosen: pinned, standing, put right. They count, and take no room. */
	readonly present: ReadonlySet<string>;
	/** Ids of further candidates that stand at a place, to stay there if they are chosen. They take no room. */
	readonly standing: ReadonlySet<string>;
	readonly room: Room;
}

export interface Choice {
	/** In the order in which they were chosen: never-traded ones first. */
	readonly chosen: readonly Candidate[];
	/** Sum over the wants of weight times the share of what could be had at all, 0 to the sum of the weights. */
	readonly worth: number;
	readonly leftOut: readonly LeftOut[];
}

/** Share of what a want could have at all, below which a further place is not worth its keys. Own choice. */
const LEAST_SHARE = 0.005;
/** What the first, second, third and fourth station heard in the same hour counts; one station's frequencies count once. Own choice. */
const STATION_WORTH = [1, 0.5, 0.25, 0.125] as const;
/** Share of the want that one international calling pair counts, beside the stations that are heard. Own choice. */
const CALLING_PAIR_SHARE = 0.02;

/**
 * The simple chooser: never-traded things first, then at each step whatever adds most, until nothing adds enough or the places are full.
 * Greedy, so not proved best. Ties fall by id.
 */
export function choose(input: ChoiceInput): Choice {
	const { candidates, present, standing, weights } = input;
	const room = roomFor(input.room);
	const leftOut: LeftOut[] = [];
	const chosen: Candidate[] = [];
	const take = (candidate: Candidate) => {
		if (!present.has(candidate.id) && !standing.has(candidate.id) && !room.take(candidate)) return false;
		chosen.push(candidate);
		return true;
	};
	for (const candidate of candidates.filter(({ want }) => want === "guard" || want === "safety-text")) {
		const heard = candidate.want === "guard" || candidate.id.startsWith("safety/") || isHeard(candidate, input.coverage);
		if (!heard) leftOut.push({ listing: candidate.id, why: "not heard on this voyage at its times, or about other waters" });
		else {
			take(candidate);
			if (!chosen.includes(candidate)) chosen.push(candidate); // never traded: the layout makes room for it
		}
	}
	const scores = new Scores(input);
	let open = candidates.filter((one) => one.want !== "guard" && one.want !== "safety-text" && isWanted(one, weights));
	let worth = 0;
	for (const candidate of open.filter(({ id }) => present.has(id))) {
		worth += scores.of(candidate).gain;
		take(candidate);
		scores.add(candidate);
	}
	open = open.filter(({ id }) => !present.has(id));
	for (;;) {
		const best = bestOf(open, scores);
		if (best === null) break;
		open = open.filter((candidate) => candidate !== best.candidate);
		if (take(best.candidate)) {
			worth += best.gain;
			scores.add(best.candidate);
		} else leftOut.push({ listing: best.candidate.id, why: "no free place" });
	}
	leftOut.push(...open.map((candidate) => ({ listing: candidate.id, why: scores.whyNot(candidate) })));
	return { chosen, worth, leftOut };
}

/** Safety text is not weighed: a chance anywhere, or no telling, is enough. */
function isHeard({ sources }: Candidate, coverage: ChoiceInput["coverage"]): boolean {
	return sources.some(({ listing }) => coverage(listing)?.some((cell) => cell > 0) ?? true);
}

function isWanted({ want, sources }: Candidate, weights: ChoiceInput["weights"]): boolean {
	return [want, ...sources.map(({ listing }) => listingWant(listing))].some(
		(one) => one !== "guard" && one !== "safety-text" && (weights[one] ?? 0) > 0,
	);
}

function bestOf(open: readonly Candidate[], scores: Scores): { readonly candidate: Candidate; readonly gain: number } | null {
	let best: { candidate: Candidate; gain: number } | null = null;
	for (const candidate of open) {
		const { gain, share } = scores.of(candidate);
		if (share < LEAST_SHARE || gain === 0) continue;
		if (best === null || gain > best.gain || (gain === best.gain && candidate.id < best.candidate.id)) best = { candidate, gain };
	}
	return best;
}

/** What one station adds to one want over samples and hours. */
interface Part {
	readonly want: WantId;
	readonly stationId: string;
	readonly cells: Float64Array;
}

class Scores {
	readonly #input: ChoiceInput;
	readonly #parts: ReadonlyMap<Candidate, readonly Part[]>;
	/** Best of the chosen frequencies of a station, by want and station. */
	readonly #stations = new Map<string, Float64Array>();
	/** Sum over stations, by want. */
	readonly #sums = new Map<WantId, Float64Array>();
	readonly #attainable = new Map<WantId, number>();
	readonly #rankSums = new Map<Want, number>();

	constructor(input: ChoiceInput) {
		this.#input = input;
		this.#parts = new Map(input.candidates.map((candidate) => [candidate, partsOf(candidate, input)]));
		for (const candidate of input.candidates) {
			this.#add(candidate);
			if (candidate.sources.length === 0)
				this.#rankSums.set(candidate.want, (this.#rankSums.get(candidate.want) ?? 0) + rankWorth(candidate.rank));
		}
		for (const [want, sum] of this.#sums) this.#attainable.set(want, this.#worthOf(sum));
		this.#stations.clear();
		this.#sums.clear();
	}

	/** What a candidate would add: weighted, and as a share of its want. */
	of(candidate: Candidate): { readonly gain: number; readonly share: number } {
		const { weights } = this.#input;
		let gain = 0;
		let share = this.#fixedShare(candidate);
		if (share > 0) gain += share * (weights[candidate.want as WantId] ?? 0);
		for (const [want, parts] of Map.groupBy(this.#parts.get(candidate) ?? [], (part) => part.want)) {
			const attainable = this.#attainable.get(want) ?? 0;
			const added = attainable === 0 ? 0 : this.#increase(want, parts) / attainable;
			gain += added * (weights[want] ?? 0);
			if ((weights[want] ?? 0) > 0) share = Math.max(share, added);
		}
		return { gain, share };
	}

	add(candidate: Candidate): void {
		this.#add(candidate);
	}

	whyNot(candidate: Candidate): string {
		const { coverage } = this.#input;
		const all = candidate.sources.map(({ listing }) => coverage(listing));
		if (all.length > 0 && all.every((cells) => cells === null))
			return "cannot tell whether it is heard: the station's position is not known";
		if (all.length > 0 && all.every((cells) => cells === null || cells.every((cell) => cell === 0)))
			return "not heard on this voyage at its times, or about other waters";
		return "adds little to what is chosen";
	}

	/** Share of the want for what no listing tells the worth of: nets are all wanted; ship carriers of a band less and less. */
	#fixedShare({ want, sources, rank }: Candidate): number {
		if (want === "nets") return 1 / Math.max(1, this.#input.candidates.filter((other) => other.want === "nets").length);
		if (want === "ship-calling" && sources.length === 0) return rankWorth(rank) / (this.#rankSums.get(want) ?? 1);
		return want === "coast-calling" && sources.length === 0 ? CALLING_PAIR_SHARE : 0;
	}

	#add(candidate: Candidate): void {
		for (const { want, stationId, cells } of this.#parts.get(candidate) ?? []) {
			const key = `${want} ${stationId}`;
			const best = this.#stations.get(key) ?? new Float64Array(cells.length);
			const sum = this.#sums.get(want) ?? new Float64Array(cells.length);
			for (let i = 0; i < cells.length; i++) {
				if (cells[i]! <= best[i]!) continue;
				sum[i]! += cells[i]! - best[i]!;
				best[i] = cells[i]!;
			}
			this.#stations.set(key, best);
			this.#sums.set(want, sum);
		}
	}

	#increase(want: WantId, parts: readonly Part[]): number {
		const sum = this.#sums.get(want);
		const bests = parts.map(({ stationId }) => this.#stations.get(`${want} ${stationId}`));
		const cells = parts[0]?.cells.length ?? 0;
		let increase = 0;
		for (let i = 0; i < cells; i++) {
			let more = 0;
			for (let p = 0; p < parts.length; p++) more += Math.max(0, parts[p]!.cells[i]! - (bests[p]?.[i] ?? 0));
			if (more === 0) continue;
			const before = sum?.[i] ?? 0;
			increase += this.#days(i) * (stationWorth(before + more) - stationWorth(before));
		}
		return increase;
	}

	#worthOf(sum: Float64Array): number {
		return sum.reduce((worth, cell, i) => worth + this.#days(i) * stationWorth(cell), 0);
	}

	#days(cell: number): number {
		return this.#input.samples[Math.floor(cell / HOURS_PER_DAY)]!.days;
	}
}

/** Worth of so many stations (counted in shares) heard in one hour: rising by `STATION_WORTH`, flat after the last. */
function stationWorth(stations: number): number {
	return STATION_WORTH.reduce((worth, each, i) => worth + each * Math.min(1, Math.max(0, stations - i)), 0);
}

/** What the first, second, ... carrier of a band counts among those between ships: each a third of the one before. Own choice. */
function rankWorth(rank: number): number {
	let worth = 1;
	for (let i = 1; i < rank; i++) worth /= 3;
	return worth;
}

function partsOf({ sources }: Candidate, { coverage, weights }: ChoiceInput): readonly Part[] {
	const parts = new Map<string, Part>();
	for (const { listing } of sources) {
		const want = listingWant(listing);
		if (want === "guard" || want === "safety-text" || want === "nets" || (weights[want] ?? 0) === 0) continue;
		const cells = coverage(listing);
		if (cells === null) continue;
		const key = `${want} ${listing.stationId}`;
		const known = parts.get(key);
		parts.set(key, known === undefined ? { want, stationId: listing.stationId, cells } : { ...known, cells: largest(known.cells, cells) });
	}
	return [...parts.values()].toSorted((a, b) => WANT_ORDER.indexOf(a.want) - WANT_ORDER.indexOf(b.want));
}

function largest(a: Float64Array, b: Float64Array): Float64Array {
	return a.map((value, i) => Math.max(value, b[i] ?? 0));
}

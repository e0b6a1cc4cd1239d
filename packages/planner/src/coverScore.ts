import { type CoverProblem, eighthsOf, priceOf } from "./coverProblem.ts";

interface Heard {
	readonly cell: number;
	readonly station: number;
	readonly parts: number;
}

/** The worth of a choice while it grows: whole numbers, exact. */
export class CoverScore {
	readonly #problem: CoverProblem;
	readonly #worths: readonly number[];
	/** What each item hears. */
	readonly #heard: readonly (readonly Heard[])[];
	/** Most parts of each station, by cell. */
	readonly #most: readonly number[][];
	readonly #sums: number[];
	readonly #chosen = new Set<number>();
	#worth = 0;
	#price = 0;

	constructor(problem: CoverProblem, cells = problem.cells) {
		this.#problem = problem;
		const heard: Heard[][] = problem.items.map(() => []);
		for (const [cell, { stations }] of cells.entries()) {
			for (const [station, members] of stations.entries()) {
				for (const { item, parts } of members) heard[item]?.push({ cell, station, parts });
			}
		}
		this.#heard = heard;
		this.#worths = cells.map(({ worth }) => worth);
		this.#most = cells.map(({ stations }) => stations.map(() => 0));
		this.#sums = cells.map(() => 0);
	}

	/** Worth without the prices. */
	get gross(): number {
		return this.#worth;
	}

	/** Worth less the prices: what is made as large as possible. */
	get net(): number {
		return this.#worth - this.#price;
	}

	/** What choosing it would add, its price taken off. */
	gain(item: number): number {
		return this.#chosen.has(item) ? 0 : this.#look(item, false) - priceOf(this.#problem.items[item]!);
	}

	add(item: number): void {
		if (this.#chosen.has(item)) return;
		this.#worth += this.#look(item, true);
		this.#price += priceOf(this.#problem.items[item]!);
		this.#chosen.add(item);
	}

	/** What it adds; `keep` writes it down. One cell after another may be of one item's two stations, so each step counts on the one before. */
	#look(item: number, keep: boolean): number {
		let added = this.#problem.items[item]!.bonus;
		let lastCell = -1;
		let sum = 0;
		for (const { cell, station, parts } of this.#heard[item]!) {
			if (cell !== lastCell) sum = this.#sums[cell]!;
			lastCell = cell;
			const most = this.#most[cell]!;
			const more = parts - most[station]!;
			if (more <= 0) continue;
			added += this.#worths[cell]! * (eighthsOf(sum + more) - eighthsOf(sum));
			sum += more;
			if (!keep) continue;
			most[station] = parts;
			this.#sums[cell] = sum;
		}
		return added;
	}
}

/** The score of a whole choice; what is present or must be held is counted too. */
export function scoreOf(problem: CoverProblem, chosen: readonly number[], cells = problem.cells): CoverScore {
	const score = new CoverScore(problem, cells);
	for (const [index, { isPresent, isMust }] of problem.items.entries()) if (isPresent || isMust) score.add(index);
	for (const index of chosen) score.add(index);
	return score;
}

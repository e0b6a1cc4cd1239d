import { type Candidate, namingOf } from "./candidate.ts";
import type { Coverage } from "./choiceModel.ts";
import { bestOf } from "./heardPlaces.ts";
import { listingWant } from "./listingWant.ts";

/** Share of its hours from which on another is called as good. Own choice. */
const MOST_OF_IT = 0.5;

/** Tells which of what is held is heard in the hours of something that is not. */
export function coveredBy(held: readonly Candidate[], coverage: Coverage): (candidate: Candidate) => string | null {
	const known = new Map<Candidate, Float64Array | null>();
	const cellsOf = (candidate: Candidate) => {
		const own = candidate.sources.map(({ listing }) => listing).filter((listing) => listingWant(listing) === candidate.want);
		if (!known.has(candidate)) known.set(candidate, bestOf(own, coverage));
		return known.get(candidate) ?? null;
	};
	return (candidate) => {
		const cells = cellsOf(candidate);
		const total = cells?.reduce((sum, cell) => sum + cell, 0) ?? 0;
		if (cells === null || total === 0) return null;
		let best: { readonly what: string; readonly share: number } | null = null;
		for (const other of held) {
			const others = other.want === candidate.want ? cellsOf(other) : null;
			if (others === null) continue;
			let both = 0;
			for (let i = 0; i < cells.length; i++) both += Math.min(cells[i]!, others[i]!);
			if (best === null || both / total > best.share) best = { what: namingOf(other).what, share: both / total };
		}
		return best === null || best.share < MOST_OF_IT ? null : `${best.what} is heard in ${Math.round(best.share * 100)} % of its hours`;
	};
}

import type { Spectrum } from "./types.ts";

/** Items that each cover a span of frequency, ready to be asked what lies near a spectrum. */
export interface Spans<T> {
	/** Items whose span meets `spectrum` (touching counts), in order of their lower edges. */
	meeting(spectrum: Spectrum): readonly T[];
}

/**
 * Sorts once, then answers by halving: with `highestSoFar` rising along the list, everything before the first entry
 * that reaches up to the spectrum can be skipped, and the walk ends at the first span that begins above it.
 */
export function spansOf<T>(items: readonly T[], spanOf: (item: T) => Spectrum): Spans<T> {
	const sorted = items.map((item) => ({ item, span: spanOf(item) })).sort((a, b) => a.span.lowHz - b.span.lowHz);
	let highest = Number.NEGATIVE_INFINITY;
	const highestSoFar = sorted.map(({ span }) => {
		highest = Math.max(highest, span.highHz);
		return highest;
	});
	return {
		meeting({ lowHz, highHz }) {
			const found: T[] = [];
			for (let i = firstAtLeast(highestSoFar, lowHz); i < sorted.length; i++) {
				const { item, span } = sorted[i]!; // i < sorted.length
				if (span.lowHz > highHz) break;
				if (span.highHz >= lowHz) found.push(item);
			}
			return found;
		},
	};
}

/** Index of the first of the rising `values` that is at least `wanted`; their number when there is none. */
function firstAtLeast(values: readonly number[], wanted: number): number {
	let low = 0;
	let high = values.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if (values[middle]! < wanted)
			low = middle + 1; // middle < high <= length
		else high = middle;
	}
	return low;
}

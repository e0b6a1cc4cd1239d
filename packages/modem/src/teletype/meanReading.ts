import type { ToneReading } from "./measureCharacter.ts";

/** Weighted mean of readings, and its standard deviation from their scatter. */
export interface MeanReading {
	add(reading: ToneReading): void;
	hz(): number;
	/** Hz, one sigma; infinite before the second reading. */
	uncertaintyHz(): number;
}

export function createMeanReading(): MeanReading {
	let [count, weights, squares, first, second, fourth] = [0, 0, 0, 0, 0, 0];
	let origin = 0;
	return {
		add({ hz, weight }) {
			if (count++ === 0) origin = hz;
			const off = hz - origin;
			weights += weight;
			first += weight * off;
			squares += weight * weight;
			second += weight * weight * off;
			fourth += weight * weight * off * off;
		},
		hz: () => origin + (weights > 0 ? first / weights : 0),
		uncertaintyHz() {
			if (count < 2 || weights === 0) return Number.POSITIVE_INFINITY;
			const mean = first / weights;
			const scatter = Math.max(0, fourth - 2 * mean * second + mean * mean * squares);
			return (Math.sqrt(scatter) / weights) * Math.sqrt(count / (count - 1));
		},
	};
}

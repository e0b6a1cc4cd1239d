interface Spot {
	readonly bank: string | null;
	readonly place: number | null;
}

/** Places by bank, runs as such. @example `"voice 3, 5–9; data 1–4"` */
export function placesText(spots: readonly Spot[]): string {
	return [...Map.groupBy(spots, ({ bank }) => bank)]
		.map(([bank, same]) => `${bank ?? "whole list"} ${runsText(same.flatMap(({ place }) => place ?? []))}`.trimEnd())
		.join("; ");
}

/** `[1, 2, 3, 7]` as `1–3, 7`. */
export function runsText(numbers: readonly number[]): string {
	const runs: { from: number; to: number }[] = [];
	for (const n of [...numbers].sort((a, b) => a - b)) {
		const last = runs.at(-1);
		if (last !== undefined && n <= last.to + 1) last.to = n;
		else runs.push({ from: n, to: n });
	}
	return runs.map(({ from, to }) => (from === to ? `${from}` : `${from}–${to}`)).join(", ");
}

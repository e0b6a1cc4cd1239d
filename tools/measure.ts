/** Seconds of `work` and of its `floor`, run in turn so that both meet the same machine, after one unmeasured run of each. */
export function measure(
	work: () => unknown,
	floor: () => unknown,
	runs = 7,
): { readonly seconds: readonly number[]; readonly floorSeconds: readonly number[] } {
	work();
	floor();
	const seconds: number[] = [];
	const floorSeconds: number[] = [];
	for (let run = 0; run < runs; run++) {
		seconds.push(secondsOf(work));
		floorSeconds.push(secondsOf(floor));
	}
	return { seconds, floorSeconds };
}

function secondsOf(work: () => unknown): number {
	const start = performance.now();
	work();
	return (performance.now() - start) / 1_000;
}

/** Seconds that the processor worked for this program: what other programs do beside does not count, nor do programs started by it. */
export function processorSeconds(): number {
	const { user, system } = process.cpuUsage();
	return (user + system) / 1e6;
}

/** Seconds that pass: for work that is done by another program. */
export function passingSeconds(): number {
	return performance.now() / 1_000;
}

/** Seconds of `work` and of its `floor`, run in turn so that both meet the same machine, after one unmeasured run of each. */
export function measure(
	work: () => unknown,
	floor: () => unknown,
	runs = 7,
	now: () => number = processorSeconds,
): { readonly seconds: readonly number[]; readonly floorSeconds: readonly number[] } {
	work();
	floor();
	const seconds: number[] = [];
	const floorSeconds: number[] = [];
	for (let run = 0; run < runs; run++) {
		seconds.push(secondsOf(work, now));
		floorSeconds.push(secondsOf(floor, now));
	}
	return { seconds, floorSeconds };
}

function secondsOf(work: () => unknown, now: () => number): number {
	const start = now();
	work();
	return now() - start;
}

/** What a `*.bench.ts` beside a source exports as `bench`: seeded work against a floor that no implementation can go under. */
export interface Bench {
	/** How `npm run bench NAME` finds it: any name that holds NAME. */
	readonly name: string;
	readonly run: () => Promise<readonly BenchResult[]>;
}

export interface BenchResult {
	/** As "check 20,000 rows". */
	readonly what: string;
	/** As "bare parse of the same file". */
	readonly floor: string;
	/** Items worked on in one run, and what they are: gives the rate. */
	readonly count: number;
	readonly unit: string;
	/** Seconds of each run: the processor's where `measure` gave them. */
	readonly seconds: readonly number[];
	/** Seconds of each run of the floor, taken in turn with the runs. */
	readonly floorSeconds: readonly number[];
}

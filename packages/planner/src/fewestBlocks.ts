import { BLOCK_POINTS, type BlockItem, type BlockProblem, familyKey, suitsBlock, wantKey } from "./blockProblem.ts";

/**
 * In how many blocks where it does not stand yet each want, or each family, is at least, if all of it finds room: after the blocks where it
 * stands, the largest first.
 */
export function fewestBlocks({ blocks, items }: BlockProblem, keyOf: (item: BlockItem) => string): ReadonlyMap<string, number> {
	const known = items.filter(({ want }) => want !== null);
	return new Map(
		[...Map.groupBy(known, keyOf)].map(([key, own]) => {
			const isHeld = blocks.map(({ held }) => held.some((one) => one.want !== null && keyOf(one as BlockItem) === key));
			const open = blocks.map((block, index) => (own.some((item) => suitsBlock(item, block, index)) ? block.free : 0));
			let left = own.length - open.reduce((sum, free, index) => sum + (isHeld[index] ? free : 0), 0);
			let fewest = 0;
			for (const free of open.filter((_, index) => !isHeld[index]).toSorted((a, b) => b - a)) {
				if (left <= 0) break;
				left -= free;
				fewest++;
			}
			return [key, fewest] as const;
		}),
	);
}

/** Points below which no answer is that gives every item a block: no want and no family in more blocks than it needs, none shared. */
export function pointsAtLeast(problem: BlockProblem): number {
	const sum = (keyOf: (item: BlockItem) => string) => [...fewestBlocks(problem, keyOf).values()].reduce((total, one) => total + one, 0);
	const wants = sum(wantKey);
	const empty = problem.blocks.filter(({ held, free }) => held.length === 0 && free > 0).length;
	return wants * BLOCK_POINTS.want - Math.min(empty, wants) * BLOCK_POINTS.share + sum(familyKey) * BLOCK_POINTS.family;
}

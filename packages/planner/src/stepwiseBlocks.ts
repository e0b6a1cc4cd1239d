import { BLOCK_POINTS, type BlockItem, type BlockProblem, familyKey, pointsOf, suitsBlock, wantKey } from "./blockProblem.ts";
import { exchangedBlocks } from "./exchangedBlocks.ts";

interface Filling {
	left: number;
	/** null: neither yet. */
	isSpeech: boolean | null;
	readonly wants: Set<string>;
	readonly families: Set<string>;
	readonly kinds: Set<string | null>;
}

/** Points against opening an empty block: with none, with some, and with many. */
const OPENING_POINTS = [0, 3 * BLOCK_POINTS.share, 100 * BLOCK_POINTS.want];

interface Way {
	readonly opening: number;
	/** Wants by falling number of items, else in the order of the items. */
	readonly largestFirst: boolean;
}

/** A good way of giving every item a block, for the solver to start from; null where none is found. */
export function stepwiseBlocks(problem: BlockProblem): readonly number[] | null {
	const ways = OPENING_POINTS.flatMap((opening) => [true, false].map((largestFirst) => ({ opening, largestFirst }))).flatMap((way) => {
		const blockOf = oneAfterAnother(problem, way);
		if (blockOf === null) return [];
		const improved = exchangedBlocks(problem, blockOf);
		return [{ blockOf: improved, points: pointsOf(problem, improved) }];
	});
	return ways.toSorted((a, b) => a.points - b.points)[0]?.blockOf ?? null; // stable
}

/**
 * A way of giving every item a block, a want and then a family at a time, whole where a block takes it, to where it adds the fewest points:
 * XX
 */
function oneAfterAnother({ blocks, bankFree, items }: BlockProblem, { opening, largestFirst }: Way): readonly number[] | null {
	const left = new Map(bankFree);
	const fillings = blocks.map(({ free, use, held }): Filling => {
		return {
			left: free,
			isSpeech: use === "speech" ? true : use === "other" ? false : null,
			wants: new Set(held.map(wantKey)),
			families: new Set(held.map(familyKey)),
			kinds: new Set(held.map(({ kind }) => kind)),
		};
	});
	const blockOf: number[] = items.map(() => -1);
	const put = (item: BlockItem, index: number, block: number) => {
		const filling = fillings[block]!;
		blockOf[index] = block;
		filling.left--;
		left.set(blocks[block]!.bank, (left.get(blocks[block]!.bank) ?? 0) - 1);
		filling.wants.add(wantKey(item));
		filling.families.add(familyKey(item));
		filling.kinds.add(item.kind);
		if (item.kind !== null && blocks[block]!.use === "either") filling.isSpeech = item.kind === "speech";
	};
	const hasRoom = (item: BlockItem, block: number, count: number) => {
		const { bank, use } = blocks[block]!;
		const { left: places, isSpeech } = fillings[block]!;
		if (Math.min(places, left.get(bank) ?? 0) < count || !suitsBlock(item, blocks[block]!, block)) return false;
		return use !== "either" || item.kind === null || isSpeech === null || isSpeech === (item.kind === "speech");
	};
	// what stays, then what stands where it may stay
	for (const mayMove of [false, true]) {
		for (const [index, item] of items.entries()) {
			if (item.home === null || item.mayMove !== mayMove) continue;
			if (hasRoom(item, item.home, 1)) put(item, index, item.home);
			else if (!mayMove) return null;
		}
	}
	/** The block that takes so many items of one family at fewest points, or -1. */
	const bestFor = (item: BlockItem, count: number) => {
		let best = -1;
		let fewest = Number.POSITIVE_INFINITY;
		for (const [block, filling] of fillings.entries()) {
			if (!hasRoom(item, block, count)) continue;
			const points = addedPoints(item, filling, blocks[block]!.bank, count) + (filling.kinds.size === 0 ? opening : 0);
			if (points > fewest || (points === fewest && filling.left >= fillings[best]!.left)) continue;
			fewest = points;
			best = block;
		}
		return best;
	};
	const open = items.flatMap((_, index) => (blockOf[index]! < 0 ? [index] : []));
	const wants = [...Map.groupBy(open, (index) => wantKey(items[index]!)).values()];
	for (const want of largestFirst ? wants.toSorted((a, b) => b.length - a.length) : wants) {
		const families = [...Map.groupBy(want, (index) => familyKey(items[index]!)).values()];
		for (const family of families.toSorted((a, b) => b.length - a.length)) {
			const whole = bestFor(items[family[0]!]!, family.length);
			for (const index of family) {
				const block = whole >= 0 ? whole : bestFor(items[index]!, 1);
				if (block < 0) return null;
				put(items[index]!, index, block);
			}
		}
	}
	return blockOf;
}

function addedPoints(item: BlockItem, { wants, families, kinds }: Filling, bank: string, count: number): number {
	const isEmpty = kinds.size === 0;
	const mixes = (item.kind === "timed" && kinds.has("data")) || (item.kind === "data" && kinds.has("timed"));
	return (
		(wants.has(wantKey(item)) ? 0 : BLOCK_POINTS.want - (isEmpty ? BLOCK_POINTS.share : 0)) +
		(families.has(familyKey(item)) ? 0 : BLOCK_POINTS.family) +
		(mixes ? BLOCK_POINTS.kinds : 0) +
		(item.banks.includes(bank) ? 0 : BLOCK_POINTS.bank * count)
	);
}

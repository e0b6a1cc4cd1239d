import { type BlockItem, type BlockProblem, familyKey, pointsIn, suitsBlock, wantKey } from "./blockProblem.ts";

/** Rounds after which it is left as it is: each takes a good step or is the last. */
const MOST_ROUNDS = 100;

/**
 * The same answer with fewer points, if moving what a block has of a want or a family to another block, or exchanging two such parts, brings any; again
 * and again until none does. Nothing is left out that had a block.
 */
export function exchangedBlocks(problem: BlockProblem, blockOf: readonly number[]): readonly number[] {
	const { blocks, bankFree, items } = problem;
	const own = blocks.map((_, block) => items.flatMap((_item, index) => (blockOf[index] === block ? [index] : [])));
	const points = own.map((ones, block) => pointsIn(problem, block, itemsAt(items, ones)));
	const left = new Map(bankFree);
	for (const block of blockOf) left.set(blocks[block]!.bank, (left.get(blocks[block]!.bank) ?? 0) - 1);

	/** Puts `part` of block a into b and `other` of b into a if that has fewer points. */
	const tried = (a: number, part: readonly number[], b: number, other: readonly number[]): boolean => {
		const more = part.length - other.length;
		if (own[b]!.length + more > blocks[b]!.free || own[a]!.length - more > blocks[a]!.free) return false;
		const [bankA, bankB] = [blocks[a]!.bank, blocks[b]!.bank];
		if (bankA !== bankB && ((left.get(bankB) ?? 0) < more || (left.get(bankA) ?? 0) < -more)) return false;
		const inA = [...own[a]!.filter((index) => !part.includes(index)), ...other];
		const inB = [...own[b]!.filter((index) => !other.includes(index)), ...part];
		if (!mayHold(problem, a, other, inA) || !mayHold(problem, b, part, inB)) return false;
		const now = [pointsIn(problem, a, itemsAt(items, inA)), pointsIn(problem, b, itemsAt(items, inB))] as const;
		if (now[0] + now[1] >= points[a]! + points[b]!) return false;
		[own[a], own[b], points[a], points[b]] = [inA, inB, now[0], now[1]];
		left.set(bankA, (left.get(bankA) ?? 0) + more);
		left.set(bankB, (left.get(bankB) ?? 0) - more);
		return true;
	};
	const step = (): boolean => {
		const parts = own.map((ones) => {
			const open = ones.filter((index) => items[index]!.home === null || items[index]!.mayMove);
			const by = (keyOf: (item: BlockItem) => string) => [...Map.groupBy(open, (index) => keyOf(items[index]!)).values()];
			return [...by(wantKey), ...by(familyKey)];
		});
		for (const a of blocks.keys()) {
			for (const part of parts[a]!) {
				for (const b of blocks.keys()) {
					if (a === b) continue;
					if (tried(a, part, b, [])) return true;
					if (b > a && parts[b]!.some((other) => tried(a, part, b, other))) return true;
				}
			}
		}
		return false;
	};
	for (let round = 0; round < MOST_ROUNDS && step(); round++);

	const better = [...blockOf];
	for (const [block, ones] of own.entries()) for (const index of ones) better[index] = block;
	return better;
}

function itemsAt(items: readonly BlockItem[], indices: readonly number[]): readonly BlockItem[] {
	return indices.map((index) => items[index]!);
}

/** Whether a block may hold what comes, and all that it would hold together. */
function mayHold({ blocks, items }: BlockProblem, block: number, coming: readonly number[], all: readonly number[]): boolean {
	const space = blocks[block]!;
	if (!coming.every((index) => suitsBlock(items[index]!, space, block))) return false;
	if (space.use !== "either") return true;
	const kinds = new Set(all.flatMap((index) => (items[index]!.kind === null ? [] : [items[index]!.kind === "speech"])));
	return kinds.size < 2;
}

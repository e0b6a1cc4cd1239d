import type { ScanKind, Want } from "./candidate.ts";

/** What a block may be filled with: speech, or anything else, or whichever comes, or (where pins mix it) nothing that is either. */
export type BlockUse = "speech" | "other" | "either" | "nothing";

/** A block of places, as far as it is filled for good. */
export interface BlockSpace {
	readonly bank: string;
	/** Places that are free. */
	readonly free: number;
	/** `any`: the set does not scan, so that speech may stand beside anything. */
	readonly use: BlockUse | "any";
	/** What stands there. */
	readonly held: readonly { readonly kind: ScanKind | null; readonly want: Want | null; readonly family: string }[];
}

/** In what order things go when not all of them find a place: what is new first, what must be held last. */
export const ITEM_TIERS = ["new", "homeless", "standing", "must"] as const;
export type ItemTier = (typeof ITEM_TIERS)[number];

/** Something that needs a place. */
export interface BlockItem {
	/** null: nothing tells, so it suits any block. */
	readonly kind: ScanKind | null;
	readonly want: Want | null;
	/** What it belongs to within its want: a band, a net, a station. */
	readonly family: string;
	/** Banks made for it, and banks that will do. */
	readonly banks: readonly string[];
	readonly otherBanks: readonly string[];
	readonly tier: ItemTier;
	/** Whole, above 0: what is lost without it, beside others of its tier. */
	readonly worth: number;
	/** Block in which it stands; null where it stands nowhere. */
	readonly home: number | null;
	/** Where it stands somewhere: whether it may stand in another block. */
	readonly mayMove: boolean;
}

export interface BlockProblem {
	readonly blocks: readonly BlockSpace[];
	/** Places that may still be filled, by bank, the reserve kept. */
	readonly bankFree: ReadonlyMap<string, number>;
	readonly items: readonly BlockItem[];
	/** Points for each item that leaves its home, whole. */
	readonly movePoints: number;
}

/**
 * Points that an order of blocks costs; own choice. `want`: each want in each block where it did not stand, so that a want keeps together;
 * `share`: less for the first of an empty block, so that wants keep apart where there is room; `family`: each band, net or station in each
 * block; `kinds`: set times and data in one block; `bank`: each place in a bank that is not made for it.
 */
export const BLOCK_POINTS = { want: 600, share: 200, family: 300, kinds: 200, bank: 100 } as const;
/** Points of moving one place at disturbance 1: as much as the most that it can gain by itself. */
export const MOVE_POINTS = 1_100;

export function wantKey({ kind, want }: Pick<BlockItem, "kind" | "want">): string {
	return `${kind} ${want}`;
}

export function familyKey(item: Pick<BlockItem, "kind" | "want" | "family">): string {
	return `${wantKey(item)} ${item.family}`;
}

/** Whether an item may be in a block at all. */
export function suitsBlock({ banks, otherBanks, kind, home, mayMove }: BlockItem, { bank, use }: BlockSpace, block: number): boolean {
	if (home !== null && !mayMove) return home === block;
	if (!banks.includes(bank) && !otherBanks.includes(bank)) return false;
	if (kind === null || use === "any" || use === "either") return true;
	return use === (kind === "speech" ? "speech" : "other");
}

/** Empty blocks that nothing tells apart, each set in rising order. */
export function alikeBlocks({ blocks, items }: BlockProblem): readonly (readonly number[])[] {
	const homes = new Set(items.map(({ home }) => home));
	const empty = blocks.flatMap(({ held }, index) => (held.length === 0 && !homes.has(index) ? [index] : []));
	const alike = Map.groupBy(empty, (index) => `${blocks[index]!.bank} ${blocks[index]!.free} ${blocks[index]!.use}`);
	return [...alike.values()];
}

/** The same answer with empty blocks that nothing tells apart in rising order of a rank. */
export function alikeInOrder<Block extends number | null>(
	problem: BlockProblem,
	blockOf: readonly Block[],
	rankOf: (block: number) => number,
): readonly Block[] {
	const becomes = new Map<Block, number>();
	for (const own of alikeBlocks(problem)) {
		const ranked = own.toSorted((a, b) => rankOf(a) - rankOf(b) || a - b);
		for (const [i, block] of ranked.entries()) becomes.set(block as Block, own[i]!);
	}
	return blockOf.map((block) => (becomes.get(block) as Block | undefined) ?? block);
}

/** What an answer costs, each item in a block or (null) left out. Written apart from the linear model, which it checks. */
export function pointsOf(problem: BlockProblem, blockOf: readonly (number | null)[]): number {
	return problem.blocks.reduce((points, _, block) => {
		const own = problem.items.filter((_one, item) => blockOf[item] === block);
		return points + pointsIn(problem, block, own);
	}, 0);
}

/** What one block costs with these items in it. */
export function pointsIn({ blocks, movePoints }: BlockProblem, index: number, own: readonly BlockItem[]): number {
	const { bank, held } = blocks[index]!;
	const known = own.filter(({ want }) => want !== null);
	const before = held.filter(({ want }) => want !== null);
	const fresh = (key: (one: BlockSpace["held"][number]) => string) => {
		const old = new Set(before.map(key));
		return new Set(known.map(key).filter((one) => !old.has(one))).size;
	};
	const wants = fresh(wantKey);
	const has = (kind: ScanKind, ones: readonly { readonly kind: ScanKind | null }[]) => ones.some((one) => one.kind === kind);
	const isMixed = (ones: readonly { readonly kind: ScanKind | null }[]) => has("timed", ones) && has("data", ones);
	return (
		wants * BLOCK_POINTS.want -
		(wants > 0 && held.length === 0 ? BLOCK_POINTS.share : 0) +
		fresh(familyKey) * BLOCK_POINTS.family +
		(isMixed([...before, ...known]) && !isMixed(before) ? BLOCK_POINTS.kinds : 0) +
		own.filter(({ banks, home, mayMove }) => (home === null || mayMove) && !banks.includes(bank)).length * BLOCK_POINTS.bank +
		own.filter(({ home }) => home !== null && home !== index).length * movePoints
	);
}

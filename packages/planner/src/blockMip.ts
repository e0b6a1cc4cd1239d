import {
	alikeBlocks,
	BLOCK_POINTS,
	type BlockItem,
	type BlockProblem,
	familyKey,
	type ItemTier,
	suitsBlock,
	wantKey,
} from "./blockProblem.ts";
import { fewestBlocks } from "./fewestBlocks.ts";
import type { Mip, MipColumn, MipRow, SolverOptions } from "./solver.ts";

type Entry = MipRow["entries"][number];

/** Items that may be exchanged for one another. */
export interface BlockGroup {
	readonly like: BlockItem;
	/** Numbers of the items, rising. */
	readonly items: readonly number[];
}

/** Items to blocks as a linear model: how many of each group go into each block. */
export interface BlockMip {
	readonly columns: readonly MipColumn[];
	readonly rows: readonly MipRow[];
	readonly groups: readonly BlockGroup[];
	/** Column of a group's number in a block; null where it must not be. */
	readonly columnOf: readonly (readonly (number | null)[])[];
	/** Column that says whether a want or a family is new in a block, by block and key; and whether an empty block is for speech. */
	readonly marks: ReadonlyMap<string, number>;
	readonly sides: readonly (number | null)[];
	/** What makes `BLOCK_POINTS` few, as worth: points times -1. */
	readonly order: readonly Entry[];
}

/**
 * @param isWhole whether every item must find a block; else items may be left out, and only `keptOf` tells what that costs
 */
export function blockMip(problem: BlockProblem, isWhole: boolean): BlockMip {
	const { blocks, bankFree, items, movePoints } = problem;
	const model = new Builder();
	const groups = groupsOf(items, isWhole);
	const columnOf = groups.map(({ like, items: { length } }) =>
		blocks.map((block, index) =>
			block.free > 0 && suitsBlock(like, block, index) ? model.column(Math.min(block.free, length), true) : null,
		),
	);
	const inBlock = (index: number, take: (item: BlockItem) => boolean): readonly Entry[] =>
		groups.flatMap(({ like }, group) => {
			const column = columnOf[group]![index] ?? null;
			return column !== null && take(like) ? [{ column, factor: 1 }] : [];
		});
	for (const [group, { items: own }] of groups.entries()) {
		const all = columnOf[group]!.flatMap((column) => (column === null ? [] : [{ column, factor: 1 }]));
		model.row(all, isWhole ? own.length : null, own.length);
	}
	for (const [bank, free] of bankFree) {
		const own = blocks.flatMap((block, index) => (block.bank === bank ? inBlock(index, () => true) : []));
		model.row(own, null, Math.max(0, free));
	}

	const wants = new Map(items.flatMap((item) => (item.want === null ? [] : [[wantKey(item), item] as const])));
	const families = new Map(items.flatMap((item) => (item.want === null ? [] : [[familyKey(item), item] as const])));
	const order: Entry[] = [];
	const sides: (number | null)[] = [];
	const opens: (number | null)[] = [];
	for (const [index, block] of blocks.entries()) {
		model.row(
			inBlock(index, () => true),
			null,
			block.free,
		);
		const speech = inBlock(index, ({ kind }) => kind === "speech");
		const others = inBlock(index, ({ kind }) => kind === "timed" || kind === "data");
		const side = block.use === "either" && speech.length > 0 && others.length > 0 ? model.column(1, true) : null;
		sides.push(side);
		if (side !== null) {
			model.row([...speech, { column: side, factor: -block.free }], null, 0);
			model.row([...others, { column: side, factor: block.free }], null, block.free);
		}
		const heldWants = new Set(block.held.map(wantKey));
		const heldFamilies = new Set(block.held.map(familyKey));
		const marks = new Map<string, number>();
		for (const [key, item] of wants) {
			const own = inBlock(index, (one) => wantKey(one) === key);
			if (own.length === 0 || heldWants.has(key)) continue;
			const mark = model.column(1, true);
			marks.set(key, mark);
			model.marks.set(`${index} ${key}`, mark);
			model.row([...own, { column: mark, factor: -Math.min(block.free, countOf(items, wantKey, key)) }], null, 0);
			order.push({ column: mark, factor: -BLOCK_POINTS.want });
			if (side === null) continue;
			// the side follows at once, not only by shares of a block
			if (item.kind === "speech") model.row([at(mark, 1), at(side, -1)], null, 0);
			else if (item.kind !== null) model.row([at(mark, 1), at(side, 1)], null, 1);
		}
		for (const [key, item] of families) {
			const own = inBlock(index, (one) => familyKey(one) === key);
			if (own.length === 0 || heldFamilies.has(key)) continue;
			const mark = model.column(1, true);
			model.marks.set(`${index} ${key}`, mark);
			model.row([...own, { column: mark, factor: -Math.min(block.free, countOf(items, familyKey, key)) }], null, 0);
			order.push({ column: mark, factor: -BLOCK_POINTS.family });
			const want = marks.get(wantKey(item));
			if (want !== undefined) model.row([at(mark, 1), at(want, -1)], null, 0);
		}
		opens.push(null);
		if (block.held.length === 0 && marks.size > 0) {
			const open = model.column(1, false);
			opens[index] = open;
			model.row([at(open, 1), ...[...marks.values()].map((mark) => at(mark, -1))], null, 0);
			order.push({ column: open, factor: BLOCK_POINTS.share });
		}
		const held = new Set(block.held.flatMap(({ kind, want }) => (want === null ? [] : [kind])));
		const ofKind = (kind: string) => [...marks].filter(([key]) => wants.get(key)?.kind === kind).map(([, mark]) => mark);
		const [timed, data] = [ofKind("timed"), ofKind("data")];
		const canMix = (held.has("timed") || timed.length > 0) && (held.has("data") || data.length > 0);
		if (canMix && !(held.has("timed") && held.has("data"))) {
			const mixed = model.column(1, false);
			order.push({ column: mixed, factor: -BLOCK_POINTS.kinds });
			for (const one of held.has("timed") ? [null] : timed) {
				for (const other of held.has("data") ? [null] : data) {
					const both = [one, other].flatMap((mark) => (mark === null ? [] : [at(mark, 1)]));
					model.row([...both, at(mixed, -1)], null, both.length - 1);
				}
			}
		}
		for (const [group, { like }] of groups.entries()) {
			const column = columnOf[group]![index] ?? null;
			if (column === null || !(like.home === null || like.mayMove)) continue;
			if (!like.banks.includes(block.bank)) order.push({ column, factor: -BLOCK_POINTS.bank });
			if (like.home !== null && like.home !== index) order.push({ column, factor: -movePoints });
		}
	}
	if (isWhole) addFewest(model, problem);
	addSymmetry(model, problem, sides, opens);
	return { columns: model.columns, rows: model.rows, groups, columnOf, marks: model.marks, sides, order: summed(order) };
}

/** Worth of keeping items of one tier: entries over the numbers of the groups. */
export function keptOf({ groups, columnOf }: BlockMip, tier: ItemTier): readonly Entry[] {
	return groups.flatMap(({ like }, group) =>
		like.tier === tier ? columnOf[group]!.flatMap((column) => (column === null ? [] : [{ column, factor: like.worth }])) : [],
	);
}

/** An answer as the solver can start from it. */
export function startAt(
	{ groups, columnOf, marks, sides }: BlockMip,
	{ items }: BlockProblem,
	blockOf: readonly number[],
): NonNullable<SolverOptions["start"]> {
	const isMarked = new Set(items.flatMap((item, index) => [wantKey(item), familyKey(item)].map((key) => `${blockOf[index]} ${key}`)));
	const hasSpeech = new Set(items.flatMap(({ kind }, index) => (kind === "speech" ? [blockOf[index]] : [])));
	return [
		...groups.flatMap(({ items: own }, group) =>
			columnOf[group]!.flatMap((column, block) =>
				column === null ? [] : [{ column, value: own.filter((item) => blockOf[item] === block).length }],
			),
		),
		...[...marks].map(([key, column]) => ({ column, value: isMarked.has(key) ? 1 : 0 })),
		...sides.flatMap((column, block) => (column === null ? [] : [{ column, value: hasSpeech.has(block) ? 1 : 0 }])),
	];
}

/** The model that makes `worth` as large as possible, under further rows. */
export function blockMipWith({ columns, rows }: BlockMip, worth: readonly Entry[], more: readonly MipRow[]): Mip {
	const factors = new Map(worth.map(({ column, factor }) => [column, factor]));
	return { columns: columns.map((column, index) => ({ ...column, worth: factors.get(index) ?? 0 })), rows: [...rows, ...more] };
}

class Builder {
	readonly columns: MipColumn[] = [];
	readonly rows: MipRow[] = [];
	/** Columns that say whether a want or a family is new in a block. */
	readonly marks = new Map<string, number>();

	column(upper: number, isWhole: boolean): number {
		return this.columns.push({ lower: 0, upper, isWhole, worth: 0 }) - 1;
	}

	/** @param least, most limits; null for none */
	row(entries: readonly Entry[], least: number | null, most: number | null): void {
		this.rows.push({ entries, least, most });
	}
}

function at(column: number, factor: number): Entry {
	return { column, factor };
}

/** Where all of them find a place, what they are worth tells nothing apart. */
function groupsOf(items: readonly BlockItem[], isWhole: boolean): readonly BlockGroup[] {
	const groups = Map.groupBy(items.keys(), (index) => {
		const item = items[index]!;
		const { banks, otherBanks, tier, worth, home, mayMove } = item;
		return `${familyKey(item)}: ${banks} or ${otherBanks}, from ${home} ${mayMove}, ${isWhole ? "" : `${tier} ${worth}`}`;
	});
	return [...groups].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, own]) => ({ like: items[own[0]!]!, items: own }));
}

function countOf(items: readonly BlockItem[], keyOf: (item: BlockItem) => string, key: string): number {
	return items.filter((item) => item.want !== null && keyOf(item) === key).length;
}

/** No want and no family is in fewer blocks than it needs: it follows from the rest, but only for whole numbers, so it spares most of the proof. */
function addFewest(model: Builder, problem: BlockProblem): void {
	for (const keyOf of [wantKey, familyKey]) {
		for (const [key, fewest] of fewestBlocks(problem, keyOf)) {
			const marks = problem.blocks.flatMap((_, index) => model.marks.get(`${index} ${key}`) ?? []);
			if (fewest > 0 && marks.length > 0)
				model.row(
					marks.map((mark) => at(mark, 1)),
					fewest,
					null,
				);
		}
	}
}

/** Empty blocks of one length and bank are alike while nothing stands in them: speech goes before the rest, and of each the earlier is opened first. */
function addSymmetry(model: Builder, problem: BlockProblem, sides: readonly (number | null)[], opens: readonly (number | null)[]): void {
	for (const own of alikeBlocks(problem)) {
		for (const [i, index] of own.entries()) {
			const next = own[i + 1];
			if (next === undefined) continue;
			const [side, nextSide] = [sides[index] ?? null, sides[next] ?? null];
			const [open, nextOpen] = [opens[index] ?? null, opens[next] ?? null];
			const bySide = side === null || nextSide === null ? [] : [at(side, 1), at(nextSide, -1)];
			if (bySide.length > 0) model.row(bySide, 0, null);
			if (open !== null && nextOpen !== null) model.row([at(open, 1), at(nextOpen, -1), ...bySide], 0, null);
		}
	}
}

function summed(entries: readonly Entry[]): readonly Entry[] {
	const factors = new Map<number, number>();
	for (const { column, factor } of entries) factors.set(column, (factors.get(column) ?? 0) + factor);
	return [...factors].map(([column, factor]) => ({ column, factor }));
}

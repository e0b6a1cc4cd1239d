import { type BlockOptions, bestBlocks } from "./bestBlocks.ts";
import { alikeInOrder, type BlockItem, type BlockProblem, type BlockSpace, MOVE_POINTS } from "./blockProblem.ts";
import type { Candidate } from "./candidate.ts";
import { contentKey } from "./contentKey.ts";
import type { Entry } from "./entry.ts";
import type { Block, FilledPlace, Layout } from "./layout.ts";
import { placesInBlock } from "./placesInBlock.ts";
import type { Solver } from "./solver.ts";
import { inUseOrder } from "./useOrder.ts";

export interface FillOptions {
	/** 0: what stands may be moved freely, pins apart; 1 or more: what stands stays. */
	readonly disturbance: number;
	readonly worthOf: (candidate: Candidate) => number;
	readonly solver: Solver | undefined;
	readonly limits: BlockOptions;
}

export interface Filled {
	/** What found no place, of what came and of what stood. */
	readonly homeless: readonly Entry[];
	/** `optimal`: the order of blocks is proved best under `BLOCK_POINTS`. */
	readonly status: "optimal" | "feasible";
	/** How many of the order's points may be too many, as a share of them; null where a limit came before anything told. */
	readonly gap: number | null;
}

/** Numbers in a model above which the order is found step by step: proving it would take too long. Own choice. */
const MOST_NUMBERS = 20_000;

interface Item {
	readonly entry: Entry;
	/** Where it stands. */
	readonly stands: FilledPlace | null;
}

/**
 * Gives places to what has none, the best way: to blocks first, then in each block to places in the order of use. What stands is moved only as
 * far as `disturbance` lets it. A place that repeats another of its bank (guards that stand in each block) is where its owner wants it, and stays.
 * @returns null, and the layout as it was, where no way was found that leaves nothing out, or the set is too large
 */
export async function fillByBlocks(layout: Layout, arrivals: readonly Entry[], options: FillOptions): Promise<Filled | null> {
	const { disturbance, worthOf, solver, limits } = options;
	const standing = layout.all().filter(({ entry }) => !entry.pinned);
	const items: readonly Item[] = inUseOrder([...standing.map((one) => one.entry), ...arrivals]).map((entry) => {
		return { entry, stands: standing.find((one) => one.entry === entry) ?? null };
	});
	const problem = blockProblem(layout, items, disturbance, worthOf);
	if (problem.items.length * problem.blocks.length > MOST_NUMBERS) return null;
	const answer = await bestBlocks(problem, solver, limits);
	if (answer.status === "none") return null;

	const blockOf = alikeInOrder(problem, answer.blockOf, (block) => {
		const first = answer.blockOf.indexOf(block); // items are in the order of use
		return first < 0 ? items.length : first;
	});
	for (const { bank, place } of standing) layout.clear(bank, place);
	for (const [index, block] of layout.blocks().entries()) {
		const fixed = layout.held(block).map((one): Item => ({ entry: one.entry, stands: one }));
		const coming = items.filter((_, item) => blockOf[item] === index);
		for (const { place } of layout.held(block)) layout.clear(block.bank.id, place);
		put(layout, block, [...fixed, ...coming], (item) => problem.items[items.indexOf(item)]?.mayMove === false, disturbance);
	}
	return {
		homeless: items.flatMap(({ entry }, item) => (blockOf[item] === null ? [entry] : [])),
		status: answer.status,
		gap: answer.excess === null ? null : answer.excess === 0 ? 0 : answer.excess / Math.max(1, answer.points),
	};
}

function put(layout: Layout, block: Block, own: readonly Item[], stays: (item: Item) => boolean, disturbance: number): void {
	const standsAt = new Map(own.map((item) => [item.entry, item]));
	const ordered = inUseOrder([...standsAt.keys()]).map((entry) => standsAt.get(entry)!);
	const isHere = ({ bank, place }: FilledPlace) => bank === block.bank.id && place >= block.first && place <= block.last;
	const places = placesInBlock(
		block.first,
		block.last,
		ordered.map((item) => {
			const at = item.stands !== null && isHere(item.stands) ? item.stands.place : null;
			return { at, isFixed: at !== null && (item.entry.pinned || stays(item)) };
		}),
		disturbance,
	);
	for (const [i, { entry }] of ordered.entries()) layout.put(block.bank.id, places[i]!, entry);
}

function blockProblem(
	layout: Layout,
	items: readonly Item[],
	disturbance: number,
	worthOf: (candidate: Candidate) => number,
): BlockProblem {
	const blocks = layout.blocks();
	const pins = blocks.map((block) => layout.held(block).filter(({ entry }) => entry.pinned));
	const times = new Map<string, number>();
	for (const { bank, entry } of layout.all()) times.set(repeatKey(bank, entry), (times.get(repeatKey(bank, entry)) ?? 0) + 1);
	const isFree = disturbance === 0;
	const worths = items.map(({ entry: { candidate } }) => (candidate === null ? 0 : worthOf(candidate)));
	const most = Math.max(...worths, Number.MIN_VALUE);
	return {
		blocks: blocks.map((block, index): BlockSpace => {
			const held = pins[index]!.map(({ entry }) => ({ kind: entry.scan, want: entry.want, family: familyOf(entry) }));
			return {
				bank: block.bank.id,
				free: block.last - block.first + 1 - held.length,
				use: layout.isScanned ? useOf(layout.held(block), disturbance) : "any",
				held,
			};
		}),
		bankFree: new Map(
			[...new Set(blocks.map(({ bank }) => bank))].map((bank) => {
				return [bank.id, layout.free(bank) + items.filter(({ stands }) => stands?.bank === bank.id).length];
			}),
		),
		items: items.map(({ entry, stands }, index): BlockItem => {
			const banks = layout.banksOf(entry);
			const isMade = ({ id, holds }: (typeof banks)[number]) =>
				entry.scan === null
					? entry.found === null || id === entry.found.bank
					: holds !== "any" || banks.every((bank) => bank.holds === "any");
			const isRepeat = stands !== null && (times.get(repeatKey(stands.bank, entry)) ?? 0) > 1;
			const mayMove = stands === null || (disturbance < 1 && !isRepeat && banks.some(({ id }) => id === stands.bank));
			const home = blocks.findIndex(({ bank, first, last }) => stands?.bank === bank.id && stands.place >= first && stands.place <= last);
			const share = 1 + Math.round((898 * worths[index]!) / most);
			return {
				kind: entry.scan ?? (home < 0 ? null : kindAround(layout.held(blocks[home]!))),
				want: entry.want,
				family: familyOf(entry),
				banks: banks.filter(isMade).map(({ id }) => id),
				otherBanks: banks.filter((bank) => !isMade(bank)).map(({ id }) => id),
				tier: tierOf(entry, stands),
				// of what the owner has, one in nobody's list goes before any that is in one
				worth: entry.candidate === null ? 100 : 100 + share,
				home: home < 0 || (isFree && mayMove) ? null : home,
				mayMove,
			};
		}),
		movePoints: disturbance >= 1 ? 0 : Math.round(disturbance * MOVE_POINTS),
	};
}

function repeatKey(bank: string, { content }: Entry): string {
	return `${bank} ${contentKey(content)}`;
}

function tierOf({ want, found }: Entry, stands: FilledPlace | null): BlockItem["tier"] {
	if (want === "guard" || want === "safety-text") return "must";
	return stands !== null ? "standing" : found === null ? "new" : "homeless";
}

/** Channels belong together by band; what stations send, by station. */
function familyOf({ want, candidate, bandMhz }: Entry): string {
	const isByBand = want === "guard" || want === "coast-calling" || want === "ship-calling" || want === "safety-text";
	const station = isByBand ? undefined : candidate?.sources[0]?.listing.stationId;
	return station ?? `${bandMhz} MHz`;
}

/** What nothing tells of is for what it stands among. */
function kindAround(held: readonly FilledPlace[]): BlockItem["kind"] {
	const kinds = new Set(held.flatMap(({ entry }) => (entry.scan === null ? [] : [entry.scan])));
	if (kinds.size === 0 || (kinds.has("speech") && kinds.size > 1)) return null;
	return kinds.has("speech") ? "speech" : kinds.has("timed") ? "timed" : "data";
}

/** Where what stands may move, pins alone tell what a block is for; where pins mix it, nothing is added. */
function useOf(held: readonly FilledPlace[], disturbance: number): BlockSpace["use"] {
	const kinds = (ones: readonly FilledPlace[]) =>
		new Set(ones.flatMap(({ entry }) => (entry.scan === null ? [] : [entry.scan === "speech"])));
	const all = kinds(held);
	const pinned = kinds(held.filter(({ entry }) => entry.pinned));
	if (pinned.size === 2 || (disturbance >= 1 && all.size === 2)) return "nothing";
	return pinned.size === 0 ? "either" : pinned.has(true) ? "speech" : "other";
}

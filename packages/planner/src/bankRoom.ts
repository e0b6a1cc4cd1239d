import type { ScanKind } from "./candidate.ts";

/**
 * Free places of one bank. A block that the set scans as one never holds speech beside anything else, so what is free is told by block: in
 * blocks with speech, in blocks with something else, and in empty ones, which become either.
 */
export interface BankRoom {
	readonly bank: string;
	readonly kinds: readonly ScanKind[];
	/** Places that may be filled in all, the reserve kept. */
	readonly free: number;
	readonly inSpeechBlocks: number;
	readonly inOtherBlocks: number;
	/** Places of each empty block; none where the set does not scan, and the other two are all that is free. */
	readonly emptyBlocks: readonly number[];
}

export type KindCounts = Readonly<Record<ScanKind, number>>;

export const SCAN_KINDS: readonly ScanKind[] = ["speech", "timed", "data"];

/** All sets of kinds that are not empty. */
const KIND_SETS: readonly (readonly ScanKind[])[] = [1, 2, 3, 4, 5, 6, 7].map((bits) => SCAN_KINDS.filter((_, i) => (bits >> i) % 2 === 1));

/**
 * Whether so many of each kind find places. For one way of giving empty blocks to speech, what fits a bank is a polymatroid, and banks add up:
 * all sets of kinds must fit what the banks have for that set.
 */
export function fitsRoom(room: readonly BankRoom[], counts: KindCounts): boolean {
	return splits(room).some((split) =>
		KIND_SETS.every((kinds) => {
			const wanted = kinds.reduce((sum, kind) => sum + counts[kind], 0);
			return wanted === 0 || wanted <= room.reduce((sum, bank, i) => sum + roomOf(bank, split[i]!, kinds), 0);
		}),
	);
}

/** How many of these kinds alone a bank holds, when so many places of its empty blocks are for speech. */
function roomOf(
	{ kinds: held, free, inSpeechBlocks, inOtherBlocks, emptyBlocks }: BankRoom,
	forSpeech: number,
	kinds: readonly ScanKind[],
): number {
	const asked = kinds.filter((kind) => held.includes(kind));
	const empty = emptyBlocks.reduce((sum, places) => sum + places, 0);
	const speech = asked.includes("speech") ? inSpeechBlocks + forSpeech : 0;
	const other = asked.some((kind) => kind !== "speech") ? inOtherBlocks + empty - forSpeech : 0;
	return Math.max(0, Math.min(free, speech + other));
}

/** Every way of giving empty blocks to speech, as places for each bank. */
function splits(room: readonly BankRoom[]): readonly (readonly number[])[] {
	let ways: readonly (readonly number[])[] = [[]];
	for (const { emptyBlocks } of room) {
		const sums = new Set([0]);
		for (const places of emptyBlocks) for (const sum of [...sums]) sums.add(sum + places);
		ways = ways.flatMap((way) => [...sums].map((sum) => [...way, sum]));
	}
	return ways;
}

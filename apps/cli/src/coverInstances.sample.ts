import {
	type BankRoom,
	type CoverCell,
	type CoverItem,
	type CoverProblem,
	HOUR_PARTS,
	SCAN_KINDS,
	type ScanKind,
} from "@skipwright/planner";

/** Seeded numbers from 0 up to but without 1. Source: Marsaglia, Xorshift RNGs (2003). */
export function seeded(seed: number): () => number {
	let state = (seed * 2_654_435_761) >>> 0 || 1;
	const next = () => {
		state ^= state << 13;
		state ^= state >>> 17;
		state ^= state << 5;
		state >>>= 0;
		return state / 4_294_967_296;
	};
	for (let i = 0; i < 8; i++) next();
	return next;
}

export interface InstanceSize {
	readonly items: number;
	readonly cells: number;
	readonly stations: number;
}

/** A small cover problem of any shape: kinds, banks, blocks, things that stand, are present or must be held, second choices at low sunspots. */
export function anyInstance(seed: number): CoverProblem {
	const random = seeded(seed);
	const upTo = (most: number) => Math.floor(random() * (most + 1));
	const size = { items: 1 + upTo(7), cells: 1 + upTo(9), stations: 1 + upTo(3) };
	const items = Array.from({ length: size.items }, (_, i): CoverItem => {
		const isPresent = random() < 0.1;
		return {
			id: `item ${i}`,
			kind: SCAN_KINDS[upTo(2)]!,
			isPresent,
			isStanding: !isPresent && random() < 0.2,
			isMust: random() < 0.12,
			bonus: random() < 0.3 ? upTo(400) : 0,
			price: random() < 0.5 ? upTo(300) : 0,
		};
	});
	const cells = anyCells(random, size);
	const lowCells = random() < 0.3 ? anyCells(random, size) : null;
	const room = anyRoom(random);
	const open = items.flatMap(({ isPresent, isMust }, i) => (isPresent || isMust ? [] : [i]));
	const together = random() < 0.4 ? [open.slice(0, 2), open.slice(2, 5)].filter((group) => group.length > 1) : [];
	return { items, cells, lowCells, room, together };
}

export function anyCells(random: () => number, { items, cells, stations }: InstanceSize): readonly CoverCell[] {
	const upTo = (most: number) => Math.floor(random() * (most + 1));
	return Array.from({ length: cells }, () => ({
		worth: 1 + upTo(9),
		stations: Array.from({ length: stations }, () =>
			Array.from({ length: items }, (_, item) => ({ item, parts: random() < 0.5 ? HOUR_PARTS : 1 + upTo(HOUR_PARTS - 1) })).filter(
				() => random() < 0.35,
			),
		),
	}));
}

function anyRoom(random: () => number): readonly BankRoom[] {
	const upTo = (most: number) => Math.floor(random() * (most + 1));
	const kinds: readonly (readonly ScanKind[])[] = [["speech", "timed"], ["data"], SCAN_KINDS];
	return Array.from({ length: 1 + upTo(1) }, (_, i) => ({
		bank: `bank ${i}`,
		kinds: kinds[upTo(2)]!,
		free: upTo(4),
		inSpeechBlocks: upTo(2),
		inOtherBlocks: upTo(2),
		emptyBlocks: Array.from({ length: upTo(2) }, () => 1 + upTo(1)),
	}));
}

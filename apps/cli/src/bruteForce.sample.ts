import { type BankRoom, type CoverCell, type CoverProblem, type KindCounts, type ScanKind, STATION_EIGHTHS } from "@skipwright/planner";

/** What decides between choices, first to last: worth less prices, the same at low sunspots, what changes (fewer is better), places. */
export type Standing = readonly [net: number, low: number, changes: number, places: number];

/** The best of all subsets, found by looking at each; null where none holds what must be held. Written apart from the planner's own ways. */
export function bruteForce(problem: CoverProblem): { readonly best: Standing; readonly chosen: readonly number[] } | null {
	const { items } = problem;
	let best: { best: Standing; chosen: readonly number[] } | null = null;
	for (let bits = 0; bits < 2 ** items.length; bits++) {
		const chosen = items.flatMap((_, i) => (Math.floor(bits / 2 ** i) % 2 === 1 ? [i] : []));
		if (items.some(({ isMust, isPresent }, i) => (isMust || isPresent) && !chosen.includes(i))) continue;
		if ((problem.together ?? []).some((group) => group.some((i) => chosen.includes(i)) && !group.every((i) => chosen.includes(i))))
			continue;
		const counts = { speech: 0, timed: 0, data: 0 };
		for (const i of chosen) if (!items[i]!.isPresent && !items[i]!.isStanding) counts[items[i]!.kind]++;
		if (!findsPlaces(problem.room, counts)) continue;
		const standing = standingOf(problem, chosen);
		if (best === null || isBetter(standing, best.best)) best = { best: standing, chosen };
	}
	return best;
}

export function standingOf(problem: CoverProblem, chosen: readonly number[]): Standing {
	const { items, cells, lowCells } = problem;
	let extra = 0;
	let changes = 0;
	let places = 0;
	for (const [i, { bonus, price, isPresent, isMust, isStanding }] of items.entries()) {
		const isIn = chosen.includes(i);
		if (isIn) extra += bonus - (isPresent || isMust || isStanding ? 0 : price);
		if (isPresent || isMust) continue;
		if (isStanding !== isIn) changes++;
		if (isIn) places++;
	}
	const net = cellsWorth(cells, chosen) + extra;
	return [net, lowCells === null ? 0 : cellsWorth(lowCells, chosen) + extra, changes, places];
}

function isBetter(a: Standing, b: Standing): boolean {
	if (a[0] !== b[0]) return a[0] > b[0];
	if (a[1] !== b[1]) return a[1] > b[1];
	return a[2] === b[2] ? a[3] < b[3] : a[2] < b[2];
}

function cellsWorth(cells: readonly CoverCell[], chosen: readonly number[]): number {
	let sum = 0;
	for (const { worth, stations } of cells) {
		let parts = 0;
		for (const members of stations) {
			let most = 0;
			for (const one of members) if (chosen.includes(one.item)) most = Math.max(most, one.parts);
			parts += most;
		}
		// one part after another, each worth what its full hour is
		for (let part = 0; part < parts; part++) sum += worth * (STATION_EIGHTHS[Math.floor(part / 24)] ?? 0);
	}
	return sum;
}

/** Puts one after another into any bank and block that takes it. */
export function findsPlaces(room: readonly BankRoom[], counts: KindCounts): boolean {
	const kinds = (["speech", "timed", "data"] as const).flatMap((kind) => Array.from({ length: counts[kind] }, (): ScanKind => kind));
	const seen = new Set<string>();
	const put = (at: number, banks: readonly Filled[]): boolean => {
		const kind = kinds[at];
		if (kind === undefined) return true;
		const mark = `${at} ${JSON.stringify(banks)}`;
		if (seen.has(mark)) return false;
		seen.add(mark);
		const side = kind === "speech" ? "speech" : "other";
		return banks.some((bank, i) => {
			if (bank.free <= 0 || !bank.kinds.includes(kind)) return false;
			return bank.blocks.some((block, b) => {
				if (block.left <= 0 || (block.side !== side && block.side !== "either")) return false;
				const blocks = bank.blocks.with(b, { side, left: block.left - 1 });
				return put(at + 1, banks.with(i, { ...bank, free: bank.free - 1, blocks }));
			});
		});
	};
	return put(
		0,
		room.map(({ kinds: held, free, inSpeechBlocks, inOtherBlocks, emptyBlocks }) => ({
			kinds: held,
			free,
			blocks: [
				{ side: "speech" as const, left: inSpeechBlocks },
				{ side: "other" as const, left: inOtherBlocks },
				...emptyBlocks.map((left) => ({ side: "either" as const, left })),
			],
		})),
	);
}

interface Filled {
	readonly kinds: readonly ScanKind[];
	readonly free: number;
	readonly blocks: readonly { readonly side: "speech" | "other" | "either"; readonly left: number }[];
}

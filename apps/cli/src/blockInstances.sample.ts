import { BLOCK_POINTS, type BlockItem, type BlockProblem, type BlockSpace, ITEM_TIERS, SCAN_KINDS, type Want } from "@skipwright/planner";
import { seeded } from "./coverInstances.sample.ts";

const WANTS = ["ship-calling", "weather-voice", "weather-charts"] as const satisfies readonly Want[];

/** A small problem of any shape: up to three blocks in two banks, up to six items of all tiers, standing ones that stay or may move. */
export function anyBlocks(seed: number): BlockProblem {
	const random = seeded(seed);
	const upTo = (most: number) => Math.floor(random() * (most + 1));
	const kind = () => (random() < 0.1 ? null : SCAN_KINDS[upTo(2)]!);
	const want = () => (random() < 0.1 ? null : WANTS[upTo(2)]!);
	const banks = random() < 0.5 ? ["a"] : ["a", "b"];
	const isScanned = random() < 0.85;
	const blocks = Array.from({ length: 1 + upTo(2) }, (_, i): BlockSpace => {
		const held = random() < 0.35 ? [{ kind: kind(), want: want(), family: `f${upTo(1)}` }] : [];
		const sides = new Set(held.flatMap((one) => (one.kind === null ? [] : [one.kind === "speech"])));
		const use = sides.has(true) ? "speech" : sides.has(false) ? "other" : "either";
		return { bank: banks[i % banks.length]!, free: upTo(3), use: isScanned ? use : "any", held };
	});
	const items = Array.from({ length: 1 + upTo(5) }, (): BlockItem => {
		const own = kind();
		const [made = "a", other] = random() < 0.5 ? banks : banks.toReversed();
		return {
			kind: own,
			want: want(),
			family: `f${upTo(1)}`,
			banks: [made],
			otherBanks: other === undefined || random() < 0.4 ? [] : [other],
			tier: ITEM_TIERS[upTo(3)]!,
			worth: 1 + upTo(3),
			home: null,
			mayMove: true,
		};
	});
	const standing = items.map((item) => ({ ...item, home: random() < 0.3 ? upTo(blocks.length - 1) : null, mayMove: random() < 0.6 }));
	const bankFree = new Map(banks.map((bank) => [bank, upTo(5)]));
	return { blocks, bankFree, items: standing, movePoints: upTo(4) * 250 };
}

/** Worth kept of each tier, the last to go first, then points times -1: what decides between two answers. */
export type BlockStanding = readonly number[];

/** The best of all ways of giving items to blocks, by looking at each. Written apart from the planner's own ways. */
export function bruteBlocks(problem: BlockProblem): BlockStanding {
	const { blocks, items } = problem;
	let best: BlockStanding | null = null;
	const blockOf: (number | null)[] = [];
	const look = (item: number): void => {
		if (item === items.length) {
			if (!isAllowed(problem, blockOf)) return;
			const standing = standingIn(problem, blockOf);
			if (best === null || isBefore(best, standing)) best = standing;
			return;
		}
		for (let block = -1; block < blocks.length; block++) {
			blockOf[item] = block < 0 ? null : block;
			look(item + 1);
		}
	};
	look(0);
	return best!; // nothing held is always allowed
}

export function isAllowed({ blocks, bankFree, items }: BlockProblem, blockOf: readonly (number | null)[]): boolean {
	for (const [bank, free] of bankFree) {
		if (items.filter((_, i) => blockOf[i] !== null && blocks[blockOf[i]!]!.bank === bank).length > free) return false;
	}
	return blocks.every(({ free, use, bank }, block) => {
		const own = items.filter((_, i) => blockOf[i] === block);
		if (own.length > free) return false;
		if (own.some(({ home, mayMove }) => home !== null && !mayMove && home !== block)) return false;
		const moved = own.filter(({ home, mayMove }) => home === null || mayMove);
		if (moved.some(({ banks, otherBanks }) => !banks.includes(bank) && !otherBanks.includes(bank))) return false;
		if (use === "any") return true;
		const speech = own.filter(({ kind }) => kind === "speech");
		const others = own.filter(({ kind }) => kind === "timed" || kind === "data");
		if (use === "either") return speech.length === 0 || others.length === 0;
		return (use === "speech" ? others : speech).every(({ home, mayMove }) => home !== null && !mayMove);
	});
}

export function standingIn({ blocks, items, movePoints }: BlockProblem, blockOf: readonly (number | null)[]): BlockStanding {
	const kept = ["must", "standing", "homeless", "new"].map((tier) =>
		items.reduce((sum, item, i) => sum + (item.tier === tier && blockOf[i] !== null ? item.worth : 0), 0),
	);
	let points = 0;
	for (const [b, { bank, held }] of blocks.entries()) {
		const wants = new Set<string>();
		const families = new Set<string>();
		const kinds = new Set<string>();
		for (const { kind, want, family } of held) {
			wants.add(`${kind}/${want}`);
			families.add(`${kind}/${want}/${family}`);
			if (want !== null) kinds.add(`${kind}`);
		}
		const wasMixed = kinds.has("timed") && kinds.has("data");
		let isFirst = held.length === 0;
		for (const [i, { kind, want, family, banks, home, mayMove }] of items.entries()) {
			if (blockOf[i] !== b) continue;
			if (home !== null && home !== b) points += movePoints;
			if ((home === null || mayMove) && !banks.includes(bank)) points += BLOCK_POINTS.bank;
			if (want === null) continue;
			if (!wants.has(`${kind}/${want}`)) points += BLOCK_POINTS.want - (isFirst ? BLOCK_POINTS.share : 0);
			if (!families.has(`${kind}/${want}/${family}`)) points += BLOCK_POINTS.family;
			isFirst = false;
			wants.add(`${kind}/${want}`);
			families.add(`${kind}/${want}/${family}`);
			kinds.add(`${kind}`);
		}
		if (!wasMixed && kinds.has("timed") && kinds.has("data")) points += BLOCK_POINTS.kinds;
	}
	return [...kept, -points];
}

function isBefore(a: BlockStanding, b: BlockStanding): boolean {
	const at = a.findIndex((one, i) => one !== b[i]);
	return at >= 0 && a[at]! < b[at]!;
}

import type { Profile } from "@skipwright/set";
import { SCAN_KINDS } from "./bankRoom.ts";
import { banksFor } from "./banksFor.ts";
import type { ScanKind } from "./candidate.ts";
import type { TakenRoom } from "./coverConflicts.ts";

/** Something that is held before anything is chosen. */
export interface HeldPlace {
	readonly bank: string;
	/** null: a pin has its place, so it needs another. */
	readonly place: number | null;
	/** null: nothing tells, so it suits any block. */
	readonly kind: ScanKind | null;
	readonly isPinned: boolean;
	/** Whether it gives way to what must be held. */
	readonly isMovable: boolean;
	/** Whether another place holds the same, so that it needs none if it has to leave its own. */
	readonly isRepeated: boolean;
}

/**
 * The free places of a set, by bank and by what its blocks hold already. The fewer kind of a mixed block is taken out of it later, as what a
 * pin has put out of its place is: they are homeless, and find a place before anything new does.
 */
export function takenRoom(profile: Profile, reserves: Readonly<Record<string, number>>, held: readonly HeldPlace[]): readonly TakenRoom[] {
	return profile.banks.map((bank) => {
		const own = held.filter((one) => one.bank === bank.id);
		const reserve = reserves[bank.id] ?? 0;
		const placed = own.filter(({ place }) => place !== null);
		const blocks = profile.scan === null ? [] : blocksOf(bank, placed);
		const odd = blocks.flatMap((block) => block.odd);
		const standing = placed.filter((one) => !odd.includes(one));
		const all = bank.places - new Set(standing.map(({ place }) => place)).size;
		const sum = (use: BlockUse) => blocks.filter((block) => block.use === use).reduce((places, block) => places + block.free, 0);
		const on = (side: "speech" | "other", ones: readonly HeldPlace[]) => ones.filter((one) => sideOf(one, blocks) === side);
		const movable = standing.filter(({ isMovable, isPinned }) => isMovable && !isPinned);
		const pins = standing.filter(({ isPinned }) => isPinned);
		return {
			bank: bank.id,
			kinds: SCAN_KINDS.filter((kind) => banksFor(profile, kind).includes(bank)),
			free: all - reserve,
			inSpeechBlocks: profile.scan === null ? all : sum("speech"),
			inOtherBlocks: profile.scan === null ? all : sum("other"),
			emptyBlocks: blocks.filter(({ use, free: places }) => use === "either" && places > 0).map(({ free: places }) => places),
			taken: {
				movable: { speech: on("speech", movable).length, other: on("other", movable).length },
				pins: { speech: on("speech", pins).map(nameOf), other: on("other", pins).map(nameOf) },
				reserve,
				homeless: [...odd, ...own.filter(({ place }) => place === null)].flatMap(({ kind, isRepeated }) =>
					kind === null || isRepeated ? [] : [kind],
				),
			},
		};
	});
}

/** What a block may still be filled with; nothing where pins mix it. */
type BlockUse = "speech" | "other" | "either" | "nothing";

interface Block {
	readonly first: number;
	readonly last: number;
	readonly free: number;
	readonly use: BlockUse;
	/** What is taken out of it. */
	readonly odd: readonly HeldPlace[];
}

function blocksOf({ places, blockLength }: Profile["banks"][number], held: readonly HeldPlace[]): readonly Block[] {
	return Array.from({ length: Math.ceil(places / blockLength) }, (_, i) => {
		const [first, last] = [i * blockLength + 1, Math.min(places, (i + 1) * blockLength)];
		const own = held.filter(({ place }) => place !== null && place >= first && place <= last);
		const { use, odd } = useOf(own);
		const stays = new Set(own.filter((one) => !odd.includes(one)).map(({ place }) => place));
		return { first, last, free: last - first + 1 - stays.size, use, odd };
	});
}

/** The fewer kind of a mixed block is taken out of it, unless it is pinned. */
function useOf(held: readonly HeldPlace[]): Pick<Block, "use" | "odd"> {
	const speech = held.filter(({ kind }) => kind === "speech");
	const others = held.filter(({ kind }) => kind === "timed" || kind === "data");
	if (speech.length === 0 && others.length === 0) return { use: "either", odd: [] };
	if (others.length === 0) return { use: "speech", odd: [] };
	if (speech.length === 0) return { use: "other", odd: [] };
	const odd = others.length <= speech.length ? others : speech;
	if (odd.some(({ isPinned }) => isPinned)) return { use: "nothing", odd: odd.filter(({ isPinned }) => !isPinned) };
	return { use: odd === others ? "speech" : "other", odd };
}

function sideOf({ place, kind }: HeldPlace, blocks: readonly Block[]): "speech" | "other" {
	const use = blocks.find(({ first, last }) => place !== null && place >= first && place <= last)?.use;
	if (use === "speech" || use === "other") return use;
	return kind === "speech" ? "speech" : "other";
}

function nameOf({ bank, place }: HeldPlace): string {
	return `${bank} ${place}`;
}

import type { Profile } from "@skipwright/set";
import { banksFor } from "./banksFor.ts";
import type { Candidate, ScanKind } from "./candidate.ts";
import { contentKey } from "./contentKey.ts";
import type { Entry } from "./entry.ts";

type Bank = Profile["banks"][number];

/** A block of places that the set scans as one. */
export interface Block {
	readonly bank: Bank;
	/** Number of its first place. */
	readonly first: number;
	readonly last: number;
}

export interface FilledPlace {
	readonly bank: string;
	readonly place: number;
	readonly entry: Entry;
}

/** The places of a set while they are being filled. */
export class Layout {
	readonly #profile: Profile;
	readonly #reserve: Readonly<Record<string, number>>;
	readonly #entries = new Map<string, Map<number, Entry>>();

	/** @param reserve places to leave free, by bank */
	constructor(profile: Profile, reserve: Readonly<Record<string, number>>) {
		this.#profile = profile;
		this.#reserve = reserve;
		for (const { id } of profile.banks) this.#entries.set(id, new Map());
	}

	has(bank: string, place: number): boolean {
		const known = this.#profile.banks.find(({ id }) => id === bank);
		return known !== undefined && place >= 1 && place <= known.places;
	}

	at(bank: string, place: number): Entry | null {
		return this.#entries.get(bank)?.get(place) ?? null;
	}

	put(bank: string, place: number, entry: Entry): void {
		this.#entries.get(bank)?.set(place, entry);
	}

	/** Leaves a place empty. */
	clear(bank: string, place: number): void {
		this.#entries.get(bank)?.delete(place);
	}

	/** Whether a bank that this candidate may be in holds it already, on this dial or another that receives it. */
	holds({ content, alternatives, scan }: Candidate): boolean {
		const wanted = new Set([content, ...alternatives].map(contentKey));
		return this.all().some(({ bank, entry }) => this.takes(bank, scan) && wanted.has(contentKey(entry.content)));
	}

	/** Whether a bank is for this kind. */
	takes(bank: string, scan: ScanKind): boolean {
		return banksFor(this.#profile, scan).some(({ id }) => id === bank);
	}

	/** Every filled place, by bank and place. */
	all(): readonly FilledPlace[] {
		return this.#profile.banks.flatMap(({ id }) =>
			[...(this.#entries.get(id) ?? [])].toSorted(([a], [b]) => a - b).map(([place, entry]) => ({ bank: id, place, entry })),
		);
	}

	/** Places of a bank that may still be filled, the reserve kept. */
	free({ id, places }: Bank): number {
		return places - (this.#entries.get(id)?.size ?? 0) - (this.#reserve[id] ?? 0);
	}

	/** Takes the fewer kind out of each block that would scan speech with something else, pinned places apart. */
	liftOdd(): readonly Entry[] {
		if (this.#profile.scan === null) return [];
		return this.blocks().flatMap((block) => {
			const held = this.held(block);
			const speech = held.filter(({ entry }) => entry.scan === "speech");
			const others = held.filter(({ entry }) => entry.scan === "timed" || entry.scan === "data");
			if (speech.length === 0 || others.length === 0) return [];
			const odd = others.length <= speech.length ? others : speech;
			return odd
				.filter(({ entry }) => !entry.pinned)
				.map(({ place, entry }) => {
					this.#entries.get(block.bank.id)?.delete(place);
					return entry;
				});
		});
	}

	/** Whether this entry may stand here: a free place, a bank for its kind, and a block that it can be scanned with. */
	suits(bank: string, place: number, entry: Entry): boolean {
		if (!this.has(bank, place) || this.at(bank, place) !== null) return false;
		const block = this.blocks().find((one) => one.bank.id === bank && place >= one.first && place <= one.last);
		if (block === undefined || this.free(block.bank) <= 0) return false;
		return this.banksOf(entry).includes(block.bank) && this.#preference(block, entry) !== null;
	}

	/** Puts an entry where it belongs best; false where no place is left that it suits. */
	place(entry: Entry): boolean {
		const open = this.banksOf(entry)
			.filter((bank) => this.free(bank) > 0)
			.flatMap((bank) => this.blocks().filter((block) => block.bank === bank))
			.flatMap((block) => {
				const preference = this.#preference(block, entry);
				const place = this.#firstFree(block);
				return preference === null || place === null ? [] : [{ preference, block, place }];
			});
		const best = open.toSorted((a, b) => a.preference - b.preference)[0]; // stable: the profile's order, then the lower place
		if (best === undefined) return false;
		this.put(best.block.bank.id, best.place, entry);
		return true;
	}

	/**
	 * Puts something that must be held where something else stood, the least of what is in nobody's list first, then of what is traded.
	 * @returns what had to go, or null where nothing may
	 */
	placeInstead(entry: Entry): Entry | null {
		const traded = this.all()
			.filter(({ entry: held }) => !held.pinned && held.want !== "guard" && held.want !== "safety-text")
			.toReversed()
			.toSorted((a, b) => Number(a.entry.candidate !== null) - Number(b.entry.candidate !== null));
		for (const { bank, place, entry: held } of traded) {
			this.#entries.get(bank)?.delete(place);
			if (this.suits(bank, place, entry)) {
				this.put(bank, place, entry);
				return held;
			}
			this.put(bank, place, held);
		}
		return null;
	}

	/** Banks that may hold an entry, those made for it first. */
	banksOf({ scan }: Entry): readonly Bank[] {
		return scan === null ? this.#profile.banks : banksFor(this.#profile, scan);
	}

	/** Whether the set scans blocks, so that speech must stand apart. */
	get isScanned(): boolean {
		return this.#profile.scan !== null;
	}

	blocks(): readonly Block[] {
		return this.#profile.banks.flatMap((bank) =>
			Array.from({ length: Math.ceil(bank.places / bank.blockLength) }, (_, i) => ({
				bank,
				first: i * bank.blockLength + 1,
				last: Math.min(bank.places, (i + 1) * bank.blockLength),
			})),
		);
	}

	/** Filled places of a block. */
	held({ bank, first, last }: Block): readonly FilledPlace[] {
		const entries = this.#entries.get(bank.id) ?? new Map<number, Entry>();
		return [...entries]
			.filter(([place]) => place >= first && place <= last)
			.toSorted(([a], [b]) => a - b)
			.map(([place, entry]) => ({ bank: bank.id, place, entry }));
	}

	#firstFree({ bank, first, last }: Block): number | null {
		for (let place = first; place <= last; place++) if (this.at(bank.id, place) === null) return place;
		return null;
	}

	/** How well an entry belongs into a block, 0 best; null where it must not: speech is never scanned with anything else. */
	#preference(block: Block, { scan, want, bandMhz }: Entry): number | null {
		const held = this.held(block).map(({ entry }) => entry);
		const kinds = new Set(held.map((entry) => entry.scan).filter((kind) => kind !== null));
		const isSpeech = scan === "speech";
		if (this.isScanned && scan !== null && [...kinds].some((kind) => (kind === "speech") !== isSpeech)) return null;
		if (held.some((entry) => entry.want === want && entry.bandMhz === bandMhz)) return 0;
		if (held.some((entry) => entry.want === want)) return 1;
		if (held.length === 0) return 2;
		return scan === null || kinds.has(scan) ? 3 : 4;
	}
}

import { type BankRoom, type KindCounts, SCAN_KINDS } from "./bankRoom.ts";
import type { ScanKind } from "./candidate.ts";
import type { MipColumn, MipRow, Solver } from "./solver.ts";

/** Places of a bank that are taken, by what may be done about it, in blocks with speech and in the others. */
export interface TakenPlaces {
	/** Rows of the list as found that would give way. */
	readonly movable: { readonly speech: number; readonly other: number };
	/** Pins, in words. */
	readonly pins: { readonly speech: readonly string[]; readonly other: readonly string[] };
	readonly reserve: number;
	/** What has to leave its place, by kind: it needs another before anything new does. */
	readonly homeless: readonly ScanKind[];
}

export type TakenRoom = BankRoom & { readonly taken: TakenPlaces };

/** What it takes to hold everything that must be held. */
export interface Relaxed {
	/** Room with what is given up. */
	readonly room: readonly BankRoom[];
	/** What stands in the way, in words; none where rows of the list as found that give way are enough. */
	readonly conflicts: readonly string[];
}

/** Worth of giving up one place of each sort: rows of the list as found rather than the reserve, that rather than a pin. */
const COST = { movable: 1, reserve: 1_000, pin: 10_000, unheld: 1_000_000 } as const;

interface Slack {
	readonly column: number;
	/** Rows of the bank that it eases. */
	readonly eases: readonly ("all" | "speech" | "other")[];
	readonly words: (places: number) => string | null;
}

/** Finds the least that has to give way so that so many of each kind find places, and names it: slack on every limit, as little as will do. */
export async function relaxedRoom(room: readonly TakenRoom[], musts: KindCounts, solver: Solver): Promise<Relaxed> {
	const columns: MipColumn[] = [];
	const rows: MipRow[] = [];
	const column = (upper: number, cost: number) => columns.push({ lower: 0, upper, isWhole: cost > 0, worth: -cost }) - 1;
	const flows = room.map(({ kinds }) => new Map(kinds.map((kind) => [kind, column(musts[kind], 0)])));
	const unheld = new Map(SCAN_KINDS.map((kind) => [kind, column(musts[kind], COST.unheld)]));
	for (const kind of SCAN_KINDS) {
		const entries = [...flows.flatMap((flow) => flow.get(kind) ?? []), unheld.get(kind)!].map((one) => ({ column: one, factor: 1 }));
		rows.push({ entries, least: musts[kind], most: null });
	}
	const slacks = room.map((bank, index) => {
		const own = slacksOf(bank, column);
		const flow = [...flows[index]!];
		const blocks = [...Map.groupBy(bank.emptyBlocks, (places) => places)].map(([places, equal]) => ({
			column: columns.push({ lower: 0, upper: equal.length, isWhole: true, worth: 0 }) - 1,
			factor: places,
		}));
		const eased = (which: "all" | "speech" | "other") =>
			own.filter(({ eases }) => eases.includes(which)).map((slack) => ({ column: slack.column, factor: -1 }));
		const side = (take: (kind: string) => boolean) => flow.filter(([kind]) => take(kind)).map(([, one]) => ({ column: one, factor: 1 }));
		const empty = bank.emptyBlocks.reduce((sum, places) => sum + places, 0);
		const forSpeech = blocks.map((entry) => ({ ...entry, factor: -entry.factor }));
		rows.push({ entries: [...side(() => true), ...eased("all")], least: null, most: Math.max(0, bank.free) });
		rows.push({
			entries: [...side((kind) => kind === "speech"), ...forSpeech, ...eased("speech")],
			least: null,
			most: bank.inSpeechBlocks,
		});
		rows.push({
			entries: [...side((kind) => kind !== "speech"), ...blocks, ...eased("other")],
			least: null,
			most: bank.inOtherBlocks + empty,
		});
		return own;
	});
	const answer = await solver({ columns, rows }, { absoluteGap: 0.5 });
	if (!("values" in answer)) return { room, conflicts: ["what must be held does not fit the free places"] };
	const given = (one: number) => Math.round(answer.values[one] ?? 0);
	const conflicts = slacks.flat().flatMap(({ column: one, words }) => (given(one) === 0 ? [] : (words(given(one)) ?? [])));
	for (const [kind, one] of unheld) {
		if (given(one) > 0) conflicts.push(`${given(one)} of what must be held (${kind}) finds no place in any bank for it`);
	}
	const eased = room.map((bank, index): BankRoom => {
		const more = (which: "all" | "speech" | "other") =>
			(slacks[index] ?? []).filter(({ eases }) => eases.includes(which)).reduce((sum, slack) => sum + given(slack.column), 0);
		return {
			...bank,
			free: Math.max(0, bank.free) + more("all"),
			inSpeechBlocks: bank.inSpeechBlocks + more("speech"),
			inOtherBlocks: bank.inOtherBlocks + more("other"),
		};
	});
	return { room: eased, conflicts };
}

/** Names told before the rest is only counted. */
const MOST_NAMES = 6;

function listed(names: readonly string[]): string {
	const more = names.length - MOST_NAMES;
	return `${names.slice(0, MOST_NAMES).join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
}

/** Reserve only eases the bank as a whole, as its places are free; a row or pin that goes frees its place. */
function slacksOf({ bank, taken }: TakenRoom, column: (upper: number, cost: number) => number): readonly Slack[] {
	const { movable, pins, reserve } = taken;
	const sides = ["speech", "other"] as const;
	return [
		...sides.map((side): Slack => ({ column: column(movable[side], COST.movable), eases: ["all", side], words: () => null })),
		{
			column: column(reserve, COST.reserve),
			eases: ["all"],
			words: (places) => `reserve of ${reserve} in ${bank}: ${places} of it needed for what must be held`,
		},
		...sides.map((side): Slack => {
			const names = pins[side];
			return {
				column: column(names.length, COST.pin),
				eases: ["all", side],
				words: (places) => `pins in ${bank}: ${places} of them would have to go for what must be held (${listed(names)})`,
			};
		}),
	];
}

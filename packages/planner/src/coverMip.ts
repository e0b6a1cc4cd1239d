import { SCAN_KINDS } from "./bankRoom.ts";
import { type CoverCell, type CoverProblem, HOUR_PARTS, priceOf, STATION_EIGHTHS, takesRoom } from "./coverProblem.ts";
import type { Mip, MipColumn, MipRow } from "./solver.ts";

type Entry = MipRow["entries"][number];

/** The linear model of a cover problem, and where the items are in it. */
export interface CoverMip {
	/** Without anything to make large: that is the stage's. */
	readonly columns: readonly MipColumn[];
	readonly rows: readonly MipRow[];
	/** Column of each item; null for what is chosen anyway. */
	readonly columnOf: readonly (number | null)[];
	/** Worth less prices of the cells, and of the cells at low sunspots: entries, without what is there anyway. */
	readonly worths: readonly (readonly Entry[])[];
}

/**
 * A cover problem as a linear model. Items are whole (0 or 1); what they cover need not be, as it follows from them. Cells that ask for the
 * same become one first, and a set of items that any station's best is taken over is one unknown wherever it occurs.
 */
export function coverMip(problem: CoverProblem): CoverMip {
	const model = new Builder();
	const columnOf = problem.items.map(({ isPresent, isMust }) => (isPresent || isMust ? null : model.column(1, true)));
	addRoom(model, problem, columnOf);
	for (const [first, ...others] of problem.together ?? []) {
		for (const other of others) {
			const [column, same] = [columnOf[other] ?? null, columnOf[first ?? other] ?? null];
			if (column !== null && same !== null)
				model.row(
					[
						{ column, factor: 1 },
						{ column: same, factor: -1 },
					],
					0,
					0,
				);
		}
	}
	const unions = new Map<string, number>();
	const prices = problem.items.flatMap((item, index): readonly Entry[] => {
		const column = columnOf[index] ?? null;
		return column === null ? [] : [{ column, factor: item.bonus - priceOf(item) }];
	});
	const cellSets = problem.lowCells === null ? [problem.cells] : [problem.cells, problem.lowCells];
	const worths = cellSets.map((cells) => summed([...prices, ...addCells(model, merged(cells, columnOf), unions)]));
	return { columns: model.columns, rows: model.rows, columnOf, worths };
}

/** The model that makes `worth` as large as possible. */
export function withWorth({ columns, rows }: CoverMip, worth: readonly Entry[], more: readonly MipRow[]): Mip {
	const factors = new Map(worth.map(({ column, factor }) => [column, factor]));
	return { columns: columns.map((column, index) => ({ ...column, worth: factors.get(index) ?? 0 })), rows: [...rows, ...more] };
}

class Builder {
	readonly columns: MipColumn[] = [];
	readonly rows: MipRow[] = [];

	column(upper: number | null, isWhole: boolean): number {
		return this.columns.push({ lower: 0, upper, isWhole, worth: 0 }) - 1;
	}

	/** @param least, most limits; null for none */
	row(entries: readonly Entry[], least: number | null, most: number | null): void {
		this.rows.push({ entries, least, most });
	}
}

/** Places: how many of each kind go into each bank, and how many of a bank's empty blocks are for speech. */
function addRoom(model: Builder, { items, room }: CoverProblem, columnOf: readonly (number | null)[]): void {
	const all = items.map((item, index) => ({ item, column: columnOf[index] ?? null })).filter(({ item }) => takesRoom(item));
	const flows = room.map(({ kinds, free }) => new Map(kinds.map((kind) => [kind, model.column(Math.max(0, free), false)])));
	for (const kind of SCAN_KINDS) {
		const own = all.filter(({ item }) => item.kind === kind);
		const musts = own.filter(({ item }) => item.isMust).length;
		const wanted = own.flatMap(({ column }) => (column === null ? [] : [{ column, factor: 1 }]));
		if (wanted.length === 0 && musts === 0) continue;
		const given = flows.flatMap((flow) => (flow.has(kind) ? [{ column: flow.get(kind)!, factor: -1 }] : []));
		model.row([...wanted, ...given], null, -musts);
	}
	for (const [index, bank] of room.entries()) {
		const flow = [...flows[index]!];
		const side = (isSpeech: boolean) =>
			flow.filter(([kind]) => (kind === "speech") === isSpeech).map(([, column]) => ({ column, factor: 1 }));
		model.row([...side(true), ...side(false)], null, Math.max(0, bank.free));
		const blocks = [...Map.groupBy(bank.emptyBlocks, (places) => places)].map(([places, equal]) => ({
			column: model.column(equal.length, true),
			factor: places,
		}));
		const empty = bank.emptyBlocks.reduce((sum, places) => sum + places, 0);
		model.row([...side(true), ...blocks.map(({ column, factor }) => ({ column, factor: -factor }))], null, bank.inSpeechBlocks);
		model.row([...side(false), ...blocks], null, bank.inOtherBlocks + empty);
	}
}

/** A cell, or several that ask for the same, after what is there anyway. */
interface MergedCell {
	readonly worth: number;
	/** Parts heard anyway. */
	readonly base: number;
	/** Parts that come when any of the columns (their numbers, rising) is chosen. */
	readonly terms: readonly { readonly key: string; readonly columns: readonly number[]; readonly parts: number }[];
}

function merged(cells: readonly CoverCell[], columnOf: readonly (number | null)[]): readonly MergedCell[] {
	const all = new Map<string, MergedCell>();
	for (const { worth, stations } of cells) {
		const terms = new Map<string, MergedCell["terms"][number]>();
		let base = 0;
		for (const members of stations) {
			const anyway = members.reduce((most, { item, parts }) => (columnOf[item] === null ? Math.max(most, parts) : most), 0);
			base += anyway;
			const open = members.flatMap(({ item, parts }) => {
				const column = columnOf[item] ?? null;
				return column === null || parts <= anyway ? [] : [{ column, parts }];
			});
			let level = anyway;
			for (const parts of [...new Set(open.map((one) => one.parts))].toSorted((a, b) => a - b)) {
				const reaching = open.filter((one) => one.parts >= parts);
				const columns = [...new Set(reaching.map(({ column }) => column))].toSorted((a, b) => a - b);
				const key = columns.join(" ");
				terms.set(key, { key, columns, parts: (terms.get(key)?.parts ?? 0) + parts - level });
				level = parts;
			}
		}
		if (terms.size === 0) continue;
		const sorted = [...terms.values()].toSorted((a, b) => (a.key < b.key ? -1 : 1));
		const key = `${base}: ${sorted.map((term) => `${term.parts} of ${term.key}`).join(", ")}`;
		all.set(key, { worth: worth + (all.get(key)?.worth ?? 0), base, terms: sorted });
	}
	return [...all.values()];
}

/** Adds the unknowns of the cells; returns what they are worth. */
function addCells(model: Builder, cells: readonly MergedCell[], unions: Map<string, number>): readonly Entry[] {
	const union = (key: string, columns: readonly number[]) => {
		const known = columns.length === 1 ? columns[0] : unions.get(key);
		if (known !== undefined) return known;
		const any = model.column(1, false);
		unions.set(key, any);
		model.row([{ column: any, factor: 1 }, ...columns.map((column) => ({ column, factor: -1 }))], null, 0);
		return any;
	};
	return cells.flatMap(({ worth, base, terms }): readonly Entry[] => {
		const heard = terms.map(({ key, columns, parts }) => ({ column: union(key, columns), factor: parts }));
		const top = terms.reduce((sum, { parts }) => sum + parts, base);
		const first = Math.floor(base / HOUR_PARTS);
		if (top <= (first + 1) * HOUR_PARTS) {
			return heard.map(({ column, factor }) => ({ column, factor: factor * worth * (STATION_EIGHTHS[first] ?? 0) }));
		}
		const segments = STATION_EIGHTHS.flatMap((eighths, rank) => {
			const length = Math.min(top, (rank + 1) * HOUR_PARTS) - Math.max(base, rank * HOUR_PARTS);
			return length <= 0 ? [] : [{ column: model.column(length, false), factor: worth * eighths }];
		});
		if (segments.length === 0) return [];
		const less = heard.map(({ column, factor }) => ({ column, factor: -factor }));
		model.row([...segments.map(({ column }) => ({ column, factor: 1 })), ...less], null, 0);
		return segments;
	});
}

function summed(entries: readonly Entry[]): readonly Entry[] {
	const factors = new Map<number, number>();
	for (const { column, factor } of entries) factors.set(column, (factors.get(column) ?? 0) + factor);
	return [...factors].filter(([, factor]) => factor !== 0).map(([column, factor]) => ({ column, factor }));
}

import { type CsvRow, type IsoDate, isoDate, readCsv, writeCsv } from "@skipwright/units";
import { CellReader } from "./cellReader.ts";
import { LISTING_COLUMNS, LISTING_SHAPE, ListingIds, listingCells, readListing } from "./listingsCsv.ts";
import { EDIT_ACTIONS, type ListingEdit } from "./merge.ts";
import type { Listing } from "./types.ts";

const ACTIONS = [...EDIT_ACTIONS, "was"] as const;
const STAMP = ["action", "by", "on", "reason"] as const;
/** Stands in for a date that could not be read until the faults are told. */
const NO_DAY = "1970-01-01" as IsoDate;

/**
 * Reads edits: the columns of the listings with `action,by,on,reason` before them. A line with the action `was` holds the shipped row as it
 * stood when the edit in the next line was made; it may be left out, and then nobody can tell whether the shipped row has changed since.
 * @throws BadInputError naming line, column, value and what was expected; nothing is half-imported
 */
export function readEditsCsv(source: string, text: string): readonly ListingEdit[] {
	const cells = new CellReader(source);
	const { rows } = readCsv(source, text, { required: [...STAMP, ...LISTING_SHAPE.required], optional: LISTING_SHAPE.optional });
	const edits: ListingEdit[] = [];
	let was: { readonly row: CsvRow; readonly listing: Listing } | null = null;
	for (const row of rows) {
		const action = cells.choice(row, "action", ACTIONS);
		// several edits of one listing may stand in a file; ids are made afresh for every line
		const ids = new ListingIds(cells);
		const listing = readListing(cells, row, (...parts) => ids.take(row, ...parts));
		if (was !== null && (action === "was" || was.listing.id !== listing.id))
			cells.fault(was.row, "action", "an edit of the same id in the next line");
		if (action === "was") was = { row, listing };
		else {
			const on = cells.read(row, "on", isoDate, NO_DAY, "a day as YYYY-MM-DD");
			edits.push({ action, listing, was: was?.listing ?? null, by: cells.text(row, "by"), on, reason: cells.text(row, "reason") });
			was = null;
		}
	}
	if (was !== null) cells.fault(was.row, "action", "an edit of the same id in the next line");
	cells.finish();
	return edits;
}

/** Edits as CSV; reading it again gives the same edits. */
export function writeEditsCsv(edits: readonly ListingEdit[]): string {
	return writeCsv(
		[...STAMP, ...LISTING_COLUMNS],
		edits.flatMap(({ action, listing, was, by, on, reason }) => {
			const edit = [action, by, on, reason, ...listingCells(listing)];
			return was === null ? [edit] : [["was", "", "", "", ...listingCells(was)], edit];
		}),
	);
}

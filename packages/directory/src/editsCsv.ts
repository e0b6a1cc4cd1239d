import type { ListingEdit } from "./merge.ts";

/** Edits as CSV: the columns of the listings with `action,by,on,reason` before them; a line `was` holds the shipped row an edit was made on. */
export function readEditsCsv(source: string, text: string): readonly ListingEdit[] {
	throw new Error(`not built yet: ${source} ${text.length}`);
}

export function writeEditsCsv(edits: readonly ListingEdit[]): string {
	throw new Error(`not built yet: ${edits.length}`);
}

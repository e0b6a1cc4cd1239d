import type { IsoDate } from "@skipwright/units";
import type { Directory, Listing, Station } from "./types.ts";

export type EditAction = "add" | "change" | "close" | "remove";

/** One edit of the shop. */
export interface ListingEdit {
	readonly action: EditAction;
	/** The row as the shop wants it; for `close` and `remove` the row that is meant. */
	readonly listing: Listing;
	/** The shipped row as it stood when the edit was made; null for `add` and where it was not kept. */
	readonly was: Listing | null;
	readonly by: string;
	readonly on: IsoDate;
	readonly reason: string;
}

export interface ShopEdits {
	readonly listings: readonly ListingEdit[];
	/** Stations of the shop's own; one with a shipped id stands over the shipped one. */
	readonly stations: readonly Station[];
}

/** An edit that a new shipped edition has overtaken. The edit holds until somebody decides. */
export interface EditConflict {
	readonly listingId: string;
	readonly kind: "shipped-changed" | "shipped-vanished" | "now-shipped" | "edited-twice";
	/** Fields that differ between the row the edit was made on and the shipped row of today. */
	readonly fields: readonly { readonly name: string; readonly was: string; readonly now: string; readonly edited: string }[];
	readonly message: string;
}

export interface MergedDirectory extends Directory {
	/** Shipped rows that lie beneath an edit, removed ones included. */
	readonly overridden: readonly Listing[];
	readonly overriddenStations: readonly Station[];
	readonly edits: ShopEdits;
	readonly conflicts: readonly EditConflict[];
}

/** Lays the shop's edits over the shipped data; neither is lost. */
export function mergeDirectory(shipped: Directory, edits: ShopEdits): MergedDirectory {
	throw new Error(`not built yet: ${shipped.edition} ${edits.listings.length}`);
}

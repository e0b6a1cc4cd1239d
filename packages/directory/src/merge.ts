import type { IsoDate } from "@skipwright/units";
import { LISTING_COLUMNS, listingCells } from "./listingsCsv.ts";
import type { Directory, Listing, Station } from "./types.ts";

export const EDIT_ACTIONS = ["add", "change", "close", "remove"] as const;
export type EditAction = (typeof EDIT_ACTIONS)[number];

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

/** One field of a row: in the row the edit was made on, in the shipped row of today, in the edit. */
export interface FieldConflict {
	readonly name: string;
	readonly was: string;
	readonly now: string;
	readonly edited: string;
}

/** An edit that a new shipped edition, or a later edit, has overtaken. The edit holds until somebody decides. */
export interface EditConflict {
	readonly listingId: string;
	readonly kind: "shipped-changed" | "shipped-vanished" | "now-shipped" | "edited-twice";
	/** Fields that differ between the row the edit was made on and the shipped row of today; none when a row is missing. */
	readonly fields: readonly FieldConflict[];
	readonly message: string;
}

export interface MergedDirectory extends Directory {
	/** Shipped rows that lie beneath an edit, removed ones included. */
	readonly overridden: readonly Listing[];
	readonly overriddenStations: readonly Station[];
	readonly edits: ShopEdits;
	readonly conflicts: readonly EditConflict[];
}

/**
 * Lays the shop's edits over the shipped data; neither is lost: shop rows win and the shipped ones are kept in `overridden`. Of two edits of
 * one listing the later in the list holds. Edits whose shipped row has changed or vanished since still hold, and are reported.
 */
export function mergeDirectory(shipped: Directory, edits: ShopEdits): MergedDirectory {
	const shippedById = new Map(shipped.listings.map((listing) => [listing.id, listing]));
	const editById = new Map(edits.listings.map((edit) => [edit.listing.id, edit]));
	const kept = shipped.listings.map((listing) => {
		const edit = editById.get(listing.id);
		return edit === undefined ? listing : inForce(edit, listing);
	});
	const added = [...editById.values()].filter(({ listing }) => !shippedById.has(listing.id)).map((edit) => inForce(edit, null));
	const shopStations = new Map(edits.stations.map((station) => [station.id, station]));
	return {
		stations: [...shipped.stations.filter(({ id }) => !shopStations.has(id)), ...shopStations.values()],
		listings: [...kept, ...added].filter((listing) => listing !== null),
		edition: shipped.edition,
		overridden: shipped.listings.filter(({ id }) => editById.has(id)),
		overriddenStations: shipped.stations.filter(({ id }) => shopStations.has(id)),
		edits,
		conflicts: [
			...repeatedEdits(edits.listings),
			...[...editById.values()].flatMap((edit) => overtaken(edit, shippedById.get(edit.listing.id))),
		],
	};
}

/**
 * The edits that turn a directory into a list of rows: new ids are added, rows that differ changed; rows that the list does not hold stay.
 * @param stamp who, when and why, for every edit
 */
export function editsFor(
	directory: Directory,
	rows: readonly Listing[],
	stamp: { readonly by: string; readonly on: IsoDate; readonly reason: string },
): readonly ListingEdit[] {
	const byId = new Map(directory.listings.map((listing) => [listing.id, listing]));
	return rows.flatMap((listing): readonly ListingEdit[] => {
		const was = byId.get(listing.id) ?? null;
		if (was === null) return [{ action: "add", listing, was, ...stamp }];
		return differing(was, listing).length === 0 ? [] : [{ action: "change", listing, was, ...stamp }];
	});
}

/** The row that holds; null when the edit removes it. A removed or closed row that is not shipped any more is still the edit's own. */
function inForce({ action, listing }: ListingEdit, shipped: Listing | null): Listing | null {
	if (action === "remove") return null;
	const row = action === "close" ? (shipped ?? listing) : listing;
	return { ...row, status: action === "close" ? "closed" : row.status, origin: "shop" };
}

function overtaken(edit: ListingEdit, now: Listing | undefined): readonly EditConflict[] {
	const { action, was } = edit;
	const listingId = edit.listing.id;
	if (now === undefined) {
		const message = `${listingId} is not shipped any more; the ${action} of ${edit.on} still holds`;
		return action === "add" ? [] : [{ listingId, kind: "shipped-vanished", fields: [], message }];
	}
	if (action === "add") {
		const message = `${listingId} was added on ${edit.on} and is shipped now; the added row holds`;
		return [{ listingId, kind: "now-shipped", fields: fieldsOf(edit.listing, now, edit.listing), message }];
	}
	const fields = was === null ? [] : fieldsOf(was, now, edit.listing);
	if (fields.length === 0) return [];
	const changes = fields.map(({ name, was: before, now: after }) => `${name} from "${before}" to "${after}"`).join(", ");
	const message = `the shipped ${listingId} changed ${changes} beneath the ${action} of ${edit.on}, which still holds`;
	return [{ listingId, kind: "shipped-changed", fields, message }];
}

function repeatedEdits(edits: readonly ListingEdit[]): readonly EditConflict[] {
	const seen = new Set<string>();
	return edits.flatMap(({ listing: { id }, on }): readonly EditConflict[] => {
		const isRepeated = seen.has(id);
		seen.add(id);
		if (!isRepeated) return [];
		return [
			{ listingId: id, kind: "edited-twice", fields: [], message: `${id} is edited more than once; the later line, of ${on}, holds` },
		];
	});
}

function fieldsOf(was: Listing, now: Listing, edited: Listing): readonly FieldConflict[] {
	const [before, after, shop] = [listingCells(was), listingCells(now), listingCells(edited)];
	return differing(was, now).map((column) => ({
		name: LISTING_COLUMNS[column] ?? "",
		was: before[column] ?? "",
		now: after[column] ?? "",
		edited: shop[column] ?? "",
	}));
}

/** Columns, by their place in `LISTING_COLUMNS`, in which two rows differ; the origin does not count. */
function differing(a: Listing, b: Listing): readonly number[] {
	const [left, right] = [listingCells(a), listingCells(b)];
	return LISTING_COLUMNS.map((name, column) => (name !== "origin" && left[column] !== right[column] ? column : -1)).filter(
		(column) => column >= 0,
	);
}

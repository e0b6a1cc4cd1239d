import { EMISSION_CLASSES, LISTED_MEANS, SERVICE_WORDS, type ServiceId } from "@skipwright/rules";
import { type CsvRow, formatKhz, type Hz, hz, parseKhz, readCsv, writeCsv } from "@skipwright/units";
import { parseAsOf } from "./asOf.ts";
import { CellReader } from "./cellReader.ts";
import { gradeOfSource } from "./gradeOfSource.ts";
import { checkedSchedule, parseSchedule } from "./parseSchedule.ts";
import { CONFIDENCES, type Listing, ORIGINS, STATUSES, type Status } from "./types.ts";

const REQUIRED = ["station", "service", "khz", "means", "emission", "schedule", "as_of", "source"] as const;
const OPTIONAL = [
	"id",
	"sideband",
	"receive_only",
	"coverage",
	"notes",
	"coast_tx_khz",
	"ship_tx_khz",
	"channel",
	"status",
	"confidence",
	"origin",
] as const;

/** Columns of a file of listings. */
export const LISTING_SHAPE = { required: REQUIRED, optional: OPTIONAL };

/** Columns in the order in which they are written. */
export const LISTING_COLUMNS = [
	"id",
	"station",
	"service",
	"khz",
	"means",
	"emission",
	"sideband",
	"receive_only",
	"schedule",
	"coverage",
	"notes",
	"coast_tx_khz",
	"ship_tx_khz",
	"channel",
	"status",
	"confidence",
	"as_of",
	"source",
	"origin",
] as const;

export const SERVICE_IDS = Object.keys(SERVICE_WORDS) as readonly ServiceId[];

/**
 * Reads listings in the directory's own columns. Columns that are left out or cells that are empty: `id` is made from station, service and kHz;
 * `receive_only` is true; `sideband` upper; `status` follows from the schedule; `confidence` from the source cell; `origin` is shop.
 * @throws BadInputError naming line, column, value and what was expected; nothing is half-imported
 */
export function readListingsCsv(source: string, text: string): readonly Listing[] {
	const cells = new CellReader(source);
	const ids = new ListingIds(cells);
	const listings = readCsv(source, text, LISTING_SHAPE).rows.map((row) => readListing(cells, row, (...parts) => ids.take(row, ...parts)));
	cells.finish();
	return listings;
}

/** Listings as CSV; reading it again gives the same listings. */
export function writeListingsCsv(listings: readonly Listing[]): string {
	return writeCsv(LISTING_COLUMNS, listings.map(listingCells));
}

/** The cells of one listing in the order of `LISTING_COLUMNS`. */
export function listingCells(listing: Listing): readonly string[] {
	const khz = (value: Hz | null) => (value === null ? "" : formatKhz(value));
	return [
		listing.id,
		listing.stationId,
		listing.service,
		khz(listing.hz),
		listing.means,
		listing.emission,
		listing.sideband,
		String(listing.receiveOnly),
		listing.schedule,
		listing.coverage,
		listing.notes,
		khz(listing.coastTx),
		khz(listing.shipTx),
		listing.channel === null ? "" : String(listing.channel),
		listing.status,
		listing.confidence,
		listing.asOf,
		listing.source,
		listing.origin,
	];
}

/** @param takeId gives the id, from the cell or made, and tells when it is wrong or taken */
export function readListing(
	cells: CellReader,
	row: CsvRow,
	takeId: (given: string, stationId: string, service: ServiceId, frequency: Hz) => string,
): Listing {
	const stationId = cells.read(row, "station", parseWord, "", "a station id without blanks");
	const service = cells.choice(row, "service", SERVICE_IDS);
	const frequency = cells.read(row, "khz", parseListedKhz, hz(0));
	const schedule = cells.read(row, "schedule", checkedSchedule, "unknown");
	const source = cells.text(row, "source");
	return {
		id: takeId(cells.text(row, "id"), stationId, service, frequency),
		stationId,
		service,
		hz: frequency,
		means: cells.choice(row, "means", LISTED_MEANS),
		coastTx: cells.optional(row, "coast_tx_khz", parseListedKhz, null),
		shipTx: cells.optional(row, "ship_tx_khz", parseListedKhz, null),
		channel: cells.optional(row, "channel", parseChannel, null),
		emission: cells.choice(row, "emission", EMISSION_CLASSES),
		schedule,
		coverage: cells.text(row, "coverage"),
		notes: cells.text(row, "notes"),
		receiveOnly: cells.choice(row, "receive_only", ["true", "false"], "true") === "true",
		sideband: cells.choice(row, "sideband", ["upper", "lower"], "upper"),
		source,
		asOf: cells.optional(row, "as_of", parseAsOf, ""),
		confidence: cells.choice(row, "confidence", CONFIDENCES, gradeOfSource(source)),
		status: cells.choice(row, "status", STATUSES, statusOfSchedule(schedule)),
		origin: cells.choice(row, "origin", ORIGINS, "shop"),
	};
}

/** Ids of one file: each once, and of the form `station/service/kHz`, `/2`, `/3` ... where one station lists a figure again. */
export class ListingIds {
	readonly #cells: CellReader;
	readonly #taken = new Set<string>();
	/** Number that the next repeat of a stem gets. */
	readonly #next = new Map<string, number>();

	constructor(cells: CellReader) {
		this.#cells = cells;
	}

	take(row: CsvRow, given: string, stationId: string, service: ServiceId, frequency: Hz): string {
		const stem = `${stationId}/${service}/${formatKhz(frequency)}`;
		const id = given.trim() === "" ? this.#firstFree(stem) : given.trim();
		if (this.#taken.has(id)) this.#cells.fault(row, "id", "an id that no earlier line has");
		this.#taken.add(id);
		return id;
	}

	#firstFree(stem: string): string {
		let id = stem;
		let count = this.#next.get(stem) ?? 1;
		for (; this.#taken.has(id); id = `${stem}/${count}`) count++;
		this.#next.set(stem, count);
		return id;
	}
}

/** kHz. Lowest and highest figure that a directory for MF/HF sets, with the long-wave teletype of its stations, can hold. */
const LOWEST_KHZ = 10;
const HIGHEST_KHZ = 30_000;

/** @throws SyntaxError for what is no exact kHz text; RangeError outside 10 to 30000 kHz */
export function parseListedKhz(text: string): Hz {
	const frequency = parseKhz(text);
	if (frequency < LOWEST_KHZ * 1000 || frequency > HIGHEST_KHZ * 1000) {
		throw new RangeError(`kilohertz from ${LOWEST_KHZ} to ${HIGHEST_KHZ}`);
	}
	return frequency;
}

function parseWord(text: string): string {
	if (!/^[^\s,]+$/.test(text)) throw new SyntaxError("a word without blanks");
	return text;
}

function parseChannel(text: string): number {
	if (!/^\d{1,4}$/.test(text)) throw new SyntaxError("a channel number of up to four digits");
	return Number(text);
}

function statusOfSchedule(schedule: string): Status {
	const { word } = parseSchedule(schedule);
	if (word === "closed" || word === "seasonal" || word === "unknown") return word;
	return "active";
}

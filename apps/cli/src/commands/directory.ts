import {
	confidenceText,
	type Directory,
	editsFor,
	type FoundListing,
	findListings,
	freshness,
	type Listing,
	listingById,
	occurrencesOf,
	readListingsCsv,
	type Station,
	stationById,
	writeEditsCsv,
	writeListingsCsv,
} from "@skipwright/directory";
import { SERVICE_WORDS, type ServiceId } from "@skipwright/rules";
import { NAUTICAL_MILE_KM } from "@skipwright/sphere";
import { formatHhmm, formatKhz, formatPosition, type IsoDate, MINUTES_PER_DAY, parseKhz, parsePosition } from "@skipwright/units";
import { type Context, EXIT, type Exit, UsageError } from "../context.ts";
import { readText } from "../readText.ts";
import { dateGiven, directoryGiven } from "../sources.ts";

interface CommonFlags {
	readonly on?: string;
	readonly shop?: string;
	readonly json?: boolean;
}

export interface FindFlags extends CommonFlags {
	readonly khz?: string;
	readonly service?: readonly string[];
	readonly near?: string;
	readonly within?: string;
	readonly limit?: string;
}

/** Rows shown when --limit does not say. */
const DEFAULT_LIMIT = 40;

/** `directory find`: listings that meet every condition given, best first; exit 1 when there are none. */
export function findCommand(context: Context, words: readonly string[], flags: FindFlags): Exit {
	const directory = directoryGiven(context, flags);
	const on = dateGiven(context, flags.on);
	if (flags.within !== undefined && flags.near === undefined) throw new UsageError("cannot use --within without --near");
	const query = {
		hz: flags.khz === undefined ? undefined : given("--khz", flags.khz, parseKhz),
		services: flags.service?.map(serviceGiven),
		near: flags.near === undefined ? undefined : given("--near", flags.near, parsePosition),
		withinKm: flags.within === undefined ? undefined : numberGiven("--within", flags.within) * NAUTICAL_MILE_KM,
		text: words.length === 0 ? undefined : words.join(" "),
	};
	const found = findListings(directory, query);
	const limit = flags.limit === undefined ? DEFAULT_LIMIT : numberGiven("--limit", flags.limit);
	if (flags.json === true) {
		context.out(`${JSON.stringify({ found: found.slice(0, limit).map((one) => foundJson(one, on)) }, null, "\t")}\n`);
	} else {
		context.out(
			found
				.slice(0, limit)
				.map((one) => foundLine(one, on))
				.join(""),
		);
		context.out(`${found.length} found${found.length > limit ? `, the first ${limit} shown` : ""}\n`);
	}
	return found.length === 0 ? EXIT.found : EXIT.ok;
}

/** `directory show`: one listing, or a station with its listings. */
export function showCommand(context: Context, id: string, flags: CommonFlags): Exit {
	const directory = directoryGiven(context, flags);
	const on = dateGiven(context, flags.on);
	const listing = listingById(directory, id);
	const station = stationById(directory, listing?.stationId ?? id);
	if (listing === null && station === null)
		throw new UsageError(`cannot find ${id}: expected the id of a listing or a station (directory find)`);
	const listings = listing === null ? directory.listings.filter(({ stationId }) => stationId === id) : [listing];
	if (flags.json === true) {
		context.out(`${JSON.stringify({ station, listings: listings.map((one) => listingJson(one, on)) }, null, "\t")}\n`);
		return EXIT.ok;
	}
	if (station !== null) context.out(stationText(station));
	for (const one of listings) context.out(listingText(directory, one, on));
	return EXIT.ok;
}

export interface ExportFlags extends CommonFlags {
	readonly out?: string;
}

/** `directory export`: every listing as CSV, to a file or standard output. */
export function exportCommand(context: Context, flags: ExportFlags): Exit {
	const { listings } = directoryGiven(context, flags);
	const csv = writeListingsCsv(listings);
	if (flags.out !== undefined) context.writeFile(flags.out, csv);
	if (flags.json === true) context.out(`${JSON.stringify({ listings: listings.length, file: flags.out ?? null }, null, "\t")}\n`);
	else if (flags.out === undefined) context.out(csv);
	else context.out(`${flags.out}: ${listings.length} listings\n`);
	return EXIT.ok;
}

export interface ImportFlags extends CommonFlags {
	readonly out: string;
	readonly by: string;
	readonly reason: string;
}

/** `directory import`: what differs from the directory becomes the shop's edits; the shipped rows stay underneath. */
export function importCommand(context: Context, file: string, flags: ImportFlags): Exit {
	const directory = directoryGiven(context, flags);
	const rows = readListingsCsv(file, readText(context, file));
	const edits = editsFor(directory, rows, { by: flags.by, on: dateGiven(context, flags.on), reason: flags.reason });
	context.writeFile(flags.out, writeEditsCsv(edits));
	const count = (action: string) => edits.filter((edit) => edit.action === action).length;
	const answer = { read: rows.length, added: count("add"), changed: count("change"), file: flags.out };
	const text = `${file}: ${rows.length} listings read, ${answer.added} added, ${answer.changed} changed; edits in ${flags.out}\n`;
	context.out(flags.json === true ? `${JSON.stringify(answer, null, "\t")}\n` : text);
	return EXIT.ok;
}

function foundJson({ listing, station, distanceKm }: FoundListing, on: IsoDate): object {
	return { ...listingJson(listing, on), station: station.name, distanceKm };
}

function listingJson({ hz, coastTx, shipTx, ...rest }: Listing, on: IsoDate): object {
	return { ...rest, listedHz: hz, coastTransmitHz: coastTx, shipTransmitHz: shipTx, freshness: freshness(rest as Listing, on).grade };
}

function foundLine({ listing, station, distanceKm }: FoundListing, on: IsoDate): string {
	const distance = distanceKm === null ? "" : ` ${Math.round(distanceKm / NAUTICAL_MILE_KM)} nm,`;
	const what = `${formatKhz(listing.hz).padStart(8)} kHz ${listing.means} ${listing.emission}  ${SERVICE_WORDS[listing.service]}`;
	return `${what}: ${station.name},${distance} ${listing.schedule}\n           ${listing.id}; ${confidenceText(listing, on)}\n`;
}

function stationText({ id, name, callSign, administration, mmsi, position, powerKw, source, asOf, status, notes }: Station): string {
	const facts = [
		`${name}${callSign === "" ? "" : ` (${callSign})`}, ${administration}`,
		position === null ? "position not known" : formatPosition(position),
		mmsi === null ? "" : `MMSI ${mmsi}`,
		powerKw === null ? "" : `${powerKw} kW`,
		status,
	];
	return `${id}: ${facts.filter((fact) => fact !== "").join(", ")}\n  source: ${source} (${asOf})${notes === "" ? "" : `\n  ${notes}`}\n`;
}

function listingText(directory: Directory, listing: Listing, on: IsoDate): string {
	const pair = listing.shipTx === null || listing.coastTx === null ? "" : `, ship ${formatKhz(listing.shipTx)} kHz`;
	const channel = listing.channel === null ? "" : `, channel ${listing.channel}`;
	const head = `${listing.id}: ${formatKhz(listing.hz)} kHz ${listing.means}${pair}${channel}, ${listing.emission}, ${listing.receiveOnly ? "receive only" : "worked"}, ${listing.status}`;
	const lines = [
		head,
		`  ${SERVICE_WORDS[listing.service]}${listing.coverage === "" ? "" : `: ${listing.coverage}`}`,
		`  schedule (UTC): ${listing.schedule}; on ${on}: ${timesText(directory, listing, on)}`,
		...(listing.notes === "" ? [] : [`  as noted: ${listing.notes}`]),
		`  ${confidenceText(listing, on)}`,
		`  source: ${listing.source}`,
	];
	return `${lines.join("\n")}\n`;
}

function timesText(directory: Directory, listing: Listing, on: IsoDate): string {
	const times = occurrencesOf(directory, listing, on).map(({ fromMin, toMin, length }) => {
		const end = toMin > MINUTES_PER_DAY ? toMin - MINUTES_PER_DAY : toMin;
		return `${formatHhmm(fromMin)}-${formatHhmm(end)}${length === "assumed" ? " (end assumed)" : ""}`;
	});
	return times.length === 0 ? "none that can be told" : times.join(" ");
}

function serviceGiven(text: string): ServiceId {
	if (text in SERVICE_WORDS) return text as ServiceId;
	throw new UsageError(`cannot take --service ${text}: expected ${Object.keys(SERVICE_WORDS).join(", ")}`);
}

function numberGiven(flag: string, text: string): number {
	const value = Number(text);
	if (/^\d+(\.\d+)?$/.test(text) && value > 0) return value;
	throw new UsageError(`cannot take ${flag} ${text}: expected a number above 0`);
}

function given<T>(flag: string, text: string, read: (text: string) => T): T {
	try {
		return read(text);
	} catch (error) {
		throw new UsageError(`cannot take ${flag} ${text}: ${(error as Error).message}`);
	}
}

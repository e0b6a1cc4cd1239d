import { type Directory, type Listing, readOwnListingsCsv, type Station } from "@skipwright/directory";
import { type Profile, profileNamed, type Row, readList } from "@skipwright/set";
import { hz, position } from "@skipwright/units";
import { ownEntry } from "./ownEntry.ts";
import { readGpx } from "./readGpx.ts";
import type { Job } from "./schema.ts";
import { utcTime } from "./utcTime.ts";
import type { Voyage, VoyagePoint } from "./voyage.ts";

/** A job with everything it refers to read in. */
export interface ResolvedJob {
	readonly job: Job;
	readonly profile: Profile;
	readonly voyage: Voyage;
	/** The owner's own, as listings of origin "owner". */
	readonly ownListings: readonly Listing[];
	/** Stations made for those of them that the job itself holds. */
	readonly ownStations: readonly Station[];
	/** What the set holds now; empty for a blank one. */
	readonly asFound: readonly Row[];
}

/** Names of the files that a job refers to, each once, as written in it: relative to the job's own folder. */
export function references(job: Job): readonly string[] {
	const names = [job.voyage.gpx, job.listings.csv, job.asFound?.csv];
	return [...new Set(names.filter((name) => name !== undefined))];
}

/**
 * Reads what a job refers to.
 * @param texts text of every file that `references` names, by its name
 * @throws BadInputError where a file cannot be read; RangeError when a text was not given
 */
export function resolveJob(job: Job, texts: ReadonlyMap<string, string>): ResolvedJob {
	const textOf = (name: string) => {
		const text = texts.get(name);
		if (text === undefined) throw new RangeError(`Cannot resolve the job as the text of ${JSON.stringify(name)} was not given`);
		return text;
	};
	const profile = profileOf(job);
	const { listings, voyage } = job;
	const own = (listings.rows ?? []).map(ownEntry);
	return {
		job,
		profile,
		voyage: voyage.gpx === undefined ? inlineVoyage(voyage.points ?? []) : readGpx(voyage.gpx, textOf(voyage.gpx)),
		ownListings: listings.csv === undefined ? own.map(({ listing }) => listing) : readOwnListingsCsv(listings.csv, textOf(listings.csv)),
		ownStations: own.map(({ station }) => station),
		asFound: asFoundRows(job, profile, textOf),
	};
}

function profileOf({ set }: Job): Profile {
	const profile = set.inline ?? profileNamed(set.profile ?? "");
	if (profile === null) throw new RangeError(`Cannot resolve the job as no set profile is named ${JSON.stringify(set.profile)}`);
	return profile;
}

function inlineVoyage(points: NonNullable<Job["voyage"]["points"]>): Voyage {
	return {
		points: points.map(
			({ name, at: [latDeg, lonDeg], from, to }): VoyagePoint => ({
				name: name ?? null,
				position: position(latDeg, lonDeg),
				arriveMs: utcTime(from),
				departMs: utcTime(to ?? from),
			}),
		),
	};
}

function asFoundRows({ asFound }: Job, profile: Profile, textOf: (name: string) => string): readonly Row[] {
	if (asFound === null) return [];
	if (asFound.csv !== undefined) return readList(asFound.csv, textOf(asFound.csv), profile);
	return (asFound.rows ?? []).map(({ bank, place, tag, receiveHz, transmitHz, mode }, index) => ({
		bank,
		place,
		tag,
		receive: hz(receiveHz),
		transmit: transmitHz === null ? null : hz(transmitHz),
		mode,
		// the line it would have in a CSV with a header
		line: index + 2,
	}));
}

/** The directory in force for a job: with the owner's own listings added. */
export function directoryFor({ ownListings, ownStations }: ResolvedJob, directory: Directory): Directory {
	return {
		...directory,
		stations: [...directory.stations, ...ownStations],
		listings: [...directory.listings, ...ownListings],
	};
}

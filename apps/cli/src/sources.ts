import { type Directory, directory, mergeDirectory, readEditsCsv, readOwnListingsCsv } from "@skipwright/directory";
import type { Region } from "@skipwright/rules";
import { type Profile, profileNamed, readProfile, shippedProfiles } from "@skipwright/set";
import { type IsoDate, isoDate } from "@skipwright/units";
import { type Context, UsageError } from "./context.ts";
import { readText } from "./readText.ts";

/** A set profile by the id of a shipped one or by file name. */
export function profileGiven(context: Context, nameOrFile: string): Profile {
	const shipped = profileNamed(nameOrFile);
	if (shipped !== null) return shipped;
	if (!/[./\\]/.test(nameOrFile)) {
		const names = shippedProfiles().map(({ id }) => id);
		throw new UsageError(`cannot find a set "${nameOrFile}": expected one of ${names.join(", ")}, or a profile's file name (.json)`);
	}
	return readProfile(nameOrFile, readText(context, nameOrFile));
}

/** The shipped directory under the shop's edits, with the owner's own listings added. */
export function directoryGiven(
	context: Context,
	files: { readonly shop?: string | undefined; readonly own?: string | undefined },
): Directory {
	const edits = files.shop === undefined ? [] : readEditsCsv(files.shop, readText(context, files.shop));
	const base = edits.length === 0 ? directory() : mergeDirectory(directory(), { listings: edits, stations: [] });
	if (files.own === undefined) return base;
	const own = readOwnListingsCsv(files.own, readText(context, files.own));
	return { ...base, listings: [...base.listings, ...own] };
}

/** @throws UsageError */
export function dateGiven(context: Context, text: string | undefined): IsoDate {
	if (text === undefined) return context.today();
	try {
		return isoDate(text);
	} catch (error) {
		throw new UsageError(`cannot take --on ${text}: ${(error as Error).message}`);
	}
}

/** @throws UsageError */
export function regionGiven(text: string | undefined): Region | null {
	if (text === undefined) return null;
	if (text === "1" || text === "2" || text === "3") return Number(text) as Region;
	throw new UsageError(`cannot take --region ${text}: expected 1, 2 or 3 (leave it out for all three)`);
}

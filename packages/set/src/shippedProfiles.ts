import * as data from "./data.gen.ts";
import type { Profile } from "./profile.ts";
import { readProfile } from "./readProfile.ts";

let read: readonly Profile[] | null = null;

/** The three invented sets that come with the product, read at first use. */
export function shippedProfiles(): readonly Profile[] {
	read ??= [
		readProfile("twin-180.json", data.TWIN_180_JSON),
		readProfile("single-200.json", data.SINGLE_200_JSON),
		readProfile("receiver-100.json", data.RECEIVER_100_JSON),
	];
	return read;
}

/** A shipped profile by its id, or null. */
export function profileNamed(id: string): Profile | null {
	return shippedProfiles().find((profile) => profile.id === id) ?? null;
}

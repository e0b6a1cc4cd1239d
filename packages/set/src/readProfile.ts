import { PROFILE_FORMAT, PROFILE_VERSION, type Profile, ProfileSchema } from "./profile.ts";
import { readJson } from "./readJson.ts";

/**
 * A set profile from JSON. docs/writing-a-profile.md tells how one is written from a maker's manual.
 * @param source name of the file, for messages
 * @throws BadJsonError (a BadInputError) with every fault: line, path, value and what was expected
 */
export function readProfile(source: string, jsonText: string): Profile {
	return readJson(source, jsonText, { format: PROFILE_FORMAT, version: PROFILE_VERSION, what: "a set profile", schema: ProfileSchema });
}

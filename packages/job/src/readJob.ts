import { readJson } from "@skipwright/set";
import { JOB_FORMAT, JOB_VERSION, type Job, JobSchema } from "./schema.ts";

/**
 * A job file's text to a job, defaults filled in. The files it names are not read here: see `references` and `resolveJob`.
 * @param source name of the file, for messages
 * @throws BadJsonError (a BadInputError) naming line, JSON path, value and what was expected; another format and a newer version by name
 */
export function readJob(source: string, jsonText: string): Job {
	return readJson(source, jsonText, { format: JOB_FORMAT, version: JOB_VERSION, what: "a job", schema: JobSchema });
}

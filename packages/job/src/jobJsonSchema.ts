import * as z from "zod";
import { JobSchema } from "./schema.ts";

/** JSON Schema of a job as it is written, defaults left out. Rules that span fields (times in order, "either ... or") are the reader's. */
export function jobJsonSchema(): object {
	return z.toJSONSchema(JobSchema, { io: "input" });
}

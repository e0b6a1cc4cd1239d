/**
 * Writes the JSON Schemas of our file formats into docs/, from the Zod schemas that read the files.
 * Run `node tools/write-schemas.ts` after a change; a test checks that a rerun gives the same bytes.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { JobSchema } from "@skipwright/job";
import { EvidenceSchema } from "@skipwright/proving";
import { ProfileSchema } from "@skipwright/set";
import * as z from "zod";

const DOCS = join(import.meta.dirname, "..", "docs");

/** File in docs/, title and schema of each format. */
export const SCHEMAS: readonly { readonly file: string; readonly title: string; readonly schema: z.ZodType }[] = [
	{ file: "set-profile.schema.json", title: "Set profile, version 1", schema: ProfileSchema },
	{ file: "job.schema.json", title: "Job, version 1", schema: JobSchema },
	{ file: "evidence.schema.json", title: "Evidence, version 1", schema: EvidenceSchema },
];

export function schemaPath(file: string): string {
	return join(DOCS, file);
}

/** What a file may hold before it is read: fields with a default may be left out. */
export function schemaText(title: string, schema: z.ZodType): string {
	const { $schema, ...rest } = z.toJSONSchema(schema, { io: "input" });
	return `${JSON.stringify({ $schema, title, ...rest }, null, "\t")}\n`;
}

if (import.meta.main) {
	for (const { file, title, schema } of SCHEMAS) {
		writeFileSync(schemaPath(file), schemaText(title, schema));
		console.log(`docs/${file}`);
	}
}

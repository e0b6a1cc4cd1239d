import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { SCHEMAS, schemaPath, schemaText } from "./write-schemas.ts";

it.each(SCHEMAS)("docs/$file is what the schema says", ({ file, title, schema }) => {
	expect(readFileSync(schemaPath(file), "utf8")).toBe(schemaText(title, schema));
});

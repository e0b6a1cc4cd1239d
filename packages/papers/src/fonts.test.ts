import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";

const FONTS = new URL("../fonts/", import.meta.url);

test("every font is the file that fonts/SOURCES.md names, with its licence beside it", () => {
	const sources = readFileSync(new URL("SOURCES.md", FONTS), "utf8");
	const rows = [...sources.matchAll(/^\| (\S+\.ttf) \|.*, (\S+-LICENSE\.md) \| ([0-9a-f]{64}) \|$/gm)];
	const files = readdirSync(FONTS);
	expect(rows.map(([, file]) => file).sort()).toEqual(files.filter((file) => file.endsWith(".ttf")).sort());
	expect(rows).toHaveLength(4);
	for (const [, file = "", licence = "", hash] of rows) {
		expect(
			createHash("sha256")
				.update(readFileSync(new URL(file, FONTS)))
				.digest("hex"),
			file,
		).toBe(hash);
		expect(readFileSync(new URL(licence, FONTS), "utf8"), licence).toContain("SIL OPEN FONT LICENSE Version 1.1");
	}
});

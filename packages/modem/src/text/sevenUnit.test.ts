import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { SEVEN_UNIT } from "./sevenUnit.ts";

/** Of the published code: its hexadecimal form was compared whole with an encyclopaedia's table of CCIR 476. */
const { table }: { table: readonly { name: string; hexMsbFirst: string; figures?: string }[] } = JSON.parse(
	readFileSync(join(import.meta.dirname, "../../truth/collective-fec.json"), "utf8"),
);

describe("SEVEN_UNIT", () => {
	it("is the published table of 35, last element first in its hexadecimal form", () => {
		const ours = new Map(
			SEVEN_UNIT.map(({ name, sent }) => [name, [...sent].reduceRight((value, element) => 2 * value + +(element === "B"), 0)]),
		);
		expect(table.length).toBe(35);
		expect(ours).toEqual(new Map(table.map(({ name, hexMsbFirst }) => [name, Number.parseInt(hexMsbFirst, 16)])));
	});

	it("holds every word of four B and three Y, once", () => {
		const words = Array.from({ length: 128 }, (_, i) => i.toString(2).padStart(7, "0").replaceAll("1", "B").replaceAll("0", "Y"));
		const wanted = words.filter((word) => word.replaceAll("Y", "").length === 4);
		expect(wanted.length).toBe(35);
		expect(SEVEN_UNIT.map(({ sent }) => sent).sort()).toEqual(wanted.sort());
	});

	it("prints the published figures of digits and signs", () => {
		const signs = table.filter(({ name, figures }) => name.length === 1 && figures?.length === 1);
		expect(signs.length).toBe(21);
		for (const { name, figures } of signs) expect(SEVEN_UNIT.find((signal) => signal.name === name)?.figure).toBe(figures);
	});
});

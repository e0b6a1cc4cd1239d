import { directory } from "@skipwright/directory";
import { hz, isoDate } from "@skipwright/units";
import { parse } from "csv-parse/browser/esm/sync";
import type { Bench } from "../../../tools/bench-types.ts";
import { measure } from "../../../tools/measure.ts";
import { checkList } from "./checkList.ts";
import { readList, writeList } from "./list.ts";
import { profileNamed } from "./shippedProfiles.ts";
import type { Row } from "./types.ts";

const ROWS = 20_000;

/** Rows drawn from the directory and beside it by a fixed rule, so that every group of findings has work. */
function seededRows(): readonly Row[] {
	const { listings } = directory();
	return Array.from({ length: ROWS }, (_, i): Row => {
		const listing = listings[(i * 7_919) % listings.length]!;
		const slip = i % 3 === 0 ? 0 : (i % 7) * 100;
		const receive = hz(Math.round(listing.hz / 100) * 100 + slip);
		return {
			bank: "voice",
			place: (i % 180) + 1,
			tag: `T${i % 997}`,
			receive,
			transmit: i % 4 === 0 ? receive : null,
			mode: "USB",
			line: i + 2,
		};
	});
}

export const bench: Bench = {
	name: "check",
	run: () => {
		const profile = profileNamed("twin-180")!;
		const csv = writeList(seededRows());
		const options = { profile, directory: directory(), on: isoDate("2026-11-24"), region: null, amateurLicence: false };
		const work = () => checkList(readList("bench.csv", csv, profile), options).length;
		const floor = () => (parse(csv) as readonly unknown[]).length;
		const result = {
			what: "read and check a list",
			floor: "bare parse of the same file",
			count: ROWS,
			unit: "rows",
			...measure(work, floor),
		};
		return Promise.resolve([result]);
	},
};

import { readOwnListingsCsv } from "@skipwright/directory";
import { describe, expect, it } from "vitest";
import { ownEntry } from "./ownEntry.ts";
import { JobSchema } from "./schema.ts";

const LEAST = {
	format: "skipwright-job",
	version: 1,
	title: "least",
	vessel: { name: "Imaginary", licences: { ship: true, amateur: false, operator: "none" } },
	set: { profile: "single-200" },
	voyage: { points: [{ at: [38.53, -28.63], from: "2027-05-01" }] },
	wants: {},
};

/** The same net as a row of a job and as a line of a file. */
function bothForms(inJob: { readonly transmitHz?: number | null }, inFile: string) {
	const row = { id: "dusk-net", name: "Dusk net", hz: 12_353_000, schedule: "1730", asOf: "2026-11-01", ...inJob };
	const own = JobSchema.parse({ ...LEAST, listings: { rows: [row] } }).listings.rows?.[0];
	if (own === undefined) throw new Error("the row was not read");
	const csv = `name,khz,means,mode,schedule,as_of,transmit_khz\nDusk net,12353,carrier,USB,1730,2026-11-01,${inFile}\n`;
	return [ownEntry(own).listing, ...readOwnListingsCsv("own.csv", csv)];
}

const RECEIVE_ONLY = { coastTx: null, shipTx: null, receiveOnly: true };

describe("ownEntry", () => {
	it.each([
		["left out", {}, "", RECEIVE_ONLY],
		["null", { transmitHz: null }, "", RECEIVE_ONLY],
		["given", { transmitHz: 12_353_000 }, "12353", { coastTx: 12_353_000, shipTx: 12_353_000, receiveOnly: false }],
	])("sends only where a carrier is given, as in a file: %s", (_what, inJob, inFile, sending) => {
		const forms = bothForms(inJob, inFile);
		expect(forms).toHaveLength(2);
		for (const listing of forms) {
			expect(listing).toMatchObject({
				...sending,
				id: "own/dusk-net/voice-working/12353",
				hz: 12_353_000,
				emission: "J3E",
				origin: "owner",
			});
		}
	});
});

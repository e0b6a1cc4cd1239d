import { directory, stationOf } from "@skipwright/directory";
import { describe, expect, it } from "vitest";
import { type DscTestQuestion, dscTests } from "./dscTests.ts";

const WATCHES = directory()
	.listings.filter(({ service }) => service === "dsc-watch")
	.map((listing) => ({ listing, station: stationOf(directory(), listing) }));

function question(change: Partial<DscTestQuestion> = {}): DscTestQuestion {
	const flat = new Array<number>(24).fill(0.2);
	const chances = (id: string) =>
		id.startsWith("za-capetown/") ? flat.map((chance, hour) => (hour === 6 ? 0.8 : chance)) : id.startsWith("us-boston/") ? null : flat;
	return {
		watches: WATCHES,
		chances,
		shipLicence: true,
		operator: "long range certificate",
		ownMmsi: "299123456",
		canSend: true,
		...change,
	};
}

describe("dscTests", () => {
	it("names coast stations by their nine digits where one hour at least is fair", () => {
		const tests = dscTests(question());
		if ("cannot" in tests) throw new Error(tests.cannot);
		expect(tests.map(({ listing }) => listing).sort()).toEqual(
			WATCHES.map(({ listing }) => listing.id)
				.filter((id) => id.startsWith("za-capetown/"))
				.sort(),
		);
		expect(tests.length).toBe(5);
		for (const { mmsi } of tests) expect(mmsi).toMatch(/^00\d{7}$/);
	});

	it.each([
		[{ shipLicence: false }, /ship station licence/],
		[{ operator: "none" }, /operator's certificate/],
		[{ operator: " " }, /operator's certificate/],
		[{ ownMmsi: null }, /MMSI/],
		[{ canSend: false }, /cannot send/],
	] as const)("none may be made with %o", (change, why) => {
		expect(dscTests(question(change))).toEqual({ cannot: expect.stringMatching(why) });
	});

	it("leaves out stations without an identity, and closed watches", () => {
		const [first, second, ...others] = WATCHES as [(typeof WATCHES)[number], (typeof WATCHES)[number], ...typeof WATCHES];
		const nameless = { ...first, station: { ...first.station, mmsi: null } };
		const closed = { ...second, listing: { ...second.listing, status: "closed" as const } };
		const chances = () => new Array<number>(24).fill(0.9);
		const able = (watches: DscTestQuestion["watches"]) => {
			const tests = dscTests(question({ chances, watches }));
			return "cannot" in tests ? -1 : tests.length;
		};
		expect([able(WATCHES), able([nameless, closed, ...others])]).toEqual([WATCHES.length, WATCHES.length - 2]);
	});
});

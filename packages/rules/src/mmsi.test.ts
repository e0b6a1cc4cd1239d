import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { groupIdentityFrom, midAdministration, mmsi, mmsiForms } from "./mmsi.ts";

const codes = (text: string, use: "any" | "own" = "any") => mmsi(text, use).problems.map(({ code }) => code);

describe("mmsi", () => {
	// ship, group and coast: ITU-R M.585 as read in stored copies; the others from memory of M.585
	it.each([
		["235012346", "ship", "235"],
		["023501239", "group", "235"],
		["002320001", "coast", "232"],
		["009990000", "all-coast", null],
		["111232501", "sar-aircraft", "232"],
		["992351005", "aid-to-navigation", "235"],
		["982350017", "craft-of-ship", "235"],
		["823500190", "handheld", "235"],
		["970051234", "ais-sart", null],
		["972051234", "man-overboard", null],
		["974051234", "epirb-ais", null],
		["979051234", "autonomous-device", null],
	])("reads the form of %s as in ITU-R M.585: %s", (text, form, mid) => {
		expect(mmsi(text)).toMatchObject({ digits: text, form, mid, problems: [] });
		expect(mmsi(text).use).not.toBe("");
		if (mid !== null) expect(mmsi(text).administration).not.toBeNull();
	});

	it("covers each form of the table once in these tests", () => {
		expect(mmsiForms()).toHaveLength(12);
		expect(new Set(mmsiForms().map(({ id }) => id)).size).toBe(12);
	});

	it("takes a first MID digit from 2 to 7 and no other, in every form that has an MID (ITU-R M.585)", () => {
		let tried = 0;
		for (const { id, midAt } of mmsiForms()) {
			if (midAt === null) continue;
			const before = { 0: "", 1: id === "group" ? "0" : "8", 2: id === "coast" ? "00" : id === "craft-of-ship" ? "98" : "99", 3: "111" }[
				midAt
			];
			for (let first = 0; first <= 9; first++) {
				const { form } = mmsi(`${before}${first}35012346`.slice(0, 9));
				if (first >= 2 && first <= 7) expect(form).toBe(id);
				else expect(form).not.toBe(id);
				tried++;
			}
		}
		expect(tried).toBe(70);
	});

	it("names the administration, and an MID that has none", () => {
		expect(mmsi("366123456").administration).toBe(midAdministration("366"));
		expect(codes("299456781")).toEqual(["mid-not-allocated"]);
		expect(midAdministration("299")).toBeNull();
	});

	it("tells wrong length, wrong form and the ten digits of a call on the air (47 CFR: nine digits and a 0)", () => {
		expect(codes("23501234")).toEqual(["wrong-length"]);
		expect(mmsi("2350123460").problems).toMatchObject([{ code: "wrong-length", message: expect.stringContaining("carries a 0 after") }]);
		expect(codes("100000007")).toEqual(["unknown-form"]);
		expect(codes("2350I2346")).toEqual(["not-digits"]);
		expect(codes("")).toEqual(["wrong-length"]);
	});

	it("refuses a coast station's or a group's identity as a ship's own", () => {
		expect(codes("002320001")).toEqual([]);
		expect(codes("002320001", "own")).toEqual(["not-a-ship"]);
		expect(codes("023501239", "own")).toEqual(["not-a-ship"]);
		expect(codes("235012346", "own")).toEqual([]);
	});

	it("suspects all-same and counting digits, in the whole or in what follows a ship's MID, but not a coast station's own", () => {
		for (const text of ["222222222", "123456789", "987654321", "235000000", "235123456", "235654321"])
			expect(codes(text)).toContain("placeholder");
		expect(codes("003669999")).toEqual([]); // the U.S. group of coast stations, a real one
		expect(codes("235012346")).toEqual([]);
	});

	it("remarks on satellite numbering and on the call to all coast stations, without a problem", () => {
		expect(mmsi("235124000")).toMatchObject({ problems: [], notes: [expect.stringContaining("ends in 000")] });
		expect(mmsi("002350000")).toMatchObject({ problems: [], notes: [expect.stringContaining("every coast station")] });
	});

	it("passes over spaces, dots and hyphens", () => {
		expect(mmsi(" 235 012-346 ").digits).toBe("235012346");
	});

	it("finds some answer for any text", () => {
		fc.assert(
			fc.property(fc.string({ unit: "binary", maxLength: 20 }), fc.constantFrom("any" as const, "own" as const), (text, use) => {
				const reading = mmsi(text, use);
				if (reading.form === null) expect(reading.problems.length).toBeGreaterThan(0);
				else expect(reading.digits).toMatch(/^\d{9}$/);
			}),
			{ seed: 7, numRuns: 500 },
		);
		fc.assert(
			fc.property(fc.stringMatching(/^[2-7]\d{8}$/), (digits) => {
				expect(mmsi(digits).form).toBe("ship");
			}),
			{ seed: 8 },
		);
	});
});

describe("midAdministration", () => {
	it("knows 292 identification digits from 201 to 775, the newer ones among them (ITU table of MIDs)", () => {
		const known = Array.from({ length: 1000 }, (_, i) => String(i).padStart(3, "0")).filter((mid) => midAdministration(mid) !== null);
		expect(known).toHaveLength(292);
		expect([known[0], known.at(-1)]).toEqual(["201", "775"]);
		for (const mid of ["229", "414", "471", "472", "550", "566", "577", "620", "638"]) expect(known).toContain(mid);
	});
});

describe("groupIdentityFrom", () => {
	it("drops the last 0 and puts one in front (47 CFR 80.103(d): 299123450 gives 029912345)", () => {
		expect(groupIdentityFrom("299123450")).toBe("029912345");
	});

	it("gives none for an identity that does not end in 0 or is no ship's", () => {
		expect([groupIdentityFrom("299123456"), groupIdentityFrom("002320000"), groupIdentityFrom("29912345")]).toEqual([null, null, null]);
	});
});

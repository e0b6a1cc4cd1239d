import { profileNamed } from "@skipwright/set";
import { describe, expect, it } from "vitest";
import { type ScannedPlace, scanBlocks } from "./scanBlocks.ts";

const TWIN = profileNamed("twin-180")!;
const SINGLE = profileNamed("single-200")!;

function filled(bank: string, from: number, kinds: readonly ScannedPlace["kind"][]): readonly ScannedPlace[] {
	return kinds.map((kind, i) => ({ bank, place: from + i, kind }));
}

describe("scanBlocks", () => {
	it("tells each block of the set, and scans those of speech alone", () => {
		const blocks = scanBlocks(TWIN, [
			...filled("voice", 1, ["speech", "speech", null, "speech"]),
			...filled("voice", 21, ["timed", "timed"]),
			...filled("voice", 41, ["speech", "timed"]),
			...filled("data", 1, ["data", null]),
		]);
		expect(blocks.length).toBe(9 + 6);
		expect(blocks[0]).toMatchObject({
			bank: "voice",
			first: 1,
			last: 20,
			filled: 4,
			kind: "speech",
			isScanned: true,
			swept: 4,
			revisitS: 2,
		});
		expect(blocks[0]?.catches).toEqual([5, 10, 30, 60].map((callS) => ({ callS, chance: 1 })));
		expect(blocks.slice(1, 4).map(({ kind, isScanned, revisitS }) => [kind, isScanned, revisitS])).toEqual([
			["timed", false, null],
			["mixed", false, null],
			["empty", false, null],
		]);
		expect(blocks[9]).toMatchObject({ bank: "data", first: 1, kind: "data", isScanned: false, swept: 0, catches: [] });
	});

	it("sweeps empty places where the set does not pass over them", () => {
		const scan = { ...TWIN.scan!, skipsEmpty: false };
		const [block] = scanBlocks({ ...TWIN, scan }, filled("voice", 1, ["speech"]));
		expect(block).toMatchObject({ swept: 20, revisitS: 10 });
		expect(block?.catches.map(({ chance }) => Math.round(chance * 1_000))).toEqual([530, 1_000, 1_000, 1_000]);
	});

	it("leaves places out of a mixed block where the set can, and never where it cannot", () => {
		const mixed = filled("memory", 1, ["speech", "speech", "data", "timed", null]);
		expect(scanBlocks(SINGLE, mixed)[0]).toMatchObject({ kind: "mixed", isScanned: true, swept: 2, revisitS: 1.6 });
		const whole = { ...SINGLE, scan: { ...SINGLE.scan!, sweptFlag: "block" as const } };
		expect(scanBlocks(whole, mixed)[0]).toMatchObject({ kind: "mixed", isScanned: false, swept: 0 });
		expect(scanBlocks({ ...SINGLE, scan: null }, filled("memory", 1, ["speech"]))[0]).toMatchObject({ kind: "speech", isScanned: false });
	});

	it("counts the last, shorter block of a bank", () => {
		const banks = [{ id: "memory", places: 25, blockLength: 10, holds: "any" as const }];
		expect(scanBlocks({ ...SINGLE, banks }, []).map(({ first, last }) => `${first}-${last}`)).toEqual(["1-10", "11-20", "21-25"]);
	});
});

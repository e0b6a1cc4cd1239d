import { profileNamed } from "@skipwright/set";
import { describe, expect, it } from "vitest";
import type { ScanKind } from "./candidate.ts";
import { type HeldPlace, takenRoom } from "./takenRoom.ts";

/** Two banks of 180 and 120 places, blocks of 20. */
const TWIN = profileNamed("twin-180")!;

const held = (place: number | null, kind: ScanKind | null, change: Partial<HeldPlace> = {}): HeldPlace => {
	return { bank: "voice", place, kind, isPinned: false, isMovable: true, isRepeated: false, ...change };
};

function voice(places: readonly HeldPlace[], reserve = 0) {
	const [room] = takenRoom(TWIN, { voice: reserve }, places);
	if (room === undefined) throw new Error("no bank");
	return room;
}

describe("takenRoom", () => {
	it("is all empty blocks in a blank set, each bank for its kinds, the reserve off", () => {
		const [speech, data] = takenRoom(TWIN, { voice: 10 }, []);
		expect(speech).toMatchObject({ bank: "voice", kinds: ["speech", "timed"], free: 170, inSpeechBlocks: 0, inOtherBlocks: 0 });
		expect(speech?.emptyBlocks).toEqual(Array.from({ length: 9 }, () => 20));
		expect(data).toMatchObject({ bank: "data", kinds: ["data"], free: 120, emptyBlocks: [20, 20, 20, 20, 20, 20] });
	});

	it("tells blocks by what they hold; what nothing tells of commits none", () => {
		const room = voice([held(1, "speech"), held(2, null), held(21, "timed"), held(41, null)]);
		expect(room).toMatchObject({ free: 176, inSpeechBlocks: 18, inOtherBlocks: 19 });
		expect(room.emptyBlocks).toEqual([19, 20, 20, 20, 20, 20, 20]);
	});

	it("takes the fewer kind out of a mixed block, which then needs a place, but for what another place holds", () => {
		const room = voice([held(1, "speech"), held(2, "speech"), held(3, "timed"), held(4, "data", { isRepeated: true })]);
		expect(room).toMatchObject({ free: 178, inSpeechBlocks: 18, inOtherBlocks: 0 });
		expect(room.taken.homeless).toEqual(["timed"]);
	});

	it("fills a block no further that pins mix", () => {
		const room = voice([held(1, "speech"), held(2, "speech"), held(3, "timed", { isPinned: true })]);
		expect(room).toMatchObject({ free: 177, inSpeechBlocks: 0, inOtherBlocks: 0 });
		expect(room.emptyBlocks.length).toBe(8);
		expect(room.taken.pins).toEqual({ speech: [], other: ["voice 3"] });
	});

	it("knows what a pin has put out of its place", () => {
		const room = voice([held(1, "speech", { isPinned: true, isMovable: false }), held(null, "speech")]);
		expect(room).toMatchObject({ free: 179, inSpeechBlocks: 19 });
		expect(room.taken).toMatchObject({
			movable: { speech: 0, other: 0 },
			pins: { speech: ["voice 1"], other: [] },
			homeless: ["speech"],
		});
	});

	it("knows no blocks in a set that does not scan", () => {
		const [room] = takenRoom({ ...TWIN, scan: null }, { voice: 5 }, [held(1, "speech")]);
		expect(room).toMatchObject({ free: 174, inSpeechBlocks: 179, inOtherBlocks: 179, emptyBlocks: [] });
	});
});

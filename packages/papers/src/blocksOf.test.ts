import { profileNamed, type SheetStep } from "@skipwright/set";
import { expect, test } from "vitest";
import { blocksOf } from "./blocksOf.ts";

const profile = profileNamed("twin-180") ?? expect.fail("no twin-180");

function step(order: number, bank: string, place: number): SheetStep {
	const nothing = { receiveTurns: null, transmitTurns: null, receiveKeys: null, transmitKeys: null, listing: null };
	return { order, action: "clear", bank, place, tag: "", receive: null, transmit: null, mode: null, before: "", what: "", ...nothing };
}

test("steps split at the edges of the blocks that the set scans as one", () => {
	const blocks = blocksOf([step(1, "voice", 20), step(2, "voice", 21), step(3, "voice", 40), step(4, "data", 21)], profile);
	expect(blocks.map(({ bank, number, places, steps }) => [bank, number, places, steps.length])).toEqual([
		["voice", 1, { from: 1, to: 20 }, 1],
		["voice", 2, { from: 21, to: 40 }, 2],
		["data", 2, { from: 21, to: 40 }, 1],
	]);
});

test("the order of keying is kept: a block that is left and taken up again comes twice and says so", () => {
	const steps = [step(1, "voice", 1), step(2, "data", 1), step(3, "voice", 2)];
	const blocks = blocksOf(steps, profile);
	expect(blocks.map(({ resumed }) => resumed)).toEqual([false, false, true]);
	expect(blocks.flatMap((block) => block.steps)).toEqual(steps);
});

test("a last block ends with the bank", () => {
	const short = { ...profile, banks: [{ id: "voice", places: 25, blockLength: 20, holds: "any" as const }] };
	expect(blocksOf([step(1, "voice", 25)], short)[0]?.places).toEqual({ from: 21, to: 25 });
});

test.each([
	["voice", 0],
	["voice", 181],
	["none", 1],
])("%s %d is no place of the set", (bank, place) => {
	expect(blocksOf([step(1, bank, place)], profile)[0]?.places).toBeNull();
});

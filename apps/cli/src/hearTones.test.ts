import { expect, test } from "vitest";
import { clockFrom, logText } from "./hearText.ts";

const toldOf = (audioHz: number, snrDb: number) => ({
	item: { kind: "tone", startS: 1, endS: 6, audioHz, uncertaintyHz: 0.1, snrDb, onRatio: 1, summary: "", sure: "certain" } as const,
	tuning: null,
	image: null,
});

test("of tones at once the one that leads is told first, the others by their pitch", () => {
	const first = (...tones: readonly (readonly [hz: number, snrDb: number])[]) =>
		logText(
			tones.map(([hz, snrDb]) => toldOf(hz, snrDb)),
			clockFrom(null),
		)[0]!.split("\n")[0];
	expect(first([500, 3], [700, -2], [1_000, 20])).toBe("00:00:01  Tones of 1000.0, 500.0, 700.0 Hz.");
	expect(first([500, 3], [700, 3.5], [1_000, 4])).toBe("00:00:01  Tones of 500.0, 700.0, 1000.0 Hz.");
});

import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES } from "../receiver.ts";
import { createTrack } from "./track.ts";

/** Sample n has n modulo 1000 hertz; the first has number -33. */
function filled(frames: number) {
	const track = createTrack(-33);
	for (let frame = 0; frame < frames; frame++) {
		track.add(new Float64Array(FRAME_SAMPLES).map((_, n) => (((frame * FRAME_SAMPLES + n - 33) % 1_000) + 1_000) % 1_000));
	}
	return track;
}

describe("track", () => {
	it("gives back what was added, across its pieces, the nearest beyond its ends", () => {
		const track = filled(100);
		expect([track.start(), track.end()]).toEqual([-33, 25_567]);
		for (const from of [-33, 0, 8_100, 16_000, 25_000]) {
			const copy = new Float64Array(500);
			track.copy(from, copy);
			expect([...copy]).toEqual(Array.from(copy, (_, n) => (from + n + 1_000) % 1_000));
		}
		const [head, tail] = [new Float64Array(4), new Float64Array(4)];
		track.copy(-35, head);
		expect([...head]).toEqual([967, 967, 967, 968]);
		track.copy(25_565, tail);
		expect([...tail]).toEqual([565, 566, 566, 566]);
		expect([...track.means(8_150, 8_165, 4)]).toEqual([151.5, 155.5, 159.5]);
	});

	it("forgets whole pieces, and keeps to 0 to 4000 Hz", () => {
		const track = filled(3_000);
		track.forget(700_000);
		expect(track.start()).toBeGreaterThan(690_000);
		expect(track.start()).toBeLessThanOrEqual(700_000);
		const copy = new Float64Array(10);
		track.copy(700_000, copy);
		expect([...copy]).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
		track.add(new Float64Array(FRAME_SAMPLES).map((_, n) => [-5, 9_000, Number.NaN, 1_234.56][n % 4]!));
		track.copy(track.end() - 4, copy);
		expect([...copy].slice(0, 4)).toEqual([0, 4_000, 0, 1_234.5]);
	});
});

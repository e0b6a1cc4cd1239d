import type { NotListened } from "@skipwright/proving";
import { position } from "@skipwright/units";
import { expect, it } from "vitest";
import { provingText } from "./provingText.ts";

it("lists what else is to be heard in order of time", () => {
	const rest = [9, 2, 30, 5].map(
		(hour, i): NotListened => ({ bank: "data", place: i, tag: `T${hour}`, why: "no room", sentence: "", atMs: hour * 3_600_000 }),
	);
	const text = provingText({
		title: "a job",
		position: position(-33.91, 18.43),
		fromMs: 0,
		hours: 48,
		zoneMin: null,
		listening: { agenda: [], rest },
		tests: [],
		basis: "",
		places: 4,
	});
	expect([...text.matchAll(/ UTC {2}data \d (T\d+)/g)].map(([, tag]) => tag)).toEqual(["T2", "T5", "T9", "T30"]);
});

import { hz } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import type { Want } from "./candidate.ts";
import type { Entry } from "./entry.ts";
import { marineBand } from "./marineBand.ts";
import { inUseOrder } from "./useOrder.ts";

function entry(what: string, want: Want | null, receiveKhz: number, transmitKhz: number | null = null): Entry {
	const receive = hz(receiveKhz * 1_000);
	const transmit = transmitKhz === null ? null : hz(transmitKhz * 1_000);
	const content = { receive, transmit, mode: "USB" as const };
	return {
		content,
		tag: what,
		tagTexts: [],
		candidate: null,
		pinned: false,
		want,
		scan: null,
		bandMhz: marineBand(receive),
		what,
		notes: [],
		found: null,
	};
}

describe("inUseOrder", () => {
	it("is guards, then carriers and pairs for calling, then wants by band and figure, and last what is in nobody's list", () => {
		const ordered = [
			entry("guard 2182", "guard", 2_182, 2_182),
			entry("guard 8291", "guard", 8_291, 8_291),
			entry("calling pair 821", "coast-calling", 8_779, 8_255), // 47 CFR 80.369(d)
			entry("calling carrier 12359", "ship-calling", 12_359, 12_359), // routine calls, in place of 12290
			entry("working pair 401", "coast-calling", 4_357, 4_065),
			entry("working pair 801", "coast-calling", 8_719, 8_195),
			entry("ship to ship 4146", "ship-calling", 4_146, 4_146),
			entry("ship to ship 4149", "ship-calling", 4_149, 4_149),
			entry("net", "nets", 8_294, 8_294),
			entry("forecast", "weather-voice", 8_719),
			entry("chart", "weather-charts", 4_608.1),
			entry("nobody's", null, 3_023),
		];
		const words = (entries: readonly Entry[]) => entries.map(({ what }) => what);
		expect(words(inUseOrder(ordered.toReversed()))).toEqual(words(ordered));
		expect(words(inUseOrder([...ordered.slice(5), ...ordered.slice(0, 5)]))).toEqual(words(ordered));
	});
});

import { describe, expect, it } from "vitest";
import { NEVER_TRADED_IDS, SERVICE_WORDS, serviceWant, WANT_IDS, WANT_WORDS } from "./services.ts";
import type { ServiceId } from "./types.ts";

describe("services", () => {
	it("serve one want each; safety text is never traded", () => {
		const wants = Object.keys(SERVICE_WORDS).map((service) => [service, serviceWant(service as ServiceId)]);
		expect(wants).toEqual([
			["voice-working", "coast-calling"],
			["dsc-watch", "coast-calling"],
			["voice-weather", "weather-voice"],
			["fax", "weather-charts"],
			["navtex", "safety-text"],
			["nbdp-msi", "safety-text"],
			["rtty-weather", "weather-text"],
			["volmet", "aviation-weather"],
			["time-signal", "time"],
			["news-broadcast", "news"],
		]);
	});

	it("has a word for every want and every kind that is never traded", () => {
		expect(new Set(Object.keys(WANT_WORDS))).toEqual(new Set([...WANT_IDS, ...NEVER_TRADED_IDS]));
		expect(WANT_IDS).toHaveLength(9);
		expect(NEVER_TRADED_IDS).toEqual(["safety-text", "guard"]);
	});
});

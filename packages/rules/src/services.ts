import type { ServiceId } from "./types.ts";

/** What a service is called on screens and papers. */
export const SERVICE_WORDS: Readonly<Record<ServiceId, string>> = {
	"voice-working": "coast station, voice",
	"dsc-watch": "coast station, selective calling watch",
	"voice-weather": "weather by voice",
	fax: "weather charts",
	navtex: "NAVTEX text",
	"nbdp-msi": "safety text by NBDP",
	"rtty-weather": "weather by teletype",
	volmet: "aviation weather",
	"time-signal": "standard time and frequency",
	"news-broadcast": "news broadcast",
};

/** What an owner can need from the radio, with a weight. */
export const WANT_IDS = [
	"weather-charts",
	"weather-text",
	"weather-voice",
	"coast-calling",
	"ship-calling",
	"nets",
	"news",
	"time",
	"aviation-weather",
] as const;
export type WantId = (typeof WANT_IDS)[number];

/** What a layout holds whatever the weights: never traded for a want. */
export const NEVER_TRADED_IDS = ["safety-text", "guard"] as const;
export type NeverTradedId = (typeof NEVER_TRADED_IDS)[number];

export const WANT_WORDS: Readonly<Record<WantId | NeverTradedId, string>> = {
	"weather-charts": "weather charts",
	"weather-text": "weather text",
	"weather-voice": "weather by voice",
	"coast-calling": "calling coast stations",
	"ship-calling": "ship to ship",
	nets: "nets and friends",
	news: "news",
	time: "time",
	"aviation-weather": "aviation weather",
	"safety-text": "safety text",
	guard: "distress, safety and calling",
};

const WANT_OF_SERVICE: Readonly<Record<ServiceId, WantId | NeverTradedId>> = {
	"voice-working": "coast-calling",
	"dsc-watch": "coast-calling",
	"voice-weather": "weather-voice",
	fax: "weather-charts",
	navtex: "safety-text",
	"nbdp-msi": "safety-text",
	"rtty-weather": "weather-text",
	volmet: "aviation-weather",
	"time-signal": "time",
	"news-broadcast": "news",
};

/** The want that a service serves, or the never-traded kind it belongs to. */
export function serviceWant(service: ServiceId): WantId | NeverTradedId {
	return WANT_OF_SERVICE[service];
}

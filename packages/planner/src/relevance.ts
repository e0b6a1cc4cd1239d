import type { Listing, Station } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import type { ServiceId } from "@skipwright/rules";
import { distanceKm, NAUTICAL_MILE_KM } from "@skipwright/sphere";

/**
 * nm from the station within which its text, charts or speech are about waters that matter to the vessel; services that are not here are
 * the same everywhere. Own choice from what such broadcasts cover (METAREA forecasts and basin charts reach far, coastal text does not):
 * being heard is no reason to hold a forecast of another ocean.
 */
const RELEVANT_NM: Readonly<Partial<Record<ServiceId, number>>> = {
	navtex: 600,
	"voice-weather": 2_000,
	volmet: 2_000,
	"nbdp-msi": 3_500,
	"rtty-weather": 2_500,
	fax: 3_100,
};

/** nm. Speech below 4 MHz is a coast's own: its warnings and forecasts are about the waters it reaches by ground wave. Own choice. */
const COASTAL_VOICE = { belowHz: 4_000_000, nm: 300 } as const;

/** Whether what a listing sends is about the waters where the vessel is; a station of unknown position is given the benefit of the doubt. */
export function isRelevant({ service, hz }: Listing, { position }: Station, sample: VoyageSample): boolean {
	const isCoastal = service === "voice-weather" && hz < COASTAL_VOICE.belowHz;
	const limit = isCoastal ? COASTAL_VOICE.nm : RELEVANT_NM[service];
	return limit === undefined || position === null || distanceKm(position, sample.position) <= limit * NAUTICAL_MILE_KM;
}

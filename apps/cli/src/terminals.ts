import type { Listing, Station } from "@skipwright/directory";
import type { Job } from "@skipwright/job";
import type { EmissionClass, ServiceId } from "@skipwright/rules";
import { coastAntenna, MEMORY, type Signal, type Terminal, vesselAntenna } from "@skipwright/sky";
import type { Position } from "@skipwright/units";

/** W at the aerial where the directory gives no power: what such stations commonly send. Common practice, no source; shown as assumed. */
export const ASSUMED_COAST_W: Readonly<Record<ServiceId, number>> = {
	"voice-working": 1_000,
	"dsc-watch": 1_000,
	"voice-weather": 1_000,
	fax: 4_000,
	navtex: 1_000,
	"nbdp-msi": 4_000,
	"rtty-weather": 5_000,
	volmet: 3_000,
	"time-signal": 5_000,
	"news-broadcast": 4_000,
};
/** W PEP of a yacht's set, and metres of its backstay, where nothing is said. Facts of the trade: practice, sections a and b. */
export const ASSUMED_SHIP_W = 150;
export const ASSUMED_BACKSTAY_M = 12;

/** How well each service must be copied to be of use. Own choice: speech as IMO asks for safety, everything else as soon as it can be read. */
export function gradeFor(emission: EmissionClass): Signal["grade"] {
	return emission === "J3E" || emission === "H3E" || emission === "R3E" ? "safety" : "just-usable";
}

export function signalOf({ hz, emission, service }: Pick<Listing, "hz" | "emission" | "service">): Signal {
	return { fMHz: hz / 1_000_000, emission, grade: gradeFor(emission), ...(service === "rtty-weather" ? { baud: 50 as const } : {}) };
}

export interface CoastPower {
	readonly powerW: number;
	readonly isAssumed: boolean;
}

export function coastPower(station: Pick<Station, "powerKw">, service: ServiceId): CoastPower {
	if (station.powerKw !== null) return { powerW: station.powerKw * 1_000, isAssumed: false };
	return { powerW: ASSUMED_COAST_W[service], isAssumed: true };
}

export function coastTerminal(position: Position, powerW: number): Terminal {
	return { position, antenna: coastAntenna(), powerW, manMade: MEMORY.manMadeClassOf.value.coastStation };
}

/** The vessel's end of every circuit, from the job's antenna and noise class. */
export function vesselTerminal({ antenna, noise }: Pick<Job, "antenna" | "noise">): Omit<Terminal, "position"> {
	const kind = antenna !== undefined && /whip/i.test(antenna.kind) ? "whip" : "backstay";
	return {
		antenna: vesselAntenna({ lengthM: antenna?.lengthM ?? ASSUMED_BACKSTAY_M, kind }),
		powerW: ASSUMED_SHIP_W,
		manMade: noise === "quiet-rural" ? "quietRural" : noise,
	};
}

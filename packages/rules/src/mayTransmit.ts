import type { AllocationService, Region, Spectrum } from "./types.ts";

export interface ServiceHere {
	readonly service: AllocationService;
	readonly covers: "wholly" | "partly";
	/** Shared with, or secondary to, another service somewhere in the spectrum. */
	readonly shared: boolean;
	readonly confidence: "verified" | "memory";
	readonly notes: readonly string[];
}

export interface RegionRights {
	readonly region: Region;
	readonly services: readonly ServiceHere[];
	/**
	 * For a ship station: `yes` wholly in maritime bands; `shared` the same, at least partly shared with other services;
	 * `national` wholly in mobile bands below 4 MHz, where an administration may assign ship frequencies; `no` otherwise.
	 */
	readonly ship: "yes" | "shared" | "national" | "no";
	/** For a licensed amateur: wholly in amateur bands. */
	readonly amateur: boolean;
	readonly sentence: string;
}

/** Who may transmit on this spectrum, Region by Region (one Region, or all three for null). */
export function mayTransmit(_spectrum: Spectrum, _region: Region | null): readonly RegionRights[] {
	throw new Error("not built yet");
}

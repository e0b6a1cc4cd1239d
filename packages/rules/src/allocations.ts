import type { Allocation, AllocationService, Region, Spectrum } from "./types.ts";

export const REGIONS: readonly Region[] = [1, 2, 3];

/** Service bands of RR Article 5 that matter on board, lowest first. */
export function allocations(): readonly Allocation[] {
	throw new Error("not built yet");
}

/** Allocations that share spectrum with `spectrum`, in one Region or (null) in any. */
export function allocationsAt(_spectrum: Spectrum, _region: Region | null): readonly Allocation[] {
	throw new Error("not built yet");
}

/** How much of `spectrum` the allocations to `services` together cover in a Region. */
export function coverage(_spectrum: Spectrum, _region: Region, _services: readonly AllocationService[]): "wholly" | "partly" | "not" {
	throw new Error("not built yet");
}

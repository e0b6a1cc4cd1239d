import { MEMORY } from "./fromMemory.ts";

const { e, f2Near, f2Far, nearUpToKm } = MEMORY.aboveMuf.value;

/** dB lost by a mode of the E layer above its basic MUF, L_m of ITU-R P.533; 0 up to it. */
export function eAboveMufDb(fMHz: number, mufMHz: number): number {
	if (fMHz <= mufMHz) return 0;
	return Math.min(e.times * Math.sqrt(fMHz / mufMHz - 1) + e.plus, e.most);
}

/** The same by the F2 layer. */
export function f2AboveMufDb(fMHz: number, mufMHz: number, pathKm: number): number {
	if (fMHz <= mufMHz) return 0;
	const excess = fMHz / mufMHz - 1;
	if (pathKm <= nearUpToKm) return Math.min(f2Near.times * Math.sqrt(excess) + f2Near.plus, f2Near.most);
	return Math.min(f2Far.times * excess + f2Far.plus, f2Far.most);
}

import type { Profile } from "@skipwright/set";

type Scan = NonNullable<Profile["scan"]>;

/**
 * Milliseconds of a call that must fall into one dwell before the set stops, or, where it stops on nothing, before a listener notices.
 * Assumed, no source: never longer than the dwell.
 */
export const NOTICE_MS: Readonly<Record<Scan["stopsOn"], number>> = { squelch: 100, speech: 500, nothing: 1_000 };

/** What else goes on while a block is scanned. */
export interface ScanTraffic {
	/** Chance, 0 to 1, that a place is found busy with something else when the scan comes by, each time anew. Default 0. */
	readonly busyShare?: number;
	/** Seconds that such traffic goes on for once the scan has come to it. Default 10, assumed. */
	readonly busyS?: number;
	/** Milliseconds, in place of `NOTICE_MS`. */
	readonly noticeMs?: number;
}

const BUSY_S = 10;

/**
 * Seconds that the scan waits on a place that it finds busy, beside the dwell: as long as the traffic lasts and until the scan goes on, or the
 * longest wait if that is over before. A set that stops on nothing never waits.
 */
export function stopS({ stopsOn, holdMs, resumeMs }: Scan, busyS = BUSY_S): number {
	if (stopsOn === "nothing") return 0;
	return holdMs > 0 && holdMs < busyS * 1_000 ? holdMs / 1_000 : busyS + resumeMs / 1_000;
}

/** Mean seconds from one visit to a place that is itself quiet to the next: the dwell on each place swept, and the waits on the others. */
export function revisitS(scan: Scan, places: number, { busyShare = 0, busyS }: ScanTraffic = {}): number {
	return (scan.dwellMs / 1_000) * places + busyShare * stopS(scan, busyS) * (places - 1);
}

/**
 * Chance that a scan of so many places catches a call of `callS` seconds that begins at a random moment on a random one of them. It is caught
 * if it fills at least the notice time n of one dwell d on its place. With the time C from a visit to the next, the beginnings that are
 * caught within it are those up to d - n after the visit and those less than `callS` - n before the next: min(C, d + callS - 2n) of C in all
 * if the call is no shorter than n. C is the dwells and, for each of the other places by itself, a wait or none; over many rounds the chance
 * is mean min(C, d + callS - 2n) / mean C (renewal-reward theorem). A single place is never left.
 */
export function catchChance(scan: Scan, places: number, callS: number, traffic: ScanTraffic = {}): number {
	const { busyShare = 0, busyS, noticeMs = NOTICE_MS[scan.stopsOn] } = traffic;
	const dwellS = scan.dwellMs / 1_000;
	const noticeS = Math.min(dwellS, noticeMs / 1_000);
	if (callS < noticeS || places < 1) return 0;
	if (places === 1) return 1;
	const reachS = dwellS + callS - 2 * noticeS;
	const waitS = stopS(scan, busyS);
	let caught = 0;
	for (const [waits, chance] of waitChances(places - 1, busyShare).entries()) {
		caught += chance * Math.min(dwellS * places + waits * waitS, reachS);
	}
	return caught / revisitS(scan, places, traffic);
}

/** Chances of 0, 1, ... of so many places being busy (binomial): from the likeliest both ways, so that nothing is lost to rounding. */
function waitChances(places: number, share: number): readonly number[] {
	const chances: number[] = Array.from({ length: places + 1 }, () => 0);
	const likeliest = Math.min(places, Math.floor((places + 1) * share));
	chances[likeliest] = 1;
	if (share > 0 && share < 1) {
		const odds = share / (1 - share);
		for (let k = likeliest; k < places; k++) chances[k + 1] = (chances[k]! * (places - k) * odds) / (k + 1);
		for (let k = likeliest; k > 0; k--) chances[k - 1] = (chances[k]! * k) / ((places - k + 1) * odds);
	}
	const sum = chances.reduce((total, chance) => total + chance, 0);
	return chances.map((chance) => chance / sum);
}

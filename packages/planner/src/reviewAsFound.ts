import { guardsAt } from "@skipwright/rules";
import type { Finding, FindingCode, Row } from "@skipwright/set";
import { type Hz, hz } from "@skipwright/units";
import { contentKey } from "./contentKey.ts";

/** A row of the list as found that may stay at its place, perhaps mended. */
export interface StandingRow {
	/** What is to stand there. */
	readonly row: Row;
	/** What becomes of the tag: kept, cut to what the set shows, or made anew because another place has it. */
	readonly tag: "keep" | "cut" | "new";
	/** What was mended and why, or "". */
	readonly mended: string;
	/** It hears what it is for, but badly: another mode or sideband is better. */
	readonly poor: boolean;
}

/** A row that cannot stay. */
export interface WrongRow {
	readonly row: Row;
	readonly why: string;
	/** False where another row stands at that place, or the set has no such place. */
	readonly freesPlace: boolean;
	/** The figure itself is a slip of the fingers, so what was meant may lie anywhere in the band. */
	readonly slipped: boolean;
}

export interface AsFoundReview {
	readonly standing: readonly StandingRow[];
	readonly wrong: readonly WrongRow[];
}

type Check = (rows: readonly Row[]) => readonly Finding[];

/** The place itself is wrong, whatever it holds. */
const NO_PLACE: readonly FindingCode[] = ["place-out-of-range", "place-duplicate"];
/** Mended by not sending: listening there does no harm. */
const SENDS_WRONG: readonly FindingCode[] = [
	"pair-broken",
	"distress-used-as-working",
	"amateur-without-licence",
	"amateur-other-region",
	"transmit-on-broadcast",
	"transmit-outside-service",
];

/** As a `mind`: a time signal on USB, a chart on LSB. */
const POOR: readonly FindingCode[] = ["wrong-mode", "wrong-sideband"];

/**
 * What of the list as found may stay. Rows without a stop or fix stay as they are. Some slips have a mend that is right whenever it passes
 * the checks: sides exchanged back, assigned figures made carriers, the other sideband, sending taken off. The rest is wrong.
 */
export function reviewAsFound(rows: readonly Row[], check: Check): AsFoundReview {
	const findings = Map.groupBy(check(rows), ({ line }) => line);
	const standing: StandingRow[] = [];
	const wrong: WrongRow[] = [];
	for (const row of rows) {
		const all = findings.get(row.line) ?? [];
		const bad = all.filter(({ severity }) => severity !== "mind");
		const mend = mended(row, bad);
		if (mend === null) wrong.push(wrongRow(row, bad));
		else
			standing.push({
				row: mend,
				tag: tagFate(all),
				mended: mend === row ? "" : whyOf(bad),
				poor: all.some(({ code }) => POOR.includes(code)),
			});
	}
	return recheck(standing, wrong, check);
}

function wrongRow(row: Row, bad: readonly Finding[]): WrongRow {
	const has = (codes: readonly FindingCode[]) => bad.some(({ code }) => codes.includes(code));
	return { row, why: whyOf(bad), freesPlace: !has(NO_PLACE), slipped: has(["near-miss"]) };
}

function tagFate(findings: readonly Finding[]): StandingRow["tag"] {
	if (findings.some(({ code }) => code === "tag-duplicate")) return "new";
	return findings.some(({ code }) => code === "tag-too-long") ? "cut" : "keep";
}

/** Hz. RR Appendix 17 Part B Section I: assigned = carrier + 1.4 kHz. */
const ASSIGNED_OFFSET_HZ = 1_400;

/** The row as it may stand, the same object where nothing needs mending; null where nothing helps. */
function mended(row: Row, bad: readonly Finding[]): Row | null {
	let mend: Row | null = row;
	for (const { code } of bad) {
		if (mend === null) return null;
		if (code !== "tag-too-long") mend = mendOf(mend, code);
	}
	return mend;
}

function mendOf(row: Row, code: FindingCode): Row | null {
	const { receive, transmit, mode } = row;
	if (code === "pair-swapped" && transmit !== null) return { ...row, receive: transmit, transmit: receive };
	if (code === "assigned-as-carrier" && receive > ASSIGNED_OFFSET_HZ && (transmit ?? receive) > ASSIGNED_OFFSET_HZ) {
		const carrier = (assigned: Hz) => hz(assigned - ASSIGNED_OFFSET_HZ);
		return { ...row, receive: carrier(receive), transmit: transmit === null ? null : carrier(transmit) };
	}
	if (code === "wrong-sideband" && (mode === "USB" || mode === "LSB")) return { ...row, mode: mode === "USB" ? "LSB" : "USB" };
	// another place holds the guard carrier under a name that says so
	if (SENDS_WRONG.includes(code) && !guardsAt(receive).some(({ required }) => required)) return { ...row, transmit: null };
	return null;
}

/** Mended rows stand only if nothing is wrong with them then, and no other row of the bank holds the same. */
function recheck(standing: readonly StandingRow[], wrong: readonly WrongRow[], check: Check): AsFoundReview {
	const findings = check(standing.map(({ row }) => row)).filter(({ severity, code }) => severity !== "mind" && code !== "tag-too-long");
	const bad = Map.groupBy(findings, ({ line }) => line);
	const held = new Set(standing.filter(({ mended: mend }) => mend === "").map(({ row }) => keyOf(row)));
	const good: StandingRow[] = [];
	const failed: WrongRow[] = [];
	for (const one of standing) {
		const faults = bad.get(one.row.line) ?? [];
		if (one.mended === "") good.push(one);
		else if (faults.length > 0) failed.push(wrongRow(one.row, faults));
		else if (held.has(keyOf(one.row)))
			failed.push({ ...wrongRow(one.row, []), why: `${one.mended}; mended it would repeat another place` });
		else good.push(one);
		if (one.mended !== "") held.add(keyOf(one.row));
	}
	return { standing: good, wrong: [...wrong, ...failed] };
}

function keyOf(row: Row): string {
	return `${row.bank} ${contentKey(row)}`;
}

function whyOf(findings: readonly Finding[]): string {
	return findings.map(({ code, message }) => `${code}: ${message}`).join("; ");
}

import type { Directory } from "@skipwright/directory";
import { guards, type Region } from "@skipwright/rules";
import { formatKhz, type IsoDate } from "@skipwright/units";
import { listFinding, rowFinding } from "./checks/findings.ts";
import { indexDials } from "./checks/knownDials.ts";
import { blockNumber, limitFindings, repeatFindings } from "./checks/listChecks.ts";
import { isTuned, type Match, matchRow } from "./checks/matchRow.ts";
import { pairState } from "./checks/pairs.ts";
import { checkRow } from "./checks/rowChecks.ts";
import type { Profile } from "./profile.ts";
import { finestStep, inRange } from "./tuning.ts";
import type { Finding, Row } from "./types.ts";

export interface CheckOptions {
	readonly profile: Profile;
	/** The directory in force, with the owner's own listings added. */
	readonly directory: Directory;
	/** The day for which listings are judged closed or stale. */
	readonly on: IsoDate;
	/** null: all three Regions are looked at and differences are only a `mind`. */
	readonly region: Region | null;
	readonly amateurLicence: boolean;
}

/** Hz. How far a dial may stand from what it is taken for, unless half the set's finest step is more. */
const MATCH_HZ = 50;

/**
 * Checks a list of places, as found, planned or as left, against the Radio Regulations, the directory and the set.
 * Findings come in the order of the lines, those about the whole list last. Codes and definitions: docs/findings.md.
 */
export function checkList(rows: readonly Row[], options: CheckOptions): readonly Finding[] {
	const { profile, directory, on, region, amateurLicence } = options;
	const convention = profile.modes;
	const index = indexDials(convention, directory, on);
	const toleranceHz = Math.max(MATCH_HZ, finestStep(profile) / 2);
	const context = { profile, convention, directory, index, toleranceHz, region, amateurLicence, on };
	const matches = new Map(rows.map((row) => [row, matchRow(row, index, toleranceHz)]));
	const repeats = repeatFindings(rows, profile, (row) => guardOf(matches.get(row)) !== null);
	const mixed = mixedBlocks(rows, profile, matches);
	const findings = rows.flatMap((row) => {
		const match = matches.get(row) ?? { best: null, equals: [], fit: null };
		return [
			...checkRow(row, match, pairState(row, index, toleranceHz), context),
			...limitFindings(row, profile, match.best?.right ?? null),
			...(repeats.get(row) ?? []),
			...(mixed.get(row) ?? []),
		];
	});
	return [...findings, ...missingGuards(matches, profile)];
}

function guardOf(match: Match | undefined): string | null {
	return match?.equals.find(({ known }) => known.guard !== null)?.known.name ?? null;
}

/** What a place is for, as far as scanning goes: speech that may come at any time, or what needs a mode or a time of its own. */
type ScanKind = "speech" | "other" | null;

function scanKind(row: Row, match: Match | undefined): ScanKind {
	const known = match?.best?.known;
	if (row.mode === "FSK" || row.mode === "CW") return "other";
	if (known === undefined || !isTuned(match?.fit ?? null)) return row.transmit === null ? null : "speech";
	// a net that the owner only listens to is still speech
	const isScheduled = known.listing?.receiveOnly === true && known.listing.service !== "voice-working" && row.transmit === null;
	return isScheduled || known.published.emission !== "J3E" ? "other" : "speech";
}

/** One finding a block that mixes the two kinds, at the first place of the kind that is the fewer there. */
function mixedBlocks(rows: readonly Row[], profile: Profile, matches: ReadonlyMap<Row, Match>): ReadonlyMap<Row, readonly Finding[]> {
	if (profile.scan === null) return new Map();
	const blocks = Map.groupBy(
		rows.filter((row) => blockNumber(row, profile) >= 0 && scanKind(row, matches.get(row)) !== null),
		(row) => `${row.bank} ${blockNumber(row, profile)}`,
	);
	const out = new Map<Row, readonly Finding[]>();
	for (const block of blocks.values()) {
		const ordered = block.toSorted((a, b) => a.place - b.place || a.line - b.line);
		const speech = ordered.filter((row) => scanKind(row, matches.get(row)) === "speech");
		const others = ordered.filter((row) => scanKind(row, matches.get(row)) === "other");
		const odd = others.length <= speech.length ? others[0] : speech[0];
		if (odd === undefined || speech.length === 0 || others.length === 0) continue;
		const what = `this block is scanned as one and holds ${speech.length} speech and ${others.length} data, chart, time or scheduled places`;
		out.set(odd, [rowFinding(odd, "block-mixed", "mind", what, "move the fewer kind to a block of its own")]);
	}
	return out;
}

function missingGuards(matches: ReadonlyMap<Row, Match>, profile: Profile): readonly Finding[] {
	const held = new Set<number>();
	const canSend = (dialHz: number) => inRange(profile, dialHz, "transmit");
	for (const [row, match] of matches) {
		if (!isTuned(match.fit)) continue;
		for (const { known } of match.equals) {
			if (known.guard !== null && (row.transmit === row.receive || !canSend(known.guard.hz))) held.add(known.guard.hz);
		}
	}
	return guards()
		.filter(({ required, hz }) => required && inRange(profile, hz, "receive") && !held.has(hz))
		.map(({ hz, label }) => {
			const figure = formatKhz(hz);
			const both = canSend(hz) ? "both ways" : "receive";
			return listFinding(
				"guard-missing",
				"fix",
				`no place holds ${figure} kHz (${label})`,
				`key ${figure} kHz USB ${both}, tag DIST ${figure}`,
			);
		});
}

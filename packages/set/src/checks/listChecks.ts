import { formatKhz, type Hz } from "@skipwright/units";
import { placeKey } from "../placeKey.ts";
import type { Profile } from "../profile.ts";
import { tagProblem } from "../tagFits.ts";
import { canTune, type Direction, finestStep, inRange, nearestDial } from "../tuning.ts";
import type { Finding, Row } from "../types.ts";
import type { ExpectedDial } from "./expectedDials.ts";
import { rowFinding } from "./findings.ts";
import { residueText } from "./settable.ts";
import { shortTag } from "./shortTag.ts";

/**
 * What a row breaks of the set's own limits: tuning, tag, place.
 * @param right what the set should read for what the row receives, where that is known
 */
export function limitFindings(row: Row, profile: Profile, right: ExpectedDial["right"]): readonly Finding[] {
	return [tuning(row, profile, right), tag(row, profile), placeRange(row, profile)].filter((finding) => finding !== null);
}

function tuning(row: Row, profile: Profile, right: ExpectedDial["right"]): Finding | null {
	if (profile.modes[row.mode] === undefined) {
		const has = `its modes are ${Object.keys(profile.modes).join(", ")}`;
		const nearest = right === null ? null : nearestDial(profile, right.dialHz, "receive");
		const instead =
			nearest === null ? "" : `: ${right?.mode} ${formatKhz(nearest.dialHz)} kHz, ${residueText(nearest.residueHz)} left over`;
		return rowFinding(row, "cannot-tune", "stop", `the set has no mode ${row.mode}`, `${has}${instead}`);
	}
	const sides: readonly (readonly [Direction, Hz | null])[] = [
		["receive", row.receive],
		["transmit", row.transmit],
	];
	const faults = sides.flatMap(([side, dialHz]) => (dialHz === null ? [] : tuningFault(side, dialHz, profile)));
	if (faults.length === 0) return null;
	return rowFinding(row, "cannot-tune", "stop", faults.map(({ what }) => what).join("; "), faults.map(({ remedy }) => remedy).join("; "));
}

function tuningFault(side: Direction, dialHz: Hz, profile: Profile): readonly { what: string; remedy: string }[] {
	if (canTune(profile, dialHz, side)) return [];
	const nearest = nearestDial(profile, dialHz, side);
	if (nearest === null) return [{ what: "the set cannot transmit", remedy: "make it receive only" }];
	const why = inRange(profile, dialHz, side)
		? `is no multiple of the set's ${finestStep(profile)} Hz step`
		: `is outside what the set can ${side}`;
	const remedy = `${side} ${formatKhz(nearest.dialHz)} kHz is the nearest, ${residueText(nearest.residueHz)} left over`;
	return [{ what: `${side} ${formatKhz(dialHz)} kHz ${why}`, remedy }];
}

function tag(row: Row, profile: Profile): Finding | null {
	const problem = tagProblem(profile, row.tag);
	if (problem === null) return null;
	const figure = formatKhz(row.receive);
	const example = [row.tag, figure].map((text) => shortTag(profile, text)).find((text) => text !== "");
	const remedy = example === undefined ? `use up to ${profile.tag.length} of ${profile.tag.characters}` : `for example "${example}"`;
	return rowFinding(row, "tag-too-long", "fix", `tag "${row.tag}": ${problem}`, remedy);
}

function placeRange(row: Row, { banks }: Profile): Finding | null {
	const bank = banks.find(({ id }) => id === row.bank);
	if (bank === undefined) {
		const has = banks.map(({ id, places }) => `${id} (1 to ${places})`).join(", ");
		return rowFinding(row, "place-out-of-range", "stop", `the set has no bank ${row.bank}`, `its banks are ${has}`);
	}
	if (row.place >= 1 && row.place <= bank.places) return null;
	return rowFinding(
		row,
		"place-out-of-range",
		"stop",
		`place ${row.place} is not in bank ${row.bank}`,
		`use a place from 1 to ${bank.places}`,
	);
}

/** Findings about rows that repeat earlier ones, by line. */
export function repeatFindings(
	rows: readonly Row[],
	profile: Profile,
	isGuard: (row: Row) => boolean,
): ReadonlyMap<Row, readonly Finding[]> {
	const places = new Map<string, Row>();
	const tags = new Map<string, { readonly first: Row; readonly content: string; other: Row | null }>();
	const contents = new Map<string, Row>();
	const found = new Map<Row, Finding[]>();
	for (const row of rows) {
		const out: Finding[] = [];
		const content = `${row.bank} ${row.receive} ${row.transmit} ${row.mode}`;
		const blockOfRow = blockNumber(row, profile);
		const samePlace = keep(places, placeKey(row), row);
		if (samePlace !== null) {
			const what = `${row.bank} ${row.place} is already used on line ${samePlace.line}`;
			out.push(rowFinding(row, "place-duplicate", "stop", what, "give one of the two another place"));
		}
		const contentKey = isGuard(row) ? `${content} block ${blockOfRow}` : content;
		const same = keep(contents, contentKey, row);
		if (same !== null) {
			const what = `same receive, transmit and mode as ${same.bank} ${same.place} (line ${same.line})`;
			out.push(rowFinding(row, "duplicate-entry", "mind", what, "free one of the two places"));
		}
		const sameTag = otherUnderTag(tags, row, content);
		if (sameTag !== null) {
			const what = `tag "${row.tag}" also stands at ${sameTag.bank} ${sameTag.place} (line ${sameTag.line})`;
			out.push(rowFinding(row, "tag-duplicate", "mind", what, "give the two different tags"));
		}
		if (out.length > 0) found.set(row, out);
	}
	return found;
}

/** The first earlier row of the bank with this row's tag and another content; keeps this one. */
function otherUnderTag(
	tags: Map<string, { readonly first: Row; readonly content: string; other: Row | null }>,
	row: Row,
	content: string,
): Row | null {
	const name = row.tag.trim().toUpperCase();
	if (name === "") return null;
	const key = `${row.bank} ${name}`;
	const seen = tags.get(key);
	if (seen === undefined) {
		tags.set(key, { first: row, content, other: null });
		return null;
	}
	if (seen.content === content) return seen.other;
	seen.other ??= row;
	return seen.first;
}

/** The row that already holds `key`, or null after keeping this one. */
function keep(seen: Map<string, Row>, key: string, row: Row): Row | null {
	const earlier = seen.get(key);
	if (earlier === undefined) seen.set(key, row);
	return earlier ?? null;
}

/** 0 for places 1 to blockLength, and so on; -1 outside the set. */
export function blockNumber(row: Row, profile: Profile): number {
	const bank = profile.banks.find(({ id }) => id === row.bank);
	if (bank === undefined || row.place < 1 || row.place > bank.places) return -1;
	return Math.floor((row.place - 1) / bank.blockLength);
}

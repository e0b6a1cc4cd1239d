import { formatKhz, type Hz, hz } from "@skipwright/units";
import type { Profile } from "../profile.ts";
import type { Finding, Row } from "../types.ts";
import { rowFinding } from "./findings.ts";

const khz = (value: number) => formatKhz(hz(value));

/** What a row breaks of the set's own limits: tuning, tag, place. */
export function limitFindings(row: Row, profile: Profile): readonly Finding[] {
	return [tuning(row, profile), tag(row, profile), placeRange(row, profile)].filter((finding) => finding !== null);
}

function tuning(row: Row, profile: Profile): Finding | null {
	if (profile.modes[row.mode] === undefined) {
		const has = Object.keys(profile.modes).join(", ");
		return rowFinding(row, "cannot-tune", "stop", `the set has no mode ${row.mode}`, `its modes are ${has}`);
	}
	const sides: readonly (readonly ["receive" | "transmit", Hz | null])[] = [
		["receive", row.receive],
		["transmit", row.transmit],
	];
	const faults = sides.flatMap(([side, dialHz]) => (dialHz === null ? [] : tuningFault(side, dialHz, profile)));
	if (faults.length === 0) return null;
	return rowFinding(row, "cannot-tune", "stop", faults.map(({ what }) => what).join("; "), faults.map(({ remedy }) => remedy).join("; "));
}

function tuningFault(side: "receive" | "transmit", dialHz: Hz, profile: Profile): readonly { what: string; remedy: string }[] {
	const ranges = profile[side];
	const step = Math.min(...profile.tuningStepsHz);
	const isInside = ranges.some(({ fromHz, toHz }) => dialHz >= fromHz && dialHz <= toHz);
	if (isInside && dialHz % step === 0) return [];
	if (ranges.length === 0) return [{ what: "the set cannot transmit", remedy: "make it receive only" }];
	const nearest = nearestDial(dialHz, step, ranges);
	const why = isInside ? `is no multiple of the set's ${step} Hz step` : `is outside what the set can ${side}`;
	const leftOver = `${side} ${khz(nearest)} kHz is the nearest, ${dialHz - nearest} Hz left over`;
	return [{ what: `${side} ${khz(dialHz)} kHz ${why}`, remedy: leftOver }];
}

function nearestDial(dialHz: number, step: number, ranges: readonly { readonly fromHz: number; readonly toHz: number }[]): number {
	const inRange = ranges.map(({ fromHz, toHz }) => {
		const lowest = Math.ceil(fromHz / step) * step;
		const highest = Math.floor(toHz / step) * step;
		return Math.min(highest, Math.max(lowest, Math.round(dialHz / step) * step));
	});
	return inRange.reduce((best, dial) => (Math.abs(dial - dialHz) < Math.abs(best - dialHz) ? dial : best));
}

function tag(row: Row, { tag: limit }: Profile): Finding | null {
	const characters = [...row.tag];
	const unknown = [...new Set(characters.filter((character) => !limit.characters.includes(character)))];
	const faults = [
		...(characters.length > limit.length ? [`${characters.length} characters, the set shows ${limit.length}`] : []),
		...(unknown.length > 0 ? [`the set cannot show ${unknown.join(" ")}`] : []),
	];
	if (faults.length === 0) return null;
	const fitted = characters.map((character) =>
		limit.characters.includes(character) ? character : upperIfShown(character, limit.characters),
	);
	const shown = fitted
		.filter((character) => limit.characters.includes(character))
		.slice(0, limit.length)
		.join("")
		.trim();
	return rowFinding(row, "tag-too-long", "fix", `tag "${row.tag}": ${faults.join("; ")}`, `for example "${shown}"`);
}

function upperIfShown(character: string, shown: string): string {
	const upper = character.toUpperCase();
	return shown.includes(upper) ? upper : character;
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
	const tags = new Map<string, Row>();
	const contents = new Map<string, Row>();
	const found = new Map<Row, Finding[]>();
	for (const row of rows) {
		const out: Finding[] = [];
		const content = `${row.bank} ${row.receive} ${row.transmit} ${row.mode}`;
		const blockOfRow = blockNumber(row, profile);
		const samePlace = keep(places, `${row.bank} ${row.place}`, row);
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
		const name = row.tag.trim().toUpperCase();
		const sameTag = name === "" ? null : keep(tags, `${row.bank} ${name}`, row);
		if (sameTag !== null && `${sameTag.bank} ${sameTag.receive} ${sameTag.transmit} ${sameTag.mode}` !== content) {
			const what = `tag "${row.tag}" also stands at ${sameTag.bank} ${sameTag.place} (line ${sameTag.line})`;
			out.push(rowFinding(row, "tag-duplicate", "mind", what, "give the two different tags"));
		}
		if (out.length > 0) found.set(row, out);
	}
	return found;
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

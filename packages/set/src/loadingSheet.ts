import type { Hz } from "@skipwright/units";
import { contentText } from "./compareLists.ts";
import { fewestTurns } from "./fewestTurns.ts";
import { keystrokes } from "./keystrokes.ts";
import { loadingTime } from "./loadingTime.ts";
import { orderTurns } from "./orderTurns.ts";
import { placeKey } from "./placeKey.ts";
import type { Profile } from "./profile.ts";
import { tuneUpPlaces } from "./tuneUpPlaces.ts";
import type { LoadingSheet, Row, SettingLine, SheetStep, Turn } from "./types.ts";

/** A place of the plan, with what it is for. */
export interface PlannedRow extends Row {
	readonly listing: string | null;
	/** Name for a person: station and service, or channel. */
	readonly what: string;
}

export interface LoadingSheetInput {
	readonly profile: Profile;
	/** What the set holds now; null: nothing, or not to be relied on (sets forget): everything is keyed. */
	readonly found: readonly Row[] | null;
	readonly planned: readonly PlannedRow[];
	readonly settings: readonly SettingLine[];
	/** Empty the places that hold something which is not in the plan. Default false: they are left alone. */
	readonly clearOthers?: boolean;
}

/**
 * The steps that turn what the set holds into the plan, by bank and place: places that hold what is wanted already are
 * skipped. Where the found list names a place more than once its last line counts.
 * @throws RangeError where the plan holds one place twice
 */
export function loadingSheet({ profile, found, planned, settings, clearOthers = false }: LoadingSheetInput): LoadingSheet {
	const held = new Map((found ?? []).map((row) => [placeKey(row), row]));
	const plan = new Map(planned.map((row) => [placeKey(row), row]));
	if (plan.size < planned.length) throw new RangeError(`Cannot key two contents into one place: ${twicePlanned(planned)}`);

	const inOrder = byPlace(profile);
	const writes = planned.filter((row) => !isHeld(row, held.get(placeKey(row)))).toSorted(inOrder);
	const others = clearOthers ? [...held.values()].filter((row) => !plan.has(placeKey(row)) && isPlaceOf(profile, row)) : [];
	const steps: SheetStep[] = [];
	// knob: turns are counted from here; null where it is not known
	let dial = held.get(placeKey(writes[0] ?? { bank: "", place: 0 }))?.receive ?? null;
	for (const row of [...writes, ...others].toSorted(inOrder)) {
		const before = held.get(placeKey(row));
		const order = steps.length + 1;
		const wanted = plan.get(placeKey(row));
		if (wanted === undefined) {
			steps.push(clearStep(order, row));
			continue;
		}
		steps.push(writeStep(profile, order, wanted, before ?? null, dial));
		dial = wanted.transmit ?? wanted.receive;
	}
	const { minutes, restsOn } = loadingTime(profile, steps, settings);
	return {
		steps,
		unchanged: planned.length - writes.length,
		fromBlank: found === null,
		settings,
		tuneUp: tuneUpPlaces(profile),
		minutes,
		minutesRestOn: restsOn,
	};
}

function twicePlanned(planned: readonly PlannedRow[]): string {
	const rows = [...Map.groupBy(planned, placeKey).values()].filter(({ length }) => length > 1);
	return rows.map(([row]) => `${row?.bank} ${row?.place}`).join(", ");
}

/** By the profile's order of banks, then by place; banks that the set has not come last, by name. */
function byPlace({ banks }: Profile): (a: Row, b: Row) => number {
	const rank = (bank: string) => {
		const index = banks.findIndex(({ id }) => id === bank);
		return index < 0 ? banks.length : index;
	};
	return (a, b) => rank(a.bank) - rank(b.bank) || (a.bank < b.bank ? -1 : a.bank > b.bank ? 1 : a.place - b.place);
}

function isPlaceOf({ banks }: Profile, { bank, place }: Row): boolean {
	return banks.some(({ id, places }) => id === bank && place >= 1 && place <= places);
}

function isHeld(wanted: Row, held: Row | undefined): boolean {
	return (
		held !== undefined &&
		held.receive === wanted.receive &&
		held.transmit === wanted.transmit &&
		held.mode === wanted.mode &&
		held.tag.trimEnd() === wanted.tag.trimEnd()
	);
}

function clearStep(order: number, { bank, place, ...held }: Row): SheetStep {
	return {
		order,
		action: "clear",
		bank,
		place,
		tag: "",
		receive: null,
		transmit: null,
		mode: null,
		receiveTurns: null,
		transmitTurns: null,
		receiveKeys: null,
		transmitKeys: null,
		before: contentText(held),
		listing: null,
		what: "clear this place",
	};
}

function writeStep(profile: Profile, order: number, wanted: PlannedRow, before: Row | null, dial: Hz | null): SheetStep {
	const { bank, place, tag, receive, transmit, mode, listing, what } = wanted;
	const twoFrequency = transmit !== null && transmit !== receive;
	return {
		order,
		action: "write",
		bank,
		place,
		tag,
		receive,
		transmit,
		mode,
		receiveTurns: dial === null ? null : turnsFor(profile, dial, receive),
		transmitTurns: twoFrequency ? turnsFor(profile, receive, transmit) : null,
		receiveKeys: keysFor(profile, receive),
		transmitKeys: twoFrequency ? keysFor(profile, transmit) : null,
		before: before === null ? "empty" : contentText(before),
		listing,
		what,
	};
}

function turnsFor(profile: Profile, from: Hz, to: Hz): readonly Turn[] | null {
	if (profile.entry === "keypad") return null;
	const turns = fewestTurns(from, to, profile.tuningStepsHz, profile.stepsCarry);
	if (turns === null || !profile.stepsCarry) return turns;
	// a transmit dial may lie outside what the set receives
	const fromHz = Math.min(from, to, ...profile.receive.map((range) => range.fromHz));
	const toHz = Math.max(from, to, ...profile.receive.map((range) => range.toHz));
	return orderTurns(from, turns, { fromHz, toHz });
}

function keysFor(profile: Profile, dialHz: Hz): readonly string[] | null {
	return profile.entry === "knob" ? null : keystrokes(profile, dialHz);
}

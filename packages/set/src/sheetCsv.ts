import { type Hz, writeCsv } from "@skipwright/units";
import type { Profile } from "./profile.ts";
import { dialText } from "./tuning.ts";
import { stepTurnsText } from "./turnsText.ts";
import type { LoadingSheet, SheetStep } from "./types.ts";

/**
 * The loading sheet as CSV, one line a step: `turns` for a knob, `keys` for a keypad, both for both; an empty `read_back` to fill
 * in. Receive only is spelled out. Dials stand as the set shows them.
 */
export function sheetCsv(sheet: LoadingSheet, profile: Profile): string {
	const columns = columnsOf(profile);
	return writeCsv(
		columns.map(([name]) => name),
		sheet.steps.map((step) => columns.map(([, cell]) => cell(step))),
	);
}

type Column = readonly [name: string, cell: (step: SheetStep) => string];

function columnsOf(profile: Profile): readonly Column[] {
	const dial = (value: Hz | null) => (value === null ? "" : dialText(profile, value));
	return [
		["order", ({ order }) => String(order)],
		["bank", ({ bank }) => bank],
		["place", ({ place }) => String(place)],
		["tag", ({ tag }) => tag],
		["receive_khz", ({ receive }) => dial(receive)],
		["transmit_khz", ({ action, transmit }) => (action === "write" && transmit === null ? "receive only" : dial(transmit))],
		["mode", ({ mode }) => mode ?? ""],
		...(profile.entry === "keypad" ? [] : [["turns", stepTurnsText] as Column]),
		...(profile.entry === "knob" ? [] : [["keys", keysText] as Column]),
		["before", ({ before }) => before],
		["what", ({ what }) => what],
		["listing", ({ listing }) => listing ?? ""],
		["read_back", () => ""],
	];
}

function keysText({ receiveKeys, transmitKeys }: SheetStep): string {
	const receive = receiveKeys?.join(" ") ?? "";
	return transmitKeys === null ? receive : `${receive}; transmit ${transmitKeys.join(" ")}`;
}

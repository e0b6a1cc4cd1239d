import type { DscCall, DscDistress, DscFrequency, DscMessage } from "./call.ts";
import {
	areaDigits,
	EMPTY,
	frequencyDigits,
	identityDigits,
	NO_POSITION,
	NO_TIME,
	POSITION_FOLLOWS,
	positionDigits,
	timeDigits,
} from "./callFields.ts";
import { CATEGORIES, ENDS, FIRST_TELECOMMANDS, FORMATS, NATURES, SECOND_TELECOMMANDS } from "./codeWords.ts";

/**
 * Symbols of a call: format specifier once, then to the end of sequence. `parseDsc` reads the same call from them.
 * @throws RangeError for a call that lacks a field of its format, or a value that its field cannot hold
 */
export function makeDsc(call: DscCall): readonly number[] {
	const end = call.end ?? lacking("an end of sequence");
	return [FORMATS.codeOf(call.format), ...bodySymbols(call), ...call.undecoded.map((symbol) => symbol ?? EMPTY), ENDS.codeOf(end)];
}

function lacking(what: string): never {
	throw new RangeError(`Cannot make this call: expected ${what}`);
}

function bodySymbols(call: DscCall): readonly number[] {
	switch (call.format) {
		case "distress alert":
			return [...identity(call.from, "an own identity"), ...afterTheShip(call.distress ?? lacking("what the distress is"))];
		case "all ships":
			return addressed(call, []);
		case "area":
			return addressed(call, symbolsOf(areaDigits(call.area ?? lacking("an area"))));
		case "group":
		case "individual":
		case "individual, automatic service":
			return addressed(call, identity(call.to, "an address"));
		default:
			return [];
	}
}

function addressed(call: DscCall, address: readonly number[]): readonly number[] {
	const { telecommand1, telecommand2, distress, message } = call;
	const head = [
		...address,
		CATEGORIES.codeOf(call.category ?? lacking("a category")),
		...identity(call.from, "an own identity"),
		FIRST_TELECOMMANDS.codeOf(telecommand1 ?? lacking("a first telecommand")),
	];
	if (distress !== null) {
		const ship = distress.ship === null ? new Array<number>(5).fill(EMPTY) : identity(distress.ship, "a ship in distress");
		return [...head, ...ship, ...afterTheShip(distress)];
	}
	const second = SECOND_TELECOMMANDS.codeOf(telecommand2 ?? lacking("a second telecommand"));
	return [...head, second, ...(message === null ? [] : messageSymbols(message))];
}

function afterTheShip({ nature, position, time, followOn }: DscDistress): readonly number[] {
	return [
		NATURES.codeOf(nature ?? lacking("a nature of distress")),
		...symbolsOf(position === null ? NO_POSITION : positionDigits(position)),
		...symbolsOf(time === null ? NO_TIME : timeDigits(time)),
		FIRST_TELECOMMANDS.codeOf(followOn ?? lacking("what follows on")),
	];
}

function messageSymbols(message: DscMessage): readonly number[] {
	if (message.kind === "frequencies") {
		const { receive, transmit } = message;
		const wide = [receive, transmit].find((field) => field !== null && frequencyDigits(field).length === 8) !== undefined;
		return [receive, transmit].flatMap((field) => frequencySymbols(field, wide));
	}
	const { position, time } = message;
	const digits = (position === null ? NO_POSITION : positionDigits(position)) + (time === null ? NO_TIME : timeDigits(time));
	return [POSITION_FOLLOWS, ...symbolsOf(digits)];
}

/** An empty field is as wide as the one beside it. */
function frequencySymbols(frequency: DscFrequency | null, isWide: boolean): readonly number[] {
	return frequency === null ? new Array<number>(isWide ? 4 : 3).fill(EMPTY) : symbolsOf(frequencyDigits(frequency));
}

function identity(digits: string | null, what: string): readonly number[] {
	return symbolsOf(identityDigits(digits ?? lacking(what)));
}

function symbolsOf(digits: string): readonly number[] {
	return Array.from({ length: digits.length / 2 }, (_, i) => Number(digits.slice(2 * i, 2 * i + 2)));
}

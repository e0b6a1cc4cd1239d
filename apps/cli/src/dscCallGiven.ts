import type { DscCall, DscDistress, DscFrequency } from "@skipwright/modem";
import { parseKhz, parsePosition } from "@skipwright/units";
import { UsageError } from "./context.ts";
import { given } from "./given.ts";

export interface DscCallFlags {
	readonly call: string;
	readonly to?: string;
	readonly from?: string;
	readonly category?: string;
	readonly khz?: string;
	readonly nature?: string;
	readonly at?: string;
	readonly time?: string;
	readonly training?: boolean;
}

/** Calls that can be made, by what they are for. */
export const CALLS = ["test", "test-answer", "position", "working", "group", "all-ships", "distress"] as const;

const NOTHING = { area: null, telecommand2: null, distress: null, message: null, undecoded: [] } as const;
/** Both frequency fields empty. */
const NO_FREQUENCIES = { kind: "frequencies", receive: null, transmit: null } as const;

/**
 * The call asked for. An alert of distress only for training on the bench.
 * @throws UsageError
 */
export function dscCallGiven(flags: DscCallFlags): DscCall {
	const kind = CALLS.find((call) => call === flags.call);
	if (kind === undefined) throw new UsageError(`cannot take --call ${flags.call}: expected ${CALLS.join(", ")}`);
	if (kind === "distress") return alert(flags);
	if (isAlarming(flags) && flags.training !== true) {
		throw new UsageError(
			`cannot make ${kind === "all-ships" ? "a call to all ships" : "an urgency call"}: for training on the bench alone, fed to no transmitter, add --training`,
		);
	}
	if (flags.category === "urgency" && kind.startsWith("test")) {
		throw new UsageError("cannot make a test call of urgency: a test is of safety");
	}
	const from = identity("--from", flags.from);
	const common = { ...NOTHING, from, telecommand2: "no information", message: NO_FREQUENCIES } as const;
	switch (kind) {
		case "test":
		case "position":
			return {
				...common,
				format: "individual",
				to: identity("--to", flags.to),
				category: category(flags, "safety"),
				telecommand1: kind,
				end: "acknowledgement asked",
			};
		case "test-answer":
			return {
				...common,
				format: "individual",
				to: identity("--to", flags.to),
				category: category(flags, "safety"),
				telecommand1: "test",
				end: "acknowledgement given",
			};
		case "working":
			return {
				...common,
				format: "individual",
				to: identity("--to", flags.to),
				category: category(flags, "routine"),
				telecommand1: "J3E telephony",
				message: onFrequency(flags),
				end: "acknowledgement asked",
			};
		case "group":
			return {
				...common,
				format: "group",
				to: identity("--to", flags.to),
				category: category(flags, "routine"),
				telecommand1: "J3E telephony",
				message: onFrequency(flags),
				end: "none",
			};
		case "all-ships":
			return {
				...common,
				format: "all ships",
				to: null,
				category: category(flags, "safety"),
				telecommand1: "J3E telephony",
				message: onFrequency(flags),
				end: "none",
			};
	}
}

/** Whether others would act on it, were it sent: distress, urgency, all ships. */
export function isAlarming({ call, category }: DscCallFlags): boolean {
	return call === "distress" || call === "all-ships" || category === "urgency";
}

function alert(flags: DscCallFlags): DscCall {
	if (flags.training !== true) {
		throw new UsageError(
			"cannot make a distress alert: never test with the distress function. For training on the bench alone, fed to no transmitter, add --training",
		);
	}
	return {
		...NOTHING,
		format: "distress alert",
		to: null,
		category: null,
		from: identity("--from", flags.from),
		telecommand1: null,
		distress: {
			ship: null,
			nature: (flags.nature ?? "undesignated") as DscDistress["nature"], // the maker refuses what the list does not hold
			position: flags.at === undefined ? null : given("--at", flags.at, parsePosition),
			time: flags.time ?? null,
			followOn: "J3E telephony",
		},
		end: "none",
	};
}

function identity(flag: string, digits: string | undefined): string {
	if (digits === undefined) throw new UsageError(`cannot make this call without ${flag}: nine digits`);
	if (/^\d{9}$/.test(digits)) return digits;
	throw new UsageError(`cannot take ${flag} ${digits}: expected nine digits`);
}

function category({ category: word }: DscCallFlags, usual: "routine" | "safety"): "routine" | "safety" | "urgency" {
	if (word === undefined) return usual;
	if (word === "routine" || word === "safety" || word === "urgency") return word;
	throw new UsageError(`cannot take --category ${word}: expected routine, safety, urgency`);
}

function onFrequency({ khz }: DscCallFlags): DscCall["message"] {
	if (khz === undefined) return NO_FREQUENCIES;
	const frequency: DscFrequency = { hz: given("--khz", khz, parseKhz) };
	return { kind: "frequencies", receive: frequency, transmit: frequency };
}

import { MID_CSV, MMSI_FORMS_CSV } from "./data.gen.ts";
import { once, shippedRows } from "./shippedTable.ts";

const FORM_IDS = [
	"ship",
	"group",
	"coast",
	"all-coast",
	"sar-aircraft",
	"aid-to-navigation",
	"craft-of-ship",
	"handheld",
	"ais-sart",
	"man-overboard",
	"epirb-ais",
	"autonomous-device",
] as const;
export type MmsiFormId = (typeof FORM_IDS)[number];

/** A form of identity (ITU-R M.585). */
export interface MmsiForm {
	readonly id: MmsiFormId;
	/** As the Recommendation writes it, MIDXXXXXX and the like. */
	readonly form: string;
	readonly pattern: RegExp;
	readonly use: string;
	/** Digits before the MID; null when the form has none. */
	readonly midAt: number | null;
	readonly confidence: "verified" | "memory";
	readonly note: string;
}

export type MmsiProblem = "not-digits" | "wrong-length" | "unknown-form" | "mid-not-allocated" | "not-a-ship" | "placeholder";

export interface MmsiReading {
	/** Digits alone, as read. */
	readonly digits: string;
	readonly form: MmsiFormId | null;
	/** What the form is for, in words; "" when unknown. */
	readonly use: string;
	readonly mid: string | null;
	readonly administration: string | null;
	readonly problems: readonly { readonly code: MmsiProblem; readonly message: string }[];
	/** Remarks that are no fault. */
	readonly notes: readonly string[];
}

const FORM_COLUMNS = ["id", "form", "pattern", "use", "mid_at", "confidence", "source", "note"];
const MID_COLUMNS = ["mid", "administration", "confidence", "source"];

const forms = once(() =>
	shippedRows("mmsi-forms.csv", MMSI_FORMS_CSV, FORM_COLUMNS).map(
		(row): MmsiForm => ({
			id: row.oneOf("id", FORM_IDS),
			form: row.text("form"),
			pattern: new RegExp(`^${row.text("pattern")}$`),
			use: row.text("use"),
			midAt: row.wholeOrNull("mid_at"),
			confidence: row.confidence(),
			note: row.text("note"),
		}),
	),
);

const mids = once(() => new Map(shippedRows("mid.csv", MID_CSV, MID_COLUMNS).map((row) => [row.text("mid"), row.text("administration")])));

export function mmsiForms(): readonly MmsiForm[] {
	return forms();
}

/** The administration behind three identification digits, or null when they are not allocated (in the table of this package). */
export function midAdministration(mid: string): string | null {
	return mids().get(mid) ?? null;
}

/**
 * Reads a maritime identity; spaces, dots and hyphens between digits are passed over.
 * With `use` "own" (a ship's own identity) any form but a ship's is a problem.
 */
export function mmsi(text: string, use: "any" | "own" = "any"): MmsiReading {
	const digits = text.replace(/[\s.-]/g, "");
	const form = forms().find(({ pattern }) => pattern.test(digits)) ?? null;
	const midAt = form?.midAt ?? null;
	const mid = midAt === null ? null : digits.slice(midAt, midAt + 3);
	const administration = mid === null ? null : midAdministration(mid);
	return {
		digits,
		form: form?.id ?? null,
		use: form?.use ?? "",
		mid,
		administration,
		problems: [
			...shapeProblems(digits, form),
			...midProblems(mid, administration),
			...ownProblems(form, use),
			...placeholderProblems(digits, form),
		],
		notes: trailingNotes(digits, form),
	};
}

type Problems = MmsiReading["problems"];

function shapeProblems(digits: string, form: MmsiForm | null): Problems {
	if (!/^\d*$/.test(digits)) return [{ code: "not-digits", message: `expected nine digits, got "${digits}"` }];
	if (digits.length === 10 && digits.endsWith("0")) {
		return [{ code: "wrong-length", message: "ten digits: a call on the air carries a 0 after the nine that are keyed in" }];
	}
	if (digits.length !== 9) return [{ code: "wrong-length", message: `expected nine digits, got ${digits.length}` }];
	if (form === null) return [{ code: "unknown-form", message: `${digits} has the form of no kind of station (ITU-R M.585)` }];
	return [];
}

function midProblems(mid: string | null, administration: string | null): Problems {
	if (mid === null || administration !== null) return [];
	return [{ code: "mid-not-allocated", message: `${mid} is allocated to no administration in the table used here; check a current one` }];
}

function ownProblems(form: MmsiForm | null, use: "any" | "own"): Problems {
	if (use === "any" || form === null || form.id === "ship") return [];
	return [{ code: "not-a-ship", message: `the form is that of: ${form.use}; a ship's own identity is MIDXXXXXX` }];
}

function placeholderProblems(digits: string, form: MmsiForm | null): Problems {
	const suspects = form?.id === "ship" ? [digits, digits.slice(3)] : [digits]; // a coast station's 9999 or 0000 can be real
	if (!suspects.some((run) => allSame(run) || counting(run))) return [];
	return [{ code: "placeholder", message: `${digits} looks like a placeholder; read the identity from the ship licence` }];
}

/** From four digits on: a shorter run tells nothing. */
function allSame(digits: string): boolean {
	return /^(\d)\1{3,}$/.test(digits);
}

function counting(digits: string): boolean {
	return digits.length >= 4 && ("01234567890".includes(digits) || "09876543210".includes(digits));
}

function trailingNotes(digits: string, form: MmsiForm | null): readonly string[] {
	if (form?.id === "coast" && digits.endsWith("0000"))
		return ["calls every coast station of the administration (from memory of ITU-R M.585)"];
	if (form?.id === "ship" && digits.endsWith("000")) return ["ends in 000, as satellite numbering once asked for; no rule now"];
	return [];
}

/**
 * Group identity made from an own MMSI that ends in 0 (47 CFR 80.103(d)); null when it does not or is no ship's.
 * @example `groupIdentityFrom("299123450")` is `"029912345"`
 */
export function groupIdentityFrom(own: string): string | null {
	const { digits, form } = mmsi(own);
	return form === "ship" && digits.endsWith("0") ? `0${digits.slice(0, 8)}` : null;
}

import { LOST_MARK } from "./printer.ts";

/** What the preamble ZCZC B1 B2 B3 B4 of a message says; a mark of loss stays where a character was lost. */
export interface TextIdentity {
	/** B1: the sending station within its area, A to X. */
	readonly station: string;
	/** B2. */
	readonly subject: string;
	/** What the subject letter stands for, in words. */
	readonly about: string;
	/** B3 B4, two digits: 00 is always printed. */
	readonly number: string;
}

/** Source: IMO NAVTEX Manual, subject indicator characters, as on an IMO rules site; older tables differ from G to K. */
const SUBJECTS: Readonly<Record<string, string>> = {
	A: "navigational warnings",
	B: "meteorological warnings",
	C: "ice reports",
	D: "search and rescue, piracy, tsunami and other natural phenomena",
	E: "meteorological forecasts",
	F: "pilot and VTS service",
	G: "AIS service",
	H: "LORAN",
	J: "GNSS",
	K: "other electronic navigational aids",
	L: "navigational warnings additional to A",
	V: "special services",
	W: "special services",
	X: "special services",
	Y: "special services",
	Z: "no message on hand",
};

export function subjectWords(subject: string): string {
	return SUBJECTS[subject] ?? (subject === LOST_MARK ? "subject lost" : "subject not in use");
}

/** A message as sent: ZCZC, identity, text, NNNN. `number` is 0 to 99. */
export function navtexText(message: {
	readonly station: string;
	readonly subject: string;
	readonly number: number;
	readonly body: string;
}): string {
	const { station, subject, number, body } = message;
	if (!/^[A-X]$/.test(station)) throw new RangeError(`Cannot send from station "${station}": expected a letter A to X`);
	if (!/^[A-Z]$/.test(subject)) throw new RangeError(`Cannot send about subject "${subject}": expected a letter A to Z`);
	if (!Number.isInteger(number) || number < 0 || number > 99) throw new RangeError(`Cannot number a message ${number}: expected 0 to 99`);
	return `ZCZC ${station}${subject}${String(number).padStart(2, "0")}\n${body}\nNNNN\n`;
}

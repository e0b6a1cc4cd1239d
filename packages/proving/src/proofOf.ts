import type { Heard } from "@skipwright/modem";
import type { Expectation } from "./expectation.ts";
import { fitsHere } from "./fitsHere.ts";
import { KIND_WORDS } from "./kindWords.ts";
import { ownTest } from "./ownTest.ts";
import type { Predicted } from "./verdict.ts";

/** Best first. "unknown": a station of that name, but which of them cannot be told. "other": another station. */
export const GRADES = ["identity", "signal", "likely", "unknown", "other", "none"] as const;

/** How far one item heard shows that the place holds what it should, tuning aside. */
export interface Proof {
	readonly grade: (typeof GRADES)[number];
	readonly why: string;
	/** The ship's own sending was heard and answered. */
	readonly provesSending: boolean;
}

/** Part of the characters lost below which a message counts as received. Source: IMO performance standard for NAVTEX receivers. */
const MOST_ERRORS = 0.04;
/** Characters and seconds from which a text or a chart is more than a snatch. Own choice. */
const LEAST_CHARACTERS = 20;
const LEAST_CHART_S = 30;
/** Part by which a shift may differ from the listed one. Own choice. */
const SHIFT_SHARE = 0.15;
/** Hz between black and white, nominally 800, that a chart may measure. Own choice: faint ones have little white. */
const CHART_SHIFT_HZ = { from: 500, to: 1_000 };

/**
 * Proof by one item of what was expected.
 * @param predicted of the station then: a NAVTEX letter belongs to many stations, and names the one that was due and in reach
 */
export function proofOf(expectation: Expectation, item: Heard, predicted: Predicted, ownMmsi: string | null): Proof {
	const { isDue } = predicted;
	const proof = (grade: Proof["grade"], why: string, provesSending = false): Proof => ({ grade, why, provesSending });
	if (item.kind !== expectation.kind) {
		return proof("none", `${capital(KIND_WORDS[item.kind])} was heard, and ${KIND_WORDS[expectation.kind]} was expected.`);
	}
	const atItsTime = isDue === true ? "at its time" : isDue === false ? "outside its published times" : "its time not known";
	const withoutIdentity = isDue === true ? "signal" : "likely";
	switch (item.kind) {
		case "dsc":
			return dscProof(expectation, item, ownMmsi, proof);
		case "text": {
			const letter = expectation.identity.navtexLetter;
			const heard = item.identity?.station ?? null;
			const isReadable = item.errorRatio <= MOST_ERRORS && item.characters >= LEAST_CHARACTERS;
			if (letter !== null && heard !== null && /^[A-X]$/.test(heard)) return letterProof(letter, heard, predicted, proof);
			if (!isReadable)
				return proof("likely", `Text was heard, too short or with too many losses to be sure (${percent(item.errorRatio)} lost).`);
			return proof(withoutIdentity, `Text was read, ${percent(item.errorRatio)} lost, ${atItsTime}; it does not name its sender.`);
		}
		case "teletype":
			if (item.errorRatio > MOST_ERRORS || item.characters < LEAST_CHARACTERS) {
				return proof("likely", `Teletype was heard, too short or with too many losses to be sure (${percent(item.errorRatio)} lost).`);
			}
			return teletypeProof(expectation, item, atItsTime, proof);
		case "chart": {
			const shift = item.whiteHz - item.blackHz;
			const isFramed = item.phaseFrom !== "nothing" || item.began !== "mid-chart";
			const isRight = shift >= CHART_SHIFT_HZ.from && shift <= CHART_SHIFT_HZ.to && item.endS - item.startS >= LEAST_CHART_S;
			const words = `A chart of ${item.image.height} lines was drawn, ${item.linesPerMinute} lines a minute, ${atItsTime}`;
			return isRight && (isFramed || isDue === true)
				? proof("signal", `${words}.`)
				: proof("likely", `${words}; too little of it to be sure.`);
		}
		case "tone":
			return proof("signal", `A steady tone of a standard-time station was heard.`);
		case "voice":
			return proof("likely", `Speech was heard, ${atItsTime}. Who spoke, the ear must say.`);
	}
}

function letterProof(expected: string, heard: string, predicted: Predicted, proof: (grade: Proof["grade"], why: string) => Proof): Proof {
	const read = `A message of station ${heard} was read`;
	if (heard !== expected) return proof("other", `${read}; station ${expected} was expected: not the one expected.`);
	switch (fitsHere(predicted)) {
		case true:
			return proof("identity", `A message of station ${heard}, as expected, was read.`);
		case false:
			return proof("other", `${read}; no station ${heard} is due and in reach here: not the one expected.`);
		case null:
			return proof(
				"unknown",
				`${read}; which station ${heard} cannot be told: the time of recording, the times of sending or the reach are not known.`,
			);
	}
}

function teletypeProof(
	{ keying }: Expectation,
	{ baud, shiftHz, errorRatio }: Extract<Heard, { kind: "teletype" }>,
	atItsTime: string,
	proof: (grade: Proof["grade"], why: string) => Proof,
): Proof {
	const bauds = keying?.bauds ?? [];
	const shiftsHz = keying?.shiftsHz ?? [];
	const isSender = bauds.includes(baud) && shiftsHz.some((hz) => Math.abs(shiftHz - hz) <= SHIFT_SHARE * hz);
	const words = `Teletype was read, ${baud} baud, ${Math.round(shiftHz)} Hz apart, ${percent(errorRatio)} lost, ${atItsTime}`;
	if (isSender) return proof("signal", `${words}.`);
	return proof("likely", `${words}; this station is listed with ${bauds.join(" or ")} baud, ${shiftsHz.join(" or ")} Hz apart.`);
}

function dscProof(
	{ identity }: Expectation,
	item: Extract<Heard, { kind: "dsc" }>,
	ownMmsi: string | null,
	proof: (grade: Proof["grade"], why: string, provesSending?: boolean) => Proof,
): Proof {
	if (!item.ok) return proof("likely", "A selective call was heard, not free of errors.");
	const test = ownTest(item, ownMmsi);
	if (test === "answer") {
		const isExpected = item.from === identity.mmsi;
		const by = isExpected ? "by the station expected" : `by ${item.from}, which may answer for the one called`;
		return proof(
			isExpected ? "identity" : "signal",
			`The ship's own test call was answered ${by}: receiving and sending both work on this frequency.`,
			true,
		);
	}
	if (test === "call") {
		return proof(
			"likely",
			"The ship's own test call was heard as she sent it: it shows neither the receiver's tuning nor that anybody heard it.",
		);
	}
	return proof(
		"signal",
		"A selective call was received free of errors: the tuning is right, but nothing shows that this coast station hears the ship.",
	);
}

function percent(ratio: number): string {
	return `${(100 * ratio).toFixed(1)} %`;
}

function capital(text: string): string {
	return text.charAt(0).toUpperCase() + text.slice(1);
}

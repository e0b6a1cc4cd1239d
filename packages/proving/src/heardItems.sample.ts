import type { HeardChart, HeardDsc, HeardTeletype, HeardText, HeardTone, HeardVoice } from "@skipwright/modem";

/** Items as the receivers give them, for tests: good ones, changed as asked. */
const BASE = { startS: 2, endS: 62, uncertaintyHz: 0.3, snrDb: 20 };

export function textItem(change: Partial<HeardText> = {}): HeardText {
	return {
		...BASE,
		kind: "text",
		audioHz: 1_700,
		text: "ZCZC CA12\nLIGHT UNLIT\nNNNN",
		identity: { station: "C", subject: "A", about: "navigational warnings", number: "12" },
		gaps: [],
		characters: 200,
		lostCharacters: 0,
		errorRatio: 0,
		isInverted: false,
		summary: "Message CA12 of station C.",
		...change,
	};
}

export function dscItem(call: Partial<NonNullable<HeardDsc["call"]>> = {}, change: Partial<HeardDsc> = {}): HeardDsc {
	const whole: NonNullable<HeardDsc["call"]> = {
		format: "individual",
		to: "299123456",
		area: null,
		category: "safety",
		from: "006010001",
		telecommand1: "test",
		telecommand2: "no information",
		distress: null,
		message: null,
		end: "acknowledgement given",
		undecoded: [],
		...call,
	};
	return {
		...BASE,
		kind: "dsc",
		audioHz: 1_700,
		symbols: [],
		ecc: 0,
		ok: true,
		from: whole.from,
		to: whole.to,
		summary: "a call",
		call: whole,
		faults: [],
		isInverted: false,
		corrected: 0,
		times: 1,
		...change,
	};
}

export function chartItem(change: Partial<HeardChart> = {}): HeardChart {
	return {
		...BASE,
		kind: "chart",
		endS: 302,
		audioHz: 1_900,
		image: { width: 1_810, height: 600, pixels: new Uint8Array(0) },
		ioc: 576,
		iocFrom: "start tone",
		linesPerMinute: 120,
		phaseFrom: "phasing",
		began: "start tone",
		ended: "stop tone",
		isComplete: true,
		clockPpm: 10,
		clockUncertaintyPpm: 1,
		blackHz: 1_500,
		whiteHz: 2_300,
		...change,
	};
}

export function teletypeItem(change: Partial<HeardTeletype> = {}): HeardTeletype {
	return {
		...BASE,
		kind: "teletype",
		audioHz: 1_700,
		text: "FORECAST",
		part: 1,
		continues: false,
		baud: 50,
		shiftHz: 450,
		sense: "mark high",
		characters: 300,
		lostCharacters: 0,
		errorRatio: 0,
		summary: "Teletype, 50 baud.",
		...change,
	};
}

export function toneItem(audioHz: number, change: Partial<HeardTone> = {}): HeardTone {
	return { ...BASE, kind: "tone", audioHz, uncertaintyHz: 0.05, onRatio: 1, summary: "A steady tone.", ...change };
}

export function voiceItem(change: Partial<HeardVoice> = {}): HeardVoice {
	const spread = { audioHz: 1_000, uncertaintyHz: 1_000, lowHz: 300, highHz: 2_700, lowPart: 0.7, isOutOfPlace: false };
	return { ...BASE, kind: "voice", ...spread, summary: "Speech is likely.", ...change };
}

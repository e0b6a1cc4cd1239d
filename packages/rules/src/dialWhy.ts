import { formatKhz, type Hz } from "@skipwright/units";
import { audioCentreHz, type DialOptions, displayOf, shiftHz, sidebandSign, usualAudioCentreHz } from "./dialOffset.ts";
import { modesThatReceive } from "./emission.ts";
import { emissionFacts, emissionFamily } from "./emissionTable.ts";
import { publishedOffsetHz } from "./reference.ts";
import type { DialConvention, Mode, ModeDisplay, Published } from "./types.ts";

/** One or two sentences: how the dial follows from the published figure. */
export function whyDial(dial: Hz, mode: Mode, published: Published, convention: DialConvention, options: DialOptions): string {
	const steps = `${fromList(published)}, ${toDial(dial, mode, published, convention, options)}.`;
	return `${steps.charAt(0).toUpperCase()}${steps.slice(1)}${lossWords(mode, published)}`;
}

function fromList(published: Published): string {
	const family = emissionFamily(published.emission);
	const listed = `${formatKhz(published.hz)} kHz`;
	const offset = publishedOffsetHz(published);
	const reference = family === "speech" || family === "carrier" || family === "morse" ? "carrier" : "centre";
	if (offset === 0) return `${listed} is the ${reference}`;
	const at = `the ${reference} at ${khz(published.hz - offset)}`;
	if (family === "speech") return `${listed} is the ${published.means} frequency, 1.4 kHz from the carrier, which puts ${at}`;
	const side = published.sideband === "lower" ? "LSB" : "USB";
	return `${listed} is listed as a ${side} dial; with the usual audio centre of ${usualAudioCentreHz(published)} Hz that puts ${at}`;
}

function toDial(dial: Hz, mode: Mode, published: Published, convention: DialConvention, options: DialOptions): string {
	const display = displayOf(mode, convention);
	const reads = `so the dial reads ${formatKhz(dial)} kHz`;
	switch (emissionFamily(published.emission)) {
		case "speech":
		case "carrier":
			if (display.shows === "carrier" || mode === "AM") return `and ${mode} shows the carrier, ${reads}`;
			return `and ${mode} shows the ${display.shows} and not the carrier, ${reads}`;
		case "morse":
			return morseWords(mode, display, options, reads);
		case "keyed":
		case "data":
		case "chart":
			return toneWords(mode, display, published, options, reads);
	}
}

function morseWords(mode: Mode, display: ModeDisplay, options: DialOptions, reads: string): string {
	const pitch = options.pitchHz ?? (mode === "CW" ? (display.pitchHz ?? 0) : 0);
	if (mode === "CW") return pitch === 0 ? `and CW shows the carrier, ${reads}` : `and CW shows it less the ${pitch} Hz note, ${reads}`;
	if (pitch === 0) return `and ${mode} shows the carrier, ${reads}, where the signal has no note: tune off it by the note wanted`;
	return `and a ${pitch} Hz note on ${mode} needs the dial that far off, ${reads}`;
}

function toneWords(mode: Mode, display: ModeDisplay, published: Published, options: DialOptions, reads: string): string {
	if (display.shows === "centre") return `and ${mode} shows the centre itself, ${reads}: no audio offset is taken`;
	if (display.shows === "mark") {
		const side = display.sense === "reversed" ? "higher" : "lower";
		return `and ${mode} shows the mark, the ${side} tone, half of ${shiftHz(display, published, options)} Hz away, ${reads}`;
	}
	const audio = audioCentreHz(display, published, options);
	const way = sidebandSign(mode, display) === 1 ? "below" : "above";
	return `and ${mode} shows the carrier, ${audio} Hz ${way} it (${audioSource(display, published, options)}), ${reads}`;
}

function audioSource(display: ModeDisplay, published: Published, options: DialOptions): string {
	if (options.audioCentreHz !== undefined) return "the audio centre asked for";
	if (display.audioCentreHz !== undefined) return "the set's audio centre";
	if (published.service === "rtty-weather") return "the usual audio centre; use the decoder's own where it differs";
	return emissionFamily(published.emission) === "chart" ? "the audio centre of charts" : "the audio centre of DSC, NBDP and NAVTEX";
}

/** The loss of a second-best mode, from its own part of the note ("LSB: ...; FSK: ..."). */
function lossWords(mode: Mode, published: Published): string {
	const { poor } = modesThatReceive(published.emission, published.sideband);
	if (!poor.includes(mode)) return "";
	const part = emissionFacts(published.emission)
		.note.split("; ")
		.find((text) => text.startsWith(`${mode}: `));
	return ` ${mode} is second best${part === undefined ? "" : part.slice(mode.length)}.`;
}

/** Also for a figure below zero, which `formatKhz` would refuse. */
function khz(hertz: number): string {
	return hertz < 0 ? `${hertz} Hz` : `${formatKhz(hertz as Hz)} kHz`;
}

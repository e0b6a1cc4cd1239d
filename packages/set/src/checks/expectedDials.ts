import { type DialConvention, dialFor, type EmissionClass, type Mode, type ModeDisplay, type Published } from "@skipwright/rules";
import { type Hz, hz } from "@skipwright/units";

/**
 * How a dial reading relates to something published. The first four tune to it, well or badly; the last three are
 * the usual slips of conversion. Listed best first: a better fit always wins.
 */
export const FITS = ["right", "poor", "wrong-sideband", "wrong-mode", "assigned-as-carrier", "offset-missing", "offset-twice"] as const;
export type Fit = (typeof FITS)[number];

export interface ExpectedDial {
	readonly dialHz: Hz;
	readonly fit: Fit;
	/** What the dial should read, and in which mode. */
	readonly right: { readonly dialHz: Hz; readonly mode: Mode } | null;
}

/** Hz above the carrier at which J3E is assigned. Source: RR Appendix 17 Part B Section I. */
const J3E_ASSIGNED_OFFSET_HZ = 1_400;
/** Hz. Audio centres: charts (WMO practice) and DSC, NBDP, NAVTEX (ITU-R M.493, M.625). */
const CHART_AUDIO_HZ = 1_900;
const DATA_AUDIO_HZ = 1_700;

const CHARTS: readonly EmissionClass[] = ["F3C", "J3C", "F1C", "J2C"];
const DATA: readonly EmissionClass[] = ["F1B", "J2B", "J2D"];

export function isChart(emission: EmissionClass): boolean {
	return CHARTS.includes(emission);
}

export function isData(emission: EmissionClass): boolean {
	return DATA.includes(emission);
}

/** How well a mode receives an emission, its dial being right. */
export function modeFit(emission: EmissionClass, mode: Mode, sideband: "upper" | "lower"): Fit {
	switch (emission) {
		case "A3E":
			return mode === "AM" ? "right" : mode === "USB" || mode === "LSB" ? "poor" : "wrong-mode";
		case "A1A":
		case "J2A":
			return mode === "CW" ? "right" : mode === "USB" || mode === "LSB" ? "poor" : "wrong-mode";
		case "H3E":
			return mode === "USB" || mode === "AM" ? "right" : mode === "LSB" ? "wrong-sideband" : "wrong-mode";
		case "J3E":
		case "R3E":
			if (mode !== "USB" && mode !== "LSB") return "wrong-mode";
			return (mode === "LSB") === (sideband === "lower") ? "right" : "wrong-sideband";
		default:
			if (mode === "AM" || mode === "CW") return "wrong-mode";
			if (mode === "LSB") return isChart(emission) ? "poor" : "wrong-sideband";
			return "right";
	}
}

/** What the display of a mode is taken to show when the set lacks the mode: the check still says what the row means. */
function displayOf(convention: DialConvention, mode: Mode): ModeDisplay {
	return convention[mode] ?? { shows: mode === "FSK" ? "centre" : "carrier" };
}

/** Every dial reading in `mode` that has to do with `published`, with what it means. */
export function expectedDials(published: Published, mode: Mode, convention: DialConvention): readonly ExpectedDial[] {
	const whole: DialConvention = { ...convention, [mode]: displayOf(convention, mode) };
	const right = rightDial(published, convention);
	const out: ExpectedDial[] = [];
	const add = (dialHz: number, fit: Fit) => {
		if (dialHz > 0 && !out.some((other) => other.dialHz === dialHz)) out.push({ dialHz: hz(dialHz), fit, right });
	};
	const fit = modeFit(published.emission, mode, published.sideband ?? "upper");
	if (isChart(published.emission) || isData(published.emission)) dataDials(published, mode, whole, fit, add);
	else voiceDials(published, mode, whole, fit, add);
	return out;
}

type Add = (dialHz: number, fit: Fit) => void;

function voiceDials(published: Published, mode: Mode, convention: DialConvention, fit: Fit, add: Add): void {
	const carrier = carrierOf(published);
	const own = fit === "right" ? dialFor(published, convention, { mode }) : null;
	add(own !== null && "dialHz" in own ? own.dialHz : carrier, fit);
	const isVoiceSide = published.emission === "J3E" && (mode === "USB" || mode === "LSB");
	if (isVoiceSide) add(carrier + J3E_ASSIGNED_OFFSET_HZ, "assigned-as-carrier");
	if (mode !== "CW" || own === null || !("dialHz" in own) || own.dialHz === carrier) return;
	const pitch = carrier - own.dialHz;
	for (const slip of [carrier, carrier + pitch]) add(slip, "offset-missing"); // not taken, or the wrong way
	add(carrier - 2 * pitch, "offset-twice");
}

function dataDials(published: Published, mode: Mode, convention: DialConvention, fit: Fit, add: Add): void {
	const centre = centreOf(published);
	const display = displayOf(convention, mode);
	const isChartHere = isChart(published.emission);
	const shown = dialFor(published, convention, { mode });
	const usual = isChartHere ? CHART_AUDIO_HZ : DATA_AUDIO_HZ;
	const step = "dialHz" in shown && display.shows === "carrier" ? shown.dialHz - centre : usual * (mode === "LSB" ? 1 : -1);
	const own = Math.abs(step);
	const other = isChartHere ? DATA_AUDIO_HZ : CHART_AUDIO_HZ;
	if (fit === "wrong-mode") {
		add(centre, fit);
		add(centre - own, fit);
	} else if (display.shows === "carrier") {
		const sign = Math.sign(step); // above the centre on lower sideband
		add(centre + step, fit);
		if (mode === "LSB") add(centre - own, "wrong-sideband"); // the USB dial, keyed on LSB
		add(centre, "offset-missing");
		add(centre + sign * other, "offset-missing");
		if (mode !== "LSB") add(centre - step, "offset-missing"); // the wrong sign
		add(centre + 2 * step, "offset-twice");
	} else {
		add("dialHz" in shown ? shown.dialHz : centre, fit);
		add(centre, "offset-missing"); // where the mode shows the mark
		for (const offset of [-own, -other, own]) add(centre + offset, "offset-twice");
	}
}

function rightDial(published: Published, convention: DialConvention): ExpectedDial["right"] {
	const dial = dialFor(published, convention);
	return "dialHz" in dial ? { dialHz: dial.dialHz, mode: dial.mode } : null;
}

/** Carrier of a voice, AM or Morse publication. */
export function carrierOf(published: Published): number {
	const isSsb = published.emission === "J3E" || published.emission === "R3E";
	return published.means === "assigned" && isSsb ? published.hz - J3E_ASSIGNED_OFFSET_HZ : published.hz;
}

/** Centre of a data or chart publication. */
function centreOf(published: Published): number {
	if (published.means !== "dial" && published.means !== "carrier") return published.hz;
	return published.hz + (isChart(published.emission) ? CHART_AUDIO_HZ : DATA_AUDIO_HZ);
}

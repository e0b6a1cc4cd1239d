import { sin } from "@skipwright/units";
import { MODEM_RATE_HZ } from "../receiver.ts";
import { DEFAULT_AMPLITUDE, type MadeOptions } from "../signal/keyed.ts";
import {
	CHART_CENTRE_HZ,
	CHART_DEVIATION_HZ,
	type GreyImage,
	type IndexOfCooperation,
	type LinesPerMinute,
	lineSeconds,
	PHASING_PULSE,
	START_TONE_HZ,
	STOP_TONE_HZ,
} from "./chartFigures.ts";

/** Waveform of a phasing line: a short white or black part at its start, or a white and a black half. */
export type PhasingWaveform = "white pulse" | "black pulse" | "halves";

export interface ChartOptions extends MadeOptions {
	readonly ioc: IndexOfCooperation;
	readonly linesPerMinute: LinesPerMinute;
	/** Default "white pulse". */
	readonly phasing?: PhasingWaveform;
	/** Hz. Default `CHART_CENTRE_HZ`; a set that is off tune adds its error here. */
	readonly centreHz?: number;
	/** Hz from the middle to white; negative for a chart heard on the wrong sideband. Default `CHART_DEVIATION_HZ`. */
	readonly deviationHz?: number;
	/** Parts in a million by which the recorder samples too fast. Default 0. */
	readonly clockPpm?: number;
	/** Seconds of each part but the picture; 0 leaves it out. Defaults 5, 30, 5 and 10. */
	readonly startS?: number;
	readonly phasingS?: number;
	readonly stopS?: number;
	readonly blackS?: number;
}

/** Grey of -1 (black) to 1 (white) for so many seconds. */
type Shade = (grey: number, seconds: number) => void;

/** A whole transmission: start tone, phasing, the picture's lines, stop tone, black. The sub-carrier is continuous in phase. */
export function makeChart(image: GreyImage, options: ChartOptions): Float64Array {
	const { ioc, linesPerMinute, phasing = "white pulse", startS = 5, phasingS = 30, stopS = 5, blackS = 10 } = options;
	const { rateHz = MODEM_RATE_HZ, amplitude = DEFAULT_AMPLITUDE, clockPpm = 0 } = options;
	const { centreHz = CHART_CENTRE_HZ, deviationHz = CHART_DEVIATION_HZ } = options;
	const lineS = lineSeconds(linesPerMinute);
	const phasingLines = Math.round(phasingS / lineS);
	const clockHz = rateHz * (1 + clockPpm * 1e-6);
	const seconds = startS + phasingLines * lineS + image.height * lineS + stopS + blackS;
	const samples = new Float64Array(Math.round(seconds * clockHz));

	let [at, fromS, turns] = [0, 0, 0]; // next sample; start and phase of the shade under way
	const shade: Shade = (grey, shadeS) => {
		const toneHz = centreHz + deviationHz * grey;
		for (; at < samples.length && at / clockHz < fromS + shadeS; at++) {
			const phase = turns + toneHz * (at / clockHz - fromS);
			samples[at] = amplitude * sin(2 * Math.PI * (phase - Math.floor(phase)));
		}
		turns += toneHz * shadeS;
		turns -= Math.floor(turns);
		fromS += shadeS;
	};

	alternate(shade, START_TONE_HZ[ioc], startS);
	for (let line = 0; line < phasingLines; line++) phasingLine(shade, phasing, lineS);
	for (const pixel of image.pixels) shade(pixel / 127.5 - 1, lineS / image.width);
	alternate(shade, STOP_TONE_HZ, stopS);
	shade(-1, blackS + 1); // to the last sample, whatever was rounded
	return samples;
}

function alternate(shade: Shade, toneHz: number, seconds: number): void {
	const halves = Math.round(2 * toneHz * seconds);
	for (let half = 0; half < halves; half++) shade(half % 2 === 0 ? -1 : 1, 0.5 / toneHz);
}

function phasingLine(shade: Shade, phasing: PhasingWaveform, lineS: number): void {
	const share = phasing === "halves" ? 0.5 : PHASING_PULSE;
	const first = phasing === "black pulse" ? -1 : 1;
	shade(first, share * lineS);
	shade(-first, (1 - share) * lineS);
}

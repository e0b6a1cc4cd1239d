/** A grey picture, row after row from the top left: 0 black, 255 white. */
export interface GreyImage {
	readonly width: number;
	readonly height: number;
	readonly pixels: Uint8Array;
}

/** Hz. Middle between black and white, and how far each lies from it. Source: facts of HF weather facsimile, WMO-No. 386 (from memory). */
export const CHART_CENTRE_HZ = 1_900,
	CHART_DEVIATION_HZ = 400;

/** Index of cooperation: diameter of the drum times lines per unit of length. Source: ISO 9876:2015. */
export type IndexOfCooperation = 576 | 288;
export type LinesPerMinute = 60 | 90 | 120 | 240;

/** The usual rate first. Source: ISO 9876:2015 for 60, 90 and 120; 240 from memory. */
export const LINE_RATES: readonly LinesPerMinute[] = [120, 60, 90, 240];

/** Hz. Black and white alternate at this rate to begin a chart. Source: ISO 9876:2015, 3.5. 675 Hz may also mean 576 with every other line. */
export const START_TONE_HZ: Readonly<Record<IndexOfCooperation, number>> = { 576: 300, 288: 675 };
/** Hz. They alternate at this rate to end it. Source: WMO-No. 386 (from memory). */
export const STOP_TONE_HZ = 450;

/** Share of a line that the short part of a phasing line takes. Source: ISO 9876:2015, 3.8 note 2. */
export const PHASING_PULSE = 0.05;

/** Square picture elements on a line: its length is pi diameters, and lines lie diameter / IOC apart. */
export function chartWidth(ioc: IndexOfCooperation): number {
	return Math.round(Math.PI * ioc);
}

/** Seconds that a line takes. */
export function lineSeconds(linesPerMinute: LinesPerMinute): number {
	return 60 / linesPerMinute;
}

import { log10, pow } from "@skipwright/units";
import { FRAME_SAMPLES, type HeardBase, MODEM_RATE_HZ, type Receiver } from "../receiver.ts";
import { SNR_BANDWIDTH_HZ } from "../signal/noise.ts";
import {
	CHART_CENTRE_HZ,
	chartWidth,
	type GreyImage,
	type IndexOfCooperation,
	type LinesPerMinute,
	lineSeconds,
	START_TONE_HZ,
	STOP_TONE_HZ,
} from "./chartFigures.ts";
import { createDiscriminator, DISCRIMINATOR_DELAY, type Discriminator, type FilterName, type Levels } from "./discriminator.ts";
import { createLineFinder, FINDER_SAMPLES, type FoundLines, HOP_FRAMES } from "./lineFinder.ts";
import { isLikePhasing } from "./phasing.ts";
import { createLineReader } from "./readLine.ts";
import { sameness } from "./sameness.ts";
import { shapeIoc } from "./shapeIoc.ts";
import { isEven, steadiness } from "./steadiness.ts";
import { type ChartSurvey, surveyChart } from "./surveyChart.ts";
import { toneOnset } from "./toneOnset.ts";
import { createToneRecogniser, type RecognisedTone } from "./toneRecogniser.ts";
import { createTrack } from "./track.ts";

/** Why a chart ends: its stop tone, the next chart's start tone, nothing heard any more, the stream's end, or the limit of what is kept. */
export type ChartEnd = "stop tone" | "next start tone" | "faded" | "end of stream" | "too long";

/** A weather chart, whole or in part. */
export interface HeardChart extends HeardBase {
	readonly kind: "chart";
	readonly image: GreyImage;
	readonly ioc: IndexOfCooperation;
	/** "shape": no start tone was heard, figures are as high as wide; "assumed": that told nothing, 576 is usual. */
	readonly iocFrom: "start tone" | "shape" | "assumed";
	readonly linesPerMinute: LinesPerMinute;
	/** What the left edge rests on; "nothing": the picture may be wrapped round. */
	readonly phaseFrom: "phasing" | "margin" | "nothing";
	/** What was heard first. */
	readonly began: "start tone" | "phasing" | "mid-chart";
	readonly ended: ChartEnd;
	/** Start or phasing heard, and stop. */
	readonly isComplete: boolean;
	/** Parts in a million by which the recorder samples fast against the sender's lines, and one sigma. */
	readonly clockPpm: number;
	readonly clockUncertaintyPpm: number;
	readonly blackHz: number;
	readonly whiteHz: number;
}

/** What there is of the chart now being received. */
export interface ChartUnderWay extends GreyImage {
	/** Counts up when lines already shown were drawn anew, straighter. While it stays, only lines are added. */
	readonly revision: number;
	readonly linesPerMinute: LinesPerMinute;
	readonly ioc: IndexOfCooperation;
}

export interface ChartReceiver extends Receiver<HeardChart> {
	/** For a live view. Nothing is copied: `pixels` holds good until the next frame. Null when no lines are there yet. */
	underWay(): ChartUnderWay | null;
}

/**
 * Seconds of a chart, with its phasing, that are kept; then it is closed as "too long" and a new one begins. 30 min: 3600 lines at 120
 * a minute, 29 MB of frequencies, 7 MB of picture.
 */
export const LONGEST_CHART_S = 1_800;

/** Samples kept before a chart is recognised. */
const IDLE_SAMPLES = 2 * FINDER_SAMPLES;
const HOP_SAMPLES = HOP_FRAMES * FRAME_SAMPLES;
/** Looks in a row that must find the same lines before a chart is joined in the middle, and looks that may lie before its first. */
const JOIN_LOOKS = 2,
	JOIN_HOPS = 9;
/** Share of signal in the power, below which it is not a steady signal: to join, to go on. Noise alone comes out at 0.2 to 0.45. */
const JOIN_STEADY = 0.6,
	GO_ON_STEADY = 0.5;
/** Seconds after the start tone within which lines must be found. */
const LINES_WITHIN_S = 60;
/** Seconds without a steady signal, and without lines that resemble each other (a blank part), after which a chart has faded out. */
const FADED_S = 20,
	BLANK_S = 120;
/** Seconds without a steady signal that are left out where the stream ends. */
const FADING_S = 3;
/** Frames that a tone must last to end a chart under way: no picture holds one pitch for so long. */
const STOP_FRAMES = 40,
	RESTART_FRAMES = 64;
/** Picture lines that make a chart, and seconds of picture in which lines must have resembled each other where no start tone was heard. */
const LEAST_LINES = 8,
	LEAST_PICTURE_S = 6;
/** Where no start tone was heard: share of the variance that the mean line may explain. A sound that repeats each second has nearly 1. */
const MOST_SAMENESS = 0.7;
/** Hz by which the clicks of a discriminator below its threshold draw the middle aside at 0 dB; ten times less at 5 dB. From made charts. */
const CLICK_HZ = 12;
/** Lines after which a chart is first surveyed; each time twice as many. Phasing under way is looked at more often. */
const FIRST_SURVEY_LINES = 8,
	PHASING_SURVEY_LINES = 16;
/** dB in 2700 Hz at which the filter changes, and how far beyond to change back. */
const WIDE_FROM_DB = 14,
	NARROW_BELOW_DB = 8,
	HYSTERESIS_DB = 1;
const SMOOTHING = 0.2;

interface Chart {
	readonly began: "start tone" | "joined";
	readonly ioc: IndexOfCooperation;
	/** Whether a start tone told it. */
	readonly isIocSure: boolean;
	/** Sample at which the transmission began, and from which on there are lines. */
	readonly startAt: number;
	linesFrom: number;
	linesPerMinute: LinesPerMinute | null;
	survey: ChartSurvey | null;
	/** Lines from `linesFrom` on at which the next survey is due. */
	nextSurvey: number;
	lastSteadyAt: number;
	lastLinesAt: number;
	signal: number;
	noise: number;
	/** Live picture. */
	pixels: Uint8Array;
	drawn: number;
	revision: number;
	/** Phasing lines passed since the survey. */
	passed: number;
}

/** Receives weather charts by radio facsimile, one after another; each no longer than `longestS`, so that memory has a limit. */
export function createChartReceiver(longestS: number = LONGEST_CHART_S): ChartReceiver {
	const track = createTrack(-DISCRIMINATOR_DELAY);
	const readLine = createLineReader(track);
	const tones = createToneRecogniser();
	const finder = createLineFinder();
	const hz = new Float64Array(FRAME_SAMPLES);
	const lastFrame = new Float64Array(FRAME_SAMPLES);
	let filter: FilterName = "middle";
	let centreHz = CHART_CENTRE_HZ;
	let discriminator: Discriminator = createDiscriminator(centreHz, filter);
	let hop: Levels[] = [];
	let snrDb: number | null = null; // smoothed, of the chart under way
	let chart: Chart | null = null;
	let steadyHops = 0;
	let lastFound: FoundLines | null = null;
	let shades = new Float64Array(0); // of a line, used again
	let looks = 0; // in a row that found the same

	function tune(toHz: number, width: FilterName): void {
		centreHz = toHz;
		filter = width;
		discriminator = createDiscriminator(centreHz, filter);
		discriminator.frame(lastFrame, new Float64Array(FRAME_SAMPLES)); // so that the change leaves no seam
	}

	function begin(one: Pick<Chart, "began" | "ioc" | "isIocSure" | "startAt" | "linesFrom" | "linesPerMinute">): void {
		const now = track.end();
		chart = {
			...one,
			survey: null,
			nextSurvey: FIRST_SURVEY_LINES,
			lastSteadyAt: now,
			lastLinesAt: now,
			signal: 0,
			noise: 0,
			pixels: new Uint8Array(0),
			drawn: 0,
			revision: 0,
			passed: 0,
		};
		snrDb = null;
	}

	function close(ended: ChartEnd, at: number): readonly HeardChart[] {
		const heard = chart === null ? null : heardChart(chart, ended, at);
		chart = null;
		finder.clear();
		[steadyHops, looks, lastFound] = [0, 0, null];
		if (filter !== "middle" || centreHz !== CHART_CENTRE_HZ) tune(CHART_CENTRE_HZ, "middle");
		return heard === null ? [] : [heard];
	}

	function heardChart(one: Chart, ended: ChartEnd, at: number): HeardChart | null {
		const { linesPerMinute, linesFrom, lastLinesAt, ioc } = one;
		if (linesPerMinute === null || at - linesFrom < LEAST_LINES * lineSeconds(linesPerMinute) * MODEM_RATE_HZ) return null;
		const survey = surveyChart(track, linesFrom, at, linesPerMinute);
		const { lineSamples, firstLineAt, levels } = survey;
		const height = Math.floor((at - firstLineAt) / lineSamples + 0.1);
		const isPictureSure = one.began === "start tone" || lastLinesAt - firstLineAt > LEAST_PICTURE_S * MODEM_RATE_HZ;
		if (height < LEAST_LINES || !isPictureSure) return null;
		const asSent = drawn(survey, height, ioc);
		if (one.began !== "start tone" && sameness(asSent) > MOST_SAMENESS) return null;
		const shape = one.isIocSure ? null : shapeIoc(asSent);
		const began = one.began === "start tone" ? "start tone" : survey.phaseFrom === "phasing" ? "phasing" : "mid-chart";
		const snrDb = ratioDb(one.signal, one.noise);
		const clickHz = CLICK_HZ * pow(10, -snrDb / 5);
		const startAt = one.began === "start tone" || began === "phasing" ? one.startAt : firstLineAt;
		return {
			kind: "chart",
			startS: Math.max(0, startAt) / MODEM_RATE_HZ,
			endS: Math.max(0, at) / MODEM_RATE_HZ,
			audioHz: (levels.blackHz + levels.whiteHz) / 2,
			uncertaintyHz: Math.sqrt(levels.uncertaintyHz * levels.uncertaintyHz + clickHz * clickHz),
			snrDb,
			image: shape === null || shape === ioc ? asSent : drawn(survey, height, shape),
			ioc: shape ?? ioc,
			iocFrom: one.isIocSure ? "start tone" : shape === null ? "assumed" : "shape",
			linesPerMinute,
			phaseFrom: survey.phaseFrom,
			began,
			ended,
			isComplete: began !== "mid-chart" && ended === "stop tone",
			clockPpm: 1e6 * (lineSamples / (lineSeconds(linesPerMinute) * MODEM_RATE_HZ) - 1),
			clockUncertaintyPpm: survey.linePpm,
			blackHz: levels.blackHz,
			whiteHz: levels.whiteHz,
		};
	}

	function drawn(survey: ChartSurvey, height: number, ioc: IndexOfCooperation): GreyImage {
		const width = chartWidth(ioc);
		const pixels = new Uint8Array(width * height);
		for (let line = 0; line < height; line++) draw(survey, line, pixels.subarray(line * width, (line + 1) * width));
		return { width, height, pixels };
	}

	/** Greys of a picture line into `pixels`, one line wide. */
	function draw({ firstLineAt, lineSamples, levels }: ChartSurvey, line: number, pixels: Uint8Array): void {
		if (shades.length !== pixels.length) shades = new Float64Array(pixels.length);
		readLine(firstLineAt + line * lineSamples, lineSamples, shades);
		const scale = 255 / (levels.whiteHz - levels.blackHz);
		for (let x = 0; x < pixels.length; x++) {
			pixels[x] = Math.round(Math.max(0, Math.min(255, (shades[x]! - levels.blackHz) * scale)));
		}
	}

	function onTone({ toneHz, frames, centreHz: heardHz }: RecognisedTone): readonly HeardChart[] {
		const now = track.end();
		const startAt = now - frames * FRAME_SAMPLES;
		const isUnderWay = chart !== null && chart.linesPerMinute !== null;
		if (toneHz === STOP_TONE_HZ) {
			return isUnderWay && frames >= STOP_FRAMES ? close("stop tone", toneOnset(track, startAt, toneHz)) : [];
		}
		if (isUnderWay && frames < RESTART_FRAMES) return [];
		const ioc: IndexOfCooperation = toneHz === START_TONE_HZ[576] ? 576 : 288;
		if (!isUnderWay && chart !== null && chart.ioc === ioc && chart.linesFrom >= startAt) {
			chart.linesFrom = now; // it goes on
			return [];
		}
		const heard = isUnderWay ? close("next start tone", toneOnset(track, startAt, toneHz)) : [];
		begin({ began: "start tone", ioc, isIocSure: true, startAt, linesFrom: now, linesPerMinute: null });
		finder.clear();
		tune(heardHz, filter);
		return heard;
	}

	/** A look once a second. */
	function look(found: FoundLines | null): readonly HeardChart[] {
		const now = track.end();
		const steady = steadiness(hop);
		const power = hop.reduce((sum, { power }) => sum + power, 0) / hop.length;
		const even = isEven(hop);
		hop = [];
		steadyHops = even && steady > JOIN_STEADY ? steadyHops + 1 : 0;
		looks = found === null ? 0 : found.linesPerMinute === lastFound?.linesPerMinute ? looks + 1 : 1;
		lastFound = found;
		if (chart === null) {
			if (looks >= JOIN_LOOKS && steadyHops >= JOIN_HOPS - FINDER_SAMPLES / HOP_SAMPLES) {
				const linesFrom = Math.max(track.start(), now - Math.min(steadyHops, JOIN_HOPS) * HOP_SAMPLES);
				begin({ began: "joined", ioc: 576, isIocSure: false, startAt: linesFrom, linesFrom, linesPerMinute: found!.linesPerMinute });
			}
			return [];
		}
		chart.signal += steady * power;
		chart.noise += (1 - steady) * power * (SNR_BANDWIDTH_HZ / discriminator.noiseBandwidthHz);
		const hopDb = ratioDb(steady, (1 - steady) * (SNR_BANDWIDTH_HZ / discriminator.noiseBandwidthHz));
		snrDb = snrDb === null ? hopDb : snrDb + SMOOTHING * (hopDb - snrDb);
		if (steady > GO_ON_STEADY) chart.lastSteadyAt = now;
		if (found !== null) chart.lastLinesAt = now;
		if (chart.linesPerMinute === null && looks >= JOIN_LOOKS) chart.linesPerMinute = found!.linesPerMinute;
		if (chart.linesPerMinute === null) {
			if (now - chart.linesFrom > LINES_WITHIN_S * MODEM_RATE_HZ) close("faded", now);
			return [];
		}
		if (now - chart.lastSteadyAt > FADED_S * MODEM_RATE_HZ) return close("faded", chart.lastSteadyAt);
		if (now - chart.lastLinesAt > BLANK_S * MODEM_RATE_HZ) return close("faded", chart.lastLinesAt);
		if (now - chart.linesFrom > longestS * MODEM_RATE_HZ) {
			const { ioc, isIocSure, linesPerMinute } = chart;
			const heard = close("too long", now);
			begin({ began: "joined", ioc, isIocSure, startAt: now, linesFrom: now, linesPerMinute });
			return heard;
		}
		advance(chart, chart.linesPerMinute, now);
		const width = filterFor(snrDb, filter);
		if (width !== filter) tune(centreHz, width);
		return [];
	}

	/** Surveys the chart when due, and draws the lines that are there. */
	function advance(one: Chart, linesPerMinute: LinesPerMinute, now: number): void {
		const lines = (now - one.linesFrom) / (lineSeconds(linesPerMinute) * MODEM_RATE_HZ);
		if (lines >= one.nextSurvey) {
			one.survey = surveyChart(track, one.linesFrom, now, linesPerMinute);
			one.nextSurvey = 2 * lines;
			if (one.survey.phasingTemplate !== null && one.drawn === 0) one.nextSurvey = lines + PHASING_SURVEY_LINES;
			if (one.drawn > 0) one.revision++;
			[one.drawn, one.passed] = [0, 0];
			const { blackHz, whiteHz } = one.survey.levels;
			if (one.survey.phaseFrom === "phasing" && Math.abs((blackHz + whiteHz) / 2 - centreHz) > 5) tune((blackHz + whiteHz) / 2, filter);
		}
		if (one.survey === null) return;
		const { firstLineAt, lineSamples, phasingTemplate } = one.survey;
		const width = chartWidth(one.ioc);
		const ready = Math.floor((track.end() - firstLineAt) / lineSamples);
		for (let line = one.passed + one.drawn; line < ready; line++) {
			if (one.drawn === 0 && phasingTemplate !== null) {
				const row = new Float64Array(phasingTemplate.length);
				readLine(firstLineAt + line * lineSamples, lineSamples, row);
				if (isLikePhasing(row, phasingTemplate)) {
					one.passed++;
					continue;
				}
			}
			if ((one.drawn + 1) * width > one.pixels.length) {
				const more = new Uint8Array(2 * one.pixels.length + 64 * width);
				more.set(one.pixels);
				one.pixels = more;
			}
			draw(one.survey, line, one.pixels.subarray(one.drawn * width, (one.drawn + 1) * width));
			one.drawn++;
		}
	}
	return {
		frame(samples) {
			hop.push(discriminator.frame(samples, hz));
			lastFrame.set(samples);
			track.add(hz);
			const tone = tones.frame(hz);
			const ended = tone === null ? [] : onTone(tone);
			const found = finder.frame(hz);
			const heard = found === undefined ? ended : [...ended, ...look(found)];
			if (chart === null) track.forget(track.end() - IDLE_SAMPLES);
			else track.forget(chart.linesFrom - FRAME_SAMPLES);
			return heard;
		},
		end() {
			const now = track.end();
			const isFading = chart !== null && now - chart.lastSteadyAt > FADING_S * MODEM_RATE_HZ;
			return close("end of stream", isFading ? chart!.lastSteadyAt : now);
		},
		underWay() {
			if (chart === null || chart.linesPerMinute === null || chart.drawn === 0) return null;
			const { ioc, linesPerMinute, drawn: height, revision } = chart;
			const width = chartWidth(ioc);
			return { width, height, pixels: chart.pixels.subarray(0, width * height), revision, ioc, linesPerMinute };
		},
	};
}

/** dB; 0 parts of noise count as a millionth. */
function ratioDb(signal: number, noise: number): number {
	return 10 * log10(Math.max(signal, 1e-12) / Math.max(noise, 1e-6 * signal, 1e-12));
}

function filterFor(snrDb: number, now: FilterName): FilterName {
	const hold = (name: FilterName) => (now === name ? HYSTERESIS_DB : -HYSTERESIS_DB);
	if (snrDb > WIDE_FROM_DB - hold("wide")) return "wide";
	return snrDb < NARROW_BELOW_DB + hold("narrow") ? "narrow" : "middle";
}

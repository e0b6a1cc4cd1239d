import { STOP_TONE_HZ } from "../chart/chartFigures.ts";
import type { HeardTone } from "../tone/heardTone.ts";

/** What a chart's sender alternates black and white at: start (index of cooperation 576 or 288) and stop. */
const ALTERNATIONS: readonly (readonly [hz: number, what: string])[] = [
	[300, "Start tone of a chart, index of cooperation 576"],
	[675, "Start tone of a chart, index of cooperation 288"],
	[STOP_TONE_HZ, "Stop tone of a chart"],
];
/** Hz by which a line may lie off the others' raster, and between which the strongest must lie: black and white, far off tune. */
const RASTER_HZ = 1.5,
	STRONGEST_HZ = { from: 1_200, to: 2_600 };
const LEAST_LINES = 3;
/** Share of the louder tones that must lie on the raster, and dB below the loudest at which a tone still counts as loud. */
const LEAST_SHARE = 0.8,
	LOUD_DB = 10;

/**
 * The tones of an alternation between black and white, which stand at equal distances about the middle, as one item at that middle; null
 * where these tones are something else. They are heard by themselves where a recording holds no more of the chart.
 */
export function chartTone(tones: readonly HeardTone[]): HeardTone | null {
	const loudest = Math.max(...tones.map(({ snrDb }) => snrDb));
	const loud = tones.filter(({ snrDb }) => snrDb > loudest - LOUD_DB);
	const strongest = loud.find(({ snrDb }) => snrDb === loudest);
	if (strongest === undefined || strongest.audioHz < STRONGEST_HZ.from || strongest.audioHz > STRONGEST_HZ.to) return null;
	for (const [spacingHz, what] of ALTERNATIONS) {
		const linesAway = ({ audioHz }: HeardTone) => Math.round((audioHz - strongest.audioHz) / spacingHz);
		const onRaster = loud.filter((tone) => Math.abs(tone.audioHz - strongest.audioHz - linesAway(tone) * spacingHz) < RASTER_HZ);
		if (onRaster.length < LEAST_LINES || onRaster.length < LEAST_SHARE * loud.length) continue;
		const middleHz = middleOf(onRaster, spacingHz);
		return {
			kind: "tone",
			startS: Math.min(...onRaster.map(({ startS }) => startS)),
			endS: Math.max(...onRaster.map(({ endS }) => endS)),
			audioHz: middleHz,
			uncertaintyHz: strongest.uncertaintyHz,
			snrDb: strongest.snrDb,
			onRatio: 1,
			summary: `${what}: black and white alternate ${spacingHz} times a second about ${middleHz.toFixed(1)} Hz.`,
		};
	}
	return null;
}

/** The line nearest to the middle of the lines' power: they stand symmetrically about the sub-carrier. */
function middleOf(lines: readonly HeardTone[], spacingHz: number): number {
	const strength = ({ snrDb }: HeardTone) => Math.max(0, snrDb + 40);
	const sum = lines.reduce((total, line) => total + strength(line), 0);
	const centroid = lines.reduce((total, line) => total + strength(line) * line.audioHz, 0) / sum;
	const nearest = lines.reduce((best, line) => (Math.abs(line.audioHz - centroid) < Math.abs(best.audioHz - centroid) ? line : best));
	return nearest.audioHz + Math.round((centroid - nearest.audioHz) / spacingHz) * spacingHz;
}

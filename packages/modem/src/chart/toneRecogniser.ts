import { cos, sin } from "@skipwright/units";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { CHART_CENTRE_HZ, START_TONE_HZ, STOP_TONE_HZ } from "./chartFigures.ts";

/** Hz at which black and white may alternate. */
const TONES_HZ = [START_TONE_HZ[576], START_TONE_HZ[288], STOP_TONE_HZ] as const;
/** Samples that are added up to one value, and values in a frame: the highest tone loses 0.4 dB. */
const VALUE_SAMPLES = 2,
	FRAME_VALUES = FRAME_SAMPLES / VALUE_SAMPLES;
const VALUES_PER_S = MODEM_RATE_HZ / VALUE_SAMPLES;
/** All tones repeat within so many values. */
const CYCLE_VALUES = VALUES_PER_S / 25;
/** Frames that are added in phase: 256 ms, a filter 4 Hz wide. */
const GROUP_FRAMES = 8;
/** Groups that must agree: a chart's own pattern rarely holds one pitch for two lines. */
const GROUPS = 3;
/** Share of the frequency's variance that the tone makes: 8/pi^2 for a clean one, a thousandth for noise. In each group; in the mean. */
const LEAST_SHARE = 0.12,
	MEAN_SHARE = 0.2;
/** Cosine of the angle by which a tone may turn from group to group: 75 degrees, 0.8 Hz. A screen of 8 elements at 120 lines a minute has 452.4 Hz. */
const LEAST_COSINE = 0.26;
/** Hz. The alternation's size between which it is one: half of the lower is that of the narrowest in use. */
const LEAST_SWING_HZ = 100,
	MOST_SWING_HZ = 700;
/** Hz from the usual middle beyond which a frequency is a click. */
const CLICK_HZ = 800;

export interface RecognisedTone {
	readonly toneHz: number;
	/** Frames ago that it began. */
	readonly frames: number;
	/** Hz. Middle between black and white. */
	readonly centreHz: number;
}

/** Tells from the frequencies of frame after frame when black and white alternate at the rate that begins or ends a chart. */
export interface ToneRecogniser {
	/** The tone now going on, at the end of a group; null when there is none or the group is not complete. */
	frame(hz: Float64Array): RecognisedTone | null;
}

interface Phasor {
	i: number;
	q: number;
}

interface Group {
	readonly shares: readonly number[];
	readonly meanHz: number;
}

export function createToneRecogniser(): ToneRecogniser {
	const values = new Float64Array(FRAME_VALUES); // Hz from the usual middle
	const tables = TONES_HZ.map((toneHz) => waves(toneHz));
	const sums: Phasor[] = TONES_HZ.map(() => ({ i: 0, q: 0 }));
	const last: Phasor[] = TONES_HZ.map(() => ({ i: 0, q: 0 }));
	const running = TONES_HZ.map(() => 0); // groups in a row that hold the tone
	let groups: Group[] = [];
	let [frames, at, sum, squares] = [0, 0, 0, 0];

	function add(phasor: Phasor, { cosines, sines }: Waves): void {
		let [i, q] = [0, 0];
		for (let n = 0; n < FRAME_VALUES; n++) {
			i += values[n]! * cosines[at + n]!;
			q += values[n]! * sines[at + n]!;
		}
		phasor.i += i;
		phasor.q += q;
	}

	function closeGroup(): void {
		const count = GROUP_FRAMES * FRAME_VALUES;
		const meanHz = sum / count;
		const variance = squares / count - meanHz * meanHz;
		const shares = sums.map(({ i, q }) => {
			const swing = (2 / count) * Math.sqrt(i * i + q * q);
			return swing > LEAST_SWING_HZ && swing < MOST_SWING_HZ ? (swing * swing) / 2 / variance : 0;
		});
		groups = [...groups.slice(1 - GROUPS), { shares, meanHz: CHART_CENTRE_HZ + meanHz }];
		for (const [tone, share] of shares.entries()) {
			if (share <= LEAST_SHARE) running[tone] = 0;
			else running[tone] = isInStep(sums[tone]!, last[tone]!) ? running[tone]! + 1 : 1;
			last[tone] = { ...sums[tone]! };
			sums[tone]!.i = sums[tone]!.q = 0;
		}
		[frames, sum, squares] = [0, 0, 0];
	}
	return {
		frame(hz) {
			for (let n = 0; n < FRAME_VALUES; n++) {
				const mean = (hz[2 * n]! + hz[2 * n + 1]!) / VALUE_SAMPLES - CHART_CENTRE_HZ;
				const value = Math.max(-CLICK_HZ, Math.min(CLICK_HZ, mean));
				values[n] = value;
				sum += value;
				squares += value * value;
			}
			for (const [tone, table] of tables.entries()) add(sums[tone]!, table);
			at = (at + FRAME_VALUES) % CYCLE_VALUES;
			if (++frames < GROUP_FRAMES) return null;
			closeGroup();
			for (const [tone, toneHz] of TONES_HZ.entries()) {
				if (running[tone]! < GROUPS || meanOf(groups.map(({ shares }) => shares[tone]!)) < MEAN_SHARE) continue;
				return { toneHz, frames: running[tone]! * GROUP_FRAMES, centreHz: meanOf(groups.map(({ meanHz }) => meanHz)) };
			}
			return null;
		},
	};
}

function isInStep(a: Phasor, b: Phasor): boolean {
	return a.i * b.i + a.q * b.q > LEAST_COSINE * Math.sqrt((a.i * a.i + a.q * a.q) * (b.i * b.i + b.q * b.q));
}

interface Waves {
	readonly cosines: Float64Array;
	readonly sines: Float64Array;
}

/** A cycle of all tones and a frame more, so that a frame may begin anywhere in the cycle. */
function waves(toneHz: number): Waves {
	const angle = (2 * Math.PI * toneHz) / VALUES_PER_S;
	const empty = new Float64Array(CYCLE_VALUES + FRAME_VALUES);
	return { cosines: empty.map((_, n) => cos(angle * n)), sines: empty.map((_, n) => sin(angle * n)) };
}

function meanOf(values: readonly number[]): number {
	return values.reduce((sum, value) => sum + value, 0) / values.length;
}

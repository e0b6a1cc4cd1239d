import { log10 } from "@skipwright/units";
import type { Levels } from "./discriminator.ts";

/** dB from frame to frame, in the mean, beyond which a signal is not steady: notes and syllables, where fading is slow. */
const MOST_CHANGE_DB = 1.5;

/** Signal power over all power, 0 to 1, of frames that hold a signal of steady size in noise. */
export function steadiness(frames: readonly Levels[]): number {
	const shares = frames.map(squaredShare).toSorted((a, b) => a - b);
	return shares.length === 0 ? 0 : Math.sqrt(Math.max(0, shares[Math.floor(shares.length / 2)]!));
}

/** Whether the power changes little from frame to frame. */
export function isEven(frames: readonly Levels[]): boolean {
	const levels = frames.map(({ power }) => 10 * log10(Math.max(power, 1e-20)));
	const change = levels.slice(1).reduce((sum, level, n) => sum + Math.abs(level - levels[n]!), 0);
	return change < MOST_CHANGE_DB * (levels.length - 1);
}

/**
 * With signal power S and noise N the mean power is S + N and its mean square S^2 + 4 S N + 2 N^2 (Rice), so twice the square of the
 * first less the second is S^2. Taken frame by frame, a slow fade does no harm.
 */
function squaredShare({ power, powerSquared }: Levels): number {
	return power > 0 ? 2 - powerSquared / (power * power) : 0;
}

import { exp, sin } from "@skipwright/units";
import { logBesselI0 } from "./logBessel.ts";

/** Bit error rate of orthogonal binary keying told by its envelopes alone, in white noise: the textbook's 0.5 exp(-Eb / 2 N0). */
export function orthogonalErrorRate(ebN0Db: number): number {
	return 0.5 * exp(-ratioOf(ebN0Db) / 2);
}

/**
 * The same where the tones are not orthogonal: `turns` is their distance in turns a bit (170 Hz at 100 Bd: 1.7), their correlation
 * r = sin(pi turns) / (pi turns). Q1(a, b) - 0.5 exp(-(a^2 + b^2) / 2) I0(a b), a and b squared = Eb / 2 N0 (1 -+ sqrt(1 - r^2)), Q1 Marcum's
 * function. Source: Proakis, Digital Communications, noncoherent detection of correlated binary signals (from memory; at r = 0 it is the
 * orthogonal rate, at r = 1 one half, and a count of 100 000 bits by a bare comparison of envelopes agrees).
 */
export function envelopeErrorRate(ebN0Db: number, turns: number): number {
	const ratio = ratioOf(ebN0Db);
	const correlation = sin(Math.PI * turns) / (Math.PI * turns);
	const rest = Math.sqrt(1 - correlation * correlation);
	const a = Math.sqrt((ratio / 2) * (1 - rest));
	const b = Math.sqrt((ratio / 2) * (1 + rest));
	return marcumQ(a, b) - 0.5 * exp(logBesselI0(a * b) - (a * a + b * b) / 2);
}

/** Integral from b of x exp(-(x^2 + a^2) / 2) I0(a x), by Simpson's rule over twelve deviations. */
function marcumQ(a: number, b: number): number {
	const steps = 2_400;
	const width = 12 / steps;
	let sum = 0;
	for (let i = 0; i <= steps; i++) {
		const x = b + i * width;
		const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
		sum += weight * x * exp(logBesselI0(a * x) - (x * x + a * a) / 2);
	}
	return (sum * width) / 3;
}

function ratioOf(db: number): number {
	return exp((db * Math.LN10) / 10);
}

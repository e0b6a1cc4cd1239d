import type { Turn } from "@skipwright/set";
import { formatKhz } from "@skipwright/units";

/**
 * Turns of the knob, short enough to stand under a dial: `+5×10k −2×1k` is five clicks up with the 10 kHz step
 * and two down with the 1 kHz step. No turns is `stays`.
 */
export function shortTurns(turns: readonly Turn[]): string {
	const parts = turns.filter(({ clicks }) => clicks !== 0).map(turnText);
	return parts.length === 0 ? "stays" : parts.join(" ");
}

function turnText({ stepHz, clicks }: Turn): string {
	return `${clicks < 0 ? "−" : "+"}${Math.abs(clicks)}×${stepText(stepHz)}`;
}

/** Steps in words of their own unit: 1M, 10k, 0.1k, 10 (hertz) as 0.01k. */
function stepText(stepHz: Turn["stepHz"]): string {
	return stepHz % 1_000_000 === 0 ? `${stepHz / 1_000_000}M` : `${formatKhz(stepHz)}k`;
}

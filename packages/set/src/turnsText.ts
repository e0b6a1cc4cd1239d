import { formatKhz } from "@skipwright/units";
import type { SheetStep, Turn } from "./types.ts";

/** Turns in words that no spreadsheet takes for a formula. @example `"10 kHz up 5, 1 kHz down 2"` */
export function turnsText(turns: readonly Turn[]): string {
	return turns.length === 0
		? "stays"
		: turns.map(({ stepHz, clicks }) => `${stepText(stepHz)} ${clicks > 0 ? "up" : "down"} ${Math.abs(clicks)}`).join(", ");
}

function stepText(stepHz: Turn["stepHz"]): string {
	if (stepHz % 1_000_000 === 0) return `${stepHz / 1_000_000} MHz`;
	return stepHz < 100 ? `${stepHz} Hz` : `${formatKhz(stepHz)} kHz`;
}

/** Both sides of one step's turns; "from any" where the dial before is not known or no clicks lead from there. */
export function stepTurnsText({ action, receive, transmit, receiveTurns, transmitTurns }: SheetStep): string {
	if (action === "clear") return "";
	const receiveText = receiveTurns === null ? "from any" : turnsText(receiveTurns);
	if (transmit === null || transmit === receive) return receiveText;
	return `${receiveText}; transmit ${transmitTurns === null ? "from any" : turnsText(transmitTurns)}`;
}

import type { Heard } from "@skipwright/modem";

/** A test call by selective calling with one's own ship at one end: "call" as sent by her, "answer" as it came back; null for anything else. */
export function ownTest(item: Heard, ownMmsi: string | null): "call" | "answer" | null {
	if (item.kind !== "dsc" || item.call === null || ownMmsi === null || !item.ok) return null;
	const { telecommand1, category, from, to, distress, end } = item.call;
	if (telecommand1 !== "test" || category !== "safety" || distress !== null) return null;
	if (to === ownMmsi) return end === "acknowledgement given" ? "answer" : null;
	return from === ownMmsi ? "call" : null;
}

import type { Severity } from "@skipwright/set";

const CODES = { bold: "1", dim: "2", stop: "1;31", fix: "33", mind: "36" } as const;

/** Marks text for a terminal; plain when colour is off. Severity is always a word as well, never colour alone. */
export function paint(colour: boolean, style: keyof typeof CODES, text: string): string {
	return colour ? `\u001b[${CODES[style]}m${text}\u001b[0m` : text;
}

/** Counts by severity, in words. @example `"2 stop, 1 fix, 14 mind"` */
export function countText(findings: readonly { readonly severity: Severity }[]): string {
	const count = (severity: Severity) => findings.filter((finding) => finding.severity === severity).length;
	return `${count("stop")} stop, ${count("fix")} fix, ${count("mind")} mind`;
}

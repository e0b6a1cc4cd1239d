import type { Finding, Severity } from "@skipwright/set";
import { paint } from "./paint.ts";

/** Findings as lines for a person: what, where, why it matters, what to do. */
export function findingsText(findings: readonly Finding[], colour: boolean): string {
	return findings.map((finding) => findingText(finding, colour)).join("");
}

function findingText(finding: Finding, colour: boolean): string {
	const { severity, code, bank, place, line, message, remedy, source } = finding;
	const where = bank === null ? "whole list" : `${bank} ${place} (line ${line})`;
	const head = `${paint(colour, severity as Severity, severity.toUpperCase().padEnd(4))} ${where}: ${message}`;
	return `${head}\n       do: ${remedy}\n       ${paint(colour, "dim", `${code}; ${source}`)}\n`;
}

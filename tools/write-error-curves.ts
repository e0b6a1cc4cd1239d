/**
 * Counts bit errors of the keying receiver and draws them as docs/receivers-noise.svg and docs/receivers-fading.svg beside the textbook's curves.
 * Run `node tools/write-error-curves.ts` after a change of the receiver; it takes some minutes.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import {
	type Counted,
	countedErrors,
	FADING_REFERENCES,
	FADING_TRIALS,
	type Reference,
	STEADY_REFERENCES,
	STEADY_TRIALS,
	type Trial,
} from "../packages/modem/src/fsk/errorCurves.sample.ts";

const BITS = 100_000;
const [WIDTH, HEIGHT] = [720, 460];
const [LEFT, RIGHT, TOP, BOTTOM] = [64, 16, 40, 48];
/** Lowest rate drawn, as a power of ten; the highest is 1. */
const LOWEST = -5;
/** Told apart without colour: by the shape of the points and the dashes of the line. */
const INKS = ["#0b5394", "#b45f06", "#38761d", "#741b47"];
const DASHES = ["none", "7 4", "2 3"];

export interface ErrorCurve {
	readonly name: string;
	readonly counts: readonly Counted[];
}

/** Bit error rate against Eb/N0: references as lines, counts as points joined by lines. Rates of no error are left out. */
export function errorCurveSvg(
	title: string,
	fromDb: number,
	toDb: number,
	references: readonly Reference[],
	curves: readonly ErrorCurve[],
): string {
	const x = (db: number) => round(LEFT + ((db - fromDb) / (toDb - fromDb)) * (WIDTH - LEFT - RIGHT));
	const y = (rate: number) => round(TOP + (Math.log10(rate) / LOWEST) * (HEIGHT - TOP - BOTTOM));
	const parts: string[] = [];
	for (let power = 0; power >= LOWEST; power--) {
		const at = y(10 ** power);
		parts.push(
			`<path d="M${LEFT} ${at}H${WIDTH - RIGHT}" stroke="#ccc"/>`,
			text(LEFT - 8, at + 4, "end", power === 0 ? "1" : `1e${power}`),
		);
	}
	for (let db = fromDb; db <= toDb; db += toDb - fromDb > 14 ? 2 : 1) {
		parts.push(`<path d="M${x(db)} ${TOP}V${HEIGHT - BOTTOM}" stroke="#eee"/>`, text(x(db), HEIGHT - BOTTOM + 18, "middle", `${db}`));
	}
	parts.push(text(WIDTH / 2, HEIGHT - 10, "middle", "Eb/N0, dB"), text(LEFT, 22, "start", title, 15));
	const legend: string[] = [];
	const legendY = (row: number) => HEIGHT - BOTTOM - 12 - 18 * (references.length + curves.length - 1 - row);
	for (const [i, { name, rate }] of references.entries()) {
		const points: string[] = [];
		for (let db = fromDb; db <= toDb; db += 0.1) if (rate(db) >= 10 ** LOWEST) points.push(`${x(db)} ${y(rate(db))}`);
		const style = `fill="none" stroke="#333" stroke-width="1.5" stroke-dasharray="${DASHES[i % DASHES.length]}"`;
		parts.push(`<path d="M${points.join("L")}" ${style}/>`);
		legend.push(`<path d="M${LEFT + 12} ${legendY(i) - 4}h32" ${style}/>`, text(LEFT + 52, legendY(i), "start", name));
	}
	for (const [i, { name, counts }] of curves.entries()) {
		const ink = INKS[i % INKS.length]!;
		const at = counts.filter(({ wrong }) => wrong > 0).map(({ ebN0Db, bits, wrong }) => [x(ebN0Db), y(wrong / bits)] as const);
		parts.push(`<path d="M${at.map((point) => point.join(" ")).join("L")}" fill="none" stroke="${ink}"/>`);
		for (const [px, py] of at) parts.push(mark(i, px, py, ink));
		const row = legendY(references.length + i);
		legend.push(mark(i, LEFT + 28, row - 4, ink), text(LEFT + 52, row, "start", name));
	}
	const head = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-family="sans-serif" font-size="12" role="img" aria-label="${title}">`;
	const frame = `<rect width="${WIDTH}" height="${HEIGHT}" fill="#fff"/>`;
	return `${[head, frame, ...parts, ...legend].join("\n")}\n</svg>\n`;
}

function mark(shape: number, x: number, y: number, ink: string): string {
	const shapes = ["M-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0", "M-4 -4h8v8h-8z", "M0 -5l5 9h-10z", "M0 -5l5 5l-5 5l-5 -5z"];
	return `<path transform="translate(${x} ${y})" d="${shapes[shape % shapes.length]}" fill="${ink}"/>`;
}

function text(x: number, y: number, anchor: "start" | "middle" | "end", words: string, size = 12): string {
	return `<text x="${x}" y="${round(y)}" text-anchor="${anchor}" font-size="${size}" fill="#222">${words}</text>`;
}

function round(value: number): number {
	return Math.round(value * 100) / 100;
}

if (import.meta.main) {
	const counted = (trials: readonly Trial[]) => trials.map((trial) => ({ name: trial.name, counts: countedErrors(trial, BITS) }));
	const pictures = [
		{
			file: "receivers-noise.svg",
			title: "170 Hz at 100 Bd in white noise, 100 000 bits a point",
			span: [2, 13],
			references: STEADY_REFERENCES,
			trials: STEADY_TRIALS,
		},
		{
			file: "receivers-fading.svg",
			title: "The same in moderate fading at middle latitudes (F.1487: 1 ms, 0.5 Hz)",
			span: [4, 28],
			references: FADING_REFERENCES,
			trials: FADING_TRIALS,
		},
	] as const;
	for (const { file, title, span, references, trials } of pictures) {
		writeFileSync(join(import.meta.dirname, "..", "docs", file), errorCurveSvg(title, span[0], span[1], references, counted(trials)));
		console.log(`docs/${file}`);
	}
}

import { log } from "@skipwright/units";
import { CELLS_PER_SECOND } from "./toneCells.ts";

/** One character on the likeliest path. */
export interface PathCharacter {
	readonly code: number;
	/** Cell in which its start element begins, from the first cell given. */
	readonly startCell: number;
	/** Log likelihood ratio, nats, of its start being space rather than mark, and of its stop being mark. Below 0: it is broken. */
	readonly startNats: number;
	readonly stopNats: number;
	/** Log likelihood ratio, nats, of all its elements against noise alone. */
	readonly nats: number;
}

export interface StartStopPath {
	/** Cells of an element. */
	readonly elementCells: number;
	/** Cells of the shortest character. */
	readonly characterCells: number;
	/** Takes, for cell after cell, the log likelihoods of mark and of space, against noise alone, over the element that ends with it. */
	push(markNats: Float64Array, spaceNats: Float64Array): void;
	/** Nats of the likeliest course so far. */
	score(): number;
	/** Characters settled since the last call. */
	settle(): readonly PathCharacter[];
	/** The last characters: the course that explains most up to its end. */
	finish(): readonly PathCharacter[];
}

const CODE_BITS = 5;
/** Start, data and one element of stop; a longer stop is rest. */
const ELEMENTS = 7;
/** Elements by which a stop differs from one: speeds differ by a per cent or so, and what is longer still is rest. */
const STOP_EXTRAS = [0, -0.1, 0.1, 0.5, 1],
	EXTRAS = STOP_EXTRAS.length;
/** Cells within which two stops are alike, and what of the count of stops is kept at each character. */
const SAME_CELLS = 2,
	STOP_KEEP = 0.96;
/** Cells kept: more than the delay of a decision and a character. */
const RING = 4_096;
const MASK = RING - 1;
/** Characters that must follow before one is settled. */
const DELAY_CHARACTERS = 3;
/** Cells between two looks back. */
const LOOK_CELLS = 256;
/** Nats. What the five even chances of the data cost. */
const CHARACTER_NATS = CODE_BITS * Math.LN2;
const RESTING = -1;

/**
 * Finds the likeliest course of a start-stop signal: rest (mark) and characters of start, five elements and stop, beginning at any cell
 * (Viterbi's algorithm over cells). Timing thus comes from every element, and noise in one start does not break those after it.
 */
export function createStartStopPath(baud: number): StartStopPath {
	const border = Array.from({ length: ELEMENTS + 1 }, (_, i) => Math.round((i * CELLS_PER_SECOND) / baud));
	const [b1, b7] = [border[1]!, border[ELEMENTS]!];
	const extra = STOP_EXTRAS.map((elements) => Math.round((elements * CELLS_PER_SECOND) / baud));
	const half = Math.round(b1 / 2);
	const dataEnds = border.slice(2, 2 + CODE_BITS);
	const mark = new Float64Array(RING);
	const space = new Float64Array(RING);
	const larger = new Float64Array(RING);
	const best = new Float64Array(RING);
	/** As `best`, but ending in a rest that does not count as a stop. */
	const rest = new Float64Array(RING);
	const body = new Float64Array(RING);
	/** `best` where a character begins and its `body`. */
	const toBody = new Float64Array(RING);
	/** 1: a rest that ends here was one the cell before; 0: it begins after a character. */
	const restsOn = new Int8Array(RING);
	/** How a course comes to its cell: by a stop, its place in `extra`, or `RESTING`. */
	const step = new Int8Array(RING).fill(RESTING);
	const perCell = 1 / b1;
	let at = 0;
	let settled = 0;
	/** How characters stopped of late, by `extra` and with any other rest last; and what that makes likely, nats. */
	const stops = new Float64Array(extra.length + 1);
	const stopNats = new Float64Array(extra.length + 1).fill(log(1 / (extra.length + 1)));
	let lastStart = 0;
	let looked = 0;

	/** Characters on the course that ends at `from`, settled ones and those that end after `before` left out, oldest first. */
	function courseTo(from: number, before: number): PathCharacter[] {
		const found: PathCharacter[] = [];
		// A later look may move a settled character by a cell or two; the next one then begins that much earlier.
		const oldest = Math.max(settled - half, from - RING + 2 * b7, 0);
		let isResting = step[from & MASK] === RESTING;
		for (let cell = from; cell > oldest; ) {
			if (isResting) {
				isResting = restsOn[cell & MASK] === 1;
				cell--;
			} else {
				cell -= b7 + extra[step[cell & MASK]!]!;
				isResting = step[cell & MASK] === RESTING;
				if (cell < settled - half || cell + b7 > before) continue;
				const [s, e] = [(cell + b1) & MASK, (cell + b7) & MASK];
				const code = codeFrom(cell);
				const nats = body[cell & MASK]! + CHARACTER_NATS + mark[e]!;
				found.push({ code, startCell: cell, startNats: space[s]! - mark[s]!, stopNats: mark[e]! - space[e]!, nats });
			}
		}
		if (found.length > 0) settled = found[0]!.startCell + b7;
		found.reverse();
		for (const { startCell } of found) countStop(startCell);
		return found;
	}

	/** Learns from where a character begins how the one before it stopped. */
	function countStop(startCell: number): void {
		const longer = startCell - lastStart - b7;
		lastStart = startCell;
		const kind = extra.findIndex((cells) => Math.abs(longer - cells) <= SAME_CELLS);
		let all = 0;
		for (let i = 0; i < stops.length; i++) {
			stops[i] = stops[i]! * STOP_KEEP + (i === kind || (kind < 0 && i === extra.length) ? 1 : 0);
			all += stops[i]! + 1;
		}
		for (let i = 0; i < stops.length; i++) stopNats[i] = log((stops[i]! + 1) / all);
	}

	/** Start and data of a character that begins at `from`, each element as it is likelier. */
	function weighBody(from: number): void {
		let sum = space[(from + b1) & MASK]! - CHARACTER_NATS;
		for (let i = 0; i < CODE_BITS; i++) sum += larger[(from + dataEnds[i]!) & MASK]!;
		body[from & MASK] = sum;
		toBody[from & MASK] = best[from & MASK]! + sum;
	}

	function codeFrom(from: number): number {
		let code = 0;
		for (let i = 0; i < CODE_BITS; i++) {
			const k = (from + dataEnds[i]!) & MASK;
			if (mark[k]! > space[k]!) code |= 1 << i;
		}
		return code;
	}

	/** One cell further; weighs the courses that end half an element before it. */
	function pushCell(markNats: number, spaceNats: number): void {
		at++;
		mark[at & MASK] = markNats;
		space[at & MASK] = spaceNats;
		larger[at & MASK] = Math.max(markNats, spaceNats);
		const here = at - half;
		if (here < 1) return;
		const before = (here - 1) & MASK;
		const entering = best[before]! + stopNats[EXTRAS]!;
		const resting = rest[before]!;
		restsOn[here & MASK] = resting >= entering ? 1 : 0;
		// The window ending half an element later is centred here.
		let most = Math.max(resting, entering) + markNats * perCell;
		rest[here & MASK] = most;
		let taken = RESTING;
		// Data end an element before the stop does, so that the shortest stop's are all here.
		const from = here - b7 + half;
		if (from >= 0) {
			weighBody(from);
			const markHere = mark[here & MASK]!;
			const markNow = markHere * perCell;
			for (let i = 0; i < EXTRAS; i++) {
				const longer = extra[i]!;
				const start = here - b7 - longer;
				if (start < 0) continue;
				// What the stop is longer is weighed by its last element, which holds nothing but mark.
				const stop = longer > 0 ? mark[(start + b7) & MASK]! + markNow * longer : markHere;
				const score = toBody[start & MASK]! + stop + stopNats[i]!;
				if (score > most) {
					most = score;
					taken = i;
				}
			}
		}
		best[here & MASK] = most;
		step[here & MASK] = taken;
	}

	/** Where the last whole character or rest ended: a character may be under way since, and is weighed by what has come of it. */
	function likeliestEnd(here: number): number {
		let end = here;
		let most = Number.NEGATIVE_INFINITY;
		const lastPerCell = larger[at & MASK]! * perCell;
		for (let cell = Math.max(0, here - b7 + 1); cell <= here; cell += 2) {
			let score = best[cell & MASK]!;
			let next = 1;
			for (; cell + border[next]! <= at; next++) {
				const k = (cell + border[next]!) & MASK;
				score += next === 1 ? space[k]! : larger[k]!;
			}
			score += (at - cell - border[next - 1]!) * lastPerCell;
			if (score <= most) continue;
			end = cell;
			most = score;
		}
		return end;
	}

	return {
		elementCells: b1,
		characterCells: b7,
		push(markNats, spaceNats) {
			for (let i = 0; i < markNats.length; i++) pushCell(markNats[i]!, spaceNats[i]!);
		},
		score: () => best[Math.max(0, at - half) & MASK]!,
		settle() {
			const here = at - half;
			if (here - looked < LOOK_CELLS) return [];
			looked = here;
			const end = likeliestEnd(here);
			return courseTo(end, here - DELAY_CHARACTERS * b7);
		},
		finish() {
			const here = at - half;
			let end = Math.max(here, 0);
			for (let cell = Math.max(here - b7, 0); cell < here; cell++) if (best[cell & MASK]! > best[end & MASK]!) end = cell;
			return courseTo(end, end).filter(({ startCell }) => mark[(startCell + b7) & MASK]! > 0); // a stop that was still sent
		},
	};
}

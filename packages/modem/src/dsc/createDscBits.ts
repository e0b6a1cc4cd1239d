import type { SoftBits } from "../fsk/demodulate.ts";
import { addBits, type CarrierBits, callEvidence, continuedCarrierBits, forgetBits, newCarrierBits, type Opening } from "./carrierBits.ts";
import { DSC_BAUD } from "./dscCall.ts";
import { type HeardDsc, heardDsc } from "./heardDsc.ts";
import { onceEach, REPEAT_S, SAME_HZ, type WaitingCall } from "./onceEach.ts";
import { LONG_DOTS } from "./sequence.ts";
import { LONGEST_CALL_BITS } from "./softCall.ts";

/** Reads calls from soft bits, of any number of carriers at once. */
export interface DscBits {
	/** Takes what a frame has brought, the stream being at `nowS`; returns the calls that are complete with it. */
	take(bits: readonly SoftBits[], nowS: number): readonly HeardDsc[];
	end(): readonly HeardDsc[];
}

/** Seconds in which another carrier may bring the same call better. */
const SETTLE_S = 1;
/** Seconds after its end until the phasing of an alert's repeat must have been seen. */
const REPEAT_SEEN_S = 7;

/** Seconds that an attempt of five alerts on end takes, with something over. */
const ATTEMPT_S = 45;

/** A carrier that was lost in the middle of calls: where it lay, and when they began. */
interface Lost {
	readonly carrier: CarrierBits;
	readonly centreHz: number;
	readonly startsS: readonly number[];
	readonly lastS: number;
}

export function createDscBits(): DscBits {
	const carriers = new Map<number, CarrierBits>();
	let lost: readonly Lost[] = [];
	let waiting: readonly WaitingCall[] = [];

	return {
		take(bits, nowS) {
			for (const chunk of bits) {
				const carrier = carriers.get(chunk.carrier) ?? begun(chunk);
				if (carrier === null) continue;
				carriers.set(chunk.carrier, carrier);
				addBits(carrier, chunk);
				const unread = close(carrier, chunk.isOver ? Number.POSITIVE_INFINITY : carrier.count, nowS);
				if (!chunk.isOver) forgetBits(carrier);
				else {
					carriers.delete(chunk.carrier);
					lose(carrier, chunk.centreHz, unread);
				}
			}
			return due(nowS);
		},
		end() {
			for (const carrier of carriers.values()) close(carrier, Number.POSITIVE_INFINITY, 0);
			carriers.clear();
			return due(Number.POSITIVE_INFINITY);
		},
	};

	/** A new carrier; where one was lost in the middle of a call, that call goes on. */
	function begun({ atS, centreHz }: SoftBits): CarrierBits | null {
		const firstS = atS[0];
		if (firstS === undefined) return null;
		const isBefore = (one: Lost) => Math.abs(one.centreHz - centreHz) < SAME_HZ && firstS - one.lastS < LONGEST_CALL_BITS / DSC_BAUD;
		const before = lost.findLast(isBefore);
		return before === undefined ? newCarrierBits(firstS) : continuedCarrierBits(firstS, before.carrier, before.startsS);
	}

	function lose(carrier: CarrierBits, centreHz: number, unread: readonly Opening[]): void {
		const lastS = carrier.atS[carrier.count - 1]!;
		lost = lost.filter((one) => lastS - one.lastS < LONGEST_CALL_BITS / DSC_BAUD);
		if (unread.length > 0) lost = [...lost, { carrier, centreHz, startsS: unread.map(({ start }) => carrier.atS[start]!), lastS }];
	}

	/** Reads the calls that all bits are there of; returns the openings of those that could not be read whole. */
	function close(carrier: CarrierBits, until: number, nowS: number): readonly Opening[] {
		const complete = carrier.openings.filter(({ start }) => start + LONGEST_CALL_BITS <= until);
		carrier.openings = carrier.openings.filter((opening) => !complete.includes(opening));
		return complete.filter((opening) => {
			const alone = heardDsc(carrier, opening);
			const found = alone?.heard.ok ? alone : (readTogether(carrier, opening) ?? alone);
			if (found !== null) waiting = onceEach(waiting, { ...found, dueS: nowS + SETTLE_S });
			if (found?.heard.ok) return false;
			const startS = carrier.atS[opening.start]!;
			const recent = carrier.unread.filter((one) => startS - one.startS < ATTEMPT_S);
			carrier.unread = [...recent, { ...callEvidence(carrier, opening), isInverted: opening.isInverted, startS }];
			return true;
		});
	}

	/** What has waited long enough: a call read in part as long as one is open that may be it, an alert as long as it may come again. */
	function due(nowS: number): readonly HeardDsc[] {
		const starts = [...carriers.values()].flatMap(({ openings, atS }) => openings.map(({ start }) => atS[start]!));
		const waits = ({ heard: { endS, call, ok }, dueS }: WaitingCall) => {
			if (nowS === Number.POSITIVE_INFINITY) return false;
			if (dueS > nowS || (!ok && starts.some((startS) => startS < endS))) return true;
			if (call?.format !== "distress alert") return false;
			return nowS < endS + REPEAT_SEEN_S || starts.some((startS) => startS < endS + REPEAT_S + LONG_DOTS / DSC_BAUD);
		};
		const ready = waiting.filter((one) => !waits(one));
		waiting = waiting.filter(waits);
		return ready.map(({ heard }) => heard).sort((a, b) => a.startS - b.startS);
	}
}

/** A distress alert that only adding up the last times it came makes readable. */
function readTogether(carrier: CarrierBits, opening: Opening): ReturnType<typeof heardDsc> {
	const before = carrier.unread.filter(({ isInverted }) => isInverted === opening.isInverted);
	for (let from = 0; from < before.length; from++) {
		const found = heardDsc(carrier, opening, before.slice(from));
		if (found?.heard.ok && found.heard.call?.format === "distress alert") return found;
	}
	return null;
}

import type { Channel } from "@skipwright/rules";
import type { Row } from "../types.ts";
import { channelName, type DialIndex, dialsNear, type KnownDial } from "./knownDials.ts";

/** What the two sides of a sending voice row are to the two-frequency channels of Appendix 17. */
export type PairState =
	| { readonly kind: "none" }
	| { readonly kind: "good"; readonly channel: Channel }
	| { readonly kind: "swapped"; readonly channel: Channel }
	| { readonly kind: "broken"; readonly channels: readonly Channel[] };

/**
 * Never broken: receive-only rows; simplex use of 4125, 6215, 8291 (channel 833), 12290 and 16420; coast-only channels
 * 428, 429 and 834-837, which administrations pair nationally; any pair that a listing publishes.
 */
export function pairState(row: Row, index: DialIndex, toleranceHz: number): PairState {
	const { transmit } = row;
	if (transmit === null || row.mode === "CW" || row.mode === "FSK") return { kind: "none" };
	const near = (dialHz: number) => dialsNear(index, row.mode, dialHz, toleranceHz).filter(({ fit }) => fit !== "poor" && isCarrierFit(fit));
	const receiveSides = near(row.receive);
	const transmitSides = near(transmit);
	const duplexAt = (sides: readonly KnownDial[], side: "ship" | "coast") =>
		sides.filter(({ known }) => known.side === side && isDuplex(known.channel));
	const channelsOf = (sides: readonly KnownDial[]) => sides.flatMap(({ known }) => (known.channel === null ? [] : [known.channel]));
	const good = channelsOf(duplexAt(receiveSides, "coast")).find((channel) => channelsOf(duplexAt(transmitSides, "ship")).includes(channel));
	if (good !== undefined) return { kind: "good", channel: good };
	if (isPublishedPair(row, receiveSides, toleranceHz)) return { kind: "none" };
	const swapped = channelsOf(duplexAt(receiveSides, "ship")).find((channel) =>
		channelsOf(duplexAt(transmitSides, "coast")).includes(channel),
	);
	if (swapped !== undefined) return { kind: "swapped", channel: swapped };
	const isOneFrequency = Math.abs(row.receive - transmit) <= toleranceHz;
	if (isOneFrequency && receiveSides.some(({ known }) => known.guard?.kind === "voice")) return { kind: "none" };
	if (receiveSides.some(({ known }) => known.channel?.use === "coast-only")) return { kind: "none" };
	const touched = channelsOf([...receiveSides, ...transmitSides].filter(({ known }) => isDuplex(known.channel)));
	return touched.length > 0 ? { kind: "broken", channels: [...new Set(touched)] } : { kind: "none" };
}

/** Fits in which the reading is the carrier itself, so that it says which channel is meant. */
function isCarrierFit(fit: KnownDial["fit"]): boolean {
	return fit === "right" || fit === "wrong-sideband" || fit === "wrong-mode";
}

function isDuplex(channel: Channel | null): boolean {
	return channel !== null && channel.ship !== null && channel.coast !== null && channel.ship !== channel.coast;
}

function isPublishedPair(row: Row, receiveSides: readonly KnownDial[], toleranceHz: number): boolean {
	return receiveSides.some(({ known: { listing } }) => {
		if (listing === null || listing.receiveOnly || row.transmit === null) return false;
		const coast = listing.coastTx ?? listing.hz;
		const ship = listing.shipTx ?? coast;
		return Math.abs(coast - row.receive) <= toleranceHz && Math.abs(ship - row.transmit) <= toleranceHz;
	});
}

/** "channel 424 (receive 4426, transmit 4134)" for messages. */
export function pairText(channel: Channel, khz: (hz: number) => string): string {
	const receive = channel.coast === null ? "-" : khz(channel.coast);
	const transmit = channel.ship === null ? "chosen nationally" : khz(channel.ship);
	return `${channelName(channel)} (receive ${receive}, transmit ${transmit} kHz)`;
}

import type { Hz } from "@skipwright/units";
import { APPENDIX17_VOICE_CSV } from "./data.gen.ts";
import { once, type ShippedRow, shippedRows } from "./shippedTable.ts";
import type { Channel } from "./types.ts";

/** A channel, and which of its two sides a frequency is. */
export interface ChannelSide {
	readonly channel: Channel;
	/** `both`: ship and coast use the same carrier. */
	readonly side: "ship" | "coast" | "both";
}

const COLUMNS = ["section", "band_mhz", "channel", "ship_khz", "coast_khz", "use", "confidence", "source", "note"];
const USES = ["duplex", "duplex-calling", "coast-only", "simplex", "ship-ship", "ship-ship-cross-band"] as const;

function readChannel(row: ShippedRow): Channel {
	return {
		section: row.oneOf("section", ["A", "B", "C-1", "C-2"]),
		bandMhz: row.whole("band_mhz"),
		number: row.wholeOrNull("channel"),
		ship: row.khzOrNull("ship_khz"),
		coast: row.khzOrNull("coast_khz"),
		use: row.oneOf("use", USES),
		source: row.text("source"),
		confidence: row.confidence(),
		note: row.text("note"),
	};
}

const table = once(() => shippedRows("appendix17-voice.csv", APPENDIX17_VOICE_CSV, COLUMNS).map(readChannel));

const byCarrier = once(() => {
	const sides = new Map<number, ChannelSide[]>();
	const add = (carrier: Hz | null, side: ChannelSide) => {
		if (carrier !== null) sides.set(carrier, [...(sides.get(carrier) ?? []), side]);
	};
	for (const channel of table()) {
		if (channel.ship !== null && channel.ship === channel.coast) add(channel.ship, { channel, side: "both" });
		else {
			add(channel.ship, { channel, side: "ship" });
			add(channel.coast, { channel, side: "coast" });
		}
	}
	return sides;
});

const byNumber = once(() => new Map(table().map((channel) => [channel.number, channel])));

/** Every row of Appendix 17 voice, in the table's order. */
export function channels(): readonly Channel[] {
	return table();
}

/** Channels of which `carrierHz` is exactly a carrier. */
export function channelsAt(carrierHz: Hz): readonly ChannelSide[] {
	return byCarrier().get(carrierHz) ?? [];
}

/** @example `channelByNumber(421)?.coast` is `4417000` */
export function channelByNumber(number: number): Channel | null {
	return byNumber().get(number) ?? null;
}

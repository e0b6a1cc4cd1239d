import type { Hz } from "@skipwright/units";
import type { Channel } from "./types.ts";

/** A channel, and which of its two sides a frequency is. */
export interface ChannelSide {
	readonly channel: Channel;
	/** `both`: ship and coast use the same carrier. */
	readonly side: "ship" | "coast" | "both";
}

/** Every row of Appendix 17 voice, in the table's order. */
export function channels(): readonly Channel[] {
	throw new Error("not built yet");
}

/** Channels of which `carrierHz` is exactly a carrier. */
export function channelsAt(_carrierHz: Hz): readonly ChannelSide[] {
	throw new Error("not built yet");
}

export function channelByNumber(_number: number): Channel | null {
	throw new Error("not built yet");
}

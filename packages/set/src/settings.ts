import * as z from "zod";

const Shows = z.enum(["carrier", "centre", "mark"]).exactOptional();

/** Settings of the set beside its places, as found or as wanted. What is absent was not read, or is to stay as found. */
export const SettingsSchema = z.strictObject({
	dialForms: z
		.strictObject({ USB: Shows, LSB: Shows, AM: Shows, CW: Shows, FSK: Shows })
		.exactOptional()
		.describe("what the display shows in each mode, where the set lets one choose"),
	squelch: z.enum(["off", "level", "speech"]).exactOptional(),
	sense: z.enum(["normal", "reversed"]).exactOptional().describe("FSK: normal, mark is the lower radio frequency"),
	shiftHz: z.number().positive().max(10_000).exactOptional().describe("FSK: hertz between the two tones"),
	power: z.enum(["low", "medium", "high"]).exactOptional(),
	tuner: z.enum(["in", "out"]).exactOptional(),
	dscWatchHz: z.array(z.int().min(0).max(1_000_000_000)).max(100).exactOptional().describe("whole hertz, in the order of the set's table"),
	positionFeed: z.enum(["automatic", "by-hand", "none"]).exactOptional(),
	mmsi: z.string().max(40).exactOptional().describe("the set's own identity as it reads"),
	transmitLock: z.enum(["on", "off"]).exactOptional().describe("on: places without a transmit frequency cannot send"),
});
export type Settings = z.infer<typeof SettingsSchema>;

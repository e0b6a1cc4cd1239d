import type { DscCall } from "./call.ts";

/** A test call to a coast station; nobody has these identities: the MID 299 is given to no country. */
export const TEST_CALL: DscCall = {
	format: "individual",
	to: "002999999",
	area: null,
	category: "safety",
	from: "299123456",
	telecommand1: "test",
	telecommand2: "no information",
	distress: null,
	message: { kind: "frequencies", receive: null, transmit: null },
	end: "acknowledgement asked",
	undecoded: [],
};

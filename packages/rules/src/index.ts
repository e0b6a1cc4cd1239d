export * from "./allocations.ts";
export * from "./appendix17Ranges.ts";
export * from "./channels.ts";
export * from "./dial.ts";
export {
	ASSIGNED_ABOVE_CARRIER_HZ,
	audioCentreHz,
	CHART_AUDIO_CENTRE_HZ,
	CHART_SHIFT_HZ,
	dialOffsetHz,
	displayOf,
	KEYED_AUDIO_CENTRE_HZ,
	KEYED_SHIFT_HZ,
	shiftHz,
	sidebandSign,
	TELETYPE_SHIFT_HZ,
} from "./dialOffset.ts";
export * from "./dscCalling.ts";
export * from "./emission.ts";
export * from "./emissionTable.ts";
export * from "./guards.ts";
export * from "./guardWords.ts";
export * from "./identify.ts";
export * from "./mayTransmit.ts";
export * from "./mmsi.ts";
export * from "./msi.ts";
export * from "./roundToSteps.ts";
export * from "./services.ts";
export * from "./spectrum.ts";
export * from "./spectrumAround.ts";
export * from "./types.ts";

import { formatKhz } from "@skipwright/units";
import { ALLOCATION_WORDS } from "./allocations.ts";
import type { ChannelSide } from "./channels.ts";
import type { DscCallingSide, Identification } from "./identify.ts";
import type { Allocation, Channel } from "./types.ts";

/** The findings as one sentence, weightiest first. */
export function identificationSentence(found: Omit<Identification, "sentence">): string {
	const parts = [
		...found.guards.map(({ label }) => label),
		...found.channels.map(channelWords),
		...found.assignedOf.map((one) => `assigned frequency (carrier + 1.4 kHz) of the ${channelWords(one)}`),
		...found.msi.map(({ label }) => label),
		...found.dscCalling.map(callingWords),
		...found.allocations.map(bandWords),
	];
	return parts.length === 0 ? "in none of the tables" : parts.join("; ");
}

function channelWords({ channel, side }: ChannelSide): string {
	const name = channelName(channel);
	if (side === "both") return `one-frequency carrier of ${name}`;
	return `${side} side of ${name}${otherSide(channel, side)}`;
}

function channelName({ section, number, bandMhz, use }: Channel): string {
	const calling = use === "duplex-calling" ? ", calling" : "";
	return number === null ? `Appendix 17 sub-section ${section}, ${bandMhz} MHz` : `channel ${number}${calling}`;
}

function otherSide({ ship, coast }: Channel, side: "ship" | "coast"): string {
	const other = side === "ship" ? coast : ship;
	return other === null ? "" : ` (${side === "ship" ? "coast" : "ship"} ${formatKhz(other)})`;
}

function callingWords({ calling, side }: DscCallingSide): string {
	const series = {
		international: "international DSC calling",
		intership: "DSC calling between ships",
		"national-a": "national DSC calling, series A",
		"national-b": "national DSC calling, series B",
	}[calling.series];
	return side === "both" ? series : `${series}, sent by the ${side === "ship" ? "ship" : "coast station"}`;
}

function bandWords({ service, lowHz, highHz, regions, shared }: Allocation): string {
	const where = regions.length === 3 ? "all Regions" : `Region${regions.length > 1 ? "s" : ""} ${regions.join(" and ")}`;
	return `${ALLOCATION_WORDS[service]} band ${formatKhz(lowHz)}-${formatKhz(highHz)} kHz, ${where}${shared ? ", shared" : ""}`;
}

import { formatKhz, type Hz, hz as hertz } from "@skipwright/units";
import { allocationsAt } from "./allocations.ts";
import { type ChannelSide, channelsAt } from "./channels.ts";
import { ASSIGNED_ABOVE_CARRIER_HZ } from "./dialOffset.ts";
import { type DscCalling, dscCalling } from "./dscCalling.ts";
import { guardsAt } from "./guards.ts";
import { identificationSentence } from "./identificationSentence.ts";
import { type MsiFrequency, msiFrequencies } from "./msi.ts";
import { once } from "./shippedTable.ts";
import type { Allocation, Guard } from "./types.ts";

export interface DscCallingSide {
	readonly calling: DscCalling;
	readonly side: "ship" | "coast" | "both";
}

/** What a frequency is, by the tables of this package alone. */
export interface Identification {
	readonly hz: Hz;
	/** Read as a voice carrier. */
	readonly channels: readonly ChannelSide[];
	/** Read as the assigned frequency of a voice channel (carrier + 1.4 kHz). */
	readonly assignedOf: readonly ChannelSide[];
	readonly guards: readonly Guard[];
	readonly dscCalling: readonly DscCallingSide[];
	readonly msi: readonly MsiFrequency[];
	/** Bands that hold the frequency itself; each names its Regions. */
	readonly allocations: readonly Allocation[];
	readonly sentence: string;
}

const callingSides = once(() => {
	const sides = new Map<number, DscCallingSide[]>();
	const add = (figure: Hz, side: DscCallingSide) => sides.set(figure, [...(sides.get(figure) ?? []), side]);
	for (const calling of dscCalling()) {
		if (calling.ship === calling.coast) add(calling.ship, { calling, side: "both" });
		else {
			add(calling.ship, { calling, side: "ship" });
			add(calling.coast, { calling, side: "coast" });
		}
	}
	return sides;
});

const msiByFigure = once(() => Map.groupBy(msiFrequencies(), (one): number => one.hz));

/** What is this frequency? Exact matches only; for what a whole signal touches see `guardOverlapping` and `mayTransmit`. */
export function identify(hz: Hz): Identification {
	const found: Omit<Identification, "sentence"> = {
		hz,
		channels: channelsAt(hz),
		assignedOf: hz < ASSIGNED_ABOVE_CARRIER_HZ ? [] : channelsAt(hertz(hz - ASSIGNED_ABOVE_CARRIER_HZ)),
		guards: guardsAt(hz),
		dscCalling: callingSides().get(hz) ?? [],
		msi: msiByFigure().get(hz) ?? [],
		allocations: allocationsAt({ lowHz: hz, highHz: hz }, null),
	};
	return { ...found, sentence: `${formatKhz(hz)} kHz: ${identificationSentence(found)}.` };
}

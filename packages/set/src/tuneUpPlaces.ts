import { channels, guards } from "@skipwright/rules";
import { formatKhz, type Hz } from "@skipwright/units";
import { isReceiver, type Profile } from "./profile.ts";
import { canTune } from "./tuning.ts";
import type { TuneUpPlace } from "./types.ts";

/** Said at every tune-up carrier: tuning up radiates. */
export const TUNE_UP_NOTE =
	"Listen first; only when it is free, low power, USB, as briefly as will do, and give the call sign. National rules come first.";

/**
 * For each band one simplex working carrier of Radio Regulations Appendix 17 section B that the set can be put on, and of those
 * the one farthest from every guard and calling carrier. None for a receiver, nor where the set has no USB that shows the
 * carrier. Appendix 17 has no carrier below 4 MHz: there the administration names one.
 */
export function tuneUpPlaces(profile: Profile): readonly TuneUpPlace[] {
	if (isReceiver(profile) || profile.modes.USB?.shows !== "carrier") return [];
	const kept = keptClear();
	const working = channels().flatMap(({ section, use, bandMhz, ship, coast, note }) => {
		const simplex = section === "B" && use === "simplex" && ship !== null && ship === coast;
		const calling = /calling/i.test(note) || (ship !== null && kept.includes(ship));
		const tunable = ship !== null && canTune(profile, ship, "transmit") && canTune(profile, ship, "receive");
		return simplex && !calling && tunable ? [{ bandMhz, carrier: ship }] : [];
	});
	return [...Map.groupBy(working, ({ bandMhz }) => bandMhz)].map(([bandMhz, carriers]) => {
		const [best] = carriers.toSorted((a, b) => clearance(b.carrier, kept) - clearance(a.carrier, kept) || a.carrier - b.carrier);
		if (best === undefined) throw new Error("a group of carriers is never empty");
		return { bandMhz, carrier: best.carrier, note: `${formatKhz(best.carrier)} kHz simplex, Appendix 17 section B. ${TUNE_UP_NOTE}` };
	});
}

/** Frequencies that nobody tunes up on: the guard table, and the calling carriers of Appendix 17. */
function keptClear(): readonly Hz[] {
	const calling = channels().filter(({ use, note }) => use === "duplex-calling" || /calling/i.test(note));
	return [...guards().map(({ hz }) => hz), ...calling.flatMap(({ ship, coast }) => [ship, coast].filter((side) => side !== null))];
}

/** Hertz to the nearest frequency that is kept clear. */
function clearance(carrier: Hz, kept: readonly Hz[]): number {
	return Math.min(...kept.map((hz) => Math.abs(hz - carrier)));
}

import { channelsAt, guardOverlapping, type Mode, mayTransmit, occupiedSpectrum, type Region } from "@skipwright/rules";
import { inRange, type Profile } from "@skipwright/set";
import type { Hz } from "@skipwright/units";

export interface SendingRights {
	readonly profile: Profile;
	readonly shipLicence: boolean;
	readonly amateurLicence: boolean;
	/** null: all three ITU Regions count. */
	readonly region: Region | null;
}

/**
 * Why a place must not send on this dial, in words; null where it may. Transmitting is off wherever anything speaks against it.
 * Sources: RR Article 5, Appendix 15, Appendix 17, as the tables of `@skipwright/rules` hold them.
 */
export function whyNotSend(dialHz: Hz, mode: Mode, { profile, shipLicence, amateurLicence, region }: SendingRights): string | null {
	if (!inRange(profile, dialHz, "transmit")) return "the set cannot transmit there";
	const spectrum = occupiedSpectrum({ dialHz, mode, convention: profile.modes });
	const isShipCarrier = mode === "USB" && channelsAt(dialHz).some(({ side }) => side !== "coast");
	const rights = mayTransmit(spectrum, region);
	const isShipBand = isShipCarrier || rights.every(({ ship }) => ship !== "no");
	const isAmateurBand = rights.every(({ amateur }) => amateur);
	if (isAmateurBand && !isShipCarrier) return amateurLicence ? null : "an amateur band, and no amateur licence is held";
	if (!isShipBand) return "no maritime band in every ITU Region that counts";
	if (!shipLicence) return "no ship station licence is held";
	const guard = guardOverlapping(spectrum)[0];
	return guard === undefined ? null : `it would fall on ${guard.label}`;
}

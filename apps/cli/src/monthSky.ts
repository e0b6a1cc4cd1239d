import { mapIonosphere, skyMonth, type VesselSample, type YearMonth } from "@skipwright/sky";

/** The sky of a month at a smoothed sunspot number (old scale): one object for all that is asked of the month. */
export function monthSky({ year, month }: YearMonth, sunspots: number): Pick<VesselSample, "month" | "ionosphere"> {
	return { month: skyMonth({ year, month, sunspots }), ionosphere: mapIonosphere({ year, month, r12: sunspots }) };
}

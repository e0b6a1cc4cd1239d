import type { Listing, Station } from "@skipwright/directory";
import { formatKhz, hz, position } from "@skipwright/units";
import type { OwnListing } from "./schema.ts";

/** An owner's own entry of the job as a listing of the directory, with a station of its own to carry name and position. */
export interface OwnEntry {
	readonly listing: Listing;
	readonly station: Station;
}

/**
 * What `readOwnListingsCsv` makes of a row of a file, made of an entry of the job. One rule in both: nothing is sent unless a carrier to
 * send on is given.
 */
export function ownEntry(own: OwnListing): OwnEntry {
	const { source, asOf, confidence } = own;
	const figure = hz(own.hz);
	const shipTx = own.transmitHz === null ? null : hz(own.transmitHz);
	const stationId = `own/${own.id}`;
	return {
		station: {
			id: stationId,
			name: own.name,
			callSign: "",
			administration: "",
			mmsi: null,
			position: own.at === null ? null : position(...own.at),
			powerKw: null,
			source,
			asOf,
			confidence,
			status: "active",
			notes: "",
		},
		listing: {
			id: `${stationId}/voice-working/${formatKhz(figure)}`,
			stationId,
			service: "voice-working",
			hz: figure,
			means: own.means,
			coastTx: shipTx === null ? null : figure,
			shipTx,
			channel: null,
			emission: own.emission,
			schedule: own.schedule,
			coverage: own.name,
			notes: own.notes,
			receiveOnly: shipTx === null,
			sideband: own.sideband,
			source,
			asOf,
			confidence,
			status: "active",
			origin: "owner",
		},
	};
}

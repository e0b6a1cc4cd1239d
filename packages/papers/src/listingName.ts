import { type Directory, listingById, stationOf } from "@skipwright/directory";
import { SERVICE_WORDS } from "@skipwright/rules";
import { formatKhz } from "@skipwright/units";

/** `"Cape Town Radio, weather by voice, 4375 kHz"`; an id that no listing bears as it is. */
export function listingName(id: string, directory: Directory): string {
	const listing = listingById(directory, id);
	if (listing === null) return channelName(id);
	const figure = listing.channel === null ? `${formatKhz(listing.hz)} kHz` : `channel ${listing.channel}`;
	return `${stationOf(directory, listing).name}, ${SERVICE_WORDS[listing.service]}, ${figure}`;
}

/** `ap17/1221` is a channel of Appendix 17, `ap17/4146` a carrier of it. */
function channelName(id: string): string {
	const [kind, figure] = id.split("/");
	if (kind === "ap17" && figure !== undefined) return Number(figure) > 2_600 ? `ship to ship, ${figure} kHz` : `channel ${figure}`;
	if (kind === "safety" && figure !== undefined) return `safety text, ${figure} kHz`;
	return id;
}

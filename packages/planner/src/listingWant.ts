import type { Listing } from "@skipwright/directory";
import { serviceWant } from "@skipwright/rules";
import type { Want } from "./candidate.ts";

/** The want that a listing serves: the owner's own are nets, the rest go by their service. */
export function listingWant({ origin, service }: Listing): Want {
	return origin === "owner" ? "nets" : serviceWant(service);
}

import { SERVICE_WORDS } from "@skipwright/rules";
import { formatKhz } from "@skipwright/units";
import type { Expectation } from "./expectation.ts";
import type { Verdict } from "./verdict.ts";

/** What a verdict is about: the station listened for, or heard and identified; none where what was heard is not known to be it. */
export function namedAs(
	{ listing, what, service, hz }: Expectation,
	{ item, isNamed }: Verdict,
): { readonly listing: string | null; readonly what: string } {
	if (item === null || isNamed) return { listing, what };
	return { listing: null, what: `${SERVICE_WORDS[service]}, ${formatKhz(hz)} kHz` };
}

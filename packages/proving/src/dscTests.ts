import type { Listing, Station } from "@skipwright/directory";
import type { Hz } from "@skipwright/units";

/** One coast station's watch that a test call could be made to. */
export interface DscTest {
	readonly listing: string;
	readonly station: string;
	readonly mmsi: string;
	readonly hz: Hz;
	/** Chance from 0 to 1 by UTC hour, the worse of both ways. */
	readonly chances: readonly number[];
}

export interface DscTestQuestion {
	readonly watches: readonly { readonly listing: Listing; readonly station: Station }[];
	/** By UTC hour, 24, the worse of both ways; null: nothing predicts it. */
	readonly chances: (listing: string) => readonly number[] | null;
	readonly shipLicence: boolean;
	readonly operator: string;
	readonly ownMmsi: string | null;
	/** Whether the set can send at all. */
	readonly canSend: boolean;
}

/** Chance in its best hour from which a test is worth making: the steps of reach call it fair. */
const WORTH_FROM = 0.45;

/** Test calls that could lawfully be made, best first, or why none may be. */
export function dscTests(question: DscTestQuestion): readonly DscTest[] | { readonly cannot: string } {
	if (!question.canSend) return { cannot: "the set cannot send" };
	if (!question.shipLicence) return { cannot: "no ship station licence is in the job" };
	if (question.operator.trim() === "" || /^none$/i.test(question.operator.trim()))
		return { cannot: "no operator's certificate is in the job" };
	if (question.ownMmsi === null) return { cannot: "no MMSI is in the job" };
	return question.watches
		.flatMap(({ listing, station }): DscTest[] => {
			const chances = question.chances(listing.id);
			if (station.mmsi === null || listing.status === "closed" || chances === null || Math.max(...chances) < WORTH_FROM) return [];
			return [{ listing: listing.id, station: station.name, mmsi: station.mmsi, hz: listing.hz, chances }];
		})
		.toSorted((a, b) => sum(b.chances) - sum(a.chances) || (a.listing < b.listing ? -1 : 1));
}

function sum(values: readonly number[]): number {
	return values.reduce((total, value) => total + value, 0);
}

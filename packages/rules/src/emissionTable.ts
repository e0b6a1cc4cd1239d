import { EMISSIONS_CSV } from "./data.gen.ts";
import { once, shippedRows } from "./shippedTable.ts";
import { EMISSION_CLASSES, type EmissionClass, MODES, type Mode } from "./types.ts";

/** What emissions have in common for a dial: one sideband beside a carrier, a full carrier, Morse, two tones, data, pictures. */
export const EMISSION_FAMILIES = ["speech", "carrier", "morse", "keyed", "data", "chart"] as const;
export type EmissionFamily = (typeof EMISSION_FAMILIES)[number];

export interface EmissionFacts {
	readonly emissionClass: EmissionClass;
	readonly family: EmissionFamily;
	/** Usual full designators. */
	readonly designators: readonly string[];
	readonly meaning: string;
	/** Modes made for it. */
	readonly right: readonly Mode[];
	/** Modes that copy it with a loss; `note` says which. */
	readonly poor: readonly Mode[];
	readonly confidence: "verified" | "memory";
	readonly source: string;
	readonly note: string;
}

const COLUMNS = ["class", "family", "designators", "meaning", "right", "poor", "confidence", "source", "note"];

const byClass = once(
	() =>
		new Map(
			shippedRows("emissions.csv", EMISSIONS_CSV, COLUMNS).map((row): [EmissionClass, EmissionFacts] => {
				const emissionClass = row.oneOf("class", EMISSION_CLASSES);
				return [
					emissionClass,
					{
						emissionClass,
						family: row.oneOf("family", EMISSION_FAMILIES),
						designators: row.text("designators").split(" "),
						meaning: row.text("meaning"),
						right: row.someOf("right", MODES),
						poor: row.someOf("poor", MODES),
						confidence: row.confidence(),
						source: row.text("source"),
						note: row.text("note"),
					},
				];
			}),
		),
);

/** What is known of a class of emission. */
export function emissionFacts(emissionClass: EmissionClass): EmissionFacts {
	const facts = byClass().get(emissionClass);
	if (facts === undefined) throw new RangeError(`emissions.csv has no row for ${emissionClass}`);
	return facts;
}

export function emissionFamily(emissionClass: EmissionClass): EmissionFamily {
	return emissionFacts(emissionClass).family;
}

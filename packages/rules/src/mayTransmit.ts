import { ALLOCATION_WORDS, allocationsAt, coverage, REGIONS } from "./allocations.ts";
import type { Allocation, AllocationService, Region, Spectrum } from "./types.ts";

export interface ServiceHere {
	readonly service: AllocationService;
	readonly covers: "wholly" | "partly";
	/** Shared with, or secondary to, another service somewhere in the spectrum. */
	readonly shared: boolean;
	/** The weakest of the rows behind it. */
	readonly confidence: "verified" | "memory";
	readonly notes: readonly string[];
}

export interface RegionRights {
	readonly region: Region;
	readonly services: readonly ServiceHere[];
	/**
	 * For a ship station: `yes` wholly in maritime bands (distress and calling among them); `shared` the same, at least partly
	 * shared with other services; `national` wholly in maritime and mobile bands below 4 MHz, where an administration may assign
	 * ship frequencies; `no` otherwise.
	 */
	readonly ship: "yes" | "shared" | "national" | "no";
	/** For a licensed amateur: wholly in amateur bands. */
	readonly amateur: boolean;
	readonly sentence: string;
}

const SHIP_SERVICES: readonly AllocationService[] = ["maritime", "distress-and-calling"];
/** Hz. Below it the mobile bands carry ships' national working frequencies (47 CFR 80.371(a) and 80.373(b) list many). */
const NATIONAL_BELOW_HZ = 4_000_000;

/** Who may transmit on this spectrum, Region by Region (one Region, or all three for null). National tables add restrictions. */
export function mayTransmit(spectrum: Spectrum, region: Region | null): readonly RegionRights[] {
	return (region === null ? REGIONS : [region]).map((one) => rightsIn(spectrum, one));
}

function rightsIn(spectrum: Spectrum, region: Region): RegionRights {
	const bands = allocationsAt(spectrum, region);
	const services = [...new Set(bands.map(({ service }) => service))].map((service): ServiceHere => {
		const rows = bands.filter((band) => band.service === service);
		return {
			service,
			covers: coverage(spectrum, region, [service]) === "wholly" ? "wholly" : "partly",
			shared: rows.some(({ shared }) => shared),
			confidence: rows.every(({ confidence }) => confidence === "verified") ? "verified" : "memory",
			notes: rows.map(({ note }) => note).filter((note) => note !== ""),
		};
	});
	const ship = shipRight(spectrum, region, bands);
	const amateur = coverage(spectrum, region, ["amateur"]) === "wholly";
	return { region, services, ship, amateur, sentence: sentenceOf(region, services, ship) };
}

function shipRight(spectrum: Spectrum, region: Region, bands: readonly Allocation[]): RegionRights["ship"] {
	if (coverage(spectrum, region, SHIP_SERVICES) === "wholly") {
		return bands.some(({ service, shared }) => shared && SHIP_SERVICES.includes(service)) ? "shared" : "yes";
	}
	const withMobile = coverage(spectrum, region, [...SHIP_SERVICES, "fixed-mobile"]) === "wholly";
	return withMobile && spectrum.highHz <= NATIONAL_BELOW_HZ ? "national" : "no";
}

const SHIP_WORDS: Readonly<Record<RegionRights["ship"], string>> = {
	yes: "a ship station may send there within its licence",
	shared: "a ship station may send there within its licence, sharing with other services",
	national: "a ship station may send there only on a frequency that its administration has assigned",
	no: "a ship station may not send there",
};

function sentenceOf(region: Region, services: readonly ServiceHere[], ship: RegionRights["ship"]): string {
	const named = services.map(({ service, covers, shared }) => {
		const remarks = [...(covers === "partly" ? ["in part"] : []), ...(shared ? ["shared or secondary"] : [])];
		return ALLOCATION_WORDS[service] + (remarks.length > 0 ? ` (${remarks.join(", ")})` : "");
	});
	const bands = named.length === 0 ? "no service of this table" : named.join(", ");
	return `Region ${region}: ${bands}; ${SHIP_WORDS[ship]}.`;
}

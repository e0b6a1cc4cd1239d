import { destination } from "@skipwright/sphere";
import { type Position, position } from "@skipwright/units";
import { bestByHour, coastAntenna, mapIonosphere, reachTable, type Signal, skyMonth, type Terminal, vesselAntenna } from "../src/index.ts";

/** MHz: one carrier of each marine band, RR Appendix 17 part B, and 2182 kHz. */
export const BANDS_MHZ = [2.182, 4.146, 6.224, 8.294, 12.353, 16.528, 18.825, 22.159, 25.1] as const;
/** Nautical miles from the coast station. */
export const DISTANCES_NM = [150, 200, 300, 400, 500, 650, 800, 1000, 1250, 1500, 1750, 2000, 2500, 4000] as const;
/** Twelve-month sunspot numbers, old scale: low, middling and high. */
export const SUNSPOTS = [10, 60, 130] as const;
export const MONTHS = [1, 4, 7, 10] as const;
const YEAR = 2027;
const KM_PER_NM = 1.852;

interface Path {
	readonly name: string;
	readonly ocean: "north" | "south";
	readonly coast: Position;
	/** Towards open sea. */
	readonly bearingDeg: number;
}

export const PATHS: readonly Path[] = [
	{ name: "45N 30W to the west", ocean: "north", coast: position(45, -30), bearingDeg: 260 },
	{ name: "38N 29W to the west", ocean: "north", coast: position(38.5, -28.6), bearingDeg: 270 },
	{ name: "50N 5W to the southwest", ocean: "north", coast: position(50, -5), bearingDeg: 230 },
	{ name: "30S 10W to the northeast", ocean: "south", coast: position(-30, -10), bearingDeg: 60 },
	{ name: "34S 18E to the northwest", ocean: "south", coast: position(-34, 18), bearingDeg: 310 },
	{ name: "38S 57W to the east", ocean: "south", coast: position(-38, -57), bearingDeg: 100 },
];

/** What is predicted of speech both ways between a yacht and a coast station, at one local hour of the path's middle. */
export interface Cell {
	readonly path: Path;
	readonly sunspots: number;
	readonly month: number;
	readonly local: "noon" | "midnight";
	readonly nm: number;
	/** By band, of the worse direction. */
	readonly chances: readonly number[];
	/** Index of the band with the best chance, the higher of equals; null where none has any. */
	readonly recommended: number | null;
	/** Where the two ends' path lies, for a closer look. */
	readonly vessel: Position;
	readonly utcHour: number;
}

const SIGNALS: readonly Signal[] = BANDS_MHZ.map((fMHz) => ({ fMHz, emission: "J3E", grade: "safety" }));
const VESSEL = { antenna: vesselAntenna({ lengthM: 12 }), powerW: 150, manMade: "residential" } as const;
const HOURS = 24;

/** Every path, sunspot number, month, distance, noon and midnight. */
export function handbookGrid(): readonly Cell[] {
	return SUNSPOTS.flatMap((sunspots) => MONTHS.flatMap((month) => PATHS.flatMap((path) => cellsOf(path, sunspots, month))));
}

function cellsOf(path: Path, sunspots: number, month: number): readonly Cell[] {
	const sky = {
		month: skyMonth({ year: YEAR, month, sunspots }),
		ionosphere: mapIonosphere({ year: YEAR, month, r12: sunspots }),
	};
	const station: Terminal = { position: path.coast, antenna: coastAntenna(), powerW: 1000, manMade: "rural" };
	const vessels = DISTANCES_NM.map((nm) => destination(path.coast, path.bearingDeg, nm * KM_PER_NM));
	const { toVessel, toCoast } = reachTable({
		vessel: VESSEL,
		stations: [station],
		rows: SIGNALS.map((signal) => ({ station: 0, signal })),
		samples: vessels.map((vessel) => ({ position: vessel, ...sky })),
		bothWays: true,
	});
	return DISTANCES_NM.flatMap((nm, sample) => {
		const days = SIGNALS.map((_, band) => {
			const at = (band * DISTANCES_NM.length + sample) * HOURS;
			return Array.from({ length: HOURS }, (_hour, hour) => Math.min(toVessel[at + hour]!, toCoast![at + hour]!));
		});
		const best = bestByHour(days.map((chances, band) => ({ fMHz: BANDS_MHZ[band]!, chances })));
		const middleLonDeg = destination(path.coast, path.bearingDeg, (nm * KM_PER_NM) / 2).lonDeg;
		return (["noon", "midnight"] as const).map((local): Cell => {
			const utcHour = (Math.round((local === "noon" ? 12 : 0) - middleLonDeg / 15) + HOURS) % HOURS;
			const chances = days.map((day) => day[utcHour]!);
			return { path, sunspots, month, local, nm, chances, recommended: best[utcHour]!, vessel: vessels[sample]!, utcHour };
		});
	});
}

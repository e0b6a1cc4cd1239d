import {
	coastAntenna,
	mapIonosphere,
	reach,
	reachTable,
	type Signal,
	skyMonth,
	type Terminal,
	type VesselSample,
	vesselAntenna,
} from "@skipwright/sky";
import { position } from "@skipwright/units";

/** Runs alike in Node, in a worker and in a browser: nothing of any of them is used here. */

const YEAR = 2027;
const HOURS = 24;

/** Coast stations on every ocean, both hemispheres, one beyond 60 degrees. */
const STATIONS: readonly Terminal[] = (
	[
		[50.1, -5.7, 1000],
		[41.7, -70.5, 4000],
		[-33.9, 18.4, 1000],
		[-34.9, -56.2, 500],
		[37.9, -122.7, 4000],
		[21.4, -158.2, 4000],
		[-36.9, 174.8, 2500],
		[-31.9, 115.9, 1000],
		[13.5, 144.8, 4000],
		[64.1, -21.9, 1500],
		[1.3, 103.8, 1000],
		[-53.2, -70.9, 1000],
	] as const
).map(([lat, lon, powerW]) => ({ position: position(lat, lon), antenna: coastAntenna(), powerW, manMade: "rural" }));

/** Five of each station: sixty listings. */
const SIGNALS: readonly Signal[] = [
	{ fMHz: 0.518, emission: "F1B", grade: "safety" },
	{ fMHz: 2.182, emission: "J3E", grade: "safety" },
	{ fMHz: 6.3405, emission: "F3C", grade: "just-usable" },
	{ fMHz: 12.577, emission: "F1B", grade: "just-usable" },
	{ fMHz: 17.302, emission: "J3E", grade: "marginal" },
];

/** One place a month, round the world. */
function samples(): readonly VesselSample[] {
	return Array.from({ length: 12 }, (_, i) => {
		const wanted = { year: YEAR, month: i + 1 };
		const r12 = 10 + 13 * i;
		return {
			position: position(55 - 9.5 * i, ((i * 67 + 190) % 360) - 180),
			month: skyMonth({ ...wanted, sunspots: r12, winterAnomaly: i % 2 === 0 }),
			ionosphere: mapIonosphere({ ...wanted, r12 }),
		};
	});
}

/**
 * A large table of reach, both ways, and the figures behind some circuits, to the last bit.
 * @returns hexadecimal digits that tell two answers apart, and how many numbers went into them
 */
export function sameBits(): string {
	const vessel = { antenna: vesselAntenna({ lengthM: 12 }), powerW: 150, manMade: "residential" } as const;
	const places = samples();
	const rows = STATIONS.flatMap((_, station) => SIGNALS.map((signal) => ({ station, signal })));
	const { toVessel, toCoast } = reachTable({ vessel, stations: STATIONS, rows, samples: places, bothWays: true });
	const behind = places.flatMap(({ position: where, month, ionosphere }, i) =>
		reach({ from: STATIONS[i]!, to: { ...vessel, position: where }, month, ionosphere }, SIGNALS).flatMap(({ hours }) =>
			hours!.flatMap(({ snrDb, signalDbw, noiseDbw, upperDb, lowerDb, mufMHz, optimumMHz, supportChance }) => {
				return [snrDb, signalDbw, noiseDbw, upperDb, lowerDb, mufMHz, optimumMHz, supportChance];
			}),
		),
	);
	const all = new Float64Array(toVessel.length + toCoast!.length + behind.length);
	all.set(toVessel, 0);
	all.set(toCoast!, toVessel.length);
	all.set(behind, toVessel.length + toCoast!.length);
	if (toVessel.length !== rows.length * places.length * HOURS) throw new Error(`the table holds ${toVessel.length} cells`);
	return `${digestOf(all)} of ${all.length}`;
}

/** A Fowler-Noll-Vo hash (1a, 32 bits) of the bytes, least significant first, and another by a second factor: 16 hexadecimal digits. */
export function digestOf(numbers: Float64Array): string {
	const bytes = new DataView(new ArrayBuffer(8));
	let one = 0x811c9dc5;
	let other = 0x811c9dc5;
	for (const number of numbers) {
		bytes.setFloat64(0, number, true);
		for (let at = 0; at < 8; at++) {
			one = Math.imul(one ^ bytes.getUint8(at), 0x01000193);
			other = Math.imul(other ^ bytes.getUint8(at), 0x85ebca6b);
		}
	}
	return [one, other].map((half) => (half >>> 0).toString(16).padStart(8, "0")).join("");
}

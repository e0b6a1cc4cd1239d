import { directory } from "@skipwright/directory";
import { mapIonosphere, reachTable, skyMonth, type TableQuestion, type Terminal, type VesselSample } from "@skipwright/sky";
import type { Bench, BenchResult } from "../../../tools/bench-types.ts";
import { measure } from "../../../tools/measure.ts";
import { coastPower, coastTerminal, signalOf, vesselTerminal } from "./terminals.ts";

const SAMPLES = 60;
const HOURS = 24;
/** As of the old scale: a year of middling activity. */
const SUNSPOTS = 60;
/** Multiply-adds a point: functions of the place by those of the hour once, then 22 an hour (76 and 49 of the place, 13 and 9 of the hour). */
const PLACE_FUNCTIONS = [76, 49] as const;
const HOUR_FUNCTIONS = [13, 9] as const;

/** A year's voyage from Cape Town to the high north, five dated positions a month. */
function year(): { readonly samples: readonly VesselSample[]; readonly points: () => number } {
	let points = 0;
	const months = Array.from({ length: 12 }, (_, i) => {
		const wanted = { year: 2027, month: i + 1 };
		const ionosphere = mapIonosphere({ ...wanted, r12: SUNSPOTS });
		return {
			month: skyMonth({ ...wanted, sunspots: SUNSPOTS }),
			ionosphere: (where: Terminal["position"]) => {
				points++;
				return ionosphere(where);
			},
		};
	});
	const samples = Array.from({ length: SAMPLES }, (_, i) => ({
		position: { latDeg: -34 + 1.6 * i, lonDeg: 18 - 0.8 * i },
		...months[Math.floor((i * 12) / SAMPLES)]!,
	}));
	return { samples, points: () => points };
}

/** Every listing with a position that the method is for, at 1, 2, 5 ... times over; stations told apart by power. */
function question(samples: readonly VesselSample[], times: number): TableQuestion {
	const { listings, stations } = directory();
	const senders = new Map<string, { readonly index: number; readonly terminal: Terminal }>();
	const rows = listings.flatMap((listing) => {
		const station = stations.find(({ id }) => id === listing.stationId);
		if (station === undefined || station.position === null || listing.hz < 400_000) return [];
		const { powerW } = coastPower(station, listing.service);
		const key = `${powerW} ${station.id}`;
		const sender = senders.get(key) ?? { index: senders.size, terminal: coastTerminal(station.position, powerW) };
		senders.set(key, sender);
		return [{ station: sender.index, signal: signalOf(listing) }];
	});
	return {
		vessel: vesselTerminal({ noise: "residential" }),
		stations: [...senders.values()].map(({ terminal }) => terminal),
		rows: Array.from({ length: times }, () => rows).flat(),
		samples,
		bothWays: true,
	};
}

/** The least that any method with these maps must do: the multiply-adds of the same points, in a typed-array loop. */
function floor(points: number): () => number {
	const place = Float64Array.from({ length: PLACE_FUNCTIONS[0] }, (_, i) => i / 100);
	const coefficients = Float64Array.from({ length: PLACE_FUNCTIONS[0] * HOUR_FUNCTIONS[0] }, (_, i) => (i % 7) / 10);
	return () => {
		let sum = 0;
		for (let point = 0; point < points; point++) {
			for (const map of [0, 1] as const) {
				for (let j = 0; j < HOUR_FUNCTIONS[map]; j++) {
					const at = j * PLACE_FUNCTIONS[map];
					let value = 0;
					for (let k = 0; k < PLACE_FUNCTIONS[map]; k++) value += place[k]! * coefficients[at + k]!;
					for (let hour = 0; hour < HOURS; hour++) sum += value * place[hour]!;
				}
			}
		}
		return sum;
	};
}

export const bench: Bench = {
	name: "reach",
	run: () => {
		const results = [1, 2].flatMap((times): readonly BenchResult[] => {
			const { samples, points } = year();
			const asked = question(samples, times);
			reachTable(asked);
			const count = asked.rows.length * SAMPLES * HOURS * 2;
			const what = `${asked.rows.length} listings, ${SAMPLES} positions, 24 hours, both ways, ${points()} control points`;
			const floorName = "multiply-adds of the maps at those points";
			return [{ what, floor: floorName, count, unit: "circuits", ...measure(() => reachTable(asked), floor(points()), 5) }];
		});
		return Promise.resolve(results);
	},
};

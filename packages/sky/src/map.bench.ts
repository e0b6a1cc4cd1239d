import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { magneticField, magneticModel } from "@skipwright/sphere";
import { position } from "@skipwright/units";
import type { Bench, BenchResult } from "../../../tools/bench-types.ts";
import { measure } from "../../../tools/measure.ts";
import { mapIonosphere } from "./mapIonosphere.ts";
import { monthMaps } from "./mapMonth.ts";
import { hourlyMapsInto, type MapPoints } from "./mapPoint.ts";

const MONTH = 3;
const R12 = 66;
const EPOCH = 2027;
const HOURS = 24;
const ORACLE = join(import.meta.dirname, "../../../tools/oracles/ionosphere_grid.py");
const ORACLE_RUNS = 3;

/** The world by whole degrees, with the modified dip of 2027. */
function worldGrid(): MapPoints {
	const places = Array.from({ length: 181 * 360 }, (_, i) => position(Math.floor(i / 360) - 90, (i % 360) - 180));
	const model = magneticModel(EPOCH);
	return {
		latDeg: Float64Array.from(places, ({ latDeg }) => latDeg),
		lonDeg: Float64Array.from(places, ({ lonDeg }) => lonDeg),
		modifiedDipDeg: Float64Array.from(places, (where) => magneticField(where, 300, model).modifiedDipDeg),
	};
}

/**
 * What no evaluation that sums the place's functions first goes under, in a bare loop: V_j = sum_k G_k U_jk for 13 of 76 and 9 of 49,
 * then 22 multiplications an hour, 1957 a place. No functions of place are worked out.
 */
function bareMultiplyAdds(places: number): number {
	const numbers = (count: number) => Float64Array.from({ length: count }, (_, i) => ((i * 7_919) % 1_009) / 1_009 - 0.5);
	const [g, u, d] = [numbers(76), numbers(13 * 76), numbers(HOURS * 13)];
	const v = new Float64Array(13);
	const maps = [
		{ functions: 13, count: 76, out: new Float64Array(places * HOURS) },
		{ functions: 9, count: 49, out: new Float64Array(places * HOURS) },
	];
	for (let p = 0; p < places; p++) {
		g[0] = p;
		for (const { functions, count, out } of maps) {
			for (let j = 0; j < functions; j++) {
				let sum = 0;
				for (let k = 0; k < count; k++) sum += g[k]! * u[j * count + k]!;
				v[j] = sum;
			}
			for (let hour = 0; hour < HOURS; hour++) {
				let sum = 0;
				for (let j = 0; j < functions; j++) sum += v[j]! * d[hour * functions + j]!;
				out[p * HOURS + hour] = sum;
			}
		}
	}
	return maps[0]!.out[HOURS * (places - 1)]!;
}

interface Oracle {
	readonly own: readonly number[];
	readonly floats: readonly number[];
	readonly values: Float64Array;
}

/** PyIRI's own evaluation of the same places, or null where there is no Python that has it. `PYTHON` names the Python. */
function askPyiri(points: MapPoints): Oracle | null {
	const python = process.env["PYTHON"] ?? "python3";
	if (spawnSync(python, ["-c", "import PyIRI"]).status !== 0) {
		console.error(`no PyIRI for ${python} (pip install pyiri==0.1.6, or name another Python in PYTHON): not compared`);
		return null;
	}
	const folder = mkdtempSync(join(tmpdir(), "maps-"));
	try {
		const [places, values] = [join(folder, "places"), join(folder, "values")];
		const { latDeg, lonDeg, modifiedDipDeg } = points;
		writeFileSync(places, new Float64Array([...latDeg, ...lonDeg, ...modifiedDipDeg]));
		const ran = spawnSync(python, [ORACLE, MONTH, R12, ORACLE_RUNS, places, values].map(String), { encoding: "utf8" });
		if (ran.status !== 0) throw new Error(`${ORACLE} failed: ${ran.stderr}`);
		const bytes = readFileSync(values);
		return { ...JSON.parse(ran.stdout), values: new Float64Array(bytes.buffer, bytes.byteOffset, bytes.length / 8) };
	} finally {
		rmSync(folder, { recursive: true });
	}
}

export const bench: Bench = {
	name: "maps",
	run: () => {
		const points = worldGrid();
		const count = points.latDeg.length;
		const maps = monthMaps(MONTH, R12);
		const foF2 = new Float64Array(count * HOURS);
		const m3000 = new Float64Array(count * HOURS);
		const work = () => hourlyMapsInto(maps, points, foF2, m3000);
		const floor = () => bareMultiplyAdds(count);
		const results: BenchResult[] = [
			{
				what: "foF2 and M(3000)F2, 24 hours",
				floor: "bare multiply-adds, geographic first",
				count,
				unit: "places",
				...measure(work, floor),
			},
		];

		const ionosphere = mapIonosphere({ year: EPOCH, month: MONTH, r12: R12 });
		const everything = () => {
			let sum = 0;
			for (let p = 0; p < count; p++) sum += ionosphere({ latDeg: points.latDeg[p]!, lonDeg: points.lonDeg[p]! }).foEMHz[0]!;
			return sum;
		};
		results.push({
			what: "the whole ionosphere: maps, foE, sun, field at two heights",
			floor: "bare multiply-adds of the maps alone",
			count,
			unit: "places",
			...measure(everything, floor),
		});

		const oracle = askPyiri(points);
		if (oracle !== null) {
			const { seconds } = measure(work, () => null, ORACLE_RUNS);
			let worst = 0;
			for (let i = 0; i < foF2.length; i++) worst = Math.max(worst, Math.abs(foF2[i]! - oracle.values[i]!));
			for (let i = 0; i < m3000.length; i++) {
				worst = Math.max(worst, Math.abs(m3000[i]! - Math.max(1.8, oracle.values[foF2.length + i]!)));
			}
			if (!(worst < 1e-9)) throw new Error(`values differ from PyIRI's by ${worst}: no fair comparison`);
			console.error(`${2 * foF2.length} values equal to PyIRI's within ${worst.toExponential(1)}`);
			const asked = { what: "foF2 and M(3000)F2, 1 degree x 24 hours", count, unit: "places", seconds };
			results.push({ ...asked, floor: "PyIRI 0.1.6, as it is", floorSeconds: oracle.own });
			results.push({ ...asked, floor: "PyIRI 0.1.6, coefficients made floats", floorSeconds: oracle.floats });
		}
		return Promise.resolve(results);
	},
};

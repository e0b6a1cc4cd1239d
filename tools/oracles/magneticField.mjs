/**
 * The magnetic field for packages/sphere/truth/geomagnetism.csv, by the npm package geomagnetism (WMM2025), 2025 to 2029.
 *
 *     npm pack geomagnetism@0.2.0 && tar xzf geomagnetism-0.2.0.tgz
 *     node tools/oracles/magneticField.mjs package > packages/sphere/truth/geomagnetism.csv
 *
 * Places, heights and times at random with a fixed seed, evenly over the globe. `year` is the decimal year as that package
 * reckons it: the part of a year is always of 365 days.
 */
import { createRequire } from "node:module";
import { join, resolve } from "node:path";

const MS_PER_YEAR = 365 * 86_400_000;
const ROWS = 250;

const folder = resolve(process.argv[2] ?? "package");
const load = createRequire(join(folder, "index.js"));
const { name, version } = load("./package.json");
if (name !== "geomagnetism" || version !== "0.2.0") throw new Error(`expected geomagnetism 0.2.0, got ${name} ${version}`);
const geomagnetism = load("./index.js");

/** Numerical Recipes' "quick and dirty" generator: enough to scatter places. */
let state = 20261124;
const random = () => {
	state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
	return state / 2 ** 32;
};

console.log("year,height_km,lat_deg,lon_deg_east,north_nT,east_nT,down_nT,total_nT,dip_deg,declination_deg");
for (let row = 0; row < ROWS; row++) {
	const year = 2025 + (row % 5);
	const part = Math.round(random() * (year === 2029 ? 310 : 364)) / 365; // its model ends on 2029-11-13
	const lat = Number(((Math.asin(2 * random() - 1) * 180) / Math.PI).toFixed(3));
	const lon = Number((360 * random() - 180).toFixed(3));
	const height = row % 3 === 0 ? 0 : row % 3 === 1 ? 100 : 300;
	const field = geomagnetism.model(new Date(Date.UTC(year) + part * MS_PER_YEAR)).point([lat, lon, height]);
	const numbers = [field.x, field.y, field.z, field.f].map((value) => value.toFixed(4));
	console.log([year + part, height, lat, lon, ...numbers, field.incl.toFixed(6), field.decl.toFixed(6)].join(","));
}

/**
 * 500 places and times at random, evenly over the globe, with the modified dip of our own field: what `ionosphere.py` asks PyIRI's maps.
 * Every month has its share, R12 runs from 0 to 200, hours come in halves, the field from 1960 to 2030.
 *
 *     node tools/oracles/ionosphereRows.ts | python tools/oracles/ionosphere.py > packages/sky/truth/maps-pyiri.csv
 */
import { magneticField } from "@skipwright/sphere";
import { position } from "@skipwright/units";

const ROWS = 500;

/** Numerical Recipes' "quick and dirty" generator: enough to scatter places. */
let state = 20261124;
function random(): number {
	state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
	return state / 2 ** 32;
}

console.log("month,utc_hour,lat_deg,lon_deg_east,R12,field_epoch,modip_300km_deg");
for (let row = 0; row < ROWS; row++) {
	const month = (row % 12) + 1;
	const hour = Math.floor(random() * 48) / 2;
	const lat = Number(((Math.asin(2 * random() - 1) * 180) / Math.PI).toFixed(3));
	const lon = Number((360 * random() - 180).toFixed(3));
	const r12 = Math.floor(random() * 201);
	const epoch = Number((1960 + 70 * random()).toFixed(1));
	const { modifiedDipDeg } = magneticField(position(lat, lon), 300, epoch);
	console.log([month, hour, lat, lon, r12, epoch, modifiedDipDeg.toFixed(12)].join(","));
}

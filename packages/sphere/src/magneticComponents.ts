import { cos, sin } from "@skipwright/units";
import { RADIANS_PER_DEGREE } from "./angle.ts";
import { LARGEST_DEGREE, type MagneticModel, MODEL_STRIDE } from "./magneticModel.ts";

/** km. Reference radius of the coefficients (IAGA). */
const REFERENCE_RADIUS_KM = 6371.2;
/** km. Half axes of the ellipsoid WGS 84, in which geodetic latitude and height are given. */
const EQUATOR_RADIUS_KM = 6378.137;
const POLE_RADIUS_KM = 6356.7523142;
const EQUATOR_SQUARED = EQUATOR_RADIUS_KM * EQUATOR_RADIUS_KM;
const POLE_SQUARED = POLE_RADIUS_KM * POLE_RADIUS_KM;

/** Numbers that one place takes in the output of `magneticComponentsInto`: north, east, down. */
export const COMPONENTS = 3;

/**
 * Schmidt semi-normalised Legendre functions by degree n for one order m, from the two degrees below:
 * P(n) = (UPPER (cos theta) P(n-1) - LOWER P(n-2)) with these factors, at `m * MODEL_STRIDE + n`; ROOT is sqrt(n^2 - m^2).
 */
const UPPER = factors((n, m) => (2 * n - 1) / Math.sqrt(n * n - m * m));
const LOWER = factors((n, m) => Math.sqrt(Math.max(0, (n - 1) * (n - 1) - m * m)) / Math.sqrt(n * n - m * m));
const ROOT = factors((n, m) => Math.sqrt(n * n - m * m));

function factors(at: (n: number, m: number) => number): Float64Array {
	const table = new Float64Array(MODEL_STRIDE * MODEL_STRIDE);
	for (let m = 0; m <= LARGEST_DEGREE; m++) for (let n = m + 1; n <= LARGEST_DEGREE; n++) table[m * MODEL_STRIDE + n] = at(n, m);
	return table;
}

/** (a/r)^(n+2) of the place in hand. */
const shrink = new Float64Array(MODEL_STRIDE);

/**
 * The field at a place, in nT north, east and down of the geodetic horizontal, written at `at`, `at + 1` and `at + 2` of `into`.
 * Nothing is allocated. At a pole north and east follow the meridian of `lonDeg`, as anywhere else.
 *
 * B = -grad V, V = a sum (a/r)^(n+1) (g cos m lon + h sin m lon) P(n,m) (IAGA; Schmidt semi-normalised P). For m > 0 the recursion
 * carries P / sin theta, so that nothing is divided by the sine that vanishes at the poles.
 * @param heightKm above the ellipsoid WGS 84
 */
export function magneticComponentsInto(
	model: MagneticModel,
	{ latDeg, lonDeg, heightKm }: { readonly latDeg: number; readonly lonDeg: number; readonly heightKm: number },
	into: Float64Array,
	at: number,
): void {
	const { degree, g, h } = model;
	const sinLat = sin(latDeg * RADIANS_PER_DEGREE);
	const cosLat = cos(latDeg * RADIANS_PER_DEGREE);
	const sinLon = sin(lonDeg * RADIANS_PER_DEGREE);
	const cosLon = cos(lonDeg * RADIANS_PER_DEGREE);

	// geodetic to geocentric: distances from the axis and from the plane of the equator
	const normal = EQUATOR_SQUARED / Math.sqrt(EQUATOR_SQUARED * cosLat * cosLat + POLE_SQUARED * sinLat * sinLat);
	const fromAxis = (normal + heightKm) * cosLat;
	const fromEquator = ((POLE_SQUARED / EQUATOR_SQUARED) * normal + heightKm) * sinLat;
	const radius = Math.sqrt(fromAxis * fromAxis + fromEquator * fromEquator);
	const sinTheta = fromAxis / radius;
	const cosTheta = fromEquator / radius;
	const ratio = REFERENCE_RADIUS_KM / radius;
	shrink[0] = ratio * ratio;
	for (let n = 1; n <= degree; n++) shrink[n] = shrink[n - 1]! * ratio;

	// m = 0: P and its derivative by theta
	let north = 0;
	let east = 0;
	let down = 0;
	let p2 = 0;
	let p1 = 1;
	let d2 = 0;
	let d1 = 0;
	for (let n = 1; n <= degree; n++) {
		const p = UPPER[n]! * cosTheta * p1 - LOWER[n]! * p2;
		const d = UPPER[n]! * (cosTheta * d1 - sinTheta * p1) - LOWER[n]! * d2;
		const scaled = shrink[n]! * g[n]!;
		north += scaled * d;
		down -= (n + 1) * scaled * p;
		p2 = p1;
		p1 = p;
		d2 = d1;
		d1 = d;
	}

	// m > 0: q = P / sin theta; dP/dtheta = n cos theta q(n) - ROOT q(n-1)
	let diagonal = 1;
	let cosOrder = 1;
	let sinOrder = 0;
	for (let m = 1; m <= degree; m++) {
		const turned = cosOrder * cosLon - sinOrder * sinLon;
		sinOrder = sinOrder * cosLon + cosOrder * sinLon;
		cosOrder = turned;
		if (m > 1) diagonal *= sinTheta * Math.sqrt((2 * m - 1) / (2 * m));
		let q1 = 0;
		let q = diagonal;
		for (let n = m; n <= degree; n++) {
			const k = m * MODEL_STRIDE + n;
			if (n > m) {
				const next = UPPER[k]! * cosTheta * q - LOWER[k]! * q1;
				q1 = q;
				q = next;
			}
			const along = shrink[n]! * (g[k]! * cosOrder + h[k]! * sinOrder);
			const across = shrink[n]! * (g[k]! * sinOrder - h[k]! * cosOrder);
			north += along * (n * cosTheta * q - ROOT[k]! * q1);
			east += across * m * q;
			down -= along * (n + 1) * sinTheta * q;
		}
	}

	// geocentric horizontal to the geodetic one: a turn by the difference of the two latitudes
	const sinTurn = cosTheta * cosLat - sinTheta * sinLat;
	const cosTurn = sinTheta * cosLat + cosTheta * sinLat;
	into[at] = north * cosTurn - down * sinTurn;
	into[at + 1] = east;
	into[at + 2] = north * sinTurn + down * cosTurn;
}

import { cos, sin } from "@skipwright/units";

/**
 * Functions that the numerical maps of foF2 and M(3000)F2 are sums of (ITU-R P.1239 s.2, after Jones and Gallet), in an order of
 * our own that lets one evaluation serve both maps: the geographic functions of M(3000)F2 come first, those that only foF2 has
 * after them; the hour's functions are parted into even and odd harmonics, as twelve hours later the odd ones only change sign.
 */

const RADIANS_PER_DEGREE = Math.PI / 180;

/** Powers of sin X by order of longitude: how many there are of each, in the maps' own counting. */
const FOF2_POWERS = [12, 12, 9, 5, 2, 1, 1, 1, 1] as const;
const M3000_POWERS = [7, 8, 6, 3, 2, 1, 1] as const;
/** Harmonics of the day. */
const FOF2_HARMONICS = 6;
const M3000_HARMONICS = 4;

/** sin^power X cos^order(lat) cos(order lon), or sin(order lon). */
interface Geographic {
	readonly power: number;
	readonly order: number;
	readonly sine: boolean;
}

function geographicIn(powers: readonly number[]): readonly Geographic[] {
	return powers.flatMap((count, order) =>
		Array.from({ length: count }, (_, power) =>
			order === 0
				? [{ power, order, sine: false }]
				: [
						{ power, order, sine: false },
						{ power, order, sine: true },
					],
		).flat(),
	);
}

const FOF2_PUBLISHED = geographicIn(FOF2_POWERS);
const M3000_PUBLISHED = geographicIn(M3000_POWERS);
const same = (a: Geographic) => (b: Geographic) => a.power === b.power && a.order === b.order && a.sine === b.sine;
const GEOGRAPHIC = [...M3000_PUBLISHED, ...FOF2_PUBLISHED.filter((one) => !M3000_PUBLISHED.some(same(one)))];

/** Even harmonics 0, 2, 4, 6, then odd ones 1, 3, 5, each as sine and cosine, by their places in the published order. */
function diurnalIn(harmonics: number): readonly number[] {
	const pairs = (first: number) => Array.from({ length: harmonics }, (_, i) => i + 1).filter((n) => n % 2 === first % 2);
	return [0, ...[...pairs(0), ...pairs(1)].flatMap((n) => [2 * n - 1, 2 * n])];
}

/** Shape of one map: how many functions it has, and where each stands in the published order. */
export interface MapShape {
	/** Geographic functions: the first so many of `geographicInto`. */
	readonly geographic: number;
	/** Functions of the hour: even harmonics first. */
	readonly even: number;
	readonly odd: number;
	/** Published place of each geographic function. */
	readonly publishedGeographic: readonly number[];
	/** Published place of each function of the hour. */
	readonly publishedDiurnal: readonly number[];
}

function shapeOf(published: readonly Geographic[], harmonics: number): MapShape {
	const ours = GEOGRAPHIC.slice(0, published.length);
	return {
		geographic: published.length,
		even: 1 + 2 * Math.floor(harmonics / 2),
		odd: 2 * Math.ceil(harmonics / 2),
		publishedGeographic: ours.map((one) => published.findIndex(same(one))),
		publishedDiurnal: diurnalIn(harmonics),
	};
}

export const FOF2_SHAPE = shapeOf(FOF2_PUBLISHED, FOF2_HARMONICS);
export const M3000_SHAPE = shapeOf(M3000_PUBLISHED, M3000_HARMONICS);

/** How many geographic functions there are: as many as foF2 has. */
export const GEOGRAPHIC_COUNT = GEOGRAPHIC.length;

const POWER_OF = Uint8Array.from(GEOGRAPHIC, ({ power }) => power);
const TRIG_OF = Uint8Array.from(GEOGRAPHIC, ({ order, sine }) => (order === 0 ? 0 : 2 * order - (sine ? 0 : 1)));

/** sin^i X, and 1 and the pairs cos^n lat cos n lon, cos^n lat sin n lon, of the place in hand. */
const powers = new Float64Array(FOF2_POWERS[0]);
const trig = new Float64Array(2 * FOF2_POWERS.length - 1);

/** Values of the geographic functions at a place, into the first `GEOGRAPHIC_COUNT` numbers of `into`; nothing is allocated. */
export function geographicInto(latDeg: number, lonDeg: number, modifiedDipDeg: number, into: Float64Array): void {
	const sinX = sin(modifiedDipDeg * RADIANS_PER_DEGREE);
	powers[0] = 1;
	for (let i = 1; i < powers.length; i++) powers[i] = powers[i - 1]! * sinX;
	const cosLat = cos(latDeg * RADIANS_PER_DEGREE);
	const east = cosLat * cos(lonDeg * RADIANS_PER_DEGREE);
	const north = cosLat * sin(lonDeg * RADIANS_PER_DEGREE);
	let real = 1;
	let imaginary = 0;
	trig[0] = 1;
	for (let at = 1; at < trig.length; at += 2) {
		const turned = real * east - imaginary * north;
		imaginary = imaginary * east + real * north;
		real = turned;
		trig[at] = real;
		trig[at + 1] = imaginary;
	}
	for (let k = 0; k < GEOGRAPHIC_COUNT; k++) into[k] = powers[POWER_OF[k]!]! * trig[TRIG_OF[k]!]!;
}

/** Functions of the hour: even harmonics of the day, then odd ones; M(3000)F2 takes the first of each. */
export const EVEN_COUNT = FOF2_SHAPE.even;
export const ODD_COUNT = FOF2_SHAPE.odd;

/**
 * Functions of the hour angle T = 15 UT - 180 degrees at an hour from 0 to 12: 1 and sine, cosine of 2T, 4T, 6T into `even`, of T, 3T,
 * 5T into `odd`, from `at * EVEN_COUNT` and `at * ODD_COUNT` on.
 */
export function diurnalInto(hour: number, even: Float64Array, odd: Float64Array, at: number): void {
	const angle = (15 * hour - 180) * RADIANS_PER_DEGREE;
	const [sinT, cosT] = [sin(angle), cos(angle)];
	let [sine, cosine] = [0, 1];
	even[at * EVEN_COUNT] = 1;
	for (let n = 1; n <= FOF2_HARMONICS; n++) {
		[sine, cosine] = [sine * cosT + cosine * sinT, cosine * cosT - sine * sinT];
		const [table, from] = n % 2 === 0 ? [even, at * EVEN_COUNT + n - 1] : [odd, at * ODD_COUNT + n - 1];
		table[from] = sine;
		table[from + 1] = cosine;
	}
}

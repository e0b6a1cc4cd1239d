/**
 * Elementary functions from + - * / and Math.sqrt alone, which IEEE 754 and ECMAScript fix to the last bit,
 * so that every engine gives the same result; the Math versions differ in the last place between engines.
 *
 * Method: Cody-Waite reduction with split constants, then the function's own power series. The split constants and
 * the table of arc tangents are printed by tools/oracles/elementary.py; the measured errors are in README.md.
 */

// ---- pi/2 in four parts of 33, 33, 33 and 53 bits: k times each of the first three is exact for |k| < 2^20 ----
const HALF_PI_1 = 1.5707963267341256;
const HALF_PI_2 = 6.077100506303966e-11;
const HALF_PI_3 = 2.0222662487111665e-21;
const HALF_PI_4 = 8.4784276603689e-32;
const TWO_OVER_PI = 0.6366197723675814;
const QUARTER_PI = 0.7853981633974483;

// ---- what the nearest double leaves over of a constant; with that double as head where Math has no name for it ----
const PI_TAIL = 1.2246467991473532e-16;
const HALF_PI_HEAD = 1.5707963267948966;
const HALF_PI_TAIL = 6.123233995736766e-17;
const LOG10_E_TAIL = 1.098319650216765e-17;

// ---- ln 2 in parts of 32 and 53 bits: an exponent times the first is exact ----
const LN2_1 = 0.6931471803691238;
const LN2_2 = 1.9082149292705877e-10;

/** Beyond this size an angle in radians holds too few fractional digits to have a sine. */
const LARGEST_ANGLE = 1e15;
/** Below this size an odd function equals its argument to the last bit, and keeps the sign of a zero. */
const TINY = 1e-8;
/** By how much an argument of asin or acos may pass ±1 and still count as ±1: rounding of a dot product. */
const BEYOND_ONE = 1e-15;

/** Where a kernel leaves its two-part result: [head, tail]. Never handed out. */
const parts = new Float64Array(2);

/** Sine of `x` radians. Full accuracy for |x| <= 1e6; beyond it the error grows as |x| times 2^-52; NaN from 1e15. */
export function sin(x: number): number {
	const size = Math.abs(x);
	if (size < TINY) return x;
	if (size <= QUARTER_PI) return sinNearZero(x, 0);
	const quadrant = reduceAngle(x);
	const head = parts[0]!;
	const tail = parts[1]!;
	const value = quadrant % 2 === 0 ? sinNearZero(head, tail) : cosNearZero(head, tail);
	return quadrant < 2 ? value : -value;
}

/** Cosine of `x` radians; range as for `sin`. */
export function cos(x: number): number {
	if (Math.abs(x) <= QUARTER_PI) return cosNearZero(x, 0);
	const quadrant = reduceAngle(x);
	const head = parts[0]!;
	const tail = parts[1]!;
	const value = quadrant % 2 === 0 ? cosNearZero(head, tail) : sinNearZero(head, tail);
	return quadrant === 0 || quadrant === 3 ? value : -value;
}

/** Tangent of `x` radians; range as for `sin`. */
export function tan(x: number): number {
	if (Math.abs(x) < TINY) return x;
	const quadrant = reduceAngle(x);
	const head = parts[0]!;
	const tail = parts[1]!;
	const sine = sinNearZero(head, tail);
	const cosine = cosNearZero(head, tail);
	return quadrant % 2 === 0 ? sine / cosine : -cosine / sine;
}

/** Leaves x - k pi/2 in `parts` and returns k modulo 4. A NaN or a hopeless size leaves NaN. */
function reduceAngle(x: number): number {
	const k = Math.abs(x) < LARGEST_ANGLE ? Math.floor(x * TWO_OVER_PI + 0.5) : Number.NaN;
	const first = x - k * HALF_PI_1; // exact
	const part2 = k * HALF_PI_2;
	const second = first - part2;
	const part3 = k * HALF_PI_3;
	const third = second - part3;
	const rest = differenceError(first, part2, second) + differenceError(second, part3, third) - k * HALF_PI_4;
	const head = third + rest;
	parts[0] = head;
	parts[1] = third - head + rest;
	return k & 3;
}

/** The rounding error of `difference` = a - b, exactly (Knuth's two-sum). */
function differenceError(a: number, b: number, difference: number): number {
	const back = a - difference;
	return a - (difference + back) + (back - b);
}

/** Sine of head + tail within ±pi/4: the power series to the 17th degree. */
function sinNearZero(head: number, tail: number): number {
	const z = head * head;
	const z2 = z * z;
	const low = -1 / 6 + (1 / 120) * z + z2 * (-1 / 5040 + (1 / 362880) * z);
	const high = -1 / 39916800 + (1 / 6227020800) * z + z2 * (-1 / 1307674368000 + (1 / 355687428096000) * z);
	return head + (head * z * (low + z2 * z2 * high) + tail * (1 - 0.5 * z));
}

/** Cosine of head + tail within ±pi/4: the power series to the 16th degree. */
function cosNearZero(head: number, tail: number): number {
	const z = head * head;
	const z2 = z * z;
	const low = 1 / 24 - (1 / 720) * z + z2 * (1 / 40320 - (1 / 3628800) * z);
	const high = 1 / 479001600 - (1 / 87178291200) * z + (1 / 20922789888000) * z2;
	const half = 0.5 * z;
	const start = 1 - half;
	return start + (1 - start - half + (z2 * (low + z2 * z2 * high) - head * tail));
}

// ---- atan(k / 8) for k = 0 to 8, head and tail ----
const ATAN_HEAD = new Float64Array([
	0, 0.12435499454676144, 0.24497866312686414, 0.35877067027057225, 0.4636476090008061, 0.5585993153435624, 0.6435011087932844,
	0.7188299996216245, 0.7853981633974483,
]);
const ATAN_TAIL = new Float64Array([
	0, -3.1253241424539383e-18, 1.0698755618734451e-17, -2.4623815582638635e-17, 2.2698777452961687e-17, -5.4556305485916264e-18,
	1.5834785051444286e-17, -2.1478388444456983e-17, 3.061616997868383e-17,
]);

/** Arc tangent in radians, within ±pi/2. */
export function atan(x: number): number {
	const size = Math.abs(x);
	if (size < TINY) return x;
	const angle = size <= 1 ? atanToOne(size) : HALF_PI_HEAD - (atanToOne(1 / size) - HALF_PI_TAIL);
	return x < 0 ? -angle : angle;
}

/** Angle in radians of the point (x, y) from the x axis, within ±pi; zeros and infinities as Math.atan2 treats them. */
export function atan2(y: number, x: number): number {
	const up = Math.abs(y);
	const along = Math.abs(x);
	const backwards = isNegative(x);
	let angle: number;
	if (up > along) {
		const fromUpright = atanToOne(along / up);
		angle = HALF_PI_HEAD + (HALF_PI_TAIL + (backwards ? fromUpright : -fromUpright));
	} else {
		const fromAxis = up < along ? atanToOne(up / along) : diagonal(up, along);
		angle = backwards ? Math.PI - (fromAxis - PI_TAIL) : fromAxis;
	}
	return isNegative(y) ? -angle : angle;
}

/** Where up and along are equal, infinities included, or one is NaN. */
function diagonal(up: number, along: number): number {
	if (up !== along) return Number.NaN;
	return up === 0 ? 0 : QUARTER_PI;
}

function isNegative(value: number): boolean {
	return value < 0 || (value === 0 && 1 / value < 0);
}

/** Arc tangent of t from 0 to 1: the nearest eighth from the table, the rest by the power series to the 13th degree. */
function atanToOne(t: number): number {
	const k = Math.floor(8 * t + 0.5);
	const c = k / 8;
	const s = (t - c) / (1 + t * c); // tan(atan t - atan c)
	const z = s * s;
	const z2 = z * z;
	const series = 1 / 3 - (1 / 5) * z + z2 * (1 / 7 - (1 / 9) * z + z2 * (1 / 11 - (1 / 13) * z));
	return ATAN_HEAD[k]! + (s + (ATAN_TAIL[k]! - s * z * series));
}

/** Arc sine in radians. Up to 1e-15 beyond ±1 counts as ±1, further out is NaN. */
export function asin(x: number): number {
	return Math.abs(x) < TINY ? x : atan2(x, halfChord(x));
}

/** Arc cosine in radians. Up to 1e-15 beyond ±1 counts as ±1, further out is NaN. */
export function acos(x: number): number {
	return atan2(halfChord(x), x);
}

/** sqrt(1 - x^2) without loss near ±1. */
function halfChord(x: number): number {
	const beyond = Math.abs(x) - 1;
	return beyond > 0 && beyond <= BEYOND_ONE ? 0 : Math.sqrt((1 - x) * (1 + x));
}

/** 2^k for k = -538 to 538, each exact; two of them reach every exponent of a double. */
const POWER_OF_TWO = new Float64Array(1077);
const POWER_OF_TWO_ZERO = 538;
for (let k = 0, up = 1, down = 1; k <= POWER_OF_TWO_ZERO; k++, up *= 2, down /= 2) {
	POWER_OF_TWO[POWER_OF_TWO_ZERO + k] = up;
	POWER_OF_TWO[POWER_OF_TWO_ZERO - k] = down;
}

/** value times 2^k, rounded once. */
function scale(value: number, k: number): number {
	const half = k >> 1;
	return value * POWER_OF_TWO[POWER_OF_TWO_ZERO + half]! * POWER_OF_TWO[POWER_OF_TWO_ZERO + k - half]!;
}

/** e to the power x; Infinity above 709.78, 0 below -745.14. */
export function exp(x: number): number {
	return expOfParts(x, 0);
}

/** e^(head + tail): 2^k times e^r with |r| <= ln 2 / 2, the latter from the series of r coth(r/2) (Bernoulli numbers). */
function expOfParts(head: number, tail: number): number {
	if (Number.isNaN(head)) return head;
	if (head > 746) return Number.POSITIVE_INFINITY;
	if (head < -746) return 0;
	const k = Math.floor(head * Math.LOG2E + 0.5);
	const r1 = head - k * LN2_1; // exact
	const r2 = k * LN2_2 - tail;
	const r = r1 - r2;
	const z = r * r;
	const z2 = z * z;
	// r coth(r/2) - 2
	const cothRest = z * (1 / 6 - (1 / 360) * z + z2 * (1 / 15120 - (1 / 604800) * z + z2 * (1 / 23950080 - (691 / 653837184000) * z)));
	const q = r - cothRest;
	const value = 1 + (r1 + ((r * q) / (2 - q) - r2)); // e^r = 1 + 2r / (r coth(r/2) - r)
	return scale(value, k);
}

/** Natural logarithm; -Infinity at 0, NaN below. */
export function log(x: number): number {
	if (!(x > 0 && x < Number.POSITIVE_INFINITY)) return logOutside(x);
	logToParts(x);
	return parts[0]!;
}

function logOutside(x: number): number {
	if (x === 0) return Number.NEGATIVE_INFINITY;
	return x > 0 ? x : Number.NaN;
}

/** Base ten logarithm, exact at the powers of ten; -Infinity at 0, NaN below. */
export function log10(x: number): number {
	if (!(x > 0 && x < Number.POSITIVE_INFINITY)) return logOutside(x);
	logToParts(x);
	const head = parts[0]!;
	const product = head * Math.LOG10E;
	return product + (productError(head, Math.LOG10E, product) + (head * LOG10_E_TAIL + parts[1]! * Math.LOG10E));
}

/** `base` to the power `exponent`, for a base from 0 up; NaN for a negative base (whole exponents included). */
export function pow(base: number, exponent: number): number {
	if (exponent === 0) return 1;
	if (!(base > 0 && base < Number.POSITIVE_INFINITY)) return expOfParts(exponent * logOutside(base), 0);
	logToParts(base);
	const head = parts[0]!;
	const product = exponent * head;
	if (!(Math.abs(product) < 746)) return expOfParts(product, 0);
	return expOfParts(product, productError(exponent, head, product) + exponent * parts[1]!);
}

// ---- ln(j / 32) for j = 23 to 45: heads end at 2^-42, so that k LN2_1 + head is exact ----
const FIRST_J = 23;
const LOG_HEAD = new Float64Array([
	-0.33024168687052224, -0.28768207245184385, -0.2468600779316148, -0.20763936477828793, -0.16989903679541385, -0.13353139262449076,
	-0.09844007281321865, -0.0645385211375924, -0.03174869831468641, 0, 0.03077165866670839, 0.06062462181648698, 0.08961215868976069,
	0.11778303565643, 0.14518200984457508, 0.17185025692674571, 0.19782574332998593, 0.22314355131425145, 0.2478361639045943,
	0.2719337154835557, 0.2954642128938758, 0.31845373111855224, 0.34092658697068146,
]);
const LOG_TAIL = new Float64Array([
	-5.4612144489920215e-14, 6.292357389008195e-14, 8.899851356560444e-14, 4.3425422595242564e-14, 1.6376276414097503e-14,
	-3.1859736349078334e-14, -3.3871241029241416e-14, 2.1225608044809997e-14, 1.0610652735224087e-13, 0, 4.529814257790929e-14,
	-5.213620639136504e-14, -7.355770219435029e-14, -4.654729747598445e-14, -7.718001336828099e-14, -8.649239607212071e-14,
	-6.604544877082384e-14, -4.169796584527195e-14, -1.3029797173308663e-14, 8.604306772808733e-14, -3.993416384387844e-14,
	-1.7625431312172662e-14, -8.82452633212564e-14,
]);

const bits = new DataView(new ArrayBuffer(8));
/** Added to a double's upper word, carries into the exponent from a mantissa of sqrt(2) on. */
const CARRY_FROM_SQRT2 = 0x00095f62;
const SMALLEST_NORMAL = 2.2250738585072014e-308;
const TWO_TO_54 = 18014398509481984;

/** Leaves ln x in `parts` to about 2^-65 of its size. `x` positive and finite. */
function logToParts(x: number): void {
	const subnormal = x < SMALLEST_NORMAL;
	const normal = subnormal ? x * TWO_TO_54 : x;
	bits.setFloat64(0, normal);
	const exponent = ((bits.getInt32(0) + CARRY_FROM_SQRT2) >> 20) - 1023;
	const m = scale(normal, -exponent); // from sqrt(1/2) to sqrt(2)
	const k = subnormal ? exponent - 54 : exponent;
	// ln m = ln c + 2 atanh(s), c = j / 32 beside m, s = (m - c) / (m + c)
	const j = Math.floor(32 * m + 0.5);
	const c = j / 32;
	const divisor = upperHalf(m + c);
	const divisorTail = m - (divisor - c); // exact
	const reciprocal = 1 / (m + c);
	const s = upperHalf((m - c) * reciprocal); // its products with the divisor's parts are exact
	const sTail = (m - c - s * divisor - s * divisorTail) * reciprocal;
	const nearS = s + sTail;
	const z = nearS * nearS;
	const series = nearS * z * (2 / 3 + (2 / 5) * z + z * z * (2 / 7 + (2 / 9) * z));
	const whole = k * LN2_1 + LOG_HEAD[j - FIRST_J]!; // exact, and 0 or greater than 2s
	const sum = whole + 2 * s;
	const rest = whole - sum + 2 * s + (2 * sTail + (series + (LOG_TAIL[j - FIRST_J]! + k * LN2_2)));
	const head = sum + rest;
	parts[0] = head;
	parts[1] = sum - head + rest;
}

/** The rounding error of `product` = a b, exactly (Dekker); for sizes below 1e300. */
function productError(a: number, b: number, product: number): number {
	const aHigh = upperHalf(a);
	const aLow = a - aHigh;
	const bHigh = upperHalf(b);
	const bLow = b - bHigh;
	return aHigh * bHigh - product + aHigh * bLow + aLow * bHigh + aLow * bLow;
}

/** The upper 26 bits of a double (Veltkamp); what is left over has 26 bits too. */
function upperHalf(x: number): number {
	const scaled = x * 134217729; // 2^27 + 1
	return scaled - (scaled - x);
}

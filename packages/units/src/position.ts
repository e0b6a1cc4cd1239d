/** Degrees, north and east positive; latitude within ±90, longitude within -180 up to (not including) 180. */
export interface Position {
	readonly latDeg: number;
	readonly lonDeg: number;
}

/** @throws RangeError when latitude is outside ±90 or longitude outside ±360 degrees. Longitude is brought into [-180, 180). */
export function position(latDeg: number, lonDeg: number): Position {
	if (!Number.isFinite(latDeg) || Math.abs(latDeg) > 90) {
		throw new RangeError(`Cannot take ${latDeg} as a latitude: expected degrees from -90 to 90`);
	}
	if (!Number.isFinite(lonDeg) || Math.abs(lonDeg) > 360) {
		throw new RangeError(`Cannot take ${lonDeg} as a longitude: expected degrees from -360 to 360`);
	}
	const wrapped = lonDeg - 360 * Math.floor((lonDeg + 180) / 360);
	return { latDeg, lonDeg: wrapped };
}

const DECIMAL = /^\s*([+-]?\d+(?:\.\d+)?)(?:\s*,\s*|\s+)([+-]?\d+(?:\.\d+)?)\s*$/;
const LATITUDE = String.raw`(\d{1,2})(?:\s*[°-]\s*|\s+)(\d{1,2}(?:\.\d+)?)(?:\s*['′])?\s*([NS])`;
const LONGITUDE = String.raw`(\d{1,3})(?:\s*[°-]\s*|\s+)(\d{1,2}(?:\.\d+)?)(?:\s*['′])?\s*([EW])`;
const SEXAGESIMAL = new RegExp(String.raw`^\s*${LATITUDE}(?:\s*,\s*|\s+)${LONGITUDE}\s*$`, "i");

/**
 * A position as decimal degrees (`-33.9,18.43`) or degrees and minutes (`33 54.3S 018 25.8E`).
 * @throws SyntaxError naming the two accepted forms; RangeError as `position`
 */
export function parsePosition(text: string): Position {
	const decimal = DECIMAL.exec(text);
	if (decimal !== null) return position(Number(decimal[1]), Number(decimal[2]));
	const parts = SEXAGESIMAL.exec(text);
	if (parts !== null && Number(parts[2]) < 60 && Number(parts[5]) < 60) {
		const lat = Number(parts[1]) + Number(parts[2]) / 60;
		const lon = Number(parts[4]) + Number(parts[5]) / 60;
		return position(/s/i.test(parts[3] ?? "") ? -lat : lat, /w/i.test(parts[6] ?? "") ? -lon : lon);
	}
	throw new SyntaxError(`expected a position as -33.9,18.43 or 33 54.3S 018 25.8E, got "${text}"`);
}

/** Degrees and whole minutes, the way a chart reads. @example `formatPosition({ latDeg: -33.9, lonDeg: 18.43 })` is `"33°54′S 018°26′E"` */
export function formatPosition({ latDeg, lonDeg }: Position): string {
	const part = (value: number, width: number, plus: string, minus: string) => {
		const minutes = Math.round(Math.abs(value) * 60);
		const degrees = String(Math.floor(minutes / 60)).padStart(width, "0");
		return `${degrees}°${String(minutes % 60).padStart(2, "0")}′${value < 0 && minutes > 0 ? minus : plus}`;
	};
	return `${part(latDeg, 2, "N", "S")} ${part(lonDeg, 3, "E", "W")}`;
}

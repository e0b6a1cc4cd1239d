declare const unit: unique symbol;

/** A frequency in whole hertz. Frequencies are integers everywhere inside; kHz exists only as text. */
export type Hz = number & { readonly [unit]: "Hz" };

/** Hz. Far above any set; guards against a figure typed in the wrong unit. */
const HIGHEST_HZ = 1_000_000_000;

/** @throws RangeError unless `value` is a whole number of hertz from 0 to 1 GHz. */
export function hz(value: number): Hz {
	if (!Number.isInteger(value) || value < 0 || value > HIGHEST_HZ) {
		throw new RangeError(`Cannot take ${value} as a frequency: expected whole hertz from 0 to ${HIGHEST_HZ}`);
	}
	return value as Hz;
}

/**
 * Kilohertz as text to exact hertz: digits, at most three decimals after a point.
 * @throws SyntaxError naming what was read; a comma, an exponent or a fourth decimal is never guessed at.
 * @example `parseKhz("2187.5")` is `2187500`
 */
export function parseKhz(text: string): Hz {
	const match = /^(\d{1,6})(?:\.(\d{1,3}))?$/.exec(text.trim());
	if (match === null) {
		throw new SyntaxError(`expected kilohertz as digits with at most three decimals after a point (like 2187.5), got "${text}"`);
	}
	return hz(Number(match[1]) * 1000 + Number((match[2] ?? "").padEnd(3, "0")));
}

/** The shortest exact kilohertz text. @example `formatKhz(hz(8_682_000))` is `"8682"` */
export function formatKhz(value: Hz): string {
	return formatKhzFixed(value, 3).replace(/\.?0+$/, "");
}

/**
 * Kilohertz with a fixed number of decimals, rounded half up, as a set's display would show it.
 * @param decimals 0 to 3
 * @example `formatKhzFixed(hz(8_780_100), 1)` is `"8780.1"`
 */
export function formatKhzFixed(value: Hz, decimals: number): string {
	const step = 10 ** (3 - decimals);
	const rounded = Math.floor(value / step + 0.5) * step;
	const whole = Math.floor(rounded / 1000);
	const rest = String(rounded % 1000)
		.padStart(3, "0")
		.slice(0, decimals);
	return decimals === 0 ? String(whole) : `${whole}.${rest}`;
}

import { atan2, cos, sin } from "@skipwright/units";

/** A complex number. Hot loops keep the two parts apart instead. */
export interface Complex {
	readonly re: number;
	readonly im: number;
}

export const ONE: Complex = { re: 1, im: 0 };

export function add(a: Complex, b: Complex): Complex {
	return { re: a.re + b.re, im: a.im + b.im };
}

export function times(a: Complex, b: Complex): Complex {
	return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

export function scaled(a: Complex, factor: number): Complex {
	return { re: a.re * factor, im: a.im * factor };
}

export function divided(a: Complex, b: Complex): Complex {
	const size = b.re * b.re + b.im * b.im;
	return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

export function absolute(a: Complex): number {
	return Math.sqrt(a.re * a.re + a.im * a.im);
}

/** The square root with a real part from 0 up. */
export function squareRoot(a: Complex): Complex {
	return polar(Math.sqrt(absolute(a)), atan2(a.im, a.re) / 2);
}

/** @param angle radians */
export function polar(size: number, angle: number): Complex {
	return { re: size * cos(angle), im: size * sin(angle) };
}

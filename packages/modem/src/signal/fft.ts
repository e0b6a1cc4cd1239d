import { cos, sin } from "@skipwright/units";
import FFT from "fft.js";

/** A fast Fourier transform of `size` samples, a power of 2. The library's own table comes from Math.cos, whose last bit differs between engines. */
export function createFft(size: number): FFT {
	const fft = new FFT(size);
	for (let i = 0; i < size; i++) {
		fft.table[2 * i] = cos((2 * Math.PI * i) / size);
		fft.table[2 * i + 1] = -sin((2 * Math.PI * i) / size);
	}
	return fft;
}

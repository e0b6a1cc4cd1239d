/** What is used of fft.js 4.0.4, which carries no types. */
declare module "fft.js" {
	class FFT {
		constructor(size: number);
		/** Twiddle factors cos(pi i / size), -sin(pi i / size), interleaved. */
		readonly table: number[];
		createComplexArray(): number[];
		/** Fills the first half of `out`, interleaved. */
		realTransform(out: number[], data: ArrayLike<number>): void;
	}
	export = FFT;
}

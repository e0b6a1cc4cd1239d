/** What is used of fft.js 4.0.4, which carries no types. */
declare module "fft.js" {
	class FFT {
		constructor(size: number);
		/** cos(2 pi i / size) and -sin(2 pi i / size), interleaved, for i below `size`. */
		readonly table: number[];
		createComplexArray(): number[];
		/** Fills the first half of `out`, interleaved. */
		realTransform(out: number[], data: ArrayLike<number>): void;
	}
	export = FFT;
}

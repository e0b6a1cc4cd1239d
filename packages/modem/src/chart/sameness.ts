import type { GreyImage } from "./chartFigures.ts";

/** Share of a picture's variance that its mean line explains: 1 when all lines are alike, as in a sound that repeats. */
export function sameness({ width, height, pixels }: GreyImage): number {
	const columns = new Float64Array(width);
	let [sum, squares] = [0, 0];
	for (let n = 0; n < width * height; n++) {
		const grey = pixels[n]!;
		columns[n % width] = columns[n % width]! + grey;
		sum += grey;
		squares += grey * grey;
	}
	const mean = sum / pixels.length;
	const between = columns.reduce((total, column) => total + (column / height - mean) * (column / height - mean), 0) / width;
	const whole = squares / pixels.length - mean * mean;
	return whole > 0 ? between / whole : 1;
}

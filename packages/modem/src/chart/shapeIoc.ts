import { chartWidth, type GreyImage, type IndexOfCooperation } from "./chartFigures.ts";

/** Lines, and elements of IOC 576, over which shades are compared: more than a pen's width, less than most figures. */
const DISTANCE = 6;
/** Place of the difference down between that near and that far across, 0 and 1 in theory. Made charts: -0.1 to 0.5, and 0.9 to 1.3. */
const SURE_576 = 0.6,
	SURE_288 = 0.8;
/** Pairs of lines that are compared at least. */
const LEAST_LINES = 40;

/**
 * Which index makes a picture's figures as high as they are wide, where no start tone told. With the right one, shades differ as much so
 * many lines apart as so many elements apart; with 576 in place of 288, as much as twice as many elements apart. `picture` is drawn with
 * the width of 576. Null when the picture is too short, or says neither.
 */
export function shapeIoc({ width, height, pixels }: GreyImage): IndexOfCooperation | null {
	if (width !== chartWidth(576) || height < LEAST_LINES + DISTANCE) return null;
	const difference = (right: number, down: number) => {
		let sum = 0;
		for (let y = 0; y < height - DISTANCE; y++) {
			for (let x = 0; x < width - 2 * DISTANCE; x++) {
				const one = pixels[y * width + x]! - pixels[(y + down) * width + x + right]!;
				sum += one * one;
			}
		}
		return sum;
	};
	const [near, far, below] = [difference(DISTANCE, 0), difference(2 * DISTANCE, 0), difference(0, DISTANCE)];
	const place = (below - near) / (far - near);
	if (place < SURE_576) return 576;
	return place > SURE_288 ? 288 : null;
}

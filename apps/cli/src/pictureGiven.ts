import type { GreyImage } from "@skipwright/modem";
import { decode } from "fast-png";
import { type Context, UsageError } from "./context.ts";
import { unreadable } from "./readText.ts";

/** Pixels either way. No chart is larger. */
const MOST_PIXELS = 20_000;

/** A PNG in greys, on white where it is transparent, scaled to that width. @throws UsageError */
export function pictureGiven(context: Context, file: string, width: number): GreyImage {
	return scaled(greys(context, file), width);
}

function greys(context: Context, file: string): GreyImage {
	let bytes: Uint8Array;
	try {
		bytes = context.readFile(file);
	} catch (error) {
		throw unreadable(file, error);
	}
	let picture: ReturnType<typeof decode>;
	try {
		picture = decode(bytes);
	} catch (error) {
		throw new UsageError(`cannot read ${file}: expected a PNG picture (${(error as Error).message})`);
	}
	const { width, height, data, channels, depth, palette } = picture;
	if (width > MOST_PIXELS || height > MOST_PIXELS || (depth !== 8 && depth !== 16)) {
		throw new UsageError(`cannot use ${file}: expected a PNG of at most ${MOST_PIXELS} pixels either way, 8 or 16 bits each`);
	}
	const most = 2 ** depth - 1;
	const pixels = Uint8Array.from({ length: width * height }, (_, i) => {
		const at = channels * i;
		const own =
			palette === undefined ? Array.from(data.subarray(at, at + channels), (value) => (255 * value) / most) : (palette[data[i]!] ?? [255]);
		const hasAlpha = own.length === 2 || own.length === 4;
		const colours = hasAlpha ? own.slice(0, -1) : own;
		const grey = colours.length === 1 ? colours[0]! : 0.299 * colours[0]! + 0.587 * colours[1]! + 0.114 * colours[2]!; // ITU-R BT.601
		return Math.round(hasAlpha ? 255 + (own.at(-1)! / 255) * (grey - 255) : grey);
	});
	return { width, height, pixels };
}

/** Each new pixel is the mean of those that it covers, or the nearest. */
function scaled({ width, height, pixels }: GreyImage, toWidth: number): GreyImage {
	const scale = width / toWidth;
	const toHeight = Math.max(1, Math.round(height / scale));
	const out = new Uint8Array(toWidth * toHeight);
	for (let y = 0; y < toHeight; y++) {
		const [top, bottom] = span(y, scale, height);
		for (let x = 0; x < toWidth; x++) {
			const [left, right] = span(x, scale, width);
			let sum = 0;
			for (let v = top; v < bottom; v++) for (let u = left; u < right; u++) sum += pixels[v * width + u]!;
			out[y * toWidth + x] = Math.round(sum / ((bottom - top) * (right - left)));
		}
	}
	return { width: toWidth, height: toHeight, pixels: out };
}

function span(at: number, scale: number, end: number): readonly [number, number] {
	const from = Math.min(end - 1, Math.floor(at * scale));
	return [from, Math.max(from + 1, Math.min(end, Math.floor((at + 1) * scale)))];
}

/** A card to look at: steps of grey, rings, slanting lines; for want of a picture. */
export function testCard(width: number, height: number): GreyImage {
	const pixels = Uint8Array.from({ length: width * height }, (_, i) => {
		const [x, y] = [i % width, Math.floor(i / width)];
		if (x < 0.05 * width) return 255;
		if (y < height / 6) return Math.floor((8 * x) / width) * 36;
		const ring = Math.round(Math.hypot(x - width / 2, y - height / 2)) % 80;
		return ring < 6 || (x + 3 * y) % 240 < 6 ? 0 : 255;
	});
	return { width, height, pixels };
}

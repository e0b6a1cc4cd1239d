/** What the tests and the benchmark of charts share: a picture like a weather chart, and comparing pictures. */
import { cos, log10, sin } from "@skipwright/units";
import { FRAME_SAMPLES } from "../receiver.ts";
import { DEFAULT_AMPLITUDE } from "../signal/keyed.ts";
import { withNoiseAtSnr } from "../signal/noise.ts";
import { prng, type Random } from "../signal/random.ts";
import type { GreyImage } from "./chartFigures.ts";
import { createChartReceiver, type HeardChart } from "./chartReceiver.ts";

/** Share of the width that stays white at the left. */
const MARGIN = 0.05;

/** White ground, a frame, leaning meridians, isobars, grey land, marks like figures; black lines `pen` elements wide. */
export function weatherPicture(width: number, height: number, random: Random, pen = 5): GreyImage {
	const pixels = new Uint8Array(width * height).fill(255);
	const left = Math.round(MARGIN * width);
	const inner = width - left;
	for (let y = 0; y < height; y++) {
		for (let x = left; x < width; x++) if (sin(x / 130) + sin(y / 90 + x / 400) > 1.1) pixels[y * width + x] = 170;
	}
	const dot = (x: number, y: number) => {
		const half = pen / 2;
		for (let v = Math.ceil(y - half); v < y + half; v++) {
			for (let u = Math.ceil(x - half); u < x + half; u++) {
				if (u >= left && u < width && v >= 0 && v < height) pixels[v * width + u] = 0;
			}
		}
	};
	for (let y = 0; y < height; y++) {
		dot(left + pen, y);
		dot(width - 2 * pen, y);
		for (let m = 1; m < 9; m++) if (y % 12 < 8) dot(left + (m * inner) / 9 + (y - height / 2) * 0.03 * (m - 4.5), y);
	}
	for (let high = 0; high < 12; high++) {
		const [cx, cy] = [left + random() * inner, random() * height];
		for (let r = 40; r < 260; r += 55) {
			for (let a = 0; a < 2 * Math.PI; a += 1 / r) dot(cx + r * (1 + 0.2 * sin(3 * a + high)) * cos(a), cy + 0.7 * r * sin(a));
		}
	}
	for (let mark = 0; mark < (width * height) / 12_000; mark++) {
		const [x, y] = [left + random() * (inner - 40), random() * height];
		for (let stroke = 0; stroke < 3; stroke++) {
			const [x0, y0, x1, y1] = [random() * 24, random() * 30, random() * 24, random() * 30];
			for (let u = 0; u <= 1; u += 0.03) dot(x + x0 + (x1 - x0) * u, y + y0 + (y1 - y0) * u);
		}
	}
	return { width, height, pixels };
}

/** All that a new receiver hears; the last samples that don't fill a frame are left out. */
export function chartsIn(samples: Float64Array): readonly HeardChart[] {
	const receiver = createChartReceiver();
	const heard: HeardChart[] = [];
	for (let n = 0; n + FRAME_SAMPLES <= samples.length; n += FRAME_SAMPLES) {
		heard.push(...receiver.frame(samples.subarray(n, n + FRAME_SAMPLES)));
	}
	return [...heard, ...receiver.end()];
}

/** The only chart in it. */
export function onlyChartIn(samples: Float64Array): HeardChart {
	const [first, ...more] = chartsIn(samples);
	if (first === undefined || more.length > 0) throw new Error(`expected one chart, got ${first === undefined ? 0 : 1 + more.length}`);
	return first;
}

/** A made chart of default size in noise, dB in 2700 Hz, pauses or not. */
export function inNoise(samples: Float64Array, snrDb: number, seed = 1): Float64Array {
	return withNoiseAtSnr(samples, snrDb, { random: prng(seed), signalPower: (DEFAULT_AMPLITUDE * DEFAULT_AMPLITUDE) / 2 });
}

/** Peak signal-to-noise ratio of `picture` against the lines of `original` from `skip` on, dB. */
export function psnrDb(picture: GreyImage, original: GreyImage, skip = 0): number {
	const count = Math.min(picture.height, original.height - skip) * picture.width;
	let sum = 0;
	for (let n = 0; n < count; n++) {
		const error = picture.pixels[n]! - original.pixels[n + skip * original.width]!;
		sum += error * error;
	}
	return 10 * log10((255 * 255 * count) / sum);
}

/** Elements by which lines `from` to `to` of `picture` lie further right than those of `original`; correlation over `reach` either way. */
export function shiftOf(picture: GreyImage, original: GreyImage, from: number, to: number, reach = 8): number {
	const { width } = picture;
	const sums = Array.from({ length: 2 * reach + 1 }, (_, k) => {
		const shift = k - reach;
		let sum = 0;
		for (let y = from; y < to; y++) {
			for (let x = reach; x < width - reach; x++) {
				sum += (255 - picture.pixels[y * width + x + shift]!) * (255 - original.pixels[y * width + x]!);
			}
		}
		return sum;
	});
	const top = sums.indexOf(Math.max(...sums));
	const [before, at, after] = [sums[top - 1] ?? Number.NaN, sums[top]!, sums[top + 1] ?? Number.NaN];
	return top - reach + (0.5 * (before - after)) / (before - 2 * at + after);
}

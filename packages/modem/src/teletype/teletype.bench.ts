import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Bench, BenchResult } from "../../../../tools/bench-types.ts";
import { measure, passingSeconds } from "../../../../tools/measure.ts";
import type { Receiver } from "../receiver.ts";
import { keyedBits } from "../signal/keyed.ts";
import { whiteNoise, withNoiseAtSnr } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { createResampler } from "../signal/resample.ts";
import { writeWav } from "../signal/wav.ts";
import { makeTeletype } from "./makeTeletype.ts";
import { createTeletypeReceiver } from "./teletypeReceiver.ts";

const RATE_HZ = 48_000;
const SECONDS = 120;
const RUNS = 3;

/** Samples of two minutes at 48 kHz: teletype, keying that is none (which keeps the receiver looking), and noise. */
function inputs(): Readonly<Record<string, Float64Array>> {
	const text = "WEATHER BULLETIN 1200 UTC. WIND SW 5 TO 6, SEA 3 M.\n".repeat(20);
	const random = prng(1);
	const bits = Array.from({ length: SECONDS * 100 }, () => (random() < 0.5 ? 0 : 1));
	const noisy = (samples: Float64Array) => withNoiseAtSnr(samples.subarray(0, SECONDS * RATE_HZ), 10, { random, rateHz: RATE_HZ });
	return {
		teletype: noisy(makeTeletype(text, { baud: 50, centreHz: 1_700, shiftHz: 450, rateHz: RATE_HZ })),
		"keying at 100 Bd": noisy(keyedBits(bits, { baud: 100, lowHz: 1_615, highHz: 1_785, rateHz: RATE_HZ })),
		noise: whiteNoise(SECONDS * RATE_HZ, 0.01, random),
	};
}

function listen(samples: Float64Array, receiver: Receiver<unknown> | null): number {
	const resampler = createResampler(RATE_HZ);
	let items = 0;
	for (const frame of [...resampler.push(samples), ...resampler.end()]) items += receiver?.frame(frame).length ?? 0;
	return items + (receiver?.end().length ?? 0);
}

/** minimodem's receiver on the same file, or null where it is not installed. */
function minimodem(path: string): (() => unknown) | null {
	const args = ["--rx", "--quiet", "--baudot", "-f", path, "-M", "1925", "-S", "1475", "50"];
	return spawnSync("minimodem", ["--version"]).error === undefined ? () => spawnSync("minimodem", args) : null;
}

export const bench: Bench = {
	name: "teletype",
	run: () => Promise.resolve(runAll()),
};

function runAll(): readonly BenchResult[] {
	const results = Object.entries(inputs()).map(([what, samples]) => ({
		what: `teletype receiver on ${what}, from 48 kHz`,
		floor: "resampling to 8 kHz alone",
		count: samples.length / RATE_HZ,
		unit: "s of audio",
		...measure(
			() => listen(samples, createTeletypeReceiver()),
			() => listen(samples, null),
			RUNS,
		),
	}));
	const folder = mkdtempSync(join(tmpdir(), "teletype-"));
	try {
		const path = join(folder, "teletype.wav");
		const samples = inputs()["teletype"]!;
		writeFileSync(path, writeWav(samples, RATE_HZ));
		const other = minimodem(path);
		if (other === null) {
			console.error("no minimodem here (apt-get install minimodem): not compared");
			return results;
		}
		const own = () => listen(samples, createTeletypeReceiver());
		const beside = {
			floor: "minimodem told tones, speed and sense",
			count: SECONDS,
			unit: "s of audio",
			...measure(own, other, RUNS, passingSeconds),
		};
		return [...results, { what: "teletype receiver on the same file, seconds that pass", ...beside }];
	} finally {
		rmSync(folder, { recursive: true });
	}
}

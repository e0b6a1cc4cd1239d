import { readFileSync } from "node:fs";
import { join } from "node:path";
import { readCsv } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES } from "../receiver.ts";
import { gaussian, prng } from "../signal/random.ts";
import { readWav } from "../signal/wav.ts";
import { editErrors } from "./editErrors.sample.ts";
import type { HeardTeletype } from "./heardTeletype.ts";
import { createTeletypeReceiver } from "./teletypeReceiver.ts";

/** Made and read by minimodem, which was told tones, speed and sense: tools/oracles/teletype.py. */
const TRUTH = join(import.meta.dirname, "../../truth");
const SENT = "GALE WARNING FOR CAPE REGION WEST EIGHT TO NINE ROUGH";
/** Shifts are left out of the account, as the script has it: a figure counts as the letter on its key. */
const [FIGURES, KEYS] = ["-?:3!&#8().,9014'57=2/6+", "ABCEFGHIKLMNOPQRSTUVWXYZ"];
const PEAK = 0.06;

function read(samples: Float64Array): string {
	const receiver = createTeletypeReceiver();
	const whole = new Float64Array(Math.ceil(samples.length / FRAME_SAMPLES) * FRAME_SAMPLES);
	whole.set(samples);
	const heard: HeardTeletype[] = [];
	for (let at = 0; at < whole.length; at += FRAME_SAMPLES) heard.push(...receiver.frame(whole.subarray(at, at + FRAME_SAMPLES)));
	return [...heard, ...receiver.end()]
		.map(({ text }) => text)
		.join(" ")
		.replaceAll(/[^A-Z\s]/g, (sign) => KEYS[FIGURES.indexOf(sign)] ?? sign)
		.trim()
		.replaceAll(/\s+/g, " ");
}

/** The same noise as in the script, to the rounding of a sample. */
function noisy(samples: Float64Array, seed: number, ebN0Db: number, baud: number): Float64Array {
	const next = gaussian(prng(seed));
	const deviation = Math.sqrt((((PEAK * 32_768) ** 2 / 2 / baud / 10 ** (ebN0Db / 10)) * 8_000) / 2);
	return samples.map((sample) => Math.max(-32_768, Math.min(32_767, Math.floor(sample * 32_768 + deviation * next() + 0.5))) / 32_768);
}

const { rows } = readCsv("teletype-errors.csv", readFileSync(join(TRUTH, "teletype-errors.csv"), "utf8"), {
	required: ["file", "baud", "mark_hz", "space_hz", "eb_n0_db", "seeds", "characters", "minimodem_errors"],
});
const samplesOf = (file: string) => readWav(file, readFileSync(join(TRUTH, file))).data;

describe("createTeletypeReceiver on signals of another maker", () => {
	it("reads them whole, with tones, speed and sense as they were set", () => {
		const files = new Map(rows.map(({ cells }) => [cells["file"]!, cells]));
		expect(files.size).toBe(3);
		for (const [file, cells] of files) {
			const samples = samplesOf(file);
			const receiver = createTeletypeReceiver();
			const heard: HeardTeletype[] = [];
			for (let at = 0; at + FRAME_SAMPLES <= samples.length; at += FRAME_SAMPLES)
				heard.push(...receiver.frame(samples.subarray(at, at + FRAME_SAMPLES)));
			heard.push(...receiver.end());
			expect(heard).toHaveLength(1);
			const [markHz, spaceHz] = [Number(cells["mark_hz"]), Number(cells["space_hz"])];
			expect(heard[0]!.text.trim().replaceAll(/\s+/g, " ")).toBe(SENT);
			expect(heard[0]).toMatchObject({
				baud: Number(cells["baud"]),
				sense: markHz < spaceHz ? "mark low" : "mark high",
				lostCharacters: 0,
			});
			expect(Math.abs(heard[0]!.audioHz - (markHz + spaceHz) / 2)).toBeLessThan(3 * heard[0]!.uncertaintyHz);
		}
	});

	it("makes fewer errors on the same noisy samples than its maker's receiver, which knows what ours must find", () => {
		expect(rows).toHaveLength(12);
		let [ours, theirs] = [0, 0];
		for (const { cells } of rows) {
			const samples = samplesOf(cells["file"]!);
			const [level, baud, seeds] = [Number(cells["eb_n0_db"]), Number(cells["baud"]), Number(cells["seeds"])];
			let errors = 0;
			for (let seed = 1; seed <= seeds; seed++) errors += editErrors(SENT, read(noisy(samples, seed, level, baud)));
			expect(Number(cells["characters"])).toBe(SENT.length * seeds);
			console.info(
				`${cells["file"]} Eb/N0 ${level} dB: ${errors} of ${cells["characters"]} characters wrong or lost, minimodem ${cells["minimodem_errors"]}`,
			);
			expect(errors).toBeLessThan(Number(cells["minimodem_errors"]));
			ours += errors;
			theirs += Number(cells["minimodem_errors"]);
		}
		console.info(`in all: ${ours}, minimodem ${theirs}`);
		expect(ours).toBeLessThan(theirs / 2);
	});
});

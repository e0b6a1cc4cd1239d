import { expect, it } from "vitest";
import type { DscCall } from "../dsc/call.ts";
import { createDscReceiver } from "../dsc/createDscReceiver.ts";
import { dscCall } from "../dsc/dscCall.ts";
import type { HeardDsc } from "../dsc/heardDsc.ts";
import { TEST_CALL } from "../dsc/testCall.sample.ts";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { joined, silence } from "../signal/join.ts";
import { keyedTones } from "../signal/keyed.ts";
import { withNoiseAtSnr } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";

const CALL: DscCall = { ...TEST_CALL, category: "routine" };
const [PAIRS, SNR_DB, SIGMAS, MOST_HZ] = [100, 20, 5, 2];

/** A call that begins while a tone still fills the search for a new carrier may be missed: two of 200 with this seed. */
const LOST = 3;

/** The same call before and after a tone, with pauses of any length. */
function callToneCall(centreHz: number, toneHz: number, random: () => number): Float64Array {
	const pause = () => silence(0.1 + 2 * random());
	const tone = keyedTones([{ toneHz, seconds: 4 + 6 * random() }]);
	return joined(pause(), dscCall(CALL, { centreHz }), pause(), tone, pause(), dscCall(CALL, { centreHz }), silence(1));
}

function heardIn(samples: Float64Array): readonly HeardDsc[] {
	const receiver = createDscReceiver();
	const heard: HeardDsc[] = [];
	for (let at = 0; at + FRAME_SAMPLES <= samples.length; at += FRAME_SAMPLES) {
		heard.push(...receiver.frame(samples.subarray(at, at + FRAME_SAMPLES)));
	}
	return [...heard, ...receiver.end()];
}

it("holds the centre of a call past another's tone: 200 calls at 20 dB within 2 Hz and within 5 sigma of what is claimed", () => {
	const random = prng(17);
	const wrong: string[] = [];
	let calls = 0;
	for (let i = 0; i < PAIRS; i++) {
		const centreHz = i % 2 === 0 ? 1_700 : 1_550 + 300 * random();
		const toneHz = i % 3 === 0 ? 1_500 : 1_200 + 1_000 * random();
		const audio = withNoiseAtSnr(callToneCall(centreHz, toneHz, random), SNR_DB, { random, signalPower: 0.125 });
		const cut = audio.subarray(Math.floor(random() * 0.1 * MODEM_RATE_HZ));
		for (const { audioHz, uncertaintyHz, ok } of heardIn(cut)) {
			calls++;
			const offHz = Math.abs(audioHz - centreHz);
			if (!ok || offHz > MOST_HZ || offHz > SIGMAS * uncertaintyHz) wrong.push(`${i}: ${offHz} Hz off, ±${uncertaintyHz}`);
		}
	}
	expect(calls).toBeGreaterThan(2 * PAIRS - LOST);
	expect(wrong).toEqual([]);
}, 60_000);

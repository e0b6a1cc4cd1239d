import { keyedBits, keyedTones, MODEM_RATE_HZ, prng, whiteNoise, withNoiseAtSnr } from "@skipwright/modem";

/** What is no call, text, teletype or chart, at 8000 samples a second and repeatable: for tests and benchmarks that nothing is invented. */
export const OTHER_SIGNALS: Readonly<Record<string, (seconds: number) => Float64Array>> = {
	noise: (seconds) => whiteNoise(seconds * MODEM_RATE_HZ, 0.01, prng(1)),
	"Morse-like keying": (seconds) => withNoiseAtSnr(morse(seconds, 700, 2), 15, { random: prng(3) }),
	"sounds like speech": (seconds) => withNoiseAtSnr(speechLike(seconds, 4), 20, { random: prng(5) }),
	"unframed keying, 850 Hz shift, 50 baud": (seconds) => withNoiseAtSnr(unframed(seconds, 50, 6), 10, { random: prng(7) }),
	"unframed keying, 850 Hz shift, 75 baud": (seconds) => withNoiseAtSnr(unframed(seconds, 75, 8), 3, { random: prng(9) }),
};

/** A hand's Morse: dots, dashes and gaps by chance, 20 words a minute. */
function morse(seconds: number, toneHz: number, seed: number): Float64Array {
	const random = prng(seed);
	const dot = 0.06;
	const signs = Array.from({ length: Math.ceil(seconds / (4 * dot)) }, () => [
		{ toneHz, seconds: (random() < 0.5 ? dot : 3 * dot) * (0.9 + 0.2 * random()) },
		{ toneHz: 0, seconds: random() < 0.7 ? dot : random() < 0.7 ? 3 * dot : 7 * dot },
	]).flat();
	return keyedTones(signs).subarray(0, seconds * MODEM_RATE_HZ);
}

/** Bits by chance, as enciphered traffic has them. */
function unframed(seconds: number, baud: number, seed: number): Float64Array {
	const random = prng(seed);
	const bits = Array.from({ length: Math.round(seconds * baud) }, () => (random() < 0.5 ? 0 : 1));
	return keyedBits(bits, { baud, lowHz: 1_275, highHz: 2_125 });
}

/** Voiced sounds: harmonics of a pitch that glides, louder about two frequencies that move every 0.2 s, with pauses. */
function speechLike(seconds: number, seed: number): Float64Array {
	const random = prng(seed);
	const samples = new Float64Array(seconds * MODEM_RATE_HZ);
	let [turns, pitchHz, firstHz, secondHz, level] = [0, 120, 500, 1_500, 0];
	for (let n = 0; n < samples.length; n++) {
		if (n % 1_600 === 0) {
			[pitchHz, firstHz, secondHz, level] = [90 + 80 * random(), 300 + 500 * random(), 900 + 1_600 * random(), random() < 0.25 ? 0 : 0.3];
		}
		pitchHz += (random() - 0.5) * 0.2;
		turns += pitchHz / MODEM_RATE_HZ;
		if (level === 0) continue;
		for (let k = 2; k * pitchHz < 2_800; k++) {
			const near = 1 / (1 + ((k * pitchHz - firstHz) / 150) ** 2) + 0.5 / (1 + ((k * pitchHz - secondHz) / 200) ** 2);
			samples[n] = samples[n]! + level * near * Math.sin(2 * Math.PI * ((k * turns) % 1));
		}
	}
	return samples;
}

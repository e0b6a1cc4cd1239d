import { describe, expect, it } from "vitest";
import { analytic } from "./analytic.ts";
import { HF_CHANNELS, throughHfChannel } from "./hfChannel.ts";
import { meanPower } from "./join.ts";
import { keyedTones } from "./keyed.ts";
import { whiteNoise } from "./noise.ts";
import { prng } from "./random.ts";

describe("throughHfChannel", () => {
	it("keeps the mean power in the long run", () => {
		const tone = keyedTones([{ toneHz: 1_700, seconds: 120 }]);
		const faded = throughHfChannel(tone, HF_CHANNELS.highDisturbed, prng(1));
		// 120 s of sigma 15 Hz hold some 6400 independent values: four sigma are 5 %
		expect(Math.abs(meanPower(faded) / meanPower(tone) - 1)).toBeLessThan(0.05);
	});

	it("fades as Rayleigh says also with both paths together", () => {
		const faded = analytic(
			throughHfChannel(keyedTones([{ toneHz: 1_000, seconds: 200 }], { amplitude: 1 }), HF_CHANNELS.lowDisturbed, prng(2)),
		);
		let [deep, count] = [0, 0];
		for (let n = 800; n < faded.real.length - 800; n += 400, count++) {
			if (Math.hypot(faded.real[n]!, faded.imaginary[n]!) < 0.3) deep++;
		}
		const wanted = count * (1 - Math.exp(-0.09));
		expect(count).toBe(3_996);
		expect(Math.abs(deep - wanted)).toBeLessThan(4 * Math.sqrt(wanted));
	});

	it.each([HF_CHANNELS.lowDisturbed, HF_CHANNELS.highDisturbed])(
		"spreads a tone over a Gaussian of half the width told: $spreadHz Hz",
		(channel) => {
			const tone = keyedTones([{ toneHz: 1_000, seconds: 120 }]);
			const { real, imaginary } = analytic(throughHfChannel(tone, channel, prng(7)));
			// seen from 1000 Hz, eight samples are a whole turn: what changes in them is the channel's, and its mean square (2 pi sigma)^2
			let [change, power] = [0, 0];
			for (let n = 800; n < real.length - 808; n++) {
				change += (real[n + 8]! - real[n]!) ** 2 + (imaginary[n + 8]! - imaginary[n]!) ** 2;
				power += real[n]! ** 2 + imaginary[n]! ** 2;
			}
			const sigmaHz = (Math.sqrt(change / power) * 1_000) / (2 * Math.PI);
			expect(Math.abs(sigmaHz / (channel.spreadHz / 2) - 1)).toBeLessThan(0.05); // four sigma of 4000 independent values and some
		},
	);

	it.each(Object.entries(HF_CHANNELS))("brings the second path after the delay: %s", (_name, channel) => {
		const wanted = channel.delayS * 8_000;
		const slow = { ...channel, spreadHz: 2 };
		const faded = throughHfChannel(whiteNoise(8_000 * 24, 1, prng(3)), slow, prng(4));
		const { real, imaginary } = analytic(faded);
		// power of the correlation of tenths of a second with themselves, on the mean: neither path's phase matters
		const byLag = new Float64Array(80);
		for (let from = 0; from + 880 < real.length; from += 800) {
			for (let lag = 2; lag < 80; lag++) {
				let [a, b] = [0, 0];
				for (let n = from; n < from + 800; n++) {
					a += real[n]! * real[n + lag]! + imaginary[n]! * imaginary[n + lag]!;
					b += imaginary[n]! * real[n + lag]! - real[n]! * imaginary[n + lag]!;
				}
				byLag[lag]! += a * a + b * b;
			}
		}
		expect(byLag.indexOf(Math.max(...byLag))).toBe(wanted);
	});

	it("is the same for the same seed and another for another", () => {
		const tone = keyedTones([{ toneHz: 1_700, seconds: 1 }]);
		const make = (seed: number) => throughHfChannel(tone, HF_CHANNELS.midModerate, prng(seed));
		expect(make(5)).toEqual(make(5));
		expect(make(5)).not.toEqual(make(6));
		expect(make(5)).toHaveLength(8_000);
		expect(throughHfChannel(new Float64Array(0), HF_CHANNELS.midQuiet, prng(1))).toHaveLength(0);
	});
});

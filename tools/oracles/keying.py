"""Keyed tones with noise, for packages/modem/truth/{keying-continuous.wav,keying-switched.wav,keying.csv}.

    pip install numpy==2.4.6 scipy==1.17.1
    python tools/oracles/keying.py packages/modem/truth

Made at 64 kHz from the running sum of the frequency (or from two oscillators that are switched), brought to 8 kHz by scipy, noise by numpy.
The error counts of a bare comparison of the two envelopes, at the true centre and clock, stand beside the bits: a receiver that has to find
both, and knows nothing else, makes about as many.
"""
import csv
import sys
import wave

import numpy as np
from scipy.signal import resample_poly

OUT_HZ = 8_000
FINE = 8
SHIFT_HZ = 170
AMPLITUDE = 0.08


def signal(bits, centre_hz, baud, start_s, length_s, is_continuous):
    rate = OUT_HZ * FINE
    t = np.arange(int(length_s * rate)) / rate
    index = np.floor((t - start_s) * baud).astype(int)
    on = (index >= 0) & (index < len(bits))
    tone = centre_hz + SHIFT_HZ * (np.asarray(bits)[np.clip(index, 0, len(bits) - 1)] - 0.5)
    turns = np.cumsum(tone) / rate if is_continuous else tone * t
    return AMPLITUDE * resample_poly(np.where(on, np.cos(2 * np.pi * turns), 0.0), 1, FINE)


def with_noise(samples, baud, eb_n0_db, rng):
    density = AMPLITUDE**2 / 2 / baud / 10 ** (eb_n0_db / 10)
    return samples + rng.normal(0, np.sqrt(density * OUT_HZ / 2), len(samples))


def bare_errors(samples, bits, centre_hz, baud, start_s):
    t = np.arange(len(samples)) / OUT_HZ
    wrong = 0
    for k, bit in enumerate(bits):
        part = (t >= start_s + k / baud) & (t < start_s + (k + 1) / baud)
        low, high = (abs(np.sum(samples[part] * np.exp(-2j * np.pi * (centre_hz + side * SHIFT_HZ / 2) * t[part]))) for side in (-1, 1))
        wrong += (high > low) != bit
    return int(wrong)


def main(folder):
    rng = np.random.default_rng(20261127)
    cases = [("keying-continuous.wav", 1_312.4, 100.03, 0.7131, 6.0, True), ("keying-switched.wav", 1_961.7, 99.4, 0.5008, 8.0, False)]
    rows = []
    for name, centre_hz, baud, start_s, eb_n0_db, is_continuous in cases:
        bits = rng.integers(0, 2, 400)
        clean = signal(bits, centre_hz, baud, start_s, start_s + 400 / baud + 0.6, is_continuous)
        scaled = np.round(with_noise(clean, baud, eb_n0_db, rng) * 32_767)
        assert np.abs(scaled).max() < 32_767
        samples = scaled.astype("<i2")
        with wave.open(f"{folder}/{name}", "wb") as file:
            file.setnchannels(1)
            file.setsampwidth(2)
            file.setframerate(OUT_HZ)
            file.writeframes(samples.tobytes())
        errors = bare_errors(samples, bits, centre_hz, baud, start_s)
        rows.append([name, centre_hz, baud, start_s, eb_n0_db, errors, "".join(map(str, bits))])
    with open(f"{folder}/keying.csv", "w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["file", "centre_hz", "baud", "start_s", "eb_n0_db", "bare_errors", "bits"])
        writer.writerows(rows)


main(sys.argv[1])

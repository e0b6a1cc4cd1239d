"""Sound files, resampled tones and fading, for packages/modem/truth/{sounds.json,resampled.csv,fading.csv}.

    pip install numpy==2.4.6 scipy==1.17.1 soundfile==0.14.0
    python tools/oracles/signals.py packages/modem/truth

Sound files come from libsndfile (as soundfile brings it); resampling from scipy.signal.resample_poly with a filter of firwin; the fading
from noise that is shaped in the frequency domain, where the program filters in time. No random number reaches a file but through seeds.
"""
import base64
import csv
import io
import json
import math
import sys

import numpy as np
import soundfile
from scipy.signal import firwin, kaiserord, resample_poly

OUT_HZ = 8_000
RATES_HZ = [7_000, 11_025, 12_001, 44_100, 48_000, 96_000, 192_000]


def sounds():
    noise = np.random.default_rng(20261127).uniform(-1, 1, (12, 3))
    forms = [
        ("WAV", "PCM_U8", 1), ("WAV", "PCM_16", 2), ("WAV", "PCM_24", 3), ("WAV", "PCM_32", 1), ("WAV", "FLOAT", 2), ("WAV", "DOUBLE", 1),
        ("WAVEX", "PCM_16", 3), ("WAVEX", "PCM_24", 1), ("WAVEX", "FLOAT", 2), ("RF64", "PCM_16", 2), ("RF64", "FLOAT", 1),
    ]
    rows = []
    for form, subtype, channels in forms:
        file = io.BytesIO()
        soundfile.write(file, noise[:, :channels], 44_100, format=form, subtype=subtype)
        file.seek(0)
        back, rate = soundfile.read(file, dtype="float64", always_2d=True)
        rows.append({
            "form": form, "subtype": subtype, "rateHz": rate, "channels": channels,
            "file": base64.b64encode(undated(file.getvalue())).decode(), "samples": [[float(x) for x in frame] for frame in back],
        })
    others = [
        ("FLAC", "PCM_16"), ("OGG", "VORBIS"), ("OGG", "OPUS"), ("MP3", "MPEG_LAYER_III"), ("AIFF", "PCM_16"), ("AU", "PCM_16"),
        ("CAF", "PCM_16"), ("W64", "PCM_16"), ("WAV", "ULAW"),
    ]
    for form, subtype in others:
        file = io.BytesIO()
        soundfile.write(file, np.zeros((64, 1)), 48_000, format=form, subtype=subtype)
        rows.append({"form": form, "subtype": subtype, "file": base64.b64encode(file.getvalue()[:96 if form == "WAV" else 12]).decode()})
    return rows


def undated(content):
    """The chunk PEAK, which libsndfile adds to floats, holds the time of writing: its second word."""
    at = content.find(b"PEAK")
    return content if at < 0 else content[:at + 12] + bytes(4) + content[at + 16:]


def tones(rate_hz):
    """(Hz, phase in radians): forty within the pass band, and as many above 4.7 kHz as the rate holds."""
    low = [(137 + 81.3 * i, float(i * i % 7)) for i in range(40)]
    high = [(4_700 + 1_733.1 * i, float(i * i % 5)) for i in range(60)]
    return [(f, p) for f, p in low if f < 0.42 * rate_hz] + [(f, p) for f, p in high if f < 0.49 * rate_hz]


def resampled():
    for rate in RATES_HZ:
        divisor = math.gcd(rate, OUT_HZ)
        up, down = OUT_HZ // divisor, rate // divisor
        time = np.arange(rate // 2) / rate
        samples = sum(0.02 * np.sin(2 * math.pi * f * time + p) for f, p in tones(rate))
        edge = min(OUT_HZ, rate)
        half_hz = rate * up / 2
        taps, beta = kaiserord(85, 2 * (edge / 2 - 0.43 * edge) / half_hz)
        taps |= 1
        out = resample_poly(samples, up, down, window=firwin(taps, edge / 2 / half_hz, window=("kaiser", beta)))
        for n in range(1_500, 1_580):
            yield [rate, n, f"{out[n]:.7f}"]


def fading():
    """Statistics of a complex Gaussian process of power 1 with a Gaussian spectrum of standard deviation 1 Hz."""
    rate, count = 64, 1 << 23
    random = np.random.default_rng(20261127)
    f = np.fft.fftfreq(count, 1 / rate)
    shape = np.exp(-(f ** 2) / 4)
    gain = np.fft.ifft(shape * (random.standard_normal(count) + 1j * random.standard_normal(count)))
    gain /= math.sqrt(np.mean(np.abs(gain) ** 2))
    envelope = np.abs(gain)
    for part in [0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99]:
        yield ["quantile", part, f"{np.quantile(envelope, part):.4f}"]
    for lag in [2, 5, 8, 12, 20]:
        yield ["correlation", lag / rate, f"{np.mean(gain[lag:] * np.conj(gain[:-lag])).real:.4f}"]
    for level in [0.1, 0.3, 1.0, 1.5, 2.0]:
        crossings = np.count_nonzero((envelope[:-1] < level) & (envelope[1:] >= level))
        yield ["crossings", level, f"{crossings / (count / rate):.4f}"]


if __name__ == "__main__":
    folder = sys.argv[1]
    with open(f"{folder}/sounds.json", "w") as out:
        out.write("[\n" + ",\n".join(json.dumps(row) for row in sounds()) + "\n]\n")
    with open(f"{folder}/resampled.csv", "w", newline="") as out:
        csv.writer(out, lineterminator="\n").writerows([["rate_hz", "n", "value"], *resampled()])
    with open(f"{folder}/fading.csv", "w", newline="") as out:
        csv.writer(out, lineterminator="\n").writerows([["what", "at", "value"], *fading()])

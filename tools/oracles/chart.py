"""A short weather chart by radio facsimile, for packages/modem/truth/chart.wav and chart.pgm. Nothing of the program's is used.

    pip install numpy==2.4.6 scipy==1.17.1
    python tools/oracles/chart.py packages/modem/truth

Figures: ISO 9876:2015 3.5 and 3.8 (300 Hz alternation for IOC 576, white pulse of 5 % of a phasing line), WMO-No. 386 from memory
(stop tone 450 Hz, black 1500 Hz, white 2300 Hz, grey linear between). All parts are shortened but the line: 120 a minute. The set is
17 Hz off tune, the recorder 150 parts in a million fast, noise lies 30 dB below in 2700 Hz. The sub-carrier's frequency is integrated
at 64 kHz, then brought to 8 kHz.
"""
import sys
import wave

import numpy as np
from scipy.signal import resample_poly

RATE = 8000
OVER = 8
LINE_S = 0.5
LINES = 24
COLUMNS = 181
OFF_TUNE_HZ = 17
CLOCK = 1 + 150e-6
SNR_DB = 30
SEED = 20261127
PEAK = 0.4


def picture():
    """White margin, black frame, a grey wedge, two leaning bars and a disc: 24 lines of 181 elements, 0 to 255."""
    y, x = np.mgrid[0:LINES, 0:COLUMNS]
    grey = np.full((LINES, COLUMNS), 255)
    wedge = (x >= 20) & (x < 60)
    grey[wedge] = ((x - 20) * 255 // 39)[wedge]
    grey[np.abs(x - 80 - y) < 3] = 0
    grey[np.abs(x - 150 + 2 * y) < 3] = 0
    grey[(x - 160) ** 2 + (4 * (y - 12)) ** 2 < 14**2] = 100
    grey[:, 12:15] = 0
    grey[:, 177:180] = 0
    return grey.astype(np.uint8)


def main(folder):
    image = picture()
    ends = [4.0, 4.0 + 16 * LINE_S]
    ends += [ends[1] + LINES * LINE_S]
    total = ends[2] + 2.5
    t = np.arange(int(total * RATE * CLOCK * OVER)) / (RATE * CLOCK * OVER)
    level = np.empty_like(t)
    start = t < ends[0]
    level[start] = np.where((t[start] * 2 * 300).astype(int) % 2 == 0, 0, 1)
    phasing = (t >= ends[0]) & (t < ends[1])
    level[phasing] = np.where(((t[phasing] - ends[0]) / LINE_S) % 1 < 0.05, 1, 0)
    lines = (t >= ends[1]) & (t < ends[2])
    at = (t[lines] - ends[1]) / LINE_S
    row = np.minimum(at.astype(int), LINES - 1)
    level[lines] = image[row, np.minimum(((at - row) * COLUMNS).astype(int), COLUMNS - 1)] / 255
    stop = t >= ends[2]
    level[stop] = np.where(((t[stop] - ends[2]) * 2 * 450).astype(int) % 2 == 0, 0, 1)
    hz = 1500 + 800 * level + OFF_TUNE_HZ
    phase = 2 * np.pi * np.cumsum(hz) / (RATE * CLOCK * OVER)
    sound = PEAK * resample_poly(np.sin(phase), 1, OVER)
    density = PEAK**2 / 2 / 2700 / 10 ** (SNR_DB / 10)
    sound += np.random.default_rng(SEED).normal(0, np.sqrt(density * RATE / 2), sound.size)
    with wave.open(f"{folder}/chart.wav", "wb") as out:
        out.setnchannels(1)
        out.setsampwidth(2)
        out.setframerate(RATE)
        out.writeframes(np.round(sound * 32767).astype("<i2").tobytes())
    with open(f"{folder}/chart.pgm", "wb") as out:
        out.write(b"P5\n%d %d\n255\n" % (COLUMNS, LINES) + image.tobytes())


main(sys.argv[1])

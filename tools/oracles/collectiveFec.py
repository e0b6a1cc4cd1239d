"""Makes the signals packages/modem/truth/text-*.wav: collective FEC (mode B) at 100 baud, apart from the program's own maker.

The code is typed from the hexadecimal table as published for CCIR 476 (first element sent is the lowest bit, 1 is B, the higher tone).
Needs numpy. A rerun gives the same bytes. Usage: python3 tools/oracles/collectiveFec.py packages/modem/truth
"""

import sys
import wave

import numpy as np

RATE = 8000
LETTERS = {
    "J": 0x17, "F": 0x1B, "C": 0x1D, "K": 0x1E, "W": 0x27, "Y": 0x2B, "P": 0x2D, "Q": 0x2E, "G": 0x35, "M": 0x39, "X": 0x3A, "V": 0x3C,
    "A": 0x47, "S": 0x4B, "I": 0x4D, "U": 0x4E, "D": 0x53, "R": 0x55, "E": 0x56, "N": 0x59, "Z": 0x63, "L": 0x65, "H": 0x69, "O": 0x71,
    "B": 0x72, "T": 0x74, " ": 0x5C, "\r": 0x78, "\n": 0x6C,
}
FIGURES = {
    ":": "C", "(": "K", "2": "W", "6": "Y", "0": "P", "1": "Q", ".": "M", "/": "X", "=": "V", "-": "A", "'": "S", "8": "I", "7": "U", "4": "R",
    "3": "E", ",": "N", "+": "Z", ")": "L", "9": "O", "?": "B", "5": "T",
}
ALPHA, RPT, LTRS, FIGS = 0x0F, 0x66, 0x5A, 0x36


def signals(text):
    """Words of a text with a shift before each change."""
    words, figures = [LTRS], False
    for sign in text.replace("\n", "\r\n"):
        wanted = figures if sign in " \r\n" else sign in FIGURES
        if wanted != figures:
            words.append(FIGS if wanted else LTRS)
            figures = wanted
        words.append(LETTERS[FIGURES.get(sign, sign)])
    return words


def elements(text, phasing, closing):
    """1 for B: first copies in the even places, second ones five places later."""
    words = signals(text)
    places = [RPT, ALPHA] * phasing + [ALPHA, ALPHA] * (len(words) + closing)
    for i, word in enumerate(words):
        places[2 * (phasing + i)] = word
        places[2 * (phasing + i) + 5] = word
    return np.array([word >> bit & 1 for word in places for bit in range(7)])


def keyed(bits, centre, shift, baud):
    """Continuous-phase keying as a complex signal."""
    count = int(len(bits) / baud * RATE)
    which = np.minimum((np.arange(count) / RATE * baud).astype(int), len(bits) - 1)
    tone = centre + shift * (bits[which] - 0.5)
    return np.exp(2j * np.pi * np.cumsum(tone) / RATE)


def gain(random, count, spread):
    """Complex Gaussian gain of mean power 1 whose spectrum is Gaussian; `spread` is twice its standard deviation, Hz."""
    at = np.fft.fftfreq(count, 1 / RATE)
    shape = np.exp(-(at**2) / (4 * (spread / 2) ** 2))
    noise = random.standard_normal(count) + 1j * random.standard_normal(count)
    faded = np.fft.ifft(np.fft.fft(noise) * shape)
    return faded / np.sqrt(np.mean(np.abs(faded) ** 2))


def two_paths(random, signal, delay, spread):
    """Two fading paths of equal power (ITU-R F.1487)."""
    later = np.concatenate([np.zeros(int(delay * RATE)), signal])[: len(signal)]
    return np.sqrt(0.5) * (gain(random, len(signal), spread) * signal + gain(random, len(signal), spread) * later)


def noisy(random, signal, eb_n0_db, baud):
    """The real part, with white noise such that a bit's mean energy lies so far over the one-sided noise density."""
    real = signal.real
    density = np.mean(real**2) / baud / 10 ** (eb_n0_db / 10)
    return real + random.standard_normal(len(real)) * np.sqrt(density * RATE / 2)


def write(path, samples):
    scaled = np.round(samples / np.max(np.abs(samples)) * 0.9 * 32767).astype("<i2")
    with wave.open(path, "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes(scaled.tobytes())
    print(path, len(samples) / RATE, "s")


def main(folder):
    gale = "ZCZC KB04\nGALE WARNING 49-30N 006W\nNNNN\n"
    random = np.random.default_rng(476)
    # noise, a centre 38 Hz off, a clock 300 ppm fast
    write(f"{folder}/text-noise.wav", noisy(random, keyed(elements(gale, 16, 10), 1738, 170, 100.03), 9, 100))
    # two fading paths 1 ms apart, 0.5 Hz: "moderate"
    fading = two_paths(random, keyed(elements(gale, 16, 10), 1700, 170, 100), 0.001, 0.5)
    write(f"{folder}/text-fading.wav", noisy(random, fading, 15, 100))
    # tones exchanged, cut from the middle of a text to the middle of its end
    bits = elements("ALL SHIPS NORTH OF CAPE " * 2 + "KEEP CLEAR\nNNNN\nZCZC LA00\nNAVIGATIONAL WARNING 12", 0, 3)
    cut = keyed(1 - bits, 1500, 170, 100)[9 * RATE // 4 + 37 : 27 * RATE // 2]
    write(f"{folder}/text-exchanged.wav", noisy(random, cut, 12, 100))


if __name__ == "__main__":
    main(sys.argv[1])

"""Digital selective calls as audio, made apart from the program: bits and signal from the rules of ITU-R M.493 alone.

Writes packages/modem/truth/dsc-*.wav (8 kHz, 16 bit, one channel) and dsc-signals.json, what was sent in each.
Needs numpy. A rerun gives the same bytes.  Usage: python tools/oracles/dsc.py
"""
import json
import os
import wave

import numpy as np

RATE = 8000
TRUTH = os.path.join(os.path.dirname(__file__), "..", "..", "packages", "modem", "truth")


def character(value):
    """Seven information bits, least significant first, then the number of B elements among them in three bits, most significant first."""
    information = format(value, "07b")[::-1].replace("0", "B").replace("1", "Y")
    check = format(information.count("B"), "03b").replace("0", "B").replace("1", "Y")
    return information + check


def digits(text):
    return [int(text[i : i + 2]) for i in range(0, len(text), 2)]


def call_letters(fields, end, dots):
    """Dot pattern, phasing, call: DX at even places, RX four characters later at odd ones."""
    check = end
    for field in fields:
        check ^= field
    message = [fields[0]] + fields + [end, check]
    dx = [125] * 6 + message + [end, end]
    rx = [111, 110, 109, 108, 107, 106, 105, 104] + message
    assert len(dx) == len(rx)
    letters = ["BY" * (dots // 2)]
    for first, second in zip(dx, rx):
        letters += [character(first), character(second)]
    return "".join(letters), fields + [end], check


def keyed(letters, centre, b_is_high=True, ppm=0.0, rise=0.0):
    """Frequency-shift keying by integrating the frequency; `rise` is the share of an element in which it swings over."""
    baud = 100.0 * (1 + ppm * 1e-6)
    count = int(len(letters) / baud * RATE)
    place = np.arange(count) / RATE * baud
    level = np.array([1.0 if (letter == "B") == b_is_high else -1.0 for letter in letters])
    element = np.minimum(place.astype(int), len(letters) - 1)
    shape = level[element]
    if rise > 0:
        into = np.clip((place - element) / rise, 0, 1)
        before = level[np.maximum(element - 1, 0)]
        shape = before + (shape - before) * 0.5 * (1 - np.cos(np.pi * into))
    return np.sin(2 * np.pi * np.cumsum(centre + 85.0 * shape) / RATE)


def noisy(signal, eb_n0_db, seed, lead_s=0.4, tail_s=0.6):
    """White noise at that energy per element over its density, the signal standing in it."""
    generator = np.random.Generator(np.random.PCG64(seed))
    padded = np.concatenate([np.zeros(int(lead_s * RATE)), signal, np.zeros(int(tail_s * RATE))])
    density = 0.5 / 100 / 10 ** (eb_n0_db / 10)
    return padded + generator.normal(0, np.sqrt(density * RATE / 2), len(padded))


def write(name, samples):
    scaled = np.round(samples / np.max(np.abs(samples)) * 0.7 * 32767).astype("<i2")
    with wave.open(os.path.join(TRUTH, name), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes(scaled.tobytes())


SHIP, COAST = digits("2991234560"), digits("0029999990")
sent = []


def sample(name, what, fields, end, dots, centre, prepare, **keying):
    letters, symbols, check = call_letters(fields, end, dots)
    write(name, prepare(keyed(letters, centre, **keying)))
    inverted = keying.get("b_is_high", True) is False
    sent.append({"file": name, "what": what, "symbols": symbols, "ecc": check, "audioHz": centre, "isInverted": inverted})


# distress alert: fire, 33 deg 55 S 018 deg 21 E, 0409 UTC, teletype to follow
sample(
    "dsc-alert.wav", "distress alert with the long dot pattern, swung keying, 23 Hz off, Eb/N0 11 dB",
    [112] + SHIP + [100] + digits("2335501821") + digits("0409") + [113], 127, 200, 1723,
    lambda signal: noisy(signal, 11, 1, 0.3, 0.5), rise=0.3,
)
# heard from the middle of the phasing sequence on
sample(
    "dsc-late.wav", "test call joined in the phasing sequence: its first 900 ms and the dots are missing; Eb/N0 13 dB, clock 150 ppm slow",
    [120] + COAST + [108] + SHIP + [118, 126] + [126] * 6, 117, 20, 1688.5,
    lambda signal: noisy(signal[int(1.1 * RATE) :], 13, 2, 0.0, 0.8), ppm=-150,
)
# urgency to all ships on 2182, tones exchanged
sample(
    "dsc-exchanged.wav", "urgency to all ships, tones exchanged as on the lower sideband, Eb/N0 12 dB",
    [116, 110] + SHIP + [109, 126] + digits("021820") * 2, 127, 20, 1300,
    lambda signal: noisy(signal, 12, 3), b_is_high=False,
)


def broken(signal):
    """Two gaps of 300 and 250 ms in the message: one copy of every symbol is left."""
    out = signal.copy()
    out[int(3.0 * RATE) : int(3.3 * RATE)] = 0
    out[int(4.6 * RATE) : int(4.85 * RATE)] = 0
    return noisy(out, 14, 4)


# answer to a position request: 55, position, time
sample(
    "dsc-gaps.wav", "position in answer to a request, two gaps of 300 and 250 ms, clock 200 ppm fast, Eb/N0 14 dB",
    [120] + COAST + [108] + SHIP + [121, 126, 55] + digits("0600901109") + digits("2359"), 122, 20, 1745, broken, ppm=200,
)

with open(os.path.join(TRUTH, "dsc-signals.json"), "w", encoding="utf-8") as file:
    file.write("[\n" + ",\n".join(json.dumps(one) for one in sent) + "\n]\n")

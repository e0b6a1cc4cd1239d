"""Start-stop teletype for packages/modem/truth: teletype-*.wav, and how many characters of them minimodem's receiver gets wrong under noise.

    apt-get install minimodem     # 0.24
    python tools/oracles/teletype.py packages/modem/truth

minimodem makes the signals and reads them again: it is told their tones, speed and sense, which ours has to find. The noise is this
project's own generator (packages/modem/src/signal/random.ts) worked out again here, so that both receivers hear the same samples:
xoshiro128** seeded by the 32-bit finaliser of MurmurHash3, normal numbers by Marsaglia's polar method. Eb/N0 counts one bit an element.
Errors are insertions, deletions and changes between what was sent and what was read, line ends counting as spaces and a figure as the
letter on its key: minimodem goes back to letters at each space, which is no part of ITU-T S.1, so that shifts are left out of the account.
"""
import csv
import math
import struct
import subprocess
import sys
import tempfile
from pathlib import Path

RATE = 8_000
TEXT = "GALE WARNING FOR CAPE REGION\nWEST EIGHT TO NINE ROUGH\n"
# the letter on the key of each figure, as minimodem has them
KEYS = str.maketrans("-?:$3!&#8'().,9014\a57;2/6\"", "ABCDEFGHIJKLMNOPQRSTUVWXYZ")
# name, elements a second, mark Hz, space Hz, stop elements
SIGNALS = [("teletype-45", 45.45, 1000, 1170, 1.5), ("teletype-50", 50, 1475, 1925, 1.5), ("teletype-75", 75, 2125, 1275, 2)]
LEVELS_DB = [8, 10, 12, 14]
SEEDS = range(1, 6)
PEAK = 0.06  # of full scale: leaves room for the noise
MASK = 0xFFFFFFFF


def finalise(word):
    word = ((word ^ (word >> 16)) * 0x85EBCA6B) & MASK
    word = ((word ^ (word >> 16)) * 0xC2B2AE35) & MASK
    return word ^ (word >> 16)


def uniform(seed):
    a, b, c, d = (finalise((seed + i * 0x9E3779B9) & MASK) for i in (1, 2, 3, 4))
    while True:
        x = (b * 5) & MASK
        x = ((x << 7) | (x >> 25)) & MASK
        yield ((x * 9) & MASK) / 4294967296
        shifted = (b << 9) & MASK
        c ^= a
        d ^= b
        b ^= c
        a ^= d
        c ^= shifted
        d = ((d << 11) | (d >> 21)) & MASK


def normal(seed, count):
    numbers, values = uniform(seed), []
    while len(values) < count:
        x, y = 2 * next(numbers) - 1, 2 * next(numbers) - 1
        square = x * x + y * y
        if square >= 1 or square == 0:
            continue
        scale = math.sqrt(-2 * math.log(square) / square)
        values += [x * scale, y * scale]
    return values[:count]


def read_wav(path):
    data = path.read_bytes()
    at = data.index(b"data")
    size = struct.unpack_from("<I", data, at + 4)[0]
    return list(struct.unpack_from(f"<{size // 2}h", data, at + 8))


def write_wav(path, samples):
    body = struct.pack(f"<{len(samples)}h", *(max(-32768, min(32767, s)) for s in samples))
    head = b"RIFF" + struct.pack("<I", 36 + len(body)) + b"WAVEfmt " + struct.pack("<IHHIIHH", 16, 1, 1, RATE, 2 * RATE, 2, 16)
    path.write_bytes(head + b"data" + struct.pack("<I", len(body)) + body)


def noisy(samples, seed, level_db, baud):
    power = (PEAK * 32768) ** 2 / 2
    deviation = math.sqrt(power / baud / 10 ** (level_db / 10) * RATE / 2)
    return [math.floor(s + deviation * n + 0.5) for s, n in zip(samples, normal(seed, len(samples)))]


def modem(way, path, baud, mark, space, stop, text=""):
    args = ["minimodem", way, "--quiet", "--baudot", "-f", str(path), "-R", str(RATE), "-M", str(mark), "-S", str(space)]
    args += ["--stopbits", str(stop), "--volume", str(PEAK), str(baud)] if way == "--tx" else [str(baud)]
    return subprocess.run(args, input=text, capture_output=True, text=True, errors="replace").stdout


def words(text):
    return " ".join(text.translate(KEYS).split())


def errors(sent, read):
    row = list(range(len(read) + 1))
    for i, a in enumerate(sent, 1):
        before, row = row, [i]
        for j, b in enumerate(read, 1):
            row.append(min(before[j] + 1, row[-1] + 1, before[j - 1] + (a != b)))
    return row[-1]


def main(folder):
    rows = []
    sent = words(TEXT)
    for name, baud, mark, space, stop in SIGNALS:
        clean = folder / f"{name}.wav"
        modem("--tx", clean, baud, mark, space, stop, TEXT)
        samples = read_wav(clean)
        write_wav(clean, samples)
        for level in LEVELS_DB:
            wrong = 0
            for seed in SEEDS:
                with tempfile.TemporaryDirectory() as held:
                    path = Path(held) / "noisy.wav"
                    write_wav(path, noisy(samples, seed, level, baud))
                    wrong += errors(sent, words(modem("--rx", path, baud, mark, space, stop)))
            rows.append([f"{name}.wav", baud, mark, space, level, len(SEEDS), len(sent) * len(SEEDS), wrong])
            print(*rows[-1], file=sys.stderr)
    with open(folder / "teletype-errors.csv", "w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["file", "baud", "mark_hz", "space_hz", "eb_n0_db", "seeds", "characters", "minimodem_errors"])
        out.writerows(rows)


main(Path(sys.argv[1]))

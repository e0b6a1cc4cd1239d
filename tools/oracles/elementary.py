"""True values of the elementary functions, for packages/units/truth/elementary.csv.

    pip install mpmath==1.4.1
    python tools/oracles/elementary.py > packages/units/truth/elementary.csv
    python tools/oracles/elementary.py --constants     # the split constants of packages/units/src/elementary.ts

Each row: function, x, y (atan2: y/x as its arguments come; pow: base and exponent), the double nearest to the true
value, and what that double leaves over. Points are chosen for difficulty, the rest at random with a fixed seed.
"""
import random
import sys

import mpmath
from mpmath import mp, mpf

DIGITS = 50
mp.dps = DIGITS + 10
SEED = 20261124


def neighbours(x, steps=1):
    """x with the doubles beside it."""
    import math
    found = [x]
    below = above = x
    for _ in range(steps):
        below, above = math.nextafter(below, -math.inf), math.nextafter(above, math.inf)
        found += [below, above]
    return found


def hardest_angles(limit):
    """Doubles up to the limit nearest to a multiple of pi/2: numerators of the continued fraction of (pi/2) / 2^e."""
    found = []
    for e in range(-53, -32):
        x = mp.pi / 2 / mpf(2) ** e
        p0, p1, q0, q1 = 0, 1, 1, 0
        while True:
            a = int(mpmath.floor(x))
            p0, p1 = p1, a * p1 + p0
            q0, q1 = q1, a * q1 + q0
            if p1 >= 2**53 or p1 * 2.0**e > limit:
                break
            if p1 >= 2**40:
                found.append(p1 * 2.0**e)
            x = 1 / (x - a)
    return found


def angles(rng):
    points = hardest_angles(1e6)
    for k in [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 100, 355, 710, 1000, 65535, 65536, 524287, 524288, 600001, 636619]:
        points += neighbours(float(k * mp.pi / 2))
    points += [s * 10.0**-k for k in (1, 2, 3, 5, 7, 8, 9, 12, 16, 20, 100, 300) for s in (1, -1)]
    points += neighbours(float(mp.pi / 4)) + neighbours(float(3 * mp.pi / 4)) + [1e6, -1e6]
    points += [rng.uniform(-4, 4) for _ in range(100)]
    points += [rng.uniform(-1e6, 1e6) for _ in range(80)]
    points += [rng.choice((-1, 1)) * 10 ** rng.uniform(-3, 6) for _ in range(60)]
    return points


def far_angles(rng):
    return [rng.choice((-1, 1)) * 10 ** rng.uniform(6, 14) for _ in range(100)]


def unit_interval(rng):
    points = [0.5, -0.5, 1.0, -1.0, float(mpf(1) / mpmath.sqrt(2))]
    points += [s * (1 - 2.0**-k) for k in range(2, 54) for s in (1, -1)]
    points += [s * 10.0**-k for k in (1, 2, 4, 7, 8, 9, 16, 300) for s in (1, -1)]
    return points + [rng.uniform(-1, 1) for _ in range(250)]


def atan_points(rng):
    points = [s * (k + 0.5) / 8 for k in range(9) for s in (1, -1)]
    points += neighbours(1.0, 3) + [s * 10.0**k for k in (-300, -16, -9, -8, -7, -3, 3, 8, 16, 300) for s in (1, -1)]
    points += [rng.uniform(-1.5, 1.5) for _ in range(200)]
    return points + [rng.choice((-1, 1)) * 10 ** rng.uniform(-4, 6) for _ in range(150)]


def atan2_points(rng):
    points = [(1.0, 1.0), (1.0, -1.0), (-1.0, -1.0), (-1e-300, -1.0), (1e-20, -1.0), (1.0, 1e-20), (-1.0, 1e300), (5e-324, 1.0)]
    points += [(rng.uniform(-1, 1), rng.uniform(-1, 1)) for _ in range(250)]
    return points + [(rng.choice((-1, 1)) * 10 ** rng.uniform(-8, 8), rng.choice((-1, 1)) * 10 ** rng.uniform(-8, 8)) for _ in range(150)]


def exp_points(rng):
    points = [s * 10.0**-k for k in (0, 1, 2, 4, 8, 15, 16, 17, 300) for s in (1, -1)]
    points += [k * 0.5 * float(mp.log(2)) for k in range(-25, 26)] + [709.0, 709.78, -708.0]
    points += [rng.uniform(-2, 2) for _ in range(150)]
    return points + [rng.uniform(-708, 709) for _ in range(150)]


def log_points(rng):
    points = neighbours(1.0, 20) + [1 + s * 2.0**-k for k in range(2, 53) for s in (1, -1)]
    points += neighbours(float(mpmath.sqrt(2)), 2) + neighbours(float(mpmath.sqrt(mpf(1) / 2)), 2)
    points += [float(f"1e{k}") for k in range(-20, 23)] + [5e-324, 1e-310, 2.2250738585072014e-308, 1.7976931348623157e308]
    points += [rng.uniform(0.5, 2) for _ in range(120)]
    return points + [10 ** rng.uniform(-300, 300) for _ in range(100)]


def pow_points(rng):
    points = [(10.0, k / 10) for k in range(-200, 201, 4)] + [(2.0, float(k)) for k in (-1022, -53, 1, 10, 1023)]
    points += [(1 + s * 2.0**-k, 2.0**k * 1.75) for k in range(2, 53) for s in (1, -1)]
    points += [(2.4, -rng.uniform(0, 3)) for _ in range(50)]
    points += [(rng.uniform(0, 2), rng.uniform(-20, 20)) for _ in range(100)]
    wide = []
    while len(wide) < 100:
        base, exponent = 10 ** rng.uniform(-30, 30), rng.uniform(-30, 30)
        if abs(exponent * mpmath.log10(mpf(base))) < 300:
            wide.append((base, exponent))
    return points + wide


ONE_ARGUMENT = {
    "sin": (lambda rng: angles(rng) + far_angles(rng), mpmath.sin),
    "cos": (lambda rng: angles(rng) + far_angles(rng), mpmath.cos),
    "tan": (angles, mpmath.tan),
    "asin": (unit_interval, mpmath.asin),
    "acos": (unit_interval, mpmath.acos),
    "atan": (atan_points, mpmath.atan),
    "exp": (exp_points, mpmath.exp),
    "log": (log_points, mpmath.log),
    "log10": (log_points, mpmath.log10),
}
TWO_ARGUMENTS = {"atan2": (atan2_points, mpmath.atan2), "pow": (pow_points, mpmath.power)}


def print_rows():
    print("function,x,y,value,rest")
    for name, (points, true) in {**ONE_ARGUMENT, **TWO_ARGUMENTS}.items():
        rng = random.Random(f"{SEED} {name}")
        rows = points(rng)
        for arguments in rows if name in TWO_ARGUMENTS else [(x,) for x in rows]:
            value = mpf(mpmath.nstr(true(*[mpf(a) for a in arguments]), DIGITS))
            nearest = float(value)
            x, y = repr(arguments[0]), repr(arguments[1]) if len(arguments) == 2 else ""
            print(f"{name},{x},{y},{nearest!r},{float(value - mpf(nearest)):.3e}")


def split(value, bits):
    """The value as a sum of doubles, each but the last cut to so many bits."""
    found = []
    for width in bits:
        mantissa, exponent = mp.frexp(value)
        cut = mp.ldexp(mpmath.floor(mantissa * mpf(2) ** width), int(exponent) - width) if width < 53 else mpf(float(value))
        found.append(float(cut))
        value -= cut
    return found


def print_constants():
    print("pi/2", split(mp.pi / 2, [33, 33, 33, 53]))
    print("ln 2", split(mp.log(2), [32, 53]))
    for name, value in {"pi": mp.pi, "pi/2": mp.pi / 2, "log10 e": 1 / mp.log(10)}.items():
        print(name, split(value, [53, 53]))
    for k in range(1, 9):
        print(f"atan {k}/8", split(mpmath.atan(mpf(k) / 8), [53, 53]))
    for k in range(23, 46):
        value = mp.log(mpf(k) / 32)
        head = mpmath.nint(value * 2**42) / mpf(2) ** 42  # ends at 2^-42, so that k LN2_1 + head is exact
        print(f"ln {k}/32", [float(head), float(value - head)])


if __name__ == "__main__":
    print_constants() if "--constants" in sys.argv[1:] else print_rows()

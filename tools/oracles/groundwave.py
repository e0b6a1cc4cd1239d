"""Ground wave over a smooth sphere, for packages/sky/truth/groundwave-series.csv.

    pip install mpmath==1.4.1
    python tools/oracles/groundwave.py > packages/sky/truth/groundwave-series.csv

No residue, no root and no series of the program's is used: the diffraction integral itself is taken, at 25 digits, along two
straight lines from the origin that hold all its poles between them; where two pairs of lines don't agree within 1e-5 dB the script
stops. W = sqrt(pi x / j) / (2 pi j) * integral of exp(-j x t) w(t) / (w'(t) - q w(t)) dt, w(t) = Ai(t exp(-2 pi j / 3)).
"""
import random
import sys

import mpmath
from mpmath import mp, mpc, mpf

mp.dps = 25
SEED = 20261124
ROWS = 120
NODES = 28
DEEPEST_DB = -250  # further into the shadow 25 digits don't reach

GROUNDS = [(5, 70), (5, 70), (0.01, 30), (0.003, 22), (0.001, 15), (3e-4, 7), (1e-4, 3), (0.003, 80), (1, 80)]
LIGHT = mpf(299792458)
VACUUM = mpf("8.8541878128e-12")
RADIUS_KM = mpf(4) / 3 * 6371
TURN = mpmath.expjpi(mpf(-2) / 3)


def legendre(n):
    """Gauss-Legendre nodes and weights on 0 to 1."""
    rule = []
    for k in range(1, n + 1):
        guess = mpmath.cos(mp.pi * (k - mpf(1) / 4) / (n + mpf(1) / 2))
        x = mpmath.findroot(lambda t: mpmath.legendre(n, t), (guess, guess + mpf(10) ** -4))
        slope = n * (x * mpmath.legendre(n, x) - mpmath.legendre(n - 1, x)) / (x * x - 1)
        rule.append(((1 + x) / 2, 1 / ((1 - x * x) * slope * slope)))
    return rule


RULE = legendre(NODES)


def sphere(f_mhz, sigma, permittivity):
    omega = 2 * mp.pi * mpf(f_mhz) * 10**6
    k_km = omega / LIGHT * 1000
    n2 = mpc(permittivity, -mpf(sigma) / (omega * VACUUM))
    m = mpmath.cbrt(k_km * RADIUS_KM / 2)
    return -1j * m * mpmath.sqrt(n2 - 1) / n2, m / RADIUS_KM


def along(x, q, degrees):
    """The integral from 0 outward at an angle, in panels that double."""
    unit = mpmath.expjpi(mpf(degrees) / 180)
    end = 60 / (x * abs(unit.imag))
    edges = [mpf(0)]
    edge = min(mpf(1) / 4, end / 2)
    while edge < end:
        edges.append(edge)
        edge = edge + max(edge / 2, mpf(1) / 2) if edge * x < 1 else edge + max(mpf(1) / 2, min(edge / 2, 4 / x))
    edges.append(end)
    total = mpc(0)
    for a, b in zip(edges, edges[1:]):
        for node, weight in RULE:
            t = (a + (b - a) * node) * unit
            z = t * TURN
            value = mpmath.airyai(z)
            slope = TURN * mpmath.airyai(z, derivative=1)
            total += weight * (b - a) * unit * mpmath.exp(-1j * x * t) * value / (slope - q * value)
    return total


def attenuation(x, q, lower, upper):
    return mpmath.sqrt(mp.pi * x / 1j) * (along(x, q, lower) - along(x, q, upper)) / (2j * mp.pi)


def field(f_mhz, sigma, permittivity, d_km):
    q, x_per_km = sphere(f_mhz, sigma, permittivity)
    x = x_per_km * mpf(d_km)

    def decibels(lower, upper):
        return 20 * mpmath.log10(300000 * abs(attenuation(x, q, lower, upper)) / mpf(d_km))

    first = decibels(-125, -15)
    if first < DEEPEST_DB:
        return None
    second = decibels(-110, -25)
    if abs(first - second) > 1e-5:
        raise SystemExit(f"the two integrals differ: {f_mhz} MHz {sigma} {permittivity} {d_km} km {first} {second}")
    return first


def main():
    if "--spot" in sys.argv:
        for d in (50, 100, 200, 500, 1000):
            print(d, mpmath.nstr(field(2, 5, 70, d), 8))
        return
    rng = random.Random(SEED)
    print(f"# mpmath {mpmath.__version__}, seed {SEED}", file=sys.stderr)
    print("f_mhz,sigma_s_per_m,permittivity,distance_km,field_dbuv_per_m")
    count = 0
    while count < ROWS:
        f_mhz = round(0.14 * (30 / 0.14) ** rng.random(), 4)
        sigma, permittivity = rng.choice(GROUNDS)
        d_km = round(3000 ** rng.random(), 2)
        value = field(f_mhz, sigma, permittivity, d_km)
        if value is None:
            continue
        print(f"{f_mhz},{sigma},{permittivity},{d_km},{mpmath.nstr(value, 9)}", flush=True)
        count += 1


main()

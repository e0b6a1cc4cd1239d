"""Geodesics for packages/sphere/truth/geodesics.csv, on the sphere of 6371 km and on the ellipsoid WGS 84.

    pip install geographiclib==2.1
    python tools/oracles/sphere.py > packages/sphere/truth/geodesics.csv

A sphere is an ellipsoid of no flattening, so one library answers both. Places are chosen for difficulty, the rest at
random with a fixed seed, evenly over the globe.
"""
import math
import random

from geographiclib.geodesic import Geodesic

SPHERE = Geodesic(6371e3, 0)
WGS84 = Geodesic.WGS84
SEED = 20261124


def anywhere(rng):
    return round(math.degrees(math.asin(rng.uniform(-1, 1))), 6), round(rng.uniform(-180, 180), 6)


def pairs():
    rng = random.Random(SEED)
    yield from [("random", *anywhere(rng), *anywhere(rng)) for _ in range(300)]
    for _ in range(100):  # from some 100 km down to a metre
        lat, lon = anywhere(rng)
        size = 10 ** rng.uniform(-5, 0)
        yield ("near", lat, lon, max(-90, min(90, lat + size * rng.uniform(-1, 1))), lon + size * rng.uniform(-1, 1))
    for _ in range(60):  # within some 100 km down to a metre of the antipode
        lat, lon = anywhere(rng)
        size = 10 ** rng.uniform(-5, 0)
        yield ("antipodal", lat, lon, max(-90, min(90, -lat + size * rng.uniform(-1, 1))), lon + 180 + size * rng.uniform(-1, 1))
    for lat1, lat2 in ((-90, -89), (-90, 0), (-90, 90), (-60, -59.999), (-60, 60), (0, 0.001), (0, 1), (0, 90), (45, 45.001), (45, -45), (90, 89.999)):
        yield ("meridian", lat1, 20, lat2, 20)
    for step in (0, 0.001, 1, 90, 179, 180):
        yield ("equator", 0, 20, 0, 20 + step)
    for lat in (-70, 10, 50):
        yield ("dateline", lat, 179.5, lat + 1, -179.5)
        yield ("dateline", lat, -179.999, lat, 179.999)
    for lon in (-120, 0, 75, 179.9):
        yield ("over a pole", 80, lon, 85, lon + 180)
        yield ("over a pole", -89.9, lon, -89.9, lon + 170)


print("kind,lat1,lon1,lat2,lon2,sphere_km,sphere_bearing,wgs84_km")
for kind, lat1, lon1, lat2, lon2 in pairs():
    lat2, lon2 = round(lat2, 9), round((lon2 + 180) % 360 - 180, 9)
    ball = SPHERE.Inverse(lat1, lon1, lat2, lon2)
    earth = WGS84.Inverse(lat1, lon1, lat2, lon2)
    print(f"{kind},{lat1!r},{lon1!r},{lat2!r},{lon2!r},{ball['s12'] / 1000:.15g},{ball['azi1'] % 360:.12g},{earth['s12'] / 1000:.15g}")

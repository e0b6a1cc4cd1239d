"""Times PyIRI's vectorised maps of foF2 and M(3000)F2 over places given to it, 24 hours, and leaves their values: packages/sky/src/map.bench.ts.

    pip install pyiri==0.1.6
    python tools/oracles/ionosphere_grid.py MONTH R12 RUNS PLACES VALUES

PLACES: float64 latitudes, then longitudes, then modified dips in degrees. VALUES: float64 foF2 (place, then hour), then M(3000)F2. The
third map it always works out as well, of sporadic E, is cut to one function that costs nothing. Prints seconds as JSON: `own` with its
coefficients as it reads them (Python objects), `floats` with the same coefficients as an array of floats.
"""
import importlib.metadata
import json
import sys
import time

import numpy as np
import PyIRI
import PyIRI.main_library as maps

installed = importlib.metadata.version("pyiri")
assert installed == "0.1.6", f"pyiri {installed}, expected 0.1.6"

month, r12, runs = int(sys.argv[1]), float(sys.argv[2]), int(sys.argv[3])
lat, lon, modip = np.fromfile(sys.argv[4]).reshape(3, -1)
hours = np.arange(24.0)
shape = maps.highest_power_of_extension()
foF2_u, _, m3000_u, _ = maps.read_ccir_ursi_coeff(month, PyIRI.coeff_dir)
none_d, none_g, none_u = np.zeros((hours.size, 1)), np.zeros((1, lat.size)), np.zeros((1, 1, 2))


def evaluate(foF2_coefficients, m3000_coefficients):
    day = [np.transpose(maps.set_diurnal_functions(shape["nj"][name], hours)) for name in ("F0F2", "M3000")]
    place = [maps.set_global_functions(shape["QM"][name], shape["nk"][name], lon, lat, modip) for name in ("F0F2", "M3000")]
    foF2, m3000, _ = maps.gamma(*day, none_d, *place, none_g, foF2_coefficients, m3000_coefficients, none_u)
    return [level[:, :, 0] + (level[:, :, 1] - level[:, :, 0]) * (r12 / 100) for level in (foF2, m3000)]


def seconds(*coefficients):
    taken = []
    for _ in range(runs):
        start = time.perf_counter()
        values = evaluate(*coefficients)
        taken.append(time.perf_counter() - start)
    return taken, values


own, values = seconds(foF2_u, m3000_u)
floats, _ = seconds(foF2_u.astype(float), m3000_u.astype(float))
np.concatenate([np.ascontiguousarray(one.T, dtype=float).ravel() for one in values]).tofile(sys.argv[5])
print(json.dumps({"own": own, "floats": floats}))

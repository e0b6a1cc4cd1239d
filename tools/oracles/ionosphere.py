"""foF2 and M(3000)F2 by PyIRI's own maps, at the modified dip of the rows on standard input, for packages/sky/truth/maps-pyiri.csv.

    pip install pyiri==0.1.6
    node tools/oracles/ionosphereRows.ts | python tools/oracles/ionosphere.py > packages/sky/truth/maps-pyiri.csv

Only its maps are asked, at both solar levels: its magnetic field is not used (its Legendre derivative is in error), nor its index of
solar activity (another than R12). numpy 2.4.6, CPython 3.11.7.
"""
import csv
import importlib.metadata
import sys

import numpy as np
import PyIRI
import PyIRI.main_library as maps

installed = importlib.metadata.version("pyiri")
assert installed == "0.1.6", f"pyiri {installed}, expected 0.1.6"

rows = list(csv.DictReader(sys.stdin))
print(",".join([*rows[0], "foF2_at_0_MHz", "foF2_at_100_MHz", "M3000F2_at_0", "M3000F2_at_100"]))
for row in rows:
    place = [np.array([float(row[name])]) for name in ("lon_deg_east", "lat_deg", "modip_300km_deg")]
    hour = np.array([float(row["utc_hour"])])
    foF2_u, _, m3000_u, es_u = maps.read_ccir_ursi_coeff(int(row["month"]), PyIRI.coeff_dir)
    foF2, m3000, _ = maps.gamma(*maps.diurnal_functions(hour), *maps.set_gl_G(*place), foF2_u, m3000_u, es_u)
    values = [foF2[0, 0, 0], foF2[0, 0, 1], m3000[0, 0, 0], m3000[0, 0, 1]]
    print(",".join([*row.values(), *(f"{value:.10f}" for value in values)]))

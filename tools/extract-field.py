"""Coefficients of the Earth's magnetic field for packages/sphere: IGRF-13 from the PyPI package pyiri, WMM from the npm package geomagnetism.

    pip install pyiri==0.1.6
    npm pack geomagnetism@0.2.0
    python tools/extract-field.py igrf > packages/sphere/data/igrf13.csv
    python tools/extract-field.py wmm 2025 geomagnetism-0.2.0.tgz > packages/sphere/data/wmm2025.csv
    python tools/extract-field.py wmm 2020 geomagnetism-0.2.0.tgz > packages/sphere/truth/wmm2020.csv
    python tools/extract-field.py values geomagnetism-0.2.0.tgz > packages/sphere/truth/wmmTestValues.csv

Schmidt semi-normalised, nT; a negative order stands for h. Sources are held to their checksums; a rerun gives the same bytes.
"""
import csv
import hashlib
import importlib.metadata
import importlib.util
import io
import json
import sys
import tarfile
from decimal import Decimal
from pathlib import Path

PYIRI = "0.1.6"
IGRF_SHA256 = "4cf3106a0995dd31254e2475979b72c1906798ebacc08adc40433d290df0cd2b"
GEOMAGNETISM_SHA256 = "6830c6de61373bd6a9d1d8f78af32c45606c4e4ae14991f742f0ab0de747ce27"


def checked(data, sha256):
    assert hashlib.sha256(data).hexdigest() == sha256, "not the file this was written for"
    return data


def igrf():
    installed = importlib.metadata.version("pyiri")
    assert installed == PYIRI, f"pyiri {installed}, expected {PYIRI}"
    package = importlib.util.find_spec("PyIRI").submodule_search_locations[0]
    text = checked((Path(package) / "coefficients" / "IGRF" / "IGRF13.shc").read_bytes(), IGRF_SHA256).decode("ascii")
    lines = [line.split() for line in text.splitlines() if not line.startswith("#")]
    epochs, rows = lines[1], lines[2:]  # the first line holds the sizes
    assert len(rows) == 13 * 15 and all(len(row) == 2 + len(epochs) for row in rows)
    print(",".join(["degree", "order", *(epoch.removesuffix(".0") for epoch in epochs)]))
    for row in rows:
        print(",".join(row))


def member(archive, name):
    data = checked(Path(archive).read_bytes(), GEOMAGNETISM_SHA256)
    with tarfile.open(fileobj=io.BytesIO(data)) as files:
        return files.extractfile(f"package/{name}").read().decode("utf8")


def wmm(year, archive):
    model = json.loads(member(archive, f"data/wmm-{year}.json"), parse_float=Decimal)
    assert model["epoch"] == int(year) and model["n_max"] == model["n_max_sec_var"] == 12
    print("degree,order,nT,nT_per_year")
    for degree in range(1, 13):
        for order in range(degree + 1):
            at = degree * (degree + 1) // 2 + order
            for sign, part in ((1, "g"), (-1, "h")):
                if sign > 0 or order > 0:
                    print(f"{degree},{sign * order},{model[f'main_field_coeff_{part}'][at]},{model[f'secular_var_coeff_{part}'][at]}")


def values(archive):
    """NOAA's test values of WMM2020 (one decimal, 100 rows) and WMM2025 (six decimals, 100 rows) as that package's tests hold them."""
    print("year,height_km,lat_deg,lon_deg_east,north_nT,east_nT,down_nT,total_nT,dip_deg,declination_deg")
    for row in csv.DictReader(io.StringIO(member(archive, "test/values.csv"))):
        if float(row["date"]) >= 2020:
            cells = [row[name] for name in ("alt", "lat", "lon", "x", "y", "z", "f", "incl", "decl")]
            print(",".join([row["date"].removesuffix("00000"), *cells]))


{"igrf": igrf, "wmm": wmm, "values": values}[sys.argv[1]](*sys.argv[2:])

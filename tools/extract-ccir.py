"""The CCIR coefficients of foF2 and M(3000)F2 for packages/sky/data/ccir.csv, from the files inside the PyPI package pyiri (MIT).

    pip install pyiri==0.1.6
    python tools/extract-ccir.py > packages/sky/data/ccir.csv

Each of the twelve files is Fortran 1X,4E15.8: a blank column, then fields of 15 characters that may touch, so the text is cut by
column. 2858 numbers: foF2 at R12 = 0, then 100 (76 functions of 13), M(3000)F2 at 0, then 100 (49 functions of 9). Every number
keeps its eight digits; trailing zeros go. Source files are held to their checksums; a rerun gives the same bytes.
"""
import hashlib
import importlib.metadata
import importlib.util
from decimal import Decimal
from pathlib import Path

VERSION = "0.1.6"
SHA256 = [  # January to December
    "56646023cabd38a6cebe94f529d3cabba15f22cae02ec0ee84758b26938fe87e",
    "a2e9b7a462c30830251d94de4b3e18f761ac655e019a07ac286e88e36ad92761",
    "ab849d91a7801791dd5d9866512b5a257a713650bd940a761cbdddd90b876ddb",
    "8ee15c4f27544c041a70d33c89fa117874a815b4848ffd0dbc344813aeaef37e",
    "a169404dd1f1d9ec14e24cccd3d1d20729412f04fb935d16612800b35bc8075c",
    "361660d44a8503c9e9004a783fc7a6e61fad24e5fb8fdc00b93fc5f6ce720b66",
    "c80d0fd0e9eb53dc65e3db96231c9cbac23f7471e9f864bee878f3000c49690d",
    "7e07ae4a6e05e9eea0b3d8a4e8ecf590cdb1c86db4d79ab4792afd929761a989",
    "8c34980f9933c846f3449d5df2543e0c808929f321c01164d82b4c249b4c002c",
    "d1211c10e5d3e6e12dd6cbfef20711d171577df03d5424dbd60c1ac6a34a8be8",
    "8195a69009eb02806f22cd3614cf44e01f60177fae335450de12c717f1af96a4",
    "f16f33af514852942cf461d44446773854342bc806de428289fb0165c50db3ac",
]
FIELD = 15
MAPS = [("foF2", 0, 76, 13), ("foF2", 100, 76, 13), ("M3000F2", 0, 49, 9), ("M3000F2", 100, 49, 9)]
COLUMNS = max(width for *_, width in MAPS)


def numbers(text):
    """The fields of a file as decimals, cut by column."""
    for line in text.splitlines():
        body = line[1:].rstrip()
        for at in range(0, len(body), FIELD):
            yield Decimal(body[at : at + FIELD].strip())


def shortest(value):
    """A decimal without trailing zeros; without an exponent down to 1e-7, as a reader expects it."""
    text = format(value.normalize(), "f")
    short = text if len(text) <= 14 else f"{value.normalize():e}".replace("e+", "e")
    assert Decimal(short) == value
    return short


installed = importlib.metadata.version("pyiri")
assert installed == VERSION, f"pyiri {installed}, expected {VERSION}"
package = importlib.util.find_spec("PyIRI").submodule_search_locations[0]
print(",".join(["month", "map", "R12", "function", *(f"u{j}" for j in range(COLUMNS))]))
for month in range(1, 13):
    source = (Path(package) / "coefficients" / "CCIR" / f"ccir{month + 10}.asc").read_bytes()
    assert hashlib.sha256(source).hexdigest() == SHA256[month - 1], f"month {month} is not the file this was written for"
    values = list(numbers(source.decode("ascii")))
    assert len(values) == sum(functions * width for *_, functions, width in MAPS)
    at = 0
    for name, r12, functions, width in MAPS:
        for k in range(functions):
            row = [shortest(value) for value in values[at : at + width]]
            print(",".join([str(month), name, str(r12), str(k), *row, *[""] * (COLUMNS - width)]))
            at += width

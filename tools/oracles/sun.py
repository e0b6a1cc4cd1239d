"""The sun for packages/sphere/truth: sun.csv (where it stands overhead, zenith angles) and sunPassages.csv (rising, setting, twilight).

    pip install ephem==4.2.1
    python tools/oracles/sun.py sun > packages/sphere/truth/sun.csv
    python tools/oracles/sun.py passages > packages/sphere/truth/sunPassages.csv

PyEphem computes the sun from VSOP87. Its centre, as seen from the Earth's centre, without refraction. Rising and setting
are asked at a depression of 50 minutes of arc of the centre, the twilights at 6, 12 and 18 degrees.
"""
import math
import random
import sys
from datetime import datetime, timedelta

import ephem

SEED = 20261124
DEPRESSION = {"sunrise": "-0:50", "civil": "-6", "nautical": "-12", "astronomical": "-18"}
PLACES = [(0, 0), (-33.905, 18.43), (38.533, -28.62), (51.5, 0), (-52, -60), (21.3, -157.9), (-17.5, 179.9), (-14.2, -179.95), (60, 25), (66, 14), (70, 20), (-75, 0), (89, 10)]
DAYS = [f"2027-{month:02d}-15" for month in range(1, 13)] + ["2026-11-24", "2027-03-20", "2027-06-21", "2027-09-23", "2027-12-22", "2028-02-29"]


def observer(lat, lon, at):
    place = ephem.Observer()
    place.lat, place.lon, place.pressure, place.elevation = str(lat), str(lon), 0, 0
    place.date = at
    return place


def overhead(at):
    """Latitude and longitude in degrees where the sun is overhead: declination, and right ascension less sidereal time."""
    sun = ephem.Sun()
    sun.compute(ephem.Date(at), epoch=ephem.Date(at))
    sidereal = observer(0, 0, ephem.Date(at)).sidereal_time()
    lon = math.degrees(float(sun.g_ra) - float(sidereal))
    return math.degrees(float(sun.g_dec)), (lon + 180) % 360 - 180


def zenith(lat, lon, sun_lat, sun_lon):
    a, b, d = math.radians(lat), math.radians(sun_lat), math.radians(lon - sun_lon)
    across = math.hypot(math.cos(b) * math.sin(d), math.cos(a) * math.sin(b) - math.sin(a) * math.cos(b) * math.cos(d))
    return math.degrees(math.atan2(across, math.sin(a) * math.sin(b) + math.cos(a) * math.cos(b) * math.cos(d)))


def print_sun():
    rng = random.Random(SEED)
    print("utc,declination,subsolar_lon,lat,lon,zenith")
    for _ in range(400):
        at = datetime(1990, 1, 1) + timedelta(minutes=rng.randrange(60 * 366 * 1440))  # 1990 to 2050
        sun_lat, sun_lon = overhead(at)
        lat, lon = round(math.degrees(math.asin(rng.uniform(-1, 1))), 3), round(rng.uniform(-180, 180), 3)
        print(f"{at:%Y-%m-%dT%H:%MZ},{sun_lat:.6f},{sun_lon:.6f},{lat!r},{lon!r},{zenith(lat, lon, sun_lat, sun_lon):.6f}")


def passage(lat, lon, day, depression):
    """Rising and setting on the local day, in minutes after 0000 UTC of the date; empty where there is none."""
    start = ephem.Date(day.replace("-", "/"))
    mean_noon = ephem.Date(start + 0.5 - lon / 360)
    place = observer(lat, lon, ephem.Date(mean_noon - 0.25))
    noon = place.next_transit(ephem.Sun())
    found = []
    for name in ("previous_rising", "next_setting"):
        place = observer(lat, lon, noon)
        place.horizon = depression
        try:
            at = getattr(place, name)(ephem.Sun(), use_center=True)
            found.append(f"{(at - start) * 1440:.3f}" if abs(at - noon) <= 0.5 else "")
        except (ephem.AlwaysUpError, ephem.NeverUpError):
            found.append("")
    return [f"{(noon - start) * 1440:.3f}", *found]


def print_passages():
    print("lat,lon,date,kind,noon_min,rise_min,set_min")
    for lat, lon in PLACES:
        for day in DAYS:
            for kind, depression in DEPRESSION.items():
                print(",".join([str(lat), str(lon), day, kind, *passage(lat, lon, day, depression)]))


print_sun() if sys.argv[1:] == ["sun"] else print_passages()

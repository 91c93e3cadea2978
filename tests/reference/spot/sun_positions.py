"""Makes sun-positions.json: python3 sun_positions.py

Sun positions by the formulas of NOAA's solar calculation spreadsheet (after Meeus, Astronomical Algorithms), written
anew here as an independent check. "elevation" is without, "apparent" with NOAA's approximate refraction.
"""

import json
import math
import pathlib
from datetime import datetime, timedelta, timezone

sin = lambda d: math.sin(math.radians(d))
cos = lambda d: math.cos(math.radians(d))
tan = lambda d: math.tan(math.radians(d))


def refraction(elevation):
    if elevation > 85:
        return 0.0
    if elevation > 5:
        seconds = 58.1 / tan(elevation) - 0.07 / tan(elevation) ** 3 + 0.000086 / tan(elevation) ** 5
    elif elevation > -0.575:
        e = elevation
        seconds = 1735 + e * (-518.2 + e * (103.4 + e * (-12.79 + e * 0.711)))
    else:
        seconds = -20.772 / tan(elevation)
    return seconds / 3600


def position(lat, lon, moment):
    midnight = moment.replace(hour=0, minute=0, second=0, microsecond=0)
    minutes = (moment - midnight).total_seconds() / 60
    julian = 2440587.5 + moment.timestamp() / 86400
    t = (julian - 2451545) / 36525
    mean_longitude = (280.46646 + t * (36000.76983 + t * 0.0003032)) % 360
    mean_anomaly = 357.52911 + t * (35999.05029 - 0.0001537 * t)
    eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t)
    centre = (sin(mean_anomaly) * (1.914602 - t * (0.004817 + 0.000014 * t))
              + sin(2 * mean_anomaly) * (0.019993 - 0.000101 * t) + sin(3 * mean_anomaly) * 0.000289)
    node = 125.04 - 1934.136 * t
    longitude = mean_longitude + centre - 0.00569 - 0.00478 * sin(node)
    obliquity = 23 + (26 + (21.448 - t * (46.815 + t * (0.00059 - t * 0.001813))) / 60) / 60 + 0.00256 * cos(node)
    declination = math.degrees(math.asin(sin(obliquity) * sin(longitude)))
    y = tan(obliquity / 2) ** 2
    equation_of_time = 4 * math.degrees(
        y * sin(2 * mean_longitude) - 2 * eccentricity * sin(mean_anomaly)
        + 4 * eccentricity * y * sin(mean_anomaly) * cos(2 * mean_longitude)
        - 0.5 * y * y * sin(4 * mean_longitude) - 1.25 * eccentricity ** 2 * sin(2 * mean_anomaly))
    true_solar = (minutes + equation_of_time + 4 * lon) % 1440
    hour_angle = true_solar / 4 - 180
    zenith = math.degrees(math.acos(sin(lat) * sin(declination) + cos(lat) * cos(declination) * cos(hour_angle)))
    ratio = (sin(lat) * cos(zenith) - sin(declination)) / (cos(lat) * sin(zenith))
    angle = math.degrees(math.acos(max(-1, min(1, ratio))))
    bearing = (angle + 180) % 360 if hour_angle > 0 else (540 - angle) % 360
    return 90 - zenith, 90 - zenith + refraction(90 - zenith), bearing


rows = []
places = [(30.9, -42.1), (42.0, 9.0), (-33.9, 18.4), (0.5, 100.0), (58.0, 11.0), (-45.0, -170.0)]
for year in (1990, 2026, 2059):
    for place, (lat, lon) in enumerate(places):
        for step in range(14):
            moment = datetime(year, 1, 4, tzinfo=timezone.utc) + timedelta(
                days=27 * step, minutes=(step * 347 + place * 211 + 95) % 1440)
            elevation, apparent, bearing = position(lat, lon, moment)
            if elevation < 0:
                moment += timedelta(hours=12)
                elevation, apparent, bearing = position(lat, lon, moment)
            rows.append({"lat": lat, "lon": lon, "utc": moment.strftime("%Y-%m-%dT%H:%M:00Z"),
                         "elevation": round(elevation, 4), "apparent": round(apparent, 4), "bearing": round(bearing, 4)})

# The published example of NREL's solar position algorithm (Reda and Andreas 2004, table A5.1) as a check of this script.
elevation, apparent, bearing = position(39.742476, -105.1786, datetime(2003, 10, 17, 19, 30, 30, tzinfo=timezone.utc))
print("zenith 50.11162:", round(90 - apparent, 4), " azimuth 194.34024:", round(bearing, 4))
head = '{\n"source": "NOAA solar calculation formulas, sun_positions.py",\n"rows": [\n'
path = pathlib.Path(__file__).parent / "sun-positions.json"
path.write_text(head + ",\n".join(json.dumps(row) for row in rows) + "\n]\n}\n")

"""Writes series.json: series made by a formula, so that R and SciPy can be compared with everywhere.

Run: python3 make-series.py
Value i of a series is the GEV quantile (Hosking's k) of u_i = frac(i * golden + offset), rounded to 2 decimals:
evenly spread chances in a shuffled order, no random generator involved. "trend" adds slope * i to the location.
"""
import json, math, os

GOLDEN = 0.6180339887498949


def series(n, location, scale, k, offset, slope=0.0):
    values = []
    for i in range(1, n + 1):
        u = (i * GOLDEN + offset) % 1.0
        g = -math.log(-math.log(u))
        z = g if k == 0 else (1 - math.exp(-k * g)) / k
        values.append(round(location + slope * i + scale * z, 2))
    return values


SERIES = {
    "bounded_60": series(60, 3.0, 2.2, 0.2, 0.137),
    "gumbel_40": series(40, 5.0, 1.5, 0.0, 0.311),
    "heavy_80": series(80, -1.0, 3.0, -0.15, 0.059),
    "trend_70": series(70, 4.0, 2.0, 0.12, 0.223, -0.03),
}
here = os.path.dirname(os.path.abspath(__file__))
with open(os.path.join(here, "series.json"), "w") as out:
    json.dump({"about": "made by make-series.py; invented numbers", "series": SERIES}, out, indent=1)
    out.write("\n")

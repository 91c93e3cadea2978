"""Recomputes check-values.json from the published formulas by time steps: python3 cold_hours.py (prints differences)."""

import json
import math
import pathlib

values = json.loads((pathlib.Path(__file__).parent / "check-values.json").read_text())
worst = 0.0


def fao_hours(lat, day):
    declination = 0.409 * math.sin(2 * math.pi * day / 365 - 1.39)
    angle = math.acos(-math.tan(math.radians(lat)) * math.tan(declination))
    return declination, angle, 24 * angle / math.pi


def spencer_hours(lat, day, zenith):
    g = 2 * math.pi * (day - 1) / 365
    declination = (0.006918 - 0.399912 * math.cos(g) + 0.070257 * math.sin(g) - 0.006758 * math.cos(2 * g)
                   + 0.000907 * math.sin(2 * g) - 0.002697 * math.cos(3 * g) + 0.00148 * math.sin(3 * g))
    phi = math.radians(lat)
    cosine = (math.cos(math.radians(zenith)) - math.sin(phi) * math.sin(declination)) / (
        math.cos(phi) * math.cos(declination))
    return 24 * math.acos(cosine) / math.pi


example = values["daylength"]["fao56_example"]
for got, want in zip(fao_hours(example["lat"], example["J"]), (example["delta"], example["ws"], example["hours"])):
    worst = max(worst, abs(got - want))
for row in values["daylength"]["rows"]:
    worst = max(worst, abs(fao_hours(row["lat"], row["J"])[2] - row["fao"]))
    worst = max(worst, abs(spencer_hours(row["lat"], row["J"], 90) - row["spencer"]))
    worst = max(worst, abs(spencer_hours(row["lat"], row["J"], 90.833) - row["spencer_90_833"]))
print("day length, largest difference (h):", round(worst, 5))

sun = values["hours_below"]["sun"]
rise, sunset, night = sun["Hn"], sun["Ho"], sun["N"]
warmest = sunset - 4


def tm(case, t):
    """Temperature at t hours after the midnight that opens the first day."""
    if t <= 24:
        tmax, following = case["tmax1"], case["tmin1"]
    else:
        t -= 24
        tmax, following = case["tmax2"], case["tmin2"]
        if t <= rise:
            t += 24
            tmax, following = case["tmax1"], case["tmin1"]
        elif t <= warmest:
            return case["tmin1"] + (tmax - case["tmin1"]) * math.sin(math.pi / 2 * (t - rise) / (warmest - rise))
    at_sunset = tmax - 0.39 * (tmax - following)
    if t <= warmest:
        return case["tmin0"] + (tmax - case["tmin0"]) * math.sin(math.pi / 2 * (t - rise) / (warmest - rise))
    if t <= sunset:
        return at_sunset + (tmax - at_sunset) * math.sin(math.pi / 2 + math.pi / 2 * (t - warmest) / 4)
    return at_sunset + (following - at_sunset) * math.sqrt((t - sunset) / night)


worst = 0.0
for case in values["hours_below"]["cases"]:
    for level, want in case["tm"].items():
        want = want["total"] if isinstance(want, dict) else want
        steps = range(13 * 600, 37 * 600)
        worst = max(worst, abs(sum(tm(case, s / 600) <= float(level) for s in steps) / 600 - want))
print("hours at or below a level, largest difference (h):", round(worst, 4))

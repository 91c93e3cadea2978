"""Prints public reference series as CSV (series,index,value), read from the folder given; used by evd.R and scipy-values.py.

Run: python3 real-series.py FOLDER   (FOLDER holds the series named in PROVENANCE.md; they are not part of this project)
Winter minima are negated. A winter runs July to June.
"""
import csv, gzip, os, sys


def read(folder, name):
    path = os.path.join(folder, name)
    opened = gzip.open(path, "rt") if name.endswith(".gz") else open(path)
    with opened as lines:
        return list(csv.DictReader(lines))


def winters(rows, year, month, low, first, last):
    coldest = {}
    for row in rows:
        if row[low] in ("", "NA"):
            continue
        winter = int(row[year]) + (1 if int(row[month]) >= 7 else 0)
        coldest[winter] = min(coldest.get(winter, 1e9), float(row[low]))
    return [(w, -coldest[w]) for w in range(first, last + 1)]


def all_series(folder):
    jervis = read(folder, "port_jervis_winter_1927-1995.csv")
    phoenix = read(folder, "phoenix_summer_max_min_1948-1990.csv")
    fort = read(folder, "fort_collins_1900-1999.csv.gz")
    denver = read(folder, "denver_daily_min_1949-1999.csv.gz")
    return {
        "port_jervis": [(int(r["Year"]), -float(r["TMN0"])) for r in jervis],
        "phoenix": [(int(r["Year"]), -float(r["Tmin"])) for r in phoenix],
        "fort_collins": winters(fort, "Year", "Mn", "MnT", 1901, 1999),
        "denver": winters(denver, "Year", "Mon", "Min", 1950, 1999),
    }


if __name__ == "__main__":
    print("series,index,value")
    for name, values in all_series(sys.argv[1]).items():
        for index, value in values:
            print(f"{name},{index},{value!r}")

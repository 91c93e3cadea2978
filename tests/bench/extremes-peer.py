"""python3 extremes-peer.py FILE STATIONS WINTERS DAYS: times the network task of bench-extremes.ts, prints JSON.

Loading isn't timed. Counts by NumPy's bincount, much faster here than one pandas sum a threshold.
"""
import json, sys, time, warnings
import numpy, pandas
from scipy import stats

warnings.simplefilter("ignore")
stations, winters, days = (int(a) for a in sys.argv[2:5])
tmin = numpy.fromfile(sys.argv[1], dtype=numpy.float32)
frame = pandas.DataFrame({
    "station": numpy.repeat(numpy.arange(stations, dtype=numpy.int32), winters * days),
    "winter": numpy.tile(numpy.repeat(numpy.arange(winters, dtype=numpy.int32), days), stations),
    "tmin": tmin,
})
thresholds = numpy.arange(-14, 0.75, 0.5, dtype=numpy.float32)

start = time.perf_counter()
minima = frame.groupby(["station", "winter"], sort=True)["tmin"].min().to_numpy().astype(float)
minima_ms = 1000 * (time.perf_counter() - start)

start = time.perf_counter()
bins = numpy.searchsorted(thresholds, frame["tmin"].to_numpy())
keep = bins < 30
counts = numpy.bincount(frame["station"].to_numpy()[keep] * 30 + bins[keep], minlength=stations * 30)
counts = counts.reshape(stations, 30).cumsum(axis=1)
counts_ms = 1000 * (time.perf_counter() - start)

start = time.perf_counter()
location = [stats.genextreme.fit(-m)[1] for m in minima.reshape(stations, winters)]
fits_ms = 1000 * (time.perf_counter() - start)
print(json.dumps({"minimaMs": minima_ms, "countsMs": counts_ms, "fitsMs": fits_ms, "sumOfMinima": float(minima.sum()),
                  "sumOfCounts": int(counts.sum()), "meanLocation": float(numpy.mean(location)), "note": ""}))

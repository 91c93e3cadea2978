"""Reference values for slopes: scipy.stats.theilslopes, 90 % interval. Run by hand: python3 theil-sen.py > theil-sen.json"""
import json

import numpy
import scipy
from scipy import stats

random = numpy.random.default_rng(41)
cases = {
    "falling": (numpy.arange(15.0), numpy.round(2 - 0.1 * numpy.arange(15) + 0.4 * random.standard_t(4, 15), 2)),
    "level": (numpy.round(random.normal(-1, 3, 24), 1), numpy.round(1.5 + 0.6 * random.standard_t(5, 24), 2)),
    "tied times": (numpy.array([0.0, 0, 1, 1, 2, 3, 3, 5, 8, 9]), numpy.array([1.0, 1.2, 0.7, 1.6, 1.1, 1.9, 2.2, 2.0, 2.9, 2.5])),
    "tied values": (numpy.arange(12.0), numpy.array([1.0, 1, 2, 2, 2, 3, 1, 3, 3, 4, 4, 3])),
}
out = []
for name, (x, y) in cases.items():
    slope, _, low, high = stats.theilslopes(y, x, 0.9)
    out.append({"name": name, "x": x.tolist(), "y": y.tolist(), "slope": slope, "low": low, "high": high})
print(json.dumps({"made_by": f"SciPy {scipy.__version__}, theil-sen.py", "cases": out}, indent=2))

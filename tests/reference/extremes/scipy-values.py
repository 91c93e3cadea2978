"""Writes scipy-values.json: distribution functions, GEV fits, Kendall and Theil-Sen values by SciPy.

Run: python3 scipy-values.py [FOLDER]   FOLDER holds the public series of PROVENANCE.md (left out: made-up series only).
SciPy's shape c equals Hosking's k.
"""
import importlib.util, json, os, sys
import numpy, scipy
from scipy import optimize, special, stats

here = os.path.dirname(os.path.abspath(__file__))
series = {k: list(enumerate(v, 1)) for k, v in json.load(open(os.path.join(here, "series.json")))["series"].items()}
if len(sys.argv) > 1:
    spec = importlib.util.spec_from_file_location("real_series", os.path.join(here, "real-series.py"))
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    series.update(module.all_series(sys.argv[1]))

out = {"about": f"SciPy {scipy.__version__}, NumPy {numpy.__version__}; shape is Hosking's k; written by scipy-values.py"}
xs = [-12, -8, -5, -3, -2.5, -1, -0.1, 0, 0.3, 1.7, 2.6, 4, 7]
ps = [1e-12, 1e-6, 0.001, 0.025, 0.05, 0.3, 0.5, 0.8, 0.95, 0.999]
out["normal_cdf"] = [[x, float(stats.norm.cdf(x))] for x in xs]
out["normal_quantile"] = [[p, float(stats.norm.ppf(p))] for p in ps]
out["chi2_cdf"] = [[x, d, float(stats.chi2.cdf(x, d))] for d in (1, 2, 3, 7.5) for x in (0.01, 0.5, 3.841, 9, 25)]
out["chi2_quantile"] = [[p, d, float(stats.chi2.ppf(p, d))] for d in (1, 2, 5) for p in (0.01, 0.5, 0.9, 0.95, 0.999)]
out["gamma"] = [[x, float(special.gamma(x)), float(special.gammaln(x))] for x in (0.55, 0.8, 1.0001, 1.3, 2.7, 30.5)]
out["gev"] = [
    [y, loc, scale, k, float(stats.genextreme.cdf(y, k, loc, scale)), float(stats.genextreme.sf(y, k, loc, scale))]
    for (loc, scale, k) in ((0, 1, 0), (3, 2, 0.2), (-1, 0.5, -0.3), (0, 1, 1e-6))
    for y in (-2.5, -0.6, 0.4, 3, 8, 14)
]
out["gev_quantile"] = [
    [p, loc, scale, k, float(stats.genextreme.ppf(p, k, loc, scale))]
    for (loc, scale, k) in ((0, 1, 0), (3, 2, 0.2), (-1, 0.5, -0.3))
    for p in (0.01, 0.5, 0.9, 0.99, 0.9999)
]
sample = [3.1, 4.7, 1.2, 9.9, 5.0, 2.2, 2.2]
out["quantile_type7"] = {"values": sample, "p_q": [[p, float(numpy.quantile(sample, p))] for p in (0, 0.05, 0.31, 0.5, 0.77, 0.95, 1)]}
fits = {}
for name, pairs in series.items():
    y = numpy.array([v for _, v in pairs])

    def nll(p):
        return -numpy.sum(stats.genextreme.logpdf(y, p[0], p[1], numpy.exp(p[2])))

    k0, l0, s0 = stats.genextreme.fit(y)
    best = optimize.minimize(nll, [k0, l0, numpy.log(s0)], method="Nelder-Mead",
                             options={"xatol": 1e-10, "fatol": 1e-12, "maxiter": 20000})
    slope, _, _, _ = stats.theilslopes(y, [i for i, _ in pairs])
    tau = stats.kendalltau([i for i, _ in pairs], y, method="asymptotic")
    fits[name] = {"n": len(y), "k_loc_scale": [float(best.x[0]), float(best.x[1]), float(numpy.exp(best.x[2]))],
                  "loglik": float(-best.fun), "theil_sen": float(slope), "kendall_tau_b": float(tau.statistic)}
out["series"] = fits
with open(os.path.join(here, "scipy-values.json"), "w") as f:
    json.dump(out, f, indent=1)
    f.write("\n")

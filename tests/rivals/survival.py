"""Survival and fitting against SciPy and statsmodels.

    python survival.py LIBRARY
"""
import math
import random
import sys

import numpy as np
import scipy
import statsmodels
import statsmodels.api as sm
from scipy import integrate, optimize, stats

from hilum import Library, Survival

DAY = 86400.0


def curve(kind, t, p):
    """log10 of the share alive after an effective time, from the formula as published, by NumPy."""
    if kind == 1:
        return -t / p["d"]
    if kind == 2:
        return -((t / p["scale"]) ** p["shape"])
    # Where both phases are too small for a double, their logarithms are not.
    ten = math.log(10.0)
    return np.logaddexp(math.log(p["f"]) - t * ten / p["fast"], math.log1p(-p["f"]) - t * ten / p["d"]) / ten


def survival(chance, library, compare):
    p = {
        "d": chance.uniform(5, 80) * DAY, "fast": chance.uniform(0.2, 4) * DAY, "f": chance.uniform(0.05, 0.99),
        "scale": chance.uniform(3, 60) * DAY, "shape": chance.uniform(0.3, 3), "at": chance.uniform(2, 25), "z": chance.uniform(5, 40),
    }
    periods = [(chance.uniform(0.5, 20) * DAY, chance.uniform(-5, 40), 1) for _ in range(chance.randint(1, 6))]
    after = chance.uniform(0.0, 60.0) * DAY
    ends = np.cumsum([lasts for lasts, _, _ in periods])

    def speed(t):
        place = min(int(np.searchsorted(ends, t, side="right")), len(periods) - 1)
        return 10.0 ** ((periods[place][1] - p["at"]) / p["z"])

    # Quadrature of the rate over the history, piece by piece between its steps.
    steps = [0.0, *[float(end) for end in ends[:-1] if end < after], after]
    effective = sum(integrate.quad(speed, a, b, epsrel=1e-12)[0] for a, b in zip(steps, steps[1:]))
    for kind in (1, 2, 3):
        own = Survival(kind, 1, p["d"], p["fast"], p["f"], p["scale"], p["shape"], p["at"], p["z"])
        compare("effective time", library.survived("hilum_survival_effective_time", own, periods, after), effective, 1e-10)
        ours = library.survived("hilum_survival_log10", own, periods, after)
        compare(f"log10 of survival, curve {kind}", ours, float(curve(kind, effective, p)), 1e-9)


def fit(chance, library, compare):
    n = chance.randint(3, 12)
    d, start = chance.uniform(3, 60), chance.uniform(4, 10)
    days = sorted(chance.uniform(0, 90) for _ in range(n))
    samples = [(t * DAY, 10.0 ** (start - t / d + chance.gauss(0, 0.15))) for t in days]
    x, y = np.array([t for t, _ in samples]), np.log10([count for _, count in samples])
    line = sm.OLS(y, sm.add_constant(x)).fit()
    if line.params[1] >= 0:
        return
    own = library.fit(samples)
    line2 = stats.linregress(x, y)
    compare("log10 N0, statsmodels", own.log10_initial, float(line.params[0]), 1e-9)
    compare("D, statsmodels", own.reduction, float(-1.0 / line.params[1]), 1e-9)
    compare("D, SciPy", own.reduction, float(-1.0 / line2.slope), 1e-9)
    compare("error of log10 N0", own.log10_initial_error, float(line.bse[0]), 1e-7)
    # To first order: the error of 1/b is that of b over b squared.
    compare("error of D", own.reduction_error, float(line.bse[1] / line.params[1] ** 2), 1e-7)
    compare("residual", own.residual, float(math.sqrt(line.mse_resid)), 1e-7)
    free, _ = optimize.curve_fit(lambda t, a, b: a - t / b, x / DAY, y, p0=[y[0], 20.0], xtol=1e-14, ftol=1e-14, gtol=1e-14)
    compare("D, least squares without the formula", own.reduction / DAY, float(free[1]), 1e-5)


def main():
    library, chance = Library(sys.argv[1]), random.Random(20260101)
    worst, compared, wrong = {}, 0, []

    def compare(what, ours, theirs, close):
        nonlocal compared
        compared += 1
        off = abs(ours - theirs) / max(abs(theirs), 1e-12)
        worst[what] = max(worst.get(what, 0.0), off)
        if not off <= close:
            wrong.append(f"{what}: {ours!r} here, {theirs!r} there ({off:.1e})")

    for _ in range(2000):
        survival(chance, library, compare)
        fit(chance, library, compare)
    print(f"{compared} values against SciPy {scipy.__version__} and statsmodels {statsmodels.__version__}")
    for what, off in worst.items():
        print(f"  {what}: the worst {off:.1e} apart")
    for problem in wrong[:20]:
        print(problem)
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())

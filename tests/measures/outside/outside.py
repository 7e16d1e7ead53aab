"""Recomputes the cases that come on standard input with SciPy; lines as in outside.R."""
import sys

import numpy as np
from scipy import stats


def wilson(x, n):
    return list(stats.binomtest(int(x), int(n)).proportion_ci(0.95, 'wilson'))


def exact(x, n):
    return list(stats.binomtest(int(x), int(n)).proportion_ci(0.95, 'exact'))


def table(a, b):
    return [[int(a[0]), int(a[1] - a[0])], [int(b[0]), int(b[1] - b[0])]]


def fisher(v):
    sides = ('two-sided', 'greater', 'less')
    return [stats.fisher_exact(table(v[0], v[1]), alternative=side)[1] for side in sides]


def power(v):
    (m, n), (p, q) = v
    total = 0.0
    for a in range(int(m) + 1):
        for b in range(int(n) + 1):
            if stats.fisher_exact(table((a, m), (b, n)))[1] <= 0.05 * (1 + 1e-7):
                total += stats.binom.pmf(a, m, p) * stats.binom.pmf(b, n, q)
    return [total]


def hypergeometric(v):
    first, second, total = (int(x) for x in v[0])
    counts = np.arange(max(0, total - second), min(first, total) + 1)
    return stats.hypergeom.pmf(counts, first + second, first, total)


def difference(v):
    (a, m), (b, n) = v
    p, q, u, w = a / m, b / n, wilson(a, m), wilson(b, n)
    return [p - q, p - q - np.hypot(p - u[0], w[1] - q), p - q + np.hypot(u[1] - p, q - w[0])]


def heterogeneity(v):
    shares = np.reshape(v[0], (-1, 2))
    counts = np.column_stack([shares[:, 0], shares[:, 1] - shares[:, 0]])
    found = stats.chi2_contingency(counts, correction=False)
    return [found[0], found[2], found[1]]


def spread(v):
    k, m, p = v[0]
    below = stats.binom.cdf(np.arange(-1, m + 1), m, p)
    m = int(m)

    def within(r):
        top = [below[min(m, a + r) + 1] for a in range(m + 1)]
        return sum((t - below[a]) ** k - (t - below[a + 1]) ** k for a, t in enumerate(top))

    return [next(r for r in range(m + 1) if 1 - within(r) <= 0.025)]


def breslow_day(v):
    try:
        from statsmodels.stats.contingency_tables import StratifiedTable
    except ImportError:
        return None
    found = StratifiedTable([np.reshape(t, (2, 2)) for t in v]).test_equal_odds(adjust=True)
    return [found.statistic, found.pvalue]


KINDS = {
    'normal-quantile': lambda v: stats.norm.ppf(v[0]),
    'chi-square-tail': lambda v: stats.chi2.sf(v[0], v[1]),
    'binomial': lambda v: stats.binom.pmf(np.arange(v[0][0] + 1), v[0][0], v[0][1]),
    'hypergeometric': hypergeometric,
    'proportion': lambda v: wilson(*v[0]) + exact(*v[0]),
    'difference': difference,
    'fisher': fisher,
    'power': power,
    'heterogeneity': heterogeneity,
    'range': spread,
    'breslow-day': breslow_day,
}

for line in sys.stdin:
    kind, *vectors = line.strip().split(';')
    compute = KINDS.get(kind)
    numbers = compute([[float(x) for x in vector.split(',')] for vector in vectors]) if compute else None
    print('-' if numbers is None else ' '.join(repr(float(x)) for x in numbers))

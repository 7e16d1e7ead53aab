"""Recomputes the cases that come on standard input with SciPy; lines as in outside.R."""
import itertools
import math
import sys

import numpy as np
from scipy import integrate, optimize, stats


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
    """Of the verdict, with one dish a side: each outcome is judged, and how the days fall is left to the normal curve."""
    (m, n, treatments), (p, q) = v
    level = 0.025 * 0.9 / treatments

    def together(one, correlation):
        return 2 * one - both_reach(stats.norm.isf(one), correlation)

    # Boschloo's p of all outcomes by his definition, the greatest over a grid of shares.
    counts = [(a, b) for a in range(int(m) + 1) for b in range(int(n) + 1)]
    exact = {(a, b): stats.hypergeom.sf(a - 1, m + n, a + b, m) for a, b in counts}
    grid = np.linspace(0.001, 0.999, 999)[:, None]
    first = stats.binom.pmf(np.arange(m + 1), m, grid)
    second = stats.binom.pmf(np.arange(n + 1), n, grid)

    def unconditional(a, b):
        least = [(c, d) for c, d in counts if exact[c, d] <= exact[a, b] * (1 + 1e-7)]
        return sum(first[:, c] * second[:, d] for c, d in least).max()

    total = 0.0
    for a, b in counts:
        if min(m, n) < 4 or a / m <= b / n:
            continue
        share = (a + b) / (m + n)
        variance = (1 - (1 - share) ** 3 - 0.05 * share ** 3) / 12
        correlation = min(1, np.sqrt(share * (1 - share) / 4 / variance))
        one = unconditional(a, b) if exact[a, b] < 0.2 else exact[a, b]
        low = difference([(a, m), (b, n)])[1]
        if one < 0.2 and together(one, correlation) <= level and low > 0:
            found = 1.0
        elif low < -0.2 or (b / n >= 0.7 and wilson(b, n)[0] >= 0.5):
            found = 0.0
        else:
            needed = stats.norm.isf(optimize.brentq(lambda x: together(x, correlation) - level, level / 2, level))
            root = np.sqrt(m * n * variance / (m + n - 1))
            mean = (a - m * share) / 2 / root
            apart = np.sqrt(a * b * share ** 2 * 0.95 / 12 / (a + b - 1)) / root if a + b > 1 else 0
            found = stats.norm.sf((needed - mean) / apart) if apart > 0 else float(mean >= needed)
        total += found * stats.binom.pmf(a, m, p) * stats.binom.pmf(b, n, q)
    return [total]


def beta_binomial(v):
    n, p, rho = v[0]
    return stats.betabinom.pmf(np.arange(n + 1), n, p * (1 / rho - 1), (1 - p) * (1 / rho - 1))


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


def boschloo(v):
    found = stats.boschloo_exact(np.transpose(table(v[0], v[1])), alternative='greater', n=256)
    return [found.pvalue]


def both_reach(h, r):
    return stats.multivariate_normal.cdf([-h, -h], cov=[[1, r], [r, 1]], allow_singular=True, abseps=1e-13, releps=1e-13)


def joint(v):
    p = v[0][0]
    return [min(1, p + sum(max(0, p - both_reach(stats.norm.isf(p), r)) for r in v[1]))]


def rank_test(v):
    """By listing every way to divide the seeds of each category between the sides."""
    pairs = np.reshape([int(x) for x in v[0]], (-1, 2))
    seeds = pairs.sum(axis=1)
    after = seeds.sum() - np.cumsum(seeds)
    ranks = after + seeds / 2
    scores = np.floor(30 * (ranks - ranks.min()) / (ranks.max() - ranks.min()) + 0.5)
    first = pairs[:, 0].sum()
    seen = (pairs[:, 0] * scores).sum()
    tail = every = 0
    for taken in itertools.product(*(range(n + 1) for n in seeds)):
        if sum(taken) != first:
            continue
        ways = math.prod(math.comb(n, k) for n, k in zip(seeds, taken))
        every += ways
        if np.dot(taken, scores) >= seen:
            tail += ways
    return [tail / every]


def stratified(v):
    sums, seen = np.ones(1), 0
    for a, b, c, d in ([int(x) for x in lot] for lot in v):
        counts = np.arange(max(0, a + c - (c + d)), min(a + b, a + c) + 1)
        sums = np.convolve(sums, stats.hypergeom.pmf(counts, a + b + c + d, a + c, a + b))
        seen += a - counts[0]
    return [sums[seen:].sum()]


def of_dishes(v):
    (p,), (factor, df, size), (of_days,) = v
    t = stats.norm.isf(p) / np.sqrt(factor)
    if of_days:
        return [stats.t.sf(t, df)]
    most = 1 + (size - 1) * 0.1
    found = integrate.quad(
        lambda x: stats.chi2.pdf(x, df) * stats.norm.sf(t * np.sqrt(max(1 / most, x / df))), 0, df / most,
        epsabs=1e-14, epsrel=1e-12)[0]
    return [found + integrate.quad(
        lambda x: stats.chi2.pdf(x, df) * stats.norm.sf(t * np.sqrt(x / df)), df / most, np.inf,
        epsabs=1e-14, epsrel=1e-12)[0]]


KINDS = {
    'normal-quantile': lambda v: stats.norm.ppf(v[0]),
    'chi-square-tail': lambda v: stats.chi2.sf(v[0], v[1]),
    'binomial': lambda v: stats.binom.pmf(np.arange(v[0][0] + 1), v[0][0], v[0][1]),
    'hypergeometric': hypergeometric,
    'proportion': lambda v: wilson(*v[0]) + exact(*v[0]),
    'difference': difference,
    'fisher': fisher,
    'power': power,
    'beta-binomial': beta_binomial,
    'heterogeneity': heterogeneity,
    'range': spread,
    'breslow-day': breslow_day,
    'boschloo': boschloo,
    't-tail': lambda v: stats.t.sf(v[0], v[1]),
    'both-reach': lambda v: [both_reach(*v[0])],
    'joint': joint,
    'rank-test': rank_test,
    'stratified': stratified,
    'of-dishes': of_dishes,
}

for line in sys.stdin:
    kind, *vectors = line.strip().split(';')
    compute = KINDS.get(kind)
    numbers = compute([[float(x) for x in vector.split(',')] for vector in vectors]) if compute else None
    print('-' if numbers is None else ' '.join(repr(float(x)) for x in numbers))

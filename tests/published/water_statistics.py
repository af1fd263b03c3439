#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The program's statistics of turbidity against NumPy's, SciPy's and pandas', on invented series of a fixed seed:
water_statistics.py PATH_OF_statistic_table. Hyndman and Fan's nine definitions, QARTOD's checks row by row over gaps, windows (t - over, t] over gaps, the
same and weights without a window by pandas' own rolling and ewm, a log-log regression with Duan's smearing and
Student's interval for one new sample."""
import math
import subprocess
import sys

import numpy as np
import pandas as pd
from scipy import stats

METHODS = ("inverted_cdf", "averaged_inverted_cdf", "closest_observation", "interpolated_inverted_cdf", "hazen",
           "weibull", "linear", "median_unbiased", "normal_unbiased")
MINUTE = 60_000
RANDOM = np.random.default_rng(25117)


def text(numbers):
    return " ".join(repr(float(x)) for x in numbers)


def quantiles():
    """(question, answer of NumPy)"""
    for n in (1, 2, 3, 7, 10, 24, 101):
        for numbers in (RANDOM.lognormal(1, 0.8, n), np.round(RANDOM.lognormal(1, 0.3, n), 1)):
            for p in (0.05, 0.2, 1 / 3, 0.5, 0.77, 0.8, 0.95):
                for kind, method in enumerate(METHODS, 1):
                    # NumPy 1.24 is wrong at a tie of type 3 (Hyndman and Fan take the even one; mended in
                    # NumPy 2) and wraps round at p = 0 and 1: those stand in tests/unit.
                    if kind == 3 and math.isclose((n * p - 0.5) % 1, 0, abs_tol=1e-9):
                        continue
                    yield f"quantile {kind} {p!r} {text(numbers)}", [np.quantile(numbers, p, method=method)]


def series(late_ms=20_000):
    """Times in milliseconds and values: a reading each quarter of an hour, so much early or late, with readings and
    hours left out."""
    at = 1_770_000_000_000 + 15 * MINUTE * np.arange(600)
    keep = RANDOM.random(at.size) > 0.06
    keep[100:130] = keep[400:405] = False
    at = at[keep] + RANDOM.integers(-late_ms, late_ms + 1, keep.sum())
    return at, np.round(RANDOM.lognormal(1.2, 0.7, at.size), 1)


def asked(name, at, values, over, p=50.0, half_life=0.0, alpha=0.5):
    pairs = " ".join(f"{t} {float(v)!r}" for t, v in zip(at, values))
    return f"rolling {name} {p!r} {half_life!r} {alpha!r} {over} {at.size} {pairs}"


def windows():
    for over in (60 * MINUTE, 360 * MINUTE, 1440 * MINUTE):
        at, values = series()
        inside = [(at > t - over) & (at <= t) for t in at]
        yield asked("median", at, values, over), [np.median(values[w]) for w in inside]
        yield asked("mean", at, values, over), [np.mean(values[w]) for w in inside]
        yield asked("percentile", at, values, over, 80.0), [np.percentile(values[w], 80) for w in inside]
        yield asked("ewma", at, values, over, half_life=45.0), \
            [np.average(values[w], weights=np.exp2(-(t - at[w]) / (45 * MINUTE))) for t, w in zip(at, inside)]
        yield asked("ewma", at, values, over, alpha=0.2), \
            [np.average(values[w], weights=0.8 ** np.arange(w.sum())[::-1]) for w in inside]


def by_pandas():
    """pandas 1.5: `closed="right"` is (t - over, t]; its ewm has no window, so ours is as long as the series, but for
    the last, where each window is given to it by itself."""
    for late_ms in (20_000, 0):  # 0: a reading lies where a window begins
        at, values = series(late_ms)
        turbidity = pd.Series(values, pd.to_datetime(at, unit="ms"))
        for over, named in ((60, "60min"), (360, "360min"), (1440, "24h")):
            rolling = turbidity.rolling(named, closed="right")
            yield asked("median", at, values, over * MINUTE), rolling.median()
            yield asked("mean", at, values, over * MINUTE), rolling.mean()
            for p in (5.0, 50.0, 80.0, 95.0):
                yield asked("percentile", at, values, over * MINUTE, p), rolling.quantile(p / 100)
        always = int(at[-1] - at[0]) + 1
        for half_life in (10.0, 45.0, 600.0):
            weighted = turbidity.ewm(halflife=f"{half_life}min", times=turbidity.index)
            yield asked("ewma", at, values, always, half_life=half_life), weighted.mean()
        for alpha in (0.05, 0.2, 0.9):
            yield asked("ewma", at, values, always, alpha=alpha), turbidity.ewm(alpha=alpha, adjust=True).mean()
        yield asked("ewma", at, values, 360 * MINUTE, half_life=45.0), turbidity.rolling("360min", closed="right") \
            .apply(lambda window: window.ewm(halflife="45min", times=window.index).mean().iloc[-1])


def flags():
    """QARTOD's range, spike, rate of change and flat line as arrays, each by its definition and none by a walk."""
    for round_no in range(12):
        at, values = series(0)
        values = np.round(values + np.where(RANDOM.random(values.size) < 0.02, 60, 0), 1)
        for start in RANDOM.integers(0, values.size - 20, 8):  # a sensor that sticks
            values[start:start + 14] = values[start] + np.round(RANDOM.uniform(0, 0.04, 14), 2)
        values[RANDOM.random(values.size) < 0.03] = np.nan
        low, high, s_low, s_high, spike, spike_fail, rate, flat, flat_fail, tolerance = \
            0.6, 40.0, 1.0, 20.0, 3.0, 30.0, 0.3, 60.0, 120.0, (0.05, 0.02)[round_no % 2]
        here = ~np.isnan(values)
        before, after = np.roll(values, 1), np.roll(values, -1)
        before[0] = after[-1] = np.nan
        want_range = np.select([(values < low) | (values > high), (values < s_low) | (values > s_high)], [4, 3], 1)
        height = np.abs(values - (before + after) / 2)
        want_spike = np.select([np.isnan(height), height > spike_fail, height > spike], [2, 4, 3], 1)
        steps = np.diff(at, prepend=at[0]) / MINUTE
        want_rate = np.where(np.abs(values - before) > rate * steps, 3, 1)  # a comparison with nan is false
        want_flat = np.ones(values.size, int)
        times, present = at[here], values[here]
        for minutes, flag in ((flat, 3), (flat_fail, 4)):
            first = np.searchsorted(times, times - minutes * MINUTE, "right") - 1
            stuck = [j >= 0 and np.ptp(present[j:i + 1]) < tolerance for i, j in enumerate(first)]
            want_flat[np.flatnonzero(here)[stuck]] = flag
        each = np.array([want_range, want_spike, want_rate, want_flat])
        rank = np.array([0, 2, 1, 3, 4])  # of flags 0, 1, 2, 3, 4
        worst = np.take_along_axis(each, rank[each].argmax(0)[None], 0)[0]
        digits = np.where(here, np.array([10_000, 1000, 100, 10]) @ each + worst, 99_999)
        set_at = (low, high, s_low, s_high, spike, spike_fail, rate, flat, flat_fail, tolerance, 15.0)
        pairs = " ".join(f"{t} {float(v)!r}" for t, v in zip(at, values))
        yield f"flags {text(set_at)} {at.size} {pairs}", digits


def regressions():
    for n, probability, new in ((3, 0.9, 12.0), (12, 0.9, 40.0), (60, 0.95, 3.0), (200, 0.5, 150.0)):
        turbidity = RANDOM.lognormal(2.5, 0.9, n)
        solids = 1.6 * turbidity ** 1.08 * RANDOM.lognormal(0, 0.25, n)
        x, y = np.log10(turbidity), np.log10(solids)
        design = np.column_stack([np.ones(n), x])
        (a, b), *_ = np.linalg.lstsq(design, y, rcond=None)
        rest = y - design @ (a, b)
        error = math.sqrt(rest @ rest / (n - 2))
        smearing = np.mean(10 ** rest)
        row = np.array([1, math.log10(new)])
        half = stats.t.ppf((1 + probability) / 2, n - 2) * error * \
            math.sqrt(1 + row @ np.linalg.inv(design.T @ design) @ row)
        value = 10 ** (a + b * row[1]) * smearing
        pairs = " ".join(f"{t!r} {s!r}" for t, s in zip(turbidity.tolist(), solids.tolist()))
        yield f"regression {probability!r} {new!r} {n} {pairs}", \
            [a, b, error, np.corrcoef(x, y)[0, 1] ** 2, smearing, value, value * 10 ** -half, value * 10 ** half]


def main():
    cases = [*quantiles(), *windows(), *by_pandas(), *flags(), *regressions()]
    said = subprocess.run(sys.argv[1:2], input="".join(q + "\n" for q, _ in cases), capture_output=True, text=True,
                          check=True).stdout.splitlines()
    failed, checked = abs(len(said) - len(cases)), 0
    for (question, want), line in zip(cases, said):
        have = [float(word) for word in line.split()]
        bad = [i for i, (a, b) in enumerate(zip(have, want)) if not math.isclose(a, b, rel_tol=1e-9, abs_tol=1e-12)]
        checked += len(have)
        if bad or len(have) != len(want):
            failed += 1
            first = f": {have[bad[0]]!r}, not {want[bad[0]]!r} (number {bad[0]})" if bad else ""
            print(f"{question[:60]}...{first}")
    print(f"{checked} numbers; {len(cases) - failed} passed, {failed} failed")
    return 1 if failed or not cases else 0


if __name__ == "__main__":
    sys.exit(main())

# SPDX-License-Identifier: GPL-3.0-or-later
"""Statistics of readings in a window, and the level that they are held against (consent-rules.md)."""
from bisect import bisect_right
from fractions import Fraction
from math import floor, fsum

from readings import MINUTE

# Hyndman and Fan (1996): alpha and beta of types 4 to 9, m = alpha + p (1 - alpha - beta)
PLACED = {4: (0, 1), 5: (Fraction(1, 2),) * 2, 6: (0, 0), 7: (1, 1), 8: (Fraction(1, 3),) * 2,
          9: (Fraction(3, 8),) * 2}


def percentile(values, p, kind=7):
    """p from 0 to 100; types as in Hyndman and Fan, Sample quantiles in statistical packages (1996)."""
    x, n, q = sorted(values), len(values), Fraction(str(p)) / 100
    if kind <= 3:
        place = n * q - (Fraction(1, 2) if kind == 3 else 0)
        j = floor(place)
        exact = place == j
        weight = {1: 0 if exact else 1, 2: Fraction(1, 2) if exact else 1,
                  3: 0 if exact and j % 2 == 0 else 1}[kind]
    else:
        alpha, beta = PLACED[kind]
        place = n * q + alpha + q * (1 - alpha - beta)
        j = floor(place)
        weight = place - j
    low, high = (x[min(max(i, 1), n) - 1] for i in (j, j + 1))
    return low + float(weight) * (high - low)


def of_window(values, spec, t):
    """The statistic of (time, value) pairs that are there, in the order of time."""
    numbers, kind = [v for _, v in values], spec["kind"]
    if kind == "mean":
        return fsum(numbers) / len(numbers)
    if kind == "median":
        return percentile(numbers, 50)
    if kind == "percentile":
        return percentile(numbers, spec["p"], spec.get("type", 7))
    if kind == "instant":
        return numbers[-1]
    if "half_life_min" in spec:
        weights = [0.5 ** ((t - s) / MINUTE / spec["half_life_min"]) for s, _ in values]
    else:
        weights = [(1 - spec["alpha"]) ** k for k in range(len(values) - 1, -1, -1)]
    return fsum(w * v for w, v in zip(weights, numbers)) / fsum(weights)


def above(value, level):
    """Strictly above, by more than rounding."""
    return value > level + 1e-9 * max(1.0, abs(level))


class Statistic:
    """The statistic of a condition at an instant, of one site's readings; None: cannot tell."""

    def __init__(self, condition):
        self.spec = condition.get("statistic", {"kind": "instant"})
        self.over, self.least = condition.get("over_minutes"), Fraction(str(condition.get("min_complete", 0)))

    def of(self, good, interval, t, newest_within=False):
        """good: (time, value) that may count. Without a window the reading at t alone; of a control the
        newest within its interval."""
        if self.over is None:
            held = self._since(good, t, interval if newest_within else 1)
            return held[-1][1] if held else None
        span = Fraction(str(self.over)) * MINUTE
        held = self._since(good, t, span)
        if not held or len(held) < self.least * span / interval:
            return None
        return of_window(held, self.spec, t)

    @staticmethod
    def _since(good, t, span):
        """Those in (t − span, t]; good is in the order of time, whole milliseconds."""
        place = lambda end: bisect_right(good, (end, float("inf")))
        return good[place(floor(t - span)):place(t)]


class Level:
    """What `compare` says of a reading: over True or False, or None where it cannot be told."""

    def __init__(self, folder, condition, site, sites):
        self.folder, self.condition, self.compare = folder, condition, condition["compare"]
        self.site, self.control = site, sites.get(condition.get("control"))
        self.sites, self.statistic = sites, Statistic(condition)
        self.good = self._paired() if "paired_above_control" in self.compare else site.good
        self.base = self._baseline()

    def _paired(self):
        """(time, reading − the control's reading nearest to time − lag)."""
        spec, control = self.compare["paired_above_control"], self.control
        most = Fraction(str(spec["tolerance_min"])) * MINUTE if "tolerance_min" in spec else control.interval / 2
        lag = Fraction(str(spec.get("lag_min", 0))) * MINUTE
        found = []
        for t, v in self.site.good:
            near = min(control.good, key=lambda r: abs(r[0] - (t - lag)), default=None)
            if near is not None and abs(near[0] - (t - lag)) <= most:
                found.append((t, v - near[1]))
        return found

    def _baseline(self):
        spec = self.compare.get("baseline")
        if spec is None:
            return None
        if "value" in spec:
            return spec["value"]
        low, high = self.folder.time(spec.get("from")), self.folder.time(spec.get("to"))
        held = [v for t, v in self.sites[spec.get("site", self.site.name)].good
                if (low is None or low <= t) and (high is None or t < high)]
        return percentile(held, spec["percentile"]) if held else None

    def value(self, t):
        return self.statistic.of(self.good, self.site.interval, t)

    def over(self, value, t):
        return None if value is None else self._over(self.compare, value, t)

    def _over(self, compare, value, t):
        if "absolute" in compare:
            return above(value, compare["absolute"])
        if "higher_of" in compare:
            parts = [self._over(part, value, t) for part in compare["higher_of"]]
            return None if None in parts else all(parts)
        if "paired_above_control" in compare:
            return above(value, compare["paired_above_control"]["x"])
        if "baseline" in compare:
            if self.base is None:
                return None
            spec = compare["baseline"]
            return above(value, spec.get("times", 1) * self.base + spec.get("plus", 0))
        control = self.statistic.of(self.control.good, self.control.interval, t, newest_within=True)
        if control is None:
            return None
        if "above_control" in compare:
            return above(value, control + compare["above_control"])
        if "times_control" in compare:
            return above(value, control * compare["times_control"])
        for band in compare["bands"]:
            if band.get("control_from", float("-inf")) <= control < band.get("control_to", float("inf")):
                return self._over(band, value, t)
        return False

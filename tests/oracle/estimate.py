# SPDX-License-Identifier: GPL-3.0-or-later
"""value ± u by first order GUM: each number carries (sensitivity × u) for every source it depends on.

A source is any hashable name. The same source met twice adds linearly (shared, fully correlated); different
sources add in squares. Random readings of one load are one source of that load, so two releases of one load
are as unsure as the load itself.
"""
import math


class Estimate:
    def __init__(self, value, parts=None):
        self.value, self.parts = float(value), parts or {}

    @staticmethod
    def of(value, u=0.0, source=None):
        return Estimate(value, {source: u} if u else None)

    @property
    def u(self):
        return math.sqrt(sum(p * p for p in self.parts.values()))

    def _with(self, value, mine, other, theirs):
        parts = {s: p * mine for s, p in self.parts.items()}
        for source, p in other.parts.items():
            parts[source] = parts.get(source, 0.0) + p * theirs
        return Estimate(value, parts)

    def __add__(self, other):
        other = lift(other)
        return self._with(self.value + other.value, 1.0, other, 1.0)

    def __sub__(self, other):
        other = lift(other)
        return self._with(self.value - other.value, 1.0, other, -1.0)

    def __mul__(self, other):
        other = lift(other)
        return self._with(self.value * other.value, other.value, other, self.value)

    def __truediv__(self, other):
        other = lift(other)
        return self._with(self.value / other.value, 1 / other.value, other, -self.value / other.value**2)

    __radd__ = __add__
    __rmul__ = __mul__

    def __repr__(self):
        return f"{self.value!r} ± {self.u!r}"


def lift(number):
    return number if isinstance(number, Estimate) else Estimate(number)


def total(estimates):
    """The sum; of nothing it is zero."""
    value, parts = 0.0, {}
    for e in estimates:
        value += e.value
        for source, p in e.parts.items():
            parts[source] = parts.get(source, 0.0) + p
    return Estimate(value, parts)


def p_over(used, u, limit):
    """P(used > limit) of a normal distribution; with u = 0 it is 0 or 1."""
    if u > 1e-12 * abs(limit):      # less is what sums lose in binary digits
        return 0.5 * math.erfc((limit - used) / u / math.sqrt(2))
    return 1.0 if is_over(used, limit) else 0.0


def is_over(used, limit):
    """used > limit with a relative tolerance of 1e-9."""
    return used > limit + 1e-9 * abs(limit)

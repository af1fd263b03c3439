# SPDX-License-Identifier: GPL-3.0-or-later
"""Gives shifts, stations, loads and trips of all spreads their labels, in the order of time."""
from .clock import text


def _number(things, letter, when):
    things.sort(key=when)
    width = max(4, len(str(len(things))))
    for i, thing in enumerate(things, 1):
        thing.label = f"{letter}-{i:0{width}}"
    return things


class Season:
    """All that the spreads did."""

    def __init__(self, works):
        every = lambda name: [t for w in works for t in getattr(w, name)]       # noqa: E731
        self.spreads = [w.spread for w in works]
        self.shifts = _number(every("shifts"), "S", lambda s: s.plan.start)
        self.stations = _number(every("stations"), "ST", lambda s: s.down)
        self.loads = _number(every("loads"), "L", lambda x: x.start)
        self.trips = _number(every("trips"), "T", lambda t: t.departed)

    @property
    def running(self):
        """The shift that is still open, or None."""
        return self.shifts[-1] if "running" in self.shifts[-1].plan.tags else None

    def last_minute(self):
        return max(s.plan.end for s in self.shifts)


def metres(value, digits=2):
    return "" if value is None else f"{value:.{digits}f}"


def readings(values):
    return " ".join(f"{v:.2f}" for v in values)


__all__ = ["Season", "metres", "readings", "text"]

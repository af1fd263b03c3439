# SPDX-License-Identifier: GPL-3.0-or-later
"""Conditions of kind time at an instant: dates, hours, weekdays, daylight, tide (consent-rules.md)."""
from bisect import bisect_right
from datetime import timedelta
from fractions import Fraction

from calendars import within_dates
from sunlight import is_day

DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
GAP = 3 * 3600000


class Tide:
    """Straight lines between rows at most 3 h apart, worked exactly; elsewhere it cannot be told."""

    def __init__(self, folder):
        self.rows = sorted((folder.time(r["time"]), Fraction(r["level_m"])) for r in folder.rows["tide.csv"]
                           if r.get("level_m") is not None)

    def level(self, t):
        after = bisect_right(self.rows, (t, float("inf")))
        if after and self.rows[after - 1][0] == t:
            return self.rows[after - 1][1]
        if after == 0 or after == len(self.rows):
            return None
        (a, low), (b, high) = self.rows[after - 1:after + 1]
        return None if b - a > GAP else low + (high - low) * Fraction(t - a, b - a)


def minutes(text):
    hour, minute = text.split(":")
    return int(hour) * 60 + int(minute)


def within_hours(wall, span):
    """[a, b) on the local wall clock; b ≤ a wraps midnight."""
    first, _, last = span.partition("..")
    a, b = (timedelta(minutes=minutes(p)) for p in (first, last))
    here = timedelta(hours=wall.hour, minutes=wall.minute, seconds=wall.second, microseconds=wall.microsecond)
    return a <= here < b if a < b else here >= a or here < b


class TimeRule:
    """fits(t): True, False, or None where it cannot be told; place is (lat, lon) for the sun."""

    def __init__(self, folder, condition, place, tide):
        self.folder, self.condition, self.place, self.tide = folder, condition, place, tide

    def _members(self, t):
        c, wall = self.condition, self.folder.clock.wall(t)
        if c.get("dates"):
            yield any(within_dates(wall.date(), d) for d in c["dates"])
        if c.get("hours"):
            yield any(within_hours(wall, h) for h in c["hours"])
        if c.get("weekdays"):
            yield DAYS[wall.weekday()] in c["weekdays"]
        if c.get("daylight"):
            yield is_day(t, *self.place) == (c["daylight"] == "day")
        if c.get("tide_level_m"):
            level, span = self.tide.level(t), c["tide_level_m"]
            yield None if level is None else \
                Fraction(str(span.get("min", -99))) <= level <= Fraction(str(span.get("max", 99)))
        if c.get("tied_to"):
            yield None

    def state(self, t):
        said = list(self._members(t))
        fits = False if False in said else None if None in said else True
        if fits is None:
            return "cannot_tell"
        return "hold" if fits == (self.condition["mode"] == "forbid") else "clear"

    # -- when it may change ----------------------------------------------------------------------------------

    def edges(self, first, last):
        """Every instant in (first, last] at which dates, hours, weekdays or tide may begin or end to fit."""
        found, clock, c = set(), self.folder.clock, self.condition
        if c.get("dates") or c.get("hours") or c.get("weekdays"):
            day = clock.wall(first).replace(hour=0, minute=0, second=0, microsecond=0)
            marks = {0} | {minutes(p) for h in c.get("hours") or [] for p in h.split("..")}
            while clock.instant(day) <= last:
                found |= {clock.instant(day + timedelta(minutes=m)) for m in marks}
                day += timedelta(days=1)
            found |= self._clock_changes(first, last) if c.get("hours") else set()
        if c.get("tide_level_m"):
            found |= self._tide_edges(first, last)
        return sorted(t for t in found if first < t <= last)

    def _clock_changes(self, first, last):
        """Where the wall clock jumps an hour may begin or end to fit."""
        clock, found, t, step = self.folder.clock, set(), first, 6 * 3600000
        offset = lambda at: clock.wall(at) - timedelta(milliseconds=at)
        while t < last:
            if offset(t) != offset(t + step):
                a, b = t, t + step
                while b - a > 1:
                    middle = (a + b) // 2
                    a, b = (middle, b) if offset(middle) == offset(t) else (a, middle)
                found.add(b)
                # The hour before the jump is walked again, or a wall time is met a second time.
                found |= {b + m * 60000 for m in range(0, 120, 5)}
            t += step
        return found

    def _tide_edges(self, first, last):
        """Rows, the ends of what is known, and where a line meets a bound: the first whole ms on its far side."""
        found, rows = set(), self.tide.rows
        for (a, low), (b, high) in zip(rows, rows[1:]):
            if b <= first or a > last:
                continue
            found |= {a, a + 1, b, b + 1}
            for bound in (Fraction(str(v)) for v in self.condition["tide_level_m"].values()):
                if b - a <= GAP and low != high and min(low, high) <= bound <= max(low, high):
                    t = a + int((bound - low) / (high - low) * (b - a))
                    found |= {t - 1, t, t + 1, t + 2}
        return found

# SPDX-License-Identifier: GPL-3.0-or-later
"""Windows of a quantity condition at an instant (consent-rules.md): beginning, end, what it holds."""
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Optional


@dataclass
class Window:
    start: Optional[int]            # None: no beginning
    end: Optional[int]              # the window's own end, exclusive; rolling and term: the instant itself
    after_start: bool = False       # rolling: (start, t], the others [start, t]
    cut_at_end: bool = False        # phase and campaign may be over before t
    term: bool = False
    trip: Optional[str] = None      # window of one trip

    def spans(self, t):
        """Whether t itself lies in the window: before its term a limit judges nothing, nor after its phase."""
        if self.term:
            return self.start is None or self.start <= t
        return not self.cut_at_end or (self.start <= t and (self.end is None or t < self.end))

    def holds(self, time, t, opening=False, trip=None):
        """Whether what happened at `time` counts at t."""
        if time > t:
            return False
        if self.trip is not None:
            return trip == self.trip
        if self.term and opening:
            return self.start is None or self.start <= t    # from before the term too, once there is one
        if self.cut_at_end and (self.end is not None and time >= self.end):
            return False
        if self.start is None:
            return True
        return time > self.start if self.after_start else time >= self.start


def calendar_days(unit, day):
    """[first day, first day of the next) of the day, ISO week, month or year."""
    if unit == "day":
        return day, day + timedelta(days=1)
    if unit == "week":
        monday = day - timedelta(days=day.weekday())
        return monday, monday + timedelta(days=7)
    if unit == "month":
        return day.replace(day=1), date(day.year + day.month // 12, day.month % 12 + 1, 1)
    return date(day.year, 1, 1), date(day.year + 1, 1, 1)


def window_at(spec, t, folder, consent, last_trip=None):
    """The window of the condition that holds the instant t."""
    clock, kind = folder.clock, spec["kind"]
    day = clock.wall(t).date()
    if kind == "term":
        return Window(folder.time(consent.get("commences")), t, term=True)
    if kind == "calendar":
        return Window(*[clock.midnight(d) for d in calendar_days(spec["unit"], day)])
    if kind == "consent_year":
        month, first = (int(p) for p in consent["year_starts"].split("-"))
        years = [y for y in (day.year - 1, day.year, day.year + 1)
                 if clock.midnight(date(y, month, first)) <= t]
        return Window(*[clock.midnight(date(y, month, first)) for y in (years[-1], years[-1] + 1)])
    if kind in ("rolling", "mean"):
        n, unit = (spec["years"], "years") if kind == "mean" else (spec["n"], spec["unit"])
        return Window(clock.minus(t, n, unit), t, after_start=True)
    if kind == "phase":
        return Window(folder.time(spec["from"]), folder.time(spec.get("to")), cut_at_end=True)
    if kind == "campaign":
        begun = sorted((folder.time(c.get("from")), folder.time(c.get("to")) or 1 << 62)
                       for c in folder.harbour.get("campaigns", []) if folder.time(c.get("from")) <= t)
        holding = [c for c in begun if t < c[1]] or begun[-1:]
        if not holding:
            return Window(t + 1, None)      # none begun: nothing counts
        return Window(holding[-1][0], None if holding[-1][1] == 1 << 62 else holding[-1][1], cut_at_end=True)
    if kind == "trip":
        return Window(None, None, trip=last_trip if last_trip is not None else "")
    raise ValueError(f"unknown window {kind}")

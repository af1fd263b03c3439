# SPDX-License-Identifier: GPL-3.0-or-later
"""Which shifts are worked, and how many releases each is to bring: a month's count is met exactly."""
from datetime import date, timedelta

from . import clock


class ShiftPlan:
    def __init__(self, start, end, night=False, cap=4, tags=()):
        self.start, self.end, self.night, self.cap, self.tags = start, end, night, cap, set(tags)
        self.trips = None               # releases to be made; set when its turn comes
        self.standby = False            # weather all day: nobody casts off
        self.rock = False
        self.skipper = self.tug_master = None


def day_shift(day, **more):
    return ShiftPlan(clock.instant(day, 6), clock.instant(day, 18), **more)


def night_shift(day, **more):
    return ShiftPlan(clock.instant(day, 18), clock.instant(day + timedelta(days=1), 6), night=True, cap=2, **more)


class Month:
    """`trips` releases that end in it; `plans` in order of time."""

    def __init__(self, key, trips, plans):
        self.key, self.trips, self.plans, self.done = key, trips, plans, 0

    def choose(self, index, dice):
        """How many releases shift `index` is to bring, so that the rest of the month can bring what is left."""
        plan, rest = self.plans[index], [p for p in self.plans[index + 1:] if not p.standby]
        left = self.trips - self.done
        if plan.standby:
            return 0
        most_later, least_later = sum(p.cap for p in rest), sum(1 for p in rest if not p.night or "midnight" in p.tags)
        if "consent hold" in plan.tags:
            return min(1, left)
        low, high = max(0, left - most_later + len(rest) // 6), min(plan.cap, left - least_later)
        mean = left / (1 + sum(0.5 if p.night else 1 for p in rest)) * (0.6 if plan.night else 1)
        if plan.rock:
            return min(plan.cap, max(0, high))
        wanted = int(mean + 0.5 + dice.bell(0.75))
        if dice.share() < 0.06:
            wanted -= 2
        return max(0, min(max(wanted, low), max(high, 0)))


MARRAM_TRIPS = {(2025, 8): 58, (2025, 9): 66, (2025, 10): 71, (2025, 11): 73, (2025, 12): 52, (2026, 2): 70,
                (2026, 3): 72, (2026, 4): 68, (2026, 5): 70}
DAY_SHIFTS = {(2025, 8): 21, (2025, 9): 22, (2025, 10): 21, (2025, 11): 24, (2025, 12): 17, (2026, 2): 23,
              (2026, 3): 21, (2026, 4): 22, (2026, 5): 21}
HOLIDAYS = {date(2025, 10, 27), date(2026, 2, 6), date(2026, 4, 3), date(2026, 4, 4), date(2026, 4, 6),
            date(2026, 4, 25), date(2026, 4, 27)}
NIGHTS = ([date(2025, 9, d) for d in (25, 26, 27)] + [date(2025, 10, d) for d in (28, 29, 30, 31)]
          + [date(2026, 3, d) for d in (9, 10, 11, 12, 13)] + [date(2026, 5, d) for d in (11, 12, 13, 14, 15)])
ROCK = (date(2025, 9, 25), date(2025, 9, 30))
TAGGED = {date(2025, 8, 4): "first", date(2025, 11, 12): "hung up", date(2025, 12, 9): "outside",
          date(2026, 2, 2): "first", date(2026, 2, 23): "two cells", date(2026, 3, 18): "turbid",
          date(2026, 4, 14): "turned back", date(2026, 4, 22): "turbid", date(2026, 5, 19): "no position",
          date(2026, 5, 30): "running"}
FIRST, LAST = date(2025, 8, 4), date(2026, 5, 30)


def _working_days():
    day = FIRST
    while day <= LAST:
        if day.weekday() < 6 and day not in HOLIDAYS and not date(2025, 12, 20) <= day <= date(2026, 1, 31):
            yield day
        day += timedelta(days=1)


def _kept(day):
    near = any(abs((day - n).days) <= 1 for n in NIGHTS)
    return near or day in TAGGED or ROCK[0] <= day <= ROCK[1] or day >= date(2026, 5, 26) or \
        day in (date(2026, 4, 15), date(2025, 12, 19))


def _marram_plan(day):
    tag = TAGGED.get(day)
    if tag == "running":
        return ShiftPlan(clock.instant(day, 6), clock.instant(day, 17, 30), cap=3, tags={tag})
    cap = {"first": 2, "turned back": 0, "turbid": 2, "outside": 3, "two cells": 3, "no position": 3}.get(tag, 4)
    plan = day_shift(day, cap=cap, tags={tag} if tag else ())
    if ROCK[0] <= day <= ROCK[1]:
        plan.rock, plan.cap = True, 2
    plan.standby = tag == "turned back"
    return plan


def marram(dice):
    """The months of the demo season; a working day that has no shift was lost before it began."""
    months, days = [], list(_working_days())
    for key, trips in MARRAM_TRIPS.items():
        own = [d for d in days if (d.year, d.month) == key]
        free = [d for d in own if not _kept(d)]
        lost = set()
        while len(own) - len(lost) > DAY_SHIFTS[key]:
            lost.add(dice.of([d for d in free if d not in lost]))
        plans = [_marram_plan(d) for d in own if d not in lost]
        stood_by = sorted(lost)[:1] if len(lost) > 2 else []
        for day in stood_by:
            plans.append(day_shift(day, cap=0))
            plans[-1].standby = True
        for day in [n for n in NIGHTS if (n.year, n.month) == key]:
            plans.append(night_shift(day))
            if key == (2025, 9):
                plans[-1].rock, plans[-1].cap = True, 1
                plans[-1].tags.add("consent hold")
            if day == date(2025, 10, 31):
                plans[-1].tags.add("midnight")
                plans[-1].cap = 1           # of October; two more of its releases are November's
        months.append(Month(key, trips, sorted(plans, key=lambda p: p.start)))
    return months


def season(dice, spread, first, years, trips):
    """Months of one spread over many years: single or double shifts as the count asks."""
    last = date(first.year + years, first.month, 1) - timedelta(days=1)
    days, day = [], first
    while day <= last:
        if day.weekday() < 6 and not (day.month, day.day) >= (12, 22) and not (day.month, day.day) <= (1, 9):
            days.append(day)
        day += timedelta(days=1)
    double = trips > 2.9 * len(days)
    months, done = [], 0
    keys = sorted({(d.year, d.month) for d in days})
    for i, key in enumerate(keys):
        own = [d for d in days if (d.year, d.month) == key]
        worked = sum(1 for d in days if d <= own[-1])
        # a little ahead of even, so that the last month can make good what weather took
        due = trips if i == len(keys) - 1 else min(trips, trips * worked * 102 // (100 * len(days)))
        plans = [day_shift(d) for d in own] + [night_shift(d) for d in own if double and d.weekday() < 5]
        months.append(Month(key, due - done, sorted(plans, key=lambda p: p.start)))
        done = due
    first_plan = months[0].plans[0]
    first_plan.cap, first_plan.tags = 2, {"first"}
    return months

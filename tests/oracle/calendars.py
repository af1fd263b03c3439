# SPDX-License-Identifier: GPL-3.0-or-later
"""Working days and due times (consent-rules.md): n working days count from the day after, due at 24:00."""
from datetime import date, timedelta


def month_day(text):
    month, day = text.split("-")
    return int(month), int(day)


def within_dates(day, span):
    """MM-DD or MM-DD..MM-DD, both days whole, wrapping the year's end where the second is the smaller."""
    first, _, last = span.partition("..")
    a, b, here = month_day(first), month_day(last or first), (day.month, day.day)
    return a <= here <= b if a <= b else here >= a or here <= b


def is_working(day, rule):
    rule = rule or {}
    if rule.get("weekends") and day.weekday() >= 5:
        return False
    if day.isoformat() in rule.get("dates", []):
        return False
    return not any(within_dates(day, span) for span in rule.get("yearly", []))


def nth_working_day(day, n, rule):
    """The nth working day after `day` (itself not counted)."""
    while n > 0:
        day += timedelta(days=1)
        n -= is_working(day, rule)
    return day


def add(clock, t, n, unit):
    """t + n hours, days or months; days and months on the local wall clock."""
    return t + round(n * 3600000) if unit == "hours" else clock.minus(t, -n, unit)


def due_time(folder, consent, t, within):
    n, unit = within["n"], within["unit"]
    if unit != "working_days":
        return add(folder.clock, t, n, unit)
    last = nth_working_day(folder.clock.wall(t).date(), n, consent.get("not_working"))
    return folder.clock.midnight(date.fromordinal(last.toordinal() + 1))

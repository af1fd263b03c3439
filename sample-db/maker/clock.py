# SPDX-License-Identifier: GPL-3.0-or-later
"""Instants as whole minutes of UTC since 1970, and the wall clock of Pacific/Auckland since its rule of 2007:
daylight time begins on the last Sunday of September at 02:00 and ends on the first Sunday of April at 03:00."""
from bisect import bisect_right
from datetime import date, timedelta

EPOCH = date(1970, 1, 1).toordinal()
DAY = 1440
STANDARD, DAYLIGHT = 720, 780


def _turns():
    turns = []
    for year in range(2007, 2061):
        april = date(year, 4, 1)
        april += timedelta(days=(6 - april.weekday()) % 7)
        september = date(year, 9, 30)
        september -= timedelta(days=(september.weekday() - 6) % 7)
        for day, before, after in ((april, DAYLIGHT, STANDARD), (september, STANDARD, DAYLIGHT)):
            wall = (day.toordinal() - EPOCH) * DAY + (180 if after == STANDARD else 120)
            turns.append((wall - before, after))
    return turns


_TURNS = _turns()
_AT = [t for t, _ in _TURNS]
_DAYS = {}


def offset(minute):
    """Minutes east of Greenwich."""
    i = bisect_right(_AT, minute)
    return _TURNS[i - 1][1] if i else DAYLIGHT


def instant(day, hour=0, minute=0):
    """The instant of a wall time that happens once; `day` is a datetime.date."""
    wall = (day.toordinal() - EPOCH) * DAY + hour * 60 + minute
    guess = wall - STANDARD
    return guess if offset(guess) == STANDARD else wall - DAYLIGHT


def utc_text(second):
    """2025-09-27T13:30:15Z, of a second since 1970."""
    days, rest = divmod(second, DAY * 60)
    return f"{date.fromordinal(EPOCH + days).isoformat()}T{rest // 3600:02}:{rest // 60 % 60:02}:{rest % 60:02}Z"


def wall(minute):
    """(datetime.date, minutes since its midnight)."""
    days, rest = divmod(minute + offset(minute), DAY)
    return date.fromordinal(EPOCH + days), rest


def text(minute):
    """2025-09-28T01:30+12:00; blank for None."""
    if minute is None:
        return ""
    east = offset(minute)
    days, rest = divmod(minute + east, DAY)
    day = _DAYS.get(days)
    if day is None:
        day = _DAYS[days] = date.fromordinal(EPOCH + days).isoformat()
    return f"{day}T{rest // 60:02}:{rest % 60:02}{'+13:00' if east == DAYLIGHT else '+12:00'}"


def utc(minute):
    """2025-09-27T13:30Z."""
    days, rest = divmod(minute, DAY)
    return f"{date.fromordinal(EPOCH + days).isoformat()}T{rest // 60:02}:{rest % 60:02}Z"

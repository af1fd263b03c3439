# SPDX-License-Identifier: GPL-3.0-or-later
"""Instants as whole milliseconds UTC, and the book's wall clock through zoneinfo."""
import re
from datetime import date, datetime, timedelta, timezone
from zoneinfo import ZoneInfo

EPOCH = datetime(1970, 1, 1, tzinfo=timezone.utc)
MS = timedelta(milliseconds=1)
TIME = re.compile(r"(\d{4}-\d\d-\d\d)(?:[T ](\d\d:\d\d(?::\d\d(?:\.\d{1,3})?)?)(Z|[+-]\d\d:?\d\d)?)?\Z")


def add_months(wall, months):
    """The same wall time months later (or earlier), the day clamped: 29 Feb less a year is 28 Feb."""
    index = wall.year * 12 + wall.month - 1 + months
    year, month = index // 12, index % 12 + 1
    last = (date(year + month // 12, month % 12 + 1, 1) - timedelta(days=1)).day
    return wall.replace(year=year, month=month, day=min(wall.day, last))


class Clock:
    def __init__(self, zone):
        self.zone = ZoneInfo(zone)

    def wall(self, instant):
        """Local date and time (naive) of an instant."""
        return (EPOCH + instant * MS).astimezone(self.zone).replace(tzinfo=None, fold=0)

    def instant(self, wall):
        """A wall time that does not exist takes the offset before the gap, one that happens twice
        the earlier."""
        return (wall.replace(tzinfo=self.zone, fold=0).astimezone(timezone.utc) - EPOCH) // MS

    def midnight(self, day):
        return self.instant(datetime(day.year, day.month, day.day))

    def is_plain(self, wall):
        """Whether the wall time happens exactly once."""
        first, second = (wall.replace(tzinfo=self.zone, fold=f).utcoffset() for f in (0, 1))
        return first == second and self.wall(self.instant(wall)) == wall

    def parse(self, text):
        """ISO 8601 with offset, Z, or local; a date alone is its local midnight. Blank: None."""
        if text is None or text.strip() == "":
            return None
        match = TIME.match(text.strip())
        if not match:
            raise ValueError(f"not a time: {text!r}")
        day, clock, offset = match.groups()
        whole, _, fraction = (clock or "00:00").partition(".")
        wall = datetime.fromisoformat(f"{day}T{whole}") + int(fraction.ljust(3, "0")) * MS
        if offset is None:
            return self.instant(wall)
        if offset == "Z":
            return (wall.replace(tzinfo=timezone.utc) - EPOCH) // MS
        minutes = int(offset[1:3]) * 60 + int(offset[-2:])
        shift = timedelta(minutes=minutes if offset[0] == "+" else -minutes)
        return (wall.replace(tzinfo=timezone.utc) - shift - EPOCH) // MS

    def text(self, instant):
        """ISO 8601 with the book's offset, milliseconds always written."""
        if instant is None:
            return None
        return (EPOCH + instant * MS).astimezone(self.zone).isoformat(timespec="milliseconds")

    def minus(self, instant, n, unit):
        """Exactly instant − span on the local wall clock; unit days, weeks, months or years."""
        wall = self.wall(instant)
        if unit in ("months", "years"):
            return self.instant(add_months(wall, -n * (12 if unit == "years" else 1)))
        return self.instant(wall - timedelta(days=n * (7 if unit == "weeks" else 1)))

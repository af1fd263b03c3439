# SPDX-License-Identifier: GPL-3.0-or-later
"""The awkward instants of a season: month ends, clamping months, clock changes, exact edges of windows."""
from datetime import datetime, timedelta

from clock import Clock

SPANS = [(1, "days"), (7, "days"), (30, "days"), (1, "months"), (3, "months"), (12, "months"), (2, "years")]


class Times:
    def __init__(self, rng, zone):
        self.rng, self.clock = rng, Clock(zone)
        year = rng.choice([2024, 2025, 2027])
        self.start, self.end = datetime(year, 8, 1), datetime(year + 1, 11, 2)
        self.judged = self._judged(year)
        self.anchors = self._anchors()

    def instant(self, wall):
        return self.clock.instant(wall)

    def changes(self):
        """Instants at which the offset changes within the season."""
        found, day = [], self.start
        while day < self.end:
            a, b = self.instant(day), self.instant(day + timedelta(days=1))
            if b - a != 86400000:
                offset = self._offset(a)
                while b - a > 1:
                    middle = (a + b) // 2
                    a, b = (middle, b) if self._offset(middle) == offset else (a, middle)
                found.append(b)
            day += timedelta(days=1)
        return found

    def _offset(self, t):
        wall = self.clock.wall(t)
        return (wall - datetime(1970, 1, 1)) - timedelta(milliseconds=t)

    def _judged(self, year):
        """As-at instants about which the season is built."""
        walls = [datetime(year + 1, 5, 31, 10), datetime(year + 1, 3, 1) - timedelta(hours=12),
                 datetime(year, 12, 31), datetime(year + 1, 3, 31, 23, 59, 59, 999000),
                 datetime(year, 10, 31),
                 datetime(year + 1, 8, 29, 12), datetime(year + 1, 10, 31, 6, 30)]
        chosen = [self.instant(w) for w in self.rng.sample(walls, 4)]
        return chosen + [c + self.rng.choice([-1, 0, 1, 1800000, 43200000]) for c in self.changes()[:3]]

    def _anchors(self):
        anchors = set()
        for t in self.judged:
            anchors |= {t, t + 1, t - 1}
            for n, unit in SPANS:
                edge = self.clock.minus(t, n, unit)
                anchors |= {edge, edge + 1, edge - 1}
        day = self.start
        while day < self.end:
            if day.day == 1:
                midnight = self.instant(day)
                anchors |= {midnight, midnight - 1, midnight + 1, midnight + 3600000}
            if day.day >= 29:
                anchors.add(self.instant(day + timedelta(hours=10)))
            day += timedelta(days=1)
        for change in self.changes():
            anchors |= {change, change - 1, change + 1800000, change - 1800000, change + 3600000,
                        change - 3600001,
                        change + 86400000, change - 86400000}
        low, high = self.instant(self.start) + 10 * 86400000, self.instant(self.end)
        return sorted(a for a in anchors if low <= a < high)

    def any(self):
        """A release end: an anchor more often than not."""
        if self.rng.random() < 0.6:
            return self.rng.choice(self.anchors)
        t = self.rng.randrange(self.instant(self.start) + 10 * 86400000, self.instant(self.end))
        return t if self.rng.random() < 0.3 else t // 60000 * 60000

    def text(self, t):
        """One of the ways in which a time may be written: book's offset, Z, another offset, local."""
        if t is None:
            return ""
        way, wall = self.rng.random(), self.clock.wall(t)
        if way < 0.35 and self.clock.is_plain(wall):
            return self._digits(wall)
        if way < 0.55:
            return self._digits(datetime(1970, 1, 1) + timedelta(milliseconds=t)) + "Z"
        if way < 0.65:
            return self._digits(datetime(1970, 1, 1) + timedelta(milliseconds=t, hours=-4.5)) + "-04:30"
        minutes = round(self._offset(t).total_seconds() / 60)
        sign = "-" if minutes < 0 else "+"
        return f"{self._digits(wall)}{sign}{abs(minutes) // 60:02d}:{abs(minutes) % 60:02d}"

    @staticmethod
    def _digits(wall):
        if wall.microsecond:
            return wall.isoformat(timespec="milliseconds")
        return wall.isoformat(timespec="seconds" if wall.second else "minutes")

    def as_ats(self, ends):
        """The instants worth asking about: edges hit exactly, and one millisecond off."""
        rng, last = self.rng, self.instant(self.end) + 40 * 86400000
        found = {last}
        for t in self.judged:
            found |= {t, t + rng.choice([-1, 1])}
        for end in rng.sample(ends, min(5, len(ends))):
            found.add(end)
            for n, unit in rng.sample(SPANS, 2):
                edge = self._whose_window_begins(end, n, unit)
                if edge is not None:
                    found |= {edge, edge - 1}
        low = self.instant(self.start) + 10 * 86400000
        chosen = sorted(t for t in found if low <= t)
        return sorted(set(rng.sample(chosen, min(13, len(chosen)))) | {last})

    def _whose_window_begins(self, t, n, unit):
        days = {"days": n, "months": n * 31, "years": n * 366}[unit] + 2
        wall = self.clock.wall(t)
        for back in range(6):
            later = self.instant(wall + timedelta(days=days - back))
            if self.clock.minus(later, n, unit) == t:
                return later
        return None

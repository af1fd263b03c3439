# SPDX-License-Identifier: GPL-3.0-or-later
"""`sbk duties`: every time that a duty is to be done, when it is due and whether it was done (docs/conditions.md)."""
from datetime import date, timedelta

from calendars import add, nth_working_day
from windows import calendar_days


def following(clock, day, cycle, year_starts):
    """The first day after `day` on which a period begins."""
    if cycle == "month":
        return calendar_days("month", day)[1]
    if cycle == "quarter":
        month = (day.month - 1) // 3 * 3 + 4
        return date(day.year + (month > 12), (month - 1) % 12 + 1, 1)
    month, first = (int(p) for p in (year_starts or "01-01").split("-"))
    return next(d for d in (date(y, month, first) for y in (day.year, day.year + 1)) if d > day)


class Duty:
    """One condition of kind duty, all its versions."""

    def __init__(self, book, consent, versions):
        self.book, self.folder, self.consent, self.versions = book, book.folder, consent, versions
        self.clock = self.folder.clock

    def asks_at(self, t):
        for v in self.versions:
            start, end = (self.folder.time(v.get(k)) for k in ("from", "to"))
            if (start is None or start <= t) and (end is None or t < end):
                return v
        return None

    def arising(self, as_at):
        """[{version, covers_from, covers_to, arises, due}] of cycles and dates."""
        out = []
        for cycle in ("month", "quarter", "year"):
            if any(v["when"].get("cycle") == cycle for v in self.versions):
                out += self._cycle(cycle, as_at)
        for v in self.versions:
            if "on_date" in v["when"]:
                begins = self.folder.time(v["when"]["on_date"])
                begins = self.clock.midnight(self.clock.wall(begins).date())
                if self.asks_at(begins) is not v:
                    continue
                out.append({"version": v, "covers_from": None, "covers_to": None, "arises": begins,
                            "due": self._due(v, begins, begins)})
        return out

    def _first(self):
        commences = self.folder.time(self.consent.get("commences"))
        if commences is not None:
            return commences
        froms = [self.folder.time(v.get("from")) for v in self.versions]
        if froms[0] is not None:
            return froms[0]
        return min((r.end for r in self.book.releases if r.counts), default=None)

    def _cycle(self, cycle, as_at):
        start, expires = self._first(), self.folder.time(self.consent.get("expires"))
        last = self.clock.minus(as_at, -1, "years")
        while start is not None and (expires is None or start < expires):
            day = following(self.clock, self.clock.wall(start).date(), cycle, self.consent.get("year_starts"))
            end = self.clock.midnight(day)
            end = end if expires is None else min(end, expires)
            if end > last:
                return
            version = self.asks_at(end)
            if version and version["when"].get("cycle") == cycle:
                yield {"version": version, "covers_from": start, "covers_to": end, "arises": end,
                       "due": self._due(version, end, end - 1)}
            start = end

    def _due(self, version, arises, day_before):
        due = version.get("due")
        if due is None:
            if "on_date" in version["when"]:
                return self.clock.midnight(self.clock.wall(arises).date() + timedelta(days=1))
            return None
        if due["unit"] == "working_days":
            last = nth_working_day(self.clock.wall(day_before).date(), due["n"], self.consent.get("not_working"))
            return self.clock.midnight(last + timedelta(days=1))
        return add(self.clock, arises, due["n"], due["unit"])

    # -- done ------------------------------------------------------------------------------------------------

    def rows(self, as_at):
        times = sorted(self.arising(as_at), key=lambda r: r["arises"])
        self._match(times, as_at)
        for row in times:
            row["state"] = self._state(row, as_at)
        return times

    def _records(self, as_at):
        found = []
        for r in self.folder.rows["duties.csv"]:
            if r["condition"] == self.versions[0]["condition"] and r.get("consent") in (None, self.consent["consent"]):
                done = self.folder.time(r.get("done_at"))
                if done is not None and done <= as_at:
                    found.append((done, self.folder.time(r.get("covers_from"))))
        return sorted(found, key=lambda r: r[0])

    def _match(self, times, as_at):
        """The earliest record first; those that say which time before those that do not."""
        for done, covers in self._records(as_at):
            free = [r for r in times if "done_at" not in r and not self._nil(r)]
            row = self._named(times, covers) if covers is not None else \
                next((r for r in free if r["arises"] <= done or r["covers_from"] is None), None)
            if row is not None and "done_at" not in row:
                row["done_at"] = done

    def _named(self, times, covers):
        begins = lambda r: r["covers_from"] if r["covers_from"] is not None else r["arises"]
        day = self.clock.wall(covers).date()
        for fits in (lambda r: begins(r) == covers, lambda r: self.clock.wall(begins(r)).date() == day,
                     lambda r: r["covers_from"] is not None and r["covers_from"] <= covers < r["covers_to"]):
            found = next((r for r in times if fits(r)), None)
            if found is not None:
                return found
        return None

    def _state(self, row, as_at):
        if "done_at" in row:
            return "done"
        if row["arises"] > as_at:
            return "coming"
        if self._nil(row):
            return "nil"
        return "overdue" if row["due"] is not None and as_at > row["due"] else "due"

    def _nil(self, row):
        return row["covers_from"] is not None and not row["version"].get("nil_required") and self._idle(row)

    def _idle(self, row):
        low, high = row["covers_from"], row["covers_to"]
        ends = [r.end for r in self.book.releases if r.counts] + [v.at for v in self.book.volumes.values()]
        return not any(t is not None and low <= t < high for t in ends)


def duties(book, as_at):
    """{(consent, condition): rows}"""
    found = {}
    for consent in book.folder.consents:
        for name in dict.fromkeys(c["condition"] for c in consent["conditions"] if c["kind"] == "duty"):
            versions = [c for c in consent["conditions"] if c["condition"] == name]
            found[(consent["consent"], name)] = Duty(book, consent, versions).rows(as_at)
    return found


def blocking(book, consent, versions, t):
    """The versions that asked for what is overdue at t, where it blocks the release."""
    return [r["version"] for r in Duty(book, consent, versions).rows(t)
            if r["state"] == "overdue" and "release" in r["version"].get("blocks", [])]

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
        """After `give` has said which of them were done."""
        for row in self.times:
            row["state"] = self._state(row, as_at)
        return self.times

    def prepare(self, as_at):
        self.times = sorted(self.arising(as_at), key=lambda r: r["arises"])
        return self

    def fitting(self, done, covers):
        """[(how well, the time)] of times that are free: 0 begins then, 1 on that day, 2 holds it; without covers the
        earliest that had arisen."""
        free = [r for r in self.times if "done_at" not in r]
        if covers is None:
            arisen = [r for r in free if not self._nil(r) and (r["arises"] <= done or r["covers_from"] is None)]
            return [(r["arises"], r) for r in arisen[:1]]
        begins = lambda r: r["covers_from"] if r["covers_from"] is not None else r["arises"]
        day = self.clock.wall(covers).date()
        fits = [(0, lambda r: begins(r) == covers), (1, lambda r: self.clock.wall(begins(r)).date() == day),
                (2, lambda r: r["covers_from"] is not None and r["covers_from"] <= covers < r["covers_to"])]
        found = [(rank, next((r for r in free if fit(r)), None)) for rank, fit in fits]
        return [(rank, r) for rank, r in found if r is not None][:1]

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


def give(folder, number, duties_of, as_at):
    """Every record of that number to one time: those that say which before those that do not, those that name their
    consent before those that do not, then the earlier; of several consents the one that it fits best, the first."""
    records = []
    for r in folder.rows["duties.csv"]:
        done = folder.time(r.get("done_at"))
        if r["condition"] == number and done is not None and done <= as_at:
            covers = folder.time(r.get("covers_from"))
            records.append(((covers is None, r.get("consent") is None, done), r.get("consent"), done, covers))
    for _, consent, done, covers in sorted(records, key=lambda r: r[0]):
        may = [f for name, duty in duties_of.items() if consent in (None, name) for f in duty.fitting(done, covers)]
        if may:
            min(may, key=lambda f: f[0])[1]["done_at"] = done


def of_number(book, number, as_at):
    """{consent: Duty} of the duties of that number, with what was done."""
    found = {}
    for consent in book.folder.consents:
        versions = [c for c in consent["conditions"] if c["condition"] == number and c["kind"] == "duty"]
        if versions:
            found[consent["consent"]] = Duty(book, consent, versions).prepare(as_at)
    give(book.folder, number, found, as_at)
    return found


def duties(book, as_at):
    """{(consent, condition): rows}"""
    names = dict.fromkeys(c["condition"] for k in book.folder.consents for c in k["conditions"] if c["kind"] == "duty")
    return {(consent, name): duty.rows(as_at) for name in names
            for consent, duty in of_number(book, name, as_at).items()}


def blocking(book, consent, versions, t):
    """The versions that asked for what is overdue at t, where it blocks the release."""
    duty = of_number(book, versions[0]["condition"], t)[consent["consent"]]
    return [r["version"] for r in duty.rows(t)
            if r["state"] == "overdue" and "release" in r["version"].get("blocks", [])]

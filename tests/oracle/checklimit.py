# SPDX-License-Identifier: GPL-3.0-or-later
"""at_most limits before the act: the load and those that go first, judged at the planned instant."""
from dataclasses import replace
from datetime import timedelta

from estimate import is_over
from limits import UNSCOPED, Limit, MayBe
from planned import Planned, possible_cells

WORST = ("clear", "cannot_tell", "hold")


class CheckedLimit:
    """All versions of one quantity condition, for one ask."""

    def __init__(self, book, consent, versions, ask):
        self.book, self.consent, self.ask, self.unsaid = book, consent, ask, False
        self.versions = [v for v in versions if v.get("op", "at_most") == "at_most"
                         and v.get("applies", {}).get("activity") != "dredge"]

    def _in_force(self, t):
        for v in self.versions:
            start, end = (self.book.folder.time(v.get(k)) for k in ("from", "to"))
            if (start is None or start <= t) and (end is None or t < end):
                return v
        return None

    def state(self, t):
        version = self._in_force(t)
        if version is None:
            return "clear"
        planned = Planned(self.book, self.ask, t)
        limit = Limit(planned, self.consent, version)
        if not limit.window(t).spans(t):
            return "clear"
        known = self._as_recorded(planned, limit, version, t)
        if known == "clear" and self._may_break(planned, version, t):
            return "cannot_tell"
        return known

    def _as_recorded(self, planned, limit, version, t):
        mine = [e for e in limit.events if e.trip == "planned"]
        if not mine:
            return "clear"
        scoped = version.get("applies", {}).get("claims")
        self.unsaid = limit.each_of == "claim" and not scoped and None in mine[0].claims
        members = self._members(limit, mine[0])
        if members is None:
            every = [self._of_member(planned, version, t, m) for m in self._there(limit)]
            if not every:
                return "clear"      # a ground without cells has none to fill
            return "hold" if all(s == "hold" for s in every) else "cannot_tell"
        # A part of which nobody knows the claim may be of any.
        return max([self._judge(limit, t, m) for m in members] + ["cannot_tell"] * self.unsaid, key=WORST.index)

    def _may_break(self, planned, version, t):
        """Whether it would not be clear if all that is not recorded, of the load and of what went before it, counted."""
        worst = MayBe(planned, self.consent, version)
        mine = [e for e in worst.events if e.trip == "planned"]
        if not mine:
            return False
        if worst.each_of == "claim" and None in mine[0].claims:
            members = worst.members()
        else:
            members = self._members(worst, mine[0])
        if members is None:
            return any(self._of_member(planned, version, t, m, MayBe) != "clear" for m in self._there(worst))
        return any(self._judge(worst, t, m) != "clear" for m in members)

    def _there(self, limit):
        """The members that the load may go to: cells of its ground."""
        if limit.each_of != "cell":
            return limit.members()
        return [n for (g, _), n in limit.cell_names.items() if self.ask.ground in (None, g)]

    def _members(self, limit, event):
        """Those that the load counts for; None where it is not said which."""
        if limit.each_of is None:
            return [UNSCOPED]
        if limit.each_of == "claim":
            return [m for m in limit.members() if m in event.claims] or None
        if limit.each_of == "cell":
            name = limit.cell_names.get((event.keys["cell_ground"], event.keys["cell"]))
            return None if name is None else [name]
        name = event.keys["barge" if limit.each_of == "plant" else limit.each_of]
        return None if name is None else [name]

    def _of_member(self, planned, version, t, member, kind=Limit):
        """As if the load went there."""
        limit = kind(planned, self.consent, version)
        for e in limit.events:
            if e.trip == "planned":
                if limit.each_of == "cell":
                    where = next(k for k, v in limit.cell_names.items() if v == member)
                    e.keys = dict(e.keys, cell=where[1], cell_ground=where[0])
                elif limit.each_of == "claim":
                    e.claims = {member}
                    e.parts = None if e.parts is None else [(member, a) for _, a in e.parts]
                else:
                    e.keys = dict(e.keys, **{"barge" if limit.each_of == "plant" else limit.each_of: member})
        return self._judge(limit, t, member)

    @staticmethod
    def _judge(limit, t, member):
        used, unknown, most = limit.used(t, member)
        if isinstance(limit.condition.get("of"), dict):     # a share of a total that some load may add to
            unknown = unknown or limit._sum(limit.counted(t, UNSCOPED), UNSCOPED)[1]
        if most is not None and is_over(used.value, most):
            return "hold"
        return "cannot_tell" if unknown or CheckedLimit._may_last(limit, t, member, used, most) else "clear"

    @staticmethod
    def _may_last(limit, t, member, used, most):
        """Of hours: whether it would be over if each that is yet to go stood open as long as the longest so far."""
        if limit.measure != "hours" or most is None:
            return False
        book = limit.book
        yet = {e.trip for e in limit.counted(t, member) if e.hours == 0 and e.time in (t, book.plan.end)}
        if not yet:
            return False
        return book.longest_h is None or is_over(used.value + len(yet) * book.longest_h / limit.mean_years, most)

    # -- until ---------------------------------------------------------------------------------------------

    def until(self):
        """The first instant after the ask at which it does not hold any more, nothing new coming in."""
        for t in sorted(self._candidates()):
            if t > self.ask.at and self.state(t) != "hold":
                return t
        return None

    def _candidates(self):
        folder, at, found = self.book.folder, self.ask.at, set()
        for v in self.versions:
            window, limit = v["window"], Limit(Planned(self.book, self.ask, at), self.consent, v)
            found |= {folder.time(v.get(k)) for k in ("from", "to")}
            unlocked = (v.get("reserve") or {}).get("unlocked_by")
            if isinstance(unlocked, dict):
                found.add(folder.time(unlocked.get("on")))
            if window["kind"] in ("rolling", "mean"):
                n, unit = (window["years"], "years") if window["kind"] == "mean" else (window["n"], window["unit"])
                for e in limit.events:
                    # Clamped months take an hour of the 30th in again on the 31st: both ends are looked at.
                    found |= {self._leaves(e.time, n, unit), folder.clock.minus(e.time, -n, unit)}
                    # A span that ends in an hour the clock skipped ends as it would an hour later.
                    wall = folder.clock.wall(folder.clock.minus(e.time, -n, unit))
                    found |= {folder.clock.instant(wall - timedelta(minutes=m)) for m in (30, 60)}
            elif window["kind"] == "campaign":
                found |= {folder.time(c.get(k)) for c in folder.harbour.get("campaigns", []) for k in ("from", "to")}
            elif window["kind"] in ("calendar", "consent_year"):
                t = at
                for _ in range(3):
                    t = limit.window(t).end
                    found.add(t)
            elif window["kind"] == "phase":
                found |= {folder.time(window["from"]), folder.time(window.get("to"))}
        return {t for t in found if t is not None}

    def _leaves(self, time, n, unit):
        """The first instant whose window (t − span, t] does not hold `time` any more."""
        clock = self.book.folder.clock
        low, high = time, clock.instant(clock.wall(clock.minus(time, -n, unit)) + timedelta(days=5))
        while high - low > 1:
            middle = (low + high) // 2
            low, high = (middle, high) if clock.minus(middle, n, unit) < time else (low, middle)
        return high

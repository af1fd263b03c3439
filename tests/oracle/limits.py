# SPDX-License-Identifier: GPL-3.0-or-later
"""`sbk headroom`: every quantity condition at an instant, each window summed over all events one by one."""
from dataclasses import dataclass, field
from typing import Optional

from bookfolder import number
from estimate import Estimate, is_over, p_over, total
from loadvolume import MEASURES
from windows import window_at

UNSCOPED = object()


@dataclass
class Event:
    """One thing that counts for a condition. Amounts are of the condition's measure."""
    time: int
    trip: Optional[str] = None
    load: Optional[str] = None
    day: Optional[str] = None
    hours: Optional[float] = None
    parts: Optional[list] = field(default_factory=list)    # [(claim, Estimate)], None: no method can value it
    keys: dict = field(default_factory=dict)
    claims: set = field(default_factory=set)
    opening: Optional[Estimate] = None
    member: Optional[str] = None        # of an opening amount


class Limit:
    """One version of a quantity condition."""

    def __init__(self, book, consent, condition):
        self.book, self.consent, self.condition = book, consent, condition
        self.folder = book.folder
        self.measure, self.method = condition["measure"], condition.get("method")
        self.each_of = None if condition.get("each_of") in (None, "none") else condition["each_of"]
        self.applies = condition.get("applies", {})
        self.share = condition.get("share_of_total")
        self.mean_years = condition["window"].get("years", 1) if condition["window"]["kind"] == "mean" else 1
        self.scope = set(self.applies.get("claims") or [])
        self.cell_names = self._cell_names()
        self.events = sorted(list(self._openings()) + self._scoped(), key=lambda e: e.time)

    # -- what counts ---------------------------------------------------------------------------------------

    def in_force(self, t):
        start, end = (self.folder.time(self.condition.get(k)) for k in ("from", "to"))
        return (start is None or start <= t) and (end is None or t < end)

    def _openings(self):
        for index, row in enumerate(self.folder.openings):
            if (row["consent"], row["condition"]) != (self.consent["consent"], self.condition["condition"]):
                continue
            to, start = self.folder.time(row.get("to")), self.folder.time(row.get("from"))
            value = Estimate.of(number(row["value"]), number(row.get("u")) or 0.0, ("opening.csv", index))
            yield Event(to - 1 if to is not None else start, opening=value, member=row.get("member"))

    def _scoped(self):
        dredge = self.applies.get("activity") == "dredge"
        events = self._dredged() if dredge else self._released()
        return [e for e in events if self._applies(e)]

    def _released(self):
        for r in self.book.releases:
            if not r.counts:
                continue
            volume = self.book.volumes.get(r.load)
            keys = self.book.keys_of(r)
            yield Event(r.end, r.trip, r.load, self.folder.clock.wall(r.end).date(),
                        self._hours(r.start, r.shut),
                        self._parts(volume, r.share), keys, volume.claims() if volume else {None})

    def _dredged(self):
        for load, volume in self.book.volumes.items():
            row, end = self.folder.loads[load], volume.at
            if end is None:
                continue
            keys = {"material": row.get("material"), "barge": row.get("barge"), "ground": None, "cell": None,
                    "cell_ground": None, "tug": None, "placed": False}
            yield Event(end, load, load, self.folder.clock.wall(end).date(),
                        self._hours(self.folder.time(row.get("loading_start")), end),
                        self._parts(volume, 1.0, dredged=True), keys, volume.claims())

    @staticmethod
    def _hours(start, end):
        return None if start is None or end is None else (end - start) / 3.6e6

    def _parts(self, volume, share, dredged=False):
        if self.measure not in MEASURES:
            return []
        if volume is None:
            return None
        amounts = (volume.dredged if dredged else volume.amounts)(self.measure, self.method)
        return None if amounts is None else [(claim, e * share) for claim, e in amounts]

    def _applies(self, event):
        """Empty scope = any. By claim: if any part came from it; by material: the load's;
        by plant: the barge or the tug."""
        scopes = (("grounds", "ground"), ("cells", "cell"), ("materials", "material"))
        if any(self.applies.get(s) and event.keys[k] not in self.applies[s] for s, k in scopes):
            return False
        plant = self.applies.get("plant")
        if plant and event.keys["barge"] not in plant and event.keys["tug"] not in plant:
            return False
        return not self.scope or bool(event.claims & self.scope)

    # -- summing -------------------------------------------------------------------------------------------

    def _cell_names(self):
        """(ground, cell) → what the member is called: GROUND/CELL where two cells in scope have one name."""
        grounds, wanted = self.applies.get("grounds"), self.applies.get("cells")
        cells = [(g, c) for g, c in self.folder.cells
                 if (not grounds or g in grounds) and (not wanted or c in wanted)]
        names = [c for _, c in cells]
        return {(g, c): c if names.count(c) == 1 else f"{g}/{c}" for g, c in cells}

    def members(self):
        """Every member in scope; one row with UNSCOPED where the condition has no each_of."""
        if self.each_of is None:
            return [UNSCOPED]
        grounds = self.applies.get("grounds") or list(self.folder.regions)
        every = {"claim": list(self.folder.claims), "ground": grounds,
                 "material": list(self.folder.materials),
                 "cell": list(self.cell_names.values()), "plant": list(self.folder.barges)}
        wanted = self.applies.get({"claim": "claims", "material": "materials",
                                   "plant": "plant"}
                                  .get(self.each_of, ""))
        return [m for m in every[self.each_of] if not wanted or m in wanted]

    def window(self, t):
        trips = [e for e in self.events if e.time <= t and not e.opening and e.trip]
        return window_at(self.condition["window"], t, self.folder, self.consent,
                         trips[-1].trip if trips else None)

    def _belongs(self, event, member):
        if member is UNSCOPED:
            return True
        if event.opening:
            return event.member == member if member is not None else event.member not in self.members()
        if self.each_of == "claim":
            # Of a load from several claims the part out of scope does not count, named or not.
            return member in event.claims and (not self.scope or member in self.scope)
        if self.each_of == "cell":
            return self.cell_names.get((event.keys["cell_ground"], event.keys["cell"])) == member
        return event.keys["barge" if self.each_of == "plant" else self.each_of] == member

    def counted(self, t, member):
        window = self.window(t)
        return [e for e in self.events
                if window.holds(e.time, t, e.opening is not None, e.trip) and self._belongs(e, member)]

    def _sum(self, events, member):
        """(Estimate, unknown loads) of the events."""
        openings = [e.opening for e in events if e.opening]
        events = [e for e in events if not e.opening]
        if self.measure == "trips":
            return total(openings) + len({e.trip for e in events}), set()
        if self.measure == "days":
            return total(openings) + len({e.day for e in events}), set()
        if self.measure == "hours":
            return total(openings) + sum(e.hours or 0.0 for e in events), \
                {e.load for e in events if e.hours is None}
        claims = self._claims_of(member) if self.each_of == "claim" and member is not UNSCOPED else None
        scope = set(self.applies["claims"]) if self.applies.get("claims") else None
        amounts = [a for e in events if e.parts is not None for c, a in e.parts
                   if (claims is None or c in claims) and (scope is None or c in scope)]
        return total(openings + amounts), {e.load for e in events if e.parts is None}

    @staticmethod
    def _claims_of(member):
        return {member}

    def used(self, t, member):
        """(used, unknown, limit) of a member in the window at t; limit None below a share's floor."""
        summed, unknown = self._sum(self.counted(t, member), member)
        summed = summed * (1 / self.mean_years)
        if self.share is None:
            return summed, unknown, self._value(t)
        of = self.condition["of"]
        if not isinstance(of, dict):
            return summed * (1 / of), unknown, self.share
        whole, _ = self._sum(self.counted(t, UNSCOPED), UNSCOPED)
        whole = whole * (1 / self.mean_years)
        used = summed / whole if whole.value > 0 else Estimate(0.0)
        return used, unknown, self.share if whole.value >= of["floor"] else None

    def _value(self, t):
        reserve = self.condition.get("reserve")
        if not reserve:
            return self.condition["value"]
        unlocked = reserve.get("unlocked_by")
        on = self.folder.time(unlocked.get("on")) if isinstance(unlocked, dict) else None
        open_now = on is not None and t >= on
        return self.condition["value"] - (0 if open_now else reserve["value"])


class MayBe(Limit):
    """The same limit where all that is not recorded of what happened turns out to count, wherever it may."""

    def __init__(self, book, consent, condition):
        applies = dict(condition.get("applies", {}))
        if applies.get("claims"):
            applies["claims"] = [*applies["claims"], None]
        super().__init__(book, consent, dict(condition, applies=applies))

    def _applies(self, event):
        keys, scope = event.keys, self.applies
        for names, key in (("grounds", "ground"), ("materials", "material")):
            if scope.get(names) and keys[key] not in [*scope[names], None]:
                return False
        if scope.get("cells") and not self._may_be_in(event, scope["cells"]):
            return False
        plant = scope.get("plant")
        if plant and not {keys["barge"], keys["tug"]} & set(plant):
            # A tug that is not recorded can only be one where the condition names a tug.
            tugs = set(plant) - set(self.folder.barges)
            if keys["barge"] is not None and not (keys["tug"] is None and tugs):
                return False
        return not self.scope or bool(event.claims & self.scope)

    def _may_be_in(self, event, names):
        keys = event.keys
        if keys["cell"] is not None:
            return keys["cell"] in names
        return not keys["placed"] and any(c in names and keys["ground"] in (None, g) for g, c in self.folder.cells)

    def _belongs(self, event, member):
        if member is UNSCOPED or event.opening:
            return super()._belongs(event, member)
        if self.each_of == "claim":
            return bool(event.claims & {member, None})
        if self.each_of == "cell":
            ground = next((g for (g, _), n in self.cell_names.items() if n == member), None)
            return super()._belongs(event, member) or event.keys["cell"] is None and not event.keys["placed"] \
                and event.keys["ground"] in (None, ground)
        return event.keys["barge" if self.each_of == "plant" else self.each_of] in (member, None)

    @staticmethod
    def _claims_of(member):
        return {member, None}


class Board:
    """All limits of a book; versions of one condition stand together."""

    def __init__(self, book):
        self.book, self.groups = book, {}
        for consent in book.folder.consents:
            for c in consent["conditions"]:
                if c["kind"] == "quantity":
                    key = (consent["consent"], c["condition"])
                    self.groups.setdefault(key, []).append(Limit(book, consent, c))
                    self.groups[key][-1].may_be = MayBe(book, consent, c)
        self._overs = {}

    def first_over(self, key, member, as_at):
        """The earliest event time ≤ as_at at which used exceeded the limit of the version in force then."""
        if (key, member) not in self._overs:
            over = []
            for version in self.groups[key]:
                if version.condition.get("op", "at_most") == "at_least":
                    continue
                for t in sorted({e.time for e in version.events}):
                    if version.in_force(t) and version.window(t).spans(t):
                        used, _, limit = version.used(t, member)
                        if limit is not None and is_over(used.value, limit):
                            over.append(t)
            self._overs[(key, member)] = sorted(over)
        return next((t for t in self._overs[(key, member)] if t <= as_at), None)

    def rows(self, as_at):
        out = []
        for key, versions in self.groups.items():
            for version in [v for v in versions if v.in_force(as_at)]:
                members = list(version.members())
                if version.each_of and version.counted(as_at, None):
                    members.append(None)
                out += [self._row(key, version, m, as_at) for m in members]
        return out

    def _row(self, key, version, member, as_at):
        used, unknown, limit = version.used(as_at, member)
        window, text = version.window(as_at), self.book.folder.clock.text
        row = {"consent": key[0], "condition": key[1], "quantity": version.measure,
               "window_start": text(window.start), "window_end": text(window.end), "limit": limit,
               "used": used.value, "used_u": used.u,
               "headroom": None if limit is None else limit - used.value,
               "p_over": None if unknown or limit is None else p_over(used.value, used.u, limit),
               "first_over": text(self.first_over(key, member, as_at)), "unknown": len(unknown)}
        row["not_recorded"], row["used_at_most"] = self._not_recorded(version, member, as_at)
        if version.each_of:
            row["each"] = {version.each_of: member}
        return row

    @staticmethod
    def _not_recorded(version, member, t):
        """(loads that may count too for all that is recorded of them, what would be used if they all did)."""
        if member is None or version.condition["window"]["kind"] == "trip":
            return 0, None
        sure = {(e.time, e.trip, e.load) for e in version.counted(t, member)}
        # Trips, days and hours count whole by any part: what another part is from adds nothing.
        parts = version.measure in MEASURES and (version.scope or version.each_of == "claim")
        may = {e.load or (e.trip, e.time) for e in version.may_be.counted(t, member) if not e.opening and
               ((e.time, e.trip, e.load) not in sure or parts and None in e.claims)}
        return len(may), version.may_be.used(t, member)[0].value if may else None

# SPDX-License-Identifier: GPL-3.0-or-later
"""The season as a release check sees it: everything before the instant, the loads that go first, the load asked."""
import copy
from dataclasses import dataclass
from typing import Optional

from releases import Release, cell_at

ENDED = ("returned_loaded", "landed")


@dataclass
class Ask:
    load: str
    at: int
    ground: Optional[str] = None
    cell: Optional[str] = None
    place: Optional[tuple] = None       # metres
    u: float = 0.0
    wave: Optional[float] = None


def under_way_or_waiting(book, ask):
    """(load, its trips, what share of it is left) of loads full by then, but the one asked about and those landed by
    then: none of which anything was released yet, and those under way with what is left."""
    folder = book.folder
    for load, row in folder.loads.items():
        full = folder.time(row.get("loading_end"))
        if load == ask.load or full is None or full > ask.at or row.get("rejected"):
            continue
        gone = [r for r in book.releases if r.load == load and r.counts and r.end <= ask.at]
        trips = [t for t in folder.trips.values() if t.get("load") == load]
        if gone:
            left = 1 - sum(r.share for r in gone)
            if left > 1e-9 and any(still_out(book, t, row, ask.at) for t in trips):
                yield load, trips, left
        elif not any(t.get("outcome") == "landed" for t in trips):
            yield load, trips, 1.0


def still_out(book, trip, load, at):
    """A trip that cast off by then and is not over: no return by then; where none is recorded at all, it is yet to
    release, or her barge has begun no other load since."""
    folder = book.folder
    departed, returned = folder.time(trip.get("departed")), folder.time(trip.get("returned"))
    if departed is None or departed > at or trip.get("outcome") == "landed":
        return False
    if returned is not None:
        return returned > at
    if any(r.trip == trip["trip"] and r.counts and r.end > at for r in book.releases):
        return True
    others = [o for n, o in folder.loads.items() if n != trip["load"] and o.get("barge") == load.get("barge")]
    begun = [folder.time(o.get("loading_start") or o.get("loading_end")) for o in others if load.get("barge")]
    return not any(b is not None and departed < b <= at for b in begun)


def stand_in(trip, load, t, ground, cell, cell_ground):
    return Release(None, trip, load, t, t, t, "released", 1.0, ground, cell, cell_ground, "cannot_tell", None)


def tug_of(folder, load):
    """The tug of the load's own trip, the last one, where it is logged."""
    return ([t.get("tug") for t in folder.trips.values() if t.get("load") == load] or [None])[-1]


def possible_cells(folder, ask, names):
    """(ground, cell) of the cells of these names that the load may go to: the one said, else the one that holds the
    position, else any of the ground."""
    if ask.cell is None and ask.place is not None:
        where = cell_at(folder, ask.ground, ask.place)
        return [where] if where[1] in names else []
    return [(g, c) for g, c in folder.cells
            if c in names and ask.cell in (None, c) and ask.ground in (None, g)]


class Planned:
    """A Book whose releases are those before the ask, the loads that go first at ask.at, and the load at t."""

    def __init__(self, book, ask, t):
        self.folder, self.volumes = copy.copy(book.folder), book.volumes
        self.folder.trips = dict(book.folder.trips)
        kept = [r for r in book.releases if r.counts and r.end <= ask.at and r.load != ask.load]
        first = []
        for load, trips, left in under_way_or_waiting(book, ask):
            # Where it will open its doors nobody knows yet: what its last trip says.
            name, last = f"waiting {load}", trips[-1] if trips else {}
            self.folder.trips[name] = {"trip": name, "tug": last.get("tug")}
            first.append(stand_in(name, load, ask.at, last.get("ground"), last.get("cell"), last.get("ground")))
            first[-1].share = left
        self.folder.trips["planned"] = {"trip": "planned", "load": ask.load, "tug": tug_of(book.folder, ask.load)}
        cell_ground, cell = ask.ground, ask.cell
        if cell is None and ask.place:
            cell_ground, cell = cell_at(self.folder, ask.ground, ask.place)
        self.plan = stand_in("planned", ask.load, t, ask.ground or cell_ground, cell, cell_ground)
        self.plan.placed = ask.place is not None
        self.releases = kept + first + [self.plan]
        lasted = [r.shut - r.start for r in kept if r.start is not None and r.shut is not None]
        self.longest_h = max(lasted) / 3.6e6 if lasted else None

    def keys_of(self, release):
        load = self.folder.loads.get(release.load, {})
        return {"ground": release.ground, "cell": release.cell, "cell_ground": release.cell_ground,
                "material": load.get("material"), "barge": load.get("barge"),
                "tug": self.folder.trips[release.trip].get("tug"), "placed": release.placed}

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
    """Loads full by then of which nothing was released yet, but the one asked about and those landed by then."""
    folder = book.folder
    for load, row in folder.loads.items():
        full = folder.time(row.get("loading_end"))
        if load == ask.load or full is None or full > ask.at:
            continue
        own = [r for r in book.releases if r.load == load]
        if any(r.counts and r.end <= ask.at for r in own):
            continue
        trips = [t for t in folder.trips.values() if t.get("load") == load]
        if any(t.get("outcome") == "landed" for t in trips):
            continue
        yield load, next((r for r in own if r.counts), None), trips


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
        for load, later, trips in under_way_or_waiting(book, ask):
            releases = [r for r in book.releases if r.load == load and r.counts]
            for r in releases:
                first.append(copy.copy(r))
                first[-1].start = first[-1].end = first[-1].shut = ask.at
            if not releases:
                name = trips[-1]["trip"] if trips else f"waiting {load}"
                self.folder.trips.setdefault(name, {"trip": name})
                last = trips[-1] if trips else {}
                first.append(stand_in(name, load, ask.at, last.get("ground"), last.get("cell"), last.get("ground")))
        self.folder.trips["planned"] = {"trip": "planned", "load": ask.load, "tug": tug_of(book.folder, ask.load)}
        cell_ground, cell = ask.ground, ask.cell
        if cell is None and ask.place:
            cell_ground, cell = cell_at(self.folder, ask.ground, ask.place)
        self.plan = stand_in("planned", ask.load, t, ask.ground or cell_ground, cell, cell_ground)
        self.releases = kept + first + [self.plan]

    def keys_of(self, release):
        load = self.folder.loads.get(release.load, {})
        return {"ground": release.ground, "cell": release.cell, "cell_ground": release.cell_ground,
                "material": load.get("material"), "barge": load.get("barge"),
                "tug": self.folder.trips[release.trip].get("tug")}

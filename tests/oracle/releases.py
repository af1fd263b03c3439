# SPDX-License-Identifier: GPL-3.0-or-later
"""Releases of the book, their share of the load, their place and verdict (book-folder.md, "What counts")."""
from dataclasses import dataclass
from typing import Optional

from bookfolder import number

TURNED_BACK = ("returned_loaded", "landed")
BLANK_POSITION_U_M = 10.0


@dataclass
class Release:
    release: Optional[str]
    trip: str
    load: Optional[str]
    start: Optional[int]        # doors open, ms UTC
    end: Optional[int]          # empty, else doors shut
    shut: Optional[int]         # doors shut, else empty
    outcome: Optional[str]
    share: float
    ground: Optional[str]
    cell: Optional[str]         # logged, else by position
    cell_ground: Optional[str]  # the ground that the cell is of: two grounds may have cells of one name
    verdict: str
    distance_m: Optional[float]
    placed: bool = False        # a position is recorded: what then lies in no cell is known to be in none

    @property
    def counts(self):
        return self.end is not None and self.outcome not in TURNED_BACK


def cell_at(folder, ground, place):
    """(ground, cell) of the ground's cell (of any ground, where none is named) that holds the place."""
    for (of_ground, cell), region in folder.cells.items():
        if (ground is None or of_ground == ground) and region.contains(*place):
            return of_ground, cell
    return None, None


def judge(folder, ground, place, u):
    """(verdict, signed distance) of a position with its 68 % u against the ground that the trip names."""
    if place is None or ground not in folder.regions:
        return "cannot_tell", None
    distance = folder.regions[ground].signed_distance(*place)
    u = BLANK_POSITION_U_M if u is None else u
    if distance >= 2 * u:
        return "inside", distance
    return ("outside" if distance <= -2 * u else "cannot_tell"), distance


def one(folder, trip, row, share, start, empty, shut):
    lat, lon = number(row.get("lat")), number(row.get("lon"))
    place = None if lat is None or lon is None else folder.projection.forward(lat, lon)
    ground = row.get("ground")
    verdict, distance = judge(folder, ground, place, number(row.get("position_u_m")))
    cell_ground, cell = ground, row.get("cell")
    if cell is None:
        cell_ground, cell = cell_at(folder, ground, place) if place else (None, None)
    times = [folder.time(row.get(c)) for c in (start, empty, shut)]
    empty_at, shut_at = times[1], times[2]
    return Release(row.get("release"), trip["trip"], trip.get("load"), times[0],
                   empty_at if empty_at is not None else shut_at,
                   shut_at if shut_at is not None else empty_at,
                   trip.get("outcome"), share, ground, cell, cell_ground, verdict, distance, place is not None)


def all_releases(folder):
    """A trip's own release, unless releases.csv has rows of that trip: then those alone."""
    found = []
    for name, trip in folder.trips.items():
        rows = folder.release_rows.get(name)
        if rows is None:
            found.append(one(folder, trip, trip, 1.0, "release_start", "release_end", None))
            continue
        given = [number(r.get("share")) for r in rows]
        left = max(0.0, 1.0 - sum(s for s in given if s is not None))
        blanks = given.count(None)
        for row, share in zip(rows, given):
            found.append(one(folder, trip, row, left / blanks if share is None else share,
                             "doors_open", "empty", "doors_shut"))
    return found

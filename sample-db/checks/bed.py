# SPDX-License-Identifier: GPL-3.0-or-later
"""The surveys of the ground: what their grids say against what was released, and against condition 13."""
import math
import os
from datetime import datetime

from . import land
from .season import ZONE, when

TOLD = {"SV-G2": (0.08, 1.4), "SV-G3": (0.10, 2.3), "SV-G4": (0.12, 3.2)}      # README: most rise m, mean cm


class Grid:
    """An ESRI ASCII grid: {(easting, northing) of a cell's middle: level m}, without what was not surveyed."""

    def __init__(self, path):
        with open(path, encoding="ascii") as f:
            lines = [line.split() for line in f]
        head = {k.lower(): float(v) for k, v in lines[:6]}
        self.corner, self.size = (head["xllcorner"], head["yllcorner"]), head["cellsize"]
        rows, self.levels = lines[6:], {}
        assert len(rows) == head["nrows"] and {len(r) for r in rows} == {int(head["ncols"])}, path
        for j, row in enumerate(reversed(rows)):
            for i, text in enumerate(row):
                if float(text) != head["nodata_value"]:
                    self.levels[self._middle(i, j)] = float(text)

    def _middle(self, i, j):
        return self.corner[0] + (i + 0.5) * self.size, self.corner[1] + (j + 0.5) * self.size

    def shows(self, place):
        return self._middle(*((p - c) // self.size for p, c in zip(place, self.corner))) in self.levels


def of_ground(season):
    """{survey: (its row, its Grid)} of the surveys that came with a file."""
    return {row["survey"]: (row, Grid(os.path.join(season.path, "surveys", row["file"])))
            for row in season.tables["surveys"] if row["file"]}


def rises(grid, before):
    return {at: level - before.levels[at] for at, level in grid.levels.items() if at in before.levels}


def in_ground(ground, places):
    return [p for p in places if land.contains(ground.outline, p) and not land.contains(ground.wreck, p)]


def _everywhere(ground, step=25):
    """Places of the ground a step apart, its line and its corners with them."""
    west, south, east, north = (f(p[i] for p in ground.outline) for f in (min, max) for i in (0, 1))
    lattice = [(west + i * step, south + j * step) for i in range(int((east - west) / step) + 1)
               for j in range(int((north - south) / step) + 1)]
    line = [(a[0] + k / 20 * (b[0] - a[0]), a[1] + k / 20 * (b[1] - a[1]))
            for a, b in zip(ground.outline, ground.outline[1:]) for k in range(20)]
    return line + [p for p in lattice if land.contains(ground.outline, p)]


def _u(row, level):
    """Standard uncertainty: as recorded, else of S-44's Special Order, whose 95 % is the root of 0.25 and 0.0075 d."""
    if row["u_m"]:
        return float(row["u_m"])
    assert row["s44_order"] == "Special"
    return math.sqrt(0.25 ** 2 + (0.0075 * level) ** 2) / 1.96


def stories(season, ground):
    surveys = of_ground(season)
    (before_row, before), condition = surveys.pop("SV-G1"), next(
        c for c in season.consents["consents"][0]["conditions"] if c["condition"] == "13")
    depths = [-before.levels[p] for p in in_ground(ground, before.levels)]
    day = before_row["surveyed_on"]
    yield "the ground before: surveyed on, depths", f"{day}, {min(depths):.1f} to {max(depths):.1f} m", \
        before_row["kind"] == "before" and day < "2025-08-04" and \
        round(min(depths)) == 22 and round(max(depths)) == 26
    yield "surveys of the ground after it, each within two days of the duty that it did", ", ".join(surveys), \
        set(surveys) == set(TOLD) == _done(season)
    for name, (row, grid) in surveys.items():
        yield from _survey(season, ground, name, row, grid, before_row, before, condition)


def _done(season):
    """The surveys that a done duty names, where they were made on its day or the two before."""
    days = {r["survey"]: _morning(r) for r in season.tables["surveys"]}
    done = [(r["evidence"].split(",")[0], when(r["done_at"]))
            for r in season.tables["duties"] if r["condition"] == "30"]
    return {name for name, at in done if 0 <= (at - days[name]).days <= 2}


def _morning(row):
    return datetime.fromisoformat(row["surveyed_on"]).replace(tzinfo=ZONE)


def _survey(season, ground, name, row, grid, before_row, before, condition):
    rise = rises(grid, before)
    hopper = sum(r.share * season.hopper[r.trip["load"]] for r in season.releases if r.end < _morning(row))
    lies = sum(rise.values()) * grid.size ** 2
    yield f"{name}: lies on the ground, was released by then", f"{lies:,.0f} of {hopper:,.0f} m3", \
        abs(lies / hopper - 1) < 1 / 300
    bare = sum(not grid.shows(p) for p in _everywhere(ground))
    yield f"{name}: places of the ground, and those not surveyed", f"{len(_everywhere(ground))}, {bare}", not bare
    within = in_ground(ground, rise)
    most, mean = max(rise[p] for p in within), sum(rise[p] for p in within) / len(within)
    yield f"{name}: most and mean rise in the ground", f"{most:.2f} m, {100 * mean:.1f} cm", \
        abs(most - TOLD[name][0]) < 0.005 and abs(100 * mean - TOLD[name][1]) < 0.05
    doubt = {p: 2 * math.hypot(_u(row, grid.levels[p]), _u(before_row, before.levels[p])) for p in rise}
    room = min(condition["no_rise_over_baseline_m"] - rise[p] - doubt[p] for p in rise)
    yield f"{name}: surely under condition 13 in every cell, by", f"{room:.2f} m", room > 0
    told = sum(abs(rise[p]) > doubt[p] for p in rise)
    yield f"{name}: cells whose own rise can be told, by two u", f"{told}", not told

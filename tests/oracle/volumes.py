# SPDX-License-Identifier: GPL-3.0-or-later
"""`sbk volumes`, `sbk releases`, `sbk load`: what each must answer, summed over all releases one by one."""
from estimate import total
from loadvolume import MEASURES, LoadVolume
from releases import all_releases

KEYS = ("claim", "month", "ground", "cell", "material", "barge")


class Book:
    """A folder with its releases and load volumes worked out."""

    def __init__(self, folder):
        self.folder = folder
        self.releases = all_releases(folder)
        self.volumes = {load: LoadVolume(folder, load) for load in folder.loads}

    def counted(self, as_at):
        return [r for r in self.releases if r.counts and r.end <= as_at]

    def keys_of(self, release):
        """Everything a release is grouped by, but its claims."""
        load = self.folder.loads.get(release.load, {})
        return {"month": self.folder.clock.wall(release.end).strftime("%Y-%m"), "ground": release.ground,
                "cell": release.cell, "cell_ground": release.cell_ground, "material": load.get("material"),
                "barge": load.get("barge"), "tug": self.folder.trips[release.trip].get("tug"), "placed": release.placed}


def volumes(book, as_at, by=()):
    """rows[] of `sbk volumes --by`: a load that no method can value adds nothing and is in `unknown`."""
    groups = {}
    for release in book.counted(as_at):
        load = book.volumes.get(release.load)
        for claim in (load.claims() if load and "claim" in by else {None}):
            keys = dict(book.keys_of(release), claim=claim)
            groups.setdefault(tuple(keys[k] for k in by), []).append((release, load, claim))
    if not by:
        groups.setdefault((), [])
    return [dict(zip(by, key), **row(members, "claim" in by)) for key, members in groups.items()]


def row(members, by_claim):
    out = {"loads": len({r.load for r, _, _ in members if r.load}),
           "trips": len({r.trip for r, _, _ in members})}
    for measure in MEASURES:
        amounts, unknown = [], set()
        for release, load, claim in members:
            of_load = load.amounts(measure, load.counted_by()) if load else None
            if of_load is None:
                unknown.add(release.load)
                continue
            amounts += [e * release.share for c, e in of_load if not by_claim or c == claim]
        nothing_known = unknown and not amounts
        summed = total(amounts)
        out[measure] = None if nothing_known else summed.value
        if measure in ("hopper_m3", "in_situ_m3"):
            out[measure + "_u"] = None if nothing_known else summed.u
        out["unknown_" + measure] = len(unknown)
    return out


def releases(book, as_at):
    return [{"trip": r.trip, "release": r.release, "verdict": r.verdict,
             "distance_to_boundary_m": r.distance_m,
             "cell": r.cell}
            for r in sorted(book.counted(as_at), key=lambda r: (r.end, r.trip, r.release or ""))]


def load_answer(book, load):
    """counted_by and methods[] of `sbk load`. The _u of draughts are beyond the oracle: null."""
    volume, methods = book.volumes[load], []
    for name in volume.methods:
        entry = {"method": name}
        for measure in MEASURES:
            amounts = volume.amounts(measure, name)
            summed = None if amounts is None else total([e for _, e in amounts])
            entry[measure] = None if summed is None else summed.value
            if measure in ("hopper_m3", "in_situ_m3"):
                entry[measure + "_u"] = None if summed is None or name == "draughts" else summed.u
        methods.append(entry)
    return {"load": load, "counted_by": volume.counted_by(), "methods": methods}

# SPDX-License-Identifier: GPL-3.0-or-later
"""The stories of the scenario, and that the log hangs together. Each function yields (what, text, holds)."""
import re
import shlex
from collections import Counter

from .season import ZONE, local, minutes, when


def times(season):
    every = list(season.times())
    wrong = [w for w, t in every if when(t).utcoffset() != when(t).astimezone(ZONE).utcoffset()]
    yield "times whose offset is not the zone's", f"{len(wrong)} of {len(every)}", not wrong
    opened = season.opened_at()
    late = {w for w, t in every if when(t) > opened and not w.startswith("tide")}
    yield "times after the book was opened", ", ".join(sorted(late)) or "none", not late


def log(season):
    lost = [t["load"] for t in season.trips.values() if t["load"] not in season.loads]
    lost += [x for x in season.loads if x not in season.tallies]
    lost += [t for rows in season.tallies.values() for t in rows if t["station"] not in season.stations]
    yield "references that lead nowhere, loads without a tally", f"{len(lost)}", not lost
    yield "trips of one tug that overlap", f"{_overlaps(_spans(season.trips.values(), 'departed', 'returned'))}", \
        _overlaps(_spans(season.trips.values(), "departed", "returned")) == 0
    stations = _overlaps(_spans(season.stations.values(), "spuds_down", "spuds_up"))
    yield "stations that overlap", f"{stations}", stations == 0
    barges = 0
    for barge in season.barges:
        own = [x for x in season.loads.values() if x["barge"] == barge]
        trips = [t for t in season.trips.values() if season.loads[t["load"]]["barge"] == barge]
        barges += _overlaps(_spans(own, "loading_start", "loading_end") + _spans(trips, "departed", "returned"))
    yield "barges in two places at once", f"{barges}", barges == 0
    unsigned = [k for k, s in season.shifts.items() if not s["signed_by"]]
    early = [k for k, s in season.shifts.items() if s["signed_by"] and when(s["signed_at"]) < when(s["end"])]
    yield "shifts not signed in the folder", " ".join(unsigned), len(unsigned) == 3 and not early


def _spans(rows, start, end):
    return [(when(r[start]), when(r[end])) for r in rows if r[end]]


def _overlaps(spans):
    spans = sorted(spans)
    return sum(b[0] < a[1] for a, b in zip(spans, spans[1:]))


def built_in(season, ground):
    placed = [(r, ground.inside_by(r.place)) for r in season.releases if r.place]
    out = [(r, d) for r, d in placed if d < 0]
    yield "one release 80 m outside", ", ".join(f"{r.trip['trip']} {d:.1f} m" for r, d in out), \
        len(out) == 1 and abs(out[0][1] + 80) < 1
    inside = min(d for _, d in placed if d > 0)
    yield "all others inside by over 20 m and 2 u", f"least {inside:.0f} m", inside > 30
    may = {r.trip["trip"]: season.track(r.trip["trip"]) for r in season.releases
           if r.place and local(r.start).strftime("%Y-%m") == "2026-05"}
    open_by = [ground.inside_by(p) for r in season.releases for t, p in may.get(r.trip["trip"], [])
               if r.start <= t <= r.end]
    yield "tracks since May, inside by over 30 m with the doors open", \
        f"{sum(map(bool, may.values()))} of {len(may)}, least {min(open_by):.0f} m", all(may.values()) and min(open_by) > 30
    none = [r for r in season.releases if not r.place]
    mend = _mend(season, none[0].trip["trip"]) if len(none) == 1 else None
    yield "one release without a position, 400 m inside when mended", \
        f"{none[0].trip['trip']} {ground.inside_by(mend):.0f} m" if mend else "none", \
        bool(mend) and abs(ground.inside_by(mend) - 400) < 5
    midnight = [r.trip["trip"] for r in season.releases if local(r.start).date() < local(r.end).date()]
    yield "one release across midnight of 31 October", ", ".join(midnight), len(midnight) == 1 and \
        f"{local(next(r.end for r in season.releases if r.trip['trip'] == midnight[0])):%Y-%m-%d}" == "2025-11-01"
    shared = [k for k, c in season.by_claim.items() if len(c) > 1]
    yield "loads shared by two claims", " ".join(shared), len(shared) > 0
    mixed = [k for k, x in season.loads.items() if not x["material"]]
    yield "loads of two materials", " ".join(mixed), len(mixed) > 0
    january = [r for r in season.releases if f"{local(r.end):%Y-%m}" == "2026-01"]
    yield "January is nil", f"{len(january)} releases", not january
    cut = {f"{local(when(s['spuds_down'])):%m}" for s in season.stations.values() if s["claim"].startswith("OB")}
    yield "the cut is worked February to April", " ".join(sorted(cut)), cut == {"02", "03", "04"}


def _mend(season, trip):
    for line in season.lines("steps.txt"):
        found = re.search(rf"trip {trip} lat=(\S+) lon=(\S+) position_u_m=60", line)
        if found:
            return float(found.group(1)), float(found.group(2))
    return None


def barges(season):
    hung = [r for r in season.tables["releases"] if r["left_m3"]]
    after = [x for x in season.loads.values() if x["left_before_m3"]]
    same = len(hung) == len(after) == 1 and float(hung[0]["left_m3"]) == float(after[0]["left_before_m3"])
    load = season.loads[season.trips[hung[0]["trip"]]["load"]]
    yield "a hopper hung up, a quarter came back into her next load", \
        f"{hung[0]['trip']} {hung[0]['left_m3']} m3, {after[0]['load']}", \
        same and hung[0]["share"] == "0.75" and load["barge"] == after[0]["barge"]
    back = [t for t in season.trips.values() if t["outcome"] == "returned_loaded"]
    again = [r.trip["trip"] for r in season.releases if back and r.trip["load"] == back[0]["load"]]
    yield "a barge turned back by the sea, released later", f"{back[0]['trip']} then {' '.join(again)}", \
        len(back) == 1 and len(again) == 1 and float(back[0]["wave_height_m"]) > 1.8 and not back[0]["release_end"]
    two = Counter(r["trip"] for r in season.tables["releases"])
    yield "a load released in two cells", " ".join(t for t, n in two.items() if n > 1), max(two.values()) == 2
    night = next(s for s in season.shifts.values() if s["start"] == "2025-09-27T18:00+12:00")
    rock = [x for x in season.loads.values() if x["material"] == "broken rock" and x["loading_end"]
            and when(x["loading_start"]) < when(night["end"]) and when(x["loading_end"]) > when(night["start"])]
    gap = when("2025-09-28T03:00+13:00")
    dug = any(when(x["loading_start"]) < gap < when(x["loading_end"]) for x in rock)
    yield "the night of 27 September has 11 hours and digs rock over the change", \
        f"{minutes(when(night['start']), when(night['end'])) / 60:g} h, {' '.join(x['load'] for x in rock)}", \
        minutes(when(night["start"]), when(night["end"])) == 660 and dug
    full = [k for k, x in season.loads.items() if x["loading_end"] and not any(
        t["load"] == k for t in season.trips.values())]
    filling = [k for k, x in season.loads.items() if not x["loading_end"]]
    yield "on 30 May one barge is full and one is being filled", f"{' '.join(full)}, {' '.join(filling)}", \
        len(full) == len(filling) == 1


def steps(season):
    lines = season.lines("steps.txt")
    heads = [line.partition(" | ")[0].split(" ") for line in lines]
    words = [shlex.split(line.partition(" | ")[2]) for line in lines]
    at = [when(h[0]) for h in heads]
    newest = max(when(t) for w, t in season.times() if not w.startswith("tide"))
    yield "steps, in order, after the newest row and before the book is opened", f"{len(lines)}", \
        at == sorted(at) and newest < at[0] and at[-1] < season.opened_at()
    people = {p["name"] for p in season.tables["people"]}
    wrong = [h for h, w in zip(heads, words) if h[1] not in people or w[1] != "BOOK"]
    known = {"trip": season.trips, "load": season.loads, "shift": season.shifts}
    wrong += [w for w in words if w[0] == "log" and w[2] in known and w[3] not in known[w[2]]]
    yield "steps by nobody or on nothing", f"{len(wrong)}", not wrong
    kinds = Counter(w[0] for w in words)
    yield "kinds of step", ", ".join(f"{k} {n}" for k, n in kinds.items()), \
        kinds["sign"] == 2 and kinds["undo"] >= 1 and kinds["redo"] == 1

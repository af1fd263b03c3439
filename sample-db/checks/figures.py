# SPDX-License-Identifier: GPL-3.0-or-later
"""The numbers of the scenario. Each function yields (what, value as text, holds)."""
import math
from collections import Counter
from datetime import timedelta

from . import land
from .season import local, minutes, when

TRIPS = {"2025-08": 58, "2025-09": 66, "2025-10": 71, "2025-11": 73, "2025-12": 52, "2026-01": 0, "2026-02": 70,
         "2026-03": 72, "2026-04": 68, "2026-05": 70}
AS_PLANNED_M3 = 225900


def months(season):
    trips, m3 = Counter(), Counter()
    for label in {r.trip["trip"] for r in season.releases}:
        last = max(r.end for r in season.releases if r.trip["trip"] == label)
        trips[f"{local(last):%Y-%m}"] += 1
    for r in season.releases:
        m3[f"{local(r.end):%Y-%m}"] += r.in_situ_m3
    for month, count in TRIPS.items():
        yield f"{month}: trips, in situ", f"{trips[month]:3} {m3[month]:9,.0f} m3 {m3[month] / 260:6.1f} %", \
            trips[month] == count and m3[month] < 26000
    yield "the fullest month is 3 % under its 26 000", f"{max(m3.values()) / 26000:.4f}", \
        abs(max(m3.values()) / 26000 - 0.97) < 0.001


def volumes(season):
    released = {r.trip["load"] for r in season.releases}
    hopper = [season.hopper[x] for x in released]
    whole = sum(r.in_situ_m3 for r in season.releases)
    in_situ = [sum(season.by_claim[x].values()) for x in released]
    yield "in situ released by 30 May", f"{whole:,.0f} m3", abs(whole - 208000) < 500
    yield "mean hopper", f"{sum(hopper) / len(hopper):.1f} m3", abs(sum(hopper) / len(hopper) - 431) < 1
    yield "mean in situ", f"{sum(in_situ) / len(in_situ):.1f} m3", abs(sum(in_situ) / len(in_situ) - 347) < 1
    full = [season.hopper[x] / season.barges[season.loads[x]["barge"]]["capacity_m3"] for x in released]
    yield "how full the barges are", f"{sum(full) / len(full):.3f}", abs(sum(full) / len(full) - 0.88) < 0.005


def limits(season):
    ends = season.releases
    worst = max(sum(x.in_situ_m3 for x in ends if r.end - timedelta(days=365) < x.end <= r.end) for r in ends)
    yield "most in 12 months, of 215 000", f"{worst:,.0f} m3", worst < 215000
    fb2 = sum(r.share * season.by_claim[r.trip["load"]].get("FB2", 0) for r in ends)
    yield "from FB2, of 20 000", f"{fb2:,.0f} m3", 18000 < fb2 < 20000
    days = Counter(d for _, d in {(r.trip["trip"], local(r.end).date()) for r in ends})
    yield "most trips in a day, of 6", f"{max(days.values())}", max(days.values()) <= 6
    cells = Counter()
    for r in ends:
        cells[r.cell] += r.in_situ_m3
    low, high = min(cells.values()), max(cells.values())
    yield "12 cells, least and most of 36 000", f"{len(cells)}: {low:,.0f} to {high:,.0f} m3", \
        len(cells) == 12 and 12000 < low < 16500 < 19000 < high < 25000
    yield "highest waves at a release", f"{max(r.wave for r in ends)} m", max(r.wave for r in ends) <= 1.8
    night = [r for r in ends for at in (local(r.start), local(r.end))
             if "09-01" <= f"{at:%m-%d}" <= "10-15" and not 6 <= at.hour < 20]
    yield "releases at night in the spawning season", f"{len(night)}", not night


def pace(season):
    trips = [t for t in season.trips.values() if t["outcome"] != "returned_loaded"]
    out = [minutes(when(t["departed"]), when(t["returned"])) for t in trips]
    yield "mean round trip", f"{sum(out) / len(out):.1f} min", abs(sum(out) / len(out) - 184) < 1.5
    lost = Counter()
    for d in season.tables["delays"]:
        if d["cause"] in ("weather", "survey", "turbidity hold", "not rostered") or "breakdown" in d["cause"]:
            lost[d["shift"]] += minutes(when(d["start"]), when(d["end"]))
    count = Counter()
    for t in trips:
        at = when(t["departed"])
        count[next(k for k, s in season.shifts.items() if when(s["start"]) <= at < (when(s["end"]) or at.max.replace(
            tzinfo=at.tzinfo)))] += 1
    nights = {k for k, s in season.shifts.items() if local(when(s["start"])).hour == 18}
    kept = [k for k in season.shifts if lost[k] < 120 and count[k] and k not in nights]
    mean = sum(count[k] for k in kept) / len(kept)
    yield "trips a day shift that lost under two hours", f"{mean:.2f} in {len(kept)} shifts", abs(mean - 3.2) < 0.15
    yield "trips a shift, all", f"{len(trips) / len(season.shifts):.2f} in {len(season.shifts)}", True
    yield "nights worked", f"{len(nights)}", len(nights) > 10
    yield "stations", f"{len(season.stations)}", 900 < len(season.stations) < 1100
    causes = Counter()
    for d in season.tables["delays"]:
        causes[d["cause"]] += minutes(when(d["start"]), when(d["end"])) / 60
    yield "causes of delay, hours", ", ".join(f"{c} {h:.0f}" for c, h in causes.most_common(8)), len(causes) > 15


def digging(season):
    """Digging is loading with the spuds down, less delays; with the delays it must close to the shift."""
    off, hours, buckets = 0, 0.0, Counter()
    loads = [(when(x["loading_start"]), when(x["loading_end"])) for x in season.loads.values()]
    stations = [(when(s["spuds_down"]), when(s["spuds_up"])) for s in season.stations.values()]
    delays = {}
    for d in season.tables["delays"]:
        delays.setdefault(d["shift"], []).append((when(d["start"]), when(d["end"])))
    for label, shift in season.shifts.items():
        if not shift["end"]:
            continue
        start, end = when(shift["start"]), when(shift["end"])
        busy = _marks(start, end, loads) & _marks(start, end, stations)
        idle = [_marks(start, end, [d]) for d in delays.get(label, [])]
        all_idle = set().union(*idle)
        off += sum(map(len, idle)) != len(all_idle) or len(busy | all_idle) != round(minutes(start, end))
        hours += len(busy - all_idle) / 60
    for row in season.tables["tallies"]:
        buckets[row["bucket"]] += int(row["count"])
    yield "shifts whose digging and delays do not close", f"{off}", off == 0
    yield "buckets an hour of digging", f"{sum(buckets.values()) / hours:.1f}", 50 < sum(buckets.values()) / hours < 60


def _marks(start, end, spans):
    """Minutes of the shift that lie in some span; an open span runs on."""
    found, length = set(), round(minutes(start, end))
    for a, b in spans:
        if a < end and (b is None or b > start):
            first = max(0, round(minutes(start, a)))
            last = length if b is None else min(length, round(minutes(start, b)))
            found.update(range(first, last))
    return found


def places(season, ground):
    claims = season.json("claims.geojson")["features"]
    planned = sum(f["properties"]["planned_in_situ_m3"] for f in claims)
    areas = [land.area(f["geometry"]["coordinates"][0]) for f in claims]
    yield "planned, with batters and over-dredge", f"{planned:,.0f} m3", planned == AS_PLANNED_M3
    yield "mean claim", f"{sum(areas) / len(areas):,.0f} m2 of {len(areas)}", abs(sum(areas) / 11 - 8200) < 100
    basin = [p for f in claims if f["properties"]["claim"][:2] == "FB" for p in f["geometry"]["coordinates"][0][:-1]]
    middle = tuple(sum(p[i] for p in basin) / len(basin) for i in (0, 1))
    haul = math.dist(middle, ground.centre()) / 1.000182 / 1852      # grid metres to metres on the ellipsoid
    yield "haul from the basin", f"{haul:.2f} nm", abs(haul - 7.4) < 0.02
    rings = {f["properties"]["claim"]: f["geometry"]["coordinates"][0] for f in claims}
    out = [s for s in season.stations.values()
           if not land.contains(rings[s["claim"]], (float(s["easting_m"]), float(s["northing_m"])))]
    yield "stations outside their claim", f"{len(out)}", not out
    wrong = [r for r in season.releases if r.place and not land.contains(ground.cells[r.cell], land.utm60s(*r.place))]
    yield "releases not in the cell that was logged", f"{len(wrong)}", len(wrong) == 1


def forecast(season):
    done = sum(r.in_situ_m3 for r in season.releases)
    rate = sum(r.in_situ_m3 for r in season.releases if r.end > season.opened_at() - timedelta(days=90)) / 90
    for what, left, day in (("12-month limit met", 215000 - done, 9), ("target reached", AS_PLANNED_M3 - done, 22)):
        at = local(season.opened_at() + timedelta(days=left / rate))
        yield f"{what} at {rate:.0f} m3 a day", f"{at:%d %B %Y}", at.month == 6 and abs(at.day - day) <= 2

# SPDX-License-Identifier: GPL-3.0-or-later
"""shifts.csv, stations.csv, delays.csv, crew.csv, handovers.csv, soundings.csv."""
from . import people, sea
from .labels import metres, text
from .lost_time import REMARKS


def write_shifts(folder, season, waves, unsigned, dice):
    rows = []
    for shift in season.shifts:
        plan, spread = shift.plan, shift.spread
        running, skipper = shift is season.running, people.skipper(plan)
        signed = shift not in unsigned
        names = ";".join(n for n, _ in people.crew(plan))
        rows.append([shift.label, text(plan.start), "" if running else text(plan.end), spread.dredger, spread.tow,
                     skipper, names, people.WEATHERS[waves.weather(shift)], f"{waves.height(shift, plan.start):.1f}",
                     skipper if signed else "", text(plan.end + dice.whole(4, 25)) if signed else ""])
    folder.csv("shifts.csv", "shift start end dredger tug skipper crew weather wave_height_m signed_by signed_at", rows)


def write_stations(folder, season, dice):
    rows = []
    for s in season.stations:
        at = s.set_up
        s.easting, s.northing = at.easting + dice.bell(0.2), at.northing + dice.bell(0.2)
        heading = (at.heading + dice.bell(0.4)) % 360
        rows.append([s.label, s.shift.label, at.claim, f"{s.easting:.1f}", f"{s.northing:.1f}", f"{heading:.1f}",
                     text(s.down), text(s.up)])
    folder.csv("stations.csv", "station shift claim easting_m northing_m heading_deg spuds_down spuds_up", rows)


def write_delays(folder, season, dice):
    rows = []
    for shift in season.shifts:
        for start, end, cause in shift.delays:
            remark = dice.of(REMARKS[cause]) if cause in REMARKS and end - start > 12 else ""
            rows.append([shift.label, text(start), text(end), cause, remark])
    folder.csv("delays.csv", "shift start end cause remarks", rows)


def write_crew(folder, season):
    rows = []
    for shift in season.shifts:
        off = "" if shift is season.running else text(shift.plan.end)
        rows += [[shift.label, n, r, text(shift.plan.start), off] for n, r in people.crew(shift.plan)]
    folder.csv("crew.csv", "shift name role on off", rows)


def write_handovers(folder, season, dice):
    """Where one shift follows straight on another."""
    rows = []
    for shift, after in zip(season.shifts, season.shifts[1:]):
        if shift.plan.end != after.plan.start:
            continue
        end = shift.plan.end
        station = [s for s in season.stations if s.down < end and (s.up is None or s.up >= end)]
        load = [x for x in season.loads if x.start < end and x.end and x.end > end]
        count = sum(n for (_, s), n in load[0].tallies.items() if s.plan.end <= end) if load else 0
        holds = "night: nothing is released from 20:00 to 06:00" if "consent hold" in after.plan.tags else ""
        rows.append([shift.label, after.label, station[0].label if station else "",
                     load[0].barge.name if load else "", str(count) if load else "", holds,
                     dice.of(["carry on astern in the lane", "two more steps, then the next lane",
                              "check the bed before the next step"]),
                     dice.of(["", "", "port spud winch slow", "deck light out aft"]),
                     people.skipper(shift.plan), people.skipper(after.plan)])
    folder.csv("handovers.csv", "shift to_shift station barge buckets_in holds next_move defects said_by taken_by", rows)


def write_soundings(folder, season, dice):
    """Three points of every fifth station before the pontoon steps; every other set by lead and tide."""
    rows = []
    for i, s in enumerate(season.stations):
        if i % 5 or s.up is None:
            continue
        east, north = s.set_up.dug
        for k in range(3):
            minute, off = s.up - 6 + 2 * k, (k - 1) * 5.0
            level = -9.6 - 0.14 + dice.bell(0.10)
            tide, depth = sea.tide(minute), sea.tide(minute) - level
            lead = i % 2 == 0
            rows.append([s.label, text(minute), f"{east + off * 0.8 + dice.bell(0.5):.1f}",
                         f"{north + off * 0.5 + dice.bell(0.5):.1f}", "" if lead else metres(level),
                         metres(depth, 1) if lead else "", metres(tide) if lead else "",
                         people.skipper(s.shift.plan), "0.10" if lead else "0.15"])
    folder.csv("soundings.csv", "station time easting_m northing_m level_m depth_m tide_m by u_m", rows)

# SPDX-License-Identifier: GPL-3.0-or-later
"""events.csv and steps.txt of the demo: what happened beside the digging, and what was put right afterwards."""
from datetime import date

from . import clock, people
from .labels import readings, text
from .write_loads import story_of

COLUMNS = "kind from to condition place what peak cause told action closed_by"


def _at(day, hour, minute=0):
    return text(clock.instant(date.fromisoformat(day), hour, minute))


def _told(trip):
    return text(trip.returned + 55)


# Condition, site, (passed, all clear), greatest statistic, what, cause, told, action: as the loggers' readings say
# (water.py); sample-db/check works them out of the readings again.
TRIGGERS = [
    ("20.1", "R2", ("2025-11-19", 11, 15), ("2025-11-19", 19, 0), 13.0, "tier 1 passed",
     "digging along the edge of the basin on the ebb", ("2025-11-19", 11, 50), "checked; nothing changed"),
    ("20.1", "R1", ("2026-03-03", 14, 30), ("2026-03-03", 22, 30), 11.6, "tier 1 passed",
     "a lens of silt in the cut", ("2026-03-03", 15, 10), "checked; through the lens by 16:00"),
    ("20.4", "R1", ("2026-03-17", 23, 0), ("2026-03-18", 13, 15), 42.5, "tier 2 passed in a storm, by the reading alone",
     "the control rose as well: the sea, not the works", ("2026-03-18", 8, 30), "digging held until the all-clear"),
    ("20.1", "R1", ("2026-04-21", 21, 15), ("2026-04-22", 8, 15), 19.6, "tier 1 passed, control clear",
     "a batter of the cut slumped on the night ebb", ("2026-04-21", 22, 5), "checked from the tug; nobody at work"),
    ("20.2", "R1", ("2026-04-22", 1, 0), ("2026-04-22", 10, 30), 18.8, "tier 2 passed, control clear",
     "a batter of the cut slumped on the night ebb", ("2026-04-22", 2, 20),
     "no digging before the all-clear, then from the lee side of the cut")]


def _passed():
    return [["trigger", _at(*passed), _at(*clear), condition, site, what, f"{peak:.1f}", cause,
             "Marram Coast Council " + _at(*told), action, "Esi"]
            for condition, site, passed, clear, peak, what, cause, told, action in TRIGGERS]


def write_events(folder, season):
    by = {story_of(t): t for t in season.trips if story_of(t)}
    by["turned back"] = next(t for t in season.trips if t.outcome == "returned_loaded")
    out, hung, back = by["outside"], by["hung up"], by["turned back"]
    rows = [
        ["complaint", _at("2025-10-30", 22, 40), _at("2025-10-30", 23, 30), "", "Ferry Basin", "noise at night", "",
         "bucket on the rail of the barge", "harbour office " + _at("2025-10-31", 8), "rubber put on the rail", "Esi"],
        ["incident", text(hung.release_start), text(hung.returned), "", "Gannet Patch",
         f"{hung.label}: hopper hung up and a quarter came back", "", "clay on the after end",
         "Marram Coast Council " + _told(hung), "jetted at the wharf and carried in the next load", "Esi"],
        ["breach", text(out.release_start), text(out.release_end), "11", "Gannet Patch",
         f"{out.label}: released 80 m outside the ground", "80", "set down by the ebb",
         "Marram Coast Council " + _told(out), "approach from the east on the ebb from now on", "Esi"],
        ["incident", _at("2026-02-10", 3), _at("2026-02-10", 12), "", "R2", "logger gave one value for nine hours",
         "", "wiper stuck", "", "logger changed", "Esi"],
        ["near_miss", text(back.departed), text(back.returned), "10", "Outer bar",
         f"{back.label}: turned back loaded by the sea", "2.3", "swell rose after casting off", "", "load kept on board",
         "Esi"],
        *_passed(),
    ]
    folder.csv("events.csv", COLUMNS, sorted(rows, key=lambda row: row[1]))


class Steps:
    """Lines of steps.txt: TIME PERSON | arguments of sbk, with BOOK for the file."""

    def __init__(self, start):
        self.now, self.lines = start, []

    def add(self, person, command, minutes=1):
        self.lines.append(f"{text(self.now)} {person} | {command}")
        self.now += minutes

    def log(self, person, kind, label, values, why="", minutes=1):
        given = " ".join(f'{k}="{v}"' if " " in str(v) else f"{k}={v}" for k, v in values.items())
        self.add(person, f"log BOOK {kind} {label} {given}" + (f' --why "{why}"' if why else ""), minutes)


def write_steps(folder, season, unsigned, mend):
    day = clock.wall(season.last_minute())[0]
    steps = Steps(clock.instant(day, 17, 31))
    _sign(steps, season, unsigned)
    _mend(steps, season, mend)
    _late(steps, season)
    _take_back(steps, season)
    _decide(steps)
    folder.text("steps.txt", "\n".join(steps.lines) + "\n")


def _sign(steps, season, unsigned):
    for shift in unsigned:
        if shift is not season.running:
            name = "Gwen" if shift.plan.night else "Bram"
            steps.add(name, f"sign BOOK {shift.label} --by {name}")


def _mend(steps, season, mend):
    lost = next(t for t in season.trips if story_of(t) == "no position")
    steps.log("Esi", "trip", lost.label, {"lat": f"{mend[0]:.5f}", "lon": f"{mend[1]:.5f}", "position_u_m": 60,
                                         "position_from": "deck log"}, "receiver off, from the deck log", 2)
    steps.log("Esi", "trip", lost.label, {"source": "deck log"}, "says where the position is from")
    load = _signed_load(season)
    dips = list(load.dips)
    dips[2] = round(dips[2] + 0.01, 2)
    steps.log("Bram", "load", load.label, {"dips_m": readings(dips)},
              "third dip copied wrong, the ticket is a centimetre deeper")
    wind = next(s for s in reversed(season.shifts) if s.trips and s is not season.running)
    steps.log("Bram", "shift", wind.label, {"weather": "overcast, shower at noon"}, "left out of the sheet")


def _signed_load(season):
    """A load of about three days before the end."""
    until = season.last_minute() - 3 * clock.DAY
    return [x for x in season.loads if x.end and x.end < until][-1]


def _late(steps, season):
    station = [s for s in season.stations if s.up and s.up < season.last_minute() - 4 * clock.DAY][-1]
    steps.log("Bram", "find", "FD-001", {
        "time": text(station.down + 12), "station": station.label, "place": "in the bucket", "kind": "debris",
        "told": "harbour office", "landed_to": "Marram wharf skip"}, "late: was on a loose sheet", 2)
    steps.log("Esi", "event", "EV-101", {
        "kind": "complaint", "from": _at("2026-05-24", 9, 15), "to": _at("2026-05-24", 9, 40),
        "place": "Ferry Basin", "what": "smell of diesel at the ferry steps", "cause": "none found",
        "told": "harbour office", "closed_by": "Esi"}, "late: the letter came today")


def _take_back(steps, season):
    trip = season.trips[-1]
    master = people.tug_master(trip.shift.plan)
    steps.log(master, "trip", trip.label, {"remarks": "slight set to the south"})
    steps.log(master, "trip", trip.label, {"tow_line_m": 1100})
    steps.add(master, "undo BOOK")
    steps.log(master, "trip", trip.label, {"tow_line_m": 110})
    steps.add(master, "undo BOOK")
    steps.add(master, "redo BOOK")
    steps.log("Bram", "shift", season.running.label, {"weather": "fine, light airs, swell easing"})


def _decide(steps):
    steps.log("Ana", "factor", "FA-101", {
        "from": "2026-06-01", "material": "silty sand", "factor": "bulking", "value": 1.309, "u": 0.025, "by": "Ana",
        "why": "two claims surveyed: barges 6 % over the bed"}, "waits for the council's letter", 2)
    steps.log("Esi", "observation", "OB-901", {
        "time": _at("2026-05-30", 17, 45), "place": "Gannet Patch", "wind_kn": 12, "wave_height_m": 1.0,
        "period_s": 7.8, "visibility": "good", "source": "buoy", "by": "Esi"})
    steps.log("Ana", "event", "EV-101", {"action": "fuel line of the pontoon checked, dry"})
    steps.log("Esi", "event", "EV-102", {
        "kind": "near_miss", "from": _at("2026-05-29", 14, 5), "place": "Ferry Basin",
        "what": "kayak inside the spread", "told": "harbour office"}, "late: told by the ferry master")

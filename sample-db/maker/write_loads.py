# SPDX-License-Identifier: GPL-3.0-or-later
"""loads.csv, tallies.csv, trips.csv, releases.csv, light_readings.csv."""
from . import clock, people, places
from .filling import draughts
from .labels import readings, text

TRIP_COLUMNS = ("trip load tug departed release_start release_end returned ground cell lat lon position_u_m "
                "position_from wave_height_m outcome tug_master tow receiver_on source remarks")
STORIES = {"hung up": 1, "outside": 0, "two cells": 0, "no position": 1}       # tag of a shift: which of its trips
STORY_REMARKS = {"outside": "set down by the ebb while the doors were opening",
                 "no position": "receiver off, see deck log", "hung up": "hung up on the after end",
                 "two cells": "stopped half way, opened again in the next cell"}


def write_loads(folder, season, dice):
    rows = []
    for i, load in enumerate(season.loads):
        kinds = load.materials()
        light = full = rho_light = rho_full = ""
        if i % 4 == 1 and load.end and not load.left_before and len(kinds) == 1:
            a, b, c, d = draughts(load, dice)
            light, full, rho_light, rho_full = readings(a), readings(b), f"{c:.4f}", f"{d:.4f}"
        rows.append([load.label, load.barge.name, kinds[0] if len(kinds) == 1 else "", text(load.start),
                     text(load.end), readings(load.dips), light, full, rho_light, rho_full,
                     f"{load.left_before:.0f}" if load.left_before else ""])
    folder.csv("loads.csv", "load barge material loading_start loading_end dips_m light_draughts_m full_draughts_m "
               "light_density_t_m3 dock_density_t_m3 left_before_m3", rows)


def write_tallies(folder, season):
    rows = []
    for load in season.loads:
        mixed = len(load.materials()) > 1
        for (station, shift), count in load.tallies.items():
            rows.append([load.label, station.label, station.set_up.bucket, str(count),
                         "" if shift is station.shift else shift.label, station.set_up.material if mixed else ""])
    folder.csv("tallies.csv", "load station bucket count shift material", rows)


def story_of(trip):
    """The story that a trip carries, or "": the tag of its shift, on one of its trips."""
    return next((t for t in trip.shift.plan.tags if STORIES.get(t) == trip.order), "")


def write_trips(folder, season, found_places, waves):
    trips, releases = [], []
    for trip in season.trips:
        story = story_of(trip)
        openings = trip.openings = found_places.openings(trip, story)
        first = openings[0] if openings else None
        own = first if story not in ("hung up", "two cells") else None      # else releases.csv has them
        trip.opening = own
        lat, lon, u, known = _position(own)
        remarks = STORY_REMARKS.get(story, "swell on the bar, turned back" if not openings else "")
        trips.append([trip.label, trip.load.label, trip.shift.spread.tow, text(trip.departed),
                      text(own and own.start), text(own and own.end), text(trip.returned), places.GROUND,
                      own.cell if own else "", lat, lon, u, known, f"{waves.of_trip(trip):.1f}",
                      trip.outcome, people.tug_master(trip.shift.plan), "astern", "barge" if own and known else "",
                      "tug's log", remarks])
        if first and own is None:
            releases += [_release(f"R-{len(releases) + i:04}", trip, o, story) for i, o in enumerate(openings, 1)]
    folder.csv("trips.csv", TRIP_COLUMNS, trips)
    if releases:
        folder.csv("releases.csv", "release trip doors_open empty doors_shut ground cell lat lon position_u_m "
                   "position_from share emptied left_m3 why", releases)


def _position(opening):
    if opening is None or opening.lat is None:
        return "", "", "", ""
    return f"{opening.lat:.6f}", f"{opening.lon:.6f}", "5", "receiver"


def _release(label, trip, opening, story):
    lat, lon, u, known = _position(opening)
    hung = story == "hung up"
    last = opening.share == 0.4
    left = f"{trip.load.hopper_m3 * 0.25:.0f}" if hung else ""
    return [label, trip.label, text(opening.start), text(opening.end), text(opening.end + 3), places.GROUND,
            opening.cell, lat, lon, u, known, "" if last else f"{opening.share:g}", "no" if hung else "yes", left,
            STORY_REMARKS[story]]


def write_light_readings(folder, season, dice):
    """Both barges light, on Monday mornings."""
    rows = []
    for shift in season.shifts:
        plan = shift.plan
        if clock.wall(plan.start)[0].weekday() or plan.night:
            continue
        for i, barge in enumerate(shift.spread.barges):
            trim, at = dice.between(-0.1, 0.1), plan.start + 15 + 190 * i
            marks = [round(barge.light_m + e * trim + dice.bell(0.012), 2) for e in (-0.5, -0.5, 0, 0, 0.5, 0.5)]
            rows.append([barge.name, text(at), readings(marks), f"{1.0235 + dice.between(0, 0.002):.4f}",
                         str(dice.whole(0, 6)), people.tug_master(plan)])
    folder.csv("light_readings.csv", "barge time draughts_m density_t_m3 hopper_water_m3 by", rows)

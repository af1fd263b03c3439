# SPDX-License-Identifier: GPL-3.0-or-later
"""The demo season and seasons of any size, from works to files."""
from datetime import date

from . import clock, consents, lane, places, roster
from .dice import Dice
from .labels import Season
from .plant import MARRAM, spreads
from .release_places import Places
from .sea import Sea
from .text_files import Folder
from .works import Works
from .write_about import (write_factors, write_harbour, write_observations, write_places, write_plant, write_tide)
from .write_duties import write_duties
from .write_events import write_events, write_steps
from .write_loads import write_light_readings, write_loads, write_tallies, write_trips
from .write_shifts import write_crew, write_delays, write_handovers, write_shifts, write_soundings, write_stations
from .write_surveys import write_surveys
from .write_tracks import write_tracks
from .write_water import write_water

TRIPS_A_YEAR, LONGEST_YEARS, MOST_A_SPREAD = 600, 20, 1300


def _write_works(folder, season, ground, waves, unsigned, dice):
    found_places = Places(ground, dice.child(11))
    write_shifts(folder, season, waves, unsigned, dice.child(12))
    write_stations(folder, season, dice.child(13))
    write_delays(folder, season, dice.child(14))
    write_loads(folder, season, dice.child(15))
    write_tallies(folder, season)
    write_trips(folder, season, found_places, waves)
    return found_places


def marram(path, seed=25117):
    dice, folder, ground = Dice(seed), Folder(path), places.GroundShape()
    lanes = lane.MarramLanes(dice.child(2))
    season = Season([Works(MARRAM, roster.marram(dice.child(1)), lanes, dice.child(3)).run()])
    waves = Sea(dice.child(4))
    write_harbour(folder, [("2025-26", "2025-08-04", "2026-07-01")])
    write_plant(folder, [MARRAM])
    write_factors(folder)
    write_places(folder, ground)
    folder.json("consents.json", consents.marram(ground.wreck()))
    unsigned = season.shifts[-3:]
    found_places = _write_works(folder, season, ground, waves, unsigned, dice)
    write_crew(folder, season)
    write_handovers(folder, season, dice.child(16))
    write_soundings(folder, season, dice.child(17))
    write_light_readings(folder, season, dice.child(18))
    write_tide(folder, clock.instant(date(2025, 8, 3)), clock.instant(date(2026, 7, 1)))
    write_observations(folder, season, waves)
    write_surveys(folder, season, ground)
    write_water(folder, season, dice.child(19))
    write_tracks(folder, season, ground, clock.instant(date(2026, 5, 1)))
    write_duties(folder)
    write_events(folder, season)
    write_steps(folder, season, unsigned, found_places.mend)
    return season


def long_season(path, seed, trips, mixed=False, first=date(2010, 8, 2)):
    """`trips` releases by as many spreads as it takes, at most 20 years; forty limits, or conditions of mixed kinds."""
    dice, folder, ground = Dice(seed), Folder(path), places.GroundShape()
    years = max(1, min(LONGEST_YEARS, -(-trips // TRIPS_A_YEAR)))
    fleet = spreads(-(-trips // (years * MOST_A_SPREAD)))
    works = []
    for i, spread in enumerate(fleet):
        share = trips // len(fleet) + (1 if i < trips % len(fleet) else 0)
        own = dice.child(100 + i)
        months = roster.season(own, spread, first, years, share)
        works.append(Works(spread, months, lane.SeasonLanes(own.child(2), i * 2), own.child(3)).run())
    season = Season(works)
    write_harbour(folder, [("all years", first.isoformat(), first.replace(year=first.year + years).isoformat())])
    write_plant(folder, fleet)
    write_places(folder, ground)
    m3_a_year = 347 * trips / years
    forty = consents.mixed_season(first, years, m3_a_year, ground.wreck()) if mixed else \
        consents.season(first, years, m3_a_year)
    folder.json("consents.json", forty)
    _write_works(folder, season, ground, Sea(dice.child(4)), [], dice)
    return season

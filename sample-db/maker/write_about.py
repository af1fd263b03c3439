# SPDX-License-Identifier: GPL-3.0-or-later
"""harbour.json, people.csv, plant.json, materials.csv, factors.csv, claims.geojson, grounds.geojson, tide.csv,
observations.csv."""
from . import people, places, sea
from .labels import text
from .plant import (BULKING_U, FILL_FROM, FIRST_BULKING, FIRST_FILL, MATERIALS, SHELLY_FROM, WATER, plant_json)
from .text_files import collection


def write_harbour(folder, campaigns):
    folder.json("harbour.json", {
        "name": "Marram Harbour", "authority": "Marram Coast Council",
        "works": "Deepening of Ferry Basin and the Outer Bar Cut", "epsg": places.EPSG, "zone": "Pacific/Auckland",
        "water_density_t_m3": WATER, "vertical_datum": "Marram chart datum",
        "campaigns": [{"name": n, "from": a, "to": b} for n, a, b in campaigns]})
    folder.csv("people.csv", "name role", [list(p) for p in people.PEOPLE])


def write_plant(folder, fleet):
    folder.json("plant.json", plant_json(fleet))
    rows = [[m.name, f"{m.situ}", f"{m.grain}", f"{FIRST_BULKING.get(m.name, m.bulking)}", f"{BULKING_U[m.name]}",
             f"{FIRST_FILL.get(m.name, m.fill)}", "0.04"] for m in MATERIALS.values()]
    folder.csv("materials.csv", "material situ_density_t_m3 grain_density_t_m3 bulking_factor bulking_factor_u "
               "fill_factor fill_factor_u", rows)


def write_factors(folder):
    shelly, silty = MATERIALS["shelly sand"], MATERIALS["silty sand"]
    folder.csv("factors.csv", "from material bucket factor value u by why accepted", [
        [FILL_FROM, "silty sand", "General", "fill", f"{silty.fill}", "0.03", "Ana",
         "buckets of 110 loads against their dips", ""],
        [SHELLY_FROM, "shelly sand", "", "bulking", f"{shelly.bulking}", "0.03", "Ana",
         "dips and draughts of the first loads of the cut", "2026-02-13"]])


def write_places(folder, ground):
    claims = [({"claim": c.claim, "name": c.name, "target_level_m": places.TARGET, "allowance_m": places.ALLOWANCE,
                "batter_h_per_v": places.BATTER, "material": c.material, "planned_in_situ_m3": c.planned_m3,
                "planned_start": c.start, "planned_finish": c.finish}, c.ring()) for c in places.CLAIMS]
    folder.json("claims.geojson", collection(claims, places.EPSG))
    name = places.GROUND
    shapes = [({"ground": name, "kind": "ground"}, ground.ring())]
    shapes += [({"ground": name, "cell": c, "kind": "cell"}, ground.cell_ring(c)) for c in ground.cells]
    shapes.append(({"ground": name, "cell": "wreck", "kind": "exclusion"}, ground.wreck_ring()))
    folder.json("grounds.geojson", collection(shapes))


def write_tide(folder, first, last):
    folder.csv("tide.csv", "time level_m", [[text(t), f"{h:.2f}"] for t, h in sea.high_and_low(first, last)])


def write_observations(folder, season, waves):
    rows = []
    for shift in season.shifts:
        for minute, wind, wave, period, visibility in waves.observations(shift):
            rows.append([text(minute), places.GROUND, str(wind), f"{wave:.1f}", f"{period:.1f}", visibility, "buoy",
                         people.tug_master(shift.plan)])
    folder.csv("observations.csv", "time place wind_kn wave_height_m period_s visibility source by", rows)

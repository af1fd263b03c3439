# SPDX-License-Identifier: GPL-3.0-or-later
"""turbidity/: the loggers, their readings on their own clocks (UTC), what was done to them, what was overruled."""
from . import clock, water
from .labels import text
from .places import BASIN_FRAME, CUT_FRAME

# site, role, place, serial before and after the workshop
LOGGERS = [("C1", "control", CUT_FRAME.at(-900.0, -1650.0), "TL-2203", "TL-2203"),
           ("R1", "impact", CUT_FRAME.at(420.0, 310.0), "TL-2207", "TL-2207"),
           ("R2", "impact", BASIN_FRAME.at(330.0, -190.0), "TL-2210", "TL-2210")]
CHANGED = "TL-2214"         # in R2 since 10 February
LIMITS = ["NTU", "15", "0", "400", "15", "2", "120"]


def write_water(folder, season, dice):
    folder.csv("turbidity/sites.csv",
               "site role easting_m northing_m unit interval_min range_low range_high spike rate_per_min flat_min",
               [[site, role, f"{east:.1f}", f"{north:.1f}", *LIMITS] for site, role, (east, north), _, _ in LOGGERS])
    here = water.Water(season, dice)
    values = {site: list(here.readings(site)) for site in water.SITES}
    for site in water.SITES:
        folder.csv(f"turbidity/{site}.csv", "time value",
                   [[clock.utc(m), "" if v is None else f"{v:.1f}"] for m, v in values[site]])
    folder.csv("turbidity/service.csv", "site time what before after serial",
               [row for logger in LOGGERS for row in _service(logger, values[logger[0]])])
    folder.csv("turbidity/instruments.csv", "id site serial deployed recovered calibrated calibrated_until by remarks",
               [[f"IN-{n:04}", *row] for n, row in enumerate((r for logger in LOGGERS for r in _stands(logger)), 1)])
    folder.csv("turbidity/samples.csv", "id site time turbidity solids_mg_l lab by",
               [[f"W-{n:04}", *row] for n, row in enumerate(_samples(values, dice.child(3)), 1)])
    site, start, end, _ = water.FOULED
    folder.csv("turbidity/overrules.csv", "site from to flag why by",
               [[site, text(end - 4 * clock.DAY), text(end - water.STEP), "3",
                 "growth on the lens: it read less by over 2 NTU once it was clean", "Esi"]])


def _near(values, minute, after):
    """The reading next to a cleaning, as the book of the loggers has it."""
    good = [v for m, v in values if v is not None and v < 60 and (0 <= m - minute < 90 if after else 0 < minute - m < 90)]
    return f"{good[0] if after else good[-1]:.1f} NTU" if good else ""


def _service(logger, values):
    site, _, _, serial, later = logger
    lifted, back = water.LIFTED
    rows = [(water.FIRST - 600, "calibrated in formazin 0, 20, 200", "", "", serial),
            (water.FIRST - 90, "deployed", "", "", serial),
            (lifted, "lifted for the workshop", _near(values, lifted, False), "", serial),
            (back - 3000, "calibrated in formazin 0, 20, 200", "19.4 at 20", "20.0 at 20", later),
            (back, "deployed", "", _near(values, back, True), later)]
    stuck, _, until = water.STUCK
    if site == stuck:
        rows += [(until + 60, "wiper stuck: lifted", "", "", later), (until + 80, "deployed", "", "", CHANGED)]
    rows += [(start + 20, "lens cleaned", _near(values, start, False), _near(values, end, True),
              CHANGED if site == stuck and start > until else serial) for start, end in water.cleanings(site)]
    return [[site, text(minute), *rest] for minute, *rest in sorted(rows)]


def _stands(logger):
    """Each time that a logger stood at a site, and the calibration that it stood there with: half a year."""
    site, _, _, serial, later = logger
    lifted, back = water.LIFTED
    half_a_year = 182 * clock.DAY
    rows = [(serial, water.FIRST - 90, lifted, water.FIRST - 600, water.FIRST - 600 + half_a_year, "Esi", ""),
            (later, back, None, back - 3000, back - 3000 + half_a_year, "Esi", "")]
    stuck, _, until = water.STUCK
    if site == stuck:
        rows[1] = rows[1][:2] + (until + 60,) + rows[1][3:6] + ("its wiper stuck",)
        made = until + 80 - 90 * clock.DAY
        rows.append((CHANGED, until + 80, None, made, made + half_a_year, "its maker", "the spare one"))
    return [[site, who, text(start), text(end) if end else "", text(made), text(holds), by, remarks]
            for who, start, end, made, holds, by, remarks in rows]


def _samples(values, dice):
    """Bottles filled beside the loggers: before each second cleaning, and where the water was murky."""
    murky = {site: [start + 105 for name, start, _, _ in water.PLUMES if name == site] for site in ("R1", "R2")}
    for site, more in murky.items():
        storm = water.STORM_OF_MARCH[0]
        due = [start - 15 for start, _ in water.cleanings(site)][::2] + more + [storm + 120, storm + 240, storm + 420]
        read = dict(values[site])
        for n, at in enumerate(sorted(due)):
            turbidity = read.get(at)
            if turbidity is None or turbidity >= 100:
                continue
            grams = 1.6 * turbidity ** 1.08 * 10 ** dice.bell(0.06)
            broken = site == "R2" and n == 2
            yield [site, text(at), f"{turbidity:.1f}", "" if broken else f"{grams:.1f}",
                   "bottle broken on the way" if broken
                   else f"Marram Water Laboratory {text(at)[2:4]}-{at // 97 % 900 + 100}",
                   "Esi"]

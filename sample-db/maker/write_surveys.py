# SPDX-License-Identifier: GPL-3.0-or-later
"""surveys.csv, surveys/ and removed.csv of the demo. Of the claims, before, during and after: no grids, but what the
surveyor's report says came off each: by the bed's own bulking factors some 6 % less than the barges say, beyond what
both admit to in FB1 alone. Of the ground, before and at each 50 000 m³: the grids."""
from datetime import date

from . import clock
from .bed import CELL_M, Bed

SURVEYS = [
    # survey, surveyed_on, kind
    ("SV-01", "2025-08-02", "before"),
    ("SV-02", "2025-10-05", "progress"),
    ("SV-03", "2025-11-07", "progress"),
    ("SV-04", "2026-01-31", "before"),
    ("SV-05", "2026-05-03", "after"),
]
READING_U_M = 0.07

OF_GROUND = [
    # survey, surveyed_on, kind, u_m, s44_order; each a morning before the works began or before the duty was done
    ("SV-G1", "2025-07-22", "before", "0.08", ""),
    ("SV-G2", "2025-11-02", "progress", "", "Special"),
    ("SV-G3", "2026-01-14", "progress", "0.08", ""),
    ("SV-G4", "2026-03-29", "progress", "0.08", ""),
]

REMOVED = [
    # removed, before, after, claim, removed m³ ± u, infill ± u, outside ± u, below target within the allowance ± u,
    # beyond it ± u, remarks
    ("RM-001", "SV-01", "SV-02", "FB1", 25840, 330, "", "", "", "", 1130, 120, 140, 60, "both surveys by the same boat"),
    ("RM-002", "SV-01", "SV-02", "FB2", 17980, 300, "", "", "", "", 690, 110, 90, 50, "rock patch included"),
    ("RM-003", "SV-02", "SV-03", "FB3", 25970, 410, 180, 90, 60, 30, 1290, 130, 260, 80, "north batter slid in on 21 October"),
    ("RM-004", "SV-04", "SV-05", "OB1", 13110, 370, 130, 70, "", "", 940, 120, 310, 90, "swell filled the toe"),
    ("RM-005", "SV-04", "SV-05", "OB2", 13000, 370, 130, 70, "", "", 980, 120, 220, 80, "swell filled the toe"),
    ("RM-006", "SV-04", "SV-05", "OB3", 13370, 370, 110, 60, "", "", 1010, 120, 180, 70, ""),
]


def write_surveys(folder, season, ground):
    rows = [[name, "", day, kind, "up", "", str(READING_U_M), ""] for name, day, kind in SURVEYS]
    rows += [[name, f"{name}.asc", day, kind, "up", "", u, order] for name, day, kind, u, order in OF_GROUND]
    folder.csv("surveys.csv", "survey file surveyed_on kind positive offset_m u_m s44_order", rows)
    for name, day, *_ in OF_GROUND:
        bed = Bed(ground, _released(season, clock.instant(date.fromisoformat(day))))
        folder.grid(f"surveys/{name}.asc", bed.corner, CELL_M, bed.rows())
    _write_removed(folder)


def _released(season, until):
    """[((along, right), hopper m3)] of what lay on the ground at an instant."""
    return [(o.at, o.share * t.load.hopper_m3) for t in season.trips for o in t.openings if o.end < until]


def _write_removed(folder):
    folder.csv("removed.csv",
               "removed before after claim removed_in_situ_m3 removed_u_m3 infill_in_situ_m3 infill_u_m3 "
               "outside_in_situ_m3 outside_u_m3 by remarks within_allowance_m3 within_allowance_u_m3 "
               "beyond_allowance_m3 beyond_allowance_u_m3",
               [[*map(str, row[:10]), "survey boat", row[14], *map(str, row[10:14])] for row in REMOVED])

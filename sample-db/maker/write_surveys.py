# SPDX-License-Identifier: GPL-3.0-or-later
"""surveys.csv and removed.csv of the demo: the bed before, during and after two claims and the cut, and what the
surveyor's report says came off each claim: by the bed's own bulking factors some 6 % less than the barges say, beyond
what both admit to in FB1 alone."""

SURVEYS = [
    # survey, surveyed_on, kind
    ("SV-01", "2025-08-02", "before"),
    ("SV-02", "2025-10-05", "progress"),
    ("SV-03", "2025-11-07", "progress"),
    ("SV-04", "2026-01-31", "before"),
    ("SV-05", "2026-05-03", "after"),
]
READING_U_M = 0.07

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


def write_surveys(folder):
    folder.csv("surveys.csv", "survey file surveyed_on kind positive offset_m u_m",
               [[name, "", day, kind, "up", "", str(READING_U_M)] for name, day, kind in SURVEYS])
    folder.csv("removed.csv",
               "removed before after claim removed_in_situ_m3 removed_u_m3 infill_in_situ_m3 infill_u_m3 "
               "outside_in_situ_m3 outside_u_m3 by remarks within_allowance_m3 within_allowance_u_m3 "
               "beyond_allowance_m3 beyond_allowance_u_m3",
               [[*map(str, row[:10]), "survey boat", row[14], *map(str, row[10:14])] for row in REMOVED])

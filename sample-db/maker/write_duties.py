# SPDX-License-Identifier: GPL-3.0-or-later
"""duties.csv of the demo: the monthly returns and the surveys of the ground, as they were done."""
from . import consents

# The month returned, when it went out; ten working days, and none from 20 December to 10 January.
RETURNS = [("2025-08", "2025-09-05T15:40+12:00"), ("2025-09", "2025-10-09T11:15+13:00"),
           ("2025-10", "2025-11-07T16:05+13:00"), ("2025-11", "2025-12-08T14:20+13:00"),
           ("2025-12", "2026-01-19T10:30+13:00"), ("2026-01", "2026-02-04T09:10+13:00"),
           ("2026-02", "2026-03-10T15:00+13:00"), ("2026-03", "2026-04-15T13:45+12:00"),
           ("2026-04", "2026-05-08T16:20+12:00")]
# The 50 000 that was reached, the survey of the ground (write_surveys.py), when it had gone out.
SURVEYS = [(50, "SV-G2", "2025-11-04T14:00+13:00"), (100, "SV-G3", "2026-01-15T12:00+13:00"),
           (150, "SV-G4", "2026-03-30T11:00+13:00")]
OFFICE, COUNCIL = "Esi", consents.AUTHORITY


def write_duties(folder):
    rows = [["31", f"{month}-01", at, OFFICE, f"return {month}, acknowledged by {COUNCIL}",
             "nil return" if month == "2026-01" else ""] for month, at in RETURNS]
    rows += [["30", "", at, "survey boat", f"{survey}, Gannet Patch at {thousand} 000 m3, sent to {COUNCIL}", ""]
             for thousand, survey, at in SURVEYS]
    folder.csv("duties.csv", "condition covers_from done_at by evidence remarks", sorted(rows, key=lambda r: r[2][:10]))

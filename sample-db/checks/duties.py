# SPDX-License-Identifier: GPL-3.0-or-later
"""duties.csv against what the consent asks for."""
from datetime import datetime, timedelta

from .season import ZONE, when


def stories(season):
    consent = season.consents["consents"][0]
    late, months = [], []
    for row in season.tables["duties"]:
        if row["condition"] == "31":
            months.append(row["covers_from"][:7])
            late += [row["covers_from"]] * (when(row["done_at"]) >= _due(consent, row["covers_from"]))
    yield "monthly returns August to April, and those later than ten working days", \
        f"{len(months)}, {len(late)}", len(months) == 9 == len(set(months)) and not late
    total, reached = 0.0, []
    for release in season.releases:
        if int((total + release.in_situ_m3) / 50000) > int(total / 50000):
            reached.append(release.end)
        total += release.in_situ_m3
    done = sorted(when(r["done_at"]) for r in season.tables["duties"] if r["condition"] == "30")
    spans = [(d - r).days for r, d in zip(reached, done)]
    yield "surveys of the ground every 50 000 m3: reached, done, days after", f"{len(reached)}, {len(done)}, {spans}", \
        len(reached) == 4 and len(done) == 3 and all(0 <= s <= 40 for s in spans)


def _due(consent, month):
    """Midnight after the tenth working day that follows the month."""
    rest, left = consent["not_working"], 10
    year, number = int(month[:4]), int(month[5:7])
    day = datetime(year + number // 12, number % 12 + 1, 1)
    while True:
        summer = f"{day:%m-%d}" >= "12-20" or f"{day:%m-%d}" <= "01-10"
        left -= day.weekday() < 5 and f"{day:%Y-%m-%d}" not in rest["dates"] and not summer
        day += timedelta(days=1)
        if not left:
            return day.replace(tzinfo=ZONE)

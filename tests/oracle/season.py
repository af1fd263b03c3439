#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A random, nasty but valid season as a book folder: season.py --seed N --trips M --out FOLDER

The instants worth asking about go into as_ats.txt beside the folder. Same seed and trips: same bytes.
"""
import argparse
import csv
import io
import json
import os
import random
from datetime import timedelta

from bookfolder import Folder
from limits import Board
from season_conditions import VOLUMES, Conditions
from season_places import PLACES, Places
from season_times import Times
from season_works import BARGES, BUCKETS, CLAIMS, MATERIALS, Works
from volumes import Book


class Season:
    def __init__(self, seed, trips, out):
        self.rng, self.out = random.Random(f"season {seed} {trips}"), out
        self.places = Places(self.rng, PLACES[seed % len(PLACES)])
        self.times = Times(self.rng, self.places.zone)
        self.works = Works(self.rng, self.places, self.times, trips)
        self.conditions = Conditions(self.rng, self.places, self.times, self.works)
        self.as_ats = self.times.as_ats(sorted(set(self.works.ends)))
        for o in self.conditions.opening:
            o["value"] = f"{self.rng.uniform(20, 900):.1f}"

    # -- writing -------------------------------------------------------------------------------------------

    def _text(self, name, text):
        with open(os.path.join(self.out, name), "w", encoding="utf-8", newline="") as f:
            f.write(text)

    def _json(self, name, value):
        self._text(name, json.dumps(value, indent=1, ensure_ascii=False) + "\n")

    def _csv(self, name, rows):
        if not rows:
            return
        columns = list(dict.fromkeys(k for r in rows for k in r))
        self.rng.shuffle(columns)
        text = io.StringIO()
        writer = csv.DictWriter(text, columns, restval="", lineterminator=self.rng.choice(["\n", "\r\n"]))
        writer.writeheader()
        writer.writerows(rows)
        self._text(name, self.rng.choice(["", "\ufeff"]) + text.getvalue())

    def write(self):
        os.makedirs(self.out, exist_ok=True)
        self._harbour()
        self._text("people.csv", "name,role\nAna,skipper\nCaro,manager\n")
        self._text("materials.csv", "\n".join(MATERIALS) + "\n")
        self._json("plant.json", {
            "dredgers": [{"name": "Heron",
                          "buckets": [{"name": n, "capacity_m3": c} for n, c in BUCKETS.items()]}],
            "tugs": [{"name": "Plover"}], "barges": BARGES})
        self._json("claims.geojson", self.places.claims(CLAIMS))
        self._json("grounds.geojson", self.places.grounds())
        for name, rows in self.works.tables.items():
            self._csv(name, rows)
        self._csv("opening.csv", self.conditions.opening_rows())
        self._json("consents.json", {"consents": self.conditions.consents})
        self._json("consents.json", {"consents": self._with_values()})
        beside = os.path.join(os.path.dirname(os.path.abspath(self.out)), "as_ats.txt")
        with open(beside, "w", encoding="utf-8") as f:
            f.writelines(self.times.clock.text(t) + "\n" for t in self.as_ats)

    def _harbour(self):
        start = self.times.start.date()
        campaigns = [(-200, -30), (-20, 120), (200, 430)]
        self._json("harbour.json", {
            "name": "Test Haven", "authority": "Test Council", "epsg": self.places.epsg,
            "zone": self.places.zone,
            "water_density_t_m3": self.rng.choice([1.025, 1.0, 1.0185]), "vertical_datum": "chart datum",
            "campaigns": [{"name": f"campaign {i}", "from": (start + timedelta(days=a)).isoformat(),
                           "to": (start + timedelta(days=b)).isoformat()}
                          for i, (a, b) in enumerate(campaigns, 1)]})

    # -- limits that matter --------------------------------------------------------------------------------

    def _with_values(self):
        """The consents with limits near to what is used: some just met, some passed, some met exactly."""
        board = Board(Book(Folder(self.out)))
        for versions in board.groups.values():
            for version in versions:
                self._set_value(version)
        return board.book.folder.consents

    def _set_value(self, version):
        rng, c = self.rng, version.condition
        at = rng.choice(self.as_ats[len(self.as_ats) // 2:])
        sums = [version._sum(version.counted(at, m), m)[0].value / version.mean_years
                for m in version.members()]
        most = max(sums) if max(sums) > 0 else 100.0
        if isinstance(c.get("of"), dict):
            whole = sum(sums) or 100.0
            c["of"]["floor"] = round(whole * rng.uniform(0.2, 0.8), 1)
            c["share_of_total"] = min(1.0, round(most / whole * rng.uniform(0.7, 1.2), 4))
        elif "of" in c:
            c["of"] = round(most * rng.uniform(3, 8), 0)
            c["share_of_total"] = min(1.0, round(most / c["of"] * rng.uniform(0.7, 1.2), 4))
        elif c["measure"] not in VOLUMES:
            c["value"] = max(1, round(most * rng.uniform(0.6, 1.2)))
        else:
            near = rng.choice([(0.5, 1.25), (0.96, 1.04)])
            c["value"] = most if rng.random() < 0.15 else round(most * rng.uniform(*near), 1)
        if "reserve" in c:
            c["reserve"]["value"] = round(c["value"] * rng.uniform(0.05, 0.3), 1)


def main():
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("--seed", type=int, required=True)
    arguments.add_argument("--trips", type=int, default=80)
    arguments.add_argument("--out", required=True)
    given = arguments.parse_args()
    Season(given.seed, given.trips, given.out).write()


if __name__ == "__main__":
    main()

# SPDX-License-Identifier: GPL-3.0-or-later
"""The folder as it lies, its volumes by ullage, its releases."""
import csv
import json
import os
import re
from datetime import datetime, timezone
from zoneinfo import ZoneInfo

ZONE = ZoneInfo("Pacific/Auckland")
TIME = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d[+-]\d\d:\d\d\Z")


def when(text):
    """Aware datetime, or None for blank."""
    return datetime.fromisoformat(text) if text else None


def local(at):
    return at.astimezone(ZONE)


def minutes(a, b):
    return (b - a).total_seconds() / 60


class Release:
    def __init__(self, trip, start, end, row, share):
        self.trip, self.start, self.end, self.share = trip, when(start), when(end), share
        self.cell, self.wave = row["cell"], float(trip["wave_height_m"])
        self.place = (float(row["lat"]), float(row["lon"])) if row["lat"] else None
        self.in_situ_m3 = None


class Season:
    def __init__(self, path):
        self.path = path
        self.tables = {n[:-4]: self._csv(n) for n in sorted(os.listdir(path)) if n.endswith(".csv")}
        self.plant, self.consents = self.json("plant.json"), self.json("consents.json")
        self.barges = {b["name"]: b for b in self.plant["barges"]}
        self.buckets = {b["name"]: b["capacity_m3"] for d in self.plant["dredgers"] for b in d["buckets"]}
        for name in ("shifts", "stations", "loads", "trips"):
            setattr(self, name, {r[name[:-1]]: r for r in self.tables[name]})
        self.tallies = {}
        for row in self.tables["tallies"]:
            self.tallies.setdefault(row["load"], []).append(row)
        self.hopper = {k: self._hopper(r) for k, r in self.loads.items() if r["dips_m"]}
        self.by_claim = {k: self._in_situ(k) for k in self.hopper}
        self.releases = sorted(self._releases(), key=lambda r: r.end)

    def _csv(self, name):
        with open(os.path.join(self.path, name), encoding="utf-8", newline="") as f:
            return list(csv.DictReader(f))

    def rows(self, name):
        """A file of turbidity/."""
        return self._csv(os.path.join("turbidity", name))

    def track(self, trip):
        """[(aware datetime, (lat, lon))], empty where none is kept."""
        name = os.path.join("tracks", f"{trip}.csv")
        if not os.path.exists(os.path.join(self.path, name)):
            return []
        return [(when(r["time"]), (float(r["lat"]), float(r["lon"]))) for r in self._csv(name)]

    def json(self, name):
        with open(os.path.join(self.path, name), encoding="utf-8") as f:
            return json.load(f)

    def lines(self, name):
        with open(os.path.join(self.path, name), encoding="utf-8") as f:
            return f.read().splitlines()

    def _hopper(self, row):
        """Hopper m3 of the mean dip, linear between the rows of the barge's ullage table."""
        dips = [float(d) for d in row["dips_m"].split()]
        mean = sum(dips) / len(dips)
        table = self.barges[row["barge"]]["ullage_table"]
        for (u1, v1), (u2, v2) in zip(table, table[1:]):
            if u1 <= mean <= u2:
                return v1 + (v2 - v1) * (mean - u1) / (u2 - u1)
        raise ValueError(f"{row['load']}: mean dip {mean} outside the table")

    def factor(self, name, material, at):
        row = next(m for m in self.tables["materials"] if m["material"] == material)
        value = float(row[{"bulking": "bulking_factor", "fill": "fill_factor"}[name]])
        for line in self.tables["factors"]:
            since = datetime.fromisoformat(line["from"]).replace(tzinfo=ZONE)
            if line["factor"] == name and line["material"] == material and since <= at:
                value = float(line["value"])
        return value

    def _in_situ(self, label):
        """{claim: in-situ m3}: hopper split by n C f, each part over its own bulking factor."""
        load, parts = self.loads[label], []
        at = when(load["loading_end"])
        for tally in self.tallies[label]:
            material = tally["material"] or load["material"]
            heap = float(tally["count"]) * self.buckets[tally["bucket"]]
            heap *= self.factor("fill", material, at) if not load["material"] else 1
            parts.append((self.stations[tally["station"]]["claim"], heap, self.factor("bulking", material, at)))
        heaps, found = sum(h for _, h, _ in parts), {}
        for claim, heap, bulking in parts:
            found[claim] = found.get(claim, 0.0) + self.hopper[label] * heap / heaps / bulking
        return found

    def _releases(self):
        rows = {}
        for row in self.tables["releases"]:
            rows.setdefault(row["trip"], []).append(row)
        for label, trip in self.trips.items():
            if label in rows:
                left = 1 - sum(float(r["share"]) for r in rows[label] if r["share"])
                found = [Release(trip, r["doors_open"], r["empty"], r, float(r["share"] or left)) for r in rows[label]]
            else:
                found = [Release(trip, trip["release_start"], trip["release_end"], trip, 1.0)] \
                    if trip["release_end"] else []
            for release in found:
                release.in_situ_m3 = release.share * sum(self.by_claim[trip["load"]].values())
                yield release

    def times(self):
        """Every time in the folder with where it stands."""
        for table, rows in self.tables.items():
            for row in rows:
                for column, text in row.items():
                    if TIME.match(text or ""):
                        yield f"{table}.csv {column}", text

    def opened_at(self):
        return datetime(2026, 5, 30, 18, tzinfo=ZONE).astimezone(timezone.utc)

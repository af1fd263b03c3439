# SPDX-License-Identifier: GPL-3.0-or-later
"""The book folder as it lies: rows of text, JSON, GeoJSON in metres. Reads no more than the oracle needs."""
import csv
import json
import os
import re

from clock import Clock
from mercator import utm
from polygon import Region

MORE = ("tide.csv", "observations.csv", "suitability.csv", "duties.csv", "turbidity/sites.csv",
        "turbidity/overrules.csv")


def number(text):
    """Blank is not recorded: None, never zero."""
    return None if text is None or str(text).strip() == "" else float(text)


def numbers(text):
    return [float(t) for t in (text or "").split()]


def word(text):
    return None if text is None or str(text).strip() == "" else str(text).strip()


class Folder:
    def __init__(self, path):
        self.path = path
        self.harbour = self._json("harbour.json", {})
        self.clock = Clock(self.harbour["zone"])
        self.projection = utm(self.harbour["epsg"])
        self.water_density = float(self.harbour.get("water_density_t_m3") or 1.025)
        self.materials = {r["material"]: r for r in self._csv("materials.csv")}
        self.factors = self._csv("factors.csv")
        plant = self._json("plant.json", {})
        self.barges = {b["name"]: b for b in plant.get("barges", [])}
        self.buckets = {b["name"]: b for d in plant.get("dredgers", []) for b in d.get("buckets", [])}
        self.claims = {f["properties"]["claim"]: f["properties"] for f in self._features("claims.geojson")}
        self.shifts = {r["shift"]: r for r in self._csv("shifts.csv")}
        self.stations = {r["station"]: r for r in self._csv("stations.csv")}
        self.loads = {r["load"]: r for r in self._csv("loads.csv")}
        self.tallies = {}
        for row in self._csv("tallies.csv"):
            self.tallies.setdefault(row["load"], []).append(row)
        self.trips = {r["trip"]: r for r in self._csv("trips.csv")}
        self.release_rows = {}
        for row in self._csv("releases.csv"):
            self.release_rows.setdefault(row["trip"], []).append(row)
        self.openings = self._csv("opening.csv")
        self.consents = self._json("consents.json", {"consents": []})["consents"]
        self.rows = {name: self._csv(name) for name in MORE}
        self.loggers = {r["site"]: self._csv(f"turbidity/{r['site']}.csv") for r in self.rows["turbidity/sites.csv"]}
        self._read_grounds()

    def _open(self, name):
        return open(os.path.join(self.path, name), encoding="utf-8-sig", newline="")

    def _csv(self, name):
        if not os.path.exists(os.path.join(self.path, name)):
            return []
        with self._open(name) as f:
            return [{k.strip(): word(v) for k, v in row.items()} for row in csv.DictReader(f)]

    def _json(self, name, absent):
        if not os.path.exists(os.path.join(self.path, name)):
            return absent
        with self._open(name) as f:
            return json.load(f)

    def _features(self, name):
        """Features with `parts` in metres: [[outer, hole…], …]; lon/lat unless a crs member says EPSG."""
        collection = self._json(name, {"features": []})
        crs = collection.get("crs")
        code = re.search(r"(\d+|CRS84)\Z", crs["properties"]["name"]).group(1) if crs else "CRS84"
        projected = code == str(self.harbour["epsg"])

        def ring(points):
            metres = [(p[0], p[1]) if projected else self.projection.forward(p[1], p[0]) for p in points]
            return metres[:-1] if metres[0] == metres[-1] else metres

        for feature in collection["features"]:
            shape = feature["geometry"]
            parts = [shape["coordinates"]] if shape["type"] == "Polygon" else shape["coordinates"]
            feature["parts"] = [[ring(r) for r in part] for part in parts]
        return collection["features"]

    def _read_grounds(self):
        """regions: ground → Region, exclusions out; cells: (ground, cell) → Region as drawn."""
        features = self._features("grounds.geojson")
        of_kind = {k: [f for f in features if f["properties"]["kind"] == k]
                   for k in ("ground", "cell", "exclusion")}
        self.regions, self.cells = {}, {}
        self.exclusions = {e["properties"]["cell"]: Region(e["parts"]) for e in of_kind["exclusion"]}
        for f in of_kind["ground"]:
            name = f["properties"]["ground"]
            out = [e["parts"] for e in of_kind["exclusion"] if e["properties"]["ground"] == name]
            self.regions[name] = Region(f["parts"], out)
        for f in of_kind["cell"]:
            self.cells[(f["properties"]["ground"], f["properties"]["cell"])] = Region(f["parts"])

    def time(self, text):
        return self.clock.parse(text)

    def factor(self, name, material, at, bucket=None):
        """(value, u, version) in force at an instant, or None: materials.csv, overridden by the newest row of
        factors.csv with from ≤ at; a row that names the bucket beats one that names none."""
        row = self.materials.get(material)
        if row is None:
            return None
        newest = {}
        for index, line in enumerate(self.factors):
            if (line["factor"], line["material"]) != (name, material):
                continue
            if at is None or self.time(line["from"]) > at:
                continue
            key = line.get("bucket")
            if key not in (None, bucket):
                continue
            if key not in newest or self.time(line["from"]) >= self.time(newest[key][1]["from"]):
                newest[key] = (index, line)
        for key in (bucket, None):
            if key in newest:
                index, line = newest[key]
                return number(line["value"]), number(line.get("u")) or 0.0, ("factors.csv", index)
        column = {"bulking": "bulking_factor", "fill": "fill_factor", "situ_density": "situ_density_t_m3",
                  "grain_density": "grain_density_t_m3"}[name]
        value = number(row.get(column))
        return None if value is None else (value, number(row.get(column + "_u")) or 0.0,
                                           ("materials.csv", material, name))

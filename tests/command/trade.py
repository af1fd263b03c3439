# SPDX-License-Identifier: GPL-3.0-or-later
"""What every test of the command line stands on: sbk, a folder to write in, and one small invented season."""
import csv
import io
import json
import os
import shutil
import subprocess
import tempfile
import unittest

SBK = os.environ.get("SPOILBOOK_SBK", "sbk")
# The device of every write, so that a test never asks the machine for its name.
DEVICE = ("--device", "pontoon")
NOW = ("--clock", "2025-12-31T12:00+13:00")

HARBOUR = {"name": "Tern Harbour", "authority": "Tern Council", "works": "Quay pocket", "epsg": 32760,
           "zone": "Pacific/Auckland", "water_density_t_m3": 1.025, "vertical_datum": "chart datum",
           "campaigns": [{"name": "spring", "from": "2025-09-01", "to": "2025-12-01"}]}
PLANT = {"dredgers": [{"name": "Shag", "buckets": [{"name": "general", "capacity_m3": 4.0},
                                                   {"name": "ripper", "capacity_m3": 2.0}]}],
         "tugs": [{"name": "Skua"}],
         "barges": [{"name": "Pipi", "capacity_m3": 400,
                     "ullage_table": [[0, 400], [1, 300], [2, 200], [4, 0]], "ullage_u_m": 0.03},
                    {"name": "Tuatua", "capacity_m3": 500}]}


def square(west, south, east, north):
    return [[[west, south], [east, south], [east, north], [west, north], [west, south]]]


def feature(rings, **properties):
    return {"type": "Feature", "properties": properties, "geometry": {"type": "Polygon", "coordinates": rings}}


def features(*list_of_features):
    return {"type": "FeatureCollection", "features": list(list_of_features)}


CLAIMS = features(feature(square(179.50, -40.66, 179.501, -40.659), claim="Q1", name="quay", material="sand",
                          target_level_m=-9.6, allowance_m=0.3, planned_in_situ_m3=5000,
                          planned_start="2025-09-01", planned_finish="2025-12-15"),
                  feature(square(179.502, -40.66, 179.503, -40.659), claim="Q2", name="pocket", material="clay",
                          target_level_m=-9.6, allowance_m=0.3))
# The ground is 0.04° by 0.02°; W its western half, E its eastern, the wreck a hole in the middle of E.
GROUNDS = features(feature(square(179.60, -40.60, 179.64, -40.58), ground="Deep Hole", cell="", kind="ground"),
                   feature(square(179.60, -40.60, 179.62, -40.58), ground="Deep Hole", cell="W", kind="cell"),
                   feature(square(179.62, -40.60, 179.64, -40.58), ground="Deep Hole", cell="E", kind="cell"),
                   feature(square(179.629, -40.591, 179.631, -40.589), ground="Deep Hole", cell="wreck",
                           kind="exclusion"))
IN_W, ON_WRECK, OUTSIDE = ("-40.59", "179.61"), ("-40.59", "179.63"), ("-40.59", "179.5")

CONDITIONS = [
    {"condition": "1", "kind": "quantity", "text": "20 000 in all", "measure": "in_situ_m3", "value": 20000,
     "window": {"kind": "term"}},
    {"condition": "2", "kind": "quantity", "text": "a month", "applies": {"activity": "release"},
     "measure": "in_situ_m3", "value": 500, "window": {"kind": "calendar", "unit": "month"}},
    {"condition": "3", "kind": "quantity", "text": "trips a day", "measure": "trips", "value": 2,
     "applies": {"activity": "release"}, "window": {"kind": "calendar", "unit": "day"}},
    {"condition": "4", "kind": "place", "text": "inside", "inside": {"ground": "Deep Hole"},
     "test": "release_start"},
    {"condition": "5", "kind": "series", "text": "sea", "applies": {"activity": "release"},
     "variable": "wave_height_m", "statistic": {"kind": "instant"}, "compare": {"absolute": 1.8},
     "passes": {"at_once": True}}]
CONSENT = {"consent": "TC-1", "holder": "Tern Harbour", "authority": "Tern Council", "granted": "2025-07-01",
           "commences": "2025-08-01", "expires": "2030-08-01", "year_starts": "08-01",
           "conditions": CONDITIONS}


def table(text):
    """Rows of blank-separated words with a header, as the columns of a CSV; "-" is a blank, "~" a space."""
    lines = [line.split() for line in text.strip().splitlines()]
    return "".join(",".join("" if w == "-" else w.replace("~", " ") for w in line) + "\n" for line in lines)


SHIFTS = """shift start end dredger tug skipper
S-1 2025-10-31T12:00+13:00 2025-11-01T00:00+13:00 Shag Skua Ana
S-2 2025-11-03T06:00+13:00 2025-11-03T18:00+13:00 Shag Skua Bram"""
STATIONS = """station shift claim spuds_down spuds_up
ST-1 S-1 Q1 2025-10-31T12:00+13:00 2025-11-01T00:00+13:00
ST-2 S-2 Q1 2025-11-03T06:00+13:00 2025-11-03T12:00+13:00
ST-3 S-2 Q2 2025-11-03T12:00+13:00 2025-11-03T18:00+13:00"""
# Dips of 1 m are 300 m³ in the hopper: 240 in situ by the sand's 1.25.
LOADS = """load barge material loading_start loading_end dips_m stated_hopper_m3 stated_in_situ_m3
L-1 Pipi sand 2025-10-31T20:00+13:00 2025-10-31T22:00+13:00 1.0~1.0~1.0 - -
L-2 Pipi sand 2025-11-03T06:30+13:00 2025-11-03T08:00+13:00 1.0~1.0 - -
L-3 Tuatua clay 2025-11-03T12:30+13:00 2025-11-03T14:00+13:00 - 320 200
L-4 Pipi sand 2025-11-03T15:00+13:00 2025-11-03T17:00+13:00 2.0~2.0 - -"""
TALLIES = """load station bucket count
L-1 ST-1 general 90
L-2 ST-2 general 88
L-3 ST-3 ripper 150
L-4 ST-3 general 60"""
TRIPS = """trip load tug departed release_start release_end returned ground cell lat lon position_u_m wave_height_m
T-1 L-1 Skua 2025-10-31T22:10+13:00 2025-10-31T23:56+13:00 2025-11-01T00:04+13:00 2025-11-01T01:30+13:00 Deep~Hole W -40.59 179.61 5 1.0
T-2 L-2 Skua 2025-11-03T08:10+13:00 2025-11-03T10:00+13:00 2025-11-03T10:08+13:00 2025-11-03T11:30+13:00 Deep~Hole E -40.595 179.635 5 1.1
T-3 L-3 Skua 2025-11-03T14:10+13:00 2025-11-03T16:00+13:00 2025-11-03T16:08+13:00 2025-11-03T17:30+13:00 Deep~Hole E -40.595 179.635 5 1.2"""


def season():
    """The small season: four loads, the last one waiting full, three trips of one release each."""
    return {"harbour.json": HARBOUR, "plant.json": PLANT, "claims.geojson": CLAIMS, "grounds.geojson": GROUNDS,
            "consents.json": {"consents": [CONSENT]},
            "people.csv": "name,role\nAna,skipper\nBram,skipper\nCaro,officer\n",
            "materials.csv": "material,situ_density_t_m3,grain_density_t_m3,bulking_factor,bulking_factor_u,"
                             "fill_factor,fill_factor_u\nsand,2.0,2.65,1.25,0.05,0.9,0.02\n"
                             "clay,1.8,2.7,1.6,0.1,0.8,0.03\n",
            "shifts.csv": table(SHIFTS), "stations.csv": table(STATIONS), "loads.csv": table(LOADS),
            "tallies.csv": table(TALLIES), "trips.csv": table(TRIPS)}


def changed(text, row, **values):
    """A CSV with some values of the row of that id changed; a new column is added to all rows."""
    rows = list(csv.DictReader(io.StringIO(text)))
    names = list(rows[0]) + [n for n in values if n not in rows[0]]
    for r in rows:
        if r[names[0]] == row:
            r.update(values)
    out = io.StringIO()
    writer = csv.DictWriter(out, names, restval="", lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


class Trade(unittest.TestCase):
    """A test with a place of its own; verbs for what a user does at the command line."""

    def setUp(self):
        self.place = tempfile.mkdtemp(prefix="trade-")
        self.addCleanup(shutil.rmtree, self.place, ignore_errors=True)
        self.book = os.path.join(self.place, "tern.sbook")

    def path(self, name):
        return os.path.join(self.place, name)

    def folder(self, files, name="folder"):
        for file, body in files.items():
            path = os.path.join(self.place, name, file)
            os.makedirs(os.path.dirname(path), exist_ok=True)
            if body is None:
                continue
            text = body if isinstance(body, (str, bytes)) else json.dumps(body)
            data = text if isinstance(text, bytes) else text.encode()
            with open(path, "wb") as out:
                out.write(data)
        return os.path.join(self.place, name)

    def sbk(self, *words, env=None, cwd=None, input_text=None):
        return subprocess.run([SBK, *words], capture_output=True, text=True, errors="surrogateescape", timeout=300,
                              check=False, cwd=cwd, env={**os.environ, **(env or {})}, input=input_text)

    def ask(self, *words, status=0, env=None):
        """The JSON of a command, that must end with `status`."""
        done = self.sbk(*words, "--json", env=env)
        self.assertEqual(status, done.returncode, f"{words}: {done.stdout}{done.stderr}")
        return json.loads(done.stdout)

    def write(self, *words, status=0, at=None, by="Ana"):
        clock = ("--clock", at) if at else NOW
        return self.ask(*words, *DEVICE, *clock, "--by", by, status=status)

    def new(self, status=0, **changes):
        """The book of the small season; changes are files by name with _ for the point."""
        files = season()
        files.update({re_name(name): body for name, body in changes.items()})
        return self.new_of({n: b for n, b in files.items() if b is not None}, status)

    def new_of(self, files, status=0):
        shutil.rmtree(self.path("folder"), ignore_errors=True)
        return self.write("new", self.book, "--from", self.folder(files), status=status)

    def refused(self, code, where="", what="", files=None, **changes):
        """The one refusal with that code, its place and its words; nothing may have been written."""
        said = self.new_of(files, 1) if files else self.new(1, **changes)
        self.assertFalse(os.path.exists(self.book), "a refused book was left behind")
        found = [r for r in said["refusals"] if r["code"] == code and where in r["where"] and what in r["what"]]
        self.assertTrue(found, f"no {code} at {where!r} saying {what!r} in {said['refusals']}")
        return found[0]

    def volumes(self, *words):
        return self.ask("volumes", self.book, *words)["rows"]

    def total(self, *words):
        rows = self.volumes(*words)
        self.assertEqual(1, len(rows), "without --by there is one row")
        return rows[0]

    def limits(self, *words):
        return {r["condition"]: r for r in self.ask("headroom", self.book, *words)["limits"]}


def re_name(name):
    for end in ("geojson", "json", "csv", "gpx"):
        name = name.replace("_" + end, "." + end)
    return name.replace("__", "/")

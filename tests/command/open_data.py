# SPDX-License-Identifier: GPL-3.0-or-later
"""Open data of Debian packages read as loggers' files, where a package is installed (or unpacked below
SPOILBOOK_OPEN_DATA with dpkg -x): the same readings as Python's csv finds."""
import csv
import os
from datetime import datetime, timezone

from trade import Trade

ROOT = os.environ.get("SPOILBOOK_OPEN_DATA", "/")
VEGA = "usr/lib/python3/dist-packages/vega_datasets/_data"
GEOKNIFE = "usr/lib/R/site-library/geoknife/extdata"


class OpenData(Trade):
    def setUp(self):
        super().setUp()
        self.new()
        self.write("add", self.book, "--from", self.folder(
            {"turbidity/sites.csv": "site,role,unit,interval_min\nR1,impact,NTU,60\n"}, "more"))

    def file(self, package, name):
        path = os.path.join(ROOT, name)
        if not os.path.exists(path):
            self.skipTest(f"{package} is not installed")
        return path

    def same(self, path, *words, heads, time, value, form):
        """Taken in, and held against (time, value) of the columns as csv reads them, times in UTC."""
        self.write("readings", self.book, "--file", path, "--site", "R1", *words)
        with open(path, encoding="utf-8", newline="") as f:
            rows = list(csv.reader(f))[heads:]
        mine = sorted((datetime.strptime(r[time], form).replace(tzinfo=timezone.utc), float(r[value])) for r in rows)
        said = self.ask("turbidity", self.book, "--site", "R1", "--as-at", "2030-01-01T00:00Z")["series"]
        self.assertEqual(mine, [(datetime.fromisoformat(r["time"]), r["value"]) for r in said])
        self.assertGreater(len(mine), 2)

    def test_a_year_of_hours(self):
        path = self.file("python3-vega-datasets", f"{VEGA}/seattle-temps.csv")
        self.same(path, "--zone", "UTC", heads=1, time=0, value=1, form="%Y/%m/%d %H:%M")

    def test_values_before_their_times(self):
        path = self.file("python3-vega-datasets", f"{VEGA}/sf-temps.csv")
        self.same(path, "--zone", "UTC", heads=1, time=1, value=0, form="%Y/%m/%d %H:%M:%S")

    def test_one_of_many_columns_of_days(self):
        path = self.file("python3-vega-datasets", f"{VEGA}/seattle-weather.csv")
        asked = self.write("readings", self.book, "--file", path, "--site", "R1", "--zone", "UTC", status=1)
        self.assertEqual(["must-ask"], [r["code"] for r in asked["refusals"]])
        self.same(path, "--zone", "UTC", "--column", "wind", heads=1, time=0, value=4, form="%Y/%m/%d")

    def test_heads_of_three_lines_and_times_that_say_their_zone(self):
        path = self.file("r-cran-geoknife", f"{GEOKNIFE}/csv_linear_ring.csv")
        self.same(path, heads=3, time=0, value=1, form="%Y-%m-%dT%H:%M:%SZ")

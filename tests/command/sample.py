# SPDX-License-Identifier: GPL-3.0-or-later
"""The sample season: its steps play, and its figures are those that sample-db's own check works out."""
import csv
import os
import subprocess
import sys
from collections import Counter
from zoneinfo import ZoneInfo

from trade import SBK, Trade

SAMPLE = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "sample-db")
ZONE = ZoneInfo("Pacific/Auckland")
AS_AT = ("--as-at", "2026-05-30T18:00+12:00")
# sample-db/README.md: releases a month, August to May, with January nil.
MONTHS = dict(zip(("2025-08", "2025-09", "2025-10", "2025-11", "2025-12", "2026-02", "2026-03", "2026-04", "2026-05"),
                  (58, 66, 71, 73, 52, 70, 72, 68, 70)))


class Sample(Trade):
    def setUp(self):
        super().setUp()
        made = subprocess.run([os.path.join(SAMPLE, "make-book"), SBK, os.path.join(SAMPLE, "marram"), self.book],
                              capture_output=True, text=True, check=False)
        self.assertEqual(0, made.returncode, made.stderr)

    def test_the_steps_play_and_the_figures_are_those_of_the_check(self):
        season = self.season()
        self.assertEqual("intact", self.ask("journal", self.book, "--check")["state"])
        self.assertEqual(600, self.total(*AS_AT)["trips"])
        self.assertEqual(MONTHS, {r["month"]: r["trips"] for r in self.volumes(*AS_AT, "--by", "month")})
        self.months_agree(season)
        self.claims_agree(season)
        self.limits_agree(season)
        self.stories_are_there()
        self.the_water_agrees(season)
        self.the_triggers_of_the_log_are_those_of_the_readings()
        self.the_duties_are_done_in_time()
        self.the_return_of_april_is_whole()
        self.the_bed_agrees(season)
        self.the_forecast_says_what_the_scenario_does()

    def the_forecast_says_what_the_scenario_does(self):
        """sample-db/README.md: at that rate the 12-month limit is met about 9 June, the target about 22 June."""
        burn = self.ask("burndown", self.book, *AS_AT)
        limit = next(r for r in burn["limits"] if r["condition"] == "4")
        self.assertTrue("2026-06-06" <= limit["p50"] <= "2026-06-12", limit)
        self.assertTrue("2026-06-19" <= burn["target"]["p50"] <= "2026-06-26", burn["target"])
        self.assertTrue(burn["target"]["p10"] <= burn["target"]["p50"] <= burn["target"]["p90"])
        self.assertGreater(limit["p_before_target"], 0.9)
        self.assertEqual("condition 4", burn["first"][0]["what"])
        self.assertEqual(burn, self.ask("burndown", self.book, *AS_AT), "the same seed, another forecast")
        faster = self.ask("burndown", self.book, *AS_AT, "--hours-factor", "2")
        self.assertLess(faster["target"]["p50"], burn["target"]["p50"])
        # One tug holds the loads up: a third barge changes nothing, a second tug does.
        self.assertEqual("tugs", burn["works"]["governs"])
        for said in (barge := self.ask("burndown", self.book, *AS_AT, "--barges", "3"),
                     tug := self.ask("burndown", self.book, *AS_AT, "--tugs", "2")):
            for key in ("target", "limits", "first", "season_closes"):
                self.assertEqual(burn[key], said["as_logged"][key])
        self.assertEqual((burn["target"], burn["fan"]), (barge["target"], barge["fan"]))
        self.assertLess(tug["target"]["p50"], burn["target"]["p50"])
        # sample-db/README.md: 7.4 nautical miles at 5.5 knots loaded, 7 light; casting off and turning are within.
        for way, knots in (("out", 5.5), ("home", 7)):
            made_good = burn["works"][f"tow_km_h_{way}"]["median"] / 1.852
            self.assertTrue(0.7 * knots < made_good < 1.1 * knots, (way, made_good))
        far = self.ask("burndown", self.book, *AS_AT, "--longer-haul", "7.4")
        self.assertGreater(far["what_if"]["round_trip_more_min"], 7.4 / 1.852 * 60 * (1 / 5.5 + 1 / 7))

    @staticmethod
    def season():
        """The season as sample-db/check reads it, with the one load that the steps correct."""
        sys.path.insert(0, SAMPLE)
        from checks.season import Season

        class Corrected(Season):
            def _csv(self, name):
                rows = super()._csv(name)
                for row in rows if name == "loads.csv" else ():
                    if row["load"] == "L-0593":
                        row["dips_m"] = "0.26 0.26 0.27 0.23 0.30 0.34"
                return rows

        return Corrected(os.path.join(SAMPLE, "marram"))

    def agree(self, mine, theirs, what):
        self.assertEqual(set(mine), set(theirs), what)
        for key, value in mine.items():
            self.assertAlmostEqual(value, theirs[key], delta=1e-6 * max(1, value), msg=f"{what} {key}")

    def months_agree(self, season):
        mine = Counter()
        for release in season.releases:
            mine[f"{release.end.astimezone(ZONE):%Y-%m}"] += release.in_situ_m3
        self.agree(mine, {r["month"]: r["in_situ_m3"] for r in self.volumes(*AS_AT, "--by", "month")}, "month")

    def claims_agree(self, season):
        mine = Counter()
        for release in season.releases:
            for claim, m3 in season.by_claim[release.trip["load"]].items():
                mine[claim] += release.share * m3
        self.agree(mine, {r["claim"]: r["in_situ_m3"] for r in self.volumes(*AS_AT, "--by", "claim")}, "claim")

    def limits_agree(self, season):
        limits = self.limits(*AS_AT)
        whole = sum(r.in_situ_m3 for r in season.releases)
        may = sum(r.in_situ_m3 for r in season.releases if f"{r.end.astimezone(ZONE):%Y-%m}" == "2026-05")
        fb2 = sum(r.share * season.by_claim[r.trip["load"]].get("FB2", 0) for r in season.releases)
        for condition, limit, used in (("3", 240000, whole), ("4", 215000, whole), ("5", 26000, may),
                                       ("6", 20000, fb2)):
            row = limits[condition]
            self.assertAlmostEqual(limit, row["limit"], delta=1e-9)
            self.assertAlmostEqual(used, row["used"], delta=1e-6 * used, msg=condition)
            self.assertIsNone(row["first_over"])

    def stories_are_there(self):
        rows = self.ask("releases", self.book, *AS_AT)["rows"]
        self.assertEqual(1, sum(r["verdict"] == "outside" for r in rows))
        outside = next(r for r in rows if r["verdict"] == "outside")
        self.assertAlmostEqual(-80, outside["distance_to_boundary_m"], delta=1)
        mended = next(r for r in rows if r["trip"] == "T-0573")
        self.assertEqual("inside", mended["verdict"])
        self.assertAlmostEqual(400, mended["distance_to_boundary_m"], delta=3)

    def the_water_agrees(self, season):
        """Flags and passed triggers of every site, against the plain evaluator of sample-db."""
        from checks import water
        loggers = {row["site"]: water.Logger(season, row) for row in season.rows("sites.csv")}
        for name, logger in loggers.items():
            said = self.ask("turbidity", self.book, *AS_AT, "--site", name)
            mine = Counter(map(str, logger.flags))
            self.assertEqual({flag: mine[flag] for flag in said["flags"]}, said["flags"], name)
            mine = sorted((start, c["condition"], end, peak)
                          for c in season.consents["consents"][0]["conditions"] if name in c.get("sites", ())
                          for start, end, peak in water.passed(c, logger, loggers[c.get("control", "C1")]))
            self.assertEqual([(c, start, end) for start, c, end, _ in mine],
                             [(e["condition"], water.minute(e["start"]), water.minute(e["end"]))
                              for e in said["events"]], name)
            for (_, _, _, peak), event in zip(mine, said["events"]):
                self.assertAlmostEqual(peak, event["peak"], delta=1e-9)

    def the_bed_agrees(self, season):
        """The rise of the ground by each survey, against the plain reader of sample-db."""
        from checks import bed
        from checks.land import Ground, area
        ground, surveys = Ground(season.json("grounds.geojson")), bed.of_ground(season)
        rows = self.ask("conditions", self.book, *AS_AT)["conditions"]
        row = next(r for r in rows if r["kind"] == "surface")
        self.assertEqual(("13", "within", {"complied": 3, "breached": 0, "cannot_tell": 0}),
                         (row["condition"], row["state"], row["judged"]))
        self.assertEqual(["SV-G2", "SV-G3", "SV-G4"], [f["survey"] for f in row["findings"]])
        _, before = surveys["SV-G1"]
        open_m2 = area(ground.outline) - area(ground.wreck)
        for finding in row["findings"]:
            _, grid = surveys[finding["survey"]]
            rise, seen = bed.rises(grid, before), finding["bed"]
            self.assertAlmostEqual(open_m2, seen["area_m2"], delta=1e-5 * open_m2)
            self.assertAlmostEqual(seen["area_m2"], seen["covered_m2"], delta=1)
            self.assertEqual((0, 0), (seen["past_m2"], seen["in_doubt_m2"]))
            highest = max(rise[p] for p in bed.in_ground(ground, rise))
            self.assertAlmostEqual(highest - 0.5, seen["worst"]["past_m"], delta=1e-4)
            self.assertAlmostEqual(highest, rise[seen["worst"]["easting_m"], seen["worst"]["northing_m"]], delta=1e-4)

    def the_triggers_of_the_log_are_those_of_the_readings(self):
        found = {e["start"][:16] for site in ("R1", "R2")
                 for e in self.ask("turbidity", self.book, *AS_AT, "--site", site)["events"]}
        with open(os.path.join(SAMPLE, "marram", "events.csv"), encoding="utf-8", newline="") as f:
            logged = {r["from"][:16] for r in csv.DictReader(f) if r["kind"] == "trigger"}
        self.assertEqual(5, len(found))
        self.assertEqual(logged, found)

    def the_duties_are_done_in_time(self):
        rows = self.ask("duties", self.book, *AS_AT)["duties"]
        states = Counter((r["condition"], r["state"]) for r in rows if r["state"] != "coming")
        self.assertEqual({("30", "done"): 3, ("30", "due"): 1, ("31", "done"): 9}, states)
        self.assertFalse(any(r["late"] for r in rows))

    def the_return_of_april_is_whole(self):
        april = self.ask("return", self.book, "--as-at", "2026-05-08T16:00+12:00", "--period", "2026-04")
        self.assertEqual([], april["missing"])

# SPDX-License-Identifier: GPL-3.0-or-later
"""What if there were another barge, tug, shift, haul or season: said beside what the log shows."""
import json

from trade import Trade

AS_AT = ("--as-at", "2025-12-04T12:00+13:00")


class WhatIf(Trade):
    def burndown(self, *options):
        return self.ask("burndown", self.book, *AS_AT, "--draws", "100", *options)

    def test_nothing_supposed_is_the_forecast_and_the_pace_is_that_of_productivity(self):
        self.new()
        said = self.burndown()
        self.assertIsNone(said["what_if"])
        self.assertIsNone(said["as_logged"])
        pace = self.ask("productivity", self.book, *AS_AT)["pace"]
        self.assertEqual({k: v for k, v in pace.items() if k != "loads_per_shift_h"},
                         {k: said["works"][k] for k in pace if k != "loads_per_shift_h"})
        # Two shifts of twelve hours from the first load's day to the day before the as-at: 34 days.
        self.assertEqual(12, said["works"]["shift_hours_a_day"])
        self.assertAlmostEqual(7 * 2 / 34, said["works"]["shift_days_a_week"], 9)
        again = self.burndown("--barges", "2", "--tugs", "1", "--longer-round-trip", "0")
        for key in ("target", "limits", "first", "fan"):
            self.assertEqual(said[key], again[key])
            if key != "fan":
                self.assertEqual(said[key], again["as_logged"][key])

    def test_the_factor_is_the_ratio_of_the_least_loads_an_hour(self):
        self.new()
        works = self.burndown()["works"]
        fill, change, trip = (works[f"{turn}_min"]["median"] for turn in ("fill", "change", "round_trip"))
        self.assertEqual(200, trip)

        def least(barges, tugs, trip):
            return min(60 / (fill + change), 60 * tugs / trip, 60 * barges / (fill + change + trip))
        for barges, tugs, longer in ((3, 1, 0), (2, 2, 0), (6, 4, 0), (1, 1, 0), (2, 1, 45), (3, 2, -50)):
            with self.subTest(barges=barges, tugs=tugs, longer=longer):
                said = self.burndown("--barges", str(barges), "--tugs", str(tugs),
                                     "--longer-round-trip", str(longer))
                self.assertAlmostEqual(least(barges, tugs, trip + longer) / least(2, 1, trip),
                                       said["what_if"]["rate_factor"], 12)
                by_factor = self.burndown("--rate-factor", repr(said["what_if"]["rate_factor"]))
                self.assertEqual(by_factor["target"], said["target"])
                self.assertEqual(by_factor["first"], said["first"])

    def test_shifts_are_a_factor_of_hours(self):
        self.new()
        said = self.burndown("--shift-hours", "18", "--days-a-week", "5")
        self.assertAlmostEqual(18 * 5 / (12 * 14 / 34), said["what_if"]["hours_factor"], 9)
        self.assertEqual((18, 5), tuple(said["what_if"][k] for k in ("shift_hours_a_day", "shift_days_a_week")))

    def test_both_stand_side_by_side_in_words(self):
        self.new()
        words = self.sbk("burndown", self.book, *AS_AT, "--tugs", "2").stdout
        rows = {line[:34].rstrip(): line[34:].split() for line in words.splitlines()}
        self.assertEqual(["1", "2"], rows["tugs"])
        self.assertEqual(["2", "2"], rows["barges"])
        self.assertIn("loads are held up by", rows)
        self.assertIn("  as logged  ", words)
        self.assertIn("held up by the", self.sbk("burndown", self.book, *AS_AT).stdout)

    def test_a_season_closes_and_opens_when_it_is_supposed_to(self):
        self.new()
        said = self.burndown("--season-closes", "2025-12-10")
        self.assertEqual("2025-12-10", said["season_closes"])
        self.assertIsNone(said["as_logged"]["season_closes"])
        both = self.burndown("--season-closes", "2025-12-10", "--season-opens", "2026-02-01")
        self.assertEqual("2025-12-10", both["season_closes"])
        self.assertEqual(said["fan"][:58], both["fan"][:58])
        self.assertLess(both["fan"][-1]["p50_m3"], both["fan"][57]["p50_m3"])

    def test_what_is_not_logged_is_told_and_not_guessed(self):
        self.new()
        self.is_refused("not-in-log", "--longer-haul", "5")  # no station tells where it was
        self.is_refused("out-of-range", "--season-closes", "2025-12-04")
        self.is_refused("out-of-range", "--longer-round-trip", "-200")
        for options in (("--barges", "0"), ("--tugs", "x"), ("--shift-hours", "25"), ("--season-opens", "soon")):
            self.assertEqual(2, self.sbk("burndown", self.book, *options).returncode, options)

    def test_without_trips_the_pace_is_not_known_and_a_factor_still_works(self):
        self.new(trips_csv=None)
        self.assertEqual("no round trip is logged", self.burndown()["works"]["why_no_pace"])
        self.assertIn("no round trip is logged", self.sbk("burndown", self.book, *AS_AT).stdout)
        self.is_refused("not-in-log", "--barges", "3")
        self.assertEqual(2, self.burndown("--rate-factor", "2")["what_if"]["rate_factor"])

    def is_refused(self, code, *options):
        done = self.sbk("burndown", self.book, *AS_AT, *options, "--json")
        self.assertEqual(1, done.returncode, done.stdout)
        self.assertEqual([code], [refusal["code"] for refusal in json.loads(done.stdout)["refusals"]])

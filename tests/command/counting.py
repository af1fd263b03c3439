# SPDX-License-Identifier: GPL-3.0-or-later
"""What counts: release end at or before the as-at, load × share, by the release's month, ground and cell.
The season's volumes by hand: L-1 and L-2 by ullage 300 m³, over 1.25 = 240 in situ; L-3 by tally
150 × 2.0 × 0.8 = 240 m³, over 1.6 = 150 in situ; L-4 waits full with 200 m³."""
from trade import Trade, changed, season, table

SEASON = season()


class Counting(Trade):
    def assert_volume(self, hopper, in_situ, row):
        self.assertAlmostEqual(hopper, row["hopper_m3"], delta=1e-6)
        self.assertAlmostEqual(in_situ, row["in_situ_m3"], delta=1e-6)

    def test_the_season_sums_to_what_the_hand_gives(self):
        self.new()
        row = self.total()
        self.assertEqual((3, 3), (row["loads"], row["trips"]))
        self.assert_volume(840, 630, row)
        # A m³ in situ at 2.0 t/m³ of grains 2.65 in water 1.025 holds 2.65 · (2.0 − 1.025) / (2.65 − 1.025) t.
        dry = 480 * 2.65 * 0.975 / 1.625 + 150 * 2.7 * 0.775 / 1.675
        self.assertAlmostEqual(dry, row["dry_t"], delta=1e-6)

    def test_a_release_counts_from_the_very_instant_of_its_end(self):
        self.new()
        self.assertEqual(0, self.total("--as-at", "2025-11-01T00:03:59.999+13:00")["trips"])
        self.assertEqual(1, self.total("--as-at", "2025-11-01T00:04+13:00")["trips"])

    def test_every_grouping_sums_alike(self):
        self.new()
        for by in ("claim", "month", "ground", "cell", "material", "barge", "claim,month", "cell,barge,material"):
            rows = self.volumes("--by", by)
            self.assertTrue(all(key in r for r in rows for key in by.split(",")), by)
            self.assert_volume(840, 630, {k: sum(r[k] for r in rows) for k in ("hopper_m3", "in_situ_m3")})

    def test_what_has_no_claim_stands_under_null(self):
        tallies = "\n".join(line for line in SEASON["tallies.csv"].splitlines() if not line.startswith("L-2")) + "\n"
        self.new(tallies_csv=tallies)
        rows = {r["claim"]: r for r in self.volumes("--by", "claim")}
        self.assertEqual({None, "Q1", "Q2"}, set(rows))
        self.assert_volume(300, 240, rows[None])

    def test_a_load_not_yet_released_is_left_out(self):
        self.new()
        self.assertNotIn("L-4", str(self.ask("releases", self.book)))
        self.assertEqual(3, self.total()["loads"])

    def test_before_the_first_release_there_is_one_row_of_nothing(self):
        self.new()
        row = self.total("--as-at", "2025-01-01T00:00Z")
        self.assertEqual((0, 0, 0, 0), (row["loads"], row["trips"], row["hopper_m3"], row["in_situ_m3"]))
        self.assertEqual([], self.volumes("--as-at", "2025-01-01T00:00Z", "--by", "month"))

    def test_a_blank_share_is_what_the_others_of_its_trip_leave(self):
        self.new(releases_csv=table("release trip doors_open empty ground cell share\n"
                                    "R-1 T-2 2025-11-03T10:00+13:00 2025-11-03T10:02+13:00 Deep~Hole W 0.25\n"
                                    "R-2 T-2 2025-11-03T10:05+13:00 2025-11-03T10:08+13:00 Deep~Hole E -"))
        rows = {r["cell"]: r for r in self.volumes("--by", "cell")}
        self.assert_volume(300 + 75, 240 + 60, rows["W"])
        self.assert_volume(225 + 240, 180 + 150, rows["E"])
        self.assertEqual(3, self.total()["trips"])

    def test_two_releases_on_either_side_of_midnight_count_in_two_months(self):
        self.new(releases_csv=table("release trip doors_open empty share\n"
                                    "R-1 T-1 2025-10-31T23:50+13:00 2025-10-31T23:58+13:00 0.5\n"
                                    "R-2 T-1 2025-11-01T00:00+13:00 2025-11-01T00:04+13:00 -"))
        rows = {r["month"]: r for r in self.volumes("--by", "month")}
        self.assert_volume(150, 120, rows["2025-10"])
        self.assert_volume(690, 510, rows["2025-11"])

    def test_doors_shut_ends_a_release_that_was_never_seen_empty(self):
        self.new(releases_csv=table("release trip doors_open empty doors_shut share\n"
                                    "R-1 T-2 2025-11-03T10:00+13:00 - 2025-11-03T10:20+13:00 0.75"))
        self.assertEqual(1, self.total("--as-at", "2025-11-03T10:19:59+13:00")["trips"])
        self.assert_volume(525, 420, self.total("--as-at", "2025-11-03T10:20+13:00"))

    def test_a_trip_that_came_back_loaded_released_nothing(self):
        trips = changed(SEASON["trips.csv"], "T-2", outcome="returned_loaded", release_start="", release_end="")
        self.new(trips_csv=trips)
        self.assertEqual(2, self.total()["trips"])

    def test_two_trips_of_one_load_are_one_load(self):
        self.new(trips_csv=SEASON["trips.csv"].replace("T-2,L-2", "T-2,L-1"),
                 releases_csv=table("release trip empty share\nR-1 T-1 2025-11-01T00:04+13:00 0.5\n"
                                    "R-2 T-2 2025-11-03T10:08+13:00 0.5"))
        row = self.total()
        self.assertEqual((2, 3), (row["loads"], row["trips"]))
        self.assert_volume(540, 390, row)

    def test_a_load_that_no_method_values_is_unknown_and_not_zero(self):
        self.new(loads_csv=changed(SEASON["loads.csv"], "L-2", dips_m=""),
                 tallies_csv=SEASON["tallies.csv"].replace("L-2,ST-2,general,88\n", ""))
        row = self.total()
        self.assertEqual((3, 1), (row["loads"], row["unknown"]))
        limit = self.limits()["1"]
        self.assertEqual(1, limit["unknown"])
        self.assertIsNone(limit["p_over"])
        rows = {r["claim"]: r for r in self.volumes("--by", "claim")}
        self.assertIsNone(rows[None]["in_situ_m3"])

    def test_a_load_is_counted_by_ullage_else_draughts_else_tally_else_as_stated(self):
        self.new()
        self.assertEqual("ullage", self.ask("load", self.book, "L-1")["counted_by"])
        self.assertEqual("tally", self.ask("load", self.book, "L-3")["counted_by"])
        self.write("log", self.book, "tally", "x", "load=L-3", status=0)
        said = self.ask("load", self.book, "L-1")
        for method in said["methods"]:
            for key in ("method", "hopper_m3", "hopper_m3_u", "in_situ_m3", "in_situ_m3_u", "wet_t", "dry_t"):
                self.assertIn(key, method)
        self.assertEqual({"ullage", "tally"}, {m["method"] for m in said["methods"]})

    def test_what_was_stated_counts_where_nothing_was_measured(self):
        self.new(tallies_csv="load,station,bucket,count\n")
        said = self.ask("load", self.book, "L-3")
        self.assertEqual("stated", said["counted_by"])
        self.assert_volume(320, 200, said["methods"][0])

    def test_what_is_odd_about_a_load_is_noted_beside_its_methods(self):
        self.new(tallies_csv="load,station,bucket,count\n")
        self.assertEqual([], self.ask("load", self.book, "L-3")["notes"])
        self.write("log", self.book, "load", "L-3", "stated_hopper_m3=9000")
        self.assertTrue(any("capacity" in n for n in self.ask("load", self.book, "L-3")["notes"]))

    def test_a_blank_reading_is_never_zero(self):
        self.new(loads_csv=changed(SEASON["loads.csv"], "L-3", stated_in_situ_m3=""),
                 tallies_csv="load,station,bucket,count\n")
        # 320 m³ over the clay's bulking of 1.6.
        self.assert_volume(320, 200, self.ask("load", self.book, "L-3")["methods"][0])

# SPDX-License-Identifier: GPL-3.0-or-later
"""The release check: every condition for one load at one planned release; it never says that a barge may sail."""
import os

from trade import CONDITIONS, CONSENT, Trade, changed, season
from turbidity import SITES, TRIGGER, half_hours

SEASON = season()
MONDAY, TUESDAY = "2025-11-03T19:00", "2025-11-04T09:00"
IN_W = ("--lat=-40.59", "--lon=179.61")
NIGHT = {"condition": "16", "kind": "time", "applies": {"activity": "release"}, "mode": "forbid",
         "dates": ["09-01..11-15"], "hours": ["20:00..06:00"]}


class ReleaseCheck(Trade):
    def under(self, *conditions, **changes):
        if os.path.exists(self.book):
            os.remove(self.book)
        self.new(consents_json={"consents": [dict(CONSENT, conditions=list(conditions))]}, **changes)

    def check(self, at=TUESDAY, *words, load="L-4"):
        said = self.ask("release-check", self.book, "--load", load, "--at", at, *words)
        for reason in said["reasons"]:
            self.assertLessEqual({"consent", "condition", "state", "until"}, set(reason))
        return said

    def verdicts(self, *asked):
        return [self.check(*words)["verdict"] for words in asked]

    def reason(self, condition, *asked, **load):
        return next((r for r in self.check(*asked, **load)["reasons"] if r["condition"] == condition), None)

    def test_a_hold_beats_cannot_tell_and_each_has_its_reason(self):
        self.new()
        said = self.check(MONDAY)
        self.assertEqual("hold", said["verdict"])
        self.assertEqual({"2": "hold", "3": "hold", "4": "cannot_tell", "5": "cannot_tell"},
                         {r["condition"]: r["state"] for r in said["reasons"]})
        self.assertEqual("cannot_tell", self.check("2025-12-01T00:00")["verdict"])

    def test_by_daylight_it_holds_until_the_sun_is_up(self):
        self.under({"condition": "17", "kind": "time", "applies": {"activity": "release"}, "mode": "allow",
                    "daylight": "day"})
        self.assertEqual("clear", self.check(TUESDAY)["verdict"])
        until = self.reason("17", "2025-11-04T02:00")["until"]
        # 4 November, 40.59 S 179.61 E: sunrise 16:46:16 UTC by PyEphem 4.1.4, horizon -0:50 (COMP).
        self.assertRegex(until, r"^2025-11-04T05:46:")

    def test_by_the_tide_it_holds_until_the_level_leaves_and_cannot_tell_in_a_gap(self):
        tide = "time,level_m\n2025-11-04T06:00,0\n2025-11-04T09:00,2\n2025-11-04T12:00,0\n2025-11-04T18:00,1\n"
        self.under({"condition": "18", "kind": "time", "applies": {"activity": "release"}, "mode": "forbid",
                    "tide_level_m": {"max": 1}}, tide_csv=tide)
        self.assertEqual("clear", self.check(TUESDAY)["verdict"])
        self.assertEqual("2025-11-04T07:30:00.001+13:00", self.reason("18", "2025-11-04T06:30")["until"])
        self.assertEqual("cannot_tell", self.reason("18", "2025-11-04T15:00")["state"])

    def test_a_position_is_taken_as_a_chart_writes_it(self):
        self.new()
        plain = self.check("2025-12-01T00:00", *IN_W, "--wave-height=1")
        # 40.59° = 40° 35.4′ = 40° 35′ 24″, 179.61° = 179° 36.6′ = 179° 36′ 36″.
        for lat, lon in (("40°35.4'S", "179°36.6'E"), ("40 35.4 S", "E 179 36.6"), ("40°35'24\"S", "179°36'36\"E")):
            with self.subTest(lat):
                self.assertEqual(plain, self.check("2025-12-01T00:00", f"--lat={lat}", f"--lon={lon}",
                                                   "--wave-height=1"))
        for lat in ("40 35.4", "40°75'S", "179°36.6'E", "91°S"):
            with self.subTest(lat):
                said = self.sbk("release-check", self.book, "--load", "L-4", "--at", TUESDAY, f"--lat={lat}",
                                "--lon=179.61")
                self.assertEqual(2, said.returncode)

    def test_nothing_holds_and_it_is_clear(self):
        self.new()
        said = self.check("2025-12-01T00:00", *IN_W, "--wave-height=1")
        self.assertEqual(("clear", []), (said["verdict"], said["reasons"]))

    def test_a_hold_is_an_answer_and_ends_with_0(self):
        self.new()
        self.assertEqual(0, self.sbk("release-check", self.book, "--load", "L-4", "--at", MONDAY).returncode)

    def test_a_limit_holds_until_its_next_window(self):
        self.new()
        self.assertEqual("2025-12-01T00:00:00+13:00", self.reason("2", TUESDAY)["until"])
        self.assertEqual("2025-11-04T00:00:00+13:00", self.reason("3", MONDAY)["until"])

    def test_a_rolling_limit_holds_until_enough_has_left_it(self):
        self.under(dict(CONDITIONS[0], value=700, window={"kind": "rolling", "n": 30, "unit": "days"}))
        # 630 used and 160 to come: the 240 of 1 November 00:04 must leave.
        self.assertEqual("2025-12-01T00:04:00+13:00", self.reason("1", TUESDAY)["until"])

    def test_a_limit_over_the_whole_term_has_no_end(self):
        self.under(dict(CONDITIONS[0], value=789.99))
        self.assertIsNone(self.reason("1", TUESDAY)["until"])

    def test_a_load_that_just_fits_is_clear(self):
        self.under(dict(CONDITIONS[0], value=790))
        self.assertEqual("clear", self.check()["verdict"])

    def test_a_load_that_waits_full_counts_before_this_one(self):
        self.under(dict(CONDITIONS[0], value=800),
                   loads_csv=SEASON["loads.csv"] + "L-5,Tuatua,sand,2025-11-03T16:00,2025-11-03T16:30,,100,80\n")
        self.assertEqual("hold", self.check()["verdict"])

    def test_a_load_that_nobody_can_value_is_cannot_tell(self):
        unread = "L-5,Tuatua,sand,2025-11-03T16:00,2025-11-03T16:30,,,\n"
        self.under(CONDITIONS[0], loads_csv=SEASON["loads.csv"] + unread)
        self.assertEqual("cannot_tell", self.check(load="L-5")["verdict"])

    def test_a_load_long_gone_is_judged_as_it_was_without_its_own_trip(self):
        self.new()
        self.assertEqual("clear", self.check("2025-10-31T23:56", *IN_W, "--wave-height=1", load="L-1")["verdict"])
        self.assertEqual("hold", self.reason("2", "2025-11-03T16:00", load="L-3")["state"])

    def test_a_position_outside_or_on_an_exclusion_or_near_the_line_holds(self):
        self.under(CONDITIONS[3])
        west = "--lat=-40.59"
        self.assertEqual(["hold", "hold", "hold", "clear", "hold"],
                         self.verdicts((TUESDAY, west, "--lon=179.5"), (TUESDAY, west, "--lon=179.63"),
                                       (TUESDAY, west, "--lon=179.6002", "--position-u=9"),
                                       (TUESDAY, west, "--lon=179.6002", "--position-u=8"),
                                       (TUESDAY, west, "--lon=179.5998", "--position-u=20")))

    def test_a_position_is_only_as_given(self):
        self.under(CONDITIONS[3])
        self.assertEqual("cannot_tell", self.check("2025-11-03T10:00", load="L-2")["verdict"])

    def test_a_cell_stands_for_its_point_farthest_from_any_edge(self):
        self.under(CONDITIONS[3])
        self.assertEqual(["clear", "clear"], self.verdicts((TUESDAY, "--cell=W"), (TUESDAY, "--cell=E")))

    def test_hours_hold_to_their_end_and_dates_whole(self):
        self.under(NIGHT)
        self.assertEqual(["clear", "hold", "hold", "clear", "hold", "clear"],
                         self.verdicts(*((t,) for t in ("2025-11-03T19:59:59", "2025-11-03T20:00", "2025-11-04T05:59",
                                                        "2025-11-04T06:00", "2025-11-15T23:00", "2025-11-16T00:00"))))
        self.assertEqual("2025-11-04T06:00:00+13:00", self.reason("16", "2025-11-03T22:00")["until"])
        self.assertEqual("2025-11-16T00:00:00+13:00", self.reason("16", "2025-11-15T23:00")["until"])

    def test_a_night_over_the_clock_change_ends_by_the_wall_clock(self):
        self.under(NIGHT)
        self.assertEqual("2025-09-28T06:00:00+13:00", self.reason("16", "2025-09-27T23:00")["until"])

    def test_dates_wrap_the_years_end(self):
        self.under({"condition": "17", "kind": "time", "mode": "forbid", "dates": ["12-20..01-10"]})
        self.assertEqual(["clear", "hold", "hold", "hold", "clear"],
                         self.verdicts(*((t,) for t in ("2025-12-19T23:59", "2025-12-20T00:00", "2026-01-01T12:00",
                                                        "2026-01-10T23:59", "2026-01-11T00:00"))))

    def test_the_version_in_force_at_the_release_judges_it(self):
        self.under({"condition": "18", "kind": "time", "mode": "forbid", "from": "2025-11-04", "to": "2025-11-05",
                    "dates": ["01-01..12-31"]})
        self.assertEqual(["clear", "hold", "hold", "clear"],
                         self.verdicts(*((t,) for t in ("2025-11-03T23:59:59", "2025-11-04T00:00",
                                                        "2025-11-04T23:59:59", "2025-11-05T00:00"))))

    def test_a_condition_for_another_material_does_not_hold_this_load(self):
        self.under(dict(NIGHT, applies={"materials": ["clay"]}))
        self.assertEqual("clear", self.check("2025-11-03T22:00")["verdict"])
        self.assertEqual("hold", self.check("2025-11-03T22:00", load="L-3")["verdict"])

    def test_a_condition_for_another_claim_class_or_tug_does_not_hold_this_load(self):
        # L-4 was fed from Q2; L-3 is said to go behind Skua.
        asked = {"Q1": ("L-4", {"claims": ["Q1"]}), "Q2": ("L-4", {"claims": ["Q2"]}),
                 "Skua": ("L-3", {"plant": ["Skua"]}), "Tuatua": ("L-3", {"plant": ["Tuatua"]}),
                 "other": ("L-3", {"plant": ["Pipi"]})}
        for name, (load, applies) in asked.items():
            with self.subTest(name):
                self.under(dict(NIGHT, applies=applies))
                self.assertEqual("clear" if name in ("Q1", "other") else "hold",
                                 self.check("2025-11-03T22:00", load=load)["verdict"])

    def test_a_hold_ends_with_its_condition_or_with_the_version_after_it(self):
        day = {"condition": "18", "kind": "time", "mode": "forbid", "dates": ["01-01..12-31"]}
        self.under(dict(day, to="2025-11-05"))
        self.assertEqual("2025-11-05T00:00:00+13:00", self.reason("18", TUESDAY)["until"])
        self.under(dict(day, to="2025-11-05"), dict(day, dates=["11-01..11-08"], **{"from": "2025-11-05"}))
        self.assertEqual("2025-11-09T00:00:00+13:00", self.reason("18", TUESDAY)["until"])
        self.under(dict(CONDITIONS[0], value=700, window={"kind": "rolling", "n": 30, "unit": "days"}, to="2025-11-09"))
        self.assertEqual("2025-11-09T00:00:00+13:00", self.reason("1", TUESDAY)["until"])

    def test_a_load_too_large_for_any_window_is_held_by_no_window_that_ends(self):
        self.under(dict(CONDITIONS[1], value=159))
        self.assertEqual(("hold", None), tuple(self.reason("2", TUESDAY)[k] for k in ("state", "until")))

    def test_a_hold_ends_when_its_reserve_is_unlocked(self):
        reserve = {"value": 300, "unlocked_by": {"on": "2025-11-20", "by": "Tern Council", "letter": "x"}}
        self.under(dict(CONDITIONS[0], value=1000, reserve=reserve))
        self.assertEqual("2025-11-20T00:00:00+13:00", self.reason("1", TUESDAY)["until"])

    def test_a_mean_over_years_is_a_share_of_a_stated_volume_by_the_year(self):
        # 630 + 160 in three years: 263.3 a year of 1000.
        limit = {k: v for k, v in CONDITIONS[0].items() if k != "value"}
        mean = dict(limit, window={"kind": "mean", "years": 3}, of=1000)
        self.under(dict(mean, share_of_total=0.27))
        self.assertEqual("clear", self.check()["verdict"])
        self.under(dict(mean, share_of_total=0.26))
        self.assertIn("26.4 of 26.0 % would be used", self.reason("1", TUESDAY)["why"])

    def test_with_a_share_of_the_total_so_far_a_cell_is_due(self):
        # W has 240 and E 390 of 630; with 160 more W would have 400 of 790, E 550.
        limit = {k: v for k, v in CONDITIONS[0].items() if k != "value"}
        share = dict(limit, each_of="cell", of={"floor": 100})
        self.under(dict(share, share_of_total=0.55))
        said = self.check()
        self.assertEqual(("W", "cannot_tell"), (said["due_cell"], said["verdict"]))
        self.under(dict(share, share_of_total=0.5))
        self.assertEqual((None, "hold"), tuple(self.check()[k] for k in ("due_cell", "verdict")))

    def test_the_clocks_going_forward_may_open_the_hours(self):
        self.under({"condition": "16", "kind": "time", "mode": "allow", "hours": ["02:30..04:00"]})
        self.assertEqual("2025-09-28T03:00:00+13:00", self.reason("16", "2025-09-28T01:00")["until"])

    def test_the_sea_is_the_last_observation_not_older_than_three_hours(self):
        self.under(CONDITIONS[4], observations_csv="time,place,wave_height_m\n2025-11-03T17:00+13:00,quay,2.5\n")
        self.assertEqual(["cannot_tell", "hold", "hold", "cannot_tell", "clear", "clear"],
                         self.verdicts(("2025-11-03T16:59",), ("2025-11-03T17:00",), ("2025-11-03T20:00",),
                                       ("2025-11-03T20:00:01",), ("2025-11-03T19:00", "--wave-height=1"),
                                       ("2025-11-03T19:00", "--wave-height=1.8")))

    def test_the_cell_due_is_the_open_one_with_the_least_in_its_limit(self):
        self.under(dict(CONDITIONS[0], each_of="cell", value=500))
        self.assertEqual("W", self.check()["due_cell"])
        self.assertEqual(["hold", "clear"], self.verdicts((TUESDAY, "--cell=E"), (TUESDAY, "--cell=W")))

    def test_it_is_a_read(self):
        self.new()
        head = self.ask("journal", self.book)["head"]
        self.check(MONDAY)
        self.assertEqual(head, self.ask("journal", self.book)["head"])

    def test_a_place_or_a_sea_that_is_none_is_wrong_usage(self):
        self.new()
        for words in (("--lat=-91", "--lon=3"), ("--lat=nan", "--lon=3"), ("--lat=-40.59",), ("--wave-height=nan",),
                      ("--wave-height=-1",), ("--lat=-40.59", "--lon=179.61", "--position-u=-1")):
            with self.subTest(words):
                asked = ("release-check", self.book, "--load", "L-4", "--at", TUESDAY)
                self.assertEqual(2, self.sbk(*asked, *words).returncode)
        self.assertEqual(2, self.sbk("release-check", self.book, "--load", "L-4", "--at", "soon").returncode)
        self.assertEqual(2, self.sbk("release-check", self.book, "--load", "L-4").returncode)
        self.ask("release-check", self.book, "--load", "L-99", "--at", TUESDAY, status=1)
        self.ask("release-check", self.book, "--load", "L-4", "--at", TUESDAY, "--cell=Z", status=1)
        self.ask("release-check", self.book, "--load", "L-4", "--at", "2026-04-05T02:30", status=1)

    def test_a_watch_is_to_do_and_a_material_without_a_ground_holds(self):
        self.under({"condition": "40", "kind": "watch", "before_minutes": 30, "radius_m": 300},
                   {"condition": "41", "kind": "record", "allowed": {"material_ground": {"sand": ["Deep Hole"],
                                                                                       "clay": []}}})
        said = self.check(TUESDAY)
        self.assertEqual("clear", said["verdict"])
        self.assertEqual([("40", "2025-11-04T08:30:00+13:00", "keep watch 300 m around")],
                         [(t["condition"], t["from"], t["what"]) for t in said["to_do"]])
        self.assertEqual(("hold", None), tuple(self.reason("41", TUESDAY, load="L-3")[k] for k in ("state", "until")))

    def test_an_open_event_that_stops_releases_holds_until_its_all_clear(self):
        stop = dict(TRIGGER, responses=[{"tier": 2, "action": "stop"}])
        readings = {"turbidity/sites.csv": SITES, "turbidity/C1.csv": half_hours([1] * 12),
                    "turbidity/R1.csv": half_hours([2, 2, 20, 20, 20, 20, 2, 2, 2, 2, 2, 2])}
        asked = (("2025-11-03T14:30",), ("2025-11-03T15:00",), ("2025-11-03T17:29",), ("2025-11-03T17:30",),
                 ("2025-11-03T22:00",))
        self.under(stop)
        self.assertEqual("cannot_tell", self.check(TUESDAY)["verdict"])
        self.write("add", self.book, "--from", self.folder(readings, "more"))
        self.assertEqual(["clear", "hold", "hold", "clear", "cannot_tell"], self.verdicts(*asked))
        self.assertIsNone(self.reason("9", "2025-11-03T15:00")["until"])
        self.under(TRIGGER)  # to slow down holds nothing
        self.write("add", self.book, "--from", self.folder(readings, "more"))
        self.assertEqual("clear", self.check("2025-11-03T15:00")["verdict"])

    def test_the_largest_load_fills_what_the_limits_leave(self):
        # 630 in situ are released. L-4 holds 200 of Pipi's 400 hopper m³: 60 buckets; sand's B is 1.25.
        self.under(dict(CONDITIONS[0], value=730))
        said = self.check()
        self.assertEqual({"consent": "TC-1", "condition": "1"}, said["largest_bound_by"])
        self.assertAlmostEqual(100, said["largest_in_situ_m3"], 6)
        self.assertAlmostEqual(125, said["largest_hopper_m3"], 6)
        self.assertAlmostEqual(2.75, said["largest_ullage_m"], 6)  # 2 m: 200, 4 m: 0
        # 4.0 m³ heaped by 0.9 is 3.6 a bucket.
        self.assertAlmostEqual(125 / 3.6, said["largest_buckets"], 6)
        self.under(dict(CONDITIONS[0], value=20000))
        said = self.check()
        self.assertEqual((None, 400), (said["largest_bound_by"], round(said["largest_hopper_m3"], 6)))

    def test_the_largest_load_just_fits_and_one_more_does_not(self):
        # A barge that is filled to just that much goes clear, and with a bucket more does not.
        self.under(dict(CONDITIONS[0], value=730))
        least = self.check()["largest_hopper_m3"]
        for more, verdict in ((0, "clear"), (3.6, "hold")):
            ullage = 2 + (200 - least - more) / 100
            self.under(dict(CONDITIONS[0], value=730),
                       loads_csv=changed(SEASON["loads.csv"], "L-4", dips_m=f"{ullage:.12f}"))
            self.assertEqual(verdict, self.check()["verdict"])

    def test_loads_that_wait_full_take_their_part_of_the_largest_first(self):
        self.under(dict(CONDITIONS[0], value=800),
                   loads_csv=SEASON["loads.csv"] + "L-5,Tuatua,sand,2025-11-03T16:00,2025-11-03T16:30,,100,80\n")
        self.assertAlmostEqual(800 - 630 - 80, self.check()["largest_in_situ_m3"], 6)

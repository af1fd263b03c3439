# SPDX-License-Identifier: GPL-3.0-or-later
"""The month's return: what is missing, what is written, and that the same book gives the same bytes."""
import json
import os
import subprocess

from conditions import KINDS, RECORD, WATCH
from trade import CONDITIONS, CONSENT, Trade, changed, season

SEASON = season()
AS_AT = ("--as-at", "2025-12-05T09:00+13:00")


COUNTS = ("condition", "state", "complied", "cannot_tell", "breached")


class Returns(Trade):
    def signed(self, **changes):
        self.new(**changes)
        for shift in ("S-1", "S-2"):
            self.write("sign", self.book, shift, at="2025-12-02T09:00+13:00")

    def month(self, *words, status=0, env=None):
        return self.ask("return", self.book, "--period", "2025-11", *AS_AT, "--by", "Caro", *words, status=status,
                        env=env)

    def test_a_shift_that_is_not_signed_is_missing_and_nothing_is_written(self):
        self.new()
        said = self.month("--out", self.path("out"), status=1)
        self.assertIn({"what": "the shift is not signed", "where": "shift S-2"}, said["missing"])
        self.assertFalse(os.path.exists(self.path("out")))
        for key in ("missing", "totals", "sealed"):
            self.assertIn(key, said)

    def test_a_release_without_a_position_holds_the_return(self):
        self.signed(trips_csv=changed(SEASON["trips.csv"], "T-2", lat="", lon=""))
        said = self.month(status=1)
        self.assertTrue(any("T-2" in m["where"] for m in said["missing"]), said["missing"])

    def test_a_period_that_is_not_over_is_missing_something(self):
        self.signed()
        for time, over in (("2026-01-31T23:59:59+13:00", False), ("2026-02-01T00:00+13:00", True)):
            self.ask("return", self.book, "--period", "2026-01", "--as-at", time, status=0 if over else 1)

    def test_a_return_holds_what_the_month_released(self):
        self.signed()
        said = self.month("--out", self.path("out"))
        self.assertEqual([], said["missing"])
        self.assertAlmostEqual(630, said["totals"]["in_situ_m3"], delta=1e-6)
        self.assertEqual(3, said["totals"]["trips"])
        with open(os.path.join(self.path("out"), "trips.csv"), encoding="utf-8") as trips:
            self.assertEqual(3, sum(line.startswith("T-") for line in trips))

    def test_anyone_can_check_the_files_by_their_sums(self):
        self.signed()
        self.month("--out", self.path("out"))
        there = sorted(os.listdir(self.path("out")))
        for name in ("SHA256SUMS", "return.json", "return.pdf", "trips.csv"):
            self.assertIn(name, there)
        checked = subprocess.run(["sha256sum", "-c", "SHA256SUMS"], cwd=self.path("out"), capture_output=True,
                                 text=True, check=False)
        self.assertEqual(0, checked.returncode, checked.stdout)

    def test_the_same_book_and_as_at_give_the_same_bytes_in_any_zone_and_language(self):
        self.signed()
        self.month("--out", self.path("out"))
        self.month("--out", self.path("out2"), env={"TZ": "America/St_Johns", "LANG": "de_DE.UTF-8",
                                                    "LC_ALL": "C.UTF-8"})
        same = subprocess.run(["diff", "-rq", self.path("out"), self.path("out2")], capture_output=True, text=True,
                              check=False)
        self.assertEqual("", same.stdout)

    def test_a_nil_month_is_a_return_too_and_its_totals_are_zero(self):
        self.signed()
        said = self.ask("return", self.book, "--period", "2026-01", "--as-at", "2026-02-03T09:00+13:00", "--out",
                        self.path("out"))
        self.assertEqual((0, 0), (said["totals"]["trips"], said["totals"]["in_situ_m3"]))
        self.assertTrue(os.path.exists(os.path.join(self.path("out"), "return.pdf")))

    def reasons(self, *conditions, **changes):
        """What November's statement of compliance lists under these conditions."""
        self.signed(consents_json={"consents": [dict(CONSENT, conditions=list(conditions))]}, **changes)
        self.month("--out", self.path("out"))
        with open(os.path.join(self.path("out"), "return.json"), encoding="utf-8") as file:
            return json.load(file)["compliance"]["reasons"]

    def test_a_limit_broken_once_before_and_again_this_month_is_not_met(self):
        # One trip a day: broken on 3 November, and already on 30 September, by two trips that were landed at sea.
        trips = SEASON["trips.csv"] + "".join(
            f"T-{n},,Skua,2025-09-30T0{n}:00+13:00,2025-09-30T0{n}:10+13:00,2025-09-30T0{n}:20+13:00,"
            f"2025-09-30T0{n}:40+13:00,Deep Hole,W,-40.59,179.61,5,1.0\n" for n in (4, 5))
        said = self.reasons(dict(CONDITIONS[2], value=1), trips_csv=trips)
        self.assertEqual(["condition 3: the limit was exceeded in this period"], said)

    def test_a_limit_that_ended_in_the_month_is_judged_at_its_end(self):
        self.assertEqual(["condition 2: used is over the limit"],
                         self.reasons(dict(CONDITIONS[1], to="2025-11-20")))

    def test_a_load_that_nobody_can_value_leaves_its_day_untold_at_the_months_end(self):
        day = dict(CONDITIONS[1], measure="wet_t", method="draughts", window={"kind": "calendar", "unit": "day"})
        self.assertEqual(["condition 2: 3 load(s) of this period cannot be valued, so it cannot be told"],
                         self.reasons(day))

    def returned(self, *conditions, **changes):
        self.reasons(*conditions, **changes)
        with open(os.path.join(self.path("out"), "return.json"), encoding="utf-8") as file:
            return json.load(file)

    def test_of_a_daily_limit_the_fullest_day_of_the_month_is_told(self):
        said = self.returned(dict(CONDITIONS[2], value=5))
        (limit,) = said["limits"]
        self.assertEqual(0, limit["used"])
        # T-1 ended after midnight of 1 November; T-2 and T-3 on the 3rd.
        self.assertEqual((2, "2025-11-03T00:00:00+13:00"),
                         (limit["largest_used"]["used"], limit["largest_used"]["from"]))

    def test_each_release_is_held_against_the_conditions_on_places(self):
        whole = {"condition": "14", "kind": "place", "inside": {"ground": "Deep Hole"}, "test": "whole_release"}
        far = {"condition": "15", "kind": "place", "test": "release_start",
               "outside": {"circle": {"lat": -40.595, "lon": 179.635, "radius_m": 200}}}
        # Without a track a whole release cannot be told; what is known of its beginning is said.
        way = dict(far, condition="17", test="whole_release")
        said = self.returned(CONDITIONS[3], whole, far, way)["compliance"]
        self.assertEqual([("4", "complied", 3, 0, 0), ("14", "cannot_tell", 0, 3, 0), ("15", "breached", 1, 0, 2),
                          ("17", "cannot_tell", 0, 3, 0)],
                         [tuple(c[k] for k in COUNTS)
                          for c in said["conditions"]])
        self.assertEqual(["condition 14: it cannot be told of trip T-1 and 2 more (no track, and no second position)",
                          "condition 15, trip T-2, trip T-3: 200 m on the wrong side of the line",
                          "condition 17: it cannot be told of trip T-1 (no track, and no second position)",
                          "condition 17: it cannot be told of trip T-2 and 1 more (no track, and no second position; "
                          "as the doors opened, 200 m on the wrong side of the line)"],
                         said["reasons"])
        self.assertEqual([], said["conditions_not_judged_here"])

    def test_watches_and_records_of_the_month_are_judged_and_what_failed_is_named(self):
        watches = ("id,trip,observer,start,end,species,distance_m,cleared\n"
                   "W-1,T-1,Ana,2025-10-31T23:20+13:00,2025-11-01T00:05+13:00,,,\n"
                   "W-2,T-2,Ana,2025-11-03T09:20+13:00,,dolphin,250,2025-11-03T09:50+13:00\n")
        said = self.returned(WATCH, RECORD, watches_csv=watches)["compliance"]
        watch, record = said["conditions"]
        self.assertEqual(("40", "breached", 1, 0, 2), tuple(watch[k] for k in COUNTS))
        self.assertEqual([("T-2", "L-2", "breached", "the water was not clear for long enough before the doors opened"),
                          ("T-3", "L-3", "breached", "no watch before the doors opened is on record")],
                         [(f["trip"], f["load"], f["state"], f["why"]) for f in watch["failed"]])
        # L-3 has no dips, and its clay may go nowhere: two causes, each with what broke it.
        self.assertEqual("breached", record["state"])
        self.assertEqual([(None, "L-3"), ("T-3", "L-3")], [(f["trip"], f["load"]) for f in record["failed"]])
        self.assertEqual(["condition 40, trip T-2: the water was not clear for long enough before the doors opened",
                          "condition 40, trip T-3: no watch before the doors opened is on record",
                          "condition 41, load L-3: not recorded: ullage dips, coaming down to the spoil",
                          "condition 41, trip T-3: clay may not go to Deep Hole"], said["reasons"])
        self.assertEqual([], said["conditions_not_judged_here"])

    def test_a_floor_that_was_not_reached_as_the_month_ended_stands_against_compliance(self):
        # November released 630 m3.
        month = {"kind": "quantity", "measure": "in_situ_m3", "op": "at_least",
                 "window": {"kind": "calendar", "unit": "month"}}
        said = self.returned(dict(month, condition="60", value=630), dict(month, condition="61", value=631),
                             dict(month, condition="62", value=9e9, window={"kind": "term"}))["compliance"]
        self.assertEqual([("60", "complied", 1, 0, 0), ("61", "breached", 0, 0, 1)],
                         [tuple(c[k] for k in COUNTS) for c in said["conditions"]])
        self.assertEqual(["condition 61, 2025-11-01 to 2025-11-30: 630 of 631 m³ in situ reached"], said["reasons"])
        (failed,) = said["conditions"][1]["failed"]
        self.assertEqual((None, "2025-11-01 to 2025-11-30", "2025-11-30T23:59:59.999+13:00"),
                         tuple(failed[k] for k in ("trip", "window", "at")))
        board = {row["condition"]: row["state"] for row in self.ask("conditions", self.book, "--period", "2025-11", *AS_AT)
                 ["conditions"]}
        self.assertEqual({"60": "within", "61": "breached", "62": "below"}, board)

    def test_a_duty_that_was_not_done_in_its_time_stands_against_compliance(self):
        # The second working day after Monday, 10 November, until 24:00.
        notice = {"condition": "50", "kind": "duty", "what": "notice", "when": {"on_date": "2025-11-10"},
                  "due": {"n": 2, "unit": "working_days"}}
        self.assertEqual(["condition 50: the notice was due 2025-11-12T24:00:00+13:00, and is not done"],
                         self.reasons(notice))

    def test_what_a_condition_is_about_and_nobody_recorded_holds_the_return(self):
        about_clay = dict(CONDITIONS[0], condition="70", value=1e6, applies={"activity": "release", "materials": ["clay"]})
        conditions = {"consents": [dict(CONSENT, conditions=[about_clay])]}
        self.signed(consents_json=conditions, loads_csv=changed(SEASON["loads.csv"], "L-2", material=""))
        self.assertEqual([{"what": "its material is not recorded, and condition 70 depends on it",
                           "where": "load L-2"}], self.month(status=1)["missing"])
        self.write("log", self.book, "load", "L-2", "material=sand", "--why", "the log says sand")
        self.assertEqual([], self.month()["missing"])

    def test_the_return_judges_the_month_as_the_board_of_conditions_does(self):
        kinds = [*CONDITIONS[3:], *KINDS]
        said = self.returned(*kinds)["compliance"]
        board = {row["condition"]: row for row in self.ask("conditions", self.book, "--period", "2025-11", *AS_AT)
                 ["conditions"]}
        self.assertEqual(["4", "5", "16", "40", "41"], sorted((c["condition"] for c in said["conditions"]), key=int))
        for one in said["conditions"]:
            row = board[one["condition"]]
            self.assertEqual(row["judged"], {k: one[k] for k in ("complied", "breached", "cannot_tell")})
            self.assertEqual([f for f in row["findings"] if f["state"] != "complied"], one["failed"])
        self.assertEqual([("43", "text")],
                         [(one["condition"], one["kind"]) for one in said["conditions_not_judged_here"]])
        for one in said["conditions_not_judged_here"]:
            self.assertEqual(board[one["condition"]]["why"], one["why"])

    def test_a_blank_of_the_last_day_of_the_month_has_had_its_day_by_the_as_at(self):
        last_day = {"departed": "2025-11-30T14:10+13:00", "release_start": "2025-11-30T16:00+13:00",
                    "release_end": "2025-11-30T16:08+13:00", "returned": "2025-11-30T17:30+13:00"}
        lacking = changed(SEASON["trips.csv"], "T-3", wave_height_m="", **last_day)
        said = self.returned(RECORD, trips_csv=lacking)["compliance"]
        self.assertIn("condition 41, trip T-3: not recorded: significant wave height", said["reasons"])
        (row,) = self.ask("conditions", self.book, "--period", "2025-11", *AS_AT)["conditions"]
        self.assertIn(("T-3", "breached"), [(f["trip"], f["state"]) for f in row["findings"]])

    def test_a_revision_that_waits_for_the_authority_is_told_with_both_readings(self):
        # Sand counts 240 of 300 hopper m³ by 1.25; revised to 1.2 it is 250. T-1 and T-2 are sand, T-3 clay by tally: 150.
        said = self.returned(dict(CONDITIONS[1], value=700),
                             factors_csv="from,material,factor,value,u,by,why\n2025-09-01,sand,bulking,1.2,0.03,Caro,survey\n")
        both = said["unaccepted_revision"]["in_situ_m3"]
        self.assertAlmostEqual(630, both["as_reported"]["value"], delta=1e-6)
        self.assertAlmostEqual(650, both["as_restated"]["value"], delta=1e-6)
        (sand,) = [f for f in said["factors"] if f["factor"].startswith("bulking factor of sand")]
        self.assertEqual((1.2, 0.03, True, None),
                         tuple(sand[k] for k in ("value", "u", "waits_for_acceptance", "accepted")))

    def test_a_limit_exceeded_as_reported_alone_is_not_met(self):
        # By 1.5, which waits, 3 November released 200 + 150 in situ; by 1.25, which the authority knows, 240 + 150.
        day = dict(CONDITIONS[1], value=380, window={"kind": "calendar", "unit": "day"})
        factor = "from,material,factor,value,u,by,why,accepted\n2025-09-01,sand,bulking,1.5,0.03,Caro,survey,"
        said = self.returned(day, factors_csv=factor + "\n")
        self.assertEqual(["condition 2: the limit was exceeded in this period"], said["compliance"]["reasons"])
        self.assertAlmostEqual(390, said["limits"][0]["largest_used"]["used"], delta=1e-6)

    def test_a_revision_accepted_after_the_month_is_the_one_reading_of_it(self):
        day = dict(CONDITIONS[1], value=380, window={"kind": "calendar", "unit": "day"})
        factor = "from,material,factor,value,u,by,why,accepted\n2025-09-01,sand,bulking,1.5,0.03,Caro,survey,"
        said = self.returned(day, factors_csv=factor + "2025-12-03\n")
        self.assertEqual([], said["compliance"]["reasons"])
        self.assertIsNone(said["unaccepted_revision"])
        self.assertAlmostEqual(350, said["limits"][0]["largest_used"]["used"], delta=1e-6)

    def test_conditions_of_one_number_are_told_apart_by_their_consent(self):
        over = dict(CONDITIONS[1], value=10)
        consents = [dict(CONSENT, conditions=[over]), dict(CONSENT, consent="TC-2", conditions=[over])]
        self.signed(consents_json={"consents": consents})
        self.month("--out", self.path("out"))
        with open(os.path.join(self.path("out"), "return.json"), encoding="utf-8") as file:
            reasons = json.load(file)["compliance"]["reasons"]
        self.assertEqual(["condition 2 of TC-1: used is over the limit", "condition 2 of TC-2: used is over the limit"],
                         reasons)

    def test_a_return_never_writes_over_another(self):
        self.signed()
        self.month("--out", self.path("out"))
        self.month("--out", self.path("out"), status=1)

    def test_a_text_that_begins_like_a_formula_is_guarded_in_the_schedule(self):
        self.signed(trips_csv=changed(SEASON["trips.csv"], "T-2", remarks="=HYPERLINK(1)"))
        self.month("--out", self.path("out"))
        with open(os.path.join(self.path("out"), "trips.csv"), encoding="utf-8") as trips:
            text = trips.read()
        self.assertIn("HYPERLINK", text)
        self.assertNotIn(",=HYPERLINK", text)
        self.assertNotIn(',"=HYPERLINK', text)

    def test_a_limit_that_was_passed_stands_against_compliance_and_is_no_refusal(self):
        self.signed()
        self.assertTrue(any("2" in reason for reason in self.month()["reasons"]))

    def test_no_limit_passed_and_nothing_stands_against_it(self):
        conditions = [dict(CONDITIONS[1], value=700)]
        self.signed(consents_json={"consents": [dict(CONSENT, conditions=conditions)]})
        self.assertEqual([], self.month()["reasons"])

    def test_a_period_that_is_no_month_is_not_answered(self):
        self.new()
        for period in ("2025-13", "2025-1", "November", ""):
            self.assertNotEqual(0, self.sbk("return", self.book, "--period", period).returncode, period)

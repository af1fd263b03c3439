# SPDX-License-Identifier: GPL-3.0-or-later
"""Limits: windows, what is used, first over, and the members that each row must hold."""
import re

from trade import CONDITIONS, CONSENT, Trade, changed, season

SEASON = season()
KEYS = ("consent", "condition", "quantity", "window_start", "window_end", "limit", "used", "used_u", "headroom",
        "p_over", "first_over")
END = ("--as-at", "2025-11-30T12:00+13:00")


def under(*conditions, **members):
    base = {"kind": "quantity", "measure": "in_situ_m3", "value": 500, "window": {"kind": "term"}}
    return {"consents": [dict(CONSENT, conditions=[{"condition": str(i + 1), **base, **c}
                                                   for i, c in enumerate(conditions)], **members)]}


class Limits(Trade):
    def test_every_row_has_its_members(self):
        self.new()
        for row in self.ask("headroom", self.book)["limits"]:
            for key in KEYS:
                self.assertIn(key, row)

    def test_headroom_is_limit_minus_used_and_below_zero_it_is_still_answered(self):
        self.new()
        row = self.limits(*END)["2"]
        self.assertAlmostEqual(630, row["used"], delta=1e-6)
        self.assertAlmostEqual(-130, row["headroom"], delta=1e-6)
        self.assertGreater(row["p_over"], 0.9)

    def test_the_line_for_people_never_makes_an_uncertainty_smaller(self):
        self.new()
        text = self.sbk("headroom", self.book, *END).stdout
        rows = self.ask("headroom", self.book, *END)["limits"]
        told = [float(u) for u in re.findall(r"± +([0-9.]+)", text)]
        self.assertEqual(len(rows), len(told))
        for row, u in zip(rows, told):
            self.assertGreaterEqual(u, row["used_u"] - 1e-6, row)
            self.assertLess(u, row["used_u"] + 1, row)
        self.assertNotIn("P(over) 0.0 %", text)
        self.assertNotIn("P(over) 100.0 %", text)

    def test_hours_that_nobody_recorded_are_not_zero(self):
        self.new(consents_json=under({"measure": "hours", "value": 10}),
                 trips_csv=changed(SEASON["trips.csv"], "T-2", release_start=""))
        row = self.limits(*END)["1"]
        self.assertEqual((1, None), (row["unknown"], row["p_over"]))
        self.assertAlmostEqual(16 / 60, row["used"], delta=1e-6)

    def test_first_over_is_the_release_that_passed_the_limit(self):
        self.new()
        self.assertIsNone(self.limits("--as-at", "2025-11-03T16:07:59+13:00")["2"]["first_over"])
        self.assertEqual("2025-11-03T16:08:00+13:00", self.limits(*END)["2"]["first_over"])

    def test_a_limit_that_is_just_reached_is_not_passed(self):
        self.new(consents_json=under({"value": 630}, {"value": 629.999}))
        rows = self.limits(*END)
        self.assertIsNone(rows["1"]["first_over"])
        self.assertIsNotNone(rows["2"]["first_over"])

    def test_months_begin_at_local_midnight_and_end_where_the_next_begins(self):
        self.new()
        row = self.limits(*END)["2"]
        self.assertEqual(("2025-11-01T00:00:00+13:00", "2025-12-01T00:00:00+13:00"),
                         (row["window_start"], row["window_end"]))
        self.assertEqual(0, self.limits("--as-at", "2025-12-01T00:00+13:00")["2"]["used"])

    def test_a_consent_year_begins_on_its_day(self):
        self.new(consents_json=under({"window": {"kind": "consent_year"}}, year_starts="11-02"))
        row = self.limits(*END)["1"]
        self.assertEqual(("2025-11-02T00:00:00+13:00", "2026-11-02T00:00:00+13:00"),
                         (row["window_start"], row["window_end"]))
        self.assertAlmostEqual(390, row["used"], delta=1e-6)

    def test_a_rolling_window_holds_its_end_and_not_its_start(self):
        self.new(consents_json=under({"measure": "trips", "window": {"kind": "rolling", "n": 2, "unit": "days"}}))
        self.assertEqual(2, self.limits("--as-at", "2025-11-03T16:08+13:00")["1"]["used"])
        self.assertEqual(1, self.limits("--as-at", "2025-11-05T10:08+13:00")["1"]["used"])
        self.assertEqual("2025-11-03T16:08:00+13:00",
                         self.limits("--as-at", "2025-11-03T16:08+13:00")["1"]["window_end"])

    def test_a_limit_for_each_cell_has_a_row_for_each(self):
        self.new(consents_json=under({"each_of": "cell"}))
        rows = {(r["each"] or {}).get("cell"): r["used"] for r in self.ask("headroom", self.book, *END)["limits"]}
        self.assertAlmostEqual(240, rows["W"], delta=1e-6)
        self.assertAlmostEqual(390, rows["E"], delta=1e-6)

    def test_a_share_of_the_total_stands_in_used_and_limit(self):
        self.new(consents_json=under({"value": None, "share_of_total": 0.15, "of": 1000, "each_of": "cell"}))
        rows = {(r["each"] or {}).get("cell"): r for r in self.ask("headroom", self.book, *END)["limits"]}
        self.assertAlmostEqual(0.15, rows["W"]["limit"], delta=1e-9)
        self.assertAlmostEqual(0.24, rows["W"]["used"], delta=1e-9)

    def test_a_scope_by_claim_counts_that_claims_part_and_a_trip_whole(self):
        self.new(consents_json=under({"applies": {"claims": ["Q2"]}},
                                     {"applies": {"claims": ["Q2"]}, "measure": "trips"}))
        rows = self.limits(*END)
        self.assertAlmostEqual(150, rows["1"]["used"], delta=1e-6)
        self.assertEqual(1, rows["2"]["used"])

    def test_a_scope_by_material_counts_the_loads(self):
        self.new(consents_json=under({"applies": {"materials": ["clay"], "activity": "release"}}))
        self.assertAlmostEqual(150, self.limits(*END)["1"]["used"], delta=1e-6)

    def test_what_counted_before_the_book_began_is_used(self):
        self.new(consents_json=under({"value": 2000}),
                 opening_csv="consent,condition,from,to,value,u,source\n"
                             "TC-1,1,2025-08-02,2025-08-20,1000,30,letter\n")
        row = self.limits(*END)["1"]
        self.assertAlmostEqual(1630, row["used"], delta=1e-6)
        self.assertGreater(row["used_u"], 30)

    def test_a_condition_names_the_method_that_counts(self):
        self.new(consents_json=under({"method": "tally", "measure": "hopper_m3"}))
        # 90 × 4.0 × 0.9 + 88 × 4.0 × 0.9 + 150 × 2.0 × 0.8.
        self.assertAlmostEqual(324 + 316.8 + 240, self.limits(*END)["1"]["used"], delta=1e-6)

    def test_a_floor_is_kept_as_one(self):
        self.new(consents_json=under({"op": "at_least", "value": 1000}))
        row = self.limits(*END)["1"]
        self.assertIsNone(row["first_over"])
        self.assertAlmostEqual(1000, row["limit"], delta=1e-9)

    def test_a_phase_is_half_open(self):
        self.new(consents_json=under({"window": {"kind": "phase", "from": "2025-11-01", "to": "2025-11-03"}}))
        row = self.limits("--as-at", "2025-11-02T12:00+13:00")["1"]
        self.assertEqual(("2025-11-01T00:00:00+13:00", "2025-11-03T00:00:00+13:00"),
                         (row["window_start"], row["window_end"]))
        self.assertAlmostEqual(240, row["used"], delta=1e-6)

    def test_a_late_entry_reopens_the_windows_after_it(self):
        self.new()
        self.write("log", self.book, "trip", "T-9", "load=L-4", "release_end=2025-11-01T05:00")
        row = self.limits(*END)["2"]
        # L-4: dips of 2 m are 200 m³, 160 in situ: 240 + 160 + 240 passes 500 with T-2.
        self.assertAlmostEqual(790, row["used"], delta=1e-6)
        self.assertEqual("2025-11-03T10:08:00+13:00", row["first_over"])

    def test_a_place_or_a_duty_is_no_limit(self):
        self.new(consents_json={"consents": [dict(CONSENT, conditions=CONDITIONS[3:])]})
        self.assertEqual([], self.ask("headroom", self.book)["limits"])

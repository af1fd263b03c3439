# SPDX-License-Identifier: GPL-3.0-or-later
"""Barges against the bed: claim-periods, the factor that closes them, its effect, and what is judged until accepted."""
from trade import DEVICE, NOW, TALLIES, Trade, table

SURVEYS = ("survey,surveyed_on,kind\nS-A,2025-10-30,before\nS-B,2025-11-04,progress\nS-C,2025-11-20,after\n")
REMOVED = ("removed,before,after,claim,removed_in_situ_m3,removed_u_m3,infill_in_situ_m3,infill_u_m3,by\n"
           "R-1,S-A,S-B,Q1,450,20,10,5,Caro\n")
END = ("--as-at", "2025-11-30T12:00+13:00")
KEYS = ("claim", "removed_m3", "removed_m3_u", "deposited_m3", "barges_in_situ_m3", "barges_in_situ_m3_u", "e_n",
        "bulking_factor_closing", "bulking_factor_closing_u")


class Compare(Trade):
    def test_what_was_dug_too_deep_is_told_by_claim_with_its_cost(self):
        self.with_surveys(REMOVED.split("\n")[0] + ",within_allowance_m3,within_allowance_u_m3,beyond_allowance_m3\n"
                          "R-1,S-A,S-B,Q1,400,10,,,Ana,30,4,\nR-2,S-A,S-B,Q2,100,10,,,Ana,,,12\n")
        said = self.ask("over-dredge", self.book, "--unit-cost", "20", "--as-at", "2025-12-05T00:00+13:00")
        self.assertEqual([("Q1", 30, 4, None, 600, 80, ["R-1"]), ("Q2", None, None, 12, 240, 0, ["R-2"])],
                         [(r["claim"], r["within_allowance_m3"], r["within_allowance_m3_u"], r["beyond_allowance_m3"],
                           r["cost"], r["cost_u"], r["removed"]) for r in said["claims"]])
        self.assertEqual((42, 4, 840), tuple(said["all"][k] for k in ("below_target_m3", "below_target_m3_u", "cost")))
        self.assertAlmostEqual(42 / 500, said["all"]["share_of_removed"])
        self.assertEqual(2, len(said["claims"][1]["assumed"]))
        free = self.ask("over-dredge", self.book, "--as-at", "2025-12-05T00:00+13:00")
        self.assertEqual([None, None], [r["cost"] for r in free["claims"]])
        self.assertEqual(2, self.sbk("over-dredge", self.book, "--unit-cost", "-1").returncode)

    def with_surveys(self, removed=REMOVED):
        self.new(surveys_csv=SURVEYS, removed_csv=removed)

    def compare(self, *words):
        return self.ask("compare", self.book, *words, *END)

    def accept(self, *words, status=0):
        return self.write("accept", self.book, "sand", *words, status=status, by="Caro")

    def test_a_claim_period_has_its_members_and_its_loads(self):
        self.with_surveys()
        said = self.compare("S-A", "S-B")
        self.assertEqual(1, len(said["claims"]))
        row = said["claims"][0]
        for key in KEYS:
            self.assertIn(key, row)
        # L-1 and L-2: 300 m³ in the hopper each, 240 in situ by 1.25; nothing was typed as deposited.
        self.assertEqual(("Q1", 2, None), (row["claim"], row["loads"], row["deposited_m3"]))
        self.assertAlmostEqual(480, row["barges_in_situ_m3"], delta=1e-6)
        self.assertAlmostEqual(600, row["barges_hopper_m3"], delta=1e-6)
        self.assertAlmostEqual(20, row["difference_m3"], delta=1e-6)
        self.assertAlmostEqual(600 / 460, row["bulking_factor_closing"], delta=1e-9)
        self.assertEqual("agree", row["state"])
        # 480 · 0.05/1.25 by the factor, 3 cm of ullage on 100 m² twice in squares: 19.2 and 3.394; the bed 20.616.
        u = (19.2 ** 2 + 2 * (3 / 1.25) ** 2) ** 0.5
        self.assertAlmostEqual(u, row["barges_in_situ_m3_u"], delta=1e-6)
        self.assertAlmostEqual(20 / (2 * (u ** 2 + 20 ** 2 + 5 ** 2) ** 0.5), row["e_n"], delta=1e-6)

    def test_without_surveys_every_closed_claim_period_is_compared(self):
        self.with_surveys(REMOVED + "R-2,S-B,S-C,Q1,100,10,,,Caro\n")
        self.assertEqual(["R-1", "R-2"], [r["removed"] for r in self.compare()["claims"]])
        early = self.ask("compare", self.book, "--as-at", "2025-11-10T12:00+13:00")
        self.assertEqual(["R-1"], [r["removed"] for r in early["claims"]])

    def test_the_day_of_a_survey_belongs_to_what_was_before_it(self):
        surveys = SURVEYS.replace("2025-10-30", "2025-10-31").replace("2025-11-04", "2025-11-03")
        self.new(surveys_csv=surveys, removed_csv=REMOVED)
        self.assertEqual(1, self.compare()["claims"][0]["loads"])

    def test_what_is_not_known_is_never_agreement(self):
        self.with_surveys("removed,before,after,claim,removed_in_situ_m3,removed_u_m3\nR-1,S-A,S-B,Q1,450,\n"
                          "R-2,S-B,S-A,Q1,450,20\nR-3,S-A,S-B,Q2,,\n")
        said = self.compare()
        self.assertEqual({"cannot_tell"}, {r["state"] for r in said["claims"]})
        self.assertTrue(all(r["why"] for r in said["claims"]))
        self.assertEqual([], said["materials"])
        self.assertTrue([a for r in said["claims"] for a in r["assumed"] if "infill" in a])

    def test_weighed_or_stated_loads_do_not_hang_on_the_factor(self):
        # Q2: L-3 states 200 m³ in situ, L-4 holds 200 m³ of sand; (360 − 200) m³ of bed are left for it.
        self.new(surveys_csv=SURVEYS, tallies_csv=table(TALLIES.replace("ripper 150", "ripper -")),
                 removed_csv="removed,before,after,claim,removed_in_situ_m3,removed_u_m3\nR-1,S-A,S-B,Q2,360,10\n")
        self.assertAlmostEqual(200 / 160, self.compare()["claims"][0]["bulking_factor_closing"], delta=1e-9)

    def test_a_proposal_lies_between_the_book_and_the_bed(self):
        self.with_surveys()
        material = self.compare()["materials"][0]
        self.assertEqual(("sand", 1.25, 0.05, 1, ["R-1"]), (material["material"], material["prior"],
                                                            material["prior_u"], material["dof"],
                                                            material["evidence"]))
        self.assertTrue(1.25 < material["proposal"] < 600 / 460)
        self.assertLess(material["proposal_u"], 0.05)
        self.assertTrue(0 < material["p"] < 1)

    def test_the_effect_on_every_limit_is_shown_before_anything_is_written(self):
        self.with_surveys()
        before = self.limits(*END)
        said = self.compare("--propose", "sand")
        effects = {e["condition"]: e for e in said["limits"]}
        self.assertEqual(before.keys(), effects.keys())
        self.assertAlmostEqual(before["1"]["used"], effects["1"]["used"], delta=1e-9)
        # 600 m³ of sand released so far, and 240 of clay in the hopper: 150 in situ.
        want = 600 / said["proposed"]["value"] + 150
        self.assertAlmostEqual(want, effects["1"]["used_with_it"], delta=1e-6)
        self.assertAlmostEqual(before["1"]["used"], effects["1"]["used_judged_until_accepted"], delta=1e-9)
        self.assertEqual(before, self.limits(*END))

    def test_an_accepted_proposal_is_a_dated_row_and_the_higher_is_judged_until_the_authority_accepts(self):
        self.with_surveys()
        self.accept("--from", "2025-11-01", status=1)  # a decision has a reason
        done = self.accept("--from", "2025-11-01", "--why", "closing survey S-B")
        row = self.ask("show", self.book, "factor", "F-01")
        self.assertIn("R-1", str(row))
        limit = self.limits(*END)["1"]
        self.assertAlmostEqual(240 * 2 + 150, limit["used"], delta=1e-6)
        self.assertAlmostEqual(limit["used"], limit["used_as_reported"], delta=1e-9)
        # L-1 was full on 31 October: it keeps the old factor.
        self.assertAlmostEqual(390 + 300 / done["value"], limit["used_as_restated"], delta=1e-6)
        self.ask("log", self.book, "factor", "F-01", "accepted=2025-11-20", *DEVICE, *NOW, "--by", "Caro")
        limit = self.limits(*END)["1"]
        self.assertAlmostEqual(390 + 300 / done["value"], limit["used"], delta=1e-6)
        self.assertNotIn("used_as_reported", limit)

    def test_what_a_factor_rests_on_is_not_asked_again(self):
        self.with_surveys()
        self.accept("--from", "2025-11-01", "--why", "closing survey S-B")
        said = self.compare()
        self.assertEqual([], said["materials"])
        self.assertEqual(["R-1"], [r["removed"] for r in said["left_out"]])

    def test_a_whole_covered_by_its_halves_is_not_counted_twice(self):
        self.with_surveys(REMOVED + "R-2,S-B,S-C,Q1,10,10,,,Caro\nR-3,S-A,S-C,Q1,460,22,10,5,Caro\n")
        said = self.compare()
        self.assertEqual(["R-3"], [r["removed"] for r in said["left_out"]])

    def test_unknown_names_are_refused(self):
        self.with_surveys()
        self.ask("compare", self.book, "S-A", "S-Z", status=1)
        self.ask("compare", self.book, "--propose", "gold", status=1)
        self.ask("compare", self.book, "--propose", "clay", status=1)
        self.assertEqual(2, self.sbk("compare", self.book, "S-A").returncode)

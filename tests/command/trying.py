# SPDX-License-Identifier: GPL-3.0-or-later
"""A condition that is only thought of, held against the season that has passed; and the sentence that it makes."""
import json

from trade import Trade

AS_AT = ("--as-at", "2025-12-01T12:00+13:00")
LIMIT = {"condition": "9", "kind": "quantity", "measure": "in_situ_m3", "value": 500, "window": {"kind": "term"},
         "from": "2027-01-01"}


class Trying(Trade):
    def trial(self, condition, *words, status=0):
        with open(self.path("candidate.json"), "w", encoding="utf-8") as file:
            json.dump(condition, file)
        return self.ask("try", self.book, "--condition", self.path("candidate.json"), *AS_AT, *words, status=status)

    def test_a_limit_is_passed_at_the_release_that_the_tickets_say(self):
        self.new()
        said = self.trial(LIMIT)
        # 240 and 240 m³ by the dips; of the third 150 buckets of 2 m³, 0.8 full, by 1.6: 150 m³, which make 630.
        self.assertEqual((1, 3, 0, "releases"), (said["times"], said["looked_at"], said["cannot_tell"], said["of"]))
        self.assertEqual("2025-11-03T16:08:00+13:00", said["first"])
        (passed,) = said["passes"]
        self.assertEqual(("T-3", "L-3", 500), (passed["what"], passed["load"], passed["level"]))
        self.assertAlmostEqual(630, passed["value"], places=6)
        self.assertEqual("No more than 500 m³ in situ over the whole term of the consent, counted at release.",
                         said["sentence"])
        before = self.trial(LIMIT, "--to", "2025-11-03T12:00+13:00")
        self.assertEqual((0, 2, None), (before["times"], before["looked_at"], before["first"]))

    def test_places_and_seas_are_tried_release_by_release(self):
        self.new()
        away = self.trial({"condition": "9", "kind": "place", "inside": {"cell": "W"}})
        self.assertEqual(["T-2", "T-3"], [p["what"] for p in away["passes"]])
        sea = self.trial({"condition": "9", "kind": "series", "variable": "wave_height_m", "compare": {"absolute": 1.15}})
        self.assertEqual([("T-3", 1.2)], [(p["what"], p["value"]) for p in sea["passes"]])

    def test_what_cannot_be_tried_says_why_and_a_wrong_member_is_refused(self):
        self.new()
        said = self.trial({"condition": "9", "kind": "watch", "radius_m": 300})
        self.assertTrue(said["why_not"])
        self.assertIsNone(said["times"])
        wrong = self.trial(dict(LIMIT, windows={"kind": "term"}), status=1)
        self.assertIn("unknown-member", [r["code"] for r in wrong["refusals"]])
        lost = self.trial(dict(LIMIT, applies={"grounds": ["Deep Hol"]}), status=1)
        self.assertEqual(("unknown-reference", "did you mean Deep Hole?"),
                         (lost["refusals"][0]["code"], lost["refusals"][0]["mend"]))
        self.assertEqual(2, self.sbk("try", self.book).returncode)

    def test_a_condition_is_shown_with_its_sentence(self):
        self.new()
        said = self.ask("show", self.book, "condition", "3")
        self.assertEqual("No more than 2 trips in a calendar day, counted at release.", said["sentence"])

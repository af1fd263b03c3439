# SPDX-License-Identifier: GPL-3.0-or-later
"""What is done about turbidity: answers to passed triggers, instruments and their calibration, samples, the return."""
import json
import os

from trade import CONSENT, Trade
from turbidity import SITES, TRIGGER, half_hours

AS_AT = ("--as-at", "2025-12-05T09:00+13:00")
# Over since 14:00, passed at 15:00, all clear at 17:30; the answer is due at 17:00 (tests/command/turbidity.py).
MURKY = [2, 2, 20, 20, 20, 20, 2, 2, 2, 2, 2, 2]
ANSWER = {"kind": "trigger", "condition": "9", "place": "R1", "from": "2025-11-03T14:10+13:00",
          "to": "2025-11-03T17:30+13:00", "cause": "digging on the ebb", "told": "Tern Council 2025-11-03T15:20+13:00",
          "action": "bucket slowed", "closed_by": "Caro"}
# The made-up set of TB-58 to TB-67: COMP with R 4.2.2 lm(log10(S) ~ log10(T)), method of Duan 1983 and USGS TM 3-C4.
TURBIDITY = (3, 6, 11, 19, 30, 48, 75, 110, 170, 260)
SOLIDS = (7, 11, 24, 31, 64, 81, 160, 190, 330, 470)


class Water(Trade):
    def book_of(self, readings=tuple(MURKY), **files):
        self.new(consents_json={"consents": [dict(CONSENT, conditions=[TRIGGER])]})
        files = {"turbidity/R1.csv": half_hours(readings), "turbidity/C1.csv": half_hours([1] * len(readings)), **files}
        self.write("add", self.book, "--from", self.folder({"turbidity/sites.csv": SITES, **files}, "more"))
        for shift in ("S-1", "S-2"):
            self.write("sign", self.book, shift, at="2025-12-02T09:00+13:00")

    def answer(self, **changes):
        said = {**ANSWER, **changes}
        self.write("log", self.book, "event", "EV-1", *(f"{name}={value}" for name, value in said.items()))

    def events(self, *words):
        return self.ask("turbidity", self.book, "--site", "R1", *words)["events"]

    def state(self):
        (event,) = self.events()
        return event["answer"]

    def month(self, *words, status=0):
        return self.ask("return", self.book, "--period", "2025-11", *AS_AT, "--by", "Caro", *words, status=status)

    def test_a_passed_trigger_without_an_answer_holds_the_return_until_it_is_logged(self):
        self.book_of()
        (missing,) = self.month(status=1)["missing"]
        self.assertEqual("trigger 9 at R1 from 2025-11-03T14:00:00+13:00", missing["where"])
        self.answer(cause="", closed_by="")
        self.assertEqual(["the event that answers it does not say the cause",
                          "the event that answers it does not say who closed it"],
                         [m["what"] for m in self.month(status=1)["missing"]])
        self.answer()
        self.assertEqual([], self.month()["missing"])
        (event,) = self.events()
        self.assertEqual((True, "answered", "Caro", "bucket slowed", "2025-11-03T15:20:00+13:00", "digging on the ebb"),
                         tuple(event[k] for k in ("answered", "answer", "answered_by", "action", "told_at", "cause")))

    def test_an_answer_is_late_after_its_due_time_and_undated_where_nobody_wrote_when(self):
        self.book_of()
        for told, state, word in (("Tern Council 2025-11-03T17:00+13:00", "answered", None),
                                  ("Tern Council 2025-11-03 17:01", "late", "was told 2025-11-03T17:01:00+13:00"),
                                  ("Tern Council", "undated", "cannot be told whether")):
            with self.subTest(told):
                self.answer(told=told)
                self.assertEqual(state, self.state())
                reasons = self.month()["reasons"]
                self.assertEqual([word is not None], [any(word in r for r in reasons)] if word else [bool(reasons)])

    def test_an_answer_is_of_the_same_condition_time_and_site(self):
        self.book_of()
        for change in ({"condition": "10"}, {"place": "C1"}, {"kind": "breach"},
                       {"from": "2025-11-03T17:31+13:00", "to": "2025-11-03T18:00+13:00"},
                       {"from": "2025-11-03T13:00+13:00", "to": ""}):
            with self.subTest(change):
                self.answer(**change)
                self.assertEqual("unanswered", self.state())
        self.answer(place="off the quay", **{"from": "2025-11-03T17:30+13:00", "to": ""})
        self.assertEqual("answered", self.state())

    def test_before_it_is_due_an_answer_is_waited_for(self):
        self.book_of()
        for at, state in (("2025-11-03T17:00+13:00", "waiting"), ("2025-11-03T17:01+13:00", "unanswered")):
            self.assertEqual([state], [e["answer"] for e in self.events("--as-at", at)])

    def returned(self):
        self.month("--out", self.path("out"))
        with open(os.path.join(self.path("out"), "return.json"), encoding="utf-8") as file:
            return json.load(file)

    def test_the_return_tells_each_sites_month_with_raw_checked_and_reported_apart(self):
        self.book_of(**{"turbidity/overrules.csv": "site,from,to,flag,why,by\n"
                                                   "R1,2025-11-03T14:30+13:00,2025-11-03T15:00+13:00,3,seen,Caro\n"})
        self.answer()
        said = {row["site"]: row for row in self.returned()["turbidity"]}
        r1 = said["R1"]
        # By hand: twelve readings, two set aside; of 2 eight times and 20 twice the type-7 place of 95 % is 8.55.
        self.assertEqual((12, 10, 2, 20, 20), tuple(r1[k] for k in ("readings", "counted", "median", "p95", "max")))
        self.assertEqual({"1": 0, "2": 12, "3": 0, "4": 0, "9": 0}, r1["flags_by_checks"])
        self.assertEqual({"1": 0, "2": 10, "3": 2, "4": 0, "9": 0}, r1["flags"])
        # From 13:00 on the 3rd to midnight before 1 December: 659 hours, two readings each.
        self.assertAlmostEqual(2 * 659, r1["expected"])
        (overruled,) = r1["overruled"]
        self.assertEqual((2, "3", "seen", "Caro"), tuple(overruled[k] for k in ("readings", "flag", "why", "by")))
        self.assertEqual([], said["C1"]["hours_over"])

    def test_hours_over_count_each_reading_over_the_level(self):
        self.book_of()
        self.answer()
        said = {row["site"]: row for row in self.returned()["turbidity"]}
        # Five means are above 6 (tests/command/turbidity.py), half an hour each.
        self.assertEqual([("9", 2.5)], [(h["condition"], h["hours"]) for h in said["R1"]["hours_over"]])

    def test_readings_after_a_calibration_ended_are_marked_and_keep_their_flag(self):
        # Readings from 13:00 on, a half-hour apart: the calibration ends at 14:00, the logger is changed at 16:00.
        self.book_of(**{"turbidity/instruments.csv":
                        "site,serial,deployed,recovered,calibrated,calibrated_until\n"
                        "R1,A7,2025-11-03T13:30+13:00,2025-11-03T16:00+13:00,2025-11-01,2025-11-03T14:00+13:00\n"
                        "R1,B2,2025-11-03T16:00+13:00,,2025-11-01,2026-05-01\n"})
        said = self.ask("turbidity", self.book, "--site", "R1")
        self.assertEqual(["not_recorded", "valid"] + ["expired"] * 4 + ["valid"] * 6,
                         [r["calibration"] for r in said["series"]])
        self.assertEqual({2}, {r["flag"] for r in said["series"]})
        self.assertEqual([4], [m["calibration_expired"] for m in said["completeness"]])
        self.assertEqual([("A7", "2025-11-03T14:00:00+13:00"), ("B2", "2026-05-01T00:00:00+12:00")],
                         [(i["serial"], i["expires"]) for i in said["instruments"]])
        self.answer()
        (r1,) = [row for row in self.returned()["turbidity"] if row["site"] == "R1"]
        self.assertEqual((4, 1), (r1["calibration_expired"], r1["calibration_not_recorded"]))

    def test_a_calibration_made_later_does_not_heal_what_was_read_before(self):
        self.book_of(**{"turbidity/instruments.csv":
                        "site,serial,deployed,recovered,calibrated,calibrated_until\n"
                        "R1,A7,2025-11-03T13:00+13:00,2025-11-03T15:00+13:00,,2025-11-03T14:00+13:00\n"
                        "R1,A7,2025-11-03T15:00+13:00,,2025-11-03T15:30+13:00,2026-05-01\n"})
        self.assertEqual(["valid"] * 2 + ["expired"] * 3 + ["valid"] * 7,
                         [r["calibration"] for r in self.ask("turbidity", self.book, "--site", "R1")["series"]])

    def test_samples_make_the_published_line_and_what_has_no_logarithm_is_left_out(self):
        rows = "".join(f"R1,2025-11-{i + 3:02}T10:00+13:00,{t},{s}\n"
                       for i, (t, s) in enumerate(zip(TURBIDITY, SOLIDS)))
        self.book_of(**{"turbidity/samples.csv": "site,time,turbidity,solids_mg_l\n" + rows +
                                                 "R1,2025-11-20T10:00+13:00,0,4\nC1,2025-11-20T10:00+13:00,9,900\n"})
        said = self.ask("solids", self.book, "--site", "R1", "--at", "50")
        for key, value, half in (("n", 10, 0), ("intercept", 0.3360415450, 1e-9), ("slope", 0.9666664270, 1e-9),
                                 ("standard_error", 0.0520907959, 1e-9), ("r2", 0.9936856239, 1e-9),
                                 ("smearing", 1.0056862486, 1e-9)):
            self.assertAlmostEqual(value, said[key], delta=half)
        at = said["at"]
        for key, value, half in (("solids_mg_l", 95.68444021, 1e-7), ("low_mg_l", 75.663467, 1e-5),
                                 ("high_mg_l", 121.003074, 1e-5)):
            self.assertAlmostEqual(value, at[key], delta=half)
        self.assertEqual([None] * 10 + ["a value is not over 0: it has no logarithm"],
                         [p["left_out"] for p in said["points"]])
        few = self.ask("solids", self.book, "--site", "R1", "--as-at", "2025-11-04T12:00+13:00")
        self.assertEqual((2, None, "2 samples make no regression"), (few["n"], few["slope"], few["why"]))
        self.ask("solids", self.book, "--site", "R9", status=1)

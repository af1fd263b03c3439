# SPDX-License-Identifier: GPL-3.0-or-later
"""Duties: what a consent asks for by a day, whether it was done, and the calendar that takes it along."""
import json
import os
import re
import subprocess
from datetime import datetime

from trade import CONSENT, Trade
from turbidity import SITES, TRIGGER, half_hours

RETURN = {"condition": "31", "kind": "duty", "text": "monthly return, nil months too; to the council", "what": "return",
          "when": {"cycle": "month"}, "due": {"n": 10, "unit": "working_days"}, "nil_required": True}
SURVEY = {"condition": "30", "kind": "duty", "text": "survey every 400 m³", "what": "survey",
          "when": {"every": {"measure": "in_situ_m3", "value": 400}}, "due": {"n": 20, "unit": "working_days"},
          "blocks": ["release"]}
REST = {"weekends": True, "yearly": ["12-20..01-10"]}
# Debian's own python has the library (tests/packages.txt), whichever python runs the tests.
READER = """
import icalendar, json, sys
tasks = icalendar.Calendar.from_ical(open(sys.argv[1], "rb").read()).walk("VTODO")
print(json.dumps([{"uid": str(t["UID"]), "summary": str(t["SUMMARY"]), "due": t["DUE"].dt.isoformat(),
                   "stamp": t["DTSTAMP"].dt.isoformat(), "status": str(t["STATUS"]), "said": str(t["DESCRIPTION"]),
                   "done": t["COMPLETED"].dt.isoformat() if "COMPLETED" in t else None}
                  for t in tasks]))
"""
AS_AT = ("--as-at", "2025-12-20T12:00+13:00")


class Duties(Trade):
    def under(self, *conditions, **changes):
        self.new(consents_json={"consents": [dict(CONSENT, not_working=REST, conditions=list(conditions))]}, **changes)

    def duties(self, *words):
        return self.ask("duties", self.book, *(words or AS_AT))["duties"]

    def of(self, month):
        return next(d for d in self.duties() if (d["covers_from"] or "").startswith(month))

    def test_a_monthly_return_is_due_after_ten_working_days(self):
        self.under(RETURN)
        october = self.of("2025-10")
        # Counted on a wall calendar: 3 to 7 and 10 to 14 November.
        self.assertEqual(("2025-11-15T00:00:00+13:00", "overdue"), (october["due"], october["state"]))
        # 1 to 5 and 8 to 12 December.
        self.assertEqual("2025-12-13T00:00:00+13:00", self.of("2025-11")["due"])
        # The break is over on 10 January: 12 to 16 and 19 to 23 January.
        self.assertEqual(("2026-01-24T00:00:00+13:00", "coming"),
                         (self.of("2025-12")["due"], self.of("2025-12")["state"]))

    def test_a_due_time_after_the_last_listed_holiday_says_so(self):
        listed = dict(REST, dates=["2025-10-27"])
        self.new(consents_json={"consents": [dict(CONSENT, not_working=listed, conditions=[RETURN])]})
        duties = self.ask("duties", self.book, "--as-at", "2026-02-10T12:00+13:00")["duties"]
        told = {d["covers_from"][:7]: d["holidays_listed_to"] for d in duties if d["covers_from"]}
        self.assertEqual((None, None, 2025, 2025), tuple(told[m] for m in ("2025-10", "2025-11", "2025-12", "2026-01")))
        said = self.sbk("duties", self.book, "--as-at", "2026-02-10T12:00+13:00").stdout
        self.assertIn("; holidays are listed to 2025 only", said)
        # Due at the end of a day, and so said.
        self.assertIn("due 2025-11-14T24:00:00+13:00", said)

    def test_what_was_logged_is_done_and_kept_through_a_folder(self):
        self.under(RETURN)
        said = self.sbk("log", self.book, "duty_done", "DD-1", "condition=31", "covers_from=2025-10-01",
                        "done_at=2025-11-17T10:00", "by=Ana", "evidence=letter 4", "--by=Ana")
        self.assertEqual(0, said.returncode, said.stderr)
        october = self.of("2025-10")
        self.assertEqual(("done", True, "2025-11-17T10:00:00+13:00", "Ana", "letter 4"),
                         tuple(october[key] for key in ("state", "late", "done_at", "by", "evidence")))
        self.assertEqual("overdue", self.of("2025-11")["state"])
        early = self.duties("--as-at", "2025-11-16T00:00+13:00")
        self.assertEqual(["overdue"], [d["state"] for d in early if d["covers_from"].startswith("2025-10")])

    def test_a_survey_is_asked_for_at_the_release_that_reaches_the_step(self):
        self.under(SURVEY)
        rows = self.duties()
        self.assertEqual(400, rows[0]["step"])
        self.assertEqual("coming", rows[-1]["state"])
        used = sum(r["in_situ_m3"] for r in self.ask("volumes", self.book, *AS_AT)["rows"])
        self.assertAlmostEqual(400 - used % 400, rows[-1]["to_go_m3"], 6)
        self.assertEqual(int(used // 400), len(rows) - 1)

    def test_an_overdue_survey_that_blocks_holds_the_release_until_it_is_logged(self):
        self.under(SURVEY)
        check = ("release-check", self.book, "--load", "L-4", "--at", "2026-03-02T10:00")
        said = self.ask(*check)
        self.assertEqual(("hold", ["30"], [None]), (said["verdict"], [r["condition"] for r in said["reasons"]],
                                                    [r["until"] for r in said["reasons"]]))
        self.assertIn("survey was due by", said["reasons"][0]["why"])
        for number in range(len(self.duties("--as-at", "2026-03-01T00:00+13:00")) - 1):
            self.sbk("log", self.book, "duty_done", f"DD-{number}", "condition=30", "done_at=2026-02-10T10:00",
                     "--by=Ana")
        self.assertEqual("clear", self.ask(*check)["verdict"])

    def test_another_library_reads_the_calendar(self):
        self.under(RETURN, SURVEY)
        path = os.path.join(os.path.dirname(self.book), "duties.ics")
        rows = self.duties(*AS_AT, "--calendar", path)
        with open(path, "rb") as file:
            raw = file.read()
        self.assertEqual(raw.count(b"\n"), raw.count(b"\r\n"))
        self.assertLessEqual(max(map(len, raw.split(b"\r\n"))), 75)
        tasks = self.read_back(path)
        told = [r for r in rows if r["arises"] and r["state"] != "nil"]
        self.assertEqual(len(told), len(tasks))
        self.assertEqual(len(tasks), len({task["uid"] for task in tasks}))
        for row, task in zip(told, tasks):
            self.assertEqual(f"Condition {row['condition']}: {row['what']}, {row['text']}", task["summary"])
            self.assertEqual(datetime.fromisoformat(row["due"]), datetime.fromisoformat(task["due"]))
            self.assertEqual("2025-12-19T23:00:00+00:00", task["stamp"])

    def read_back(self, path):
        return json.loads(subprocess.run(["/usr/bin/python3", "-c", READER, path], check=True, capture_output=True,
                                         text=True).stdout)

    def test_what_passed_triggers_ask_for_stands_in_the_calendar_too(self):
        tell = {"tier": 2, "action": "tell", "within": {"n": 1, "unit": "working_days"}, "to": "Tern Council; night desk"}
        self.under(RETURN, dict(TRIGGER, responses=TRIGGER["responses"] + [tell]))
        # Over since 14:00, passed at 15:00, all clear at 17:30 (tests/command/turbidity.py).
        murky = half_hours([2, 2, 20, 20, 20, 20, 2, 2, 2, 2, 2, 2])
        self.write("add", self.book, "--from", self.folder(
            {"turbidity/sites.csv": SITES, "turbidity/R1.csv": murky, "turbidity/C1.csv": half_hours([1] * 12)}, "more"))
        path = os.path.join(os.path.dirname(self.book), "duties.ics")
        as_at = ("--as-at", "2025-11-03T16:00+13:00")

        def tasks():
            said = self.ask("duties", self.book, *as_at, "--calendar", path)
            found = [t for t in self.read_back(path) if t["summary"].startswith("Condition 9:")]
            self.assertEqual(len(said["responses"]), len(found))
            for row, task in zip(said["responses"], found):
                self.assertEqual(datetime.fromisoformat(row["due"]), datetime.fromisoformat(task["due"]))
            return found
        slow, tell = tasks()
        self.assertEqual(("Condition 9: slow for R1, " + TRIGGER["text"], "2025-11-03T04:00:00+00:00", "NEEDS-ACTION",
                          None), tuple(slow[k] for k in ("summary", "due", "status", "done")))
        # The next working day, a Tuesday, to its end.
        self.assertEqual("2025-11-04T11:00:00+00:00", tell["due"])
        self.assertIn("\nTo Tern Council; night desk\n", tell["said"])
        self.write("log", self.book, "event", "EV-1", "kind=trigger", "condition=9", "place=R1", "action=bucket slowed",
                   "from=2025-11-03T14:10+13:00", "told=Tern Council 2025-11-03T15:20+13:00")
        again = tasks()
        self.assertEqual([slow["uid"], tell["uid"]], [t["uid"] for t in again])
        self.assertEqual([("COMPLETED", "2025-11-03T02:20:00+00:00")] * 2, [(t["status"], t["done"]) for t in again])
        self.assertIn("\nAnswered: bucket slowed\n", again[0]["said"])

    def test_a_task_keeps_its_uid_when_its_state_changes(self):
        self.under(RETURN)
        path = os.path.join(os.path.dirname(self.book), "duties.ics")
        found = []
        for _ in range(2):
            self.duties(*AS_AT, "--calendar", path)
            with open(path, encoding="utf-8", newline="") as file:
                text = file.read()
            found.append((re.findall("UID:.*", text), text.count("STATUS:COMPLETED")))
            self.sbk("log", self.book, "duty_done", "DD-1", "condition=31", "covers_from=2025-10-01",
                     "done_at=2025-11-12T10:00", "--by=Ana")
        self.assertEqual(found[0][0], found[1][0])
        self.assertEqual([0, 1], [completed for _, completed in found])

    def test_a_file_that_is_no_calendar_is_never_written_over(self):
        self.under(RETURN)
        path = os.path.join(os.path.dirname(self.book), "notes.txt")
        with open(path, "w", encoding="utf-8") as file:
            file.write("mine")
        said = self.sbk("duties", self.book, *AS_AT, "--calendar", path, "--json")
        self.assertEqual((1, "not-empty"), (said.returncode, json.loads(said.stdout)["refusals"][0]["code"]))
        with open(path, encoding="utf-8") as file:
            self.assertEqual("mine", file.read())

    def test_a_book_without_duties_says_so(self):
        self.under()
        self.assertEqual([], self.duties())

# SPDX-License-Identifier: GPL-3.0-or-later
"""Turbidity as a site's readings, flags, statistic and passed triggers; loggers' files as they come."""
import json
import os
import unittest
from datetime import datetime, timedelta

from trade import CONDITIONS, CONSENT, SBK, Trade

TRIGGER = {"condition": "9", "kind": "series", "text": "murky", "variable": "turbidity", "sites": ["R1"],
           "control": "C1", "statistic": {"kind": "mean"}, "over_minutes": 60, "min_complete": 0.5,
           "compare": {"above_control": 5}, "passes": {"held_hours": 1}, "tier": 2,
           "clear": {"sites": "same", "held_hours": 1},
           "responses": [{"tier": 2, "action": "slow", "within": {"n": 2, "unit": "hours"}, "to": "Tern Council"}]}
SITES = "site,role,unit,interval_min,range_high\nR1,impact,NTU,30,\nC1,control,NTU,30,90\n"


def half_hours(values):
    rows = [f"2025-11-03T{i // 2:02d}:{i % 2 * 30:02d}Z,{v}" for i, v in enumerate(values)]
    return "\n".join(["time,value", *rows]) + "\n"


def write_minutes(path, rows):
    """A reading a minute, as a logger writes it; never all of it in memory."""
    start = datetime(2022, 1, 1)
    with open(path, "w", encoding="utf-8") as f:
        f.write("time,turbidity NTU\n")
        f.writelines(f"{(start + timedelta(minutes=i)).isoformat()}Z,{3 + i % 97 / 10:.1f}\n" for i in range(rows))


class Turbidity(Trade):
    def book_of(self, **files):
        consent = dict(CONSENT, conditions=CONDITIONS + [TRIGGER])
        self.new(consents_json={"consents": [consent]})
        folder = self.folder({"turbidity/sites.csv": SITES, **files}, "more")
        self.write("add", self.book, "--from", folder)

    def turbidity(self, site, *words):
        return self.ask("turbidity", self.book, "--site", site, *words)

    def test_a_trigger_passes_after_its_hour_and_is_answered_by_its_time(self):
        self.book_of(**{"turbidity/R1.csv": half_hours([2, 2, 20, 20, 20, 20, 2, 2, 2, 2, 2, 2]),
                        "turbidity/C1.csv": half_hours([1] * 12)})
        said = self.turbidity("R1")
        self.assertEqual({"1": 0, "2": 12, "3": 0, "4": 0, "9": 0}, said["flags"])
        (event,) = said["events"]
        # Means over an hour, by hand: 2, 2, 11, 20, 20, 20, 11, 2, 2, 2 …; over is above 1 + 5.
        self.assertEqual(("9", 2, "R1", "closed"), tuple(event[k] for k in ("condition", "tier", "site", "state")))
        self.assertEqual(["2025-11-03T14:00:00+13:00", "2025-11-03T15:00:00+13:00", "2025-11-03T17:30:00+13:00",
                          "2025-11-03T17:00:00+13:00"],
                         [event[k] for k in ("over_since", "start", "end", "due")])
        self.assertEqual(20, event["peak"])
        self.assertEqual([2, 2, 11, 20, 20, 20, 11, 2, 2, 2, 2, 2], [r["statistic"] for r in said["series"]])
        self.assertEqual("9", self.turbidity("C1")["statistic_of"]["condition"])

    def test_how_it_stands_is_told_and_where_it_cannot_be_told_why(self):
        self.book_of(**{"turbidity/R1.csv": half_hours([2, 2, 20, 20, "", "", "", 20]),
                        "turbidity/C1.csv": half_hours([1] * 4)})

        def standing(as_at):
            (row,) = self.turbidity("R1", "--as-at", f"2025-11-03T{as_at}+13:00")["standing"]
            return row
        # The mean of 2 and 20 against 1 + 5, then that of 20 and 20.
        self.assertEqual(("over", None, 11, 6, False),
                         tuple(standing("14:00")[k] for k in ("state", "why", "compared", "level", "event_open")))
        self.assertEqual("over", standing("14:30")["state"])
        cannot = standing("16:30")
        self.assertEqual(("cannot_tell", "of its control C1 there are 0 % of the readings, and the condition asks for 50 %",
                          None), (cannot["state"], cannot["why"], cannot["level"]))
        old = standing("23:00")
        self.assertEqual("its last reading is of 2025-11-03T16:30:00+13:00, too old to tell", old["why"])
        said = self.sbk("turbidity", self.book, "--site", "R1", "--as-at", "2025-11-03T23:00+13:00").stdout
        self.assertIn("condition 9 now: cannot tell: its last reading is of 2025-11-03T16:30:00+13:00", said)

    def test_what_had_not_happened_by_the_as_at_is_not_there(self):
        self.book_of(**{"turbidity/R1.csv": half_hours([20] * 8), "turbidity/C1.csv": half_hours([1] * 8)})
        said = self.turbidity("R1", "--as-at", "2025-11-03T14:00+13:00")
        self.assertEqual(3, len(said["series"]))
        self.assertEqual(["open"], [e["state"] for e in said["events"]])
        self.assertEqual(1, len(self.turbidity("R1", "--from", "2025-11-03T16:00+13:00", "--to",
                                               "2025-11-03T16:00+13:00")["series"]))

    def test_a_reading_out_of_range_fails_and_a_blank_one_is_missing(self):
        self.book_of(**{"turbidity/C1.csv": half_hours([1, "", 99, 90])})
        self.assertEqual({"1": 2, "2": 0, "3": 0, "4": 1, "9": 1}, self.turbidity("C1")["flags"])

    def test_thresholds_hold_for_a_time_and_a_person_overrules_with_a_reason(self):
        self.book_of(**{"turbidity/C1.csv": half_hours([1, 99, 50, 50]),
                        "turbidity/checks.csv": "id,site,from,to,range_high\n"
                                                "K-1,C1,2025-11-03T01:30Z,2025-11-04T00:00Z,40\n"})
        self.assertEqual([1, 4, 1, 4], [r["flag"] for r in self.turbidity("C1")["series"]])
        self.write("log", self.book, "overrule", "V-1", "site=C1", "from=2025-11-03T00:30Z", "flag=1",
                   "why=seen from the boat", "by=Ana")
        said = self.turbidity("C1")["series"]
        self.assertEqual([1, 1, 1, 4], [r["flag"] for r in said])
        self.assertEqual(99, said[1]["value"])

    def test_a_loggers_file_is_asked_about_then_taken_and_remembered(self):
        self.book_of()
        files = {"a.txt": "Logger 7\n\nDatum;Trübung\n;NTU\n27.10.2025 10:00;2,5\n27.10.2025 10:30;NaN\n",
                 "b.txt": "Datum;Trübung\n01.11.2025 10:00;3,5\n"}
        folder = self.folder(files, "loggers")
        asked = self.ask("readings", self.book, "--file", f"{folder}/a.txt", "--site", "R1", "--try")
        self.assertEqual(["zone"], [q["about"] for q in asked["questions"]])
        self.write("readings", self.book, "--file", f"{folder}/a.txt", "--site", "R1", status=1)
        self.assertEqual(0, self.turbidity("R1")["readings"])
        self.write("readings", self.book, "--file", f"{folder}/a.txt", "--site", "R1", "--zone", "+12:00")
        self.write("readings", self.book, "--file", f"{folder}/b.txt", "--site", "R1")
        self.assertEqual([("2025-10-27T11:00:00+13:00", 2.5), ("2025-10-27T11:30:00+13:00", None),
                          ("2025-11-01T11:00:00+13:00", 3.5)],
                         [(r["time"], r["value"]) for r in self.turbidity("R1")["series"]])
        again = self.sbk("readings", self.book, "--file", f"{folder}/a.txt", "--site", "R1", "--json")
        self.assertIsNone(json.loads(again.stdout)["entry"])
        self.assertEqual("intact", self.ask("journal", self.book, "--check")["state"])

    def test_a_file_of_several_things_at_each_time_is_refused_until_its_rows_are_told_apart(self):
        self.book_of()
        path = self.path("layers.csv")
        with open(path, "w", encoding="utf-8") as f:
            f.write("time,layer,turb\n" + "".join(f"2025-11-03T{h:02}:00Z,{layer},{h + n}.5\n"
                                                  for h in range(6) for n, layer in enumerate(("top", "mid"))))
        said = self.write("readings", self.book, "--file", path, "--site", "R1", status=1)
        self.assertEqual(["two-values"], [r["code"] for r in said["refusals"]])
        self.assertEqual(6, self.write("readings", self.book, "--file", path, "--site", "R1", "--rows", "mid")["new"])
        self.assertEqual([h + 1.5 for h in range(6)], [row["value"] for row in self.turbidity("R1")["series"]])

    def peak_kb(self, *words):
        """The most memory that sbk held at once."""
        quiet = [(os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0)]
        _, status, used = os.wait4(os.posix_spawn(SBK, [SBK, *words], os.environ, file_actions=quiet), 0)
        self.assertEqual(0, os.waitstatus_to_exitcode(status), words)
        return used.ru_maxrss

    @unittest.skipIf(os.environ.get("SPOILBOOK_BRIEF") == "1", "sanitizers keep what was freed")
    def test_a_file_of_four_times_as_many_rows_takes_no_more_memory(self):
        self.book_of()
        peaks = []
        for site, rows in (("R1", 150_000), ("C1", 600_000)):
            path = self.path(f"{site}.csv")
            write_minutes(path, rows)
            peaks.append(self.peak_kb("readings", self.book, "--file", path, "--site", site, "--by", "Ana"))
            self.assertEqual(rows, self.turbidity(site, "--from", "2022-01-01T00:00Z", "--to",
                                                  "2022-01-01T00:01Z")["readings"])
        self.assertLess(peaks[1] - peaks[0], 8_000, peaks)

    def test_a_response_stands_with_the_duties_until_the_event_is_answered(self):
        self.book_of(**{"turbidity/R1.csv": half_hours([2, 2, 20, 20, 20, 20, 2, 2, 2, 2, 2, 2]),
                        "turbidity/C1.csv": half_hours([1] * 12)})

        def response(as_at):
            (row,) = self.ask("duties", self.book, "--as-at", f"2025-11-03T{as_at}+13:00")["responses"]
            return row
        self.assertEqual([], self.ask("duties", self.book, "--as-at", "2025-11-03T14:59+13:00")["responses"])
        row = response("16:00")
        self.assertEqual(("TC-1", "9", 2, "R1", "open", "slow", "Tern Council", "2025-11-03T15:00:00+13:00",
                          "2025-11-03T17:00:00+13:00", "due", False, None),
                         tuple(row[k] for k in ("consent", "condition", "tier", "site", "event", "action", "to",
                                                "arises", "due", "state", "late", "told_at")))
        self.assertEqual(("overdue", "closed"), tuple(response("18:00")[k] for k in ("state", "event")))
        self.assertIn("overdue   condition 9 slow for R1, passed 2025-11-03T15:00:00+13:00",
                      self.sbk("duties", self.book, "--as-at", "2025-11-03T17:01+13:00").stdout)
        for told, late in (("16:30", False), ("17:30", True)):
            self.write("log", self.book, "event", "E-1", "kind=trigger", "condition=9", "place=R1",
                       "from=2025-11-03T15:00+13:00", "action=fewer buckets an hour",
                       f"told=Tern Council 2025-11-03T{told}+13:00")
            self.assertEqual(("done", late, "fewer buckets an hour"),
                             tuple(response("18:00")[k] for k in ("state", "late", "answered_with")))

    def test_from_and_to_show_the_events_and_months_that_they_touch(self):
        self.book_of(**{"turbidity/R1.csv": half_hours([2, 2, 20, 20, 20, 20, 2, 2, 2, 2, 2, 2]),
                        "turbidity/C1.csv": half_hours([1] * 12)})

        def shown(since, until):
            said = self.turbidity("R1", "--from", since, "--to", until)
            return len(said["events"]), len(said["series"]), sum(said["flags"].values()), len(said["completeness"])
        # Over since 14:00, all clear at 17:30, local; readings from 13:00 to 18:30.
        self.assertEqual((1, 12, 12, 1), shown("2025-11-03T13:00+13:00", "2025-11-03T23:00+13:00"))
        self.assertEqual((0, 2, 2, 1), shown("2025-11-03T13:00+13:00", "2025-11-03T13:59+13:00"))
        self.assertEqual((1, 3, 3, 1), shown("2025-11-03T13:00+13:00", "2025-11-03T14:00+13:00"))
        self.assertEqual((1, 3, 3, 1), shown("2025-11-03T17:30+13:00", "2025-11-03T18:30+13:00"))
        self.assertEqual((0, 2, 2, 1), shown("2025-11-03T17:31+13:00", "2025-11-03T18:30+13:00"))
        self.assertEqual((0, 0, 0, 0), shown("2025-12-01T00:00+13:00", "2025-12-31T00:00+13:00"))

    def test_readings_of_the_future_are_taken_with_a_word_and_count_when_their_time_has_come(self):
        self.book_of()
        path = self.path("r.csv")
        with open(path, "w", encoding="utf-8") as f:
            f.write("time,turb\n2025-11-03T00:00Z,1\n2025-11-04T00:00Z,2\n2099-01-01T00:00Z,3\n")
        tried = self.ask("readings", self.book, "--file", path, "--site", "R1", "--try")
        self.assertEqual([("r.csv line 4", True)], [(n["where"], "in the future" in n["what"]) for n in tried["notes"]])
        self.assertIn("note: r.csv line 4: a reading lies in the future, the first at 2099-01-01",
                      self.sbk("readings", self.book, "--file", path, "--site", "R1", "--try").stderr)
        self.assertEqual(tried["notes"], self.write("readings", self.book, "--file", path, "--site", "R1")["notes"])
        self.assertEqual(2, self.turbidity("R1")["readings"])
        self.assertEqual(3, self.turbidity("R1", "--as-at", "2099-01-02T00:00Z")["readings"])

    def test_a_late_reading_between_those_of_the_book_is_held_against_them(self):
        self.book_of()
        path = self.path("r.csv")
        head = "time,turb\n"
        for text, status, news in ((head + "2025-11-03T00:00Z,1\n2025-11-03T02:00Z,2\n", 0, 2),
                                   (head + "2025-11-03T01:00Z,5\n", 0, 1),
                                   (head + "2025-11-03T03:00Z,3\n2025-11-03T01:00Z,5\n", 0, 1),
                                   (head + "2025-11-03T01:00Z,6\n2025-11-03T04:00Z,3\n", 1, None)):
            with open(path, "w", encoding="utf-8") as f:
                f.write(text)
            said = self.write("readings", self.book, "--file", path, "--site", "R1", status=status)
            self.assertEqual(news, said.get("new"))
        self.assertEqual([1, 5, 2, 3], [row["value"] for row in self.turbidity("R1")["series"]])

    def test_instruments_and_thresholds_are_listed_version_by_version(self):
        self.book_of(**{"turbidity/instruments.csv":
                        "site,serial,deployed,recovered,calibrated,calibrated_until\n"
                        "R1,TL-1,2025-11-01T00:00Z,2025-11-05T00:00Z,2025-10-01,2025-11-04\n"
                        "R1,TL-2,2025-11-05T00:00Z,,2025-10-01,2026-10-01\n"})
        self.write("log", self.book, "site_check", "K-1", "site=C1", "from=2025-11-02", "range_high=60")
        said = self.ask("instruments", self.book, "--as-at", "2025-11-10T00:00Z")["instruments"]
        self.assertEqual([("TL-1", False, "expired"), ("TL-2", True, "valid")],
                         [(i["serial"], i["standing"], i["calibration"]) for i in said])
        versions = self.ask("thresholds", self.book, "--as-at", "2025-11-10T00:00Z")["versions"]
        self.assertEqual([(None, 90, False), ("K-1", 60, True)],
                         [(v["check"], v["range_high"], v["in_force"]) for v in versions if v["site"] == "C1"])
        before = self.ask("thresholds", self.book, "--as-at", "2025-11-01T00:00Z")["versions"]
        self.assertEqual([True, False], [v["in_force"] for v in before if v["site"] == "C1"])

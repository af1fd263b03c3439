# SPDX-License-Identifier: GPL-3.0-or-later
"""What every read heeds: --as-at (what had happened by then) and --known-at (what had been entered by then)."""
import csv
import os

from trade import Trade

T3_OPENS = "2025-11-03T16:00+13:00"


class ReadsAt(Trade):
    def setUp(self):
        super().setUp()
        self.new()
        self.write("log", self.book, "trip", "T-1", "remarks=first", at="2026-02-01T10:00+13:00")
        self.write("log", self.book, "trip", "T-1", "remarks=second", by="Bram", at="2026-02-02T10:00+13:00")
        self.entries = self.ask("journal", self.book)["entries"]

    def shown(self, *words, status=0):
        return self.ask("show", self.book, *words, status=status)

    def exported(self, file, *words):
        to = self.path(f"out-{len(os.listdir(self.place))}")
        self.ask("export", self.book, "--to", to, *words)
        path = os.path.join(to, file)
        if not os.path.exists(path):
            return []
        with open(path, encoding="utf-8", newline="") as rows:
            return list(csv.DictReader(rows))

    def test_a_record_is_shown_as_it_was_known_then(self):
        known = ("--known-at", str(self.entries - 1))
        self.assertEqual("first", self.shown("trip", "T-1", *known)["fields"]["remarks"])
        self.assertEqual("second", self.shown("trip", "T-1")["fields"]["remarks"])
        self.assertIsNone(self.shown("trip", "T-1", "--known-at", "2026-01-31")["fields"]["remarks"])

    def test_its_history_ends_where_it_was_known(self):
        whole = self.shown("trip", "T-1", "--history")["history"]
        then = self.shown("trip", "T-1", "--history", "--known-at", str(self.entries - 1))["history"]
        self.assertEqual(whole[:-1], then)
        self.assertEqual("second", whole[-1]["fields"][0]["after"])

    def test_what_had_not_begun_is_not_shown_and_what_had_not_ended_has_no_end(self):
        before = ("--as-at", "2025-11-03T14:09:59+13:00")
        self.assertEqual("no-such-row", self.shown("trip", "T-3", *before, status=1)["refusals"][0]["code"])
        under_way = self.shown("trip", "T-3", "--as-at", T3_OPENS)["fields"]
        self.assertEqual((T3_OPENS.replace("00+", "00:00+"), None, None),
                         (under_way["release_start"], under_way["release_end"], under_way["returned"]))

    def test_a_folder_is_written_as_it_stood(self):
        self.assertEqual(["T-1", "T-2", "T-3"], [r["trip"] for r in self.exported("trips.csv")])
        self.assertEqual(["T-1", "T-2"], [r["trip"] for r in self.exported("trips.csv", "--as-at", "2025-11-03T12:00")])
        self.assertEqual([], self.exported("trips.csv", "--as-at", "2025-10-31"))
        known = self.exported("trips.csv", "--known-at", str(self.entries - 1))
        self.assertEqual("first", known[0]["remarks"])

    def test_a_folder_as_known_then_brings_the_stored_files(self):
        sites = "site,role,easting_m,northing_m,unit,interval_min\nR1,impact,300000,5500000,NTU,10\n"
        data = "time,value\n2025-11-03T06:00+13:00,4.1\n2025-11-03T06:10+13:00,4.3\n"
        self.write("add", self.book, "--from",
                   self.folder({"turbidity/sites.csv": sites, "turbidity/R1.csv": data}, "loggers"))
        self.write("log", self.book, "trip", "T-1", "remarks=third", at="2026-02-03T10:00+13:00")
        entries = self.ask("journal", self.book)["entries"]
        rows = self.exported("turbidity/R1.csv", "--known-at", str(entries - 1))
        self.assertEqual(["4.1", "4.3"], [r["value"] for r in rows])

    def test_a_load_has_no_answer_before_its_first_bucket(self):
        said = self.ask("load", self.book, "L-4", "--as-at", "2025-11-03T14:59+13:00", status=1)
        self.assertEqual("no-such-row", said["refusals"][0]["code"])
        self.assertEqual("ullage", self.ask("load", self.book, "L-4", "--as-at", "2025-11-03T17:00+13:00")["counted_by"])

    def test_the_journal_is_told_as_it_was(self):
        heads = {self.ask("journal", self.book, "--known-at", str(n))["head"] for n in range(1, self.entries + 1)}
        self.assertEqual(self.entries, len(heads))
        then = self.ask("journal", self.book, "--as-at", "2026-02-01T12:00+13:00")
        self.assertEqual(self.entries - 1, then["entries"])
        self.assertEqual(then["head"], self.ask("journal", self.book, "--known-at", str(self.entries - 1))["head"])
        self.assertEqual(self.ask("journal", self.book)["head"],
                         self.ask("journal", self.book, "--known-at", str(self.entries))["head"])

    def test_a_release_check_counts_what_was_entered_by_then(self):
        words = ("release-check", self.book, "--load", "L-4", "--at", "2025-11-03T19:00+13:00")
        later = self.ask(*words, "--known-at", str(self.entries))
        self.assertEqual(later["verdict"], self.ask(*words)["verdict"])
        gone = self.ask(*words, "--as-at", "2025-11-03T14:00+13:00", status=1)
        self.assertEqual("--load", gone["refusals"][0]["where"])

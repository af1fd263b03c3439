# SPDX-License-Identifier: GPL-3.0-or-later
"""Logging, signing, correcting, undo and redo, and how a record came to be so."""
from trade import DEVICE, NOW, Trade


class Writing(Trade):
    def setUp(self):
        super().setUp()
        self.new()
        self.minutes = 0

    def log(self, *words, by="Ana", status=0):
        self.minutes += 1
        return self.write(*(words[:1] + (self.book,) + words[1:]), by=by, status=status,
                          at=f"2026-01-05T10:{self.minutes:02}+13:00")

    def fields(self, kind, label):
        return self.ask("show", self.book, kind, label)["fields"]

    def code(self, *words, by="Ana"):
        before = self.ask("journal", self.book)["entries"]
        said = self.log(*words, by=by, status=1)
        self.assertEqual(before, self.ask("journal", self.book)["entries"], "a refused change left an entry")
        return said["refusals"][0]["code"]

    def test_a_record_that_is_not_there_is_made_and_one_that_is_changed(self):
        self.assertEqual("made", self.log("log", "trip", "T-4", "load=L-4", "release_end=2025-11-03T19:00")["done"])
        self.assertEqual("changed", self.log("log", "trip", "T-4", "remarks=fair run")["done"])
        self.assertEqual("unchanged", self.log("log", "trip", "T-4", "remarks=fair run")["done"])
        fields = self.fields("trip", "T-4")
        self.assertEqual(("L-4", "2025-11-03T19:00:00+13:00", "fair run"),
                         (fields["load"], fields["release_end"], fields["remarks"]))
        self.assertEqual(4, self.total()["trips"])

    def test_what_conditions_name_keeps_its_name(self):
        # Condition 4 is about the ground: under another name it would be inside nothing.
        self.assertEqual("named", self.code("log", "ground", "Deep Hole", "ground=Deeper Hole"))
        self.assertEqual("Deep Hole", self.fields("ground", "Deep Hole")["ground"])
        # No condition names the tug.
        self.assertEqual("changed", self.log("log", "tug", "Skua", "name=Skua II")["done"])

    def test_a_blank_value_clears_a_column(self):
        self.log("log", "trip", "T-1", "cell=")
        self.assertIsNone(self.fields("trip", "T-1")["cell"])

    def test_what_a_folder_is_refused_for_a_person_is_too(self):
        for code, column in (("out-of-range", "lat=-91"), ("unknown-column", "latt=-40"), ("not-a-number", "lat=x"),
                             ("unclear-position", "lat=40 35.4"),
                             ("unknown-reference", "load=L-99"), ("ambiguous-time", "returned=2026-04-05T02:30"),
                             ("end-before-start", "release_end=2025-10-31T23:00")):
            with self.subTest(column):
                self.assertEqual(code, self.code("log", "trip", "T-1", column))

    def noted(self, *words):
        """What is noted of a change that is taken."""
        done = self.sbk(words[0], self.book, *words[1:], *DEVICE, *NOW, "--by", "Ana")
        self.assertEqual(0, done.returncode, done.stderr)
        return done.stderr

    def test_a_cell_that_is_blank_or_that_the_position_contradicts_is_noted(self):
        self.assertEqual("", self.noted("log", "trip", "T-1", "position_u_m=6"))
        # T-1 lies in the middle of W: half its width from E. Its width, 0.02° at 40.59° S, is 1693 m (COMP).
        self.assertRegex(self.noted("log", "trip", "T-1", "cell=E"),
                         r"^note: trip T-1: cell E is written, but its position lies 84\d m outside it, in W\n$")
        self.assertEqual("note: trip T-1: no cell is written: limits count it in W, where its position lies\n",
                         self.noted("log", "trip", "T-1", "cell="))
        self.assertIn("no cell is written and no position tells one: it counts under no cell of Deep Hole",
                      self.noted("log", "trip", "T-1", "lat=", "lon="))
        # As it says, so it counts.
        rows = {r["cell"]: r["trips"] for r in self.ask("volumes", self.book, "--by", "cell")["rows"]}
        self.assertEqual(1, rows[None])

    def test_times_that_cannot_be_beside_each_other_are_noted_and_kept(self):
        self.assertEqual("", self.noted("log", "trip", "T-2", "departed=2025-11-03T08:05"))
        self.assertIn("departed, 2025-11-03T07:55:00+13:00, is before loading_end of load L-2, "
                      "2025-11-03T08:00:00+13:00: mend the one that is wrong",
                      self.noted("log", "trip", "T-2", "departed=2025-11-03T07:55"))
        self.assertEqual("2025-11-03T07:55:00+13:00", self.fields("trip", "T-2")["departed"])
        self.assertIn("loading_end, 2025-11-03T08:30:00+13:00, is after departed of trip T-2",
                      self.noted("log", "load", "L-2", "loading_end=2025-11-03T08:30"))
        self.assertIn("returned, 2025-11-03T10:01:00+13:00, is before release_end of trip T-2",
                      self.noted("log", "trip", "T-2", "returned=2025-11-03T10:01"))
        self.assertIn("spuds_down, 2025-11-03T05:00:00+13:00, is before start of shift S-2",
                      self.noted("log", "station", "ST-2", "spuds_down=2025-11-03T05:00"))

    def test_an_end_before_its_own_start_is_refused_with_both_times(self):
        said = self.log("log", "trip", "T-1", "release_end=2025-10-31T23:00", status=1)["refusals"][0]
        self.assertEqual("end-before-start", said["code"])
        for time in ("2025-10-31T23:00:00+13:00", "2025-10-31T23:56:00+13:00"):
            self.assertIn(time, said["what"])

    def test_a_name_that_is_none_is_answered_with_those_there_are(self):
        def mend(*words):
            return self.log("log", *words, status=1)["refusals"][0]["mend"]
        self.assertEqual("did you mean Deep Hole?", mend("trip", "T-1", "ground=Deep Hol"))
        self.assertEqual("there is Deep Hole alone", mend("trip", "T-1", "ground=Gannet Patch"))
        self.assertEqual("there are E, W", mend("trip", "T-1", "cell=B2"))
        self.assertEqual("there are clay, sand", mend("load", "L-1", "material=mud"))
        self.assertEqual("there are Pipi, Tuatua", mend("load", "L-1", "barge=Teal"))
        for number in range(10, 22):
            self.log("log", "tug", f"Wherry {number}")
        self.assertRegex(mend("trip", "T-1", "tug=Albatross"), r"^there are ([^,]+, ){7}[^,]+ and 5 more$")
        said = self.ask("release-check", self.book, "--load", "L-4", "--at", "2025-11-03T19:00", "--cell", "B2",
                        status=1)["refusals"][0]
        self.assertEqual("there are E, W", said["mend"])

    def test_a_signature_and_a_condition_s_members_are_not_written_by_hand(self):
        for words in (("shift", "S-2", "signed_by=Bram"), ("shift", "S-2", "signed_at=2025-11-03T18:00"),
                      ("condition", "99", "consent=TC-1", "kind=place")):
            with self.subTest(words):
                self.assertEqual("not-logged", self.code("log", *words))

    def test_a_bucket_is_looked_for_on_the_dredger_of_the_tally_s_own_shift(self):
        self.log("log", "dredger", "Gannet")
        self.log("log", "bucket", "clamshell", "dredger=Gannet", "capacity_m3=3")
        self.log("log", "shift", "S-9", "dredger=Gannet")
        self.assertEqual("unknown-reference", self.code("log", "tally", "x1", "station=ST-2", "bucket=clamshell"))
        self.log("log", "tally", "x1", "load=L-4", "station=ST-2", "bucket=clamshell", "shift=S-9", "count=3")
        self.assertEqual("clamshell", self.fields("tally", "x1")["bucket"])

    def test_a_kind_that_is_none_is_refused_with_the_nearest(self):
        self.assertEqual("unknown-kind", self.code("log", "tripp", "T-1", "lat=-40"))

    def test_a_label_stands_once_in_its_kind(self):
        self.assertEqual("twice", self.code("log", "trip", "T-2", "trip=T-1"))
        self.log("log", "trip", "T-2", "trip=T-02")
        self.assertEqual("L-2", self.fields("trip", "T-02")["load"])
        self.assertEqual("no-such-row", self.code("log", "trip", "T-77", "trip=T-1"))

    def test_a_label_is_trimmed_and_never_blank(self):
        self.assertEqual("changed", self.log("log", "trip", "  T-2 ", "remarks=same trip")["done"])
        self.assertEqual("blank-id", self.code("log", "trip", "   ", "remarks=x"))
        self.assertEqual("blank-id", self.code("log", "trip", "T-2", "trip="))

    def test_text_that_is_not_utf_8_is_refused(self):
        broken = b"\xff\xfe".decode("utf-8", "surrogateescape")
        self.assertEqual("not-utf-8", self.code("log", "trip", "T-2", "remarks=" + broken))
        self.assertEqual("not-utf-8", self.code("log", "trip", broken, "load=L-1"))

    def test_a_column_is_given_once(self):
        self.assertEqual("twice", self.code("log", "trip", "T-2", "remarks=a", "remarks=b"))

    def test_nothing_is_written_by_hand_that_would_make_the_book_unreadable(self):
        for code, kind, label, column in (("unknown-zone", "harbour", "Tern Harbour", "zone=Nowhere/X"),
                                          ("not-logged", "harbour", "Tern Harbour", "epsg=4326"),
                                          ("not-logged", "claim", "Q1", 'geometry={"type":"Point"}'),
                                          ("not-logged", "condition", "1", "body={}"),
                                          ("not-logged", "survey", "V1", "file=/etc/passwd"),
                                          ("not-a-time", "consent", "TC-1", "year_starts=02-30"),
                                          ("twice", "harbour", "Gull Harbour", "authority=x")):
            with self.subTest(column):
                self.assertEqual(code, self.code("log", kind, label, column))
        self.log("log", "harbour", "Tern Harbour", "zone=Pacific/Chatham")
        self.assertEqual(3, self.total()["trips"])

    def test_what_is_struck_out_counts_no_more_and_comes_back_by_undo(self):
        self.log("log", "trip", "T-3", "struck=yes")
        self.assertEqual(2, self.total()["trips"])
        self.log("undo")
        self.assertEqual(3, self.total()["trips"])
        self.assertEqual("not-a-choice", self.code("log", "trip", "T-3", "struck=maybe"))

    def test_something_signed_changes_only_with_a_reason(self):
        self.log("sign", "S-1")
        self.assertEqual("signed", self.code("log", "load", "L-1", "dips_m=1.1 1.1"))
        self.assertEqual("signed", self.code("log", "station", "ST-1", "heading_deg=90", "claim=Q2"))
        self.log("log", "load", "L-1", "dips_m=1.1 1.1", "--why", "the ticket is a decimetre deeper")
        self.assertEqual("1.1 1.1", self.fields("load", "L-1")["dips_m"])

    def test_blanks_are_no_reason(self):
        self.log("sign", "S-1")
        self.assertEqual("signed", self.code("log", "load", "L-1", "dips_m=1.1 1.1", "--why", "   "))

    def test_a_field_that_was_blank_when_signed_is_filled_later_and_marked(self):
        self.log("sign", "S-1")
        self.log("log", "load", "L-1", "ground_note=soft on top")
        step = self.ask("show", self.book, "load", "L-1", "--history")["history"][-1]
        self.assertTrue(step["after_signing"])

    def test_a_shift_is_signed_once_and_by_somebody(self):
        self.assertEqual(1, self.sbk("sign", self.book, "S-1").returncode)
        self.log("sign", "S-1")
        self.log("sign", "S-1", by="Bram", status=1)
        self.log("sign", "S-9", status=1)
        self.assertEqual("Ana", self.fields("shift", "S-1")["signed_by"])

    def test_the_history_says_who_when_why_and_old_to_new(self):
        self.log("sign", "S-1")
        self.log("log", "load", "L-1", "dips_m=1.1 1.1", "--why", "misread")
        steps = self.ask("show", self.book, "load", "L-1", "--history")["history"]
        self.assertEqual(["import", "correct"], [s["kind"] for s in steps])
        self.assertEqual(("Ana", "misread", "2026-01-05T10:02:00+13:00"),
                         (steps[1]["who"], steps[1]["why"], steps[1]["at"]))
        self.assertEqual([{"column": "dips_m", "before": "1 1 1", "after": "1.1 1.1"}], steps[1]["fields"])

    def test_undo_takes_back_the_newest_change_and_redo_restores_it(self):
        self.log("log", "trip", "T-1", "remarks=one")
        self.log("log", "trip", "T-1", "remarks=two")
        self.log("undo")
        self.assertEqual("one", self.fields("trip", "T-1")["remarks"])
        self.log("undo")
        self.assertIsNone(self.fields("trip", "T-1")["remarks"])
        self.log("redo")
        self.log("redo")
        self.assertEqual("two", self.fields("trip", "T-1")["remarks"])
        self.log("redo", status=1)
        self.assertEqual("intact", self.ask("journal", self.book, "--check")["state"])

    def test_undo_takes_back_only_ones_own(self):
        self.log("log", "trip", "T-1", "remarks=one")
        self.log("undo", by="Bram", status=1)
        self.assertEqual("one", self.fields("trip", "T-1")["remarks"])

    def test_undo_is_refused_where_a_later_entry_stands_on_it_and_names_it(self):
        made = self.log("log", "trip", "T-1", "remarks=one")["entry"]
        later = self.log("log", "trip", "T-1", "remarks=two", by="Bram")["entry"]
        said = self.log("undo", status=1)
        self.assertIn(later, str(said["refusals"]), made)
        self.assertEqual("two", self.fields("trip", "T-1")["remarks"])

    def test_known_at_gives_what_the_book_knew_then(self):
        first = self.log("log", "load", "L-1", "dips_m=2 2")["entry"]
        self.log("log", "load", "L-1", "dips_m=3 3")
        for point, in_situ in (("pontoon:1", 630), (first, 550), ("2026-01-05T10:01+13:00", 550),
                               ("2026-01-05T10:00:59+13:00", 630), ("2026-01-05T10:02+13:00", 470)):
            with self.subTest(point):
                self.assertAlmostEqual(in_situ, self.total("--known-at", point)["in_situ_m3"], delta=1e-6)
        self.ask("volumes", self.book, "--known-at", "pontoon:99", status=1)

# SPDX-License-Identifier: GPL-3.0-or-later
"""The record of every change: intact as sbk leaves it, and broken by whatever is changed from outside."""
import os
import shutil
import sqlite3

from trade import Trade


class Journal(Trade):
    def setUp(self):
        super().setUp()
        self.new()
        self.write("log", self.book, "trip", "T-1", "remarks=one", at="2026-01-05T10:00+13:00")

    def from_outside(self, *statements):
        book = sqlite3.connect(self.book)
        for statement in statements:
            book.execute(statement)
        book.commit()
        book.close()

    def broken(self, *statements):
        self.from_outside(*statements)
        said = self.ask("journal", self.book, "--check", status=1)
        self.assertEqual("broken", said["state"])
        for key in ("table", "id", "entry"):
            self.assertIn(key, said["first_bad"])
        self.ask("backup", self.book, self.path("copy.sbook"), status=1)
        self.assertFalse(os.path.exists(self.path("copy.sbook")), "a copy that is not intact was left behind")
        return said["first_bad"]

    def test_a_book_as_it_was_left_is_intact(self):
        said = self.ask("journal", self.book, "--check")
        self.assertEqual(("intact", None, 2), (said["state"], said["first_bad"], said["entries"]))
        self.assertEqual([("pontoon", 2)], [(d["device"], d["entries"]) for d in said["devices"]])
        self.assertEqual(64, len(said["head"]))

    def test_without_check_nothing_is_claimed(self):
        self.assertEqual("unchecked", self.ask("journal", self.book)["state"])

    def test_the_head_moves_with_every_entry_and_only_then(self):
        head = self.ask("journal", self.book)["head"]
        self.ask("volumes", self.book)
        self.assertEqual(head, self.ask("journal", self.book)["head"])
        self.write("log", self.book, "trip", "T-1", "remarks=two")
        self.assertNotEqual(head, self.ask("journal", self.book)["head"])

    def test_a_changed_cell_is_found_and_its_row_named(self):
        bad = self.broken("update trip set lat = -40.6 where trip = 'T-2'")
        self.assertEqual(("trip", "T-2"), (bad["table"], bad["id"]))

    def test_a_row_taken_out_or_put_in_is_found(self):
        self.assertEqual("trip", self.broken("delete from trip where trip = 'T-3'")["table"])

    def test_a_row_that_no_entry_wrote_is_found(self):
        self.assertEqual("T-99", self.broken("insert into trip (uuid, trip) values (randomblob(16), 'T-99')")["id"])

    def test_a_row_struck_out_from_outside_is_found(self):
        self.broken("update load set struck = 1 where load = 'L-1'")

    def test_an_entry_that_was_rewritten_is_found(self):
        self.assertEqual("journal", self.broken("update journal set who = 'Zed' where seq = 1")["table"])

    def test_an_entry_whose_time_was_moved_is_found(self):
        self.broken("update journal set at = at - 86400000 where seq = 2")

    def test_an_entry_that_was_taken_out_is_found(self):
        self.broken("delete from journal where seq = 1")

    def test_the_newest_entry_taken_out_with_what_it_wrote_is_found_by_the_head(self):
        head = self.ask("journal", self.book)["head"]
        self.from_outside("delete from journal where seq = 2", "delete from entry_row where seq = 2",
                          "update trip set remarks = null where trip = 'T-1'")
        # The chain is whole again: what a sealed return printed is what gives it away.
        self.assertNotEqual(head, self.ask("journal", self.book)["head"])

    def test_what_is_none_of_ours_is_found(self):
        self.assertEqual("extra", self.broken("create table extra (a)")["table"])

    def test_a_trigger_from_outside_is_found(self):
        self.broken("create trigger extra after insert on trip begin delete from trip; end")

    def test_a_table_that_is_gone_is_found(self):
        self.broken("drop table delay")

    def test_bytes_changed_in_the_file_never_end_in_a_crash(self):
        # Any one page spoilt: a check that says broken, or a clear refusal; never a signal, never silence.
        size = os.path.getsize(self.book)
        for place in range(5000, size, size // 12):
            spoilt = self.path("spoilt.sbook")
            shutil.copy(self.book, spoilt)
            with open(spoilt, "r+b") as file:
                file.seek(place)
                file.write(b"\xa5" * 64)
            done = self.sbk("journal", spoilt, "--check")
            self.assertIn(done.returncode, (0, 1), f"at byte {place}: {done.returncode} {done.stderr}")
            os.remove(spoilt)

    def test_a_backup_is_a_book_with_the_same_head(self):
        self.ask("backup", self.book, self.path("copy.sbook"))
        self.assertEqual(self.ask("journal", self.book, "--check")["head"],
                         self.ask("journal", self.path("copy.sbook"), "--check")["head"])
        self.assertEqual(self.ask("volumes", self.book, "--as-at", "2026-02-01T00:00Z"),
                         self.ask("volumes", self.path("copy.sbook"), "--as-at", "2026-02-01T00:00Z"))

    def test_a_backup_writes_over_nothing(self):
        self.ask("backup", self.book, self.book, status=1)
        self.assertEqual("intact", self.ask("journal", self.book, "--check")["state"])

    def test_a_book_of_a_newer_program_is_refused(self):
        self.from_outside("pragma user_version = 9999")
        said = self.ask("volumes", self.book, status=1)
        self.assertEqual("newer-book", said["refusals"][0]["code"])

    def test_a_file_that_is_no_book_is_refused(self):
        for name, data in (("empty.sbook", b""), ("text.sbook", b"trip,load\n"), ("cut.sbook", None)):
            with self.subTest(name):
                if data is None:
                    with open(self.book, "rb") as book:
                        data = book.read(20000)
                with open(self.path(name), "wb") as out:
                    out.write(data)
                self.assertEqual(1, self.sbk("journal", self.path(name), "--check").returncode)
                self.assertEqual(1, self.sbk("volumes", self.path("nowhere.sbook")).returncode)

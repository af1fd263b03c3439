# SPDX-License-Identifier: GPL-3.0-or-later
"""Duties marked as done, and the files that show it: kept with their digest, listed, saved out again."""
import hashlib
import os
import sqlite3

from duties import RETURN, REST
from trade import CONSENT, Trade

AS_AT = ("--as-at", "2025-12-20T12:00+13:00")
LETTER = b"%PDF-1.4\nreceived with thanks\n" + bytes(range(256)) * 5000
DIGEST = hashlib.sha256(LETTER).hexdigest()


class Evidence(Trade):
    def setUp(self):
        super().setUp()
        self.new(consents_json={"consents": [dict(CONSENT, not_working=REST, conditions=[RETURN])]})
        self.letter = self.path("receipt.pdf")
        with open(self.letter, "wb") as out:
            out.write(LETTER)

    def october(self):
        duties = self.ask("duties", self.book, *AS_AT)["duties"]
        return next(d for d in duties if (d["covers_from"] or "").startswith("2025-10"))

    def done(self, *words, status=0):
        return self.write("done", self.book, "31", "--covers-from", "2025-10-01", "--at", "2025-11-07T16:05",
                          *words, status=status, by="Caro")

    def test_a_duty_is_marked_done_with_its_file(self):
        said = self.done("--evidence", "letter 4", "--file", self.letter)
        self.assertEqual(f"letter 4; receipt.pdf sha256:{DIGEST}", said["evidence"])
        october = self.october()
        self.assertEqual(("done", "2025-11-07T16:05:00+13:00", "Caro"),
                         tuple(october[k] for k in ("state", "done_at", "by")))
        self.assertEqual("intact", self.ask("journal", self.book, "--check")["state"])

    def test_the_file_comes_out_as_it_went_in(self):
        self.done("--file", self.letter)
        files = self.ask("evidence", self.book)["files"]
        self.assertEqual([("receipt.pdf", DIGEST, len(LETTER), "31")],
                         [(f["file"], f["digest"], f["bytes"], f["condition"]) for f in files])
        out = self.path("copy.pdf")
        self.ask("evidence", self.book, "--file", DIGEST[:10], "--to", out)
        with open(out, "rb") as copy:
            self.assertEqual(LETTER, copy.read())
        # Not over a file that is there.
        self.ask("evidence", self.book, "--file", "receipt.pdf", "--to", out, status=1)
        self.ask("evidence", self.book, "--file", "other.pdf", "--to", self.path("x"), status=1)

    def test_a_bit_of_the_file_changed_in_the_book_breaks_the_check(self):
        self.done("--file", self.letter)
        book = sqlite3.connect(self.book)
        packed = bytearray(book.execute("SELECT packed FROM stored_chunk WHERE digest = ? AND n = 0",
                                        (DIGEST,)).fetchone()[0])
        packed[len(packed) // 2] ^= 1
        book.execute("UPDATE stored_chunk SET packed = ? WHERE digest = ? AND n = 0", (bytes(packed), DIGEST))
        book.commit()
        book.close()
        done = self.sbk("journal", self.book, "--check", "--json")
        self.assertIn(DIGEST, done.stdout)
        self.assertNotEqual(0, done.returncode)

    def test_what_cannot_be_evidence_is_refused_and_writes_nothing(self):
        empty = self.path("empty.pdf")
        open(empty, "wb").close()
        link = self.path("link.pdf")
        os.symlink(self.letter, link)
        odd = self.path("a;b.pdf")
        with open(odd, "wb") as out:
            out.write(b"x")
        for file in (empty, link, odd, self.path("none.pdf")):
            self.done("--file", file, status=1)
        self.write("done", self.book, "99", status=1)
        self.assertEqual("overdue", self.october()["state"])
        self.assertEqual([], self.ask("evidence", self.book)["files"])

    def test_a_folder_names_the_file_and_says_that_it_stays_in_the_book(self):
        self.done("--file", self.letter)
        said = self.sbk("export", self.book, "--to", self.path("out"))
        self.assertEqual(0, said.returncode, said.stderr)
        self.assertIn("1 files of evidence stay in the book", said.stdout + said.stderr)
        again = self.path("again.sbook")
        self.write("new", again, "--from", self.path("out"))
        self.assertEqual([(DIGEST, None)], [(f["digest"], f["bytes"])
                                            for f in self.ask("evidence", again)["files"]])

    def test_undo_takes_the_mark_back(self):
        self.done("--file", self.letter)
        self.write("undo", self.book, by="Caro")
        self.assertEqual("overdue", self.october()["state"])
        self.assertEqual("intact", self.ask("journal", self.book, "--check")["state"])

    def test_the_days_that_were_passed_over_are_told(self):
        october = self.october()
        # Counted on a wall calendar: 3 to 7 and 10 to 14 November are ten; 1, 2, 8 and 9 are weekends.
        self.assertEqual("2025-10-31", october["counted_after"])
        self.assertEqual(["2025-11-01", "2025-11-02", "2025-11-08", "2025-11-09"], october["not_working"])

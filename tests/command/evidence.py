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

    def exported(self):
        """The book as a folder, which holds the letter under its digest."""
        self.done("--evidence", "letter 4", "--file", self.letter)
        out = self.path("out")
        said = self.sbk("export", self.book, "--to", out)
        self.assertEqual(0, said.returncode, said.stderr)
        with open(os.path.join(out, "evidence", DIGEST + ".pdf"), "rb") as kept:
            self.assertEqual(LETTER, kept.read())
        return out

    def bytes_in(self, book):
        return [(f["digest"], f["bytes"]) for f in self.ask("evidence", book)["files"]]

    def test_a_folder_carries_the_files_and_brings_them_back(self):
        out, again = self.exported(), self.path("again.sbook")
        self.write("new", again, "--from", out)
        self.assertEqual([(DIGEST, len(LETTER))], self.bytes_in(again))
        self.assertEqual("intact", self.ask("journal", again, "--check")["state"])
        copy = self.path("copy.pdf")
        self.ask("evidence", again, "--file", DIGEST, "--to", copy)
        with open(copy, "rb") as kept:
            self.assertEqual(LETTER, kept.read())
        # Out again: every file with the same bytes.
        twice = self.path("twice")
        self.assertEqual(0, self.sbk("export", again, "--to", twice).returncode)
        self.assertEqual(*(self.files_in(folder) for folder in (out, twice)))

    @staticmethod
    def files_in(folder):
        found = {}
        for place, _, names in os.walk(folder):
            for name in names:
                path = os.path.join(place, name)
                with open(path, "rb") as file:
                    found[os.path.relpath(path, folder)] = file.read()
        return found

    def test_a_folder_without_the_file_is_taken_in_and_the_file_may_come_later(self):
        out, again = self.exported(), self.path("again.sbook")
        kept = os.path.join(out, "evidence", DIGEST + ".pdf")
        os.rename(kept, self.path("away.pdf"))
        said = self.sbk("new", again, "--from", out)
        self.assertEqual(0, said.returncode, said.stderr)
        self.assertIn("receipt.pdf is neither in evidence/ nor in the book", said.stderr)
        self.assertEqual([(DIGEST, None)], self.bytes_in(again))
        os.rename(self.path("away.pdf"), kept)
        self.write("add", again, "--from", out)
        self.assertEqual([(DIGEST, len(LETTER))], self.bytes_in(again))
        self.assertEqual("intact", self.ask("journal", again, "--check")["state"])

    def test_evidence_that_was_changed_on_the_way_is_refused_and_a_stranger_noted(self):
        out, again = self.exported(), self.path("again.sbook")
        with open(os.path.join(out, "evidence", "f" * 64 + ".txt"), "wb") as stranger:
            stranger.write(b"x")
        said = self.sbk("new", again, "--from", out)
        self.assertEqual(0, said.returncode, said.stderr)
        self.assertIn("duties.csv names no such digest", said.stderr)
        with open(os.path.join(out, "evidence", DIGEST + ".pdf"), "ab") as kept:
            kept.write(b"!")
        said = self.sbk("new", self.path("third.sbook"), "--from", out)
        self.assertEqual(1, said.returncode)
        self.assertIn("its bytes have the digest", said.stderr)
        self.assertFalse(os.path.exists(self.path("third.sbook")))

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

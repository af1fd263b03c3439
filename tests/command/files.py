# SPDX-License-Identifier: GPL-3.0-or-later
"""Books and disks: one writer at a time, a writer that is killed, files that may not be written, a full disk."""
import os
import shutil
import signal
import stat
import subprocess
import threading
import time
import unittest

from trade import DEVICE, NOW, SBK, Trade


class Files(Trade):
    def test_a_book_is_for_its_owner_alone(self):
        self.new()
        self.assertEqual(0o600, stat.S_IMODE(os.stat(self.book).st_mode))

    def test_the_last_writer_leaves_one_file(self):
        self.new()
        self.write("log", self.book, "trip", "T-1", "remarks=one")
        self.assertEqual(["tern.sbook"], sorted(n for n in os.listdir(self.place) if n.startswith("tern")))

    def test_many_writers_at_once_lose_nothing_and_say_so_where_one_must_wait(self):
        self.new()
        ended = []

        def write(i):
            ended.append(self.sbk("log", self.book, "trip", f"W-{i}", "load=L-4", *DEVICE, *NOW, "--by", "Ana"))

        threads = [threading.Thread(target=write, args=(i,)) for i in range(6)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        self.assertEqual(set(), {d.returncode for d in ended} - {0, 1})
        written = sum(d.returncode == 0 for d in ended)
        self.assertGreaterEqual(written, 1)
        self.assertTrue(all(d.stderr for d in ended if d.returncode == 1))
        said = self.ask("journal", self.book, "--check")
        self.assertEqual(("intact", 1 + written), (said["state"], said["entries"]))

    def test_a_writer_that_is_killed_leaves_the_book_as_it_was_or_as_it_should_be(self):
        self.new()
        people = "name,role\n" + "".join(f"P{i:05},reader\n" for i in range(20000))
        folder = self.folder({"people.csv": people}, "more")
        for wait in (0.02, 0.08, 0.2):
            writer = subprocess.Popen([SBK, "add", self.book, "--from", folder, *DEVICE, *NOW, "--by", "Ana"],
                                      stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            time.sleep(wait)
            writer.send_signal(signal.SIGKILL)
            writer.wait()
            self.assertEqual("intact", self.ask("journal", self.book, "--check")["state"])
            there = [self.sbk("show", self.book, "person", f"P{i:05}").returncode for i in (0, 19999)]
            self.assertEqual(there[0], there[1], "an import landed by half")
        self.write("log", self.book, "trip", "T-1", "remarks=goes on")

    def test_a_new_book_that_is_killed_leaves_no_book(self):
        people = "name,role\n" + "".join(f"P{i:05},reader\n" for i in range(20000))
        folder = self.folder({"harbour.json": '{"name": "x"}', "people.csv": people})
        writer = subprocess.Popen([SBK, "new", self.book, "--from", folder, *DEVICE, *NOW],
                                  stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        time.sleep(0.1)
        writer.kill()
        writer.wait()
        if os.path.exists(self.book):
            self.assertEqual("intact", self.ask("journal", self.book, "--check")["state"])
        else:
            self.write("new", self.book, "--from", folder)

    def test_a_folder_that_is_not_there_is_refused(self):
        self.folder({"harbour.json": '{"name": "x"}'})
        self.write("new", self.path("nowhere/x.sbook"), "--from", self.path("folder"), status=1)
        self.write("new", self.book, "--from", self.path("nowhere"), status=1)

    def as_reader(self, *words):
        """sbk by a user who may read but not write; only root can change to one."""
        if os.geteuid() != 0:
            return self.sbk(*words)

        def change():
            os.setgid(65534)
            os.setuid(65534)

        return subprocess.run([SBK, *words], capture_output=True, text=True, check=False, timeout=60,
                              preexec_fn=change, env={**os.environ, "HOME": "/nonexistent"})

    def read_only_book(self):
        self.new()
        os.chmod(self.place, 0o755)
        stick = self.path("stick")
        os.mkdir(stick)
        book = shutil.copy(self.book, os.path.join(stick, "tern.sbook"))
        os.chmod(book, 0o444)
        os.chmod(stick, 0o555)
        self.addCleanup(os.chmod, stick, 0o755)
        return book

    def test_a_book_that_may_not_be_written_is_refused_to_writers_and_stays_as_it_was(self):
        book = self.read_only_book()
        with open(book, "rb") as file:
            before = file.read()
        for words in (("log", book, "trip", "T-1", "remarks=x"), ("undo", book), ("sign", book, "S-1")):
            done = self.as_reader(*words, *DEVICE, *NOW, "--by", "Ana")
            self.assertEqual(1, done.returncode, words)
            self.assertIn("written", done.stderr)
        with open(book, "rb") as file:
            self.assertEqual(before, file.read())
        self.assertEqual(["tern.sbook"], os.listdir(os.path.dirname(book)))

    def test_a_book_in_a_folder_that_may_only_be_read_can_be_read(self):
        book = self.read_only_book()
        for words in (("volumes", book), ("headroom", book), ("journal", book, "--check")):
            done = self.as_reader(*words)
            self.assertEqual(0, done.returncode, f"{words}: {done.stderr}")

    @staticmethod
    def fill(path):
        file = os.open(path, os.O_WRONLY | os.O_CREAT)
        try:
            while True:
                os.write(file, b"x" * 4096)
        except OSError:
            os.close(file)

    @unittest.skipUnless(os.geteuid() == 0, "only root can mount a small disk")
    def test_a_full_disk_is_said_plainly_and_the_book_is_as_it_was(self):
        disk = self.path("disk")
        os.mkdir(disk)
        if subprocess.run(["mount", "-t", "tmpfs", "-o", "size=3m", "tmpfs", disk], capture_output=True,
                          check=False).returncode:
            self.skipTest("no disk can be mounted here")
        self.addCleanup(subprocess.run, ["umount", "-l", disk], check=False)
        self.new()
        book = os.path.join(disk, "tern.sbook")
        self.write("new", book, "--from", self.path("folder"))
        self.fill(os.path.join(disk, "fill"))
        for words in (("log", book, "trip", "T-1", "remarks=" + "a" * 50000),
                      ("backup", self.book, os.path.join(disk, "copy.sbook")),
                      ("export", self.book, "--to", os.path.join(disk, "out"))):
            done = self.sbk(*words, *(DEVICE + NOW if words[0] == "log" else ()))
            self.assertEqual(1, done.returncode, words[0])
            self.assertTrue(done.stderr.strip(), words[0])
        os.remove(os.path.join(disk, "fill"))
        self.assertEqual(["tern.sbook"], [n for n in os.listdir(disk) if not n.startswith("tern.sbook-")])
        said = self.ask("journal", book, "--check")
        self.assertEqual(("intact", 1), (said["state"], said["entries"]))

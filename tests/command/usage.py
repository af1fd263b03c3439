# SPDX-License-Identifier: GPL-3.0-or-later
"""How sbk is called: exit statuses, what goes where, and the members that --json must hold."""
import json
import os

from trade import Trade


class Usage(Trade):
    def test_wrong_usage_ends_with_2_and_says_why(self):
        self.new()
        for words in ((), ("nope",), ("volumes",), ("volumes", self.book, "--by", "week"), ("load", self.book),
                      ("headroom", self.book, "extra"), ("headroom", self.book, "--no-such"),
                      ("log", self.book, "trip"), ("log", self.book, "trip", "T-1", "lat"), ("return", self.book),
                      ("headroom", self.book, "--as-at"), ("headroom", self.book, "--as-at", "yesterday")):
            with self.subTest(words):
                done = self.sbk(*words)
                self.assertEqual((2, ""), (done.returncode, done.stdout))
                self.assertTrue(done.stderr.strip())

    def test_help_is_answered_and_says_what_sbk_is_not(self):
        done = self.sbk("--help")
        self.assertEqual(0, done.returncode)
        for words in ("stability", "navigation", "legal advice"):
            self.assertIn(words, done.stdout)
        for command in ("new", "add", "export", "headroom", "volumes", "load", "releases", "burndown", "return",
                        "journal", "log", "sign", "undo", "redo", "backup", "show"):
            self.assertIn(command, done.stdout)
            self.assertEqual(0, self.sbk(command, "--help").returncode)

    def test_what_is_refused_ends_with_1_and_is_said_on_both(self):
        self.new()
        done = self.sbk("load", self.book, "L-77", "--json")
        self.assertEqual(1, done.returncode)
        self.assertEqual("no-such-row", json.loads(done.stdout)["refusals"][0]["code"])
        self.assertEqual(1, len(done.stderr.strip().splitlines()))
        self.assertEqual("", self.sbk("load", self.book, "L-77").stdout)

    def test_an_answer_ends_with_0_whatever_it_is(self):
        self.new()
        self.assertLess(self.limits("--as-at", "2025-11-30T00:00Z")["2"]["headroom"], 0)

    def test_json_is_one_object_on_standard_output_and_notes_are_on_standard_error(self):
        self.new()
        done = self.sbk("add", self.book, "--from", self.folder({"odd.txt": "x"}, "more"), "--json")
        self.assertEqual([{"where": "odd.txt", "what": "left out: no file of a book folder"}],
                         json.loads(done.stdout)["notes"])
        self.assertIn("odd.txt", done.stderr)
        for words in (("headroom",), ("volumes",), ("releases",), ("burndown",), ("journal",)):
            done = self.sbk(words[0], self.book, "--json")
            self.assertIsInstance(json.loads(done.stdout), dict)
            self.assertEqual("", done.stderr)

    def test_for_people_there_are_words_and_no_json(self):
        self.new()
        for words in (("headroom", self.book), ("volumes", self.book), ("releases", self.book),
                      ("load", self.book, "L-1"), ("burndown", self.book), ("journal", self.book)):
            out = self.sbk(*words).stdout
            self.assertTrue(out.strip())
            self.assertNotIn("{", out)

    def test_numbers_have_a_point_in_every_language(self):
        self.new()
        at = ("--as-at", "2025-12-01T00:00Z")
        plain = self.ask("headroom", self.book, *at)
        elsewhere = {"LANG": "de_DE.UTF-8", "LC_ALL": "de_DE.UTF-8", "TZ": "Asia/Kathmandu"}
        self.assertEqual(plain, self.ask("headroom", self.book, *at, env=elsewhere))

    def test_the_burndown_has_its_members_and_null_where_nothing_is_worked_out(self):
        self.new()
        said = self.ask("burndown", self.book, "--as-at", "2025-11-30T12:00+13:00")
        for key in ("days", "target", "limits"):
            self.assertIn(key, said)
        self.assertEqual({"date", "remaining_m3", "plan_m3"}, set(said["days"][0]))
        self.assertEqual({"p10", "p50", "p90"}, set(said["target"]))
        for row in said["limits"]:
            self.assertLessEqual({"consent", "condition", "p10", "p50", "p90", "p_before_target"}, set(row))

    def test_now_is_the_machines_where_no_as_at_is_given(self):
        self.new()
        self.assertEqual(3, self.total()["trips"])
        self.assertEqual(0, self.total("--clock", "2025-01-01T00:00Z")["trips"])

    def test_a_write_may_not_be_given_an_as_at(self):
        self.new()
        self.assertEqual(2, self.sbk("log", self.book, "trip", "T-1", "lat=1", "--as-at", "2025-01-01").returncode)

    def test_no_display_is_needed(self):
        self.new()
        done = self.sbk("return", self.book, "--period", "2026-01", "--as-at", "2026-02-03T09:00+13:00", "--out",
                        self.path("out"), env={"DISPLAY": "", "WAYLAND_DISPLAY": "", "QT_QPA_PLATFORM": ""})
        self.assertEqual(0, done.returncode, done.stderr)
        self.assertTrue(os.path.exists(os.path.join(self.path("out"), "return.pdf")))

#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A rule that refuses nothing holds nothing: each example in bad/ is refused for its own reason and no other.

An example is laid over good/, which keeps every rule. Words that must stand in no file of the tree are
written into the copy here.
"""
import re
import shutil
import sys
import tempfile
import unittest
from pathlib import Path

import check_layout

HERE = Path(__file__).resolve().parent
UNFINISHED = ["TO" + "DO", "st" + "ub"]
MACHINE = ["/wo" + "rk/", ".libr" + "ary"]


def written_out(text):
    text = re.sub(r"@LINES:(\d+)@", lambda m: "\n" * (int(m.group(1)) - 1), text)
    text = re.sub(r"@UNFINISHED:(\d)@", lambda m: UNFINISHED[int(m.group(1))], text)
    return re.sub(r"@MACHINE:(\d)@", lambda m: MACHINE[int(m.group(1))], text)


def rules_broken_by(example):
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder) / "house"
        shutil.copytree(HERE / "good", root)
        if example is not None:
            shutil.copytree(example, root, dirs_exist_ok=True)
        for path in root.rglob("*"):
            if path.is_file():
                path.write_text(written_out(path.read_text(encoding="utf-8")), encoding="utf-8")
        return {v.rule for v in check_layout.violations(root)}


class LayoutTest(unittest.TestCase):
    def test_a_house_that_keeps_every_rule_passes(self):
        self.assertEqual(rules_broken_by(None), set())

    def test_each_bad_example_is_refused_for_its_own_reason(self):
        for example in sorted((HERE / "bad").iterdir()):
            with self.subTest(example=example.name):
                self.assertEqual(rules_broken_by(example), {example.name.split("--")[0]})

    def test_each_rule_has_a_bad_example(self):
        shown = {e.name.split("--")[0] for e in (HERE / "bad").iterdir()}
        self.assertEqual({check_layout.rule_name(r) for r in check_layout.RULES}, shown)

    def test_an_exception_that_nothing_needs_is_refused(self):
        found = check_layout.violations(HERE / "good", [("clock", "model/unit/metres.h", "none")])
        self.assertEqual([v.what for v in found], ["the exception is not needed"])

    def test_the_real_tree_keeps_every_rule(self):
        found = check_layout.violations(HERE.parents[1], check_layout.EXCEPTIONS)
        self.assertEqual([str(v) for v in found], [])


if __name__ == "__main__":
    sys.dont_write_bytecode = True
    unittest.main()

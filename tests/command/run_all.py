#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every test of the command line: run_all.py --sbk PATH [--only WORD]; the last line is "N passed, N failed".

With SPOILBOOK_BRIEF=1 (under sanitizers, where one takes five times as long) every sixth test of each family.
"""
import argparse
import importlib
import os
import sys
import unittest

HERE = os.path.dirname(os.path.abspath(__file__))
FAMILIES = ("folder_refused", "folder_taken_in", "strangers", "times", "counting", "limits", "releases", "tracks",
            "release_check", "conditions", "duties", "writing", "reads_at", "journal", "files", "returns", "usage",
            "sample", "compare", "turbidity", "pace", "what_if", "watched_folder", "trying", "evidence", "open_data",
            "consents", "water", "surfaces")


def main():
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("--sbk", required=True)
    arguments.add_argument("--only", default="", help="the tests whose name holds this word")
    given = arguments.parse_args()
    os.environ["SPOILBOOK_SBK"] = os.path.abspath(given.sbk)
    sys.dont_write_bytecode = True
    sys.path.insert(0, HERE)
    every = 6 if os.environ.get("SPOILBOOK_BRIEF") == "1" else 1
    suite = unittest.TestSuite()
    for family in FAMILIES:
        cases = unittest.defaultTestLoader.loadTestsFromModule(importlib.import_module(family))
        tests = [test for case in cases for test in case if given.only in test.id()]
        suite.addTests(tests[::every])
    result = unittest.TextTestRunner(verbosity=1).run(suite)
    # A test with sub-tests fails once, however many of them do.
    failed = len({getattr(test, "test_case", test).id() for test, _ in result.failures + result.errors})
    print(f"{result.testsRun - failed - len(result.skipped)} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())

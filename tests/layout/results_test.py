#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What tests/run.sh prints in the end must not be kinder than the suites: tests/results.py counts them right."""
import sys
import unittest
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))
import results  # noqa: E402  (it stands beside run.sh)


class ResultsTest(unittest.TestCase):
    def test_a_suite_of_catch_counts_its_test_cases(self):
        self.assertEqual(results.count("All tests passed (123 assertions in 45 test cases)\n", True), (45, 0))
        self.assertEqual(results.count("All tests passed (1 assertion in 1 test case)\n", True), (1, 0))

    def test_failed_cases_are_told_from_passed_ones(self):
        output = "test cases:  12 |  9 passed |  3 failed\nassertions: 40 | 37 passed | 3 failed\n"
        self.assertEqual(results.count(output, False), (9, 3))

    def test_cases_that_were_meant_to_fail_are_neither(self):
        output = "test cases: 6 | 3 passed | 1 failed | 2 failed as expected\n"
        self.assertEqual(results.count(output, False), (3, 1))

    def test_a_suite_that_crashed_counts_as_one_that_failed(self):
        self.assertEqual(results.count("Segmentation fault\n", False), (0, 1))

    def test_a_suite_that_failed_after_all_its_cases_passed_counts_one_failure(self):
        output = "All tests passed (8 assertions in 4 test cases)\nERROR: LeakSanitizer: detected memory leaks\n"
        self.assertEqual(results.count(output, False), (4, 1))

    def test_a_suite_of_python_counts_its_tests(self):
        self.assertEqual(results.count("Ran 6 tests in 0.4s\n\nOK\n", True), (6, 0))
        self.assertEqual(results.count("Ran 6 tests in 0.4s\n\nFAILED (failures=1, errors=2)\n", False), (3, 3))

    def test_a_suite_that_says_so_plainly_is_believed(self):
        self.assertEqual(results.count("Ran 6 tests in 0.4s\n\nOK\n5 passed, 0 failed\n", True), (5, 0))
        self.assertEqual(results.count("60 passed, 2 failed\n", False), (60, 2))

    def test_any_other_test_counts_as_one(self):
        self.assertEqual(results.count("done\n", True), (1, 0))


if __name__ == "__main__":
    unittest.main()

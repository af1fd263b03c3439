#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Adds up what ctest wrote: tests/results.py JUNIT... prints "PASSED FAILED" in test cases.

A suite of Catch2 counts by its own closing line, every other test as one. A failed suite whose closing line
is missing or names no failed case (it crashed, or ran out of time) counts as one more that failed.
"""
import re
import sys
import xml.etree.ElementTree as ElementTree

_ALL_PASSED = re.compile(r"All tests passed \(.* in (\d+) test cases?\)")
_SOME_FAILED = re.compile(r"test cases:\s+\d+((?:\s*\|\s*\d+ \w[\w ]*)+)")
_PLAIN = re.compile(r"^(\d+) passed, (\d+) failed$", re.MULTILINE)
_UNITTEST = re.compile(r"^Ran (\d+) tests? in ", re.MULTILINE)


def count(output, succeeded):
    """(passed, failed) of one test from what it printed."""
    passed = failed = 0
    if match := _ALL_PASSED.search(output):
        passed = int(match.group(1))
    elif match := _SOME_FAILED.search(output):
        numbers = dict((word, int(n)) for n, word in re.findall(r"(\d+) (passed|failed)(?! as)\b", match.group(1)))
        passed, failed = numbers.get("passed", 0), numbers.get("failed", 0)
    elif matches := _PLAIN.findall(output):
        passed, failed = map(int, matches[-1])
    elif match := _UNITTEST.search(output):
        broken = sum(int(n) for n in re.findall(r"(?:failures|errors)=(\d+)", output))
        failed = min(broken, int(match.group(1)))
        passed = int(match.group(1)) - failed
    if succeeded:
        return max(passed, 1), 0
    return passed, max(failed, 1)


def main(paths):
    passed = failed = 0
    for path in paths:
        for case in ElementTree.parse(path).getroot().iter("testcase"):
            if case.get("status") in ("disabled", "notrun") and case.find("skipped") is not None:
                continue
            good, bad = count(case.findtext("system-out") or "", case.get("status") == "run")
            passed, failed = passed + good, failed + bad
    print(passed, failed)


if __name__ == "__main__":
    main(sys.argv[1:])

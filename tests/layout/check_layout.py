#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Holds the house to its plan: check_layout.py [ROOT]. Exit 1, with every place, where a rule is broken.

The rules stand in rules_*.py, one function each; the first word of its docstring names the rule, and
bad/RULE or bad/RULE--VARIANT holds an example which that rule must refuse.
"""
import sys
from pathlib import Path

import rules_arrows
import rules_code
import rules_files
from tree import Tree, Violation

RULES = rules_arrows.RULES + rules_code.RULES + rules_files.RULES

# (rule, path, reason). An exception that nothing needs any more is itself refused.
EXCEPTIONS = [
    ("global", "model/place/gdal_safety.cpp", "GDAL's list of drivers is the process's own: cut down once"),
]


def rule_name(rule):
    return rule.__doc__.split(":", 1)[0]


def violations(root, exceptions=()):
    """All violations in the tree at `root`, sorted by place."""
    tree = Tree(root)
    found = [v for rule in RULES for v in rule(tree)]
    excepted = {(rule, path) for rule, path, _ in exceptions}
    needed = {(v.rule, v.path) for v in found}
    stale = [Violation(path, 1, rule, "the exception is not needed") for rule, path in sorted(excepted - needed)]
    return sorted([v for v in found if (v.rule, v.path) not in excepted] + stale)


def main(arguments):
    root = Path(arguments[0]) if arguments else Path(__file__).resolve().parents[2]
    found = violations(root, EXCEPTIONS)
    for violation in found:
        print(violation)
    print(f"layout: {len(RULES)} rules, {len(found)} violations")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

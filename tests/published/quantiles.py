#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The program's quantiles against SciPy's, which are computed now: quantiles.py PATH_OF_quantile_table."""
import math
import subprocess
import sys

from scipy import stats

BY = {"chi_square": lambda x, dof: stats.chi2.sf(x, dof), "student_t": stats.t.ppf,
      "normal": lambda p, _: stats.norm.ppf(p)}
# SciPy 1.10 finds t's quantile by search and stops there: t(0.995, 3) is 5.84090930973 in any table of 12 digits.
TOLERANCE = {"student_t": 1e-8}


def main():
    lines = subprocess.run(sys.argv[1:2], capture_output=True, text=True, check=True).stdout.splitlines()
    failed = 0
    for line in lines:
        name, a, b, value = line.split()
        want = BY[name](float(a), float(b))
        if not math.isclose(float(value), want, rel_tol=TOLERANCE.get(name, 1e-9), abs_tol=1e-12):
            failed += 1
            print(f"{name}({a}, {b}): {value}, SciPy {want!r}")
    print(f"{len(lines) - failed} passed, {failed} failed")
    return 1 if failed or not lines else 0


if __name__ == "__main__":
    sys.exit(main())

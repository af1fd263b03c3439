#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The yardstick of bench_turbidity: flags and a six-hour rolling median by pandas, over a file of time,turbidity.

turbidity_pandas.py FILE EVERY prints, of the same rows and thresholds: seconds of work and of processor time, the sum of
the medians that are complete, how many those are, readings flagged suspect or fail, and the peak memory of the work and of
all, in MB; then of every EVERYth row its median, or nan."""
import resource
import sys
import time

import numpy as np
import pandas as pd


def peak_mb():
    with open("/proc/self/status", encoding="ascii") as f:
        return next(int(line.split()[1]) for line in f if line.startswith("VmHWM:")) / 1024


def processor_s():
    used = resource.getrusage(resource.RUSAGE_SELF)
    return used.ru_utime + used.ru_stime


def main():
    raw = pd.read_csv(sys.argv[1], parse_dates=["time"], index_col="time").turbidity
    all_mb = peak_mb()
    with open("/proc/self/clear_refs", "w", encoding="ascii") as f:
        f.write("5")
    began, used = time.monotonic(), processor_s()
    fail = raw > 400
    spike = (raw - (raw.shift(1) + raw.shift(-1)) / 2).abs() > 50
    # A row a minute: what has not changed for an hour spans 61 rows; blanks say as the last value did.
    filled = raw.ffill()
    flat = (filled.rolling(61).max() - filled.rolling(61).min() < 0.005) & raw.notna()
    odd = fail | spike | flat
    counted = raw.where(~odd).rolling("360min", closed="right")
    median, n = counted.median(), counted.count()
    median = median.where((n >= 270) & raw.notna())
    took, used = time.monotonic() - began, processor_s() - used
    work_mb = peak_mb()
    print(took, used, median.sum(), int(median.notna().sum()), int(odd.sum()), work_mb, max(all_mb, work_mb))
    for value in median.to_numpy()[::int(sys.argv[2])]:
        print(repr(float(value)) if not np.isnan(value) else "nan")


if __name__ == "__main__":
    main()

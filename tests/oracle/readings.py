# SPDX-License-Identifier: GPL-3.0-or-later
"""Turbidity readings of a site: thresholds, flags, the site's interval (calculations.md section 5)."""
from collections import Counter
from fractions import Fraction

from bookfolder import number

PASS, NOT_EVALUATED, SUSPECT, FAIL, MISSING = 1, 2, 3, 4, 9
WORSE = (MISSING, NOT_EVALUATED, PASS, SUSPECT, FAIL)      # the worst stands last
MINUTE = 60000


class Site:
    """One logger up to an instant: rows (time, value or None) in the order of time, and a flag for each."""

    def __init__(self, folder, name, as_at):
        self.name = name
        self.row = next(r for r in folder.rows["turbidity/sites.csv"] if r["site"] == name)
        # What a file says twice stands once.
        said = dict.fromkeys((folder.time(r["time"]), number(r["value"])) for r in folder.loggers[name])
        self.rows = sorted(said, key=lambda r: r[0])
        given = self.row.get("interval_min")
        self.interval = Fraction(given) * MINUTE if given else self._commonest_step()      # ms
        self.flags = self._flags()
        self._overrule(folder)
        held = [i for i, (t, _) in enumerate(self.rows) if t <= as_at]
        self.rows, self.flags = [self.rows[i] for i in held], [self.flags[i] for i in held]
        self.good = [(t, v) for (t, v), f in zip(self.rows, self.flags) if f in (PASS, NOT_EVALUATED)]
        self.present = sorted({t for t, v in self.rows if v is not None})

    def _commonest_step(self):
        steps = Counter(b[0] - a[0] for a, b in zip(self.rows, self.rows[1:]) if b[0] > a[0])
        return Fraction(steps.most_common(1)[0][0]) if steps else None

    # -- flags ---------------------------------------------------------------------------------------------

    def _flags(self):
        limits = {k: number(self.row.get(k)) for k in ("range_low", "range_high", "spike", "rate_per_min", "flat_min")}
        found = []
        for i, (_, value) in enumerate(self.rows):
            if value is None:
                found.append(MISSING)
                continue
            verdicts = [self._range(value, limits["range_low"], limits["range_high"])]
            if limits["spike"] is not None:
                verdicts.append(self._spike(i, limits["spike"]))
            if limits["rate_per_min"] is not None:
                verdicts.append(self._rate(i, limits["rate_per_min"]))
            if limits["flat_min"] is not None:
                verdicts.append(self._flat(i, limits["flat_min"]))
            found.append(max(verdicts, key=WORSE.index))
        return found

    @staticmethod
    def _range(value, low, high):
        if low is None and high is None:
            return NOT_EVALUATED
        outside = low is not None and value < low or high is not None and value > high
        return FAIL if outside else PASS

    def _spike(self, i, most):
        if i == 0 or i + 1 == len(self.rows):
            return NOT_EVALUATED
        before, here, after = (self.rows[j][1] for j in (i - 1, i, i + 1))
        if before is None or after is None:
            return NOT_EVALUATED
        return SUSPECT if abs(here - (before + after) / 2) > most else PASS

    def _rate(self, i, most):
        """The first reading, and one after a missing value, have nothing to have changed from: pass."""
        if i == 0 or self.rows[i - 1][1] is None or self.rows[i][0] == self.rows[i - 1][0]:
            return PASS
        minutes = (self.rows[i][0] - self.rows[i - 1][0]) / MINUTE
        return SUSPECT if abs(self.rows[i][1] - self.rows[i - 1][1]) / minutes > most else PASS

    def _flat(self, i, minutes):
        """Present readings equal to this one without a break for the whole intervals that fit into `minutes`."""
        whole = Fraction(str(minutes)) * MINUTE // self.interval * self.interval
        since = self.rows[i][0]
        for t, v in reversed(self.rows[:i]):
            if v is not None and v != self.rows[i][1]:
                break
            since = t if v is not None else since
        return SUSPECT if self.rows[i][0] - since >= whole else PASS

    def _overrule(self, folder):
        for row in folder.rows["turbidity/overrules.csv"]:
            if row["site"] != self.name:
                continue
            first = folder.time(row["from"])
            last = folder.time(row.get("to")) if row.get("to") else first
            for i, (t, value) in enumerate(self.rows):
                if first <= t <= last and value is not None:
                    self.flags[i] = int(row["flag"])

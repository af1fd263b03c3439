# SPDX-License-Identifier: GPL-3.0-or-later
"""Tide and waves at the invented place. MHWS 1.9 m, MLWS 0.2 m above chart datum."""
import math

START = 29_235_000          # 2025-08-02 in minutes: phases count from here
MEAN_M = 1.05
# amplitude m, period in minutes (M2, S2, N2: 12.4206, 12, 12.6583 hours), phase
PARTS = [(0.66, 745.2360, 0.7), (0.19, 720.0, 2.1), (0.10, 759.4990, 4.4)]


def tide(minute):
    return MEAN_M + sum(a * math.cos(2 * math.pi * (minute - START) / p - f) for a, p, f in PARTS)


def high_and_low(first, last):
    """(minute, level) of each high and low water."""
    found, step = [], 6
    before, here = tide(first - step), tide(first)
    for minute in range(first, last, step):
        after = tide(minute + step)
        if (here - before) * (after - here) <= 0 and here != after:
            found.append((minute, here))
        before, here = here, after
    return found


class Sea:
    """Significant wave height at the ground, from what each shift could do."""

    def __init__(self, dice):
        self.dice, self.base = dice, {}

    def _base(self, shift):
        if shift not in self.base:
            low, high = {4: (0.4, 1.1), 3: (0.7, 1.4)}.get(shift.plan.trips, (0.9, 1.5))
            self.base[shift] = self.dice.between(low, high)
        return self.base[shift]

    def _held(self, shift, minute):
        if "turned back" in shift.plan.tags:
            return minute > shift.plan.start + 100
        hold = shift.lost.holding(minute)
        if not hold or hold.cause != "weather":
            return False
        return not any(t.release_start and abs(t.release_start - minute) < 40 for t in shift.trips)

    def height(self, shift, minute):
        """As the buoy shows it, m."""
        if self._held(shift, minute):
            return round(self.dice.between(1.9, 2.6), 1)
        return round(min(1.7, max(0.3, self._base(shift) + self.dice.bell(0.07))), 1)

    def of_trip(self, trip):
        if trip.outcome == "returned_loaded":
            return 2.3
        return round(min(1.7, max(0.3, self._base(trip.shift) + self.dice.bell(0.06))), 1)

    def observations(self, shift):
        """(minute, wind kn, wave m, period s, visibility)."""
        plan, found = shift.plan, []
        times = [plan.start + 180 * i for i in range(4)] + ([plan.end - 15] if "running" in plan.tags else [])
        for minute in times:
            height = self.height(shift, minute)
            wind = int(6 + height * 9 + self.dice.bell(2))
            period = round(5.5 + height * 2 + self.dice.bell(0.5), 1)
            found.append((minute, wind, height, period, "poor" if height > 2.2 else "good"))
        return found

    def weather(self, shift):
        if any(h.cause == "weather" for h in shift.lost.holds) or "turned back" in shift.plan.tags:
            return 3
        return {4: 0, 3: 1}.get(shift.plan.trips, 2)

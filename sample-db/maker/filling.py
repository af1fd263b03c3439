# SPDX-License-Identifier: GPL-3.0-or-later
"""Loads: how full a barge is to be, what went in bucket by bucket, and what dips and draughts then say."""
from datetime import date

from . import clock
from .plant import BUCKET_M3, FIRST_BULKING, MATERIALS, SHELLY_FROM, WATER

SHARE_FULL = 0.88
NEAR_LIMIT = {(2025, 11): 25220.0}      # in-situ m3 that a month is to end at: 3 % under its 26 000
SHELLY_DAY = date.fromisoformat(SHELLY_FROM)


class Load:
    def __init__(self, number, barge, start, goal_m3, left_before):
        self.number, self.barge, self.start, self.end = number, barge, start, None
        self.left_before, self.wanted_m3 = left_before, goal_m3 - left_before
        self.goal_m3, self.tallies = goal_m3, {}        # (station, shift) -> buckets
        self.dips, self.hopper_m3, self.in_situ_m3, self.true_in_situ_m3 = [], None, None, None
        self.trips = []

    def buckets_wanted(self, set_up):
        each = BUCKET_M3[set_up.bucket] * MATERIALS[set_up.material].fill
        return max(0, -int(-(self.wanted_m3 - each / 2) // each))

    def add(self, station, shift, count):
        key = (station, shift)
        self.tallies[key] = self.tallies.get(key, 0) + count
        self.wanted_m3 -= count * BUCKET_M3[station.set_up.bucket] * MATERIALS[station.set_up.material].fill

    def materials(self):
        return sorted({s.set_up.material for s, _ in self.tallies})

    def shares(self):
        """Share of the hopper volume by material."""
        by, all_m3 = {}, 0.0
        for (station, _), count in self.tallies.items():
            found = station.set_up.material
            m3 = count * BUCKET_M3[station.set_up.bucket] * MATERIALS[found].fill
            by[found] = by.get(found, 0.0) + m3
            all_m3 += m3
        return {m: v / all_m3 for m, v in by.items()}


def bulking(material, minute):
    """The factor in force at an instant."""
    if material in FIRST_BULKING and clock.wall(minute)[0] < SHELLY_DAY:
        return FIRST_BULKING[material]
    return MATERIALS[material].bulking


class Filling:
    def __init__(self, months, dice):
        self.dice, self.opened, self.left = dice, 0, {}
        self.bounds, count = [], 0
        for month in months:
            count += month.trips
            self.bounds.append((count, month.key))
        self.counted = {}

    def _fullness(self, barge, material):
        """1, or what brings a month with a set end to it."""
        ordinal = self.opened
        for bound, key in self.bounds:
            if ordinal < bound:
                if key not in NEAR_LIMIT:
                    return 1 + self.dice.bell(0.018)
                nominal = SHARE_FULL / MATERIALS[material or "silty sand"].bulking
                coming = bound - ordinal
                pair = 980 * (coming // 2) + (barge.capacity if coming % 2 else 0)
                need = NEAR_LIMIT[key] - self.counted.get(key, 0.0)
                noise = 0 if coming < 2 else self.dice.bell(0.012)
                return min(1.06, max(0.92, need / (pair * nominal))) + noise
        return 1 + self.dice.bell(0.018)

    def open(self, barge, start, material):
        goal = barge.capacity * SHARE_FULL * self._fullness(barge, material)
        load = Load(self.opened, barge, start, goal, self.left.pop(barge.name, 0.0))
        self.opened += 1
        return load

    def close(self, load, end):
        load.end = end
        goal = load.goal_m3 - load.wanted_m3        # whole buckets
        goal += (load.goal_m3 - goal) * 0.8 + (goal - load.left_before) * self.dice.bell(0.004)
        mean = load.barge.ullage(goal)
        lie = [0.02, 0.02, -0.05, -0.05, 0.03, 0.03]        # spoil lies higher in the middle of the hopper
        load.dips = [max(0.0, round(mean + d + self.dice.bell(0.025), 2)) for d in lie]
        load.hopper_m3 = load.barge.hopper(sum(load.dips) / 6)
        shares = load.shares()
        load.in_situ_m3 = load.hopper_m3 * sum(s / bulking(m, end) for m, s in shares.items())
        load.true_in_situ_m3 = load.hopper_m3 * sum(s / MATERIALS[m].true_bulking for m, s in shares.items())
        for bound, key in self.bounds:
            if load.number < bound:
                self.counted[key] = self.counted.get(key, 0.0) + load.in_situ_m3
                break

    def released(self, trip):
        trip.load.trips.append(trip)
        if trip.outcome == "part":
            left = round(trip.load.hopper_m3 * 0.25)
            self.left[trip.load.barge.name] = float(left)
            for bound, key in self.bounds:
                if trip.load.number < bound:
                    self.counted[key] -= trip.load.in_situ_m3 * 0.25
                    break


def draughts(load, dice):
    """(light, full, density light, density full): six marks each, FP FS MP MS AP AS."""
    barge = load.barge
    density = [round(1.0235 + dice.between(0, 0.002), 4) for _ in range(2)]
    light_t = barge.displacement(barge.light_m)
    shares, in_situ = load.shares(), load.true_in_situ_m3
    situ = sum(s * MATERIALS[m].situ for m, s in shares.items())
    wet = in_situ * (situ - WATER) + WATER * load.hopper_m3
    marks = []
    for tonnes, rho in ((light_t, density[0]), (light_t + wet, density[1])):
        mean, trim, list_m = barge.draught(tonnes * WATER / rho), dice.between(-0.1, 0.25), dice.bell(0.02)
        read = []
        for at in (-0.5, 0.0, 0.5):
            read += [mean + at * trim + list_m, mean + at * trim - list_m]
        marks.append([round(m + dice.bell(0.012), 2) for m in read])
    return marks[0], marks[1], density[0], density[1]

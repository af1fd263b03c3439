# SPDX-License-Identifier: GPL-3.0-or-later
"""Where the pontoon is set up next: claims in their order, lane by lane."""
from datetime import date

from . import places
from .plant import BUCKET_M3, GENERAL, MATERIALS, RIPPING


class SetUp:
    """A place that is still to be dug; `left` in general or ripping buckets."""

    def __init__(self, claim, at, left, bucket, material, moved):
        self.claim, self.left, self.bucket, self.material = claim, left, bucket, material
        self.easting, self.northing, self.heading, self.lane, self.dug = at
        self.moved = moved              # how the pontoon got here: step, lane, claim

    @property
    def rock(self):
        return self.material == "broken rock"


def _buckets(m3, stations, material, bucket, dice):
    """Buckets of each of `stations` set-ups, uneven, that together hold `m3` in situ."""
    found, uneven = MATERIALS[material], [1 + dice.bell(0.12) for _ in range(stations)]
    all_buckets = m3 * found.bulking / (BUCKET_M3[bucket] * found.fill)
    return [max(4, int(all_buckets * u / sum(uneven) + 0.5)) for u in uneven]


def set_ups(claim, dice, share=1.0, lanes=None, rock_m3=0.0):
    """The set-ups of a claim, in order; `share` of what is planned is dug."""
    stations = [s for s in claim.stations() if lanes is None or s[3] in lanes]
    all_lanes = claim.lanes if lanes is None else len(lanes)
    m3, material, bucket = claim.planned_m3 * share * all_lanes / claim.lanes, claim.material, GENERAL
    if rock_m3:
        m3, material, bucket = rock_m3, "broken rock", RIPPING
    buckets = _buckets(m3, len(stations), material, bucket, dice)
    found, before = [], None
    for at, count in zip(stations, buckets):
        moved = "claim" if before is None else "step" if before[2:4] == at[2:4] else "lane"
        found.append(SetUp(claim.claim, at, count, bucket, material, moved))
        before = at
    return found


class MarramLanes:
    """Basin to December, cut from February to April, then the basin again; FB2's rock in its own days."""

    ROCK_M3 = 3560.0

    def __init__(self, dice):
        c = places.BY_NAME
        sand = (c["FB2"].planned_m3 * 0.97 - self.ROCK_M3) / c["FB2"].planned_m3 * 5 / 4
        self.rock = set_ups(c["FB2"], dice, lanes=[places.ROCK_LANE], rock_m3=self.ROCK_M3)
        self.basin = set_ups(c["FB1"], dice) + set_ups(c["FB2"], dice, share=sand, lanes=[0, 1, 2, 3])
        for name in ("FB3", "FB4", "FB5", "FB6"):
            self.basin += set_ups(c[name], dice)
        self.cut = [s for i in range(1, 6) for s in set_ups(c[f"OB{i}"], dice)]

    def next(self, plan, day):
        if plan.rock and self.rock:
            return self.rock.pop(0)
        cut = date(2026, 2, 1) <= day <= date(2026, 4, 30)
        return (self.cut if cut and self.cut else self.basin).pop(0)

    def give_back(self, set_up):
        """What is left of a set-up that was given up is dug later, set up again."""
        (self.rock if set_up.rock else self.cut if set_up.claim.startswith("OB") else self.basin).insert(0, set_up)


class SeasonLanes:
    """Year after year round all claims, from another one for each spread."""

    def __init__(self, dice, first):
        self.dice, self.turn, self.queue = dice, first, []

    def next(self, plan, day):
        if not self.queue:
            self.queue = set_ups(places.CLAIMS[self.turn % len(places.CLAIMS)], self.dice)
            self.turn += 1
        return self.queue.pop(0)

    def give_back(self, set_up):
        self.queue.insert(0, set_up)

# SPDX-License-Identifier: GPL-3.0-or-later
"""Why a shift brings fewer releases than it could: holds, in which the tug does not cast off, and stops of the
dredger. Causes are the trade's own."""

# (cause, weight, the dredger stops too)
SHORT = [("shipping movement", 5, True), ("refuel and stores", 2, True), ("maintenance", 2, True),
         ("debris", 1.5, True), ("spuds or winches", 1.5, True), ("mammal hold", 1, True), ("safety stop", 0.5, True)]
MIDDLE = [("breakdown dredger", 3, True), ("breakdown barge or tug", 3, False), ("weather", 3, False),
          ("tide", 1.5, False), ("survey", 1.5, True), ("maintenance", 2, True), ("shipping movement", 1, True),
          ("obstruction or find", 0.5, True)]
LONG = [("weather", 6, False), ("breakdown dredger", 2.5, True), ("breakdown barge or tug", 2, False)]
GREASING = [("maintenance", 3), ("debris", 2), ("spuds or winches", 2)]
REMARKS = {
    "shipping movement": ["car carrier inbound", "tanker to the oil berth", "log ship outbound", "pilot boat asked"],
    "breakdown dredger": ["hose on the stick burst", "swing pump hot", "slew brake", "spud winch sheave"],
    "breakdown barge or tug": ["door ram leaking", "tow winch brake", "hydraulic pack of the barge", "fuel filter"],
    "weather": ["swell on the bar", "southerly front", "sea on the ground over the limit"],
    "debris": ["wire in the bucket", "old mooring chain", "tyre and timber"],
    "mammal hold": ["dolphins inside 300 m", "fur seal by the pontoon"],
    "turbidity hold": ["told by the officer", "waiting for the all-clear"],
    "survey": ["progress survey of the claim", "multibeam in the lane"],
    "obstruction or find": ["timber pile stump"],
    "tide": ["not enough water over the bar for a full barge"],
    "safety stop": ["diver's flag at the wharf"],
}


class Hold:
    def __init__(self, start, end, cause):
        self.start, self.end, self.cause = start, end, cause


class LostTime:
    """Holds of the tug and stops [(at, minutes, cause)] of the dredger in one shift."""

    def __init__(self, plan, round_trip, dice):
        self.holds, self.stops = [], []
        self.plan, self.round_trip, self.dice = plan, round_trip, dice
        if plan.standby and "turned back" not in plan.tags:
            self.holds.append(Hold(plan.start, plan.end, "weather"))
        elif not plan.tags & {"midnight", "turned back", "consent hold", "first"} and not plan.rock:
            self._spend()
        self.stops.append((plan.start, dice.whole(8, 14), "toolbox or drill"))
        self._greasing()
        self.stops.sort()

    def _spend(self):
        plan, dice = self.plan, self.dice
        spare = plan.end - plan.start - 20 - plan.trips * (self.round_trip + 7)
        if plan.night:
            spare -= 200                # two trips are a night's work
        if spare < 25:
            return
        sizes = [spare]
        if 75 < spare < 160 and dice.share() < 0.5:
            first = dice.whole(30, spare - 40)
            sizes = [first, spare - first]
        orders = list(range(max(1, plan.trips)))
        for size in sizes:
            order = orders.pop(dice.whole(0, len(orders) - 1)) if orders else 0
            self._hold(plan.start + 6 + order * (self.round_trip + 7), size - dice.whole(2, 10))

    def _hold(self, at, size):
        table = SHORT if size < 52 else MIDDLE if size < 150 else LONG
        if "turbid" in self.plan.tags and size >= 52:
            table = [("turbidity hold", 1, True)]
        cause, _, stops = self.dice.weighted([((c, w, s), w) for c, w, s in table])
        at = max([at] + [h.end + 15 for h in self.holds if h.start <= at + size and at <= h.end])
        size = min(size, self.plan.end - at)
        if size <= 0:
            return
        self.holds.append(Hold(at, at + size, cause))
        if stops:
            self.stops.append((at, size, cause))

    def _greasing(self):
        if self.dice.share() < 0.45:
            longest = 11 if self.plan.trips == 4 else 20
            at = self.plan.start + self.dice.whole(60, 600)
            self.stops.append((at, self.dice.whole(5, longest), self.dice.weighted(GREASING)))

    def holding(self, minute):
        """The hold that covers a minute, or None."""
        return next((h for h in self.holds if h.start <= minute < h.end), None)

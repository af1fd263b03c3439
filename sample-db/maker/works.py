# SPDX-License-Identifier: GPL-3.0-or-later
"""One spread at work, minute by minute: the pontoon digs into a barge, the tug tows the other one out."""
from . import clock
from .filling import Filling
from .lost_time import LostTime
from .plant import BUCKETS_AN_HOUR

LATEST_BACK = 18            # minutes after the end of her shift that a tug may come back


class Station:
    def __init__(self, set_up, shift, down):
        self.set_up, self.shift, self.down, self.up = set_up, shift, down, None


class Trip:
    def __init__(self, load, shift, order, departed, outcome=""):
        self.load, self.shift, self.order, self.departed, self.outcome = load, shift, order, departed, outcome
        self.release_start = self.release_end = self.returned = None
        self.opening = None         # where she released, if at one place
        self.openings = []          # wherever she did


class Shift:
    """A plan that was worked; `delays` are [start, end, cause]."""

    def __init__(self, plan, spread):
        self.plan, self.spread, self.delays, self.trips = plan, spread, [], []
        self.lost = None


def _over_midnight(trip):
    return clock.wall(trip.release_start)[0] != clock.wall(trip.release_end)[0]


class Works:
    def __init__(self, spread, months, lanes, dice):
        self.spread, self.months, self.lanes, self.dice = spread, months, lanes, dice
        self.by_key = {m.key: m for m in months}
        self.filling = Filling(months, dice.child(7))
        self.shifts, self.stations, self.loads, self.trips = [], [], [], []
        self.empty = [(0, b) for b in spread.barges]
        self.full, self.load, self.station = [], None, None
        self.tug_free, self.a_day, self.load_limit = 0, {}, None

    def run(self):
        for month in self.months:
            for index, plan in enumerate(month.plans):
                plan.trips = month.choose(index, self.dice)
                if "midnight" in plan.tags:
                    plan.trips += 2
                if month.key[1] == 12 and index == len(month.plans) - 1:
                    self.load_limit = sum(m.done for m in self.months) - month.done + month.trips
                self._shift(plan)
            if self.load_limit and self.station:
                self._give_up_station()         # she goes to the slip
            self.load_limit = None
            self._carry_over(month)
        return self

    def _carry_over(self, month):
        """What a month could not bring, the next one brings."""
        at = self.months.index(month) + 1
        if at < len(self.months) and month.done < month.trips:
            self.months[at].trips += month.trips - month.done

    # -- the tug ------------------------------------------------------------------------------------------------

    def _round_trip(self, plan):
        if plan.trips >= 4:
            return self.dice.whole(167, 172)
        if plan.rock or plan.night:
            return self.dice.whole(182, 194)
        return self.dice.whole(188, 201) if plan.trips == 3 else self.dice.whole(194, 208)

    def _cast_off(self):
        """Sends the tug off with what is full, as long as this shift lets her."""
        while self.full and len(self.shift.trips) < self.plan.trips + ("turned back" in self.plan.tags):
            load, order = self.full[0], len(self.shift.trips)
            at = max(self.tug_free, load.end + self.dice.whole(4, 7))
            if "midnight" in self.plan.tags:
                at = max(at, self.plan.start + (25, 268, 0)[order])
            if "running" in self.plan.tags and order == self.plan.trips - 1:
                at = max(at, self.plan.end - 25 - self.round_trip)      # back just before the book is opened
            for hold in sorted(self.lost.holds, key=lambda h: h.start):
                if hold.start <= at < hold.end:
                    at = hold.end + self.dice.whole(0, 3)
            trip = self._trip(load, order, at)
            if not self.plan.tags & {"midnight", "turned back"} and _over_midnight(trip):
                trip = self._trip(load, order, at + 20)     # one release across midnight is enough
            latest = self.plan.end + (0 if "running" in self.plan.tags else LATEST_BACK)
            day = clock.wall(trip.release_end)[0] if trip.release_end else None
            if trip.returned > latest or self.a_day.get(day, 0) >= 6:
                return
            if "consent hold" in self.plan.tags and trip.release_end >= self.plan.start + 118:
                return                          # nothing is released after 20:00
            self._sail(trip, day)

    def _trip(self, load, order, at):
        dice, minutes = self.dice, self.round_trip + self.dice.whole(-3, 3)
        trip = Trip(load, self.shift, order, at)
        if "turned back" in self.plan.tags:
            trip.outcome, trip.returned = "returned_loaded", at + 131
            return trip
        trip.release_start = at + minutes * 49 // 100 + dice.whole(-3, 3)
        if "midnight" in self.plan.tags and order == 1:
            trip.release_start = self.plan.end - 6 * 60 - 4
        trip.release_end = trip.release_start + dice.whole(7, 10)
        trip.returned = at + minutes
        return trip

    def _sail(self, trip, day):
        self.shift.trips.append(trip)
        self.trips.append(trip)
        self.tug_free = trip.returned + self.dice.whole(6, 8)
        if trip.outcome == "returned_loaded":
            return
        self.a_day[day] = self.a_day.get(day, 0) + 1
        month = self.by_key.get((day.year, day.month))
        if month:                               # a night may end in a month that has no shift of its own
            month.done += 1
        self.full.pop(0)
        if "hung up" in self.plan.tags and trip.order == 1:
            trip.outcome = "part"
        self.empty.append((trip.returned, trip.load.barge))
        self.filling.released(trip)

    # -- the dredger --------------------------------------------------------------------------------------------

    def _shift(self, plan):
        self.plan, self.shift = plan, Shift(plan, self.spread)
        self.round_trip = self._round_trip(plan)
        self.lost = self.shift.lost = LostTime(plan, self.round_trip, self.dice)
        self.stops = self.lost.stops
        self.tug_free = max(self.tug_free, plan.start + self.dice.whole(4, 7))
        self.shifts.append(self.shift)
        self._cast_off()
        self.now = plan.start
        while self.now < plan.end:
            self._step()

    def _delay(self, cause, until):
        until = min(until, self.plan.end)
        if until <= self.now:
            return
        delays = self.shift.delays
        if delays and delays[-1][1] == self.now and delays[-1][2] == cause:
            delays[-1][1] = until
        else:
            delays.append([self.now, until, cause])
        self.now = until

    def _step(self):
        if self.stops and self.stops[0][0] <= self.now:
            _, minutes, cause = self.stops.pop(0)
            if self.station and cause == "shipping movement" and self.dice.share() < 0.35:
                self._give_up_station()         # off the berth for the ship, and back
            return self._delay(cause, self.now + minutes)
        if self.load is None:
            return self._bring_alongside()
        if self.station and self.plan.rock != self.station.set_up.rock and (self._more_rock() or not self.plan.rock):
            self._give_up_station()
            return self._delay("bucket or tool change", self.now + self.dice.whole(40, 55))
        if self.station is None:
            return self._set_up()
        return self._dig()

    def _more_rock(self):
        return bool(getattr(self.lanes, "rock", None))

    def _until(self):
        """The next moment that breaks off what the dredger does."""
        return min(self.plan.end, self.stops[0][0] if self.stops else self.plan.end)

    def _bring_alongside(self):
        if self.load_limit and len(self.loads) >= self.load_limit:
            return self._delay("maintenance", self._until())
        first = min(self.empty, key=lambda e: e[0]) if self.empty else None
        if first is None or first[0] > self.now:
            return self._wait(self.plan.end if first is None else first[0])
        self.empty.remove(first)
        self._delay("barge change", self.now + self.dice.whole(5, 8))
        self.load = self.filling.open(first[1], self.now, self._next_material())
        self.loads.append(self.load)
        return None

    def _next_material(self):
        return self.station.set_up.material if self.station else None

    def _wait(self, until):
        until = min(until, self._until())
        hold = self.lost.holding(self.now)
        coming = any(at <= self.plan.end for at, _ in self.empty)
        if hold:
            return self._delay(hold.cause, min(until, hold.end))
        later = [h.start for h in self.lost.holds if h.start > self.now]
        cause = "waiting for barge" if coming else "waiting for tug"
        if not coming and (self.plan.night or self.plan.rock):
            cause = "consent hold"
        if "turned back" in self.plan.tags:
            cause = "weather"
        return self._delay(cause, min([until] + later))

    def _give_up_station(self):
        set_up, self.station.up = self.station.set_up, self.now
        if set_up.left > 0:
            set_up.moved = "again"
            self.lanes.give_back(set_up)
        self.station = None

    def _set_up(self):
        set_up = self.lanes.next(self.plan, clock.wall(self.now)[0])
        low, high = {"step": (5, 8), "again": (12, 20), "lane": (18, 28), "claim": (40, 60)}[set_up.moved]
        self._delay("shifting station", self.now + self.dice.whole(low, high))
        if self.now >= self.plan.end:
            set_up.moved = "again"
            return self.lanes.give_back(set_up)
        self.station = Station(set_up, self.shift, self.now)
        self.stations.append(self.station)
        return None

    def _dig(self):
        set_up, rate = self.station.set_up, BUCKETS_AN_HOUR[self.station.set_up.bucket]
        until = self._until()
        count = min(set_up.left, self.load.buckets_wanted(set_up), (until - self.now) * rate // 60)
        if count == 0:                          # a minute or two before a stop or the end
            return self._delay(self.stops.pop(0)[2], until + 5) if self.stops else self._delay("crew change", until)
        self.now += -(-count * 60 // rate)
        self.load.add(self.station, self.shift, count)
        set_up.left -= count
        if set_up.left == 0:
            self.station.up, self.station = self.now, None
        if self.load.buckets_wanted(set_up) == 0:
            self.filling.close(self.load, self.now)
            self.full.append(self.load)
            self.load = None
            self._cast_off()
        return None

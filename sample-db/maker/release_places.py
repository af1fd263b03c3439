# SPDX-License-Identifier: GPL-3.0-or-later
"""Where each load went: the cell that is due, with the habits of people, and the places of the stories."""

# Some cells are handier for the tow than others.
HABIT = {"A1": 1.15, "A2": 1.1, "A3": 1.0, "A4": 0.9, "B1": 1.2, "B2": 1.05, "B3": 0.8, "B4": 0.95, "C1": 1.05,
         "C2": 1.0, "C3": 0.95, "C4": 0.85}


class Opening:
    """One opening of the hopper, `at` metres along and right in the ground; `lat` None where the receiver was off."""

    def __init__(self, cell, at, lat_lon, share, start, end):
        self.cell, self.at, self.share, self.start, self.end = cell, at, share, start, end
        self.lat, self.lon = lat_lon


class Places:
    def __init__(self, ground, dice):
        self.ground, self.dice = ground, dice
        self.used = {c: 0.0 for c in ground.cells}
        self.mend = None                # (lat, lon) of the release without a position, as the deck log has it

    def _due(self):
        order = sorted(self.ground.cells, key=lambda c: (self.used[c] / HABIT[c], c))
        return self.dice.weighted(list(zip(order, (5, 4, 3, 2, 1))))

    def _opening(self, cell, at, share, start, end, known=True):
        return Opening(cell, at, self.ground.position(*at) if known else (None, None), share, start, end)

    def _in(self, cell):
        return self.ground.somewhere(self.dice, cell)

    def openings(self, trip, story):
        """[Opening] of a trip."""
        if trip.outcome == "returned_loaded":
            return []
        cell, share = self._due(), 1.0
        at, known = self._in(cell), story != "no position"
        if story == "outside":
            cell, at = "C4", (2400.0, self.ground.WIDTH + 80.0)
        if not known:
            cell, at = "A2", (1041.0, 400.0)
            self.mend = self.ground.position(*at)
        if story == "hung up":
            share = 0.75
        found = [self._opening(cell, at, share, trip.release_start, trip.release_end, known)]
        if story == "two cells":
            middle = trip.release_start + 4
            found = [self._opening("A2", self._in("A2"), 0.6, trip.release_start, middle),
                     self._opening("A3", self._in("A3"), 0.4, middle + 9, middle + 14)]
        for opening in found:
            self.used[opening.cell] += opening.share * trip.load.in_situ_m3
        return found

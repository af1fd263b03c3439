# SPDX-License-Identifier: GPL-3.0-or-later
"""The bed of Gannet Patch as a boat surveys it: a shelf that falls seaward in long sand waves, and on it what was
released, a round mound for each opening of a hopper. Nothing settles, nothing is carried off."""
import math

CELL_M = 50
MARGIN_M = 120              # surveyed beyond the line of the ground: twice the sigma of a mound
MIDDLE_M, FALL, SEAWARD_DEG = -24.0, 1 / 900, 59.0
WAVES = [(0.15, 910.0, 37.0), (0.1, 1430.0, 81.0)]      # height m either way, length m, azimuth of the way it runs
SIGMA_M = 60.0              # of a mound, which has the hopper's volume as it was: loose


class Bed:
    """`released`: [((along, right), m3)]."""

    def __init__(self, ground, released):
        self.ground, self.released = ground, released
        self.middle = ground.frame.at(ground.LENGTH / 2, ground.WIDTH / 2)
        corners = [ground.frame.at(a, r) for a in (-MARGIN_M, ground.LENGTH + MARGIN_M)
                   for r in (-MARGIN_M, ground.WIDTH + MARGIN_M)]
        self.corner = tuple(math.floor(min(c[i] for c in corners) / CELL_M) * CELL_M for i in (0, 1))
        self.size = tuple(math.ceil((max(c[i] for c in corners) - self.corner[i]) / CELL_M) for i in (0, 1))

    def rows(self):
        """Levels, m to chart datum, at the middles of the cells, the northern row first; None: not surveyed."""
        east, north = self.corner
        return [[self._level(east + (i + 0.5) * CELL_M, north + (j + 0.5) * CELL_M) for i in range(self.size[0])]
                for j in reversed(range(self.size[1]))]

    def _level(self, east, north):
        along, right = self.ground.frame.of(east, north)
        if not (-MARGIN_M < along < self.ground.LENGTH + MARGIN_M and -MARGIN_M < right < self.ground.WIDTH + MARGIN_M):
            return None
        level = MIDDLE_M - FALL * self._way(SEAWARD_DEG, east, north)
        for height, length, azimuth in WAVES:
            level += height * math.sin(2 * math.pi * self._way(azimuth, east, north) / length)
        return level + self._rise(along, right)

    def _way(self, azimuth_deg, east, north):
        """m from the middle of the ground along an azimuth."""
        azimuth = math.radians(azimuth_deg)
        return (east - self.middle[0]) * math.sin(azimuth) + (north - self.middle[1]) * math.cos(azimuth)

    def _rise(self, along, right):
        rise = 0.0
        for (a, r), m3 in self.released:
            square = ((along - a) ** 2 + (right - r) ** 2) / SIGMA_M ** 2
            if square < 36:
                rise += m3 * math.exp(-square / 2)
        return rise / (2 * math.pi * SIGMA_M ** 2)

# SPDX-License-Identifier: GPL-3.0-or-later
"""Claims, the lanes of stations in them, the disposal ground with its cells and its wreck. Grid metres."""
import math

from .mercator import lat_lon

EPSG = 32760
BASIN = (711640.0, 5497370.0)
GROUND = "Gannet Patch"
NM = 1852.0
SCALE = 1.000182            # grid metres to a metre on the ellipsoid, between basin and ground
HAUL_M = 7.4 * NM * SCALE
HAUL_AZIMUTH = 59.0
TARGET, ALLOWANCE, BATTER = -9.6, 0.3, 4


class Frame:
    """Grid metres from metres along and to the right of an azimuth."""

    def __init__(self, origin, azimuth_deg):
        self.east, self.north = origin
        self.azimuth = azimuth_deg
        self.sin, self.cos = math.sin(math.radians(azimuth_deg)), math.cos(math.radians(azimuth_deg))

    def at(self, along, right):
        return (self.east + along * self.sin + right * self.cos, self.north + along * self.cos - right * self.sin)

    def of(self, east, north):
        """(along, right) of a place in grid metres."""
        east, north = east - self.east, north - self.north
        return east * self.sin + north * self.cos, east * self.cos - north * self.sin


BASIN_FRAME = Frame(BASIN, 32.0)
CUT_FRAME = Frame(BASIN_FRAME.at(640.0, 85.0), 58.0)


class Claim:
    def __init__(self, claim, name, frame, corner, size, volumes, plan, lanes):
        self.claim, self.name, self.frame, self.corner, self.size = claim, name, frame, corner, size
        self.toe_m3, self.batter_m3, self.over_m3 = volumes
        self.start, self.finish = plan
        self.lanes, self.steps = lanes
        self.material = "silty sand" if claim.startswith("FB") else "shelly sand"

    @property
    def planned_m3(self):
        return self.toe_m3 + self.batter_m3 + self.over_m3

    @property
    def area_m2(self):
        return self.size[0] * self.size[1]

    def point(self, along, right):
        """`along` the lanes and across them, from the claim's corner."""
        return self.frame.at(self.corner[0] + along, self.corner[1] + right)

    def ring(self):
        length, width = self.size
        return [self.point(*p) for p in ((0, 0), (length, 0), (length, width), (0, width))]

    def stations(self):
        """(easting, northing, heading, lane, point dug) lane by lane. The slew centre lies 16.5 m ahead of the
        pontoon's and she digs 10 m ahead of that, working astern; the near end of a lane is dug the other way
        round, so that the pontoon stands inside the claim."""
        ahead, step = 26.5, self.size[0] / self.steps
        for lane in range(self.lanes):
            right = (lane + 0.5) * self.size[1] / self.lanes
            strips = [(i + 0.5) * step for i in range(self.steps)]
            for along in reversed([s for s in strips if s > ahead + 2]):
                yield (*self.point(along - ahead, right), self.frame.azimuth, lane, self.point(along, right))
            for along in [s for s in strips if s <= ahead + 2]:
                yield (*self.point(along + ahead, right), self.frame.azimuth + 180.0, lane, self.point(along, right))


def _basin(number, column, row, volumes, plan):
    side = 94.2
    return Claim(f"FB{number}", f"Ferry Basin {number}", BASIN_FRAME,
                 ((column - 1.5) * side, (row - 1) * side), (side, side), volumes, plan, (5, 19))


def _cut(number, volumes, plan):
    return Claim(f"OB{number}", f"Outer Bar Cut {number}", CUT_FRAME, ((number - 1) * 148.0, -25.0), (148.0, 50.0),
                 volumes, plan, (3, 30))


CLAIMS = [
    _basin(1, 0, 0, (24460, 1500, 1380), ("2025-08-04", "2025-09-06")),
    _basin(2, 1, 0, (17130, 900, 1370), ("2025-09-08", "2025-09-30")),
    _basin(3, 2, 0, (24900, 1500, 1380), ("2025-10-01", "2025-11-01")),
    _basin(4, 0, 1, (24640, 1600, 1380), ("2025-11-03", "2025-12-06")),
    _basin(5, 1, 1, (24280, 1000, 1370), ("2025-12-08", "2026-05-09")),
    _basin(6, 2, 1, (24010, 1600, 1370), ("2026-05-11", "2026-06-30")),
    _cut(1, (11930, 1180, 1050), ("2026-02-02", "2026-02-17")),
    _cut(2, (11710, 1180, 1050), ("2026-02-18", "2026-03-06")),
    _cut(3, (12080, 1180, 1050), ("2026-03-07", "2026-03-24")),
    _cut(4, (11640, 1180, 1050), ("2026-03-25", "2026-04-11")),
    _cut(5, (11620, 1180, 1050), ("2026-04-12", "2026-04-30")),
]
BY_NAME = {c.claim: c for c in CLAIMS}
ROCK_LANE = 4               # of FB2: where the rock patch lies


class GroundShape:
    """Gannet Patch: 1.5 by 1.2 nm, cells A1 to C4, an exclusion of 200 m around a wreck."""

    LENGTH, WIDTH, COLUMNS, ROWS = 1.5 * NM, 1.2 * NM, 4, 3
    WRECK, WRECK_RADIUS_M = (1736.0, 1111.0), 200.0

    def __init__(self):
        a = math.radians(HAUL_AZIMUTH)
        centre = (BASIN[0] + HAUL_M * math.sin(a), BASIN[1] + HAUL_M * math.cos(a))
        turn = Frame(centre, 14.0)
        self.frame = Frame(turn.at(-self.LENGTH / 2, -self.WIDTH / 2), 14.0)
        self.step = (self.LENGTH / self.COLUMNS, self.WIDTH / self.ROWS)
        self.cells = [f"{'ABC'[r]}{c + 1}" for r in range(self.ROWS) for c in range(self.COLUMNS)]

    def box(self, cell):
        """(along, right) of the cell's near corner."""
        return (int(cell[1]) - 1) * self.step[0], "ABC".index(cell[0]) * self.step[1]

    def cell_ring(self, cell):
        a, r = self.box(cell)
        da, dr = self.step
        return [self.frame.at(*p) for p in ((a, r), (a + da, r), (a + da, r + dr), (a, r + dr))]

    def ring(self):
        """The outline, with the corner of every cell that lies on it."""
        (da, dr), n, m = self.step, self.COLUMNS, self.ROWS
        line = [(i * da, 0) for i in range(n)] + [(n * da, i * dr) for i in range(m)]
        line += [(i * da, m * dr) for i in range(n, 0, -1)] + [(0, i * dr) for i in range(m, 0, -1)]
        return [self.frame.at(*p) for p in line]

    def wreck_ring(self):
        reach = self.WRECK_RADIUS_M / math.cos(math.pi / 24)
        return [self.frame.at(self.WRECK[0] + reach * math.cos(i * math.pi / 12),
                              self.WRECK[1] + reach * math.sin(i * math.pi / 12)) for i in range(24)]

    def wreck(self):
        return lat_lon(*self.frame.at(*self.WRECK))

    def somewhere(self, dice, cell):
        """(along, right) inside a cell, well clear of the outline, of the other cells and of the wreck."""
        a, r = self.box(cell)
        while True:
            along, right = a + dice.between(25, self.step[0] - 25), r + dice.between(25, self.step[1] - 25)
            edge = min(along, right, self.LENGTH - along, self.WIDTH - right)
            wreck = math.hypot(along - self.WRECK[0], right - self.WRECK[1])
            if edge > 90 and wreck > 270:
                return along, right

    def drift(self, cell):
        """(east, north) of one metre along the ground, towards its middle from the cell."""
        way = 1.0 if int(cell[1]) <= self.COLUMNS // 2 else -1.0
        return way * self.frame.sin, way * self.frame.cos

    def position(self, along, right):
        return lat_lon(*self.frame.at(along, right))

# SPDX-License-Identifier: GPL-3.0-or-later
"""The invented dredger, tugs and barges, their tables, and the materials they move."""

WATER = 1.025
GENERAL, RIPPING = "General", "Ripping"
BUCKET_M3 = {GENERAL: 4.2, RIPPING: 2.6}
BUCKETS_AN_HOUR = {GENERAL: 58, RIPPING: 40}        # while digging; 54 and 38 with shifting


class Material:
    """`bulking` is what the book reckons with, `true_bulking` what the bed will show; `fill` is the true one."""

    def __init__(self, name, situ, grain, bulking, true_bulking, fill):
        self.name, self.situ, self.grain = name, situ, grain
        self.bulking, self.true_bulking, self.fill = bulking, true_bulking, fill


MATERIALS = {m.name: m for m in (
    Material("silty sand", 1.86, 2.66, 1.235, 1.309, 0.90),
    Material("shelly sand", 1.94, 2.69, 1.245, 1.32, 0.885),
    Material("broken rock", 2.28, 2.71, 1.45, 1.47, 0.70),
)}
FIRST_BULKING = {"shelly sand": 1.26}               # until the first dips of the cut: factors.csv
FIRST_FILL = {"silty sand": 0.88}
BULKING_U = {"silty sand": 0.03, "shelly sand": 0.03, "broken rock": 0.06}
SHELLY_FROM, FILL_FROM = "2026-02-16", "2025-10-06"


class Barge:
    """A split hopper of straight sides: length, breadth at floor and coaming, depth. A box hull floats her."""

    def __init__(self, name, capacity, depth, floor, top, t_per_m, light_m):
        self.name, self.capacity, self.depth = name, capacity, depth
        self.t_per_m, self.light_m = t_per_m, light_m
        full = depth * (floor + top) / 2
        rows = []
        for tenth in range(int(depth * 10 + 0.5) + 1):
            h = depth - tenth / 10
            rows.append([tenth / 10, round(capacity * (floor * h + (top - floor) * h * h / (2 * depth)) / full, 1)])
        self.ullage_table = rows
        self.hydrostatic_table = [[round(0.4 + 0.2 * i, 1), self._displacement(0.4 + 0.2 * i)] for i in range(15)]

    def _displacement(self, draught):
        return round(self.t_per_m * draught * (0.93 + 0.025 * draught), 1)

    def hopper(self, ullage):
        """Linear between the rows of her table."""
        i = min(int(ullage * 10), len(self.ullage_table) - 2)
        (u1, v1), (_, v2) = self.ullage_table[i], self.ullage_table[i + 1]
        return v1 + (v2 - v1) * (ullage - u1) * 10

    def ullage(self, hopper):
        for (u1, v1), (u2, v2) in zip(self.ullage_table, self.ullage_table[1:]):
            if v2 <= hopper <= v1:
                return u1 + (v1 - hopper) / (v1 - v2) * (u2 - u1)
        raise ValueError(f"{self.name}: {hopper} m3 is outside the table")

    def displacement(self, draught):
        for (d1, t1), (d2, t2) in zip(self.hydrostatic_table, self.hydrostatic_table[1:]):
            if draught <= d2:
                return t1 + (t2 - t1) * (draught - d1) / (d2 - d1)
        raise ValueError(f"{self.name}: {draught} m is outside the table")

    def draught(self, tonnes):
        for (d1, t1), (d2, t2) in zip(self.hydrostatic_table, self.hydrostatic_table[1:]):
            if t1 <= tonnes <= t2:
                return d1 + (tonnes - t1) / (t2 - t1) * (d2 - d1)
        raise ValueError(f"{self.name}: {tonnes} t is outside the table")

    def as_json(self):
        return {"name": self.name, "capacity_m3": self.capacity, "ullage_table": self.ullage_table,
                "hydrostatic_table": self.hydrostatic_table, "hydrostatic_density_t_m3": WATER, "draught_mean": 8,
                "ullage_u_m": 0.03, "draught_u_m": 0.02}


class Spread:
    """One dredger with two barges and two tugs: `tow` tows them, `shift` shifts the pontoon."""

    def __init__(self, dredger, tow, shift, small, large):
        self.dredger, self.tow, self.shift = dredger, tow, shift
        self.barges = [Barge(small, 420, 3.0, 4.0, 7.6, 380.0, 0.71), Barge(large, 560, 3.3, 4.4, 8.2, 480.0, 0.76)]

    def dredger_json(self):
        reach = [[0, 15.5], [4, 15.4], [8, 14.2], [11, 12.4], [13, 10.6], [14.5, 8.4], [15.5, 6.0]]
        return {"name": self.dredger, "reach_min_m": 6, "reach_max_m": 15.5, "reach_table": reach,
                "slew_offset_m": 16.5, "swing_deg": 60,
                "buckets": [{"name": b, "capacity_m3": c} for b, c in BUCKET_M3.items()]}


MARRAM = Spread("Heron", "Plover", "Dotterel", "Teal", "Wigeon")


def spreads(count):
    """MARRAM first, then others with numbered names."""
    return [MARRAM] + [Spread(f"Heron {i}", f"Plover {i}", f"Dotterel {i}", f"Teal {i}", f"Wigeon {i}")
                       for i in range(2, count + 1)]


def plant_json(fleet):
    tugs = [{"name": n} for s in fleet for n in (s.tow, s.shift)]
    return {"dredgers": [s.dredger_json() for s in fleet], "tugs": tugs,
            "barges": [b.as_json() for s in fleet for b in s.barges]}

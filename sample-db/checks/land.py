# SPDX-License-Identifier: GPL-3.0-or-later
"""Metres from degrees, and distances to the edge of the ground."""
import math

A, F, LON0 = 6378137.0, 1 / 298.257223563, 177.0
N = F / (2 - F)
ALPHA = (N / 2 - 2 * N**2 / 3 + 5 * N**3 / 16, 13 * N**2 / 48 - 3 * N**3 / 5, 61 * N**3 / 240)


def utm60s(lat, lon):
    """EPSG:32760, Krueger's series to the third order (Karney 2011, eqs 7 to 12): good to a millimetre here."""
    e, phi, lam = math.sqrt(F * (2 - F)), math.radians(lat), math.radians(lon - LON0)
    t = math.sinh(math.atanh(math.sin(phi)) - e * math.atanh(e * math.sin(phi)))
    xi, eta = math.atan2(t, math.cos(lam)), math.asinh(math.sin(lam) / math.hypot(t, math.cos(lam)))
    north = xi + sum(a * math.sin(2 * j * xi) * math.cosh(2 * j * eta) for j, a in enumerate(ALPHA, 1))
    east = eta + sum(a * math.cos(2 * j * xi) * math.sinh(2 * j * eta) for j, a in enumerate(ALPHA, 1))
    scale = 0.9996 * A / (1 + N) * (1 + N**2 / 4 + N**4 / 64)
    return 500000 + scale * east, 10000000 + scale * north


def area(ring):
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:]))) / 2


def contains(ring, p):
    inside = False
    for (x1, y1), (x2, y2) in zip(ring, ring[1:]):
        if (y1 > p[1]) != (y2 > p[1]) and p[0] < (x2 - x1) * (p[1] - y1) / (y2 - y1) + x1:
            inside = not inside
    return inside


def to_edge(ring, p):
    best = math.inf
    for (x1, y1), (x2, y2) in zip(ring, ring[1:]):
        dx, dy = x2 - x1, y2 - y1
        t = max(0.0, min(1.0, ((p[0] - x1) * dx + (p[1] - y1) * dy) / (dx * dx + dy * dy)))
        best = min(best, math.hypot(p[0] - x1 - t * dx, p[1] - y1 - t * dy))
    return best


class Ground:
    def __init__(self, collection):
        self.rings = {}
        for f in collection["features"]:
            ring = [utm60s(lat, lon) for lon, lat in f["geometry"]["coordinates"][0]]
            self.rings[(f["properties"]["kind"], f["properties"].get("cell"))] = ring
        self.outline, self.wreck = self.rings[("ground", None)], self.rings[("exclusion", "wreck")]
        self.cells = {c: r for (kind, c), r in self.rings.items() if kind == "cell"}

    def inside_by(self, lat_lon):
        """m inside, negative outside; the wreck's hole is outside."""
        p = utm60s(*lat_lon)
        edge = to_edge(self.outline, p) * (1 if contains(self.outline, p) else -1)
        hole = to_edge(self.wreck, p) * (-1 if contains(self.wreck, p) else 1)
        return min(edge, hole)

    def centre(self):
        ring = self.outline[:-1]
        return sum(x for x, _ in ring) / len(ring), sum(y for _, y in ring) / len(ring)

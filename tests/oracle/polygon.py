# SPDX-License-Identifier: GPL-3.0-or-later
"""Regions of the projected plane by brute force: inside by crossing count, distance to all of the boundary.

A region is a ground (Polygon or MultiPolygon, holes out) less its exclusions. Metres throughout.
"""
import math

SIDE = 1e-4  # m: how far beside an edge the two sides are looked at


def in_ring(ring, x, y):
    """Crossing count; a point exactly on an edge may fall either way."""
    inside = False
    for (x1, y1), (x2, y2) in zip(ring, ring[1:] + ring[:1]):
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) * (x2 - x1) / (y2 - y1):
            inside = not inside
    return inside


def in_parts(parts, x, y):
    """parts: [[outer, hole, hole…], …]."""
    return any(in_ring(p[0], x, y) and not any(in_ring(h, x, y) for h in p[1:]) for p in parts)


def point_to_segment(x, y, a, b):
    dx, dy = b[0] - a[0], b[1] - a[1]
    length2 = dx * dx + dy * dy
    along = 0.0 if length2 == 0 else ((x - a[0]) * dx + (y - a[1]) * dy) / length2
    along = min(1.0, max(0.0, along))
    return math.hypot(x - a[0] - along * dx, y - a[1] - along * dy)


def crossing(a, b, c, d):
    """The place along a-b, 0 to 1, at which it meets the segment c-d, or None."""
    rx, ry, sx, sy = b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]
    det = rx * sy - ry * sx
    if det == 0:
        return None
    t = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / det
    u = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / det
    return t if 0 <= t <= 1 and 0 <= u <= 1 else None


class Region:
    """A ground's parts less its exclusions' parts."""

    def __init__(self, parts, exclusions=()):
        self.parts, self.exclusions = parts, [list(e) for e in exclusions]
        self._boundary = None

    def contains(self, x, y):
        return in_parts(self.parts, x, y) and not any(in_parts(e, x, y) for e in self.exclusions)

    def boundary(self):
        """Every piece of every ring that has the region on one side only."""
        if self._boundary is None:
            rings = [r for shape in [self.parts] + self.exclusions for part in shape for r in part]
            edges = [(a, b) for r in rings for a, b in zip(r, r[1:] + r[:1]) if a != b]
            self._boundary = [piece for edge in edges for piece in self._pieces(edge, edges)]
        return self._boundary

    def _pieces(self, edge, edges):
        (ax, ay), (bx, by) = edge
        length = math.hypot(bx - ax, by - ay)
        cuts = sorted({0.0, 1.0} | {t for t in (crossing(*edge, *o) for o in edges if o != edge)
                                    if t is not None})
        for t1, t2 in zip(cuts, cuts[1:]):
            if (t2 - t1) * length < SIDE:
                continue
            t = (t1 + t2) / 2
            x, y = ax + t * (bx - ax), ay + t * (by - ay)
            nx, ny = -(by - ay) / length * SIDE, (bx - ax) / length * SIDE
            if self.contains(x + nx, y + ny) != self.contains(x - nx, y - ny):
                yield ((ax + t1 * (bx - ax), ay + t1 * (by - ay)), (ax + t2 * (bx - ax), ay + t2 * (by - ay)))

    def signed_distance(self, x, y):
        """To the boundary, positive inside."""
        distance = min(point_to_segment(x, y, a, b) for a, b in self.boundary())
        return distance if self.contains(x, y) else -distance

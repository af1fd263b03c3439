# SPDX-License-Identifier: GPL-3.0-or-later
"""Invented grounds, cells, exclusions and claims of a random season, and positions near their edges."""
import math

from mercator import utm
from polygon import Region, point_to_segment

# zone, EPSG, easting and northing of the works (metres), far from any place meant
PLACES = [
    ("Pacific/Auckland", 32760, 640000.0, 5400000.0), ("Europe/Berlin", 32632, 430000.0, 6020000.0),
    ("America/St_Johns", 32622, 380000.0, 5250000.0), ("Asia/Kathmandu", 32645, 520000.0, 2100000.0),
    ("UTC", 32631, 560000.0, 6300000.0), ("America/Santiago", 32719, 300000.0, 6100000.0),
]


def bent(rng, points, by=25.0):
    """The same ring with every corner moved a little, so that nothing is parallel to the grid."""
    return [(x + rng.uniform(-by, by), y + rng.uniform(-by, by)) for x, y in points]


def box(x0, y0, x1, y1):
    return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]


class Places:
    """Features in local metres about (east, north): `shapes` holds (kind, ground, cell, parts)."""

    def __init__(self, rng, place):
        self.zone, self.epsg, self.east, self.north = place
        self.rng, self.projection = rng, utm(self.epsg)
        # Gull: two parts, a hole in the first, one exclusion inside and one over its edge. Tern: one plain
        # part.
        hole = bent(rng, box(700, 700, 900, 850))
        gull = [[bent(rng, box(0, 0, 2000, 1200)), hole], [bent(rng, box(2400, 100, 3100, 900))]]
        tern = [[bent(rng, [(0, -2500), (1500, -2600), (1700, -1500), (900, -1200), (100, -1400)])]]
        self.shapes = [
            ("ground", "Gull", "", gull), ("ground", "Tern", "", tern),
            ("exclusion", "Gull", "wreck", [[bent(rng, box(1300, 300, 1450, 450))]]),
            ("exclusion", "Gull", "cable", [[bent(rng, box(1900, 500, 2600, 620))]]),
        ]
        knots_x = [-60 + rng.uniform(-9, 9), 660 + rng.uniform(-9, 9), 1340 + rng.uniform(-9, 9), 2060.123]
        knots_y = [-60.7, 610 + rng.uniform(-9, 9), 1260.3]
        self.cells = {"Gull": [], "Tern": []}
        for i in range(3):
            for j in range(2):
                self._cell("Gull", f"G{i}{j}", box(knots_x[i], knots_y[j], knots_x[i + 1], knots_y[j + 1]))
        middle = 800 + rng.uniform(-9, 9)
        # Two grounds may have cells of one name.
        self._cell("Tern", rng.choice(["T-west", "T-west", "G00"]), box(-100, -2700, middle, -1100))
        self._cell("Tern", "T-east", box(middle, -2700, 1800, -1100))
        self.regions = {g: Region(p, [q for k, h, _, q in self.shapes if k == "exclusion" and h == g])
                        for k, g, _, p in self.shapes if k == "ground"}

    def _cell(self, ground, name, ring):
        self.cells[ground].append(name)
        self.shapes.append(("cell", ground, name, [[ring]]))

    def _collection(self, features, lon_lat):
        """features: (parts, properties)."""
        def point(x, y):
            if not lon_lat:
                return [round(self.east + x, 3), round(self.north + y, 3)]
            lat, lon = self.projection.inverse(self.east + x, self.north + y)
            return [round(lon, 10), round(lat, 10)]

        def geometry(parts):
            rings = [[[point(*p) for p in ring + ring[:1]] for ring in part] for part in parts]
            if len(rings) == 1 and self.rng.random() < 0.7:
                return {"type": "Polygon", "coordinates": rings[0]}
            return {"type": "MultiPolygon", "coordinates": rings}

        found = {"type": "FeatureCollection", "features": [
            {"type": "Feature", "properties": properties, "geometry": geometry(parts)}
            for parts, properties in features]}
        if not lon_lat:
            found["crs"] = {"type": "name", "properties": {"name": f"urn:ogc:def:crs:EPSG::{self.epsg}"}}
        return found

    def grounds(self):
        return self._collection([(parts, {"ground": g, "cell": c, "kind": k})
                                 for k, g, c, parts in self.shapes],
                                self.rng.random() < 0.5)

    def claims(self, materials):
        """materials: claim → material or None."""
        features = []
        for i, (claim, material) in enumerate(materials.items()):
            properties = {"claim": claim, "name": f"Reach {claim}", "target_level_m": -9.6,
                          "allowance_m": 0.3}
            if material:
                properties["material"] = material
            features.append(([[bent(self.rng, box(-5000 + 120 * i, 0, -4900 + 120 * i, 80), 5)]], properties))
        return self._collection(features, self.rng.random() < 0.5)

    def position(self, ground, u):
        """(lat, lon) text near or inside a ground; never within 2 mm of an edge or of 2u from one."""
        rng, region = self.rng, self.regions[ground]
        while True:
            if rng.random() < 0.5:
                (ax, ay), (bx, by) = rng.choice(region.boundary())
                t, length = rng.random(), math.hypot(bx - ax, by - ay)
                off = rng.choice([-1, 1]) * rng.choice([0.05, 0.5, 2 * u - 0.05, 2 * u + 0.05, 3 * u])
                east, north = (bx - ax) / length, (by - ay) / length
                x, y = ax + t * (bx - ax) - off * north, ay + t * (by - ay) + off * east
            else:
                x0, y0, x1, y1 = (-200, -200, 3300, 1400) if ground == "Gull" else (-100, -2700, 1800, -1100)
                x, y = rng.uniform(x0, x1), rng.uniform(y0, y1)
            if self._clear_of_edges(x, y, region, u):
                lat, lon = self.projection.inverse(self.east + x, self.north + y)
                return f"{lat:.9f}", f"{lon:.9f}"

    def _clear_of_edges(self, x, y, region, u):
        near = abs(region.signed_distance(x, y))
        rings = [r for _, _, _, parts in self.shapes for part in parts for r in part]
        edges = [(a, b) for r in rings for a, b in zip(r, r[1:] + r[:1])]
        return abs(near - 2 * u) > 0.005 and min(point_to_segment(x, y, a, b) for a, b in edges) > 0.005

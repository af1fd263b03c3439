# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes CSV, JSON and GeoJSON the same way each time."""
import json
import os

from .mercator import lat_lon


class Folder:
    def __init__(self, path):
        self.path = path
        os.makedirs(path, exist_ok=True)

    def text(self, name, text):
        path = os.path.join(self.path, name)
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(path, "w", encoding="utf-8", newline="") as f:
            f.write(text)

    def csv(self, name, columns, rows):
        """`rows` are lists of text; a comma or a quotation mark is quoted (RFC 4180), lines end in LF."""
        lines = [columns.replace(" ", ",")]
        for row in rows:
            line = ",".join(row)
            if line.count(",") != len(row) - 1 or '"' in line:
                line = ",".join('"' + c.replace('"', '""') + '"' if "," in c or '"' in c else c for c in row)
            lines.append(line)
        self.text(name, "\n".join(lines) + "\n")

    def grid(self, name, corner, cell_m, rows):
        """An ESRI ASCII grid of levels in metres, the northern row first; None where nothing was surveyed."""
        head = {"ncols": len(rows[0]), "nrows": len(rows), "xllcorner": f"{corner[0]:.0f}",
                "yllcorner": f"{corner[1]:.0f}", "cellsize": cell_m, "NODATA_value": -9999}
        lines = [f"{k} {v}" for k, v in head.items()]
        lines += [" ".join("-9999" if v is None else f"{v:.2f}" for v in row) for row in rows]
        self.text(name, "\n".join(lines) + "\n")

    def json(self, name, value):
        self.text(name, _pretty(value, 0) + "\n")


def _pretty(value, depth):
    """Objects of more than a line are broken up; lists of numbers stay in one."""
    flat = json.dumps(value, ensure_ascii=False)
    if len(flat) + depth * 2 <= 108 or not isinstance(value, (dict, list)):
        return flat
    pad, end = "  " * (depth + 1), "  " * depth
    if isinstance(value, dict):
        inner = [f"{pad}{json.dumps(k, ensure_ascii=False)}: {_pretty(v, depth + 1)}" for k, v in value.items()]
        return "{\n" + ",\n".join(inner) + f"\n{end}}}"
    return "[\n" + ",\n".join(pad + _pretty(v, depth + 1) for v in value) + f"\n{end}]"


def polygon(ring, lon_lat):
    """The outer ring runs anticlockwise (RFC 7946)."""
    twice = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:] + ring[:1]))
    ring, points = ring if twice > 0 else ring[::-1], []
    for east, north in ring + ring[:1]:
        if lon_lat:
            lat, lon = lat_lon(east, north)
            points.append([round(lon, 9), round(lat, 9)])
        else:
            points.append([round(east, 2), round(north, 2)])
    return {"type": "Polygon", "coordinates": [points]}


def collection(features, epsg=None):
    """features: [(properties, ring of grid metres)]; with `epsg` in grid metres and a crs member, else lon/lat."""
    found = {"type": "FeatureCollection"}
    if epsg:
        found["crs"] = {"type": "name", "properties": {"name": f"urn:ogc:def:crs:EPSG::{epsg}"}}
    found["features"] = [{"type": "Feature", "properties": p, "geometry": polygon(r, epsg is None)}
                         for p, r in features]
    return found

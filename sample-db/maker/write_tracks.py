# SPDX-License-Identifier: GPL-3.0-or-later
"""tracks/: the barge's receiver, from the day on which its log was first kept: a fix every two minutes on the way out
and back, every 15 s about the release, where the tug all but holds her."""
from . import clock
from .mercator import lat_lon
from .places import BASIN

WAY_S, RELEASE_S = 120, 15
AROUND_S = 120              # as closely before the doors open, and after the hopper is empty
DRIFT_M_S = 0.04            # 30 m at most, so that who opens well inside stays inside


def write_tracks(folder, season, ground, since):
    """For each trip from `since` on that released at one place of which the receiver knew."""
    for trip in season.trips:
        opening = trip.opening
        if trip.departed < since or opening is None or opening.lat is None:
            continue
        fixes = [f"{clock.utc_text(t)},{lat:.6f},{lon:.6f}" for t, (lat, lon) in _fixes(trip, opening, ground)]
        folder.text(f"tracks/{trip.label}.csv", "\n".join(["time,lat,lon", *fixes]) + "\n")


def _fixes(trip, opening, ground):
    """(second since 1970, (lat, lon)), from casting off to alongside again."""
    out, start, end, back = (60 * t for t in (trip.departed, opening.start, opening.end, trip.returned))
    here, place = lat_lon(*BASIN), (opening.lat, opening.lon)
    east, north = ground.drift(opening.cell)

    def drifted(seconds):
        lat, lon = place
        return lat + DRIFT_M_S * seconds * north / 111000.0, lon + DRIFT_M_S * seconds * east / 84500.0

    def on_the_way(t, since, until, a, b):
        share = (t - since) / (until - since)
        return a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])

    first, last = start - AROUND_S, end + AROUND_S
    for t in range(out, first, WAY_S):
        yield t, on_the_way(t, out, first, here, drifted(-AROUND_S))
    for t in range(first, last, RELEASE_S):
        yield t, drifted(t - start)
    for t in range(last, back + 1, WAY_S):
        yield t, on_the_way(t, last, back, drifted(last - start), here)

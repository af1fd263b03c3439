# SPDX-License-Identifier: GPL-3.0-or-later
"""Place conditions over the whole of a release, by the trip's track (docs/calculations.md, Where)."""
import csv
import os

from check import room_of

GAP_S = 60
STEP_M = 0.25


def track_of(folder, trip):
    """[(time, (x, y))] of tracks/TRIP.csv in metres, by time; None where there is none."""
    path = os.path.join(folder.path, "tracks", trip + ".csv")
    if not os.path.exists(path):
        return None
    with open(path, encoding="utf-8-sig", newline="") as f:
        return sorted((folder.time(r["time"]), folder.projection.forward(float(r["lat"]), float(r["lon"])))
                      for r in csv.DictReader(f))


def place_at(track, t, gap_s):
    """On the straight line between the fixes before and after, evenly in time, or at a fix; None over too long a gap."""
    for fix in track:
        if fix[0] == t:
            return fix[1]
    for (a, p), (b, q) in zip(track, track[1:]):
        if a < t < b:
            if b - a > gap_s * 1000:
                return None
            part = (t - a) / (b - a)
            return p[0] + part * (q[0] - p[0]), p[1] + part * (q[1] - p[1])
    return None


def way(track, start, end, gap_s):
    """The corners of the way from `start` to `end`; None where a gap is too long or the track does not reach."""
    ends = [place_at(track, t, gap_s) for t in (start, end)]
    if None in ends:
        return None
    inner = [f for f in track if start < f[0] < end]
    times = [start] + [t for t, _ in inner] + [end]
    whole = [f for f in track if f[0] <= start][-1:] + inner + [f for f in track if f[0] >= end][:1]
    if any(b[0] - a[0] > gap_s * 1000 for a, b in zip(whole, whole[1:])) or times != sorted(times):
        return None
    return [ends[0]] + [p for _, p in inner] + [ends[1]]


def least_room(folder, condition, corners):
    """By brute force: every quarter metre of the way, so at most that much too great at a slope."""
    rooms = []
    for (ax, ay), (bx, by) in zip(corners, corners[1:]):
        pieces = max(1, int(((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5 / STEP_M))
        rooms += [room_of(folder, condition, (ax + i / pieces * (bx - ax), ay + i / pieces * (by - ay)))
                  for i in range(pieces + 1)]
    return min(rooms)


def rooms_by_track(folder, condition, release, test):
    """Least room (or the room at an end) by the trip's track; None where the track does not tell."""
    track, gap_s = track_of(folder, release.trip), condition.get("track_interval_s_max", GAP_S)
    if track is None or release.start is None and test != "release_end":
        return None
    if test == "whole_release":
        corners = way(track, release.start, release.shut, gap_s)
        return None if corners is None else least_room(folder, condition, corners)
    place = place_at(track, release.start if test == "release_start" else release.end, gap_s)
    return None if place is None else room_of(folder, condition, place)

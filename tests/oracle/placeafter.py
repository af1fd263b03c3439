# SPDX-License-Identifier: GPL-3.0-or-later
"""Place conditions after the act: `conditions` of `sbk releases`, by position or track."""
from bookfolder import number
from check import in_force, room_of
from hopperway import rooms_by_track
from releases import BLANK_POSITION_U_M


def positions(folder):
    """(trip, release) → (place in metres or None, u)."""
    found = {}
    for name, trip in folder.trips.items():
        for row in folder.release_rows.get(name) or [trip]:
            lat, lon, u = (number(row.get(c)) for c in ("lat", "lon", "position_u_m"))
            place = None if lat is None or lon is None else folder.projection.forward(lat, lon)
            found[(name, row.get("release") if name in folder.release_rows else None)] = (
                place, BLANK_POSITION_U_M if u is None else u)
    return found


def applies(book, condition, release):
    scope, keys = condition.get("applies", {}), book.keys_of(release)
    if scope.get("activity") == "dredge":
        return False
    for name, key in (("grounds", "ground"), ("cells", "cell"), ("materials", "material")):
        if scope.get(name) and keys[key] not in scope[name]:
            return False
    if scope.get("plant") and not {keys["barge"], keys["tug"]} & set(scope["plant"]):
        return False
    volume = book.volumes.get(release.load)
    return not scope.get("claims") or bool((volume.claims() if volume else set()) & set(scope["claims"]))


def judge(folder, condition, release, held):
    """(state, room in metres): complied at 2u or more on the right side, breached at 2u or more on the wrong.
    A start is as logged, else by the track; an end and a whole release by the track alone."""
    (place, u), test = held, condition.get("test", "release_start")
    if test == "release_start" and place is not None:
        room = room_of(folder, condition, place)
    else:
        room = rooms_by_track(folder, condition, release, test)
    if room is None:
        return "cannot_tell", None
    most = condition.get("position_u_m_max")
    if most is not None and u > most:
        return "cannot_tell", room
    return ("complied" if room >= 2 * u else "breached" if room <= -2 * u else "cannot_tell"), room


def place_conditions(book, as_at):
    """{(trip, release): {(consent, condition): (state, room)}}"""
    folder, where = book.folder, positions(book.folder)
    found = {}
    for r in book.counted(as_at):
        rows = found.setdefault((r.trip, r.release), {})
        for consent in folder.consents:
            for c in consent["conditions"]:
                # By class it hangs on suitability.csv, which only the release check looks at here.
                if c["kind"] != "place" or "classes" in c.get("applies", {}) or not in_force(folder, c, r.end):
                    continue
                if applies(book, c, r):
                    rows[(consent["consent"], c["condition"])] = judge(folder, c, r, where[(r.trip, r.release)])
    return found

# SPDX-License-Identifier: GPL-3.0-or-later
"""Place conditions after the act: `conditions` of `sbk releases`, of releases whose position was logged."""
from bookfolder import number
from check import in_force, room_of
from releases import BLANK_POSITION_U_M


def positions(folder):
    """(trip, release) → (place in metres, u), where a position was logged."""
    found = {}
    for name, trip in folder.trips.items():
        for row in folder.release_rows.get(name) or [trip]:
            lat, lon = number(row.get("lat")), number(row.get("lon"))
            if lat is not None and lon is not None:
                u = number(row.get("position_u_m"))
                found[(name, row.get("release"))] = (folder.projection.forward(lat, lon),
                                                     BLANK_POSITION_U_M if u is None else u)
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


def judge(folder, condition, held):
    """(state, room in metres): complied at 2u or more on the right side, breached at 2u or more on the wrong."""
    if held is None or condition.get("test", "release_start") != "release_start":
        return "cannot_tell", None
    place, u = held
    room = room_of(folder, condition, place)
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
                    rows[(consent["consent"], c["condition"])] = judge(folder, c, where.get((r.trip, r.release)))
    return found

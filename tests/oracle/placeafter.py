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
    """True, False, or None where that hangs on what is not recorded."""
    scope, keys = condition.get("applies", {}), book.keys_of(release)
    if scope.get("activity") == "dredge":
        return False
    said = []
    for name, key in (("grounds", "ground"), ("materials", "material")):
        if scope.get(name):
            said.append(None if keys[key] is None else keys[key] in scope[name])
    if scope.get("plant"):
        hit = bool({keys["barge"], keys["tug"]} & set(scope["plant"]))
        tugs = set(scope["plant"]) - set(book.folder.barges)
        open_ = keys["barge"] is None or keys["tug"] is None and tugs
        said.append(True if hit else None if open_ else False)
    volume = book.volumes.get(release.load)
    if scope.get("claims") and volume:
        claims = volume.claims()
        said.append(True if claims & set(scope["claims"]) else None if None in claims else False)
    return False if False in said else None if None in said else True


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
                about = applies(book, c, r)
                state, room = judge(folder, c, r, where[(r.trip, r.release)])
                if about:
                    rows[(consent["consent"], c["condition"])] = state, room
                elif about is None and state != "complied":     # if it is about it, it may be broken
                    rows[(consent["consent"], c["condition"])] = "cannot_tell", room
    return found

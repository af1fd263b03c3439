# SPDX-License-Identifier: GPL-3.0-or-later
"""Rules on who may include whom. The one truth about the rooms is model/CMakeLists.txt."""
import re

import cmake_text
from tree import Violation

_QT = re.compile(r"^(Q[A-Z]\w*|Qt[A-Z]\w*/.*|q[a-z]+global\.h)$")
_SQLITE = re.compile(r"^(sqlite3(ext)?\.h|SQLiteCpp/.*)$")
_GEO = re.compile(r"^(gdal|ogr|cpl_|vrt|proj|geos|geodesic)[\w.]*(/.*)?(\.h)?$")
_GENERATED = re.compile(r"^(ui_\w+\.h|\w+\.moc|moc_\w+\.cpp)$")

# What the folders of forms/ may include of forms/; print is a library of its own and stands alone.
_FORM_ARROWS = {"print": ("print",)}


def no_qt_in_model(tree):
    """qt-in-model: nothing in model/ includes Qt."""
    for file in tree.cpp("model"):
        for line, _, name in file.includes:
            if _QT.match(name):
                yield Violation(file.path, line, "qt-in-model", f"<{name}>: model/ is C++ without Qt")


def rooms_are_listed(tree):
    """room-unlisted: each folder of model/ has an sb_room line, which names only rooms above it."""
    listed = _rooms(tree)
    for room in sorted({f.room for f in tree.cpp("model")}):
        if room not in listed:
            place = "model/" + room if room else "model"
            yield Violation(place, 1, "room-unlisted", "no sb_room line in model/CMakeLists.txt")
    above = set()
    for room, allowed in listed.items():
        for other in allowed:
            if other not in above:
                what = f"room {room} names {other}, which is not listed above it"
                yield Violation("model/CMakeLists.txt", 1, "room-unlisted", what)
        above.add(room)


def includes_follow_arrows(tree):
    """arrow: an include goes along an arrow, and is written from the root."""
    listed = _rooms(tree)
    for file in tree.cpp("model", "forms", "app"):
        for line, kind, name in file.includes:
            if kind == '"' and not _GENERATED.match(name):
                why = _refusal(file, name, listed)
                if why:
                    yield Violation(file.path, line, "arrow", f'"{name}": {why}')


def _refusal(file, name, listed):
    parts = name.split("/")
    if len(parts) < 2 or parts[0] not in ("model", "forms", "app", "tests"):
        return "write the include from the root"
    top, room = parts[0], parts[1] if len(parts) > 2 else ""
    if file.top == "model":
        if top != "model":
            return "model/ includes only model/"
        if room != file.room and room not in listed.get(file.room, []):
            return f"sb_room({file.room} ...) does not name {room}"
    elif file.top == "forms":
        if top not in ("model", "forms"):
            return "forms/ includes only model/ and forms/"
        if top == "forms" and room not in _FORM_ARROWS.get(file.room, (room,)):
            return f"forms/{file.room} stands alone"
    elif top == "tests":
        return "a program includes nothing of the tests"
    elif file.room == "command" and top == "forms" and room != "print":
        return "sbk includes model/ and, of forms/, print alone"
    return None


def sqlite_only_in_book(tree):
    """sqlite-outside-book: SQLite's header and functions are used in model/book/ only."""
    for file in tree.cpp("model", "forms", "app"):
        if file.path.startswith("model/book/"):
            continue
        for line, _, name in file.includes:
            if _SQLITE.match(name):
                yield Violation(file.path, line, "sqlite-outside-book", f"<{name}>: only in model/book/")


def geo_only_in_place_and_bed(tree):
    """geo-outside-place: GDAL, OGR, PROJ and GEOS are used in model/place/ and model/bed/ only."""
    for file in tree.cpp("model", "forms", "app"):
        if file.path.startswith(("model/place/", "model/bed/")):
            continue
        for line, kind, name in file.includes:
            if kind == "<" and _GEO.match(name):
                what = f"<{name}>: only in model/place/ and model/bed/"
                yield Violation(file.path, line, "geo-outside-place", what)


def _rooms(tree):
    file = tree.find("model/CMakeLists.txt")
    return cmake_text.rooms(file.text) if file else {}


RULES = [
    no_qt_in_model,
    rooms_are_listed,
    includes_follow_arrows,
    sqlite_only_in_book,
    geo_only_in_place_and_bed,
]

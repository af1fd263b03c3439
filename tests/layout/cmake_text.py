# SPDX-License-Identifier: GPL-3.0-or-later
"""Reads out of our own CMake files what the layout rules need: rooms and the files of the suites."""
import re

_COMMAND = re.compile(r"\b([A-Za-z_]+)\s*\(([^()]*)\)")


def _commands(text):
    """All commands as (name, words), comments left out."""
    text = re.sub(r"#[^\n]*", "", text)
    for match in _COMMAND.finditer(text):
        words = [w.strip('"') for w in re.findall(r'"[^"]*"|[^\s"]+', match.group(2))]
        yield match.group(1).lower(), words


def rooms(text):
    """The sb_room lines of model/CMakeLists.txt, in order: room -> rooms that it may include."""
    found = {}
    for name, words in _commands(text):
        if name != "sb_room" or not words:
            continue
        allowed, taking = [], False
        for word in words[1:]:
            if word in ("ROOMS", "LIBS"):
                taking = word == "ROOMS"
            elif taking:
                allowed.append(word)
        found[words[0]] = allowed
    return found


def named_files(text):
    """Every word of a CMake file that can name a source or script, loops written out.

    The words may hold wildcards; they are relative to the folder of the CMake file, or begin with
    ${CMAKE_CURRENT_SOURCE_DIR}, which is taken off.
    """
    found, loops = set(), []
    for name, words in _commands(text):
        if name == "foreach" and words:
            values = words[1:]
            if values[:2] == ["IN", "ITEMS"]:
                values = values[2:]
            loops.append((words[0], values))
        elif name == "endforeach" and loops:
            loops.pop()
        else:
            for word in words:
                found.update(_written_out(word, loops))
    prefix = "${CMAKE_CURRENT_SOURCE_DIR}/"
    return {w[len(prefix):] if w.startswith(prefix) else w for w in found if re.search(r"\.(cpp|py|sh)$", w)}


def _written_out(word, loops):
    words = [word]
    for variable, values in loops:
        mark = "${" + variable + "}"
        words = [w.replace(mark, v) for w in words for v in (values if mark in w else [""])]
    return words

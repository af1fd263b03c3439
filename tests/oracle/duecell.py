# SPDX-License-Identifier: GPL-3.0-or-later
"""`due_cell` of a release check: every cell tried by itself, under every limit on cells that is about the load."""
from dataclasses import replace

from checklimit import CheckedLimit
from estimate import is_over
from limits import Limit
from planned import Planned


def due_cell(check, ask):
    """The open cell of which least is used, by the limit of which most is used there; None: none."""
    best = None
    for ground, cell in check.folder.cells:
        if ask.ground in (None, ground):
            rank, name = _of_cell(check, replace(ask, ground=ground, cell=cell, place=None))
            if name is not None and (best is None or rank < best[0]):
                best = rank, name
    return None if best is None else best[1]


def _versions(check, t):
    for consent in check.folder.consents:
        for c in consent["conditions"]:
            start, end = (check.folder.time(c.get(k)) for k in ("from", "to"))
            if (start is None or start <= t) and (end is None or t < end):
                yield consent, c


def _of_cell(check, there):
    """((not known, share used), name); no name where no limit stands for the cell or one is full, or it is closed."""
    known, share, name = True, 0.0, None
    for consent, c in _versions(check, there.at):
        if c["kind"] == "time" and c.get("applies", {}).get("cells"):
            if check._state(consent, [c], there, there.at) == "hold":
                return None, None
        if c["kind"] != "quantity" or c.get("op", "at_most") != "at_most" or \
                c.get("applies", {}).get("activity") == "dredge":
            continue
        if c.get("each_of") != "cell":
            if c.get("applies", {}).get("cells") and \
                    CheckedLimit(check.book, consent, [c], there).state(there.at) == "hold":
                return None, None
            continue
        planned = Planned(check.book, there, there.at)
        limit = Limit(planned, consent, c)
        member = limit.cell_names.get((there.ground, there.cell))
        mine = [e for e in limit.events if e.trip == "planned"]
        if member is None or not mine or not limit.window(there.at).spans(there.at):
            continue
        name = name or member
        most = limit._value(there.at) if limit.share is None else limit.share
        limit.events = [e for e in limit.events if e.trip != "planned"]
        before, unknown, _ = limit.used(there.at, member)
        limit.events = sorted(limit.events + mine, key=lambda e: e.time)
        after, _, judged = limit.used(there.at, member)
        if judged is not None and is_over(after.value, judged):
            return None, None
        known, share = known and not unknown, max(share, before.value / most if most > 0 else float("inf"))
    return (not known, share), name

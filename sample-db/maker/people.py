# SPDX-License-Identifier: GPL-3.0-or-later
"""Invented people, one first name each, and who has which shift."""
from . import clock

PEOPLE = [("Ana", "manager"), ("Bram", "skipper"), ("Caro", "skipper"), ("Dex", "tug_master"), ("Esi", "officer"),
          ("Finn", "tug_master"), ("Gwen", "skipper"), ("Nia", "reader")]
BESIDE = {"Bram": "Hal", "Caro": "Ivo", "Gwen": "Oda"}      # takes turns at the sticks
WEATHERS = {0: "fine, light airs", 1: "overcast, moderate breeze", 2: "rain at times, fresh breeze",
            3: "southerly gale, heavy swell"}


def skipper(plan):
    if plan.night:
        return "Gwen"
    return ("Bram", "Caro")[clock.wall(plan.start)[0].isocalendar()[1] % 2]


def tug_master(plan):
    week = clock.wall(plan.start)[0].isocalendar()[1]
    return ("Dex", "Finn")[(week + plan.night) % 2]


def crew(plan):
    """[(name, role)] of a shift."""
    first = skipper(plan)
    engineer, deck, mate = ("Pia", "Rolf", "Sol") if plan.night else ("Jun", "Kit", "Lou")
    return [(first, "skipper"), (BESIDE[first], "operator"), (engineer, "engineer"), (deck, "deckhand"),
            (tug_master(plan), "tug master"), (mate, "tug mate")]

# SPDX-License-Identifier: GPL-3.0-or-later
"""The water at the three loggers, a reading each quarter of an hour: calm water and tide, storms, the works' own
plume, and what ails loggers."""
from datetime import date

from . import clock, sea

STEP = 15
FIRST, OPENED = clock.instant(date(2025, 8, 4)), clock.instant(date(2026, 5, 30), 18)
SITES = ("C1", "R1", "R2")


def _at(day, hour, minute=0):
    return clock.instant(date.fromisoformat(day), hour, minute)


# What the sea stirs up at a site for each NTU at the control: R1 lies in the open, R2 behind the breakwater.
STORM_SHARE = {"C1": 1.0, "R1": 1.03, "R2": 0.5}
STORM_OF_MARCH = (_at("2026-03-17", 12), _at("2026-03-17", 22, 30), 42.0, 11.0)
# (site, from, to, NTU more than calm): plumes that pass a trigger.
PLUMES = [("R2", _at("2025-11-19", 9, 30), _at("2025-11-19", 12, 15), 9.0),
          ("R1", _at("2026-03-03", 13), _at("2026-03-03", 16), 8.0),
          ("R1", _at("2026-04-21", 19, 45), _at("2026-04-22", 1, 30), 16.5)]
STUCK = ("R2", _at("2026-02-10", 3), _at("2026-02-10", 12))
LIFTED = (_at("2025-12-20", 10), _at("2026-01-29", 9))          # all three, for the workshop
LOST = [("R1", _at("2025-10-14", 2), _at("2025-10-15", 16)),    # battery
        ("C1", _at("2026-02-21", 23), _at("2026-02-22", 11)),   # no signal, and its memory full
        ("R2", STUCK[2], STUCK[2] + 90),
        ("R1", _at("2026-05-06", 8), _at("2026-05-06", 20))]
FOULED = ("R2", _at("2026-03-27", 9), _at("2026-04-09", 9), 4.2)   # growth on the lens, until it is cleaned
CLEANED_EVERY, CLEANED_AT = 21, (9, 12)


def cleanings(site):
    """(from, to) when the logger is out of the water to be cleaned, every three weeks, a day apart by site."""
    day = date(2025, 8, 25).toordinal() + SITES.index(site)
    while day < date(2026, 5, 30).toordinal():
        start = clock.instant(date.fromordinal(day), CLEANED_AT[0])
        if not LIFTED[0] - clock.DAY < start < LIFTED[1] + clock.DAY:
            fouled = site == FOULED[0] and abs(start - FOULED[2]) < 12 * clock.DAY
            if not fouled:
                yield start, start + 45
        day += CLEANED_EVERY
    if site == FOULED[0]:
        yield FOULED[2], FOULED[2] + 60


def times():
    return range(FIRST, OPENED - STEP + 1, STEP)


class Water:
    def __init__(self, season, dice):
        self.dice = dice
        self.storm = self._storms(season)
        self.plume = {"C1": [0.0] * len(times()), "R1": self._plume(season, "R1", "OB"),
                      "R2": self._plume(season, "R2", "FB")}

    def _storms(self, season):
        """NTU above calm at the control: each hold for weather of over an hour and a half, and the storm of March."""
        found = [(h.start - 240, h.end, min(9.0, 1.5 + (h.end - h.start) / 60), 7.0)
                 for s in season.shifts for h in s.lost.holds if h.cause == "weather" and h.end - h.start > 90]
        levels = [0.0] * len(times())
        for start, top, height, fall_h in found + [STORM_OF_MARCH]:
            level, last = height, min(OPENED, top + 4 * clock.DAY)
            for minute in range(max(FIRST, start // STEP * STEP), last, STEP):
                if minute > top:
                    level *= 1 - STEP / 60 / fall_h
                now = height * (minute - start) / (top - start) if minute <= top else level
                i = (minute - FIRST) // STEP
                if 0 <= i < len(levels):
                    levels[i] = max(levels[i], now)
        return levels

    def _plume(self, season, site, claims):
        """What digging in the claims near the site sends past it, a little later, and the plumes told of above."""
        sent = [0.0] * len(times())
        for station in season.stations:
            if station.set_up.claim.startswith(claims):
                self._send(sent, station.down, station.up or OPENED, self.dice.between(0.4, 1.9))
        for where, start, end, level in PLUMES:
            if where == site:
                self._send(sent, start, end, level)
        near, found = 0.0, []
        for level in sent:
            near += 0.45 * (level - near)
            found.append(near)
        return found

    @staticmethod
    def _send(sent, start, end, level):
        for i in range(max(0, (start - FIRST) // STEP), min(len(sent), (end - FIRST) // STEP)):
            sent[i] = max(sent[i], level)

    def readings(self, site):
        """(minute, NTU or None) of a site; what is lost is left out, a blank came without a value."""
        dice, swing, slow = self.dice.child(SITES.index(site) + 1), {"C1": 0.5, "R1": 0.7, "R2": 0.9}[site], 0.0
        gone = [LIFTED] + [(a, b) for s, a, b in LOST if s == site] + list(cleanings(site))
        stuck = None
        for i, minute in enumerate(times()):
            slow = 0.9 * slow + dice.bell(0.014)
            value = 2.6 + swing * abs(sea.tide(minute + 30) - sea.tide(minute - 30)) * 4
            value += self.storm[i] * STORM_SHARE[site] + self.plume[site][i]
            value = max(0.3, value * (1 + slow) + dice.bell(0.15)) + self._growth(site, minute)
            value, fate = self._ailing(value, dice), dice.share()
            if site == STUCK[0] and STUCK[1] <= minute <= STUCK[2]:
                value = stuck = value if stuck is None else stuck
            elif fate < 0.002:
                value = None
            if not any(start <= minute < end for start, end in gone):
                yield minute, value

    @staticmethod
    def _growth(site, minute):
        where, start, end, most = FOULED
        return most * ((minute - start) / (end - start)) ** 2 if site == where and start <= minute < end else 0.0

    @staticmethod
    def _ailing(value, dice):
        """One reading in eight hundred is weed or bubbles before the lens, one in ten thousand is nonsense."""
        fate, height = dice.share(), dice.between(25, 140)
        if fate < 0.00125:
            value += height
        elif fate > 0.9999:
            value = 1600.0
        return round(value, 1)

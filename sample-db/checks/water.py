# SPDX-License-Identifier: GPL-3.0-or-later
"""The loggers' readings: their flags, medians and passed triggers by plain means. Instants are whole minutes."""
from bisect import bisect_right
from datetime import datetime, timedelta

from .season import local

def minute(text):
    return round(datetime.fromisoformat(text.replace("Z", "+00:00")).timestamp() / 60)


class Logger:
    def __init__(self, season, site):
        self.site, self.name = site, site["site"]
        self.limit = {k: float(site[k]) for k in ("range_low", "range_high", "spike", "rate_per_min", "flat_min")}
        rows = season.rows(f"{self.name}.csv")
        self.at = [minute(r["time"]) for r in rows]
        self.values = [float(r["value"]) if r["value"] else None for r in rows]
        self.tests = [self._tests(i) for i in range(len(rows))]
        self.flags = [9 if v is None else max(t.values()) for v, t in zip(self.values, self.tests)]
        for row in season.rows("overrules.csv"):
            if row["site"] == self.name:
                for i, at in enumerate(self.at):
                    if minute(row["from"]) <= at <= minute(row["to"]) and self.values[i] is not None:
                        self.flags[i] = int(row["flag"])
        good = [i for i, flag in enumerate(self.flags) if flag == 1]
        self.good_at, self.good = [self.at[i] for i in good], [self.values[i] for i in good]

    def _tests(self, i):
        value, limit = self.values[i], self.limit
        if value is None:
            return {}
        found = {"range": 1 if limit["range_low"] <= value <= limit["range_high"] else 4}
        beside = self.values[i - 1:i] + self.values[i + 1:i + 2]
        if i and len(beside) == 2 and None not in beside:
            found["spike"] = 3 if abs(value - sum(beside) / 2) > limit["spike"] else 1
        if i and self.values[i - 1] is not None:
            a_minute = abs(value - self.values[i - 1]) / (self.at[i] - self.at[i - 1])
            found["rate"] = 3 if a_minute > limit["rate_per_min"] else 1
        since = i
        while since and self.values[since - 1] in (value, None):
            since -= 1
        while self.values[since] is None:
            since += 1
        found["flat"] = 3 if self.at[i] - self.at[since] >= limit["flat_min"] else 1
        return found

    def median(self, at, over):
        """(median, complete) of the good readings in (at - over, at]."""
        some = sorted(self.good[bisect_right(self.good_at, at - over):bisect_right(self.good_at, at)])
        if not some:
            return None, 0.0
        half = len(some) // 2
        return (some[half] if len(some) % 2 else (some[half - 1] + some[half]) / 2), \
            len(some) * float(self.site["interval_min"]) / over


def passed(condition, site, control):
    """(start, end, peak) of every time that the condition is passed at the site."""
    over_minutes, least, compare = condition["over_minutes"], condition["min_complete"], condition["compare"]
    held, clear = condition["passes"]["held_hours"] * 60, condition["clear"]["held_hours"] * 60
    found, since, quiet, start, peak = [], None, None, None, None
    for at, value in zip(site.at, site.values):
        if value is None:
            continue
        median, complete = site.median(at, over_minutes)
        level, told = compare.get("absolute"), complete >= least
        if told and level is None:
            beside, complete = control.median(at, over_minutes)
            told = complete >= least
            level = beside + compare["above_control"] if told else None
        if not told:
            since = None if start is None else since
            continue
        if median > level:
            since, quiet = at if since is None else since, None
            peak = median if peak is None else max(peak, median)
            start = at if start is None and at - since >= held else start
        elif start is None:
            since = peak = None
        else:
            quiet, peak = at if quiet is None else quiet, max(peak, median)
            if at - quiet >= clear:
                found.append((start, at, peak))
                since = quiet = start = peak = None
    return found + ([(start, None, peak)] if start is not None else [])


def _events(season, loggers):
    """{(condition, site, start): (end, peak)} that the readings say."""
    found = {}
    for condition in season.consents["consents"][0]["conditions"]:
        if condition.get("variable") == "turbidity":
            for name in condition["sites"]:
                for start, end, peak in passed(condition, loggers[name], loggers[condition.get("control", "C1")]):
                    found[condition["condition"], name, start] = end, peak
    return found


def stories(season):
    loggers = {row["site"]: Logger(season, row) for row in season.rows("sites.csv")}
    for name, logger in loggers.items():
        steps = [b - a for a, b in zip(logger.at, logger.at[1:])]
        spikes = sum(t.get("spike") == 3 for t in logger.tests)
        yield f"{name}: readings in order, with gaps, blanks, spikes and few of them bad", \
            f"{len(logger.at)}, {sum(s > 15 for s in steps)} gaps, {logger.flags.count(9)} blank, {spikes} at spikes", \
            min(steps) == 15 and sum(s > 15 for s in steps) > 5 and logger.flags.count(9) > 20 and \
            20 < spikes < 200 and len(logger.good) > 0.95 * len(logger.at)
    yield from _events_agree(season, loggers)
    yield from _stuck(loggers["R2"])
    yield from _fouled(season, loggers)
    yield from _samples(season, loggers)


def _samples(season, loggers):
    """Each bottle's turbidity is what the logger beside it read then."""
    rows, differ = season.rows("samples.csv"), 0
    for row in rows:
        logger = loggers[row["site"]]
        differ += logger.values[logger.at.index(minute(row["time"]))] != float(row["turbidity"])
    yield "samples of water, and how many read otherwise than the logger", f"{len(rows)}, {differ}", \
        len(rows) > 15 and not differ


def _events_agree(season, loggers):
    found = _events(season, loggers)
    logged = {(r["condition"], r["place"], minute(r["from"])): (minute(r["to"]), float(r["peak"]))
              for r in season.tables["events"] if r["kind"] == "trigger"}
    differ = set(found) ^ set(logged)
    differ |= {k for k in set(found) & set(logged)
               if found[k][0] != logged[k][0] or abs(found[k][1] - logged[k][1]) > 0.0501}
    yield "triggers that the readings pass, those of events.csv, and how many differ", \
        f"{len(found)}, {len(logged)}, {len(differ)}", not differ
    storm = [k for k in found if k[0] == "20.4"]
    start, (end, _) = storm[0][2], found[storm[0]]
    control = max(loggers["C1"].median(at, 360)[0] for at in range(start, end, 15))
    above = [k for k in found if k[0] in ("20.1", "20.2", "20.3") and start - 720 < k[2] < end]
    yield "the storm of 17 March passes 30 by itself, and the control explains it", \
        f"control up to {control:.1f}, {len(above)} passed above it", len(storm) == 1 and control > 35 and not above
    april = next((k for k in found if k[0] == "20.2"), None)
    control = max(loggers["C1"].median(at, 360)[0] for at in range(april[2], found[april][0], 15))
    yield "22 April passes 10 above the control, which stays clear; tier 3 is never passed", \
        f"{_said(april[2])}, control up to {control:.1f}", \
        _said(april[2]) == "2026-04-22 01:00" and control < 6 and not any(k[0] == "20.3" for k in found)


def _said(at):
    return f"{local(datetime.fromisoformat('1970-01-01T00:00+00:00') + timedelta(minutes=at)):%Y-%m-%d %H:%M}"


def _stuck(logger):
    first, last = (minute(f"2026-02-10T{h}:00+13:00") for h in ("03", "12"))
    span = [i for i, at in enumerate(logger.at) if first <= at < last]
    flat = [logger.at[i] for i in span if logger.tests[i].get("flat") == 3]
    others = sum(t.get("flat") == 3 for t in logger.tests) - len(flat)
    yield "R2 sticks on 10 February 03:00 to 12:00, flagged after two hours; nothing else is flat", \
        f"{len(set(logger.values[i] for i in span))} value, flagged from {_said(flat[0])}, {others} elsewhere", \
        len({logger.values[i] for i in span}) == 1 and len(span) == 36 and flat[0] == first + 120 and \
        flat[-1] == last - 15 and others == 0


def _fouled(season, loggers):
    cleaned = next(r for r in season.rows("service.csv") if r["site"] == "R2" and r["time"].startswith("2026-04-09"))
    at, r2, c1 = minute(cleaned["time"]), loggers["R2"], loggers["C1"]

    def above(start, end):
        some = [[v for t, v in zip(x.at, x.values) if start <= t < end and v is not None] for x in (r2, c1)]
        return sum(some[0]) / len(some[0]) - sum(some[1]) / len(some[1])
    day = 1440
    before, after, calm = above(at - day, at - 20), above(at + 60, at + day), above(at - 16 * day, at - 14 * day)
    yield "R2 grows over from 27 March, until it is cleaned on 9 April", \
        f"{calm:.1f} above the control, {before:.1f}, {after:.1f} when clean", before > calm + 2.5 and after < before - 2.5

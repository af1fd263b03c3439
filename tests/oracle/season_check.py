# SPDX-License-Identifier: GPL-3.0-or-later
"""Conditions of kind place, time, series and duty on top of a random season, and releases to ask about."""
import json
import math
import os
import random
from datetime import timedelta

from bookfolder import Folder
from releases import all_releases
from season import Season

HOUR, DAY = 3600000, 86400000


class CheckSeason(Season):
    def __init__(self, seed, trips, out):
        super().__init__(seed, trips, out)
        self.seen, self.apart = [], random.Random(f"tracks {seed}")

    def write(self):
        super().write()
        self._add_conditions()
        self._csv("tide.csv", self._tide())
        self._csv("observations.csv", self._observations())
        self._csv("duties.csv", self._duties())
        self._tracks()
        self._csv("suitability.csv", [{"claim": c, "material": m, "class": self.rng.choice(["sea", "land"]),
                                       "from": self.rng.choice(["", self._date(self.rng.choice(self.works.ends))])}
                                      for c in ("C1", "C2", "C3") for m in ("sand", "clay")
                                      if self.rng.random() < 0.6])

    def _date(self, t):
        return self.times.clock.wall(t).date().isoformat()

    # -- conditions ----------------------------------------------------------------------------------------

    def _add_conditions(self):
        rng, path = self.rng, os.path.join(self.out, "consents.json")
        with open(path, encoding="utf-8") as f:
            consents = json.load(f)
        for consent in consents["consents"]:
            consent["not_working"] = {"weekends": rng.random() < 0.7, "yearly": ["12-20..01-10"],
                                      "dates": [self._date(rng.choice(self.works.ends))]}
            if rng.random() < 0.3:
                consent["expires"] = self._date(self.times.instant(self.times.end) + 40 * DAY)
            added = [self._place(f"L{i}") for i in range(4)] + [self._time(f"T{i}") for i in range(5)]
            added += [self._series(f"S{i}") for i in range(2)] + [self._duty(f"D{i}") for i in range(4)]
            for c in added:
                c.setdefault("applies", self._scope() if rng.random() < 0.4 else {})
                consent["conditions"] += self._versioned(c) if rng.random() < 0.25 else [c]
            consent["conditions"] += [self._by_track("W0", "whole_release"), self._by_track("W1", "release_end"),
                                      self._by_track("W2", "whole_release")]
        self._json("consents.json", consents)

    def _versioned(self, c):
        """Two versions; the second the same or turned round."""
        cut = self.times.clock.text(self.rng.choice(self.works.ends) + self.rng.choice([0, 1, 12345]))
        second = json.loads(json.dumps(c))
        c["to"] = second["from"] = cut
        if c["kind"] == "time" and self.rng.random() < 0.5:
            second["mode"] = "allow" if c["mode"] == "forbid" else "forbid"
        return [c, second]

    def _scope(self):
        rng = self.rng
        return rng.choice([{"activity": "release"}, {"activity": "dredge"}, {"activity": "both"},
                           {"grounds": ["Gull"]}, {"grounds": ["Tern"], "activity": "release"},
                           {"materials": ["sand"]}, {"plant": ["Knot"]}, {"plant": ["Plover"]},
                           {"claims": ["C1", "C2"]}, {"classes": ["sea"]}, {"classes": ["land"]}])

    def _place(self, number):
        rng = self.rng
        lat, lon = self.places.projection.inverse(self.places.east + rng.uniform(0, 3000),
                                                  self.places.north + rng.uniform(-2500, 1200))
        what = rng.choice([{"ground": "Gull"}, {"ground": "Tern"}, {"cell": "G11"}, {"exclusion": "wreck"},
                           {"circle": {"lat": lat, "lon": lon, "radius_m": rng.choice([200, 800])}}])
        side = "outside" if "exclusion" in what else rng.choice(["inside", "outside"])
        c = {"condition": number, "text": "made up", "kind": "place", side: what, "test": "release_start"}
        if rng.random() < 0.5:
            c["inset_m"] = rng.choice([0, 20, 75.5])
        if rng.random() < 0.3:
            c["position_u_m_max"] = 20
        return c

    def _time(self, number):
        rng = self.rng
        c = {"condition": number, "text": "made up", "kind": "time", "mode": rng.choice(["allow", "forbid"])}
        every = {"dates": rng.choice([["09-01..10-15"], ["12-20..01-10"], ["02-27..03-01", "07-04"], ["10-01..09-30"]]),
                 "hours": rng.choice([["20:00..06:00"], ["01:30..02:30"], ["07:00..07:00"], ["06:00..12:00", "13:15..22:00"]]),
                 "weekdays": rng.sample(["mon", "tue", "wed", "thu", "fri", "sat", "sun"], rng.choice([1, 3, 5])),
                 "daylight": rng.choice(["day", "night"]),
                 "tide_level_m": rng.choice([{"min": 0.5}, {"max": 0.25}, {"min": -0.5, "max": 0.75}])}
        for name in rng.sample(list(every), rng.choice([1, 1, 2, 3])):
            c[name] = every[name]
        if rng.random() < 0.05:
            c["tied_to"] = "the spawning of hoki"
        return c

    def _series(self, number):
        c = {"condition": number, "text": "made up", "kind": "series", "variable": "wave_height_m",
             "statistic": {"kind": "instant"}, "compare": {"absolute": self.rng.choice([1.2, 1.8, 2.5])},
             "passes": {"at_once": True}, "applies": {"activity": "release"}}
        if self.rng.random() < 0.4:
            c["max_age_hours"] = self.rng.choice([1, 6, 0.5])
        return c

    def _duty(self, number):
        rng = self.rng
        when = rng.choice([{"cycle": "month"}, {"cycle": "quarter"}, {"cycle": "year"},
                           {"on_date": self._date(rng.choice(self.works.ends))}])
        c = {"condition": number, "text": "made up", "kind": "duty", "what": rng.choice(["return", "survey", "plan"]),
             "when": when, "nil_required": rng.random() < 0.5, "blocks": rng.choice([[], ["release"], ["dredge", "release"]]), "applies": {}}
        if rng.random() < 0.9:
            c["due"] = {"n": rng.choice([1, 5, 10, 20]), "unit": rng.choice(["hours", "days", "working_days", "months"])}
        return c

    def _by_track(self, number, test):
        rng = self.apart
        c = {"condition": number, "text": "made up", "kind": "place", "test": test,
             **rng.choice([{"inside": {"ground": "Gull"}}, {"inside": {"cell": "G01"}}, {"outside": {"exclusion": "wreck"}}])}
        if rng.random() < 0.5:
            c["track_interval_s_max"] = rng.choice([20, 40, 90])
        if rng.random() < 0.5:
            c["inset_m"] = rng.choice([5, 30])
        return c

    def _tracks(self):
        """Straight and bent ways past Gull's edges, with and without gaps, of some trips with known doors."""
        rng, folder = self.apart, Folder(self.out)
        os.makedirs(os.path.join(self.out, "tracks"), exist_ok=True)
        doors = {}
        for r in all_releases(folder):
            if r.start is not None and r.end is not None:
                doors.setdefault(r.trip, []).append((r.start, r.shut))
        for trip in rng.sample(sorted(doors), min(8, len(doors))):
            low, high = min(a for a, _ in doors[trip]), max(b for _, b in doors[trip])
            rows, (x, y), step = [], (rng.uniform(-100, 2100), rng.uniform(-100, 1300)), rng.choice([10, 30, 45])
            t, vx, vy = low - 90000, rng.uniform(-1, 1), rng.uniform(-1, 1)
            while t < high + 120000:
                lat, lon = self.places.projection.inverse(self.places.east + x, self.places.north + y)
                rows.append({"time": self.times.text(t), "lat": f"{lat:.9f}", "lon": f"{lon:.9f}"})
                seconds = step if rng.random() > 0.01 else rng.choice([59, 61, 95])
                t, x, y = t + seconds * 1000, x + vx * seconds, y + vy * seconds
                if rng.random() < 0.05:
                    vx, vy = rng.uniform(-1, 1), rng.uniform(-1, 1)
            self._csv(f"tracks/{trip}.csv", rows)

    # -- what was seen and done ----------------------------------------------------------------------------

    def _tide(self):
        """Some weeks of levels, hourly and half-hourly, with gaps of 3 h (known) and of 4 h (not)."""
        rng, rows = self.rng, {}
        for end in rng.sample(self.works.ends, 3):
            t = (end - rng.randrange(2 * DAY)) // 60000 * 60000
            for i in range(150):
                rows[t] = round(1.4 * math.sin(t / HOUR * 2 * math.pi / 12.42) + rng.uniform(-0.02, 0.02), 2)
                t += rng.choice([HOUR, HOUR, HOUR // 2, 3 * HOUR] + [4 * HOUR] * (i % 30 == 0))
        return [{"time": self.times.text(t), "level_m": v} for t, v in sorted(rows.items())]

    def _observations(self):
        rng, found = self.rng, {}
        for end in rng.sample(self.works.ends, min(12, len(self.works.ends))):
            t = end - rng.choice([0, 1, 60000, 3 * HOUR, 3 * HOUR + 1, 2 * HOUR, HOUR])
            found[t] = rng.choice(["0.9", "1.2", "1.8", "1.9", "2.6", ""])
        self.seen = sorted(found)
        return [{"time": self.times.text(t), "wave_height_m": v, "by": "Ana"} for t, v in sorted(found.items())]

    def _duties(self):
        rng, rows, done = self.rng, [], set()
        for end in rng.sample(self.works.ends, min(14, len(self.works.ends))):
            covers = rng.choice(["", self._date(end), self._date(end)[:8] + "01"])
            at = end + rng.randrange(20 * DAY)
            if at not in done:
                done.add(at)
                rows.append({"condition": f"D{rng.randrange(4)}", "consent": rng.choice(["X-1", ""]),
                             "covers_from": covers, "done_at": self.times.text(at), "by": "Caro", "evidence": "letter"})
        return rows

    # -- what to ask ---------------------------------------------------------------------------------------

    def asks(self, count):
        """(load, time, ground, cell, lat, lon, u, wave) as texts and numbers; blank is not given."""
        rng, loads, found = self.rng, [r["load"] for r in self.works.tables["loads.csv"]], []
        for _ in range(count):
            ground = rng.choice(["Gull", "Tern"])
            u = rng.choice([0, 0, 5, 25])
            ask = {"load": rng.choice(loads), "at": self._instant(), "ground": ground, "u": u}
            if rng.random() < 0.75:
                ask["lat"], ask["lon"] = self.places.position(ground, u)
            if rng.random() < 0.2:
                ask["cell"] = rng.choice(self.places.cells[ground])
            if rng.random() < 0.4:
                ask["wave"] = rng.choice([0.4, 1.2, 1.5, 1.8, 2.2, 3])
            found.append(ask)
        return found

    def _instant(self):
        rng, clock = self.rng, self.times.clock
        t = rng.choice(self.works.ends)
        day = clock.wall(t).replace(hour=0, minute=0, second=0, microsecond=0)
        edge = clock.instant(day + timedelta(hours=rng.choice([0, 1.5, 2, 2.5, 6, 7, 12, 13.25, 20, 22])))
        month = clock.instant(day.replace(day=1))
        return rng.choice([t, t + 1, t + rng.randrange(3 * HOUR), t - rng.randrange(9 * DAY), edge, edge - 1, month,
                           month - 1, self.times.instant(self.times.end) + rng.randrange(60 * DAY)]
                          + [s + rng.choice([0, HOUR, 3 * HOUR, 3 * HOUR + 1]) for s in self.seen[:2]])

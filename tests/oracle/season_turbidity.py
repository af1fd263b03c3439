# SPDX-License-Identifier: GPL-3.0-or-later
"""A random book about turbidity alone: loggers with gaps, doubles and faults, and every kind of trigger."""
import json
import os
from datetime import datetime, timedelta
import random

from clock import Clock

MINUTE, HOUR, DAY = 60000, 3600000, 86400000
ZONES = [("Pacific/Auckland", 32760), ("Europe/Berlin", 32632), ("America/Santiago", 32719), ("UTC", 32631)]


class TurbiditySeason:
    def __init__(self, seed, out, rows=260):
        self.rng, self.out, self.rows = random.Random(f"turbidity {seed}"), out, rows
        self.zone, self.epsg = ZONES[seed % len(ZONES)]
        self.clock = Clock(self.zone)
        # Days about a clock change of the zone, or about New Year.
        first = self.rng.choice([datetime(2025, 9, 27), datetime(2025, 10, 25), datetime(2025, 4, 5),
                                 datetime(2025, 12, 30), datetime(2025, 9, 6)])
        self.start = self.clock.instant(first)
        self.sites, self.files = {}, {}
        self.step = self.rng.choice([5, 10, 15, 20])
        for name, role in (("R1", "impact"), ("R2", "impact"), ("R3", "impact"), ("C1", "control")):
            self._site(name, role)
        self.end = self.start + self.rows * self.step * MINUTE
        self.spans = self._spans()
        self.conditions = self._all_conditions()
        self.as_ats = [self.end + 400 * DAY, self.start + self.rng.randrange(self.rows) * self.step * MINUTE]

    # -- loggers -------------------------------------------------------------------------------------------

    def _site(self, name, role):
        rng, step = self.rng, self.step
        given = {"range_low": "0", "range_high": rng.choice(["60", "80"]), "spike": rng.choice(["8", "15"]),
                 "rate_per_min": rng.choice(["1.5", "3"]), "flat_min": str(step * rng.choice([2, 3, 4.5]))}
        kept = rng.choice([[], list(given), rng.sample(list(given), 2), ["range_low", "range_high"]])
        row = {k: given[k] for k in kept}
        row.update(site=name, role=role, interval_min=rng.choice(["", f"{step}"]), easting_m="0",
                   northing_m="0", unit=rng.choice(["NTU", "FNU"]))
        self.sites[name] = row
        self.files[name] = self._readings(role)

    def _readings(self, role):
        """(time, value or None): a slow walk with plumes, faults, missing codes, doubles and gaps."""
        rng, found, level, plume, same = self.rng, [], 8.0, 0, None
        i = 0
        while i < self.rows:
            t = self.start + i * self.step * MINUTE
            level = min(25.0, max(2.0, level + rng.uniform(-1.5, 1.5)))
            if plume == 0 and rng.random() < (0.02 if role == "impact" else 0.008):
                plume = rng.randrange(4, 40)
            value = round(level + (14 if plume else 0), 1)
            plume = max(0, plume - 1)
            if same is None and rng.random() < 0.02:
                same = [value] * rng.randrange(2, 8)
            if same:
                value, same = same[0], same[1:] or None
            value = rng.choices([value, round(value + 30, 1), 250.0, -3.0, None], [94, 1, 1, 1, 3])[0]
            found.append((t, value))
            if rng.random() < 0.01:
                found.append((t, value))
            i += rng.randrange(3, 20) if rng.random() < 0.015 else 1
        if rng.random() < 0.2:
            rng.shuffle(found)
        return found

    # -- works ---------------------------------------------------------------------------------------------

    def _spans(self):
        """Stations, loads and releases at odd milliseconds, so that no reading stands on an edge."""
        spans, t = [], self.start + 1234567
        while t < self.end:
            long = self.rng.randrange(HOUR, 9 * HOUR)
            spans.append((t, t + long))
            t += long + self.rng.randrange(HOUR, 14 * HOUR)
        return [(a // 1000 * 1000 + 137, b // 1000 * 1000 + 731) for a, b in spans]

    # -- conditions ----------------------------------------------------------------------------------------

    def _all_conditions(self):
        found = []
        for i in range(12):
            first = self._condition(f"{20 + i}")
            if self.rng.random() < 0.3:
                cut = self.clock.text(self.start + self.rng.randrange(self.rows) * self.step * MINUTE)
                second = json.loads(json.dumps(first))
                second["from"] = first["to"] = cut
                second["compare"] = self._compare(bool(first.get("control")))
                found += [first, second]
            else:
                found.append(first)
        return found

    def _condition(self, number):
        rng = self.rng
        c = {"condition": number, "text": "made up", "kind": "series", "variable": "turbidity",
             "applies": {"activity": rng.choice(["dredge", "release", "both"])},
             "compare": self._compare(True), "control": "C1"}
        if rng.random() < 0.8:
            c["sites"] = rng.sample(["R1", "R2", "R3"], rng.choice([1, 2, 3]))
        c["statistic"] = self._statistic()
        if c["statistic"]["kind"] != "instant" or rng.random() < 0.5:
            c["over_minutes"] = self.step * rng.choice([1, 3, 6, 12, 25]) + rng.choice([0, 0, 1])
        if rng.random() < 0.6 and "over_minutes" in c:
            c["min_complete"] = rng.choice([0.5, 0.75, 0.8, 1])
        c["passes"] = rng.choice([{"at_once": True}, {"held_hours": rng.choice([0.5, 1, 2])},
                                  {"held_hours": self.step * rng.choice([2, 5]) / 60},
                                  {"hours_in": {"hours": rng.choice([1, 2, 3]), "days": rng.choice([1, 2])}}])
        c["while"] = rng.choice(["always", "always", "working", {"working_plus": {"hours": rng.choice([1, 2.5])}}])
        c["tier"] = rng.choice([1, 2, 3])
        if rng.random() < 0.8:
            c["clear"] = {"sites": rng.choice(["same", "same", "all"]), "held_hours": rng.choice([0, 0.5, 1, 2, 6])}
        c["responses"] = [{"tier": rng.choice([c["tier"], c["tier"], 9]), "action": "tell",
                           "within": {"n": rng.choice([1, 2, 24]),
                                      "unit": rng.choice(["hours", "days", "working_days", "months"])}}
                          for _ in range(rng.choice([0, 1, 2]))]
        return c

    def _statistic(self):
        rng = self.rng
        return rng.choice([{"kind": "mean"}, {"kind": "median"}, {"kind": "instant"},
                           {"kind": "percentile", "p": rng.choice([80, 95, 62.5])},
                           {"kind": "percentile", "p": rng.choice([50, 80, 20]), "type": rng.randrange(1, 10)},
                           {"kind": "ewma", "half_life_min": rng.choice([20, 45])},
                           {"kind": "ewma", "alpha": rng.choice([0.2, 0.5])}])

    def _compare(self, control):
        rng = self.rng
        simple = [{"absolute": rng.choice([12, 15.05, 20])}, {"above_control": rng.choice([5, 9.95])},
                  {"times_control": rng.choice([1.5, 2.25])}]
        other = [{"higher_of": rng.sample(simple, 2)},
                 {"bands": [dict(rng.choice(simple), control_from=0, control_to=7.03),
                            dict(rng.choice(simple), control_from=7.03, control_to=14.07)]},
                 {"baseline": self._baseline()},
                 {"paired_above_control": {"x": rng.choice([4, 8.05]), "lag_min": self.step * rng.choice([0, 1, 3]),
                                           "tolerance_min": rng.choice([1, self.step * 1.4])}},
                 {"paired_above_control": {"x": 6.5, "lag_min": 0}}]
        return rng.choice(simple + other)

    def _baseline(self):
        rng = self.rng
        found = {"percentile": rng.choice([80, 95]), "times": rng.choice([1, 1.5, 2]), "plus": rng.choice([0, 3])}
        if rng.random() < 0.3:
            return dict(found, value=rng.choice([7.25, 9]))
        found["from"] = self.clock.text(self.start + rng.randrange(20) * HOUR)
        found["to"] = self.clock.text(self.start + rng.randrange(24, 50) * HOUR)
        if rng.random() < 0.5:
            found["site"] = rng.choice(["C1", "R2"])
        return found

    # -- writing -------------------------------------------------------------------------------------------

    def _text(self, name, text):
        with open(os.path.join(self.out, name), "w", encoding="utf-8", newline="") as f:
            f.write(text)

    def _csv(self, name, columns, rows):
        lines = [",".join(columns)] + [",".join(str(r.get(c, "")) for c in columns) for r in rows]
        self._text(name, "\n".join(lines) + "\n")

    def write(self):
        os.makedirs(os.path.join(self.out, "turbidity"), exist_ok=True)
        self._text("harbour.json", json.dumps({"name": "Test Haven", "epsg": self.epsg, "zone": self.zone}))
        self._text("plant.json", json.dumps({"dredgers": [{"name": "Heron"}], "tugs": [{"name": "Plover"}],
                                             "barges": [{"name": "Knot", "capacity_m3": 420}]}))
        consent = {"consent": "X-1", "commences": "2024-01-01", "conditions": self.conditions,
                   "not_working": {"weekends": True, "yearly": ["12-20..01-10"], "dates": ["2025-10-27"]}}
        self._text("consents.json", json.dumps({"consents": [consent]}, indent=1))
        text = self.clock.text
        self._csv("shifts.csv", ["shift", "start", "end", "dredger"],
                  [{"shift": "S1", "start": text(self.start - DAY), "end": text(self.end + DAY), "dredger": "Heron"}])
        kind = [self.rng.choice(["station", "load", "release"]) for _ in self.spans]
        self._csv("stations.csv", ["station", "shift", "spuds_down", "spuds_up"],
                  [{"station": f"P{i}", "shift": "S1", "spuds_down": text(a), "spuds_up": text(b)}
                   for i, (a, b) in enumerate(self.spans) if kind[i] == "station"])
        self._csv("loads.csv", ["load", "barge", "loading_start", "loading_end"],
                  [{"load": f"L{i}", "barge": "Knot", "loading_start": text(a), "loading_end": text(b)}
                   for i, (a, b) in enumerate(self.spans) if kind[i] == "load"])
        self._csv("trips.csv", ["trip", "tug", "release_start", "release_end"],
                  [{"trip": f"T{i}", "tug": "Plover", "release_start": text(a), "release_end": text(b)}
                   for i, (a, b) in enumerate(self.spans) if kind[i] == "release"])
        self._csv("turbidity/sites.csv", ["site", "role", "easting_m", "northing_m", "unit", "interval_min",
                                          "range_low", "range_high", "spike", "rate_per_min", "flat_min"],
                  list(self.sites.values()))
        for name, rows in self.files.items():
            self._csv(f"turbidity/{name}.csv", ["time", "value"],
                      [{"time": text(t), "value": "" if v is None else v} for t, v in rows])
        self._overrules()

    def _overrules(self):
        rng, rows = self.rng, []
        for name in self.files:
            if rng.random() < 0.4:
                t = self.start + rng.randrange(self.rows) * self.step * MINUTE
                rows.append({"site": name, "from": self.clock.text(t), "flag": rng.choice([1, 3, 4]),
                             "to": rng.choice(["", self.clock.text(t + 3 * HOUR)]), "why": "looked at", "by": "Ana"})
        if rows:
            self._csv("turbidity/overrules.csv", ["site", "from", "to", "flag", "why", "by"], rows)

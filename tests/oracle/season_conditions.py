# SPDX-License-Identifier: GPL-3.0-or-later
"""Invented quantity conditions of every window, measure, method, scope, share, reserve and version."""
from datetime import timedelta

from season_works import BARGES, CLAIMS

VOLUMES = ("in_situ_m3", "hopper_m3", "wet_t", "dry_t")


class Conditions:
    def __init__(self, rng, places, times, works):
        self.rng, self.places, self.times, self.works = rng, places, times, works
        self.opening = []
        self.members = rng.random() < 0.3       # opening.csv has the column member
        windows = ["term", "day", "week", "month", "year", "consent_year", "days", "months", "months", "mean",
                   "campaign", "phase"] + ([] if works.ties else ["trip"])
        self.consents = []
        for i in range(rng.choice([1, 2])):
            conditions = []
            for number, window in enumerate(rng.sample(windows, len(windows)) + rng.choices(windows, k=4), 1):
                conditions += self._versions(f"{number}", self._window(window))
            self.consents.append(self._consent(f"X-{i + 1}", conditions))

    def _date(self, t):
        return self.times.clock.wall(t).date().isoformat()

    def _moment(self):
        """A date, or an instant that is some release end exactly."""
        t = self.rng.choice(self.works.ends)
        return self._date(t) if self.rng.random() < 0.5 else self.times.clock.text(t)

    def _consent(self, name, conditions):
        rng, start = self.rng, self.times.start
        consent = {"consent": name, "holder": "Test Haven Board", "authority": "Test Council",
                   "granted": "2023-01-01",
                   "year_starts": rng.choice(["07-01", "10-01", "02-28", "12-31", "04-06"]),
                   "conditions": conditions}
        commences = rng.choice([None, start, start + timedelta(days=60), start - timedelta(days=400)])
        if commences:
            consent["commences"] = commences.date().isoformat()
        conditions.append({"condition": "P1", "text": "inside Gull", "kind": "place",
                           "inside": {"ground": "Gull"},
                           "test": "release_start"})
        return consent

    def _window(self, kind):
        rng = self.rng
        if kind in ("day", "week", "month", "year"):
            return {"kind": "calendar", "unit": kind}
        if kind == "days":
            return {"kind": "rolling", "n": rng.choice([1, 7, 30, 365]), "unit": "days"}
        if kind == "months":
            return {"kind": "rolling", "n": rng.choice([1, 3, 12]), "unit": "months"}
        if kind == "mean":
            return {"kind": "mean", "years": rng.choice([2, 3])}
        if kind == "phase":
            ends = sorted(self.rng.sample(sorted(set(self.works.ends)), 2))
            return {"kind": "phase", "from": self._date(ends[0]),
                    "to": self.times.clock.text(ends[1]) if rng.random() < 0.5
                    else self._date(ends[1] + 86400000)}
        return {"kind": kind}

    def _versions(self, number, window):
        rng = self.rng
        first = self._condition(number, window)
        if rng.random() < 0.2:
            cut = self._moment()
            second = dict(first, **{"from": cut})
            first["to"] = cut
            if rng.random() < 0.3:
                second["window"] = self._window(rng.choice(["term", "month", "months", "consent_year"]))
            self._maybe_opening(first, second)
            return [first, second]
        if rng.random() < 0.08:
            first["to"] = self._moment()        # it ends, and nothing comes after it
        self._maybe_opening(first)
        return [first]

    def _condition(self, number, window):
        rng, trip = self.rng, window["kind"] == "trip"
        dredge = not trip and rng.random() < 0.2
        measures = ["in_situ_m3", "hopper_m3", "days", "hours"]
        if not dredge:
            measures = list(VOLUMES) + ["trips", "days", "hours"]
        c = {"condition": number, "text": "made up", "kind": "quantity", "value": 1,
             "measure": rng.choices(measures, [5, 4] + [2] * (len(measures) - 2))[0], "window": window}
        if rng.random() < 0.2 and c["measure"] in VOLUMES:
            c["method"] = rng.choice(["ullage", "tally", "stated", "draughts"])
        applies = self._applies(c, dredge)
        if applies or rng.random() < 0.5:
            c["applies"] = applies
        if not trip and rng.random() < 0.45 and c.get("method") != "draughts":
            c["each_of"] = rng.choice(["claim", "material"] if dredge
                                      else ["claim", "ground", "cell", "cell", "material"])
        if "each_of" in c and c["measure"] in VOLUMES and rng.random() < 0.5:
            c["share_of_total"], c["of"] = 1, rng.choice([1, {"floor": 1}])
            del c["value"]
        elif rng.random() < 0.15:
            c["reserve"] = {"value": 1, "unlocked_by": rng.choice([None, "a letter", {"on": self._moment()}])}
        if rng.random() < 0.1:
            c["op"] = "at_least"
        if rng.random() < 0.5:
            c["warn_at"] = [0.8, 0.95]
        return c

    def _applies(self, c, dredge):
        rng, applies = self.rng, {}
        if dredge or rng.random() < 0.5:
            applies["activity"] = "dredge" if dredge else rng.choice(["release", "both"])
        if rng.random() < 0.25 and c.get("method") != "draughts":
            applies["claims"] = rng.sample(list(CLAIMS), rng.choice([1, 2]))
        if not dredge and rng.random() < 0.25:
            applies["grounds"] = [rng.choice(["Gull", "Tern"])]
        if not dredge and rng.random() < 0.1:
            ground = applies.get("grounds", ["Gull"])[0]
            applies["cells"] = rng.sample(self.places.cells[ground], 2)
        if rng.random() < 0.15:
            applies["materials"] = rng.sample(["sand", "clay", "rock"], 2)
        if rng.random() < 0.1:
            applies["plant"] = [rng.choice(BARGES)["name"]] if dredge else \
                rng.sample([b["name"] for b in BARGES] + ["Plover", "Plover"], rng.choice([1, 1, 2]))
        return applies

    def _maybe_opening(self, *versions):
        """An amount that ended as the season began; in the midst of it only where no window is the term."""
        rng = self.rng
        if rng.random() > 0.3 or versions[0]["window"]["kind"] == "trip":
            return
        if versions[0]["measure"] in ("trips", "days"):
            return
        start = self.times.instant(self.times.start) + rng.randrange(-40, 8) * 86400000
        if all(v["window"]["kind"] != "term" for v in versions) and rng.random() < 0.4:
            start = rng.choice(self.works.ends)
        self.opening.append({"versions": versions, "from": self._date(start - 90 * 86400000),
                             "to": rng.choice([self._date(start), self.times.clock.text(start)]),
                             "u": rng.choice(["", "12.5"]), "source": "old book",
                             "member": self._member(versions[0])})

    def _member(self, c):
        if not self.members or "each_of" not in c or self.rng.random() < 0.4:
            return ""
        applies = c.get("applies", {})
        grounds = applies.get("grounds") or ["Gull", "Tern"]
        every = {"claim": applies.get("claims") or list(CLAIMS), "ground": grounds,
                 "cell": applies.get("cells") or self.places.cells[grounds[0]],
                 "material": applies.get("materials") or ["sand", "clay"]}
        return self.rng.choice(every[c["each_of"]])

    def opening_rows(self):
        rows = []
        for consent in self.consents:
            for o in self.opening:
                if any(v is o["versions"][0] for v in consent["conditions"]):
                    row = {"consent": consent["consent"], "condition": o["versions"][0]["condition"],
                           "from": o["from"], "to": o["to"], "value": o["value"], "u": o["u"],
                           "source": o["source"]}
                    rows.append(dict(row, member=o["member"]) if self.members else row)
        return rows

# SPDX-License-Identifier: GPL-3.0-or-later
"""`sbk turbidity`: triggers passed at a site, reading by reading (consent-rules.md, series)."""
from fractions import Fraction

from calendars import due_time
from readings import Site
from statistic import Level, Statistic

HOUR = 3600000


def hours(number):
    """In whole milliseconds, as instants are."""
    return round(Fraction(str(number)) * HOUR)


def in_force(folder, version, t):
    start, end = folder.time(version.get("from")), folder.time(version.get("to"))
    return (start is None or start <= t) and (end is None or t < end)


class Work:
    """When work is on: stations on their spuds and loading (dredge), open doors (release)."""

    def __init__(self, book, activity):
        folder, self.spans = book.folder, []
        if activity != "release":
            rows = [(r.get("spuds_down"), r.get("spuds_up")) for r in folder.stations.values()]
            rows += [(r.get("loading_start"), r.get("loading_end")) for r in folder.loads.values()]
            self.spans += [(folder.time(a), folder.time(b)) for a, b in rows if a and b]
        if activity != "dredge":
            self.spans += [(r.start, r.shut) for r in book.releases if r.start is not None and r.shut is not None]

    def on(self, t, rule):
        if rule in (None, "always"):
            return True
        after = hours(rule["working_plus"]["hours"]) if isinstance(rule, dict) else 0
        return any(a <= t <= b + after for a, b in self.spans)


class Walk:
    """One condition (all its versions) at one site."""

    def __init__(self, book, consent, versions, site, sites):
        self.book, self.folder, self.consent, self.site = book, book.folder, consent, site
        self.all_versions = versions
        self.versions = [v for v in versions if self._named(v, site)]
        self.levels = {id(v): Level(self.folder, v, site, sites) for v in versions}
        self.others = {id(v): [Level(self.folder, v, s, sites) for s in sites.values()
                               if s is not site and self._named(v, s)]
                       for v in versions if v.get("clear", {}).get("sites") == "all"}
        self.work = {id(v): Work(book, v.get("applies", {}).get("activity")) for v in versions}
        self.events, self.open = [], None
        self.over_since, self.clear = None, {}     # clear: site → told to be not over since
        self.overs, self.told = [], []

    @staticmethod
    def _named(version, site):
        return site.name in version["sites"] if version.get("sites") else site.row["role"] == "impact"

    def version(self, t):
        return next((v for v in self.versions if in_force(self.folder, v, t)), None)

    def run(self):
        times = set(self.site.present)
        for levels in self.others.values():
            times |= {t for level in levels for t in level.site.present}
        for t in sorted(times):
            version = self.version(t)
            if version is not None:
                self._at(t, version)
        return self.events

    def _at(self, t, version):
        if t in self.site.present:
            self._own(t, version)
        self._clear(t, version)

    def _own(self, t, version):
        level = self.levels[id(version)]
        value = level.value(t)
        over = level.over(value, t)
        self.told.append((t, value))
        if not self.work[id(version)].on(t, version.get("while")):
            self.over_since = None
            return
        if over:
            self.over_since = self.over_since if self.over_since is not None else t
            self.overs.append(t)
            if not self.open and self._passes(t, version):
                self._start(t, version)
        else:
            self.over_since = None

    def _passes(self, t, version):
        passes = version.get("passes", {"at_once": True})
        if "held_hours" in passes:
            return t - self.over_since >= hours(passes["held_hours"])
        if "hours_in" in passes:
            spec = passes["hours_in"]
            begin = self.folder.clock.minus(t, spec["days"], "days")
            held = [s for s in self.overs if begin < s <= t]
            return len(held) * self.site.interval >= hours(spec["hours"])
        return True

    def _start(self, t, version):
        since = self.over_since
        if "hours_in" in version.get("passes", {}):
            begin = self.folder.clock.minus(t, version["passes"]["hours_in"]["days"], "days")
            since = min(s for s in self.overs if begin < s <= t)
        self.open = {"condition": version["condition"], "trigger": version.get("tier"), "over_since": since,
                     "start": t, "end": None, "due": self._due(t, version)}
        self.events.append(self.open)

    def _due(self, t, version):
        dues = [due_time(self.folder, self.consent, t, r["within"]) for r in version.get("responses", [])
                if r.get("within") and r.get("tier") in (None, version.get("tier"))]
        return min(dues, default=None)

    def _clear(self, t, version):
        """Every site asked keeps since when it is told to be not over; cannot tell leaves that as it is.
        The all-clear is held since the latest of them; an event ends at a reading that is not over."""
        own = self.levels[id(version)]
        levels = [own] + self.others.get(id(version), [])
        told = []
        for level in levels:
            if t in level.site.present:
                over = level.over(level.value(t), t)
                told.append(over)
                if over:
                    self.clear[level.site.name] = None
                elif over is False and self.clear.get(level.site.name) is None:
                    self.clear[level.site.name] = t
        since = [self.clear.get(level.site.name) for level in levels]
        if not self.open or False not in told or None in since:
            return
        if t - max(since) >= hours(version.get("clear", {}).get("held_hours", 0)):
            self.open["end"] = t
            self._peak()
            self.open = None

    def _peak(self):
        event = self.open
        told = [v for s, v in self.told
                if v is not None and event["over_since"] <= s and (event["end"] is None or s <= event["end"])]
        event["peak"] = max(told)

    def paired(self, t):
        version = self.version(t)
        return version is not None and "paired_above_control" in version["compare"]

    def shown(self, t):
        """The statistic beside a reading: of a control its own, by the version in force."""
        for v in self.versions or self.all_versions:
            if in_force(self.folder, v, t):
                return self.levels[id(v)].value(t) if self.versions else \
                    Statistic(v).of(self.site.good, self.site.interval, t)
        return None

    def finish(self):
        if self.open:
            self._peak()


def groups(folder):
    """(consent, condition) → versions of kind series on turbidity, in the order of the file."""
    found = {}
    for consent in folder.consents:
        for c in consent["conditions"]:
            if c["kind"] == "series" and c["variable"] == "turbidity":
                found.setdefault((consent["consent"], c["condition"]), (consent, []))[1].append(c)
    return found


def turbidity(book, name, as_at):
    folder = book.folder
    sites = {r["site"]: Site(folder, r["site"], as_at) for r in folder.rows["turbidity/sites.csv"]}
    site, events, shown = sites[name], [], None
    for (consent_name, _), (consent, versions) in groups(folder).items():
        controls = any(v.get("control") == name for v in versions)
        if not controls and not any(Walk._named(v, site) for v in versions):
            continue
        walk = Walk(book, consent, versions, site, sites)
        walk.run()
        walk.finish()
        events += [dict(e, consent=consent_name) for e in walk.events]
        if shown is None:
            shown = walk
    series = []
    for (t, value), flag in zip(site.rows, site.flags):
        at = None if shown is None or value is None else shown.shown(t)
        series.append({"time": t, "value": value, "flag": flag, "statistic": at,
                       "paired": shown is not None and shown.paired(t)})
    return {"flags": {str(f): site.flags.count(f) for f in (1, 2, 3, 4, 9)}, "series": series, "events": events}

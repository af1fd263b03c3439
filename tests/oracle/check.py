# SPDX-License-Identifier: GPL-3.0-or-later
"""`sbk release-check`: every condition before the act, its state and until when it holds."""
from bookfolder import number
from checklimit import WORST, CheckedLimit
from duties import blocking
from planned import possible_cells, tug_of
from sunlight import is_day, near_edge
from timely import Tide, TimeRule

YEARS_2 = 2 * 366 * 86400000
HOUR = 3600000


def in_force(folder, c, t):
    start, end = (folder.time(c.get(k)) for k in ("from", "to"))
    return (start is None or start <= t) and (end is None or t < end)


class Check:
    def __init__(self, book):
        self.book, self.folder, self.tide = book, book.folder, Tide(book.folder)
        self.observations = sorted((self.folder.time(r["time"]), number(r["wave_height_m"]))
                                   for r in self.folder.rows["observations.csv"] if r.get("wave_height_m"))
        self.suitability = self.folder.rows["suitability.csv"]

    def answer(self, ask):
        """(verdict, {(consent, condition): (state, until)}) of what is not clear; and `unsure`: what is left open."""
        reasons, self.unsure = {}, set()
        for consent in self.folder.consents:
            numbers = dict.fromkeys(c["condition"] for c in consent["conditions"])
            for name in numbers:
                versions = [c for c in consent["conditions"] if c["condition"] == name]
                state, until = self._condition(consent, versions, ask)
                if state != "clear":
                    reasons[(consent["consent"], name)] = (state, until)
        verdict = max([s for s, _ in reasons.values()] + ["clear"], key=WORST.index)
        return verdict, reasons

    def _condition(self, consent, versions, ask):
        kind = versions[0]["kind"]
        if kind == "quantity":
            limit = CheckedLimit(self.book, consent, versions, ask)
            state = limit.state(ask.at)
            if limit.unsaid:        # hold or cannot tell: the design does not say
                self.unsure.add((consent["consent"], versions[0]["condition"]))
            return state, limit.until() if state == "hold" else None
        if kind not in ("place", "time", "series", "duty"):
            return "clear", None
        state = self._state(consent, versions, ask, ask.at)
        if kind == "time":
            self._near_the_sun(consent, versions, ask)
        return state, self._until(consent, versions, ask) if state == "hold" else None

    def _state(self, consent, versions, ask, t):
        if versions[0]["kind"] == "duty":       # a time asked by one version stays asked under the next
            asked = blocking(self.book, consent, versions, t)
            return "hold" if any(self._applies(v, ask, t) for v in asked) else "clear"
        version = next((v for v in versions if in_force(self.folder, v, t)), None)
        if version is None or not self._applies(version, ask, t):
            return "clear"
        return getattr(self, "_" + version["kind"])(consent, version, ask, t)

    def _applies(self, version, ask, t):
        """What a plan does not say may apply: no ground, cell, tug, claim or material, a claim without a class."""
        applies = version.get("applies", {})
        if applies.get("activity") == "dredge":
            return False
        load, volume = self.folder.loads[ask.load], self.book.volumes[ask.load]
        ground = ask.ground
        if applies.get("grounds") and ground is not None and ground not in applies["grounds"]:
            return False
        if applies.get("cells") and not possible_cells(self.folder, ask, applies["cells"]):
            return False
        if applies.get("materials") and load.get("material") not in applies["materials"] + [None]:
            return False
        plant = applies.get("plant") or []
        tug = tug_of(self.folder, ask.load)
        if plant and not {load.get("barge"), tug} & set(plant) and (tug or set(plant) <= set(self.folder.barges)):
            return False
        if applies.get("claims") and not volume.claims() & {None, *applies["claims"]}:
            return False
        return not applies.get("classes") or self._class(applies["classes"], volume, t)

    def _class(self, classes, volume, t):
        for part in volume.parts:
            said = {r["class"] for r in self.suitability
                    if (r["claim"], r["material"]) == (part.claim, part.material) and in_force(self.folder, r, t)}
            if not said or said & set(classes):
                return True
        return False

    # -- kinds ---------------------------------------------------------------------------------------------

    def _place(self, consent, version, ask, t):
        if ask.place is None:
            return "cannot_tell"
        most = version.get("position_u_m_max")
        room = room_of(self.folder, version, ask.place)
        return "hold" if room < 2 * ask.u or most is not None and ask.u > most else "clear"

    def _sun_place(self, ask):
        ground = ask.ground or next(iter(self.folder.regions))
        ring = [p for part in self.folder.regions[ground].parts for p in part[0]]
        x, y = (sum(c) / len(ring) for c in zip(*ring))
        return self.folder.projection.inverse(x, y)

    def _time(self, consent, version, ask, t):
        return TimeRule(self.folder, version, self._sun_place(ask), self.tide).state(t)

    def _near_the_sun(self, consent, versions, ask):
        if any(v.get("daylight") for v in versions) and near_edge(ask.at, *self._sun_place(ask)):
            self.unsure.add((consent["consent"], versions[0]["condition"]))

    def _series(self, consent, version, ask, t):
        if version["variable"] == "turbidity":
            stops = {r.get("action") for r in version.get("responses", [])} & {"stop", "change_cell"}
            return "cannot_tell" if stops else "clear"
        wave = ask.wave
        if wave is None:
            age = version.get("max_age_hours", 3) * HOUR
            held = [v for s, v in self.observations if t - age <= s <= t]
            wave = held[-1] if held else None
        if wave is None:
            return "cannot_tell"
        return "hold" if wave > version["compare"]["absolute"] else "clear"

    # -- until ---------------------------------------------------------------------------------------------

    def _until(self, consent, versions, ask):
        kind, at = versions[0]["kind"], ask.at
        if kind == "duty":
            return None     # but the record
        edges = {self.folder.time(v.get(k)) for v in versions for k in ("from", "to")} - {None}
        if kind == "time":
            edges |= self._time_edges(versions, ask)
        for t in sorted(e for e in edges if e > at):
            state = self._state(consent, versions, ask, t)
            if state != "hold":
                return None if state == "cannot_tell" and kind == "time" else t
        return None

    def _time_edges(self, versions, ask):
        place, found = self._sun_place(ask), set()
        for v in versions:
            rule = TimeRule(self.folder, v, place, self.tide)
            found |= set(rule.edges(ask.at, ask.at + YEARS_2))
            if v.get("daylight"):
                found |= sun_edges(place, ask.at, ask.at + YEARS_2)
        return found


def sun_edges(place, first, last):
    """Sunrises and sunsets to a second."""
    found, step, t = set(), 600000, first
    day = is_day(t, *place)
    while t < last:
        later = is_day(t + step, *place)
        if later != day:
            a, b = t, t + step
            while b - a > 1000:
                middle = (a + b) // 2
                a, b = (middle, b) if is_day(middle, *place) == day else (a, middle)
            found.add(b)
        t, day = t + step, later
        if len(found) > 1500:
            break
    return found


def room_of(folder, version, place):
    """Metres on the right side of the line, the inset taken off."""
    what = version.get("inside") or version.get("outside")
    if "circle" in what:
        x, y = folder.projection.forward(what["circle"]["lat"], what["circle"]["lon"])
        inside = what["circle"]["radius_m"] - ((place[0] - x) ** 2 + (place[1] - y) ** 2) ** 0.5
    else:
        inside = region_of(folder, what).signed_distance(*place)
    return (inside if "inside" in version else -inside) - version.get("inset_m", 0)


def region_of(folder, what):
    if "ground" in what:
        return folder.regions[what["ground"]]
    if "cell" in what:
        return next(r for (_, c), r in folder.cells.items() if c == what["cell"])
    return folder.exclusions[what["exclusion"]]

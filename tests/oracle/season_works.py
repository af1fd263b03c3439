# SPDX-License-Identifier: GPL-3.0-or-later
"""Invented plant, materials, stations, loads, trips and releases: valid, and as odd as is allowed."""

MINUTE, HOUR, DAY = 60000, 3600000, 86400000

# shell has no bulking factor, mud no density, rock no u
MATERIALS = """\
material,situ_density_t_m3,grain_density_t_m3,bulking_factor,bulking_factor_u,fill_factor,fill_factor_u
sand,1.95,2.65,1.22,0.04,0.93,0.03
clay,1.72,2.7,1.37,0.06,0.88,0.04
rock,2.31,2.72,1.61,0.11,0.71,
mud,,,1.08,,1.02,0.05
shell,1.6,2.6,,,0.9,0.02
""".splitlines()
CLAIMS = {"C1": "sand", "C2": "clay", "C3": "rock", "C4": None, "C5": "mud"}
WHOLE = ("sand", "clay")
BUCKETS = {"general": 4.2, "ripping": 2.6}
BARGES = [
    {"name": "Knot", "capacity_m3": 420, "ullage_u_m": 0.02, "draught_u_m": 0.02, "draught_mean": 8,
     "ullage_table": [[0.3, 430], [1.0, 350], [2.1, 210.5], [3.4, 60]],
     "hydrostatic_table": [[0.8, 210], [1.6, 470], [2.6, 810], [3.9, 1290]], "hydrostatic_density_t_m3": 1.0},
    {"name": "Dunlin", "capacity_m3": 560, "draught_mean": 6,
     "ullage_table": [[0.2, 575.25], [1.3, 415], [2.4, 240], [3.1, 150], [4.0, 22]],
     "hydrostatic_table": [[0.9, 260], [2.0, 690], [4.1, 1610]]},
]
SHIFTS = 6


def blank(value):
    return "" if value is None else value


class Works:
    """Rows (dicts) by file name in `tables`; `ends` the counted release ends."""

    def __init__(self, rng, places, times, trips):
        self.rng, self.places, self.times = rng, places, times
        self.tables = {n: [] for n in ("shifts.csv", "stations.csv", "loads.csv", "tallies.csv", "trips.csv",
                                       "releases.csv", "factors.csv")}
        self.ends, self.loading_ends, self.ties = [], [], rng.random() < 0.5
        self._stations()
        self.wanted = trips
        while len(self.tables["trips.csv"]) < trips:
            self._load(len(self.tables["loads.csv"]) + 1)
        self._factors()

    def _row(self, table, **values):
        self.tables[table].append({k: blank(v) for k, v in values.items()})

    def _stations(self):
        first = self.times.instant(self.times.start)
        for i in range(SHIFTS):
            self._row("shifts.csv", shift=f"S{i}", start=self.times.text(first + i * DAY),
                      end=self.times.text(first + i * DAY + 12 * HOUR), dredger="Heron", tug="Plover",
                      skipper="Ana")
        for i, claim in enumerate(list(CLAIMS) + [None] + list(CLAIMS)[:3]):
            self._row("stations.csv", station=f"P{i}", shift=f"S{i % SHIFTS}", claim=claim)
        self.stations = {r["station"]: r["claim"] or None for r in self.tables["stations.csv"]}

    # -- loads ---------------------------------------------------------------------------------------------

    def _load(self, number):
        rng, name, end = self.rng, f"L-{number:04d}", self._end()
        departed = end - rng.randrange(40, 200) * MINUTE
        loaded = departed - rng.randrange(0, 120) * MINUTE
        before = [a for a in self.times.anchors if departed - 2 * DAY < a <= departed]
        if before and rng.random() < 0.4:
            loaded = rng.choice(before)
        barge = rng.choice(BARGES)
        row = {"load": name, "barge": barge["name"], "loading_end": self.times.text(loaded),
               "loading_start": self.times.text(loaded - rng.randrange(90, 400) * MINUTE)}
        if rng.random() < 0.08:
            row["loading_start"] = ""
        kind = rng.choices(["tally", "ullage", "both", "draughts", "stated", "nobody", "shell", "out"],
                           [26, 14, 26, 10, 12, 2, 2, 8])[0]
        getattr(self, "_by_" + kind)(row, name, barge)
        if kind not in ("stated", "nobody") and rng.random() < 0.12:
            row["left_before_m3"] = f"{rng.uniform(5, 60):.1f}"
        self._row("loads.csv", **row)
        self.loading_ends.append(loaded)
        self._trips(name, end, departed)

    def _end(self):
        while True:
            end = self.times.any()
            if self.ties or end not in self.ends:
                return end

    def _tally(self, name, stations, materials=None):
        for i, station in enumerate(stations):
            self._row("tallies.csv", load=name, station=station, bucket=self.rng.choice(list(BUCKETS)),
                      count=self.rng.randrange(8, 60), material=materials and materials[i],
                      part_buckets=self.rng.choice(["", "", "0.5", "1.25"]))

    def _by_tally(self, row, name, barge):
        """One to four lines of one to three claims; a line of a claim without material carries its own."""
        stations = self.rng.sample(sorted(self.stations), self.rng.choice([1, 1, 1, 2, 2, 3, 4]))
        materials = [None] * len(stations)
        if self.rng.random() < 0.35:
            row["material"] = self.rng.choice(["sand", "clay", "rock", "mud"])
        for i, station in enumerate(stations):
            of_claim = CLAIMS.get(self.stations[station])
            if of_claim is None and not row.get("material") or self.rng.random() < 0.15:
                materials[i] = self.rng.choice(["sand", "clay", "rock"])
        self._tally(name, stations, materials)

    def _dips(self, barge, outside=False):
        table = barge["ullage_table"]
        low, high = table[0][0], table[-1][0]
        while True:
            centre = high + 0.7 if outside else self.rng.uniform(low, high)
            count = self.rng.choice([1, 2, 3, 4, 6])
            dips = [round(abs(centre + self.rng.uniform(-0.2, 0.2)), 2) for _ in range(count)]
            mean = sum(dips) / count
            if all(abs(mean - u) > 1e-3 for u, _ in table) and (low < mean < high) != outside:
                return " ".join(f"{d:.2f}" for d in dips)

    def _by_ullage(self, row, name, barge):
        row["dips_m"] = self._dips(barge)
        row["material"] = self.rng.choice(["sand", "clay", "rock", "mud", ""])

    def _by_both(self, row, name, barge):
        self._by_tally(row, name, barge)
        row["dips_m"] = self._dips(barge)
        if self.rng.random() < 0.2:
            row["stated_hopper_m3"] = f"{self.rng.uniform(100, 500):.0f}"

    def _by_draughts(self, row, name, barge):
        rng = self.rng
        self._tally(name, rng.sample(sorted(self.stations), rng.choice([1, 2])))
        row["material"], row["dips_m"] = rng.choice(WHOLE), self._dips(barge)
        low, high = barge["hydrostatic_table"][0][0], barge["hydrostatic_table"][-1][0]
        for column, centre in (("light_draughts_m", low + 0.25), ("full_draughts_m", high - 0.4)):
            row[column] = " ".join(f"{centre + rng.uniform(-0.2, 0.2):.3f}" for _ in range(6))
        row["light_density_t_m3"], row["dock_density_t_m3"] = (f"{rng.uniform(1.0, 1.028):.4f}"
                                                               for _ in range(2))
        if rng.random() < 0.4:
            row["water_on_top_m"] = "0.05"

    def _by_stated(self, row, name, barge):
        rng = self.rng
        which = rng.choice(["hopper", "in_situ", "both"])
        row["material"] = rng.choice(["sand", "clay", "rock"])
        if which != "in_situ":
            row["stated_hopper_m3"] = f"{rng.uniform(100, 500):.1f}"
        if which != "hopper":
            row["stated_in_situ_m3"] = f"{rng.uniform(90, 420):.1f}"

    def _by_nobody(self, row, name, barge):
        """Nothing read, or dips outside the table and nothing else."""
        row["material"] = self.rng.choice(["sand", ""])
        if self.rng.random() < 0.6:
            row["dips_m"] = self._dips(barge, outside=True)

    def _by_shell(self, row, name, barge):
        """Hopper volume known, in-situ not: no bulking factor."""
        row["material"] = "shell"
        self._tally(name, self.rng.sample(sorted(self.stations), 1))

    def _by_out(self, row, name, barge):
        """Dips outside the table: the next method in the order counts."""
        (self._by_tally if self.rng.random() < 0.6 else self._by_stated)(row, name, barge)
        row["dips_m"] = self._dips(barge, outside=True)

    def _factors(self):
        """Revisions that take effect at a loading end exactly, or one millisecond after it."""
        rng = self.rng
        for material, factor, low, high, u in (("sand", "bulking", 1.1, 1.35, 0.03),
                                               ("sand", "fill", 0.8, 1.0, 0.02),
                                               ("clay", "situ_density", 1.6, 1.9, None),
                                               ("clay", "bulking", 1.3, 1.5, 0.05),
                                               ("rock", "fill", 0.6, 0.9, 0.05),
                                               ("clay", "fill", 0.8, 0.95, 0.01),
                                               ("sand", "bulking", 1.1, 1.3, 0.02)):
            if rng.random() < 0.6:
                at = rng.choice(self.loading_ends) + rng.choice([0, 1, -1])
                bucket = rng.choice(["", "ripping", "general"]) if factor == "fill" else ""
                self._row("factors.csv", **{"from": self.times.text(at)}, material=material, bucket=bucket,
                          factor=factor, value=f"{rng.uniform(low, high):.4f}", u=u, by="Caro",
                          why="closing survey",
                          accepted="2024-07-01")

    # -- trips and releases --------------------------------------------------------------------------------

    def _trips(self, load, end, departed):
        kind = self.rng.choices(["plain", "several", "single", "turned", "two", "waiting", "odd", "away"],
                                [58, 15, 7, 5, 5, 4, 4, 2])[0]
        getattr(self, "_make_" + kind)(load, end, departed)

    def _where(self):
        """ground, cell, lat, lon, position_u_m: blank as often as the trade leaves it blank."""
        rng = self.rng
        ground = rng.choice(["Gull", "Gull", "Tern"])
        out = {"ground": ground, "cell": None}
        if rng.random() < 0.85:
            u = rng.choice([None, None, 3, 5, 10, 25, 60])
            out["lat"], out["lon"] = self.places.position(ground, 10 if u is None else u)
            out["position_u_m"] = u
            out["cell"] = rng.choice(self.places.cells[ground]) if rng.random() < 0.3 else None
        elif rng.random() < 0.6:
            out["cell"] = rng.choice(self.places.cells[ground])
        elif rng.random() < 0.3:
            out["ground"] = None
        return out

    def _trip(self, load, departed, last, **more):
        name = f"T-{len(self.tables['trips.csv']) + 1:04d}"
        back = None if last is None else last + self.rng.randrange(20, 150) * MINUTE
        self._row("trips.csv", trip=name, load=load, tug=self.rng.choice(["Plover", ""]),
                  departed=self.times.text(departed), returned=self.times.text(back),
                  tow=self.rng.choice(["", "", "alongside"]), receiver_on=self.rng.choice(["", "barge"]),
                  **more)
        return name

    def _release_row(self, trip, end, share, where):
        rng, by_shut = self.rng, self.rng.random() < 0.3
        shut = end if by_shut else rng.choice([None, end + rng.randrange(0, 9) * MINUTE])
        self._row("releases.csv", release=f"R-{len(self.tables['releases.csv']) + 1:04d}", trip=trip,
                  doors_open=self.times.text(end - rng.randrange(2, 14) * MINUTE),
                  empty="" if by_shut else self.times.text(end), doors_shut=self.times.text(shut),
                  share=share, **where)
        self.ends.append(end)

    def _make_plain(self, load, end, departed, outcome=None):
        opened = None if self.rng.random() < 0.1 else end - self.rng.randrange(2, 25) * MINUTE
        self._trip(load, departed, end, release_start=self.times.text(opened),
                   release_end=self.times.text(end),
                   outcome=outcome or self.rng.choice(["", "released"]), **self._where())
        self.ends.append(end)

    def _make_several(self, load, end, departed):
        """Two or three openings; at most one share is blank and takes what the others leave."""
        rng, count = self.rng, self.rng.choice([2, 2, 3])
        shares = [round(rng.uniform(0.1, 0.45), 2) for _ in range(count)]
        if rng.random() < 0.6:
            shares[rng.randrange(count)] = None
        where = self._where()
        trip = self._trip(load, departed, end, outcome=rng.choice(["released", "", "part"]),
                          ground=where["ground"])
        for i, share in enumerate(shares):
            other = self._where()
            if other["ground"] != where["ground"]:
                other["ground"], other["cell"] = where["ground"], None
            if other.get("lat") and where["ground"] is None:
                other.pop("lat"), other.pop("lon")
            self._release_row(trip, end - (count - 1 - i) * 16 * MINUTE, share, other)

    def _make_single(self, load, end, departed):
        """One row of releases.csv: a quarter came back, or all went."""
        where = self._where()
        trip = self._trip(load, departed, end, outcome="part", ground=where["ground"])
        self._release_row(trip, end, self.rng.choice([None, 0.75]), where)

    def _make_turned(self, load, end, departed):
        """Turned back loaded, then out again; or landed."""
        self._trip(load, departed - 9 * HOUR, departed - 7 * HOUR, outcome="returned_loaded", ground="Gull")
        if self.rng.random() < 0.7:
            self._make_plain(load, end, departed)
        else:
            self._trip(load, departed, end, outcome="landed")

    def _make_two(self, load, end, departed):
        """One load in two trips, each with its share."""
        for share, back in ((0.4, 6 * HOUR), (0.6, 0)):
            where = self._where()
            trip = self._trip(load, departed - back, end - back, outcome="part", ground=where["ground"])
            self._release_row(trip, end - back, share, where)

    def _make_waiting(self, load, end, departed):
        """Full and not yet gone."""

    def _make_odd(self, load, end, departed):
        self._make_plain(load, end, departed, outcome=self.rng.choice(["emergency", "part"]))

    def _make_away(self, load, end, departed):
        """Cast off; nothing more on record."""
        self._trip(load, departed, None, ground="Tern")

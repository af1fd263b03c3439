#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The oracle against small books worked out by hand. Labels as in the list of check values: COMP computed
with a reference library, SEEN seen in a published text; everything else is arithmetic shown beside it."""
import json
import os
import tempfile
import unittest

from bookfolder import Folder
from clock import Clock
from limits import Board
from mercator import Mercator, utm
from polygon import Region
from volumes import Book, load_answer, releases, volumes

SQUARE = [[0, 0], [1000, 0], [1000, 1000], [0, 1000], [0, 0]]


def shifted(points, east=500000.0, north=5000000.0):
    return [[e + east, n + north] for e, n in points]


def feature(points, holes=(), **properties):
    rings = [shifted(points)] + [shifted(h) for h in holes]
    return {"type": "Feature", "properties": properties,
            "geometry": {"type": "Polygon", "coordinates": rings}}


def collection(*features):
    crs = {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::32760"}}
    return {"type": "FeatureCollection", "crs": crs, "features": list(features)}


def lat_lon(e, n):
    return "%.9f,%.9f" % utm(32760).inverse(500000 + e, 5000000 + n)


def small_book(**files):
    """A folder of one dredger, one barge, two materials, two claims; `files` replace or add."""
    held = {
        "harbour.json": {"name": "Test Haven", "epsg": 32760, "zone": "Pacific/Auckland",
                         "water_density_t_m3": 1.025},
        "materials.csv": "material,situ_density_t_m3,grain_density_t_m3,bulking_factor,bulking_factor_u,"
                         "fill_factor,fill_factor_u\nsand,2.0,2.65,1.25,0.05,0.9,0.02\n"
                         "clay,1.8,2.7,1.6,0.1,0.8,0\n",
        "plant.json": {"dredgers": [{"name": "D", "buckets": [{"name": "big", "capacity_m3": 4.0}]}],
                       "barges": [{"name": "B1", "capacity_m3": 400, "ullage_u_m": 0.03,
                                   "ullage_table": [[1.0, 300.0], [2.0, 200.0], [3.0, 120.0]]}]},
        "claims.geojson": collection(feature(SQUARE, claim="C1", material="sand"),
                                     feature(SQUARE, claim="C2", material="clay")),
        "grounds.geojson": collection(
            feature(SQUARE, ground="G", cell="", kind="ground"),
            feature([[400, 400], [600, 400], [600, 600], [400, 600], [400, 400]], ground="G", cell="W",
                    kind="exclusion"),
            feature([[0, 0], [500, 0], [500, 1000], [0, 1000], [0, 0]], ground="G", cell="west", kind="cell"),
            feature([[500, 0], [1000, 0], [1000, 1000], [500, 1000], [500, 0]], ground="G", cell="east",
                    kind="cell")),
        "shifts.csv": "shift,start,end,dredger\nS1,2025-09-01T06:00Z,2025-09-01T18:00Z,D\n",
        "stations.csv": "station,shift,claim\nT1,S1,C1\nT2,S1,C2\n",
    }
    held.update({name.replace("_json", ".json").replace("_csv", ".csv"): body
                 for name, body in files.items()})
    with tempfile.TemporaryDirectory() as path:
        for name, body in held.items():
            os.makedirs(os.path.dirname(os.path.join(path, name)), exist_ok=True)
            with open(os.path.join(path, name), "w", encoding="utf-8") as f:
                f.write(body if isinstance(body, str) else json.dumps(body))
        return Book(Folder(path))


def consent(*conditions, **members):
    return {"consents": [dict({"consent": "K", "year_starts": "09-15", "conditions": list(conditions)},
                              **members)]}


def quantity(number, window, value, **members):
    return dict({"condition": number, "kind": "quantity", "measure": "hopper_m3", "value": value,
                 "window": window},
                **members)


class Place(unittest.TestCase):
    def test_published_transverse_mercator_example(self):
        # IOGP Guidance Note 7-2 (2019) p. 54, British National Grid: E 577274.99, N 69740.50. SEEN
        grid = Mercator(-2, -100000, a=6377563.396, f=1 / 299.3249646, k0=0.9996012717, lat0=49,
                        false_easting=400000)
        e, n = grid.forward(50.5, 0.5)
        self.assertAlmostEqual(e, 577274.99, delta=0.01)
        self.assertAlmostEqual(n, 69740.50, delta=0.01)

    def test_utm_north_and_south(self):
        # PROJ 9.1.1: 630084.3105, 4833438.5488. COMP
        e, n = utm(32617).forward(43 + 38.554 / 60, -79 - 23.22833333333333 / 60)
        self.assertAlmostEqual(e, 630084.3105, delta=0.00005)
        self.assertAlmostEqual(n, 4833438.5488, delta=0.00005)
        # COMP
        self.assertAlmostEqual(utm(32760).forward(-41.28646, 174.776236)[0], 313783.9708, delta=0.00005)
        lat, lon = utm(32760).inverse(313783.9708, utm(32760).forward(-41.28646, 174.776236)[1])
        self.assertAlmostEqual(lat, -41.28646, delta=1e-9)
        self.assertAlmostEqual(lon, 174.776236, delta=1e-9)

    def test_distance_to_hole_exclusion_and_a_clipped_edge(self):
        square = [(0, 0), (100, 0), (100, 100), (0, 100)]
        region = Region([[square, [(40, 40), (60, 40), (60, 60), (40, 60)]]],
                        [[[[(90, 40), (120, 40), (120, 60), (90, 60)]]]])
        self.assertAlmostEqual(region.signed_distance(30, 50), 10)      # to the hole
        self.assertAlmostEqual(region.signed_distance(50, 50), -10)     # in the hole
        # to the exclusion, not to the edge behind it
        self.assertAlmostEqual(region.signed_distance(85, 50), 5)
        # In the exclusion on the old edge: nearest left is (90, 50) at 10, not the cut-away edge at 0.
        self.assertAlmostEqual(region.signed_distance(100, 50), -10)
        # Beside the exclusion's outer end, outside: nearest of the region is the corner (100, 40): hypot(15,
        # 10).
        self.assertAlmostEqual(region.signed_distance(115, 50), -(15**2 + 10**2) ** 0.5)


class Time(unittest.TestCase):
    def test_wall_times_and_spans(self):
        nz = Clock("Pacific/Auckland")      # 28 Sep 2025 02:00 → 03:00; 5 Apr 2026 03:00 → 02:00
        self.assertEqual(nz.parse("2025-09-28T01:30"), nz.parse("2025-09-27T13:30Z"))
        self.assertEqual(nz.parse("2025-10-31T23:59:59.999"), nz.parse("2025-10-31T10:59:59.999Z"))
        # 30 days before 27 Oct 10:00 is 27 Sep 10:00, an hour more than 30 × 24 h ago.
        self.assertEqual(nz.minus(nz.parse("2025-10-27T10:00"), 30, "days"), nz.parse("2025-09-26T22:00Z"))
        # One day before 29 Sep 02:30 does not exist: offset before the gap (+12) → 03:30 +13.
        self.assertEqual(nz.minus(nz.parse("2025-09-29T02:30"), 1, "days"), nz.parse("2025-09-27T14:30Z"))
        # One day before 6 Apr 02:30 happens twice: the earlier, +13.
        self.assertEqual(nz.minus(nz.parse("2026-04-06T02:30"), 1, "days"), nz.parse("2026-04-04T13:30Z"))
        self.assertFalse(nz.is_plain(nz.wall(nz.parse("2026-04-04T13:30Z"))))

    def test_months_clamp(self):
        utc = Clock("UTC")
        for now, n, then in (("2026-05-31", 1, "2026-04-30"), ("2026-05-31", 3, "2026-02-28"),
                             ("2028-02-29", 12, "2027-02-28"), ("2026-03-01", 12, "2025-03-01")):
            self.assertEqual(utc.minus(utc.parse(now), n, "months"), utc.parse(then))


class Loads(unittest.TestCase):
    LOADS = ("load,barge,material,loading_start,loading_end,dips_m,stated_hopper_m3,stated_in_situ_m3,"
             "left_before_m3\n")

    def methods(self, load, tallies="", **files):
        book = small_book(loads_csv=self.LOADS + load,
                          tallies_csv="load,station,bucket,count,material,part_buckets\n" +
                          tallies, **files)
        answer = load_answer(book, "L")
        return answer["counted_by"], {m["method"]: m for m in answer["methods"]}, book

    def check(self, got, **expected):
        for key, value in expected.items():
            self.assertAlmostEqual(got[key], value, places=6, msg=key)

    def test_tally_of_one_material(self):
        # 50 · 4.0 · 0.9 = 180; /1.25 = 144; wet 144·(2−1.025) + 1.025·180 = 140.4 + 184.5; dry
        # 144·2.65·0.975/1.625
        # u hopper 200·0.02 = 4; u in situ 180/1.25² · … : √((4/1.25)² + (144·0.05/1.25)²) = √(10.24 +
        # 33.1776)
        counted, got, _ = self.methods("L,B1,,2025-09-01T08:00Z,2025-09-01T10:00Z,,,,", "L,T1,big,48,,2\n")
        self.assertEqual(counted, "tally")
        self.check(got["tally"], hopper_m3=180, hopper_m3_u=4, in_situ_m3=144, in_situ_m3_u=43.4176**0.5,
                   wet_t=324.9, dry_t=144 * 2.65 * 0.6)

    def test_tally_of_two_claims_and_what_was_left(self):
        # sand 25·4·0.9 = 90, clay 25·4·0.8 = 80, left 17: V = 187. in situ = 187·(90/170/1.25 + 80/170/1.6)
        # = 187·(0.42352941 + 0.29411765) = 134.2; by claim 79.2 and 55; dredged hopper 170, in situ 72 + 50.
        counted, got, book = self.methods("L,B1,,2025-09-01T08:00Z,2025-09-01T10:00Z,,,,17",
                                          "L,T1,big,25,,\nL,T2,big,25,,\n")
        self.check(got["tally"], hopper_m3=187, in_situ_m3=134.2)
        parts = {c: e.value for c, e in book.volumes["L"].amounts("in_situ_m3")}
        self.check(parts, C1=79.2, C2=55)
        self.check({c: e.value for c, e in book.volumes["L"].dredged("in_situ_m3")}, C1=72, C2=50)
        self.check({c: e.value for c, e in book.volumes["L"].dredged("hopper_m3")}, C1=90, C2=80)

    def test_ullage_between_rows_with_its_scatter(self):
        # mean of 1.4 1.5 1.6 = 1.5 → 250, slope −100; s = 0.1, s²/3 = 0.003333; + 0.03² = 0.004233 → u
        # 6.506407
        counted, got, _ = self.methods("L,B1,sand,,2025-09-01T10:00Z,1.4 1.5 1.6,,,")
        self.assertEqual(counted, "ullage")
        self.check(got["ullage"], hopper_m3=250, hopper_m3_u=100 * (0.01 / 3 + 0.0009) ** 0.5, in_situ_m3=200)

    def test_dips_outside_the_table_give_no_volume(self):
        counted, got, _ = self.methods("L,B1,sand,,2025-09-01T10:00Z,3.4 3.5,,160,")
        self.assertEqual((counted, list(got)), ("stated", ["stated"]))
        self.check(got["stated"], hopper_m3=200, hopper_m3_u=160 * 0.05, in_situ_m3=160, in_situ_m3_u=0)

    def test_a_factor_revised_before_loading_end_and_for_one_bucket(self):
        factors = ("from,material,bucket,factor,value,u\n2025-09-01T10:00:00.000Z,sand,,bulking,1.5,0\n"
                   "2025-08-01,sand,big,fill,1.0,0\n2025-08-20,sand,,fill,0.5,0\n"
                   "2025-09-01T10:00:00.001Z,sand,,bulking,2,0\n")
        _, got, _ = self.methods("L,B1,,,2025-09-01T10:00Z,,,,", "L,T1,big,30,,\n", factors_csv=factors)
        self.check(got["tally"], hopper_m3=120, in_situ_m3=80)     # 30·4·1.0; /1.5

    def test_nobody_can_value_it(self):
        counted, got, book = self.methods("L,B1,sand,,2025-09-01T10:00Z,,,,")
        self.assertEqual((counted, got), (None, {}))


LOADS = "load,barge,material,loading_end,stated_hopper_m3\n"
TRIPS = "trip,load,outcome,release_start,release_end,ground,cell,lat,lon,position_u_m\n"


class Counting(unittest.TestCase):
    def test_releases_count_at_their_end_by_their_share(self):
        book = small_book(
            loads_csv=LOADS + "L1,B1,sand,2025-09-01T10:00Z,100\nL2,B1,sand,2025-09-01T10:00Z,200\n"
                      "L3,B1,sand,,400\n",
            # 23:59:59.999 in NZ
            trips_csv=TRIPS + "P1,L1,,2025-10-31T10:50Z,2025-10-31T10:59:59.999Z,G,west,,,\n"
                              "P2,L2,part,,,,,,,\n"
                              "P3,L2,returned_loaded,2025-10-31T12:00Z,2025-10-31T12:10Z,G,,,,\n",
            releases_csv="release,trip,doors_open,empty,doors_shut,ground,cell,share\n"
                         # 00:00 on 1 Nov
                         "R1,P2,2025-10-31T10:50Z,2025-10-31T11:00Z,2025-10-31T11:05Z,G,east,0.6\n"
                         "R2,P2,2025-10-31T11:20Z,,2025-10-31T11:30Z,G,west,\n")
        at = book.folder.time("2025-10-31T11:30Z")
        rows = {r["month"]: r for r in volumes(book, at, ["month"])}
        self.assertEqual(rows["2025-10"]["hopper_m3"], 100)
        self.assertEqual(rows["2025-11"]["hopper_m3"], 200)     # 0.6 and the 0.4 that it leaves
        self.assertEqual((rows["2025-11"]["trips"], rows["2025-11"]["loads"]), (1, 1))
        self.assertEqual(volumes(book, at - 1, [])[0]["hopper_m3"], 220)        # R2 is not empty yet
        self.assertEqual({r["cell"]: r["hopper_m3"] for r in volumes(book, at, ["cell"])},
                         {"west": 180, "east": 120})

    def test_one_bulking_factor_is_shared_and_the_dips_are_not(self):
        loads = "load,barge,material,loading_end,dips_m\nL1,B1,sand,2025-09-01T10:00Z,1.5\n" \
                "L2,B1,sand,2025-09-01T10:00Z,1.5\n"
        book = small_book(loads_csv=loads,
                          trips_csv=TRIPS
                          + "P1,L1,,,2025-10-01T10:00Z,,,,,\nP2,L2,,,2025-10-01T11:00Z,,,,,\n")
        row = volumes(book, book.folder.time("2025-12-01"))[0]
        self.assertAlmostEqual(row["hopper_m3_u"], 3 * 2**0.5)         # each 100·0.03 = 3, in squares
        # in situ 400: random 3·√2/1.25, shared 400·0.05/1.25 = 16
        self.assertAlmostEqual(row["in_situ_m3_u"], ((3 * 2**0.5 / 1.25) ** 2 + 16**2) ** 0.5)

    def test_verdicts(self):
        trips = TRIPS
        for name, place, u in (("in", (200, 500), 5), ("near", (15, 500), ""), ("wreck", (500, 500), 49),
                               ("wreck2", (500, 470), 20), ("out", (-20.5, 500), ""), ("none", None, "")):
            where = lat_lon(*place) if place else ","
            trips += f"{name},L1,,,2025-10-01T10:00Z,G,,{where},{u}\n"
        book = small_book(loads_csv=LOADS + "L1,B1,sand,2025-09-01T10:00Z,100\n", trips_csv=trips)
        got = {r["trip"]: r for r in releases(book, book.folder.time("2025-12-01"))}
        expected = {"in": ("inside", 200, "west"), "near": ("cannot_tell", 15, "west"),
                    "wreck": ("outside", -100, None), "wreck2": ("outside", -70, None),
                    "out": ("outside", -20.5, None), "none": ("cannot_tell", None, None)}
        for name, (verdict, distance, cell) in expected.items():
            self.assertEqual(got[name]["verdict"], verdict, name)
            if distance is not None:
                self.assertAlmostEqual(got[name]["distance_to_boundary_m"], distance, places=3)
            if not name.startswith("wreck"):
                self.assertEqual(got[name]["cell"], cell)


class Limits(unittest.TestCase):
    def board(self, *conditions, harbour=None, opening=None, **members):
        """Loads of 100 (C-less, sand) released in G at these ends (UTC): each named by its trip."""
        ends = ["2025-09-14T11:59:59.999Z",     # 14 Sep 23:59:59.999 +12: last ms before the consent year
                "2025-09-14T12:00Z",            # 15 Sep 00:00
                "2025-09-30T11:00Z",            # 1 Oct 00:00 +13
                "2026-01-30T21:00Z",            # 31 Jan 10:00
                "2026-02-27T21:00Z"]            # 28 Feb 10:00
        loads = LOADS + "".join(f"L{i},B1,sand,2025-09-01T10:00Z,100\n" for i in range(len(ends)))
        trips = TRIPS + "".join(f"P{i},L{i},,{e[:10]}T00:00Z,{e},G,{'west' if i % 2 else 'east'},,,\n"
                                for i, e in enumerate(ends))
        files = {"consents_json": consent(*conditions, **members)}
        if opening:
            files["opening_csv"] = "consent,condition,from,to,value,u,source,member\n" + opening
        book = small_book(loads_csv=loads, trips_csv=trips, **files)
        if harbour:
            book.folder.harbour.update(harbour)
        return Board(book), book.folder

    def rows(self, as_at, *conditions, **more):
        board, folder = self.board(*conditions, **more)
        return board.rows(folder.time(as_at))

    def test_consent_year_and_month_begin_at_local_midnight(self):
        year, month = self.rows("2025-10-01T00:00+13:00", quantity("1", {"kind": "consent_year"}, 150),
                                quantity("2", {"kind": "calendar", "unit": "month"}, 500))
        self.assertEqual((year["used"], year["headroom"]), (200, -50))
        self.assertEqual(year["window_start"], "2025-09-15T00:00:00.000+12:00")
        self.assertEqual(year["first_over"], "2025-10-01T00:00:00.000+13:00")
        self.assertEqual(year["p_over"], 1)
        self.assertEqual((month["used"], month["window_end"]), (100, "2025-11-01T00:00:00.000+13:00"))

    def test_rolling_months_clamp_and_leave_out_their_first_instant(self):
        # 1 month before 28 Feb 10:00 is 28 Jan 10:00: holds 31 Jan. 1 month before 31 Mar 10:00 is 28 Feb
        # 10:00, open.
        rolling = quantity("1", {"kind": "rolling", "n": 1, "unit": "months"}, 1000)
        self.assertEqual(self.rows("2026-02-28T10:00+13:00", rolling)[0]["used"], 200)
        self.assertEqual(self.rows("2026-03-31T10:00+13:00", rolling)[0]["used"], 0)
        self.assertEqual(self.rows("2026-03-31T09:59:59.999+13:00", rolling)[0]["used"], 100)

    def test_cells_share_reserve_and_floor(self):
        cell, share, floor, reserve = (
            quantity("1", {"kind": "term"}, 250, each_of="cell"),
            quantity("2", {"kind": "term"}, None, each_of="cell", share_of_total=0.25, of=1000),
            quantity("3", {"kind": "term"}, None, each_of="cell", share_of_total=0.55, of={"floor": 450}),
            quantity("4", {"kind": "term"}, 500, reserve={"value": 100, "unlocked_by": {"on": "2026-02-01"}}))
        rows = self.rows("2026-03-01", cell, share, floor, reserve)
        got = {(r["condition"], r.get("each", {}).get("cell")): r for r in rows}
        self.assertEqual([got["1", c]["used"] for c in ("west", "east")], [200, 300])
        self.assertEqual(got["1", "east"]["first_over"], "2026-02-28T10:00:00.000+13:00")
        self.assertEqual(got["2", "east"]["used"], 0.3)
        self.assertEqual((got["3", "east"]["used"], got["3", "east"]["limit"]), (0.6, 0.55))
        # below the floor till then
        self.assertEqual(got["3", "east"]["first_over"], "2026-02-28T10:00:00.000+13:00")
        self.assertEqual((got["4", None]["limit"], got["4", None]["first_over"]), (500, None))
        self.assertEqual(len(rows), 7)

    def test_opening_counts_at_its_end_and_always_in_the_term(self):
        opening = "K,1,2025-06-01,2025-09-01,40,8,old book,\nK,2,2025-06-01,2025-09-01,40,8,old book,\n"
        term, rolling = (quantity("1", {"kind": "term"}, 1000),
                         quantity("2", {"kind": "rolling", "n": 30, "unit": "days"}, 1000))
        rows = self.rows("2025-09-30T23:59:59.998+13:00", term, rolling, opening=opening,
                         commences="2025-09-15")
        # rolling from 31 Aug 23:59:59.998 +12: the last ms counts
        self.assertEqual([r["used"] for r in rows], [140, 240])
        self.assertEqual(rows[0]["used_u"], 8)
        rows = self.rows("2025-09-30T23:59:59.999+13:00", term, rolling, opening=opening,
                         commences="2025-09-15")
        self.assertEqual([r["used"] for r in rows], [140, 200])

    def test_versions_trips_days_mean_phase_campaign(self):
        conditions = [
            quantity("1", {"kind": "term"}, 500, to="2025-10-01"),
            quantity("1", {"kind": "term"}, 250, **{"from": "2025-10-01"}),
            quantity("2", {"kind": "mean", "years": 2}, 200, measure="trips"),
            quantity("3", {"kind": "phase", "from": "2025-09-15", "to": "2025-10-01"}, 50),
            quantity("4", {"kind": "campaign"}, 9), quantity("5", {"kind": "trip"}, 99.9999),
            quantity("6", {"kind": "calendar", "unit": "year"}, 3, measure="days", op="at_least")]
        campaigns = {"campaigns": [{"name": "a", "from": "2025-09-01", "to": "2025-09-15"},
                                   {"name": "b", "from": "2026-01-01", "to": "2026-02-01"}]}
        rows = {r["condition"]: r for r in self.rows("2026-03-01", *conditions, harbour=campaigns)}
        self.assertEqual((rows["1"]["limit"], rows["1"]["used"]), (250, 500))
        self.assertEqual(rows["1"]["first_over"], "2025-10-01T00:00:00.000+13:00")
        self.assertEqual(rows["2"]["used"], 2.5)
        self.assertEqual((rows["3"]["used"], rows["3"]["first_over"]), (100, "2025-09-15T00:00:00.000+12:00"))
        self.assertEqual((rows["4"]["used"], rows["4"]["first_over"]), (100, "2025-09-14T23:59:59.999+12:00"))
        self.assertEqual((rows["5"]["used"], rows["5"]["first_over"]), (100, "2025-09-14T23:59:59.999+12:00"))
        self.assertEqual((rows["6"]["used"], rows["6"]["first_over"]), (2, None))


if __name__ == "__main__":
    unittest.main()

# SPDX-License-Identifier: GPL-3.0-or-later
"""The bed held against conditions of kind surface, from grids that came with surveys."""
import json

from trade import HARBOUR, Trade, feature, features

MAP = {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::32760"}}
WEST, SOUTH = 711640, 5497370
END = ("--as-at", "2025-12-05T00:00+13:00")
HEADER = "survey,file,surveyed_on,kind,positive,offset_m,u_m,s44_order\n"


def box(left, bottom, right, top):
    corners = [(left, bottom), (right, bottom), (right, top), (left, top), (left, bottom)]
    return [[[WEST + e, SOUTH + n] for e, n in corners]]


def ascii_grid(level, columns=40, rows=20, step=1.0, left=0.0, bottom=0.0):
    """level(east, north) at the middle of each pixel, metres from the corner; None where nothing was surveyed."""
    lines = [f"ncols {columns}", f"nrows {rows}", f"xllcorner {WEST + left}", f"yllcorner {SOUTH + bottom}",
             f"cellsize {step}", "NODATA_value -9999"]
    for row in reversed(range(rows)):
        at = [level(left + (c + 0.5) * step, bottom + (row + 0.5) * step) for c in range(columns)]
        lines.append(" ".join("-9999" if v is None else f"{v:.4f}" for v in at))
    return "\n".join(lines) + "\n"


def share(test, area, level, step=1.0, columns=40, rows=20):
    """The share of a box for which a test of a level holds, pixel by pixel; `test` of None: not surveyed."""
    left, bottom, right, top = area
    m2 = 0.0
    for c in range(columns):
        for r in range(rows):
            wide = max(0.0, min(right, (c + 1) * step) - max(left, c * step))
            high = max(0.0, min(top, (r + 1) * step) - max(bottom, r * step))
            if test(level((c + 0.5) * step, (r + 0.5) * step)):
                m2 += wide * high
    return m2 / ((right - left) * (top - bottom))


# Claim Q1 cuts pixels on every side.
Q1 = (2.25, 3.5, 38.6, 17.1)
HOLE = (30, 5, 35, 12)
PLAIN = {"plant.json": {"barges": [{"name": "Pipi", "capacity_m3": 400}]}, "materials.csv": "material\nsand\n",
         "loads.csv": "load,barge,material,loading_end,stated_hopper_m3\nL-1,Pipi,sand,2025-11-09T08:00+13:00,300\n",
         "trips.csv": "trip,load,ground\nT-1,L-1,Deep Hole\n"}


def dug(east, north):
    """A bed at -9.6 m and a trench, the eastern part of it 0.5 m too deep."""
    return -9.6 - (0.8 if 10 <= east < 12.5 else 0.35 if 12.5 <= east < 16 else 0)


class Surfaces(Trade):
    def book_with(self, conditions, surveys, grids, **more):
        claims = features(feature(box(*Q1), claim="Q1", target_level_m=-9.6, allowance_m=0.3),
                          feature(box(60, 0, 80, 20), claim="Q2", target_level_m=-9.6, allowance_m=0.3))
        grounds = features(feature(box(0, 0, 40, 20), ground="Deep Hole", kind="ground"),
                           feature(box(*HOLE), ground="Deep Hole", cell="wreck", kind="exclusion"))
        claims["crs"] = grounds["crs"] = MAP
        consent = {"consent": "TC-1", "conditions": [{"text": f"bed {c['condition']}", "kind": "surface", **c}
                                                     for c in conditions]}
        return self.new_of({"harbour.json": HARBOUR, "claims.geojson": claims, "grounds.geojson": grounds,
                            "consents.json": {"consents": [consent]}, "surveys.csv": HEADER + surveys,
                            **{f"surveys/{n}": g for n, g in grids.items()}, **more})

    def judged(self, *words):
        rows = self.ask("conditions", self.book, *(words or END))["conditions"]
        return {row["condition"]: row for row in rows}

    def test_a_claim_is_judged_by_every_survey_that_shows_it(self):
        self.book_with([{"condition": "1", "claim": "Q1", "no_deeper_than_m": -9.6, "allowance_m": 0.3},
                        {"condition": "2", "claim": "Q1", "allowance_m": 0.9},
                        {"condition": "3", "claim": "Q1", "no_deeper_than_m": -9.9, "tolerance_share": 0.17},
                        {"condition": "4", "claim": "Q2", "allowance_m": 0.3}],
                       "SV-0,before.asc,2025-10-01,before,up,,0.05,\nSV-1,one.asc,2025-11-10,progress,up,,0.05,\n"
                       "SV-2,two.asc,2025-11-28,after,down,,0.05,\n",
                       {"before.asc": ascii_grid(lambda e, n: -20), "one.asc": ascii_grid(dug),
                        "two.asc": ascii_grid(lambda e, n: -dug(e, n))})
        rows = self.judged()
        self.assertEqual(["breached", "within", "within", "nothing_yet"], [rows[n]["state"] for n in "1234"])
        self.assertIn("no survey", rows["4"]["why"])
        found = rows["1"]["findings"]
        self.assertEqual([("SV-1", "claim Q1", "2025-11-10T23:59:59.999+13:00"),
                          ("SV-2", "claim Q1", "2025-11-28T23:59:59.999+13:00")],
                         [(f["survey"], f["place"], f["at"]) for f in found])
        past = share(lambda level: level <= -9.9 - 0.1, Q1, dug)
        doubt = share(lambda level: -10.0 < level < -9.8, Q1, dug)
        for one in found:
            self.assertAlmostEqual(past, one["bed"]["past_share"], places=6)
            self.assertAlmostEqual(past + doubt, one["bed"]["possible_share"], places=6)
            self.assertAlmostEqual(0.5, one["bed"]["worst"]["past_m"], places=4)
        self.assertIn("of its 494 m² is past it", found[0]["why"])
        self.assertTrue(found[0]["why"].startswith("0.50 ± 0.05 m past it at most"))

    def test_what_is_not_sure_is_not_compliance(self):
        grids = {"all.asc": ascii_grid(dug), "part.asc": ascii_grid(lambda e, n: None if e > 30 else -9.6),
                 "letter.asc": "the surveyor's letter\n"}
        for line, words in (("SV-1,all.asc,2025-11-10,progress,up,,0.3,", "nearer to it than 2 u"),
                            ("SV-1,part.asc,2025-11-10,progress,up,,0.05,", "was not surveyed"),
                            ("SV-1,all.asc,2025-11-10,progress,up,,,", "u_m or s44_order"),
                            ("SV-1,all.asc,2025-11-10,progress,,,0.05,", "which way its numbers grow"),
                            ("SV-1,letter.asc,2025-11-10,progress,up,,0.05,", "not a grid that can be read")):
            name = line.split(",")[1]
            said = self.book_with([{"condition": "1", "claim": "Q1", "allowance_m": 0.9}], line + "\n",
                                  {name: grids[name]})
            noted = words in said["notes"][0]["what"] if said["notes"] else False
            self.assertEqual(words not in ("nearer to it than 2 u", "was not surveyed"), noted, said["notes"])
            row = self.judged()["1"]
            self.assertEqual("cannot_tell", row["state"], line)
            self.assertIn(words, row["findings"][0]["why"])
            self.tearDown()
            self.setUp()

    def test_an_order_of_s44_stands_in_for_an_uncertainty(self):
        # Special order at 9.6 m: TVU 0.26 m, so 2 u is 0.265 m; -9.6 m keeps -9.9 m by 0.3 m.
        self.book_with([{"condition": "1", "claim": "Q1", "no_deeper_than_m": -9.9}],
                       "SV-1,a.asc,2025-11-10,progress,up,,,Special\nSV-2,a.asc,2025-11-11,progress,up,,,1a\n",
                       {"a.asc": ascii_grid(lambda e, n: -9.6)})
        self.assertEqual(["complied", "cannot_tell"], [f["state"] for f in self.judged()["1"]["findings"]])

    def test_a_ground_may_not_rise_over_its_baseline_outside_its_exclusions(self):
        def before(east, north):
            return -20 - 0.05 * east

        def mound(height, left):
            return lambda e, n: before(e, n) + (height if left <= e < left + 3 and 6 <= n < 9 else 0)

        conditions = [{"condition": "1", "ground": "Deep Hole", "no_rise_over_baseline_m": 1},
                      {"condition": "2", "ground": "Deep Hole", "no_rise_over_baseline_m": 1, "baseline_survey": "SV-1"},
                      {"condition": "3", "applies": {"activity": "release"}, "least_depth_m": 19.5},
                      {"condition": "4", "ground": "Deep Hole", "no_rise_over_baseline_m": 1, "baseline_survey": "SV-9"}]
        self.book_with(conditions,
                       "SV-0,zero.asc,2025-10-01,before,up,,0.05,\nSV-1,one.asc,2025-11-10,progress,up,,0.05,\n"
                       "SV-2,two.asc,2025-11-28,progress,up,,0.05,\n",
                       {"zero.asc": ascii_grid(before, 30, 20, 2.0, -3, -4), "one.asc": ascii_grid(mound(1.5, 31)),
                        "two.asc": ascii_grid(mound(1.5, 20))})
        rows = self.judged()
        # On the wreck nothing is judged; beside it a mound of 9 m² is.
        self.assertEqual(["complied", "breached"], [f["state"] for f in rows["1"]["findings"]])
        self.assertAlmostEqual(9, rows["1"]["findings"][1]["bed"]["past_m2"], places=6)
        self.assertAlmostEqual(800 - 35, rows["1"]["findings"][1]["bed"]["area_m2"], places=6)
        self.assertEqual(["SV-2"], [f["survey"] for f in rows["2"]["findings"]])
        # At 20 to 23 m the bed lies at -21.1 m, the mound at -19.6 m: nearer to 19.5 m of depth than 2 u.
        self.assertEqual(["complied", "cannot_tell"], [f["state"] for f in rows["3"]["findings"]])
        self.assertIn("no survey SV-9", rows["4"]["findings"][0]["why"])

    def test_the_return_of_its_month_holds_it_against_the_works(self):
        self.book_with([{"condition": "1", "claim": "Q1", "no_deeper_than_m": -9.9}],
                       "SV-1,one.asc,2025-11-30,progress,up,,0.05,\n", {"one.asc": ascii_grid(dug)})
        said = self.ask("return", self.book, "--period", "2025-11", "--out", self.path("november"), *END)
        self.assertIn("claim Q1 by survey SV-1", said["reasons"][0])
        with open(self.path("november/return.json"), encoding="utf-8") as file:
            compliance = json.load(file)["compliance"]
        self.assertEqual([], compliance["conditions_not_judged_here"])
        self.assertEqual([("1", 1)], [(c["condition"], c["breached"]) for c in compliance["conditions"]])
        self.assertEqual("SV-1", compliance["conditions"][0]["failed"][0]["survey"])
        # Nobody has shown since that it is mended.
        december = self.judged("--period", "2025-12", "--as-at", "2026-01-05T00:00+13:00")["1"]
        self.assertEqual(("breached", ["2025-11-30T23:59:59.999+13:00"]),
                         (december["state"], [f["at"] for f in december["findings"]]))
        self.assertTrue(december["findings"][0]["why"].startswith("since before"))
        self.assertEqual("nothing_yet", self.judged("--period", "2025-10", *END)["1"]["state"])
        # Before the end of its day the survey has not happened.
        self.assertEqual("nothing_yet", self.judged("--as-at", "2025-11-30T18:00+13:00")["1"]["state"])

    def test_a_survey_that_shows_nothing_of_a_place_tells_nothing(self):
        blank = ascii_grid(lambda e, n: -9.6 if e > 39 else None)
        self.book_with([{"condition": "1", "claim": "Q1", "no_deeper_than_m": -11},
                        {"condition": "2", "claim": "Q1", "no_rise_over_baseline_m": 1}],
                       "SV-A,blank.asc,2025-09-01,before,up,,0.05,\nSV-B,all.asc,2025-09-02,before,up,,0.05,\n"
                       "SV-1,all.asc,2025-11-10,progress,up,,0.05,\nSV-2,blank.asc,2025-11-20,progress,up,,0.05,\n",
                       {"all.asc": ascii_grid(dug), "blank.asc": blank})
        rows = self.judged()
        self.assertEqual([["SV-1"], ["SV-1"]], [[f["survey"] for f in rows[n]["findings"]] for n in "12"])
        self.assertEqual(["within", "within"], [rows[n]["state"] for n in "12"])

    def test_a_later_survey_tells_what_an_earlier_one_could_not(self):
        half = ascii_grid(lambda e, n: -9.6 if e < 24 else None)
        self.book_with([{"condition": "1", "claim": "Q1", "no_deeper_than_m": -11}],
                       "SV-1,half.asc,2025-11-10,progress,up,,0.05,\nSV-2,all.asc,2025-11-20,progress,up,,0.05,\n",
                       {"half.asc": half, "all.asc": ascii_grid(dug)})
        self.assertEqual("cannot_tell", self.judged("--as-at", "2025-11-15T00:00+13:00")["1"]["state"])
        row = self.judged()["1"]
        self.assertEqual(("within", ["cannot_tell", "complied"]), (row["state"], [f["state"] for f in row["findings"]]))

    def test_a_baseline_is_earlier_than_what_it_is_held_against(self):
        low = ascii_grid(lambda e, n: -22)
        for name in ({}, {"baseline_survey": "SV-8"}):
            self.book_with([{"condition": "1", "ground": "Deep Hole", "no_rise_over_baseline_m": 1, **name}],
                           "SV-1,high.asc,2025-11-10,progress,up,,0.05,\nSV-8,low.asc,2025-11-20,before,up,,0.05,\n"
                           "SV-9,high.asc,2025-11-28,progress,up,,0.05,\n",
                           {"low.asc": low, "high.asc": ascii_grid(lambda e, n: -20)})
            found = {f["survey"]: f["state"] for f in self.judged()["1"]["findings"]}
            self.assertEqual({"SV-9": "breached", **({} if name else {"SV-1": "cannot_tell"})}, found)
            self.tearDown()
            self.setUp()

    def test_a_file_that_is_cut_short_leaves_all_else_judged(self):
        whole = ascii_grid(dug)
        self.book_with([{"condition": "1", "claim": "Q1", "no_deeper_than_m": -9.9},
                        {"condition": "2", "claim": "Q1", "no_rise_over_baseline_m": 1}],
                       "SV-0,cut.asc,2025-10-01,before,up,,0.05,\nSV-1,cut.asc,2025-11-10,progress,up,,0.05,\n"
                       "SV-2,one.asc,2025-11-20,progress,up,,0.05,\n", {"cut.asc": whole[:len(whole) // 2], "one.asc": whole})
        rows = self.judged()
        self.assertEqual(["cannot_tell", "breached"], [f["state"] for f in rows["1"]["findings"]])
        self.assertIn("cut short", rows["1"]["findings"][0]["why"])
        self.assertIn("cut short", rows["2"]["findings"][0]["why"])
        self.assertIn("no earlier survey", rows["2"]["findings"][1]["why"])

    def test_a_named_survey_without_a_day_cannot_be_told_and_a_book_without_a_map_says_so(self):
        self.book_with([{"condition": "1", "claim": "Q1", "no_deeper_than_m": -9.9, "survey": "SV-1"}],
                       "SV-1,one.asc,,progress,up,,0.05,\n", {"one.asc": ascii_grid(dug)})
        row = self.judged()["1"]
        self.assertEqual("cannot_tell", row["state"])
        self.assertIn("day of survey SV-1 is not recorded", row["findings"][0]["why"])
        self.tearDown()
        self.setUp()
        consent = {"consent": "TC-1", "conditions": [{"condition": "1", "kind": "surface", "no_deeper_than_m": -9.9}]}
        self.new_of({"harbour.json": {**HARBOUR, "epsg": None}, "consents.json": {"consents": [consent]}})
        self.assertIn("no map", self.judged()["1"]["why"])

    def test_cells_are_those_of_the_grounds_named_and_each_of_a_name(self):
        grounds = features(feature(box(0, 0, 20, 20), ground="A", kind="ground"),
                           feature(box(0, 0, 10, 20), ground="A", cell="C1", kind="cell"),
                           feature(box(20, 0, 40, 20), ground="B", kind="ground"),
                           feature(box(20, 0, 30, 20), ground="B", cell="C1", kind="cell"))
        grounds["crs"] = MAP
        bed = {"a.asc": ascii_grid(lambda e, n: -15 if 12 <= e < 15 or 22 <= e < 25 else -20)}
        self.book_with([{"condition": "1", "least_depth_m": 18, "applies": {"cells": ["C1"]}},
                        {"condition": "2", "least_depth_m": 18, "applies": {"grounds": ["A"], "cells": ["C1"]}},
                        {"condition": "3", "least_depth_m": 18, "applies": {"grounds": ["A"]}}],
                       "SV-1,a.asc,2025-11-10,progress,up,,0.05,\n", bed, **{"grounds.geojson": grounds})
        rows = self.judged()
        self.assertEqual([("cell C1 of A", "complied"), ("cell C1 of B", "breached")],
                         [(f["place"], f["state"]) for f in rows["1"]["findings"]])
        self.assertEqual([("cell C1 of A", "complied")], [(f["place"], f["state"]) for f in rows["2"]["findings"]])
        self.assertEqual([("ground A", "breached")], [(f["place"], f["state"]) for f in rows["3"]["findings"]])

    def test_the_version_in_force_on_the_day_judges(self):
        self.book_with([{"condition": "1", "claim": "Q1", "no_deeper_than_m": -11, "to": "2025-11-20T00:00+13:00"},
                        {"condition": "1", "claim": "Q1", "no_deeper_than_m": -9.9, "from": "2025-11-20T00:00+13:00"}],
                       "SV-1,one.asc,2025-11-10,progress,up,,0.05,\nSV-2,one.asc,2025-11-28,progress,up,,0.05,\n",
                       {"one.asc": ascii_grid(dug)})
        self.assertEqual(["complied", "breached"], [f["state"] for f in self.judged()["1"]["findings"]])

    def test_a_surface_can_be_tried_before_it_is_written(self):
        self.book_with([], "SV-1,one.asc,2025-11-10,progress,up,,0.05,\n", {"one.asc": ascii_grid(dug)})
        self.folder({"tried.json": {"condition": "9", "kind": "surface", "claim": "Q1", "no_deeper_than_m": -9.9}},
                    "try")
        said = self.ask("try", self.book, "--condition", self.path("try/tried.json"), "--from", "2025-11-01T00:00+13:00", *END)
        self.assertEqual((1, 1, "surveyed places"), (said["times"], said["looked_at"], said["of"]))
        self.assertEqual("claim Q1 by survey SV-1", said["passes"][0]["what"])

    def test_a_condition_without_a_level_is_not_judged(self):
        self.book_with([{"condition": "1", "claim": "Q1", "tolerance_share": 0.1}], "", {})
        row = self.judged()["1"]
        self.assertEqual("not_judged", row["state"])
        self.assertIn("neither a level nor an allowance", row["why"])

    def test_a_bed_that_is_past_it_holds_releases_there_where_the_consent_says_stop(self):
        def mounded(height):
            return ascii_grid(lambda e, n: -20 + (height if 10 <= e < 13 and 6 <= n < 9 else 0))

        rise = {"ground": "Deep Hole", "no_rise_over_baseline_m": 1}
        stop = {"responses": [{"action": "stop", "to": "Tern Council"}]}
        surveys = ("SV-0,zero.asc,2025-10-01,before,up,,0.05,\nSV-1,one.asc,2025-11-10,progress,up,,0.05,\n"
                   "SV-2,two.asc,2025-11-20,progress,up,,0.05,\nSV-3,three.asc,2025-11-28,progress,up,,0.05,\n")
        grids = {"zero.asc": mounded(0), "one.asc": mounded(0.5), "two.asc": mounded(2), "three.asc": mounded(1.05)}
        self.book_with([{"condition": "1", **rise, **stop}, {"condition": "2", **rise}], surveys, grids, **PLAIN)

        def held(at, *words):
            said = self.ask("release-check", self.book, "--load", "L-1", "--at", at, "--as-at", at, *words)
            return [(r["condition"], r["state"], r["until"]) for r in said["reasons"] if r["condition"] in "12"]

        self.assertEqual([], held("2025-11-10T12:00+13:00"))
        self.assertEqual([], held("2025-11-20T12:00+13:00"))
        self.assertEqual([("1", "hold", None)], held("2025-11-21T12:00+13:00"))
        # A survey that cannot tell lifts nothing.
        self.assertEqual([("1", "hold", None)], held("2025-11-30T12:00+13:00"))

    def test_a_hold_by_the_bed_outlives_the_version_and_keeps_the_cell_from_being_offered(self):
        grounds = features(feature(box(0, 0, 40, 20), ground="Deep Hole", kind="ground"),
                           feature(box(0, 0, 20, 20), ground="Deep Hole", cell="C1", kind="cell"),
                           feature(box(20, 0, 40, 20), ground="Deep Hole", cell="C2", kind="cell"))
        grounds["crs"] = MAP
        stop = {"least_depth_m": 18, "applies": {"activity": "release", "cells": ["C1", "C2"]},
                "responses": [{"action": "stop"}]}
        each = {"condition": "9", "kind": "quantity", "measure": "trips", "value": 10, "each_of": "cell",
                "window": {"kind": "term"}}
        self.book_with([{"condition": "1", **stop, "to": "2025-11-20T00:00+13:00"},
                        {"condition": "1", **stop, "from": "2025-11-20T00:00+13:00"}, each],
                       "SV-1,a.asc,2025-11-10,progress,up,,0.05,\n",
                       {"a.asc": ascii_grid(lambda e, n: -15 if 2 <= e < 5 else -20)},
                       **{"grounds.geojson": grounds, **PLAIN})

        def asked(at, *words):
            said = self.ask("release-check", self.book, "--load", "L-1", "--at", at, "--as-at", at, *words)
            return said["due_cell"], [(r["state"], r["until"]) for r in said["reasons"] if r["condition"] == "1"]

        self.assertEqual(("C2", [("hold", None)]), asked("2025-11-15T12:00+13:00", "--cell=C1"))
        self.assertEqual(("C2", [("hold", None)]), asked("2025-11-25T12:00+13:00", "--cell=C1"))
        self.assertEqual(("C2", []), asked("2025-11-25T12:00+13:00", "--cell=C2"))
        self.assertEqual(("C2", [("cannot_tell", None)]), asked("2025-11-25T12:00+13:00"))

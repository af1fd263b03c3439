# SPDX-License-Identifier: GPL-3.0-or-later
"""What is kept and noted, what is already held, and that a book taken out and in again is the same."""
import copy
import os
import subprocess

from trade import CLAIMS, CONDITIONS, CONSENT, DEVICE, HARBOUR, NOW, Trade, changed, season, table

SEASON = season()


class FolderTakenIn(Trade):
    def noted(self, words, **changes):
        said = self.new(**changes)
        found = [n for n in said["notes"] if words in n["what"]]
        self.assertTrue(found, f"no note says {words!r}: {said['notes']}")

    def test_a_trip_that_outlasts_its_shift_is_kept_and_noted_on_one_line(self):
        self.folder(SEASON)
        done = self.sbk("new", self.book, "--from", self.path("folder"), *DEVICE, *NOW)
        self.assertEqual(0, done.returncode)
        self.assertEqual(1, len(done.stderr.strip().splitlines()), done.stderr)
        self.assertIn("T-1 outlasts shift S-1", done.stderr)

    def test_shifts_of_one_dredger_that_overlap_are_noted(self):
        self.noted("overlap", shifts_csv=SEASON["shifts.csv"].replace("2025-11-01T00:00", "2025-11-03T07:00"))

    def test_a_shift_signed_before_it_ended_is_noted(self):
        self.noted("signed", shifts_csv=changed(SEASON["shifts.csv"], "S-1", signed_by="Ana",
                                                signed_at="2025-10-31T20:00+13:00"))

    def test_a_shift_that_does_not_close_is_noted(self):
        self.noted("does not close",
                   stations_csv=SEASON["stations.csv"].replace("2025-11-03T12:00+13:00,2025-11-03T18:00",
                                                               "2025-11-03T14:00+13:00,2025-11-03T18:00"))

    def test_a_logged_cell_where_the_position_is_not_is_noted(self):
        self.noted("T-2", trips_csv=SEASON["trips.csv"].replace("Hole,E,-40.595,179.635,5,1.1",
                                                                "Hole,W,-40.595,179.635,5,1.1"))

    def test_a_load_over_the_capacity_and_dips_outside_the_table_are_noted(self):
        self.noted("L-3", loads_csv=SEASON["loads.csv"].replace(",320,", ",700,"))
        os.remove(self.book)
        self.noted("dips outside the table", loads_csv=SEASON["loads.csv"].replace("2.0 2.0", "2.0 4.5"))

    def test_a_map_whose_scale_is_off_is_noted(self):
        self.noted("scale", harbour_json={**HARBOUR, "epsg": 3857})

    def test_a_byte_order_mark_and_cr_lf_are_allowed(self):
        crlf = {name: b"\xef\xbb\xbf" + body.replace("\n", "\r\n").encode()
                for name, body in SEASON.items() if name.endswith(".csv")}
        self.new_of({**SEASON, **crlf})
        self.assertEqual({}, self.write("add", self.book, "--from", self.folder(SEASON, "plain"))["added"])

    def test_columns_stand_in_any_order_and_may_be_absent(self):
        rows = [line.split(",") for line in SEASON["people.csv"].splitlines()]
        self.new(people_csv="".join(",".join(reversed(r)) + "\n" for r in rows))
        self.assertEqual({}, self.write("add", self.book, "--from", self.folder(SEASON, "plain"))["added"])

    def test_text_is_trimmed_at_both_ends_and_blank_is_not_recorded(self):
        self.new(people_csv="name,role\n  Ana \t, skipper \nZoe,   \n")
        self.assertEqual("skipper", self.ask("show", self.book, "person", "Ana")["fields"]["role"])
        self.assertIsNone(self.ask("show", self.book, "person", "Zoe")["fields"]["role"])

    def test_the_same_folder_added_twice_adds_nothing(self):
        self.new()
        for _ in range(2):
            said = self.write("add", self.book, "--from", self.path("folder"))
            self.assertEqual(({}, None), (said["added"], said["entry"]))
            self.assertEqual(4, said["already_held"]["load"])
            self.assertEqual(4, said["already_held"]["tally"])
        self.assertEqual(1, self.ask("journal", self.book)["entries"])

    def test_the_same_values_in_another_form_are_already_held(self):
        self.new()
        loads = SEASON["loads.csv"].replace(",320,", ",3.20e2,").replace("2025-10-31T20:00+13:00",
                                                                          "2025-10-31T07:00:00.000Z")
        folder = self.folder({"loads.csv": loads}, "more")
        self.assertEqual({}, self.write("add", self.book, "--from", folder)["added"])

    def test_other_values_under_an_id_that_the_book_has_are_refused_with_both(self):
        self.new()
        loads = changed(SEASON["loads.csv"], "L-3", stated_hopper_m3="321")
        said = self.write("add", self.book, "--from", self.folder({"loads.csv": loads}, "more"), status=1)
        self.assertEqual("other-values", said["refusals"][0]["code"])
        self.assertIn('"320"', said["refusals"][0]["what"])
        self.assertIn('"321"', said["refusals"][0]["what"])
        self.assertEqual("320", self.ask("show", self.book, "load", "L-3")["fields"]["stated_hopper_m3"])

    def test_a_book_takes_no_rows_of_another_harbour(self):
        self.new()
        other = {"harbour.json": {**HARBOUR, "name": "Gull Harbour"}, "people.csv": "name,role\nZoe,officer\n"}
        self.write("add", self.book, "--from", self.folder(other, "more"), status=1)
        self.assertEqual(1, self.sbk("show", self.book, "person", "Zoe").returncode)

    def test_a_reference_may_be_in_the_book_and_not_in_the_folder(self):
        self.new()
        more = {"loads.csv": "load,barge,material\nL-9,Pipi,sand\n", "trips.csv": "trip,load\nT-9,L-9\n"}
        folder = self.folder(more, "more")
        self.assertEqual({"load": 1, "trip": 1}, self.write("add", self.book, "--from", folder)["added"])

    def test_rows_without_an_id_are_held_as_often_as_they_stand(self):
        self.new()
        tallies = SEASON["tallies.csv"] + SEASON["tallies.csv"].splitlines()[1] + "\n"
        folder = self.folder({"tallies.csv": tallies}, "more")
        self.assertEqual({"tally": 1}, self.write("add", self.book, "--from", folder)["added"])
        self.assertEqual({}, self.write("add", self.book, "--from", folder)["added"])

    def test_a_book_taken_out_and_in_again_has_the_same_rows(self):
        names = ("=cmd|x", "Ünï 漢字", "a,b", 'a""b', "-1", "@x", "a\nb")
        self.new(people_csv=SEASON["people.csv"] + "".join(f'"{name}",officer\n' for name in names),
                 releases_csv=table("release trip doors_open empty share\n"
                                    "R-1 T-2 2025-11-03T10:00+13:00 2025-11-03T10:04+13:00 0.5\n"
                                    "R-2 T-2 2025-11-03T10:05+13:00 2025-11-03T10:08+13:00 -"),
                 observations_csv="time,place,wave_height_m\n2025-11-03T09:00+13:00,quay,1\n")
        self.ask("export", self.book, "--to", self.path("out"))
        again = self.path("again.sbook")
        self.write("new", again, "--from", self.path("out"))
        self.ask("export", again, "--to", self.path("out2"))
        same = subprocess.run(["diff", "-r", self.path("out"), self.path("out2")], capture_output=True, text=True,
                              check=False)
        self.assertEqual("", same.stdout)
        self.assertEqual({}, self.write("add", self.book, "--from", self.path("out"))["added"])
        for command in ("headroom", "volumes", "releases"):
            at = ("--as-at", "2025-12-31T00:00Z")
            self.assertEqual(self.ask(command, self.book, *at), self.ask(command, again, *at))

    def test_a_book_is_written_out_the_same_in_any_zone_and_language(self):
        self.new()
        self.ask("export", self.book, "--to", self.path("out"))
        self.ask("export", self.book, "--to", self.path("out2"),
                 env={"TZ": "America/St_Johns", "LANG": "de_DE.UTF-8", "LC_ALL": "C"})
        same = subprocess.run(["diff", "-r", self.path("out"), self.path("out2")], capture_output=True, text=True,
                              check=False)
        self.assertEqual("", same.stdout)

    def test_times_are_written_out_with_the_offset_of_the_book(self):
        self.new(shifts_csv=SEASON["shifts.csv"].replace("2025-11-01T00:00+13:00", "2025-10-31T11:00Z"))
        self.ask("export", self.book, "--to", self.path("out"))
        with open(os.path.join(self.path("out"), "shifts.csv"), encoding="utf-8") as out:
            self.assertIn("2025-11-01T00:00:00+13:00", out.read())

    def test_nothing_is_written_out_over_what_stands_there(self):
        self.new()
        self.ask("export", self.book, "--to", self.path("folder"), status=1)

    def test_a_book_is_not_made_over_a_file_that_stands_there(self):
        self.new()
        before = os.path.getsize(self.book)
        self.write("new", self.book, "--from", self.path("folder"), status=1)
        self.assertEqual(before, os.path.getsize(self.book))

    def test_a_condition_may_stand_in_several_versions(self):
        versions = [dict(CONDITIONS[0], value=20000, to="2025-11-01"),
                    dict(CONDITIONS[0], value=9000, **{"from": "2025-11-01"})]
        self.new(consents_json={"consents": [dict(CONSENT, conditions=versions)]})
        self.assertEqual(20000, self.limits("--as-at", "2025-10-31T23:59+13:00")["1"]["limit"])
        self.assertEqual(9000, self.limits("--as-at", "2025-11-01T00:00+13:00")["1"]["limit"])

    def test_claims_may_stand_in_the_systems_own_metres(self):
        claims = copy.deepcopy(CLAIMS)
        claims["crs"] = {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::32760"}}
        for i, f in enumerate(claims["features"]):
            e, n = 711000 + 200 * i, 5497000
            f["geometry"]["coordinates"] = [[[e, n], [e + 100, n], [e + 100, n + 100], [e, n + 100], [e, n]]]
        self.assertEqual(2, self.new(claims_geojson=claims)["added"]["claim"])

# SPDX-License-Identifier: GPL-3.0-or-later
"""What a book folder is refused for: exit 1, nothing written, all reasons at once, each with its place."""
import copy
import json

from trade import CLAIMS, CONDITIONS, CONSENT, HARBOUR, PLANT, Trade, changed, season

SEASON = season()


def edited(file, old, new):
    text = SEASON[file]
    assert old in text, f"{file} has no {old}"
    return text.replace(old, new)


def one_condition(**members):
    return {"consents": [dict(CONSENT, conditions=[dict(CONDITIONS[0], **members)])]}


class FolderRefused(Trade):
    def test_a_new_book_needs_a_harbour(self):
        self.refused("no-harbour", "harbour.json", harbour_json=None)

    def test_a_column_that_nobody_knows_is_refused_with_the_nearest_name(self):
        said = self.refused("unknown-column", "loads.csv line 1", "brage",
                            loads_csv=edited("loads.csv", "barge", "brage"))
        self.assertIn("barge", said["mend"])

    def test_a_member_that_nobody_knows_is_refused_with_the_nearest_name(self):
        said = self.refused("unknown-member", "harbour.json zoen", harbour_json={**HARBOUR, "zoen": "x"})
        self.assertIn("zone", said["mend"])

    def test_a_member_that_a_condition_does_not_have_is_refused_nested_ones_too(self):
        self.refused("unknown-member", "conditions[0].valeu", consents_json=one_condition(valeu=1))
        self.refused("unknown-member", "conditions[0].window.nn",
                     consents_json=one_condition(window={"kind": "term", "nn": 1}))

    def test_a_number_has_a_point_and_no_separators_and_is_finite(self):
        for word in ("NaN", "inf", "-Infinity", "1e400", "0x10", '"1,320"', '"32,5"', "1_000", "3 20", "ten"):
            with self.subTest(word):
                self.refused("not-a-number", "loads.csv line 4 column stated_hopper_m3",
                             loads_csv=edited("loads.csv", ",320,", f",{word},"))

    def test_a_number_in_quotes_is_no_number_in_json(self):
        self.refused("wrong-type", "harbour.json epsg", harbour_json={**HARBOUR, "epsg": "32760"})

    def test_nan_and_infinity_are_no_json(self):
        for word in ("NaN", "Infinity", "1e999"):
            text = json.dumps(HARBOUR).replace("1.025", word)
            self.refused("not-json", "harbour.json line 1", harbour_json=text)

    def test_an_ullage_lies_between_0_and_50_metres(self):
        for dip in ("50.01", "-0.01"):
            self.refused("out-of-range", "loads.csv line 5 column dips_m",
                         loads_csv=edited("loads.csv", "2.0 2.0", f"2.0 {dip}"))

    def test_a_draught_lies_between_0_and_30_metres(self):
        for draught in ("30.5", "-1"):
            self.refused("out-of-range", "loads.csv line 2 column light_draughts_m",
                         loads_csv=changed(SEASON["loads.csv"], "L-1", light_draughts_m=f"1 1 1 1 1 {draught}"))

    def test_a_latitude_lies_between_the_poles(self):
        self.refused("out-of-range", "trips.csv line 2 column lat",
                     trips_csv=edited("trips.csv", "-40.59,179.61", "-90.5,179.61"))
        self.refused("out-of-range", "trips.csv line 2 column lon",
                     trips_csv=edited("trips.csv", "-40.59,179.61", "-40.59,180.5"))

    def test_a_range_holds_in_tables_and_members_too(self):
        plant = copy.deepcopy(PLANT)
        plant["barges"][0]["ullage_table"] = [[0, 400], [51, 0]]
        self.refused("out-of-range", "plant.json barges[0].ullage_table[1]", plant_json=plant)
        self.refused("out-of-range", "harbour.json water_density_t_m3",
                     harbour_json={**HARBOUR, "water_density_t_m3": 2})

    def test_a_reference_is_looked_up_and_the_nearest_label_told(self):
        said = self.refused("unknown-reference", "loads.csv line 4 column barge", "Tuatau",
                            loads_csv=edited("loads.csv", "Tuatua", "Tuatau"))
        self.assertIn("Tuatua", said["mend"])

    def test_a_cell_is_looked_up_in_its_own_ground(self):
        self.refused("unknown-reference", "trips.csv line 3 column cell",
                     trips_csv=edited("trips.csv", ",E,", ",F,"))

    def test_a_condition_that_names_a_claim_that_is_not_there_is_refused(self):
        self.refused("unknown-reference", "applies.claims[0]",
                     consents_json=one_condition(applies={"claims": ["Q9"]}))

    def test_the_same_id_stands_once_in_its_kind(self):
        self.refused("twice", "loads.csv line 6", "L-1", loads_csv=SEASON["loads.csv"] + "L-1,Pipi,sand,,,,,\n")
        self.refused("twice", "trips.csv line 5", "T-3",
                     trips_csv=SEASON["trips.csv"] + SEASON["trips.csv"].splitlines()[-1] + "\n")
        plant = copy.deepcopy(PLANT)
        plant["barges"].append(plant["barges"][0])
        self.refused("twice", "plant.json barges[2]", plant_json=plant)

    def test_an_end_does_not_lie_before_its_own_start(self):
        self.refused("backwards", "trips.csv line 2 column release_end",
                     trips_csv=edited("trips.csv", "2025-11-01T00:04", "2025-10-31T23:55"))
        self.refused("backwards", "trips.csv line 2 column returned",
                     trips_csv=edited("trips.csv", "2025-10-31T22:10", "2025-11-02T22:10"))
        self.refused("backwards", "loads.csv line 2 column loading_end",
                     loads_csv=edited("loads.csv", "2025-10-31T20:00", "2025-10-31T22:00:00.001"))
        self.refused("backwards", "conditions[0].to",
                     consents_json=one_condition(**{"from": "2026-01-01", "to": "2025-01-01"}))

    def test_a_blank_id_is_refused(self):
        for blank in ("", "   ", '" "'):
            self.refused("blank-id", "loads.csv line 6",
                         loads_csv=SEASON["loads.csv"] + f"{blank},Pipi,sand,,,,,\n")

    def test_bytes_that_are_not_utf_8_are_refused_with_line_and_column(self):
        for data in ("name,role\nRené,skipper\n".encode("latin-1"), b"name,role\nRen\xc0\xaf,skipper\n",
                     b"name,role\nRen\xed\xa0\x80,skipper\n"):
            self.refused("not-utf-8", "people.csv line 2 column 4", people_csv=data)
        self.refused("not-utf-8", "people.csv line 1", people_csv="name,role\n".encode("utf-16"))
        self.refused("nul-byte", "people.csv line 2 column 2", people_csv=b"name,role\nA\0b,skipper\n")

    def test_a_ragged_row_and_a_quote_that_is_never_closed_are_refused(self):
        self.refused("ragged-row", "people.csv line 2", people_csv="name,role\nAna\n")
        self.refused("ragged-row", "people.csv line 2", people_csv="name,role\nAna,skipper,x\n")
        self.refused("quoting", "people.csv line 2", people_csv='name,role\n"Ana,skipper\n')
        self.refused("twice", "people.csv line 1 column 2", people_csv="name,name,role\nAna,Bo,skipper\n")

    def test_json_that_is_nested_without_end_or_goes_on_behind_its_end_is_refused(self):
        self.refused("too-deep", "harbour.json", harbour_json='{"name":' + "[" * 200000 + "]" * 200000 + "}")
        self.refused("not-json", "harbour.json", harbour_json=json.dumps(HARBOUR) + "x")
        self.refused("twice", "harbour.json name", harbour_json='{"name": "a", "name": "b", "epsg": 32760}')

    def test_a_map_in_degrees_or_feet_is_refused(self):
        for code in (4326, 2263, 1):
            said = self.new(1, harbour_json={**HARBOUR, "epsg": code})
            self.assertIn("harbour.json epsg", [r["where"] for r in said["refusals"]])

    def test_a_zone_is_one_that_the_machine_knows_and_never_a_path(self):
        for zone in ("Pacific/Nowhere", "../../../etc/passwd", "/etc/localtime"):
            self.refused("unknown-zone", "harbour.json zone", harbour_json={**HARBOUR, "zone": zone})

    def test_an_outline_is_closed_does_not_cross_itself_and_has_an_area(self):
        for spoil in (lambda ring: ring.pop(), lambda ring: ring.__setitem__(slice(1, 3), [ring[2], ring[1]]),
                      lambda ring: ring.__setitem__(1, [179.5]), lambda ring: ring.clear()):
            claims = copy.deepcopy(CLAIMS)
            spoil(claims["features"][0]["geometry"]["coordinates"][0])
            self.refused("geometry", "claims.geojson features[0].geometry", claims_geojson=claims)
        claims = copy.deepcopy(CLAIMS)
        claims["features"][0]["geometry"] = {"type": "Point", "coordinates": [179.5, -40.6]}
        self.refused("geometry", "claims.geojson features[0].geometry", claims_geojson=claims)

    def test_an_outline_in_another_reference_system_is_refused(self):
        claims = dict(CLAIMS, crs={"type": "name", "properties": {"name": "EPSG:2193"}})
        self.refused("crs", "claims.geojson crs", claims_geojson=claims)

    def test_a_window_that_is_none_is_refused(self):
        for window in ({"kind": "terms"}, {"kind": "rolling", "n": 0, "unit": "months"},
                       {"kind": "calendar", "unit": "fortnight"}, {}, "term"):
            said = self.new(1, consents_json=one_condition(window=window))
            self.assertTrue(all("conditions[0].window" in r["where"] for r in said["refusals"]), said)

    def test_all_reasons_are_told_at_once(self):
        said = self.new(1, people_csv="name,role\nAna,captain\n", trips_csv=edited("trips.csv", ",E,", ",F,"),
                        loads_csv=edited("loads.csv", "2.0 2.0", "51"))
        self.assertEqual({"not-a-choice", "unknown-reference", "out-of-range"}, {r["code"] for r in said["refusals"]})
        self.assertEqual(4, len(said["refusals"]))

    def test_a_campaign_does_not_end_before_it_begins(self):
        backwards = {**HARBOUR, "campaigns": [{"name": "x", "from": "2025-12-01", "to": "2025-09-01"}]}
        self.refused("backwards", "harbour.json campaigns[0]", harbour_json=backwards)

    def test_the_divisor_of_the_mean_of_means_is_8_or_6(self):
        plant = copy.deepcopy(PLANT)
        plant["barges"][0]["draught_mean"] = 7
        said = self.new(1, plant_json=plant)
        self.assertIn("plant.json barges[0].draught_mean", said["refusals"][0]["where"])

    def test_a_reading_of_draughts_has_six(self):
        said = self.new(1, loads_csv=changed(SEASON["loads.csv"], "L-1", light_draughts_m="1 1 1 1 1"))
        self.assertIn("loads.csv line 2 column light_draughts_m", said["refusals"][0]["where"])

    def test_a_link_or_a_folder_where_a_file_should_stand_is_refused(self):
        import os
        folder = self.folder(SEASON)
        os.remove(os.path.join(folder, "people.csv"))
        os.symlink("/etc/passwd", os.path.join(folder, "people.csv"))
        said = self.write("new", self.book, "--from", folder, status=1)
        self.assertEqual(("not-a-file", "people.csv"), (said["refusals"][0]["code"], said["refusals"][0]["where"]))

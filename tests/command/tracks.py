# SPDX-License-Identifier: GPL-3.0-or-later
"""Tracks: where a trip went, where its release was by it, and conditions on the whole of a release."""
import json
import os
import shutil

from trade import CONSENT, DEVICE, NOW, Trade, changed, season

SEASON = season()
# The release of T-2 lasts from 10:00 to 10:08; the ground ends at 179.64 E. A degree of longitude is 84.6 km here.
WHOLE = {"condition": "14", "kind": "place", "inside": {"ground": "Deep Hole"}, "test": "whole_release"}
END = dict(WHOLE, condition="15", test="release_end")
START = dict(WHOLE, condition="16", test="release_start", inset_m=20)
WRECK = {"condition": "17", "kind": "place", "test": "whole_release",
         "outside": {"circle": {"lat": -40.595, "lon": 179.633, "radius_m": 100}}}


def eastward(start, a_minute, minutes=range(-60, 80), every=1, lat=-40.595):
    """Fixes a minute apart on one parallel, `start` at 10:00; as rows of minutes, latitude and longitude."""
    return [(m, lat, start + m * a_minute) for m in minutes if m % every == every // 2]


def as_csv(fixes):
    return "time,lat,lon,speed\n" + "".join(
        f"2025-11-03T{10 + m // 60:02}:{m % 60:02}:00+13:00,{lat:.7f},{lon:.7f},x\n" for m, lat, lon in fixes)


def as_gpx(fixes):
    points = "".join(f'<trkpt lat="{lat:.7f}" lon="{lon:.7f}"><time>2025-11-02T{21 + m // 60:02}:{m % 60:02}:00Z</time>'
                     "</trkpt>\n" for m, lat, lon in fixes)
    return f'<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1"><trk><trkseg>{points}</trkseg></trk></gpx>'


def as_nmea(fixes):
    def line(m, lat, lon):
        south, east = -lat, lon
        body = (f"GNGLL,{int(south):02}{south % 1 * 60:08.5f},S,{int(east):03}{east % 1 * 60:08.5f},E,"
                f"{21 + m // 60:02}{m % 60:02}00.00,A,A")
        check = 0
        for character in body:
            check ^= ord(character)
        return f"${body}*{check:02X}\r\n"
    return "".join(line(*fix) for fix in fixes) + "$GPGLL,bad*00\r\n"


class Tracks(Trade):
    def row(self, track, conditions=(WHOLE, END, START), name="tracks/T-2.csv", **values):
        if os.path.exists(self.book):
            os.remove(self.book)
        self.new_of({**SEASON, "consents.json": {"consents": [dict(CONSENT, conditions=list(conditions))]},
                     "trips.csv": changed(SEASON["trips.csv"], "T-2", **values), name: track})
        return next(r for r in self.ask("releases", self.book)["rows"] if r["trip"] == "T-2")

    @staticmethod
    def states(row):
        return {c["condition"]: c["state"] for c in row["conditions"]}

    def test_a_release_without_a_position_is_placed_on_the_track_whatever_wrote_it(self):
        for name, text in (("csv", as_csv), ("gpx", as_gpx), ("nmea", as_nmea)):
            with self.subTest(name):
                row = self.row(text(eastward(179.635, 0.0001)), name=f"tracks/T-2.{name}", lat="", lon="", cell="")
                self.assertEqual(("inside", "track", "E", False),
                                 (row["verdict"], row["place_from"], row["cell"], row["left_ground_doors_open"]))
                # 0.005 degrees off the eastern edge, 423 m; the wreck's south side lies 0.004 degrees north: 444 m
                # (COMP, by degrees of 84.6 and 111.1 km).
                self.assertAlmostEqual(423, row["distance_to_boundary_m"], delta=3)
                self.assertEqual({"14": "complied", "15": "complied", "16": "complied"}, self.states(row))

    def test_a_release_that_drifts_over_the_line_has_left_the_ground_with_the_doors_open(self):
        row = self.row(as_csv(eastward(179.635, 0.001)))
        self.assertEqual(("inside", "logged", True),
                         (row["verdict"], row["place_from"], row["left_ground_doors_open"]))
        self.assertEqual({"14": "breached", "15": "breached", "16": "complied"}, self.states(row))
        room = {c["condition"]: c["room_m"] for c in row["conditions"]}
        self.assertAlmostEqual(-254, room["14"], delta=2)  # 0.003 degrees past the edge at 10:08

    def test_a_whole_release_is_judged_where_it_came_nearest_and_not_at_its_fixes(self):
        # Passes the middle of the circle at 10:00 plus 1.5 min, between two fixes.
        row = self.row(as_csv(eastward(179.630, 0.002)), (WRECK,))
        self.assertEqual({"17": "breached"}, self.states(row))
        self.assertAlmostEqual(-100, row["conditions"][0]["room_m"], delta=0.5)
        row = self.row(as_csv(eastward(179.630, 0.002, lat=-40.5965)), (WRECK,))
        self.assertEqual({"17": "complied"}, self.states(row))

    def test_a_gap_in_the_track_is_not_bridged(self):
        row = self.row(as_csv(eastward(179.635, 0.0001, every=7)), lat="", lon="")
        self.assertEqual(("cannot_tell", None), (row["verdict"], row["distance_to_boundary_m"]))
        self.assertIn("gap", row["why"])
        self.assertEqual({"14": "cannot_tell", "15": "cannot_tell", "16": "cannot_tell"}, self.states(row))
        patient = dict(WHOLE, track_interval_s_max=600)
        self.assertEqual({"14": "complied"}, self.states(self.row(as_csv(eastward(179.635, 0.0001, every=7)), (patient,))))

    def test_without_a_track_the_end_of_a_release_is_not_known(self):
        self.new_of({**SEASON, "consents.json": {"consents": [dict(CONSENT, conditions=[WHOLE, END, START])]}})
        row = next(r for r in self.ask("releases", self.book)["rows"] if r["trip"] == "T-2")
        self.assertEqual({"14": "cannot_tell", "15": "cannot_tell", "16": "complied"}, self.states(row))

    def test_a_hopper_astern_of_the_receiver_lies_a_line_back_on_the_track(self):
        # Steaming east at 169 m a minute over the eastern edge: the tug is 42 m inside, the hopper 200 m behind her.
        more = {"lon": "179.6395", "tow": "astern", "tow_line_m": "200", "receiver_on": "tug"}
        trips = SEASON["trips.csv"].splitlines()
        fields = trips[0].split(",")
        rows = [",".join(trips[0].split(",") + ["tow", "tow_line_m", "receiver_on"])]
        for line in trips[1:]:
            values = dict(zip(fields, line.split(",")), tow="", tow_line_m="", receiver_on="")
            if values["trip"] == "T-2":
                values.update(more)
            rows.append(",".join(values.values()))
        self.new_of({**SEASON, "trips.csv": "\n".join(rows) + "\n",
                     "tracks/T-2.csv": as_csv(eastward(179.6395, 0.002))})
        row = next(r for r in self.ask("releases", self.book)["rows"] if r["trip"] == "T-2")
        self.assertAlmostEqual(242.3, row["distance_to_boundary_m"], delta=2)
        # sqrt(5² + (200 sin 15° / 1.96)²), COMP by hand.
        self.assertAlmostEqual(26.88, row["position_u_m"], delta=0.01)
        self.assertEqual("inside", row["verdict"])

    def test_a_trip_tells_its_way_its_time_and_its_speed(self):
        self.row(as_nmea(eastward(179.635, 0.002)), name="tracks/T-2.nmea")
        said = self.ask("track", self.book, "T-2")
        self.assertEqual((140, 1, "2025-11-03T09:00:00+13:00"), (said["fixes"], said["bad_lines"], said["first"]))
        self.assertEqual([{"line": 141, "what": "the checksum does not fit the sentence"}], said["faults"])
        out, release, back = said["releases"][0]["legs"]
        self.assertEqual(["out", "release", "back"], [out["leg"], release["leg"], back["leg"]])
        # 0.016 degrees of 84.6 km in 8 minutes (COMP): 5.48 kn.
        self.assertAlmostEqual(1354, release["way_m"], delta=2)
        self.assertAlmostEqual(5.48, release["mean_speed_kn"], delta=0.02)
        self.assertAlmostEqual(90, release["course_deg"], delta=0.1)
        self.assertAlmostEqual(release["way_m"], release["straight_m"], delta=1)
        self.assertEqual(60, release["longest_gap_s"])
        self.assertEqual(3000, out["longest_gap_s"])  # cast off at 08:10, the track begins at 09:00
        self.assertEqual(1, self.sbk("track", self.book, "T-1").returncode)
        self.assertEqual(1, self.sbk("track", self.book, "T-99").returncode)

    def added(self, track, *words):
        """What `sbk add` answers to a folder that holds one track of T-2, and what it notes."""
        folder = self.folder({"tracks/T-2.csv": track}, "another")
        done = self.sbk("add", self.book, "--from", folder, *words, "--json", *DEVICE, *NOW, "--by", "Ana")
        return done.returncode, json.loads(done.stdout), done.stderr

    def test_a_track_of_another_day_is_noted_and_one_of_the_trip_is_not(self):
        self.new()
        days_before = as_csv(eastward(179.635, 0.002)).replace("2025-11-03T", "2025-10-31T")
        status, _, notes = self.added(days_before)
        self.assertEqual(0, status)
        self.assertIn("tracks/T-2.csv: none of the track is of the trip: it runs from 2025-10-31T09:00:00+13:00", notes)
        self.assertIn("trip T-2 from 2025-11-03T08:10:00+13:00 to 2025-11-03T11:30:00+13:00", notes)
        shutil.rmtree(self.path("another"))
        os.remove(self.book)
        self.new()
        self.assertEqual((0, ""), self.added(as_csv(eastward(179.635, 0.002)))[::2])

    def test_another_track_takes_the_place_of_the_first_with_a_reason(self):
        self.new()
        wrong = as_csv(eastward(179.635, 0.002)).replace("2025-11-03T", "2025-10-31T")
        right = as_csv(eastward(179.635, 0.002))
        self.assertEqual(0, self.added(wrong)[0])
        status, said, _ = self.added(right)
        self.assertEqual((1, "other-values"), (status, said["refusals"][0]["code"]))
        self.assertIn("--why", said["refusals"][0]["mend"])
        self.assertEqual("2025-10-31T09:00:00+13:00", self.ask("track", self.book, "T-2")["first"])
        status, _, notes = self.added(right, "--why", "the receiver's file of the wrong day")
        self.assertEqual(0, status)
        self.assertIn("trip T-2: its track T-2.csv is struck out: the one that came takes its place", notes)
        self.assertEqual("2025-11-03T09:00:00+13:00", self.ask("track", self.book, "T-2")["first"])
        self.assertEqual("intact", self.ask("journal", self.book, "--check")["state"])
        self.ask("export", self.book, "--to", self.path("out"))
        with open(self.path("out/tracks/T-2.csv"), encoding="utf-8") as kept:
            self.assertEqual(right, kept.read())
        # The same again is held already.
        self.assertEqual(0, self.added(right, "--why", "once more")[0])
        self.assertEqual("2025-11-03T09:00:00+13:00", self.ask("track", self.book, "T-2")["first"])

    def test_hostile_gpx_is_refused(self):
        dtd = '<!DOCTYPE gpx [<!ENTITY a "b">]>' + as_gpx(eastward(179.635, 0))
        self.refused("track", "tracks/T-2.gpx", files={**SEASON, "tracks/T-2.gpx": dtd})
        self.refused("track", "tracks/T-2.gpx", files={**SEASON, "tracks/T-2.gpx": "<gpx><trk>"})

# SPDX-License-Identifier: GPL-3.0-or-later
"""Files from receivers, loggers, surveyors and people who mean harm."""
import os

from trade import Trade, season

SEASON = season()
GPX = ('<?xml version="1.0"?><gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>'
       '<trkpt lat="-40.59" lon="179.61"><time>2025-11-03T10:00:00Z</time></trkpt></trkseg></trk></gpx>')
SITES = "site,role,easting_m,northing_m,unit,interval_min\nR1,impact,711000,5496000,NTU,15\n"
GRID = "ncols 2\nnrows 2\nxllcorner 711000\nyllcorner 5496000\ncellsize 1\nNODATA_value -9999\n-9 -9\n-9 -9\n"
SURVEYS = "survey,file,surveyed_on,kind\n"


class Strangers(Trade):
    def refused_with(self, code, where, files):
        return self.refused(code, where, files={**SEASON, **files})

    def test_a_track_belongs_to_a_trip_and_a_trip_has_one(self):
        self.refused_with("unknown-reference", "tracks/T-99.gpx", {"tracks/T-99.gpx": GPX})
        self.refused_with("twice", "tracks/T-1", {"tracks/T-1.gpx": GPX, "tracks/T-1.csv": "time,lat,lon\n"
                                                  "2025-11-03T10:00Z,-40.59,179.61\n"})

    def test_a_track_is_what_its_name_says(self):
        self.refused_with("not-gpx", "tracks/T-1.gpx", {"tracks/T-1.gpx": "<html/>"})
        self.refused_with("not-nmea", "tracks/T-1.nmea", {"tracks/T-1.nmea": "hello\n"})
        self.refused_with("out-of-range", "tracks/T-1.csv line 2 column lat",
                          {"tracks/T-1.csv": "time,lat,lon\n2025-11-03T10:00Z,-91,179.61\n"})

    def test_a_name_that_leaves_the_folder_leads_nowhere(self):
        self.refused_with("unknown-reference", "tracks/..%2F..%2Fx.gpx", {"tracks/..%2F..%2Fx.gpx": GPX})
        for file in ("../../etc/passwd", "/etc/passwd", "/vsicurl/http://127.0.0.1/x.tif", "a/../b.asc", ".."):
            with self.subTest(file):
                self.refused_with("path", "surveys.csv line 2 column file",
                                  {"surveys.csv": SURVEYS + f"V1,{file},2025-11-01,before\n"})

    def test_a_survey_names_a_file_that_is_there(self):
        self.refused_with("no-file", "surveys.csv line 2 column file",
                          {"surveys.csv": SURVEYS + "V1,a.asc,2025-11-01,before\n"})

    def test_what_came_as_a_file_goes_out_as_the_same_file(self):
        self.new_of({**SEASON, "tracks/T-1.gpx": GPX, "surveys/a.asc": GRID,
                     "surveys.csv": SURVEYS + "V1,a.asc,2025-11-01,before\n"})
        self.ask("export", self.book, "--to", self.path("out"))
        for name, text in (("tracks/T-1.gpx", GPX), ("surveys/a.asc", GRID)):
            with open(os.path.join(self.path("out"), name), encoding="utf-8") as file:
                self.assertEqual(text, file.read())
        self.assertEqual("intact", self.ask("journal", self.book, "--check")["state"])

    def test_a_loggers_file_is_read_whole_or_not_at_all(self):
        for rows, code, where in (("2025-11-03T10:00Z,NaN\n", "not-a-number", "turbidity/R1.csv line 2 column value"),
                                  (",5\n", "blank-time", "turbidity/R1.csv line 2"),
                                  ("2026-04-05T02:30,5\n", "ambiguous-time", "turbidity/R1.csv line 2 column time"),
                                  ("2025-11-03T10:00Z,5,6\n", "ragged-row", "turbidity/R1.csv line 2")):
            with self.subTest(rows):
                self.refused_with(code, where, {"turbidity/sites.csv": SITES, "turbidity/R1.csv": "time,value\n" + rows})
        self.refused_with("unknown-reference", "turbidity/R9.csv", {"turbidity/R9.csv": "time,value\n"
                                                                    "2025-11-03T10:00Z,5\n"})

    def test_a_loggers_file_that_goes_over_the_same_time_must_say_the_same(self):
        first = "time,value\n2025-11-03T10:00Z,5\n2025-11-03T10:15Z,6\n"
        self.new_of({**SEASON, "turbidity/sites.csv": SITES, "turbidity/R1.csv": first})
        more = self.folder({"turbidity/R1.csv": "time,value\n2025-11-03T10:15Z,6\n2025-11-03T10:30Z,7\n"}, "more")
        self.write("add", self.book, "--from", more)
        again = self.folder({"turbidity/R1.csv": "time,value\n2025-11-03T10:15Z,6.5\n"}, "other")
        self.write("add", self.book, "--from", again, status=1)
        self.assertEqual({}, self.write("add", self.book, "--from", more)["added"])

    def test_the_level_of_the_water_stands_once_a_time(self):
        self.refused_with("twice", "tide.csv line 3", {"tide.csv": "time,level_m\n2025-11-03T10:00+13:00,1\n"
                                                       "2025-11-02T21:00Z,2\n"})

    def test_what_was_used_before_belongs_to_a_condition(self):
        said = self.new_of({**SEASON, "opening.csv": "consent,condition,value\nTC-1,99,5\n"}, 1)
        self.assertIn("opening.csv line 2 column condition", said["refusals"][0]["where"])

    def test_a_file_without_measure_is_refused_in_time(self):
        self.refused_with("too-long", "people.csv line 2", {"people.csv": "name,role\n" + "x" * 2000000 + ",skipper\n"})
        self.refused_with("too-wide", "people.csv line 1", {"people.csv": "name,role" + ",a" * 20000 + "\n"})

    def test_of_many_faults_the_first_thousand_are_told_and_the_rest_counted(self):
        said = self.new_of({**SEASON, "people.csv": "name,role\n" + "".join(f"p{i},cap\n" for i in range(3000))}, 1)
        self.assertEqual(1001, len(said["refusals"]))
        self.assertEqual("more-refusals", said["refusals"][-1]["code"])

    def test_a_pipe_is_not_waited_for(self):
        folder = self.folder(SEASON)
        os.remove(os.path.join(folder, "people.csv"))
        os.mkfifo(os.path.join(folder, "people.csv"))
        self.assertEqual("not-a-file", self.write("new", self.book, "--from", folder, status=1)["refusals"][0]["code"])

    def test_a_label_with_a_line_break_still_takes_one_line(self):
        self.new_of({**SEASON, "people.csv": 'name,role\n"An\na\x1b[31m",skipper\n'})
        os.remove(self.book)
        done = self.sbk("new", self.book, "--from", self.path("folder"), "--device", "pontoon")
        self.assertTrue(all(line.startswith("note: ") for line in done.stderr.strip().splitlines()), done.stderr)
        self.assertNotIn("\x1b", done.stderr)

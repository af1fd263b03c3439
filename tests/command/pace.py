# SPDX-License-Identifier: GPL-3.0-or-later
"""Where the hours of the shifts went, and what an hour of digging brings."""
import csv
import io
from datetime import datetime, timedelta

from trade import STATIONS, Trade, changed, table

AS_AT = ("--as-at", "2025-12-01T12:00+13:00")
DELAYS = """shift start end cause
S-1 2025-10-31T12:00+13:00 2025-10-31T14:00+13:00 weather
S-1 2025-10-31T13:00+13:00 2025-10-31T15:00+13:00 waiting~for~barge
S-1 2025-10-31T21:30+13:00 2025-10-31T21:45+13:00 shipping~movement
S-2 2025-11-03T08:00+13:00 2025-11-03T12:30+13:00 waiting~for~tug
- 2025-11-04T08:00+13:00 2025-11-04T12:30+13:00 weather"""


def at(text):
    return datetime.fromisoformat(text)


class Pace(Trade):
    def test_hours_by_cause_close_to_the_shift_hours(self):
        self.new(delays_csv=table(DELAYS))
        said = self.ask("delays", self.book, "--by", "cause,shift", *AS_AT)
        for row in said["rows"]:
            self.assertAlmostEqual(row["shift_h"],
                                   row["operating_h"] + row["delay_h"] + row["not_accounted_h"], 9)
        causes = {(c["shift"], c["cause"]): (c["hours"], c["delays"]) for c in said["causes"]}
        # The weather began first, so the hour from 13:00 is its own.
        self.assertEqual({("S-1", "weather"): (2, 1), ("S-1", "waiting for barge"): (1, 1),
                          ("S-1", "shipping movement"): (0.25, 1), ("S-2", "waiting for tug"): (4.5, 1)}, causes)
        self.assertEqual(1, said["delays_left_out"])
        # 20:00 to 22:00 less the ship; 06:30 to 08:00, 12:30 to 14:00, 15:00 to 17:00.
        self.assertEqual([1.75, 5.0], [row["operating_h"] for row in said["rows"]])

    def test_every_minute_of_the_small_season_is_counted_once(self):
        self.new(delays_csv=table(DELAYS))
        rows = {row["month"]: row for row in self.ask("delays", self.book, "--by", "month", *AS_AT)["rows"]}
        self.assertEqual({"2025-10": 12.0, "2025-11": 12.0}, {key: row["shift_h"] for key, row in rows.items()})

        def minutes(text):
            for row in csv.DictReader(io.StringIO(text)):
                start, end = at(row["start"]), at(row["end"])
                while start < end:
                    yield row, start
                    start += timedelta(minutes=1)
        delayed = {moment for row, moment in minutes(table(DELAYS)) if row["shift"]}
        in_october = sum(1 for moment in delayed if moment.month == 10)
        self.assertAlmostEqual(in_october / 60, rows["2025-10"]["delay_h"], 9)

    def test_productivity_is_volume_over_operating_hours_with_its_u(self):
        self.new(delays_csv=table(DELAYS))
        said = self.ask("productivity", self.book, "--by", "shift", *AS_AT)
        first = said["rows"][0]
        loads = {n: self.ask("load", self.book, n, *AS_AT) for n in ("L-1", "L-2")}
        one = loads["L-1"]["methods"][0]
        self.assertAlmostEqual(one["in_situ_m3"] / 1.75, first["in_situ_m3_per_operating_h"], 6)
        self.assertAlmostEqual(one["in_situ_m3_u"] / 1.75, first["in_situ_m3_per_operating_h_u"], 6)
        self.assertAlmostEqual(one["in_situ_m3"], first["in_situ_m3_per_shift"], 6)
        self.assertAlmostEqual(1.75 / 12, first["efficiency"], 9)
        self.assertEqual([1, 3], [row["loads"] for row in said["rows"]])
        # Two stations in the second shift, spuds up as they go down.
        self.assertEqual((1, 0), (said["positioning_min"]["n"], said["positioning_min"]["median"]))

    def test_a_load_that_was_full_in_no_shift_is_told(self):
        self.new(stations_csv=changed(table(STATIONS), "ST-1", shift="S-1"),
                 shifts_csv="shift,start,end,dredger,tug\n"
                            "S-1,2025-10-31T12:00+13:00,2025-10-31T21:00+13:00,Shag,Skua\n"
                            "S-2,2025-11-03T06:00+13:00,2025-11-03T18:00+13:00,Shag,Skua\n")
        said = self.ask("productivity", self.book, *AS_AT)
        self.assertEqual((1, 3), (said["outside_shifts"], said["rows"][0]["loads"]))

    def test_the_least_of_dredger_tugs_and_barges_governs(self):
        self.new(delays_csv=table(DELAYS))
        pace = self.ask("productivity", self.book, *AS_AT)["pace"]
        of = {name: pace[f"loads_per_h_{name}"] for name in ("dredger", "tugs", "barges")}
        self.assertEqual(min(of, key=of.get), pace["governs"])
        self.assertEqual(min(of.values()), pace["loads_per_h_least"])
        self.assertEqual((1, 2), (pace["tugs"], pace["barges"]))
        # Trips of 3 h 20, 3 h 20 and 3 h 20 from casting off to alongside.
        self.assertAlmostEqual(60 / 200, of["tugs"], 9)

    def test_an_unknown_grouping_is_wrong_usage(self):
        self.new()
        for command, by in (("delays", "tide"), ("productivity", "cause"), ("delays", "month,week")):
            done = self.sbk(command, self.book, "--by", by)
            self.assertEqual(2, done.returncode, done.stdout)

    def test_a_book_without_shifts_answers_nothing_and_no_rate(self):
        self.new(shifts_csv=None, stations_csv=None, loads_csv=None, tallies_csv=None, trips_csv=None)
        said = self.ask("productivity", self.book, *AS_AT)
        self.assertEqual(0, said["rows"][0]["shift_h"])
        self.assertIsNone(said["rows"][0]["in_situ_m3_per_operating_h"])
        self.assertIsNone(said["pace"]["governs"])
        self.assertIsNone(said["positioning_min"])

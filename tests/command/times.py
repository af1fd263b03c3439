# SPDX-License-Identifier: GPL-3.0-or-later
"""Times: offsets, Z, local times, the hour that happens twice and the one that never does, days and midnights."""
from trade import CONDITIONS, CONSENT, Trade, changed, season

SEASON = season()


class Times(Trade):
    def returned(self, time):
        """What the book has for T-2's `returned`, given so in the folder."""
        self.new(trips_csv=changed(SEASON["trips.csv"], "T-2", returned=time))
        return self.ask("show", self.book, "trip", "T-2")["fields"]["returned"]

    def test_an_offset_a_z_and_a_local_time_name_the_same_instant(self):
        for time in ("2025-11-03T11:30+13:00", "2025-11-02T22:30Z", "2025-11-03T11:30", "2025-11-02T17:30:00-05:00",
                     "2025-11-03T11:30:00.000+13:00"):
            with self.subTest(time):
                self.setUp()
                self.assertEqual("2025-11-03T11:30:00+13:00", self.returned(time))

    def test_milliseconds_are_kept(self):
        self.assertEqual("2025-11-03T11:30:00.250+13:00", self.returned("2025-11-03T11:30:00.25+13:00"))

    def test_a_local_time_that_happens_twice_is_refused_and_with_its_offset_taken(self):
        trip = changed(SEASON["trips.csv"], "T-2", returned="2026-04-05T02:30")
        self.refused("ambiguous-time", "trips.csv line 3 column returned", "happens twice", trips_csv=trip)
        self.assertEqual("2026-04-05T02:30:00+12:00", self.returned("2026-04-05T02:30+12:00"))

    def test_a_local_time_that_the_clocks_skip_is_refused(self):
        trip = changed(SEASON["trips.csv"], "T-2", departed="2025-09-28T02:30")
        self.refused("no-such-time", "trips.csv line 3 column departed", trips_csv=trip)

    def test_what_is_no_time_is_refused(self):
        for time in ("2025-02-30T10:00+13:00", "2025-11-03T25:00+13:00", "2025-11-03T10:60+13:00", "11:30", "noon",
                     "2025-11-03T10:00+25:00", "03/11/2025 10:00", "2025-11-03T23:59:60Z", "1762122600"):
            with self.subTest(time):
                self.refused("not-a-time", "trips.csv line 3 column returned",
                             trips_csv=changed(SEASON["trips.csv"], "T-2", returned=time))

    def test_the_command_line_reads_times_as_a_folder_does(self):
        self.new()
        same = [self.total("--as-at", t)["trips"]
                for t in ("2025-11-03T10:08", "2025-11-03T10:08+13:00", "2025-11-02T21:08Z")]
        self.assertEqual([2, 2, 2], same)
        self.assertEqual(1, self.sbk("volumes", self.book, "--as-at", "2026-04-05T02:30").returncode)
        self.assertEqual(1, self.sbk("volumes", self.book, "--as-at", "2025-09-28T02:30").returncode)
        self.assertNotEqual(0, self.sbk("volumes", self.book, "--as-at", "yesterday").returncode)

    def test_a_release_that_ends_at_midnight_is_the_new_months(self):
        for end, month in (("2025-10-31T23:59:59.999", "2025-10"), ("2025-11-01T00:00", "2025-11")):
            with self.subTest(end):
                self.setUp()
                self.new(trips_csv=changed(SEASON["trips.csv"], "T-1", release_end=end + "+13:00"))
                rows = {r["month"]: r["trips"] for r in self.volumes("--by", "month")}
                self.assertEqual(1 if month == "2025-10" else 3, rows[month])

    def test_a_day_of_23_hours_and_one_of_25_hours_are_one_day_each(self):
        # Auckland, 2025: the clocks go on on 28 September (UTC+12 to +13), back on 5 April 2026.
        rows = []
        days = (("2025-09-28", "+12:00", "+13:00"), ("2026-04-05", "+13:00", "+12:00"))
        for i, (day, first, last) in enumerate(days):
            for j, time in enumerate((f"{day}T00:00{first}", f"{day}T23:59{last}", f"{day}T12:00{last}")):
                rows.append(f"U-{i}{j},L-{(i * 3 + j) % 3 + 1},{time}")
        self.new(trips_csv="trip,load,release_end\n" + "\n".join(rows) + "\n")
        for day, last in (("2025-09-28", "+13:00"), ("2026-04-05", "+12:00")):
            row = self.limits("--as-at", f"{day}T23:59{last}")["3"]
            self.assertEqual(3, row["used"], day)
            self.assertEqual(day, row["window_start"][:10])

    def test_thirty_days_before_ten_o_clock_is_ten_o_clock_across_a_clock_change(self):
        rolling = dict(CONDITIONS[0], measure="trips", window={"kind": "rolling", "n": 30, "unit": "days"})
        self.new(consents_json={"consents": [dict(CONSENT, conditions=[rolling])]},
                 trips_csv="trip,load,release_end\nU-1,L-1,2025-09-10T10:00+12:00\nU-2,L-2,2025-09-10T10:01+12:00\n")
        row = self.limits("--as-at", "2025-10-10T10:00+13:00")["1"]
        self.assertEqual("2025-09-10T10:00:00+12:00", row["window_start"])
        self.assertEqual(1, row["used"], "the window is open at its start: U-1 has left it")

    def test_rolling_months_are_months_of_the_calendar_clamped_to_their_end(self):
        rolling = dict(CONDITIONS[0], measure="trips", window={"kind": "rolling", "n": 12, "unit": "months"})
        self.new(consents_json={"consents": [dict(CONSENT, conditions=[rolling])]})
        row = self.limits("--as-at", "2028-02-29T10:00+13:00")["1"]
        self.assertEqual("2027-02-28T10:00:00+13:00", row["window_start"])

#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The oracle's rules about time, turbidity, duties and plans against cases worked out by hand and published values."""
import unittest
from datetime import date

from calendars import is_working, nth_working_day, within_dates
from clock import Clock
from readings import Site
from selftest import LOADS, TRIPS, consent, quantity, small_book
from statistic import above, of_window, percentile
from sunlight import is_day
from timely import Tide, TimeRule
from check import Check
from planned import Ask
from duties import duties
from triggers import turbidity

TEN = [1.2, 1.9, 2.4, 3.1, 3.3, 4.8, 5.0, 6.7, 8.2, 14.5]
RULE = {"weekends": True, "yearly": ["12-20..01-10"], "dates": ["2026-02-06"]}
SITES = "site,role,easting_m,northing_m,unit,interval_min,range_low,range_high,spike,rate_per_min,flat_min\n"


class Statistics(unittest.TestCase):
    def test_percentiles(self):
        """R 4.2.2 quantile(x, p, type): COMP."""
        for p, kind, expected in ((50, 2, 4.05), (50, 3, 3.3), (50, 7, 4.05), (80, 1, 6.7), (80, 2, 7.45), (80, 3, 6.7),
                                  (80, 5, 7.45), (80, 6, 7.9), (80, 9, 7.5625), (95, 4, 11.35), (95, 7, 11.665),
                                  (95, 8, 14.5)):
            self.assertAlmostEqual(percentile(TEN, p, kind), expected, places=9, msg=f"{p} type {kind}")

    def test_exponential_weights(self):
        minute = 60000
        spec = {"kind": "ewma", "half_life_min": 10}
        # The newest 8 weighs 1, the 4 ten minutes before it one half: (8 + 2) / 1.5
        self.assertAlmostEqual(of_window([(0, 4), (10 * minute, 8)], spec, 10 * minute), 20 / 3)
        self.assertAlmostEqual(of_window([(0, 4), (10 * minute, 8)], {"kind": "ewma", "alpha": 0.25}, 0), 11 / 1.75)

    def test_equal_is_not_above(self):
        self.assertFalse(above(sum([12.1, 12.0, 12.05]) / 3, 2.1 + 9.95))
        self.assertTrue(above(12.051, 12.05))


class Days(unittest.TestCase):
    def test_working_days_leave_out_the_turn_of_the_year(self):
        self.assertTrue(within_dates(date(2026, 1, 3), "12-20..01-10"))
        self.assertFalse(is_working(date(2026, 2, 6), RULE))
        # Thursday 18 December: the first is Friday 19, the second Monday 12 January.
        self.assertEqual(nth_working_day(date(2025, 12, 18), 2, RULE), date(2026, 1, 12))

    def test_sun(self):
        """Greenwich, 20 June 2024: 03:43 and 20:21 UTC (published tables, MEM)."""
        clock = Clock("UTC")
        for text, day in (("2024-06-20T03:41Z", False), ("2024-06-20T03:45Z", True), ("2024-06-20T20:19Z", True),
                          ("2024-06-20T20:23Z", False)):
            self.assertEqual(is_day(clock.parse(text), 51.48, 0.0), day, text)

    def rule(self, **members):
        book = small_book(tide_csv="time,level_m\n2025-11-01T00:00Z,0\n2025-11-01T02:00Z,2\n2025-11-01T06:00Z,0\n")
        return TimeRule(book.folder, dict(members, mode="forbid"), (0, 0), Tide(book.folder)), book.folder.time

    def test_hours_and_dates_at_the_instant_itself(self):
        rule, time = self.rule(dates=["09-01..10-31"], hours=["20:00..06:00"])
        for at, state in (("2025-10-31T23:59:59.999", "hold"), ("2025-11-01T02:00", "clear"),
                          ("2025-09-01T05:59:59.999", "hold"), ("2025-09-01T06:00", "clear")):
            self.assertEqual(rule.state(time(at)), state, at)

    def test_tide(self):
        rule, time = self.rule(tide_level_m={"min": 1})
        for at, state in (("2025-11-01T00:59:59.999Z", "clear"), ("2025-11-01T01:00Z", "hold"),
                          ("2025-11-01T03:00Z", "cannot_tell"), ("2025-11-01T06:00Z", "clear"),
                          ("2025-11-01T06:01Z", "cannot_tell")):
            self.assertEqual(rule.state(time(at)), state, at)


class Turbidity(unittest.TestCase):
    def site(self, thresholds, values):
        rows = "".join(f"2025-09-01T{i // 6:02d}:{i % 6}0Z,{v}\n" for i, v in enumerate(values))
        files = {"turbidity/sites.csv": f"{SITES}R1,impact,0,0,NTU,10,{thresholds}\n",
                 "turbidity/R1.csv": "time,value\n" + rows}
        return small_book(**files)

    def test_flags(self):
        flags = lambda *given: Site(self.site(*given).folder, "R1", 1 << 60).flags
        self.assertEqual(flags("0,50,,,", [1, "", -1, 50, 51]), [1, 9, 4, 1, 4])
        self.assertEqual(flags(",,5,,", [1, 2, 9, 2, 3]), [2, 1, 3, 1, 2])
        self.assertEqual(flags(",,,0.5,", [1, 6, 12, "", 3]), [1, 1, 3, 9, 1])
        self.assertEqual(flags(",,,,25", [4, 4, 4, 5]), [1, 1, 3, 1])
        self.assertEqual(flags(",,,,", [4, ""]), [2, 9])

    def test_hold_and_all_clear(self):
        """Over from the third on; held 20 min at the fifth; cannot tell in between ends nothing; clear for 20 min."""
        book = self.site(",,,,", [1, 1, 9, 9, 9, "", 1, 9, 1, "", 1])
        book.folder.consents = [{"consent": "K", "conditions": [
            {"condition": "1", "kind": "series", "variable": "turbidity", "compare": {"absolute": 8}, "tier": 1,
             "passes": {"held_hours": 1 / 3}, "clear": {"held_hours": 1 / 3},
             "responses": [{"tier": 1, "within": {"n": 2, "unit": "hours"}}]}]}]
        event, = turbidity(book, "R1", 1 << 60)["events"]
        begin = book.folder.time("2025-09-01T00:00Z")
        minutes = {k: (event[k] - begin) // 60000 for k in ("over_since", "start", "end", "due")}
        self.assertEqual(minutes, {"over_since": 20, "start": 40, "end": 100, "due": 160})
        self.assertEqual(event["peak"], 9)


class Plans(unittest.TestCase):
    def check(self, *conditions, at="2025-09-20T00:00Z", **ask):
        loads = LOADS + "".join(f"L{i},B1,sand,2025-09-01T10:00Z,100\n" for i in (1, 2, 3))
        trips = TRIPS + "P1,L1,,2025-09-14T00:00Z,2025-09-14T11:59Z,G,west,,,\n" \
            "P2,L2,,2025-09-19T23:00Z,2025-09-20T04:00Z,G,east,,,\n"
        book = small_book(loads_csv=loads, trips_csv=trips, consents_json=consent(*conditions))
        verdict, reasons = Check(book).answer(Ask("L3", book.folder.time(at), "G", **ask))
        return verdict, {k[1]: (s, book.folder.clock.text(u)) for k, (s, u) in reasons.items()}

    def test_loads_under_way_go_first(self):
        """100 m3 each: released, under way, this one. The oldest leaves the week on 21 September at 11:59Z."""
        week = {"kind": "rolling", "n": 7, "unit": "days"}
        verdict, reasons = self.check(quantity("1", {"kind": "term"}, 300), quantity("2", week, 250))
        self.assertEqual((verdict, reasons), ("hold", {"2": ("hold", "2025-09-21T23:59:00.000+12:00")}))

    def test_each_cell(self):
        cell = quantity("1", {"kind": "term"}, 150, each_of="cell")
        self.assertEqual(self.check(cell)[0], "hold")       # west has 100, east 100 under way
        roomy = quantity("1", {"kind": "term"}, 200, each_of="cell")
        self.assertEqual(self.check(roomy)[1], {"1": ("cannot_tell", None)})
        self.assertEqual(self.check(roomy, cell="west")[0], "clear")

    def test_monthly_return(self):
        """September's return, 2 working days: Wednesday 1 and Thursday 2 October."""
        duty = {"condition": "1", "kind": "duty", "what": "return", "when": {"cycle": "month"}, "blocks": ["release"],
                "due": {"n": 2, "unit": "working_days"}}
        book = small_book(loads_csv=LOADS + "L1,B1,sand,2025-09-01T10:00Z,100\n",
                          trips_csv=TRIPS + "P1,L1,,2025-09-14T00:00Z,2025-09-14T11:59Z,G,west,,,\n",
                          consents_json=consent(duty, commences="2025-09-01", not_working=RULE))
        rows = {book.folder.clock.text(r["arises"])[:10]: (r["state"], book.folder.clock.text(r["due"]))
                for r in duties(book, book.folder.time("2025-10-03T00:00:00.001"))[("K", "1")]}
        self.assertEqual(rows["2025-10-01"], ("overdue", "2025-10-03T00:00:00.000+13:00"))
        self.assertEqual(rows["2025-11-01"][0], "coming")


if __name__ == "__main__":
    unittest.main()

# SPDX-License-Identifier: GPL-3.0-or-later
"""The board of conditions: how every kind of condition stands after the act, and what it is judged by."""
from trade import CONDITIONS, CONSENT, TRIPS, Trade, changed, table
from turbidity import SITES, TRIGGER, half_hours

NIGHT = {"condition": "16", "kind": "time", "applies": {"activity": "release"}, "mode": "forbid",
         "hours": ["20:00..06:00"], "open_question": "local or summer time?",
         "settled": {"by": "Tern Council", "on": "2025-08-02", "letter": "letter 3: local"}}
WATCH = {"condition": "40", "kind": "watch", "before_minutes": 30, "radius_m": 300, "clear_minutes": 20, "log": True}
RECORD = {"condition": "41", "kind": "record", "required": {"trip": ["departed", "wave_height_m"], "load": ["dips_m"]},
          "allowed": {"material_ground": {"sand": ["Deep Hole"], "clay": []}}}
KINDS = [NIGHT, WATCH, RECORD,
         {"condition": "42", "kind": "surface", "ground": "Deep Hole", "least_depth_m": 10},
         {"condition": "43", "kind": "text", "text": "be a good neighbour"},
         {"condition": "44", "kind": "duty", "what": "return", "when": {"cycle": "month"},
          "due": {"n": 10, "unit": "days"}, "nil_required": True}]
AS_AT = ("--as-at", "2025-11-10T12:00+13:00")


class Conditions(Trade):
    def under(self, *conditions, **changes):
        self.new(consents_json={"consents": [dict(CONSENT, conditions=list(conditions))]}, **changes)

    def board(self, *words):
        return {row["condition"]: row for row in self.ask("conditions", self.book, *(words or AS_AT))["conditions"]}

    def row(self, condition, *words):
        return self.board(*words)[condition]

    def test_every_condition_has_a_row_and_a_state(self):
        self.under(*CONDITIONS, *KINDS)
        self.assertEqual({"1": "within", "2": "over", "3": "within", "4": "within", "5": "within", "16": "breached",
                          "40": "breached", "41": "breached", "42": "nothing_yet", "43": "not_judged", "44": "overdue"},
                         {number: row["state"] for number, row in self.board().items()})

    def test_what_an_ended_version_is_owed_or_had_passed_stands_on_the_board(self):
        # October's return was asked for by the first version and nobody made it; the second asks from November on.
        monthly = {"condition": "44", "kind": "duty", "what": "return", "when": {"cycle": "month"},
                   "due": {"n": 5, "unit": "days"}, "nil_required": True}
        ended = dict(CONDITIONS[1], value=10, to="2025-11-05")
        self.under(dict(monthly, to="2025-11-01"), dict(monthly, **{"from": "2025-11-01"}), ended)
        board = self.board()
        self.assertEqual("overdue", board["44"]["state"])
        self.assertEqual((False, "over"), (board["2"]["in_force"], board["2"]["state"]))
        self.assertIn("2", self.board("--period", "2025-11"))
        self.assertNotIn("2", self.board("--period", "2025-12", "--as-at", "2025-12-20T00:00+13:00"))

    def test_what_breached_it_is_told_by_trip(self):
        self.under(NIGHT)
        row = self.row("16")
        self.assertEqual({"complied": 2, "breached": 1, "cannot_tell": 0}, row["judged"])
        (bad,) = [f for f in row["findings"] if f["state"] == "breached"]
        self.assertEqual(("T-1", "L-1", "2025-11-01T00:04:00+13:00"), (bad["trip"], bad["load"], bad["at"]))
        self.assertEqual(("local or summer time?", "Tern Council"), (row["open_question"], row["settled"]["by"]))

    def test_a_period_judges_what_ended_in_it_and_its_limits_at_its_end(self):
        self.under(NIGHT, CONDITIONS[1])
        # T-1 ended at 00:04 on 1 November: it is November's.
        october, november = (self.board("--period", month) for month in ("2025-10", "2025-11"))
        self.assertEqual(("nothing_yet", "breached"), (october["16"]["state"], november["16"]["state"]))
        self.assertEqual([0, 630], [round(b["2"]["limits"][0]["used"], 6) for b in (october, november)])
        said = self.ask("conditions", self.book, "--from", "2025-11-02T00:00", "--to", "2025-11-03T16:08")
        self.assertEqual((1, "2025-11-03T16:07:59.999+13:00"),
                         (len(said["conditions"][0]["findings"]), said["as_at"]))

    def test_the_same_limits_as_of_headroom(self):
        self.new()
        rows = [limit for row in self.board().values() for limit in row["limits"]]
        self.assertEqual(self.ask("headroom", self.book, *AS_AT)["limits"], rows)

    def test_the_same_places_as_of_releases(self):
        moved = changed(table(TRIPS), "T-2", lon="179.5")
        self.new(trips_csv=changed(moved, "T-3", lat=""))
        placed = self.ask("releases", self.book, *AS_AT)["rows"]
        told = self.row("4")["findings"]
        self.assertEqual(["complied", "breached", "cannot_tell"], [f["state"] for f in told])
        self.assertEqual([(c["state"], c["why"]) for row in placed for c in row["conditions"]],
                         [(f["state"], f["why"]) for f in told])

    def test_the_sea_of_a_trip_else_the_last_observation(self):
        trips = changed(changed(table(TRIPS), "T-2", wave_height_m="1.9"), "T-3", wave_height_m="")
        self.under(CONDITIONS[4], trips_csv=trips)
        self.assertEqual(["complied", "breached", "cannot_tell"], [f["state"] for f in self.row("5")["findings"]])
        seen = "time,place,wave_height_m\n2025-11-03T14:00+13:00,bar,1.2\n"
        self.write("add", self.book, "--from", self.folder({"observations.csv": seen}, "more"))
        self.assertEqual(["complied", "breached", "complied"], [f["state"] for f in self.row("5")["findings"]])

    def test_records_that_are_missing_are_told_after_a_day(self):
        self.under(RECORD)
        lacking = {(f["load"], f["why"]) for f in self.row("41")["findings"] if f["state"] == "breached"}
        self.assertEqual({("L-3", "not recorded: ullage dips"), ("L-3", "clay may not go to Deep Hole")},
                         {(load, "not recorded: ullage dips" if "not recorded" in why else why)
                          for load, why in lacking})
        self.sbk("log", self.book, "trip", "T-2", "wave_height_m=", "--by=Ana", "--why=misread")
        self.assertIn(("T-2", "not recorded: significant wave height"),
                      {(f["trip"], f["why"]) for f in self.row("41")["findings"]})
        early = self.row("41", "--as-at", "2025-11-03T12:00+13:00")["findings"]
        self.assertNotIn("not recorded: significant wave height", {f["why"] for f in early})

    def test_a_watch_that_was_kept_complies(self):
        watches = ("id,trip,observer,start,end,species,distance_m,cleared\n"
                   "W-1,T-1,Ana,2025-10-31T23:20+13:00,2025-11-01T00:05+13:00,,,\n"
                   "W-2,T-2,Ana,2025-11-03T09:20+13:00,,dolphin,250,2025-11-03T09:50+13:00\n")
        self.under(WATCH, watches_csv=watches)
        self.assertEqual([("T-1", "complied"), ("T-2", "breached"), ("T-3", "breached")],
                         [(f["trip"], f["state"]) for f in self.row("40")["findings"]])

    def test_turbidity_stands_by_its_sites_and_events(self):
        self.under(TRIGGER)
        self.assertEqual("cannot_tell", self.row("9")["state"])  # its site has no logger
        readings = {"turbidity/sites.csv": SITES, "turbidity/C1.csv": half_hours([1] * 12),
                    "turbidity/R1.csv": half_hours([2, 2, 20, 20, 20, 20, 2, 2, 2, 2, 2, 2])}
        self.write("add", self.book, "--from", self.folder(readings, "more"))
        states = [self.row("9", "--as-at", f"2025-11-03T{t}+13:00")["state"] for t in ("14:00", "15:00", "17:30", "22:00")]
        self.assertEqual(["within", "over", "was_over", "cannot_tell"], states)
        row = self.row("9", "--as-at", "2025-11-03T15:00+13:00")
        self.assertEqual(("R1", "over", "open"), (row["sites"][0]["site"], row["sites"][0]["telling"],
                                                  row["events"][0]["state"]))

    def test_turbidity_that_cannot_be_told_says_why(self):
        self.under(TRIGGER)
        self.assertEqual("R1: no reading of it is in the book", self.row("9")["why"])
        readings = {"turbidity/sites.csv": SITES, "turbidity/C1.csv": half_hours([1] * 3),
                    "turbidity/R1.csv": half_hours([2] * 12)}
        self.write("add", self.book, "--from", self.folder(readings, "more"))

        def why(t):
            row = self.row("9", "--as-at", f"2025-11-03T{t}+13:00")
            return row["state"], row["why"]
        self.assertEqual(("within", None), why("14:00"))
        self.assertEqual(("cannot_tell", "R1: of its control C1 there are 0 % of the readings, and the condition asks "
                                         "for 50 %"), why("18:00"))
        row = self.row("9", "--period", "2025-11", "--as-at", "2025-12-03T00:00+13:00")
        self.assertEqual(("cannot_tell", "R1: its last reading is of 2025-11-03T18:30:00+13:00, too old to tell"),
                         (row["state"], row["why"]))
        said = self.sbk("conditions", self.book, "--period", "2025-11", "--as-at", "2025-12-03T00:00+13:00").stdout
        self.assertIn("cannot tell  condition 9 (murky): R1: its last reading is of 2025-11-03T18:30:00+13:00", said)

    def test_what_fell_to_an_older_version_stands_with_the_newer(self):
        old, new = dict(NIGHT, to="2025-11-02"), dict(NIGHT, **{"from": "2025-11-02"}, hours=["01:00..02:00"])
        self.under(old, new)
        (row,) = self.ask("conditions", self.book, *AS_AT)["conditions"]
        self.assertEqual({"complied": 2, "breached": 1, "cannot_tell": 0}, row["judged"])

    def test_a_period_that_ends_before_it_begins_and_a_month_with_an_end_are_not_asked_for(self):
        self.new()
        words = ("conditions", self.book, "--from", "2025-11-02T00:00", "--to", "2025-11-01T00:00")
        self.ask(*words, status=1)
        self.assertEqual(2, self.sbk("conditions", self.book, "--period", "2025-11", "--to", "2025-12-01").returncode)

    def test_people_read_a_line_a_condition(self):
        self.under(*CONDITIONS, *KINDS)
        said = self.sbk("conditions", self.book, *AS_AT).stdout
        self.assertIn("breached     condition 16 (No release between 20:00 and 06:00.): of 3 judged 1 breached, 0 cannot be told", said)
        self.assertIn("    2025-11-01T00:04:00+13:00 trip T-1 breached it: not at this time", said)
        self.assertIn("not judged   condition 43 (be a good neighbour): no kind of condition fits it", said)

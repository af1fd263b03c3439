# SPDX-License-Identifier: GPL-3.0-or-later
"""Where a release was: held against the ground that the trip names, its exclusions out, with the position's u."""
from trade import DEVICE, IN_W, NOW, ON_WRECK, OUTSIDE, Trade, changed, season

SEASON = season()


class Releases(Trade):
    def row(self, **values):
        self.new(trips_csv=changed(SEASON["trips.csv"], "T-2", **values))
        rows = self.ask("releases", self.book)["rows"]
        found = [r for r in rows if r["trip"] == "T-2"]
        self.assertEqual(1, len(found))
        return found[0]

    def test_a_position_well_inside_is_inside_and_its_distance_positive(self):
        row = self.row(lat=IN_W[0], lon=IN_W[1], cell="W")
        self.assertEqual(("inside", "W"), (row["verdict"], row["cell"]))
        self.assertGreater(row["distance_to_boundary_m"], 800)

    def test_a_position_in_degrees_and_minutes_is_the_same_position(self):
        row = self.row(lat=IN_W[0], lon=IN_W[1], cell="W")
        lat, lon = (abs(float(degrees)) for degrees in IN_W)
        self.setUp()
        again = self.row(lat=f"{int(lat)}°{lat % 1 * 60:.6f}'S", lon=f"{int(lon)} {lon % 1 * 60:.6f} E", cell="W")
        self.assertEqual(row["verdict"], again["verdict"])
        self.assertAlmostEqual(row["distance_to_boundary_m"], again["distance_to_boundary_m"], delta=0.01)

    def test_a_position_well_outside_is_outside_and_its_distance_negative(self):
        row = self.row(lat=OUTSIDE[0], lon=OUTSIDE[1])
        self.assertEqual("outside", row["verdict"])
        self.assertLess(row["distance_to_boundary_m"], -8000)

    def test_an_exclusion_is_not_of_the_ground(self):
        row = self.row(lat=ON_WRECK[0], lon=ON_WRECK[1])
        self.assertEqual("outside", row["verdict"])
        # The wreck's square is 0.002° wide: 84.6 m from its middle to its sides at this latitude (COMP, by its
        # degree of longitude of 84.6 km).
        self.assertAlmostEqual(-84.6, row["distance_to_boundary_m"], delta=1)

    def test_within_two_u_of_the_line_nobody_can_tell(self):
        # 0.0002° east of the western edge: 16.9 m inside.
        for u, verdict in (("8", "inside"), ("9", "cannot_tell")):
            with self.subTest(u):
                self.setUp()
                row = self.row(lat="-40.59", lon="179.6002", position_u_m=u)
                self.assertAlmostEqual(16.9, row["distance_to_boundary_m"], delta=0.3)
                self.assertEqual(verdict, row["verdict"])

    def test_a_blank_u_is_ten_metres_and_said_so(self):
        row = self.row(lat="-40.59", lon="179.6002", position_u_m="")
        self.assertEqual(("cannot_tell", 10, True),
                         (row["verdict"], row["position_u_m"], row["position_u_assumed"]))

    def test_a_release_without_a_position_is_not_inside(self):
        row = self.row(lat="", lon="")
        self.assertEqual(("cannot_tell", None), (row["verdict"], row["distance_to_boundary_m"]))

    def test_half_a_position_is_none(self):
        self.assertEqual("cannot_tell", self.row(lon="")["verdict"])

    def test_a_release_names_its_own_place_before_its_trips(self):
        self.new(releases_csv="release,trip,empty,ground,cell,lat,lon,position_u_m\n"
                              "R-1,T-2,2025-11-03T10:08+13:00,Deep Hole,W,-40.59,179.5,5\n")
        row = next(r for r in self.ask("releases", self.book)["rows"] if r["trip"] == "T-2")
        self.assertEqual(("outside", "R-1"), (row["verdict"], row["release"]))

    def test_a_position_that_is_logged_is_held_against_its_ground_at_once(self):
        self.new()

        def logged(*columns):
            said = self.sbk("log", self.book, "trip", "T-2", *columns, *DEVICE, *NOW, "--by", "Ana")
            self.assertEqual(0, said.returncode, said.stderr)
            return said.stderr

        self.assertEqual("", logged("remarks=calm"))
        self.assertRegex(logged("lat=-40.59", "lon=179.625", "position_u_m=5"),
                         r"^note: trip T-2: inside Deep Hole, \d+ m from its edge\n$")
        self.assertRegex(logged("lon=179.5"), r"outside Deep Hole, \d+ m from its edge")
        self.assertRegex(logged("lat=40.59", "lon=179.61"),
                         r"\d+ km from Deep Hole: is the latitude's sign right\?")
        self.assertEqual("40.59", self.sbk("show", self.book, "trip", "T-2", "--json").stdout
                         .split('"lat":')[1].split(",")[0].strip(' "'))

    def test_only_what_was_released_by_then_is_listed(self):
        self.new()
        self.assertEqual(["T-1"], [r["trip"] for r in self.ask("releases", self.book, "--as-at",
                                                               "2025-11-01T00:04+13:00")["rows"]])

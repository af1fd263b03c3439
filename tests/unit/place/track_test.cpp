// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/track.h"

#include "tests/unit/place/shapes.h"

namespace spoilbook::test {
namespace {

constexpr Instant cast_off{1780000000000};

/// A fix so many seconds after casting off.
Fix fix(int seconds, double east, double north) {
    return {cast_off + seconds * ms_per_second, {east, north}};
}

Instant after(double seconds) {
    return cast_off + static_cast<std::int64_t>(seconds * 1000);
}

/// Due east at 3 m/s, then, from 300 m on, due north.
std::vector<Fix> east_then_north() {
    return {fix(0, 0, 0), fix(50, 150, 0), fix(100, 300, 0), fix(150, 300, 150), fix(200, 300, 300)};
}

}  // namespace

TEST_CASE("the tug is between two fixes, evenly in time", "[place][track]") {
    const auto track = east_then_north();
    CHECK(place_on_track(track, after(75), 60).value() == EastNorth{225, 0});
    CHECK(place_on_track(track, after(0), 60).value() == EastNorth{0, 0});
    CHECK(place_on_track(track, after(200), 60).value() == EastNorth{300, 300});
    CHECK(place_on_track(track, after(100), 60).value() == EastNorth{300, 0});
    CHECK_THAT(place_on_track(track, after(149.999), 60).value().northing_m, WithinAbs(149.997, 1e-9));
}

TEST_CASE("no place is made up where the track has none", "[place][track]") {
    const auto track = east_then_north();
    const auto because = [](const auto& checked) { return checked.refusals().at(0).what; };
    CHECK_THAT(because(place_on_track({}, after(0), 60)), Catch::Contains("has no fixes"));
    CHECK_THAT(because(place_on_track(track, after(-0.001), 60)), Catch::Contains("begins later"));
    CHECK_THAT(because(place_on_track(track, after(200.001), 60)), Catch::Contains("ends earlier"));
    CHECK_THAT(because(place_on_track(track, after(75), 49)), Catch::Contains("gap of 50 s"));
    // At a fix there is no gap to bridge.
    CHECK(place_on_track(track, after(100), 1).ok());
}

TEST_CASE("a barge towed astern lies one line-length back on the track", "[place][track]") {
    const auto track = east_then_north();
    const HopperPlace hopper = hopper_astern(track, after(50), 120, 5, 60).value();
    CHECK_THAT(hopper.place.easting_m, WithinAbs(30, 1e-6));
    CHECK_THAT(hopper.place.northing_m, WithinAbs(0, 1e-6));
    // By hand: 120 m x 0.258819 / 1.96 = 15.846 m; with 5 m: 16.616 m.
    CHECK_THAT(hopper.u_m, WithinAbs(16.616, 0.001));
}

TEST_CASE("round a bend the line cuts the corner", "[place][track]") {
    // By hand: tug at (300, 30), line 50 m: the hopper is 40 m short of the corner, at (260, 0).
    const HopperPlace hopper = hopper_astern(east_then_north(), after(110), 50, 0, 60).value();
    CHECK_THAT(hopper.place.easting_m, WithinAbs(260, 1e-6));
    CHECK_THAT(hopper.place.northing_m, WithinAbs(0, 1e-6));
}

TEST_CASE("a receiver that jitters while waiting does not shorten the line", "[place][track]") {
    std::vector<Fix> track{fix(0, 0, 0), fix(50, 150, 0)};
    for (int i = 1; i <= 40; ++i)
        track.push_back(fix(50 + i, 150 + (i % 2 ? 3 : 0), i % 2 ? 3 : 0));
    const HopperPlace hopper = hopper_astern(track, after(90), 100, 0, 60).value();
    CHECK_THAT(hopper.place.easting_m, WithinAbs(50, 1e-6));
}

TEST_CASE("a hopper cannot be placed before the track begins or over a gap", "[place][track]") {
    const auto track = east_then_north();
    const auto because = [](const auto& checked) { return checked.refusals().at(0).what; };
    CHECK_THAT(because(hopper_astern(track, after(20), 120, 5, 60)), Catch::Contains("does not reach back"));
    CHECK_THAT(because(hopper_astern(track, after(50), 120, 5, 49)), Catch::Contains("gap of 50 s"));
    CHECK_THAT(because(hopper_astern(track, after(300), 120, 5, 60)), Catch::Contains("ends earlier"));
    CHECK(hopper_astern(track, after(20), 0, 5, 60).value().place == EastNorth{60, 0});
    CHECK(hopper_astern(track, after(20), 0, 5, 60).value().u_m == 5);
}

TEST_CASE("a whole release is as far inside as its worst place", "[place][track]") {
    const Area ground = ground_with_wreck();
    using Way = std::vector<EastNorth>;
    // By hand: past the wreck's hole (its north side at 5 498 500) at 40 m.
    CHECK_THAT(least_signed_distance_m(ground, Way{{712800, 5498540}, {713200, 5498540}}),
               WithinAbs(40, 0.01));
    // Straight over the hole's middle: 100 m is the worst. Both ends are 100 m inside.
    CHECK_THAT(least_signed_distance_m(ground, Way{{712800, 5498400}, {713200, 5498400}}),
               WithinAbs(-100, 0.01));
    // Out of the ground by 25 m and back.
    CHECK_THAT(least_signed_distance_m(ground, Way{{711700, 5498000}, {711615, 5498100}, {711700, 5498200}}),
               WithinAbs(-25, 0.01));
    CHECK(least_signed_distance_m(ground, Way{{711700, 5498000}}) == 60);
    CHECK(std::isnan(least_signed_distance_m(ground, Way{})));
    CHECK(std::isnan(least_signed_distance_m(ground, Way{{711700, 5498000}, {NAN, 0}})));
    CHECK(least_signed_distance_m({}, Way{{0, 0}, {1, 1}}) == -INFINITY);
}

TEST_CASE("the worst place agrees with a look every centimetre", "[place][track]") {
    const Area ground = area_of({wavy_ring({0, 0}, 100, 60), wavy_ring({-10, 0}, 30, 12)});
    for (int turn = 0; turn < 12; ++turn) {
        const double angle = turn * 0.5;
        const EastNorth from{90 * std::cos(angle), 90 * std::sin(angle)};
        const EastNorth to{90 * std::cos(angle + 1.4), 90 * std::sin(angle + 1.4)};
        double slow = INFINITY;
        for (int i = 0; i <= 12000; ++i) {
            const double t = i / 12000.0;
            slow = std::min(
                slow, signed_distance_m(ground, {from.easting_m + t * (to.easting_m - from.easting_m),
                                                 from.northing_m + t * (to.northing_m - from.northing_m)}));
        }
        CHECK_THAT(least_signed_distance_m(ground, std::vector{from, to}), WithinAbs(slow, 0.02));
    }
}

}  // namespace spoilbook::test

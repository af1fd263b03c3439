// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/sun.h"

#include <catch2/catch.hpp>

#include "model/unit/time_text.h"

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

namespace {

Instant at(const std::string& text) {
    return *parse_instant(text, Zone::utc());
}

/// The turns of the UTC day.
std::vector<Instant> turns_on(const std::string& day, LonLat site) {
    const Instant midnight = at(day + "T00:00Z");
    return sun_turns({midnight, midnight + ms_per_day}, site);
}

}  // namespace

TEST_CASE("the sun stands where the almanac has it", "[sun]") {
    // J. Meeus, Astronomical Algorithms, example 25.a: 1992 October 13, 0h TD, apparent. MEM.
    const SunPlace sun = sun_place(at("1992-10-13T00:00Z"));
    CHECK_THAT(sun.right_ascension_deg, WithinAbs(198.38083, 0.00001));
    CHECK_THAT(sun.declination_deg, WithinAbs(-7.78507, 0.00001));
    // COMP: libastro through PyEphem 4.1.4, epoch of date.
    CHECK_THAT(sun_place(at("2025-11-03T20:00Z")).right_ascension_deg, WithinAbs(219.22188604, 0.01));
    CHECK_THAT(sun_place(at("2025-11-03T20:00Z")).declination_deg, WithinAbs(-15.33005823, 0.01));
    CHECK_THAT(sun_place(at("2050-06-01T00:00Z")).declination_deg, WithinAbs(22.04736973, 0.01));
    CHECK_THAT(sun_place(at("1999-01-01T12:00Z")).right_ascension_deg, WithinAbs(281.54519197, 0.01));
}

TEST_CASE("she rises and sets when another library says so", "[sun]") {
    struct Row {
        std::string day;
        LonLat site;
        std::string first, second;
    };
    // COMP: PyEphem 4.1.4, horizon -0:50, pressure 0, use_center.
    const std::vector<Row> rows{{"2024-06-20", {51.4769, 0}, "03:42:39", "20:20:46"},
                                {"2025-12-20", {-40.6, 179.6}, "07:31:35", "16:26:59"},
                                {"2025-06-20", {-40.6, 179.6}, "04:41:03", "19:25:26"},
                                {"2025-09-27", {-41.2865, 174.7762}, "06:22:29", "18:00:28"},
                                {"2025-03-20", {-0.18, -78.47}, "11:17:56", "23:24:25"},
                                {"2025-03-01", {67.28, 14.4}, "06:18:39", "16:12:15"},
                                {"2030-12-21", {60.15, -1.15}, "09:07:59", "14:57:20"},
                                {"2040-06-21", {-54.8, -68.3}, "12:58:58", "20:11:29"}};
    for (const auto& row : rows) {
        INFO(row.day);
        const auto turns = turns_on(row.day, row.site);
        REQUIRE(turns.size() == 2);
        CHECK_THAT(static_cast<double>(turns[0] - at(row.day + "T" + row.first + "Z")), WithinAbs(0, 15000));
        CHECK_THAT(static_cast<double>(turns[1] - at(row.day + "T" + row.second + "Z")), WithinAbs(0, 15000));
    }
}

TEST_CASE("she rises and sets near the poles when another library says so", "[sun]") {
    struct Row {
        std::string day;
        LonLat site;
        std::string first, second;
    };
    // COMP: PyEphem 4.1.4 as above. Where the sun slants along the horizon, 0.01 degree is a minute or two.
    const std::vector<Row> rows{{"2025-09-10", {-77.85, 166.67}, "05:34:51", "20:01:04"},
                                {"2025-02-25", {-77.85, 166.67}, "10:38:09", "15:36:50"},
                                {"2025-06-21", {-66.0, 140.0}, "01:18:35", "04:04:57"},
                                {"2025-10-15", {-67.57, -68.13}, "08:42:04", "23:56:54"},
                                {"2025-12-21", {-64.77, -64.05}, "03:06:49", "05:21:37"},
                                {"2025-03-20", {78.22, 15.65}, "04:49:53", "17:23:38"},
                                {"2026-04-10", {78.22, 15.65}, "01:48:55", "20:16:52"},
                                {"2028-11-05", {71.17, 25.78}, "07:27:57", "12:31:43"}};
    for (const auto& row : rows) {
        INFO(row.day << " at " << row.site.lat_deg);
        const auto turns = turns_on(row.day, row.site);
        REQUIRE(turns.size() == 2);
        CHECK_THAT(static_cast<double>(turns[0] - at(row.day + "T" + row.first + "Z")), WithinAbs(0, 120000));
        CHECK_THAT(static_cast<double>(turns[1] - at(row.day + "T" + row.second + "Z")),
                   WithinAbs(0, 120000));
    }
}

TEST_CASE("day and night of weeks begin and end when another library says so", "[sun]") {
    struct Row {
        LonLat site;
        std::string day_before, day_after;
        bool lasting_before, light_before, lasting_after, light_after;
    };
    // COMP: PyEphem 4.1.4, which days of 2025 in UTC have a rising and a setting; two days to either side.
    const LonLat north{78.22, 15.65}, south{-77.85, 166.67};
    const std::vector<Row> rows{
        {north, "2025-02-13", "2025-02-17", true, false, false, false},
        {north, "2025-04-16", "2025-04-20", false, false, true, true},
        {north, "2025-08-22", "2025-08-26", true, true, false, false},
        {north, "2025-10-25", "2025-10-29", false, false, true, false},
        {south, "2025-02-17", "2025-02-21", true, true, false, false},
        {south, "2025-04-22", "2025-04-27", false, false, true, false},
        {south, "2025-08-17", "2025-08-21", true, false, false, false},
        {south, "2025-10-21", "2025-10-25", false, false, true, true},
    };
    const auto check = [](const std::string& day, LonLat site, bool lasting, bool light) {
        INFO(day << " at " << site.lat_deg);
        CHECK(turns_on(day, site).empty() == lasting);
        if (!lasting) return;
        for (const char* hour : {"T00:00Z", "T06:00Z", "T12:00Z", "T18:00Z"})
            CHECK(is_daylight(at(day + hour), site) == light);
    };
    for (const auto& row : rows) {
        check(row.day_before, row.site, row.lasting_before, row.light_before);
        check(row.day_after, row.site, row.lasting_after, row.light_after);
    }
}

TEST_CASE("the printed minutes of Greenwich at midsummer are met", "[sun]") {
    // Sunrise and sunset tables for London, 20 June: 03:43 and 20:21 UT, whole minutes. MEM.
    const auto turns = turns_on("2024-06-20", {51.4769, 0});
    CHECK_THAT(static_cast<double>(turns[0] - at("2024-06-20T03:43Z")), WithinAbs(0, 60000));
    CHECK_THAT(static_cast<double>(turns[1] - at("2024-06-20T20:21Z")), WithinAbs(0, 60000));
}

TEST_CASE("a turn is the first millisecond of day or of night", "[sun]") {
    const LonLat site{-40.6, 179.6};
    for (const Instant turn : turns_on("2025-11-03", site))
        CHECK(is_daylight(turn, site) != is_daylight(turn - 1, site));
    const Instant turn = turns_on("2025-11-03", site).front();
    CHECK(sun_turns({turn, turn + 1}, site) == std::vector{turn});
    CHECK(sun_turns({turn + 1, turn + 2}, site).empty());
}

TEST_CASE("far north the sun stays up or down for weeks", "[sun]") {
    const LonLat tromso{69.65,
                        18.96};  // midnight sun from about 20 May, polar night from about 27 November: MEM
    CHECK(turns_on("2025-06-21", tromso).empty());
    CHECK(is_daylight(at("2025-06-21T23:00Z"), tromso));
    CHECK(turns_on("2025-12-21", tromso).empty());
    CHECK_FALSE(is_daylight(at("2025-12-21T11:00Z"), tromso));
    CHECK(turns_on("2025-05-10", tromso).size() == 2);
    CHECK_FALSE(is_daylight(at("2025-06-21T12:00Z"), {-90, 0}));
}

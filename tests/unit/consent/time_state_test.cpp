// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/time_state.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "model/place/sun.h"
#include "model/unit/time_text.h"

using namespace spoilbook;
using Catch::Matchers::Contains;
using nlohmann::json;

namespace {

const Zone auckland = *Zone::named("Pacific/Auckland");
constexpr LonLat off_the_cape{-40.6, 179.6};

Instant local(const std::string& text) {
    return *parse_instant(text, auckland);
}

TideLevels tide_of(const std::vector<std::pair<std::string, double>>& rows) {
    Shelf<Tide> shelf;
    for (const auto& [time, level] : rows)
        shelf.add(Tide{Id{}, local(time), level});
    return TideLevels(shelf);
}

/// A condition, and what it is judged by.
struct Judged {
    TimeRule rule;
    TideLevels tide;
    std::optional<LonLat> site;

    explicit Judged(const json& body, TideLevels levels = tide_of({}),
                    std::optional<LonLat> where = off_the_cape)
        : rule(*time_rule_from(body)), tide(std::move(levels)), site(where) {}

    [[nodiscard]] TimeSite by() const { return {auckland, site, tide}; }
    [[nodiscard]] std::optional<bool> holds(const std::string& at) const {
        return hold_state(rule, by(), local(at));
    }
    [[nodiscard]] std::optional<Instant> ends(const std::string& at) const {
        return hold_ends(rule, by(), local(at));
    }
    [[nodiscard]] std::string missing(const std::string& at) const {
        return what_is_missing(rule, by(), local(at));
    }
};

const json by_day_only{{"mode", "allow"}, {"daylight", "day"}};

}  // namespace

TEST_CASE("a release by daylight alone waits for the sun") {
    const Judged judged(by_day_only);
    CHECK(judged.holds("2025-11-03T12:00") == false);
    CHECK(judged.holds("2025-11-03T23:00") == true);
    const auto sunrise = judged.ends("2025-11-03T23:00");
    REQUIRE(sunrise);
    CHECK(is_daylight(*sunrise, off_the_cape));
    CHECK_FALSE(is_daylight(*sunrise - 1, off_the_cape));
    CHECK(auckland.day_of(*sunrise) == Day{2025, 11, 4});
    CHECK(Judged({{"mode", "forbid"}, {"daylight", "night"}}).ends("2025-11-03T23:00") == sunrise);
}

TEST_CASE("the night of the change of clocks ends at the same sunrise") {
    // 28 September 2025, 02:00 becomes 03:00. Sunrise 18:00:28 UTC at Wellington: COMP, PyEphem 4.1.4.
    const Judged judged(by_day_only, tide_of({}), LonLat{-41.2865, 174.7762});
    const auto sunrise = judged.ends("2025-09-27T23:00");
    REQUIRE(sunrise);
    CHECK(std::abs(*sunrise - local("2025-09-28T07:00:28")) <= 15 * ms_per_second);
}

TEST_CASE(
    "where the sun does not rise for weeks it holds for weeks, and daylight without a place is unknown") {
    const Judged arctic(by_day_only, tide_of({}), LonLat{72, 20});
    const auto first_day = arctic.ends("2025-12-01T12:00");
    REQUIRE(first_day);
    CHECK(*first_day > local("2026-01-15T00:00"));
    CHECK(*first_day < local("2026-02-01T00:00"));
    CHECK(Judged({{"mode", "forbid"}, {"daylight", "day"}}, tide_of({}), LonLat{90, 0})
              .ends("2025-05-01T12:00") > local("2025-09-20T00:00"));
    const Judged nowhere(by_day_only, tide_of({}), std::nullopt);
    CHECK_FALSE(nowhere.holds("2025-11-03T12:00"));
    CHECK_THAT(nowhere.missing("2025-11-03T12:00"), Contains("place"));
}

TEST_CASE("a tide window ends where the level next leaves it") {
    const auto tide =
        tide_of({{"2025-11-03T06:00", 0.0}, {"2025-11-03T08:00", 2.0}, {"2025-11-03T10:00", 0.0}});
    const Judged above({{"mode", "allow"}, {"tide_level_m", {{"min", 1.0}}}}, tide);
    CHECK(above.holds("2025-11-03T06:59:59") == true);
    CHECK(above.holds("2025-11-03T07:00") == false);
    CHECK(above.holds("2025-11-03T09:00") == false);
    CHECK(above.holds("2025-11-03T09:00:01") == true);
    CHECK(above.ends("2025-11-03T06:30") == local("2025-11-03T07:00"));
    const Judged shut({{"mode", "forbid"}, {"tide_level_m", {{"min", 0.5}, {"max", 1.5}}}}, tide);
    CHECK(shut.ends("2025-11-03T07:00") == local("2025-11-03T07:30") + 1);
    CHECK(shut.holds("2025-11-03T08:00") == false);
    CHECK(shut.ends("2025-11-03T09:00") == local("2025-11-03T09:30") + 1);
}

TEST_CASE("a bound that the tide meets on a millisecond is met on it") {
    // 0.3 of the 0.64 m of an hour: 15/32 of it, 28 min 7.5 s; in binary digits the level there is under 0.5.
    const auto tide = tide_of({{"2025-11-03T08:12", 0.2}, {"2025-11-03T09:12", 0.84}});
    const Judged above({{"mode", "allow"}, {"tide_level_m", {{"min", 0.5}}}}, tide);
    CHECK(above.ends("2025-11-03T08:20") == local("2025-11-03T08:40:07.500"));
}

TEST_CASE("between tide rows over three hours apart, and outside them, the level is not known") {
    const auto tide =
        tide_of({{"2025-11-03T06:00", 2.0}, {"2025-11-03T09:00", 2.0}, {"2025-11-03T12:00:00.001", 0.0}});
    const Judged judged({{"mode", "allow"}, {"tide_level_m", {{"max", 1.0}}}}, tide);
    CHECK(judged.holds("2025-11-03T07:30") == true);
    CHECK(judged.holds("2025-11-03T09:00") == true);
    CHECK_FALSE(judged.holds("2025-11-03T10:00"));
    CHECK_FALSE(judged.holds("2025-11-03T05:59"));
    CHECK_THAT(judged.missing("2025-11-03T10:00"), Contains("tide.csv"));
    CHECK_FALSE(judged.ends("2025-11-03T07:30"));
}

TEST_CASE("what is not known matters only where what is known leaves it open") {
    const Judged nights(
        {{"mode", "forbid"}, {"hours", json::array({"20:00..06:00"})}, {"tide_level_m", {{"max", 1.0}}}});
    CHECK(nights.holds("2025-11-03T12:00") == false);
    CHECK_FALSE(nights.holds("2025-11-03T21:00"));
    const Judged tied({{"mode", "forbid"}, {"weekdays", json::array({"mon"})}, {"tied_to", "the regatta"}});
    CHECK(tied.holds("2025-11-04T12:00") == false);
    CHECK_FALSE(tied.holds("2025-11-03T12:00"));
    CHECK_THAT(tied.missing("2025-11-03T12:00"), Contains("the regatta"));
    const Judged season(
        {{"mode", "forbid"}, {"dates", json::array({"12-20..01-10"})}, {"daylight", "night"}});
    CHECK(season.holds("2025-12-25T23:00") == true);
    CHECK(season.holds("2025-12-19T23:00") == false);
    CHECK(season.ends("2026-01-10T23:00") == local("2026-01-11T00:00"));
}

// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/consent/as_reported.h"
#include "model/consent/release_check.h"
#include "support.h"

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

namespace {

/// A load of 120 m³ in the hopper, sand of B 1.20: 100 m³ in situ, released on 3 November.
struct Revised {
    SmallSeason small;
    Id sand = small.id();
    Id load;

    Revised() {
        Material material;
        material.id = sand;
        material.material = "sand";
        material.bulking_factor = 1.2;
        small.season.materials.add(material);
        Load row;
        row.id = load = small.id();
        row.load = "L-1";
        row.material = sand;
        row.stated_hopper_m3 = 120;
        row.loading_end = small.at("2025-11-03T08:00");
        small.season.loads.add(row);
        Trip trip;
        trip.id = small.id();
        trip.load = row.id;
        trip.release_end = small.at("2025-11-03T10:00");
        small.season.trips.add(trip);
    }
    void revise(double bulking, const char* accepted = "") {
        Factor row;
        row.id = small.id();
        row.from = small.at("2025-11-01T00:00");
        row.material = sand;
        row.factor = "bulking";
        row.value = bulking;
        if (*accepted != 0) row.accepted = small.at(accepted);
        small.season.factors.add(row);
    }
    LimitState term(const char* value, const char* as_at) {
        small.condition(
            "1", (R"({"measure":"in_situ_m3","window":{"kind":"term"},"value":)" + std::string(value) + "}")
                     .c_str());
        return small.limits(as_at).back();
    }
};

}  // namespace

TEST_CASE("until the authority accepts a factor that restates downwards, the higher is judged", "[limit]") {
    Revised a;
    a.revise(1.5, "2025-12-01T00:00");  // 80 m³ as restated
    const auto waiting = a.term("90", "2025-11-30T12:00");
    CHECK_THAT(waiting.used, WithinAbs(100, 1e-9));
    CHECK_THAT(*waiting.used_as_reported, WithinAbs(100, 1e-9));
    CHECK_THAT(*waiting.used_as_restated, WithinAbs(80, 1e-9));
    CHECK(waiting.first_over == a.small.at("2025-11-03T10:00"));
    CHECK(waiting.condition == &a.small.season.conditions.rows().front());
    const auto accepted = a.small.limits("2025-12-01T00:00").front();
    CHECK_THAT(accepted.used, WithinAbs(80, 1e-9));
    CHECK_FALSE(accepted.used_as_reported.has_value());
    CHECK_FALSE(accepted.first_over.has_value());
}

TEST_CASE("a factor that restates upwards is judged before anybody accepts it", "[limit]") {
    Revised a;
    a.revise(1.0);  // 120 m³
    const auto state = a.term("110", "2025-11-30T12:00");
    CHECK_THAT(state.used, WithinAbs(120, 1e-9));
    CHECK_THAT(*state.used_as_reported, WithinAbs(100, 1e-9));
    CHECK(state.p_over == 1.0);
}

TEST_CASE("a floor is judged by the lower of both", "[limit]") {
    Revised a;
    a.revise(1.0);
    a.small.condition("2",
                      R"({"measure":"in_situ_m3","op":"at_least","window":{"kind":"term"},"value":110})");
    CHECK_THAT(a.small.limits("2025-11-30T12:00").front().used, WithinAbs(100, 1e-9));
}

TEST_CASE("the first factor of a material revises nothing and waits for nobody", "[limit]") {
    Revised a;
    Factor row;
    row.id = a.small.id();
    row.from = a.small.at("2025-11-01T00:00");
    row.material = a.sand;
    row.factor = "fill";
    row.value = 0.9;
    a.small.season.factors.add(row);
    CHECK_FALSE(season_as_reported(a.small.season, a.small.at("2025-11-30T12:00")).has_value());
    row.id = a.small.id();
    row.from = a.small.at("2025-11-02T00:00");
    a.small.season.factors.add(row);
    const auto reported = season_as_reported(a.small.season, a.small.at("2025-11-30T12:00"));
    REQUIRE(reported);
    CHECK(reported->factors.size() == 1);
    // A revision that begins later changes nothing yet.
    CHECK_FALSE(season_as_reported(a.small.season, a.small.at("2025-11-01T12:00")).has_value());
}

TEST_CASE("a release that only the accepted factor stops is held until the other is accepted", "[limit]") {
    Revised a;
    a.revise(1.5, "2025-12-01T00:00");
    a.small.condition("1", R"({"measure":"in_situ_m3","window":{"kind":"term"},"value":90})");
    PlannedRelease planned;
    planned.load = a.load;
    planned.at = a.small.at("2025-11-03T10:00");
    const auto held = check_release(Ledger(a.small.season), planned).value();
    CHECK(held.verdict == CheckState::hold);
    REQUIRE(held.reasons.size() == 1);
    CHECK(held.reasons[0].condition == &a.small.season.conditions.rows().front());
    planned.at = a.small.at("2025-12-02T10:00");
    CHECK(check_release(Ledger(a.small.season), planned).value().verdict == CheckState::clear);
}

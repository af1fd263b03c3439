// SPDX-License-Identifier: GPL-3.0-or-later
// A hold's end: asked again at any instant before it the check still holds, and from it on it does not.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "model/consent/release_check.h"
#include "tests/property/consent_seasons.h"

using namespace spoilbook;
using namespace seasons;

namespace {

bool holds(const Season& season, PlannedRelease planned, Instant at) {
    planned.at = at;
    return check_release(Ledger(season), planned)->verdict == CheckState::hold;
}

}  // namespace

TEST_CASE("a hold lasts to its end and not a millisecond longer", "[window]") {
    CHECK(rc::check([] {
        SmallSeason small;
        small.season.zone = *Zone::named(
            *rc::gen::element<std::string>("Pacific/Auckland", "Europe/Berlin", "America/Santiago", "UTC"));
        const auto place = *rc::gen::inRange<std::size_t>(0, 4);
        Instant last{0};
        for (const auto& put : any_season(small.season.zone, place)) {
            small.released_at(put.at, put.m3, Id{});
            last = std::max(last, put.at);
        }
        Load load;
        load.id = small.id();
        load.stated_in_situ_m3 = *rc::gen::inRange(1, 5) * 25;
        small.season.loads.add(load);
        const auto rule = any_rule();
        const std::string limit = std::to_string(*rc::gen::inRange(1, 9) * 25);
        small.condition("1", (R"({"value":)" + limit + R"(,"window":)" + window_json(rule) + "}").c_str());
        PlannedRelease planned;
        planned.load = load.id;
        planned.at = last + *rc::gen::element<std::int64_t>(0, 1, 9 * ms_per_hour, 3 * ms_per_day);
        const auto check = check_release(Ledger(small.season), planned);
        RC_PRE(check->verdict == CheckState::hold);
        const auto until = check->reasons.front().until;
        const Instant end = until.value_or(planned.at + 3 * 366 * ms_per_day);
        if (until) RC_ASSERT(!holds(small.season, planned, end));
        RC_ASSERT(holds(small.season, planned, end - 1));
        for (int i = 0; i < 40; ++i) {
            const auto before = planned.at + *rc::gen::inRange<std::int64_t>(0, end - planned.at);
            RC_ASSERT(holds(small.season, planned, before));
        }
        for (const std::int64_t hours : {1, 2, 5, 10, 24, 30, 48, 72})
            RC_ASSERT(end - hours * ms_per_hour < planned.at ||
                      holds(small.season, planned, end - hours * ms_per_hour));
    }));
}

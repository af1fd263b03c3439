// SPDX-License-Identifier: GPL-3.0-or-later
// Counts without uncertainty are read from an array of numbers, those with it from what each method says of
// the load: the same figures by two ways.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "model/consent/count_list.h"
#include "tests/unit/volume/a_season.h"

using namespace spoilbook;
using namespace spoilbook::test;

namespace {

/// One load of several parts, with or without dips, a factor or something left in the hopper, in two
/// releases.
Season any_season() {
    ASeason a;
    for (int i = *rc::gen::inRange(1, 5); i > 0; --i) {
        Line line;
        line.station = *rc::gen::element(in_c1, in_c2);
        line.material = *rc::gen::element(0U, sand, clay);
        if (*rc::gen::inRange(0, 8) != 0) line.count = *rc::gen::inRange(1, 60);
        a.lines.push_back(line);
    }
    if (*rc::gen::arbitrary<bool>()) a.load.dips_m = {1.2, 1.4};
    if (*rc::gen::arbitrary<bool>()) a.load.left_before_m3 = 20;
    if (*rc::gen::arbitrary<bool>()) a.materials.back().bulking_factor.reset();
    if (*rc::gen::arbitrary<bool>()) a.materials.front().grain_density_t_m3.reset();
    Season season = a.made();
    Trip trip;
    trip.id = id(300);
    trip.load = season.loads.rows().front().id;
    season.trips.add(trip);
    for (const double share : {0.3, 0.7}) {
        Release release;
        release.id = id(share < 0.5 ? 301 : 302);
        release.trip = trip.id;
        release.share = share;
        release.doors_shut = hours(share < 0.5 ? 101 : 102);
        season.releases.add(release);
    }
    return season;
}

}  // namespace

TEST_CASE("what counts is the same number with its uncertainty and without", "[ledger]") {
    CHECK(rc::check([] {
        const Season season = any_season();
        const Ledger ledger(season);
        Quantity quantity;
        quantity.measure = *rc::gen::element(LimitMeasure::in_situ_m3, LimitMeasure::hopper_m3,
                                             LimitMeasure::wet_t, LimitMeasure::dry_t);
        quantity.each_of = *rc::gen::element(EachOf::none, EachOf::claim, EachOf::material, EachOf::plant);
        quantity.method = *rc::gen::element<std::string>("", "", "tally", "ullage");
        quantity.scope.activity = *rc::gen::element(Activity::release, Activity::release, Activity::dredge);
        const auto members = members_of(quantity, season);
        const auto with_u = counts_of(quantity, members, {}, ledger);
        const auto without = counts_of(quantity, members, {}, ledger, {{}, {}, false});
        RC_ASSERT(with_u.size() == without.size());
        for (std::size_t i = 0; i < with_u.size(); ++i) {
            RC_ASSERT(with_u[i].at == without[i].at);
            RC_ASSERT(with_u[i].member == without[i].member);
            RC_ASSERT(with_u[i].load == without[i].load);
            RC_ASSERT(with_u[i].unknown == without[i].unknown);
            RC_ASSERT(with_u[i].amount.value == without[i].amount.value);
        }
    }));
}

// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/answer/evidence.h"
#include "model/answer/standing.h"
#include "tests/support/small_id.h"

using namespace spoilbook;
using tests::id_of;

namespace {

/// Three loads of 300, 400 and 500 m³ stated in situ, released at noon UTC of 1, 2 and 3 March 2026.
Season three_trips() {
    Season season;
    Consent consent;
    consent.id = id_of(1);
    consent.commences = Instant{1767225600000};  // 2026-01-01T00:00Z
    season.consents.add(consent);
    Condition condition;
    condition.id = id_of(2);
    condition.condition = "5";
    condition.consent = consent.id;
    condition.kind = "quantity";
    condition.body =
        R"({"measure":"in_situ_m3","op":"at_most","value":1000,"window":{"kind":"rolling","n":2,"unit":"day"}})";
    season.conditions.add(condition);
    for (unsigned char i = 0; i < 3; ++i) {
        const Instant noon{1772366400000 + i * ms_per_day};  // 2026-03-01T12:00Z
        Load load;
        load.id = id_of(static_cast<unsigned char>(10 + i));
        load.loading_end = noon - ms_per_hour;
        load.stated_in_situ_m3 = 300 + 100 * i;
        season.loads.add(load);
        Trip trip;
        trip.id = id_of(static_cast<unsigned char>(20 + i));
        trip.load = load.id;
        trip.release_end = noon;
        trip.outcome = "released";
        season.trips.add(trip);
    }
    return season;
}

}  // namespace

TEST_CASE("the evidence of a rolling limit is the releases of its window, and they add up to what is used",
          "[evidence]") {
    const Season season = three_trips();
    const Ledger ledger(season);
    const Instant as_at{1772366400000 + 2 * ms_per_day};  // the third noon: the first has just left
    const auto states = limits_at(ledger, as_at);
    REQUIRE(states.size() == 1);
    const auto lines = evidence(ledger, states[0], as_at);
    REQUIRE(lines.size() == 2);
    CHECK(lines[0].amount.value == 400);
    CHECK(lines[1].amount.value == 500);
    CHECK(lines[1].line->load->stated_in_situ_m3 == 500.0);
    CHECK(lines[1].method == Method::stated);
    CHECK(states[0].used == 900);
}

TEST_CASE("months run from the commencement of the consent to the as-at, newest first", "[months]") {
    const Season season = three_trips();
    const Ledger ledger(season);
    CHECK(months_until(ledger, Instant{1772366400000}) ==
          std::vector<std::string>{"2026-03", "2026-02", "2026-01"});
    CHECK(months_until(ledger, Instant{0}).empty());
}

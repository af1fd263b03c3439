// SPDX-License-Identifier: GPL-3.0-or-later
// The days told must be those that a wall calendar says, and leave exactly n working days.
#include "model/consent/due_days.h"

#include <catch2/catch.hpp>

#include "model/unit/calendar.h"
#include "model/unit/time_text.h"
#include "tests/unit/consent/support.h"

using namespace spoilbook;

namespace {

/// Monthly returns, 10 working days after the month, over Christmas.
struct Returns {
    Returns() {
        Consent consent;
        consent.id = small.id();
        consent.consent = "X-2";
        consent.commences = small.at("2025-11-01T00:00+13:00");
        consent.not_working = R"({"weekends": true, "dates": ["2026-02-06"], "yearly": ["12-20..01-10"]})";
        small.season.consents.add(consent);
        Condition condition;
        condition.id = small.id();
        condition.consent = consent.id;
        condition.condition = "31";
        condition.kind = "duty";
        condition.body =
            R"({"what": "return", "when": {"cycle": "month"}, "due": {"n": 10, "unit": "working_days"},
                "nil_required": true})";
        small.season.conditions.add(condition);
    }
    SmallSeason small;
};

}  // namespace

TEST_CASE("ten working days after November are 1 to 5 and 8 to 12 December", "[due_days]") {
    Returns returns;
    const Ledger ledger(returns.small.season);
    const Zone& zone = returns.small.season.zone;
    const Instant as_at = returns.small.at("2025-12-09T10:00+13:00");
    const auto times = duty_calendar(ledger, as_at);
    REQUIRE(!times.empty());
    const auto days = due_days(times.front(), zone);
    REQUIRE(days);
    CHECK(days->n == 10);
    CHECK(days->after == Day{2025, 11, 30});
    CHECK(days->last == Day{2025, 12, 12});
    CHECK(days->not_working == std::vector<Day>{{2025, 12, 6}, {2025, 12, 7}});
    CHECK(days_left(times.front(), zone, as_at) == 3);
    CHECK(days_left(times.front(), zone, returns.small.at("2025-12-12T23:59+13:00")) == 0);
    CHECK(days_left(times.front(), zone, returns.small.at("2025-12-13T00:00+13:00")) == -1);
}

TEST_CASE("whatever is passed over, n working days are left", "[due_days]") {
    Returns returns;
    const Ledger ledger(returns.small.season);
    const Zone& zone = returns.small.season.zone;
    const auto times = duty_calendar(ledger, returns.small.at("2026-06-01T00:00+12:00"));
    REQUIRE(times.size() > 6);
    for (const auto& time : times) {
        const auto days = due_days(time, zone);
        REQUIRE(days);
        CHECK(days_between(days->last, days->after) - static_cast<int>(days->not_working.size()) == 10);
    }
    // December's: 1 to 10 January of the break, 17 and 18 January; 12 to 16, 19 to 23 count.
    const auto december = due_days(times.at(1), zone);
    CHECK(december->last == Day{2026, 1, 23});
    CHECK(december->not_working.size() == 13);
}

TEST_CASE("a duty that is not counted in working days has no days to tell", "[due_days]") {
    DutyTime time;
    CHECK(!due_days(time, Zone::utc()));
    CHECK(!days_left(time, Zone::utc(), Instant{0}));
}

TEST_CASE("where the listed dates end before the last day, the year that they end with is named",
          "[due_days]") {
    Returns returns;  // lists one date, in 2026
    const Ledger ledger(returns.small.season);
    const Zone& zone = returns.small.season.zone;
    int within = 0, beyond = 0;
    for (const auto& time : duty_calendar(ledger, returns.small.at("2026-12-28T10:00+13:00"))) {
        const auto days = due_days(time, zone);
        if (!days) continue;
        const bool is_beyond = days->last > Day{2026, 12, 31};
        ++(is_beyond ? beyond : within);
        CAPTURE(day_text(days->last));
        CHECK(days->listed_to == (is_beyond ? std::optional(2026) : std::nullopt));
        CHECK(listed_text(time, zone) == (is_beyond ? "holidays are listed to 2026 only" : ""));
    }
    CHECK(within > 3);
    CHECK(beyond > 3);
}

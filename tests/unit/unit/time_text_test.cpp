// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/unit/time_text.h"

using namespace spoilbook;

namespace {

Zone auckland() {
    return *Zone::named("Pacific/Auckland");
}

std::int64_t ms(const char* text) {
    return parse_instant(text, Zone::utc())->utc_ms;
}

}  // namespace

TEST_CASE("the examples of RFC 3339 read as the instants that it says they are", "[time]") {
    // RFC 3339 (2002), section 5.8. SEEN (from memory of the text).
    CHECK(ms("1985-04-12T23:20:50.52Z") == 482196050520);
    CHECK(ms("1996-12-19T16:39:57-08:00") == ms("1996-12-20T00:39:57Z"));
    CHECK(ms("1937-01-01T12:00:27.87+00:20") == ms("1937-01-01T11:40:27.87Z"));
}

TEST_CASE("seconds since 1970 are those that POSIX prints for known days", "[time]") {
    // POSIX.1-2017, 4.16 "Seconds Since the Epoch"; the billennium and the end of 32 bits: common practice.
    CHECK(ms("1970-01-01T00:00Z") == 0);
    CHECK(ms("2001-09-09T01:46:40Z") == 1'000'000'000'000);
    CHECK(ms("2038-01-19T03:14:07Z") == 2'147'483'647'000);
    CHECK(ms("2000-02-29T12:00:00Z") == 951825600000);  // COMP: python3 datetime
}

TEST_CASE("a wall time that happens twice needs its offset", "[time]") {
    // New Zealand Daylight Time Order 2007: clocks go back at 03:00 on the first Sunday of April.
    const auto twice = parse_instant("2026-04-05T02:30", auckland());
    REQUIRE(!twice);
    CHECK(twice.refusals().front().code == "ambiguous-time");
    CHECK(*parse_instant("2026-04-05T02:30+12:00", auckland()) -
              *parse_instant("2026-04-05T02:30+13:00", auckland()) ==
          ms_per_hour);
}

TEST_CASE("a wall time that clocks skip does not exist", "[time]") {
    // The same Order: clocks go forward at 02:00 on the last Sunday of September.
    const auto never = parse_instant("2025-09-28T02:30", auckland());
    REQUIRE(!never);
    CHECK(never.refusals().front().code == "no-such-time");
    CHECK(parse_instant("2025-09-28T01:59:59.999", auckland()).ok());
    CHECK(parse_instant("2025-09-28T03:00", auckland()).ok());
}

TEST_CASE("text that is no time is refused and never guessed", "[time]") {
    for (const char* text :
         {"", "2025", "2025-13-01T00:00Z", "2025-02-29T00:00Z", "2025-01-01T24:01Z", "2025-01-01T23:60Z",
          "2025-01-01T23:59:60Z", "2025-01-01T10:00:00.1234Z", "2025-01-01T10:00+24:00", "01/02/2025 10:00",
          "2025-01-01T10:00Zulu", "2025-01-01", "2025-1-1T10:00Z", "0000-01-01T00:00Z"}) {
        INFO(text);
        CHECK(!parse_instant(text, Zone::utc()));
    }
}

TEST_CASE("midnight may be written as 24:00 and zeros beyond milliseconds do no harm", "[time]") {
    CHECK(ms("2025-12-31T24:00Z") == ms("2026-01-01T00:00Z"));
    CHECK(ms("2025-12-31T10:00:00.125000Z") == ms("2025-12-31T10:00:00.125Z"));
    CHECK(ms("2025-12-31 10:00Z") == ms("2025-12-31T10:00Z"));
}

TEST_CASE("an instant's text reads back as the same instant in every zone", "[time]") {
    for (const char* name :
         {"Pacific/Auckland", "Asia/Kathmandu", "America/St_Johns", "UTC", "Pacific/Chatham"}) {
        const Zone zone = *Zone::named(name);
        for (std::int64_t at = -5'000'000'000'000; at < 4'000'000'000'000; at += 77'777'777'777) {
            const auto text = instant_text(Instant{at}, zone);
            INFO(text);
            CHECK(parse_instant(text, Zone::utc())->utc_ms == at);
        }
    }
}

TEST_CASE("a zone that is none of the list, a path or the machine's own is refused", "[time]") {
    for (const char* name : {"", "Mars/Olympus", "/etc/localtime", "localtime", "../UTC", ":UTC"}) {
        CHECK(!Zone::named(name));
    }
}

TEST_CASE("what is due at midnight is due at 24:00 of the day that it ends, and reads back", "[time]") {
    const Zone zone = auckland();
    const Instant midnight = *parse_instant("2025-12-13T00:00", zone);
    CHECK(due_text(midnight, zone) == "2025-12-12T24:00:00+13:00");
    CHECK(due_text(midnight - 1, zone) == "2025-12-12T23:59:59.999+13:00");
    CHECK(due_text(*parse_instant("2026-01-01T00:00Z", Zone::utc()), Zone::utc()) == "2025-12-31T24:00:00Z");
    for (const char* name : {"Pacific/Auckland", "Europe/London", "America/Havana", "Asia/Beirut", "UTC"}) {
        const Zone there = *Zone::named(name);
        // Two years of hours: over clock changes at midnight too (Havana, Beirut).
        for (std::int64_t hour = 0; hour < 2 * 366 * 24; ++hour) {
            const Instant at{1'735'689'600'000 + hour * ms_per_hour};
            const std::string text = due_text(at, there);
            CAPTURE(name, text);
            REQUIRE(parse_instant(text, Zone::utc())->utc_ms == at.utc_ms);
            REQUIRE(text.find("T00:00:00") == std::string::npos);
        }
    }
}

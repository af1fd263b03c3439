// SPDX-License-Identifier: GPL-3.0-or-later
// A day as a person types it.
#include <catch2/catch.hpp>

#include "forms/shared/day_typed.h"

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

const QLocale german(QLocale::German, QLocale::Germany);

std::optional<Day> typed(const char* text, Day after = {2026, 5, 30}, const QLocale& locale = QLocale::c()) {
    return day_typed(QString::fromUtf8(text), after, locale);
}

}  // namespace

TEST_CASE("a day without its year is the next one of that name", "[day]") {
    for (const char* text : {"30 June", "30 jun", " 30  Jun. ", "30/6", "30.6.", "30 6", "30.06"}) {
        CAPTURE(text);
        CHECK(typed(text) == Day{2026, 6, 30});
    }
    CHECK(typed("30 May") == Day{2027, 5, 30});  // the day itself is over
    CHECK(typed("31 May") == Day{2026, 5, 31});
    CHECK(typed("1/2") == Day{2027, 2, 1});
    CHECK(typed("29 Feb") == Day{2028, 2, 29});
    CHECK(typed("29 Feb", {2096, 3, 1}) == Day{2104, 2, 29});
}

TEST_CASE("a year that is typed is taken, and months are read in two languages", "[day]") {
    CHECK(typed("2026-07-01") == Day{2026, 7, 1});
    CHECK(typed("1 July 2025") == Day{2025, 7, 1});
    CHECK(typed("1.7.2027") == Day{2027, 7, 1});
    CHECK(typed("3. März", {2026, 5, 30}, german) == Day{2027, 3, 3});
    CHECK(typed("3 Dezember", {2026, 5, 30}, german) == Day{2026, 12, 3});
    CHECK(typed("3 December", {2026, 5, 30}, german) == Day{2026, 12, 3});
}

TEST_CASE("what is no day is nothing", "[day]") {
    for (const char* text : {"", "31 June", "30 June 26", "2026-02-29", "29 Feb 2027", "June", "30", "30/13",
                             "0/6", "30 Ju", "x"}) {
        CAPTURE(text);
        CHECK_FALSE(typed(text));
    }
}

// SPDX-License-Identifier: GPL-3.0-or-later
// Which duties the return of a month tells.
#include "model/return/duties_in.h"

#include <catch2/catch.hpp>

#include "tests/unit/consent/support.h"

using namespace spoilbook;

namespace {

/// A survey every 1000 m³ within twenty days: reached on 26 October, 5 and 25 November and 3 December.
struct Surveys : SmallSeason {
    Surveys() {
        condition_of("duty", R"({"what":"survey","when":{"every":{"measure":"in_situ_m3","value":1000}},
                                 "due":{"n":20,"unit":"days"}})");
        for (const char* when :
             {"2025-10-26T10:00", "2025-11-05T10:00", "2025-11-25T10:00", "2025-12-03T10:00"})
            released(when, 1000);
    }
    void done(const char* when) {
        DutyDone row;
        row.id = id();
        row.condition = "9";
        row.done_at = at(when);
        season.duties_done.add(row);
    }
    /// "2025-11-05 due" each.
    std::vector<std::string> told(const char* from, const char* to, const char* as_at) const {
        const Ledger ledger(season);
        Refusals unread;
        std::vector<std::string> told;
        for (const auto& time : duties_in(ledger, {at(from), at(to)}, at(as_at), unread))
            told.push_back(instant_text(*time.arises, season.zone).substr(0, 10) + " " + text(time.state));
        CHECK(unread.empty());
        return told;
    }
};

using Told = std::vector<std::string>;
constexpr const char *november = "2025-11-01T00:00", *december = "2025-12-01T00:00",
                     *january = "2026-01-01T00:00";

}  // namespace

TEST_CASE("a duty that arose in the month is told, also where its time runs on past the month",
          "[return][duty]") {
    const Surveys book;
    CHECK(book.told(november, december, december) ==
          Told{"2025-10-26 overdue", "2025-11-05 overdue", "2025-11-25 due"});
}

TEST_CASE("what arose in the month stays told when it is done in a later one", "[return][duty]") {
    Surveys book;
    for (const char* when : {"2025-11-02T10:00", "2025-11-20T10:00", "2025-12-10T10:00"})
        book.done(when);
    CHECK(book.told(november, december, "2025-12-20T00:00") ==
          Told{"2025-10-26 done", "2025-11-05 done", "2025-11-25 done"});
}

TEST_CASE("what is still open from before is told, what arises after the month is not", "[return][duty]") {
    Surveys book;
    for (const char* when : {"2025-11-02T10:00", "2025-11-20T10:00"})
        book.done(when);
    CHECK(book.told(december, january, "2025-12-10T00:00") == Told{"2025-11-25 due", "2025-12-03 due"});
    CHECK(book.told("2025-10-01T00:00", november, "2025-12-10T00:00") == Told{"2025-10-26 done"});
}

// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/consent/duty_calendar.h"
#include "model/consent/duty_check.h"
#include "tests/unit/consent/support.h"

using namespace spoilbook;

namespace {

constexpr const char* monthly =
    R"({"what":"return","when":{"cycle":"month"},"due":{"n":10,"unit":"working_days"},"nil_required":true})";
constexpr const char* survey =
    R"({"what":"survey","when":{"every":{"measure":"in_situ_m3","value":1000}},
        "due":{"n":20,"unit":"days"},"blocks":["release"]})";

/// A season whose consent commenced on 16 June 2025, with weekends and the December break free.
class DutySeason : public SmallSeason {
 public:
    explicit DutySeason(const char* year_starts = "") {
        Consent row;
        row.id = id();
        row.consent = "X-2";
        row.commences = at("2025-06-16T00:00");
        row.year_starts = year_starts;
        row.not_working = R"({"weekends":true,"yearly":["12-20..01-10"]})";
        consent = row.id;
        season.consents.add(row);
    }

    void duty(const char* number, const char* body, const char* from = "", const char* to = "") {
        Condition row;
        row.id = id();
        row.consent = consent;
        row.condition = number;
        row.kind = "duty";
        row.body = body;
        if (*from != 0) row.from = at(from);
        if (*to != 0) row.to = at(to);
        season.conditions.add(row);
    }

    void done(const char* condition, const char* done_at, const char* covers_from = "") {
        DutyDone row;
        row.id = id();
        row.condition = condition;
        row.done_at = at(done_at);
        if (*covers_from != 0) row.covers_from = at(covers_from);
        season.duties_done.add(row);
    }

    /// The same number under another consent; answers that consent.
    Id under_another_consent(const char* number, const char* body) {
        const Id own = consent;
        Consent row = *season.consents.find(consent);
        row.id = consent = id();
        row.consent = "X-3";
        season.consents.add(row);
        duty(number, body);
        consent = own;
        return row.id;
    }

    void event(const char* kind, const char* from, const char* to = "") {
        Event row;
        row.id = id();
        row.kind = kind;
        row.from = at(from);
        if (*to != 0) row.to = at(to);
        season.events.add(row);
    }

    std::vector<DutyTime> times(const char* as_at) {
        ledger_ = std::make_unique<Ledger>(season);
        return duty_calendar(*ledger_, at(as_at));
    }

    /// The time whose period begins then: what it arises at, is due by, and its state.
    std::string of(const char* as_at, const char* covers_from) {
        for (const auto& time : times(as_at)) {
            if (time.covers && time.covers->from == at(covers_from))
                return shown(time.arises) + " " + shown(time.due) + " " + text(time.state);
        }
        return "none";
    }

    std::string shown(const std::optional<Instant>& when) const {
        return when ? instant_text(*when, season.zone).substr(0, 16) : "never";
    }

    Ledger& ledger() {
        ledger_ = std::make_unique<Ledger>(season);
        return *ledger_;
    }

 private:
    std::unique_ptr<Ledger> ledger_;
};

}  // namespace

TEST_CASE("a monthly return is due when ten working days of the next month are over", "[duty]") {
    DutySeason book;
    book.duty("31", monthly);
    // Counted on a wall calendar: 3 to 7 and 10 to 14 November 2025 are Mondays to Fridays.
    CHECK(book.of("2025-11-14T23:59", "2025-10-01T00:00") == "2025-11-01T00:00 2025-11-15T00:00 due");
    CHECK(book.of("2025-11-15T00:00", "2025-10-01T00:00") == "2025-11-01T00:00 2025-11-15T00:00 due");
    CHECK(book.of("2025-11-15T00:01", "2025-10-01T00:00") == "2025-11-01T00:00 2025-11-15T00:00 overdue");
    CHECK(book.of("2025-10-31T23:59", "2025-10-01T00:00") == "2025-11-01T00:00 2025-11-15T00:00 coming");
}

TEST_CASE("the December break does not count", "[duty]") {
    DutySeason book;
    book.duty("31", monthly);
    // December's return: 1 to 10 January is the break, 12 to 16 and 19 to 23 January 2026 are ten days.
    CHECK(book.of("2026-01-05T00:00", "2025-12-01T00:00") == "2026-01-01T00:00 2026-01-24T00:00 due");
}

TEST_CASE("the first period begins where the consent commences, and the last is a year ahead", "[duty]") {
    DutySeason book;
    book.duty("31", monthly);
    const auto times = book.times("2025-11-15T12:00");
    REQUIRE(times.size() == 17);  // June 2025 to October 2026
    CHECK(times.front().covers->from == book.at("2025-06-16T00:00"));
    CHECK(times.front().covers->to == book.at("2025-07-01T00:00"));
    CHECK(times.back().covers->to == book.at("2026-11-01T00:00"));
    CHECK(times.back().state == DutyState::coming);
    // A month that ends with the year ahead is whole.
    CHECK(book.times("2025-11-01T00:00").back().covers->to == book.at("2026-11-01T00:00"));
}

TEST_CASE("a month in which the clocks change ends at local midnight", "[duty]") {
    DutySeason book;
    book.duty("31", R"({"what":"report","when":{"cycle":"month"},"due":{"n":48,"unit":"hours"}})");
    // New Zealand's clocks went forward on 28 September 2025: September has 719 hours.
    for (const auto& time : book.times("2025-09-01T00:00")) {
        if (time.covers->from != book.at("2025-09-01T00:00")) continue;
        CHECK(time.covers->to - time.covers->from == 719 * ms_per_hour);
        CHECK(book.shown(time.due) == "2025-10-03T00:00");
    }
}

TEST_CASE("months after the month's end clamp, and days end at midnight", "[duty]") {
    DutySeason book;
    book.duty("5", R"({"what":"report","when":{"on_date":"2026-01-31"},"due":{"n":1,"unit":"months"}})");
    book.duty("6", R"({"what":"report","when":{"cycle":"month"},"due":{"n":5,"unit":"days"},
                       "nil_required":true})");
    const auto times = book.times("2025-12-01T00:00");
    CHECK(book.shown(times.front().due) == "2026-02-28T00:00");
    CHECK(book.of("2025-12-01T00:00", "2025-11-01T00:00") == "2025-12-01T00:00 2025-12-06T00:00 due");
}

TEST_CASE("a year is the consent's own, a quarter the calendar's", "[duty]") {
    DutySeason book("07-01");
    book.duty("8", R"({"what":"report","when":{"cycle":"year"}})");
    book.duty("9", R"({"what":"report","when":{"cycle":"quarter"}})");
    const auto times = book.times("2026-01-15T00:00");
    CHECK(times[0].covers->to == book.at("2025-07-01T00:00"));
    CHECK(times[1].covers->to == book.at("2026-07-01T00:00"));
    CHECK(times[1].due == std::nullopt);
    CHECK(book.of("2026-01-15T00:00", "2025-10-01T00:00") == "2026-01-01T00:00 never nil");
}

TEST_CASE("a month without a release is nil, unless nil is asked for too", "[duty]") {
    DutySeason book;
    book.released("2025-10-05T10:00", 100);
    book.duty("32", R"({"what":"report","when":{"cycle":"month"},"due":{"n":5,"unit":"days"}})");
    CHECK(book.of("2025-11-02T00:00", "2025-10-01T00:00") == "2025-11-01T00:00 2025-11-06T00:00 due");
    CHECK(book.of("2025-11-02T00:00", "2025-09-01T00:00") == "2025-10-01T00:00 2025-10-06T00:00 nil");
}

TEST_CASE("a survey is due from the release at which the total reaches each step", "[duty]") {
    DutySeason book;
    book.duty("30", survey);
    book.released("2025-10-01T10:00", 600);
    book.released("2025-10-02T10:00", 400);
    book.released("2025-10-03T10:00", 700);
    const auto times = book.times("2025-10-04T00:00");
    REQUIRE(times.size() == 2);
    CHECK(book.shown(times[0].arises) == "2025-10-02T10:00");
    CHECK(book.shown(times[0].due) == "2025-10-22T10:00");
    CHECK_THAT(*times[0].step, Catch::WithinAbs(1000, 1e-9));
    CHECK_THAT(*times[1].to_go, Catch::WithinAbs(300, 1e-9));
    CHECK_FALSE(times[1].arises);
}

TEST_CASE("what was used before the book counts, and its own steps are not asked for again", "[duty]") {
    DutySeason book;
    book.duty("30", survey);
    Opening before;
    before.id = book.id();
    before.consent = book.consent;
    before.condition = "30";
    before.value = 2300;
    before.to = book.at("2025-07-01T00:00");
    book.season.openings.add(before);
    book.released("2025-10-01T10:00", 699);
    auto times = book.times("2025-10-04T00:00");
    REQUIRE(times.size() == 1);
    CHECK_THAT(*times[0].to_go, Catch::WithinAbs(1, 1e-9));
    book.released("2025-10-02T10:00", 1);
    times = book.times("2025-10-04T00:00");
    REQUIRE(times.size() == 2);
    CHECK_THAT(*times[0].step, Catch::WithinAbs(3000, 1e-9));
}

TEST_CASE("ten loads of a tenth make one whole step", "[duty]") {
    DutySeason book;
    book.duty("30", R"({"what":"survey","when":{"every":{"measure":"in_situ_m3","value":1}}})");
    for (int i = 0; i < 10; ++i)
        book.released("2025-10-01T10:00", 0.1);
    CHECK(book.times("2025-10-04T00:00").size() == 2);
}

TEST_CASE("a spill is to be told within hours of its beginning, or of its end where the consent says",
          "[duty]") {
    DutySeason book;
    book.duty("40", R"({"what":"notice","when":{"on_event":"spill"},"due":{"n":2,"unit":"hours"}})");
    book.duty("41", R"({"what":"report","when":{"on_event":"any"},
                        "due":{"n":1,"unit":"working_days","after":"end"}})");
    book.event("spill", "2025-11-07T09:00");  // a Friday
    book.event("complaint", "2025-11-07T10:00", "2025-11-07T11:00");
    const auto times = book.times("2025-11-07T12:00");
    REQUIRE(times.size() == 3);
    CHECK(book.shown(times[0].due) == "2025-11-07T11:00");
    CHECK(times[0].state == DutyState::overdue);
    CHECK(book.shown(times[1].due) == "never");
    CHECK(times[1].state == DutyState::due);
    CHECK(book.shown(times[2].due) == "2025-11-11T00:00");  // Monday the 10th, until midnight
}

TEST_CASE("a plan due on a day may be given until that day is over", "[duty]") {
    DutySeason book;
    book.duty("3", R"({"what":"plan","when":{"on_date":"2025-11-03"}})");
    CHECK(book.times("2025-11-02T00:00").front().state == DutyState::coming);
    CHECK(book.times("2025-11-03T18:00").front().state == DutyState::due);
    CHECK(book.times("2025-11-04T08:00").front().state == DutyState::overdue);
    book.done("3", "2025-10-20T10:00");
    CHECK(book.times("2025-10-21T00:00").front().state == DutyState::done);
}

TEST_CASE("what was done counts for one time, from when it was done, and late is said", "[duty]") {
    DutySeason book;
    book.duty("31", monthly);
    book.done("31", "2025-11-20T10:00", "2025-10-01T00:00");
    CHECK(book.of("2025-11-19T00:00", "2025-10-01T00:00") == "2025-11-01T00:00 2025-11-15T00:00 overdue");
    CHECK(book.of("2025-11-21T00:00", "2025-10-01T00:00") == "2025-11-01T00:00 2025-11-15T00:00 done");
    CHECK(book.of("2025-11-21T00:00", "2025-09-01T00:00") == "2025-10-01T00:00 2025-10-15T00:00 overdue");
    for (const auto& time : book.times("2025-11-21T00:00")) {
        if (time.done != nullptr) CHECK(time.late());
    }
    // Without saying which: the earliest one open, June's.
    book.done("31", "2025-11-20T11:00");
    CHECK(book.of("2025-11-21T00:00", "2025-06-16T00:00") == "2025-07-01T00:00 2025-07-15T00:00 done");
}

TEST_CASE("one record is not for two versions of a duty", "[duty]") {
    DutySeason book;
    book.duty("31", monthly, "2025-09-01T00:00", "2025-10-15T00:00");
    book.duty("31", R"({"what":"return","when":{"cycle":"month"},"due":{"n":5,"unit":"working_days"},
                        "nil_required":true})",
              "2025-10-15T00:00");
    book.done("31", "2025-11-05T10:00");
    // September ended under the first version, October under the second.
    CHECK(book.of("2025-11-06T00:00", "2025-09-01T00:00") == "2025-10-01T00:00 2025-10-15T00:00 done");
    CHECK(book.of("2025-11-06T00:00", "2025-10-01T00:00") == "2025-11-01T00:00 2025-11-08T00:00 due");
}

TEST_CASE("a record that says which time it was for takes it before one that does not", "[duty]") {
    DutySeason book;
    book.duty("31", monthly);
    book.done("31", "2025-08-05T10:00");                      // the earliest open one that is not named
    book.done("31", "2025-08-06T10:00", "2025-06-16T00:00");  // June's, and said so, a day later
    CHECK(book.of("2025-08-07T00:00", "2025-06-16T00:00") == "2025-07-01T00:00 2025-07-15T00:00 done");
    CHECK(book.of("2025-08-07T00:00", "2025-07-01T00:00") == "2025-08-01T00:00 2025-08-15T00:00 done");
    for (const auto& time : book.times("2025-08-07T00:00")) {
        if (time.covers && time.covers->from == book.at("2025-06-16T00:00")) {
            REQUIRE(time.done != nullptr);
            CHECK(time.done->done_at == book.at("2025-08-06T10:00"));
        }
    }
}

TEST_CASE("a record that names no consent is for one duty where two consents have its number", "[duty]") {
    DutySeason book;
    book.duty("31", monthly);
    const Id other = book.under_another_consent("31", monthly);
    const auto done = [&](const char* as_at) {
        std::vector<std::string> names;
        for (const auto& time : book.times(as_at)) {
            if (time.state == DutyState::done)
                names.push_back(time.consent->consent + " " + book.shown(time.covers->from).substr(0, 10));
        }
        return names;
    };
    using Names = std::vector<std::string>;
    book.done("31", "2025-07-05T10:00", "2025-06-16T00:00");
    CHECK(done("2025-07-06T00:00") == Names{"X-2 2025-06-16"});
    // The second record of the same month can only be the other consent's.
    book.done("31", "2025-07-07T10:00", "2025-06-16T00:00");
    CHECK(done("2025-07-08T00:00") == Names{"X-2 2025-06-16", "X-3 2025-06-16"});
    // A record that names a consent is that one's, also where it was made later than one that does not.
    DutyDone named;
    named.id = book.id();
    named.consent = book.consent;
    named.condition = "31";
    named.covers_from = book.at("2025-07-01T00:00");
    named.done_at = book.at("2025-08-09T10:00");
    book.season.duties_done.add(named);
    book.done("31", "2025-08-08T10:00", "2025-07-01T00:00");
    const auto august = done("2025-08-10T00:00");
    CHECK(august == Names{"X-2 2025-06-16", "X-2 2025-07-01", "X-3 2025-06-16", "X-3 2025-07-01"});
    // One that names the other consent is not for this one.
    DutyDone theirs = named;
    theirs.id = book.id();
    theirs.consent = other;
    theirs.covers_from = book.at("2025-08-01T00:00");
    theirs.done_at = book.at("2025-09-02T10:00");
    book.season.duties_done.add(theirs);
    CHECK(done("2025-09-03T00:00").back() == "X-3 2025-08-01");
    CHECK(done("2025-09-03T00:00").size() == 5);
}

TEST_CASE("a number that only one consent has as a duty is no doubt", "[duty]") {
    DutySeason book;
    book.duty("31", monthly);
    Condition text;
    text.id = book.id();
    text.consent = book.season.consents.rows().front().id;
    text.condition = "31";
    text.kind = "text";
    book.season.conditions.add(text);
    book.done("31", "2025-07-05T10:00");
    CHECK(book.of("2025-07-06T00:00", "2025-06-16T00:00") == "2025-07-01T00:00 2025-07-15T00:00 done");
}

TEST_CASE("a new version of a duty cuts no period where the consent does not say when it commences",
          "[duty]") {
    SmallSeason small;  // found by the oracle: the quarter began at the version's own from, and was nil
    for (const bool is_first : {true, false}) {
        Condition row;
        row.id = small.id();
        row.consent = small.consent;
        row.condition = "8";
        row.kind = "duty";
        row.body = R"({"what":"report","when":{"cycle":"quarter"}})";
        if (!is_first) row.from = small.at("2025-09-17T18:29");
        if (is_first) row.to = small.at("2025-09-17T18:29");
        small.season.conditions.add(row);
    }
    small.released("2025-05-01T10:00", 100);
    small.released("2025-08-01T10:00", 100);  // in the quarter, before the new version
    const Ledger ledger(small.season);
    const auto times = duty_calendar(ledger, small.at("2025-10-02T00:00"));
    const auto third = std::find_if(times.begin(), times.end(), [&](const DutyTime& time) {
        return time.covers && time.covers->to == small.at("2025-10-01T00:00");
    });
    REQUIRE(third != times.end());
    CHECK(third->covers->from == small.at("2025-07-01T00:00"));
    CHECK(third->state == DutyState::due);
    CHECK(third->condition == &small.season.conditions.rows()[1]);
}

TEST_CASE("a record that does not say what it covers passes over what is nil, and is for a date to come",
          "[duty]") {
    DutySeason book;
    book.released("2025-10-05T10:00", 100);
    book.duty("32", R"({"what":"report","when":{"cycle":"month"},"due":{"n":5,"unit":"days"}})");
    book.duty("3", R"({"what":"plan","when":{"on_date":"2025-12-01"}})");
    book.done("32", "2025-11-03T10:00");  // June to September are nil: it is October's
    book.done("3", "2025-11-03T10:00");
    CHECK(book.of("2025-11-04T00:00", "2025-06-16T00:00") == "2025-07-01T00:00 2025-07-06T00:00 nil");
    CHECK(book.of("2025-11-04T00:00", "2025-10-01T00:00") == "2025-11-01T00:00 2025-11-06T00:00 done");
    const auto times = book.times("2025-11-04T00:00");
    const auto plan = std::find_if(times.begin(), times.end(),
                                   [](const DutyTime& time) { return time.duty.what == "plan"; });
    REQUIRE(plan != times.end());
    CHECK(plan->state == DutyState::done);
}

TEST_CASE("an overdue duty that blocks releases holds until it is done", "[duty]") {
    DutySeason book;
    book.duty("30", survey);
    book.released("2025-10-02T10:00", 1000);
    const auto judged = [&](const char* when) {
        return judge_duty(book.ledger(), book.season.conditions.rows().front(), book.at(when));
    };
    CHECK(judged("2025-10-22T10:00").state == CheckState::clear);
    const auto held = judged("2025-10-22T10:01");
    CHECK(held.state == CheckState::hold);
    CHECK_FALSE(held.until);
    CHECK_THAT(held.why, Catch::Contains("survey was due by 2025-10-22T10:00"));
    book.done("30", "2025-10-23T08:00");
    CHECK(judged("2025-10-23T07:59").state == CheckState::hold);
    CHECK(judged("2025-10-23T08:00").state == CheckState::clear);
}

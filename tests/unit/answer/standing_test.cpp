// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <fstream>

#include "model/answer/board.h"
#include "model/answer/event_answers.h"
#include "model/answer/standing.h"
#include "model/consent/duty_word.h"
#include "model/unit/shown.h"

using namespace spoilbook;

namespace {

LimitState used_of(double used, double limit) {
    LimitState state;
    state.used = used;
    state.limit = limit;
    state.quantity.warn_at = {0.8, 0.95};
    return state;
}

}  // namespace

TEST_CASE("a limit met to the litre is not over, one cubic metre more is", "[standing]") {
    CHECK(standing_of(used_of(26000, 26000)) == LimitStanding::warned);
    CHECK(standing_of(used_of(26001, 26000)) == LimitStanding::over);
    CHECK(standing_of(used_of(20799, 26000)) == LimitStanding::within);
    CHECK(standing_of(used_of(20801, 26000)) == LimitStanding::warned);
}

TEST_CASE("a load that cannot be valued leaves a limit open, unless the others are over it already",
          "[standing]") {
    LimitState state = used_of(100, 26000);
    state.unknown = 1;
    CHECK(standing_of(state) == LimitStanding::cannot_tell);
    state.used = 27000;
    CHECK(standing_of(state) == LimitStanding::over);
}

TEST_CASE("a limit that was over is never called within again, and a floor is met from below", "[standing]") {
    LimitState state = used_of(100, 26000);
    state.first_over = Instant{1};
    CHECK(standing_of(state) == LimitStanding::was_over);
    LimitState floor = used_of(100, 200);
    floor.quantity.at_most = false;
    CHECK(standing_of(floor) == LimitStanding::below);
    floor.used = 200;
    CHECK(standing_of(floor) == LimitStanding::within);
    floor.limit.reset();
    CHECK(standing_of(floor) == LimitStanding::no_limit);
}

TEST_CASE("a limit that is warned says at what share, the highest that is reached", "[standing]") {
    CHECK(standing_text(used_of(20801, 26000)) == "warned at 80 %");
    CHECK(standing_text(used_of(24701, 26000)) == "warned at 95 %");
    CHECK(standing_text(used_of(20799, 26000)) == "within");
    LimitState thirds = used_of(9, 10);
    thirds.quantity.warn_at = {0.875, 0.333};
    CHECK(standing_text(thirds) == "warned at 87.5 %");
}

TEST_CASE("every word for a state stands in docs/words.md, in the row that is about it",
          "[standing][words]") {
    std::ifstream file(SPOILBOOK_SOURCE_DIR "/docs/words.md");
    std::map<std::string, std::string> rows;
    for (std::string line; std::getline(file, line);)
        rows[line.substr(0, line.find(" |", 2))] = line;
    const auto holds = [&](const std::string& row, std::string_view word) {
        CAPTURE(row, word);
        REQUIRE(rows.count("| " + row) == 1);
        CHECK(rows.at("| " + row).find(word) != std::string::npos);
    };
    for (const auto standing :
         {LimitStanding::no_limit, LimitStanding::within, LimitStanding::warned, LimitStanding::was_over,
          LimitStanding::below, LimitStanding::over, LimitStanding::cannot_tell})
        holds("standing", standing_word(standing));
    for (const auto state :
         {DutyState::coming, DutyState::due, DutyState::overdue, DutyState::done, DutyState::nil})
        holds("duty", text(state));
    for (const auto state : {AnswerState::answered, AnswerState::undated, AnswerState::late,
                             AnswerState::waiting, AnswerState::unanswered})
        holds("answer", answer_word(state));
    for (const auto state : {Compliance::complied, Compliance::breached, Compliance::cannot_tell})
        holds("finding", in_words(text(state)));
    for (const auto state : {BoardState::not_judged, BoardState::nothing_yet})
        holds("not judged, nothing yet", in_words(text(state)));
}

TEST_CASE("a duty that was done after its time is done late", "[standing][words]") {
    DutyDone done;
    done.done_at = Instant{2000};
    DutyTime time;
    time.state = DutyState::done;
    time.due = Instant{1000};
    time.done = &done;
    CHECK(duty_word(time) == "done late");
    time.due = Instant{2000};
    CHECK(duty_word(time) == "done");
}

TEST_CASE("the least headroom is by share, not by cubic metres", "[standing]") {
    const std::vector<LimitState> states{used_of(208000, 240000), used_of(5, 6), used_of(208000, 215000)};
    CHECK(least_headroom(states) == &states[2]);
    CHECK(least_headroom({}) == nullptr);
}

TEST_CASE("the monthly limit is the one on everything released in a calendar month", "[standing]") {
    LimitState all = used_of(100, 26000);
    all.quantity.window.kind = WindowKind::calendar;
    LimitState of_one_claim = all;
    of_one_claim.quantity.scope.claims = {"FB2"};
    of_one_claim.limit = 2000;
    CHECK(monthly_limit({of_one_claim, all}) == 26000.0);
    CHECK_FALSE(monthly_limit({of_one_claim}).has_value());
}

TEST_CASE("ahead of the plan is what is planned to be left less what is left", "[standing]") {
    BurnDown burn;
    CHECK_FALSE(plan_standing(burn).has_value());
    burn.days = {
        {Day{2025, 8, 4}, 900.0, 950.0}, {Day{2025, 8, 5}, 800.0, 750.0}, {Day{2025, 8, 6}, {}, 0.0}};
    const auto standing = plan_standing(burn);
    REQUIRE(standing);
    CHECK(standing->date == Day{2025, 8, 5});
    CHECK(standing->left_m3 == 800);
    CHECK(standing->ahead_m3 == -50.0);
}

TEST_CASE("a month between two others in which nothing was released stands there with nil", "[volumes]") {
    std::vector<VolumeRow> rows(3);
    rows[0].keys = {"2025-12"};
    rows[1].keys = {"2026-02"};
    rows[2].keys = {std::nullopt};
    const auto all = with_nil_months(rows);
    REQUIRE(all.size() == 4);
    CHECK(all[1].keys.front() == "2026-01");
    CHECK(all[1].trips == 0);
    REQUIRE(all[1].amounts.in_situ_m3);
    CHECK(all[1].amounts.in_situ_m3->value == 0);
    CHECK(with_nil_months({}).empty());
}

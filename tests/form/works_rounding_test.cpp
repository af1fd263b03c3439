// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "forms/works/burndown_words.h"
#include "forms/works/evidence_sheet.h"
#include "forms/works/limit_rows.h"
#include "forms/works/say.h"
#include "tests/support/model_contract.h"

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

const QLocale nz(QLocale::English, QLocale::NewZealand);

Condition monthly() {
    Condition condition;
    condition.condition = "5";
    condition.text = "26 000 m3 a month";
    condition.body =
        R"({"open_question":"in-situ or hopper?","settled":{"letter":"MCC 412","on":"2025-07-21"}})";
    return condition;
}

LimitState used_of(const Condition& condition, double used, double limit) {
    LimitState state;
    state.condition = &condition;
    state.used = used;
    state.used_u = 120.2;
    state.limit = limit;
    state.p_over = 0.0004;
    state.quantity.warn_at = {0.8, 0.95};
    state.quantity.window.kind = WindowKind::calendar;
    return state;
}

}  // namespace

TEST_CASE("used rounds up and headroom rounds down, so that a headline never flatters", "[works]") {
    CHECK(rounded_up(25219.1, 0, nz) == QStringLiteral("25,220"));
    CHECK(rounded_down(780.9, 0, nz) == QStringLiteral("780"));
    CHECK(rounded_down(-0.2, 0, nz) == QStringLiteral("-1"));
    CHECK(share_used(0.96701, nz) == QStringLiteral("96.8 %"));
}

TEST_CASE("a number that is whole but for its last binary digits is not rounded away", "[works]") {
    CHECK(rounded_up(0.1 + 0.2, 1, nz) == QStringLiteral("0.3"));
    CHECK(rounded_up(1 - 1e-12, 0, nz) == QStringLiteral("1"));
    CHECK(rounded_down(3 - 1e-12, 0, nz) == QStringLiteral("3"));
}

TEST_CASE("a small chance is never shown as none, a large one never as certain", "[works]") {
    CHECK(probability_shown(0.0004, nz) == QStringLiteral("< 0.1 %"));
    CHECK(probability_shown(0.9996, nz) == QStringLiteral("> 99.9 %"));
    CHECK(probability_shown(0, nz) == QStringLiteral("0 %"));
    CHECK(probability_shown(0.125, nz) == QStringLiteral("12.5 %"));
}

TEST_CASE("the evidence of a share is headed by what it is a share of", "[works]") {
    const Condition condition = monthly();
    LimitState share = used_of(condition, 0.1, 0.2);
    share.quantity.share_of_total = 0.2;
    share.quantity.measure = LimitMeasure::dry_t;
    const auto rows = limit_rows({share}, Zone::utc(), nz);
    CHECK(rows[0].unit == QStringLiteral("%"));
    const RowTable<EvidenceRow> evidence(evidence_columns(rows[0], nz));
    CHECK(
        evidence.headerData(3, Qt::Horizontal, Qt::DisplayRole).toString().contains(QStringLiteral("t dry")));
}

TEST_CASE("a headroom row reads as the consent does and copies exactly", "[works]") {
    const Condition condition = monthly();
    const auto rows = limit_rows({used_of(condition, 25219.1, 26000)}, Zone::utc(), nz);
    REQUIRE(rows.size() == 1);
    CHECK(rows[0].what == QStringLiteral("26 000 m³ a month"));
    CHECK(rows[0].word == QStringLiteral("warned at 95 %"));
    CHECK(rows[0].state == State::attention);
    CHECK(rows[0].open_question == QStringLiteral("in-situ or hopper?"));
    CHECK(rows[0].settled == QStringLiteral("MCC 412, 2025-07-21"));
    RowTable<LimitRow> table(limit_columns(nz));
    table.set_rows(rows);
    CHECK(table.index(0, 2).data().toString() == QStringLiteral("780"));
    CHECK(table.index(0, 3).data().toString() == QStringLiteral("25,220"));
    CHECK(table.index(0, 3).data(copy_role).toString() == QStringLiteral("25219.1"));
    CHECK(table.index(0, 7).data().toString() == QStringLiteral("< 0.1 %"));
}

TEST_CASE("a share is shown in per cent and a limit that is over says so in its word", "[works]") {
    const Condition condition = monthly();
    LimitState state = used_of(condition, 0.1512, 0.15);
    state.used_u = 0.001;
    state.quantity.share_of_total = 0.15;
    state.member = Member{"C4", {}};
    const auto rows = limit_rows({state}, Zone::utc(), nz);
    CHECK(rows[0].unit == QStringLiteral("%"));
    CHECK(rows[0].limit == Approx(15).margin(1e-9));
    CHECK(rows[0].name == QStringLiteral("5 · C4"));
    CHECK(rows[0].state == State::hold);
    CHECK(rows[0].word == QStringLiteral("over"));
}

TEST_CASE("the headroom table keeps the contract of an item model", "[works]") {
    const Condition condition = monthly();
    RowTable<LimitRow> table(limit_columns(nz));
    test::require_model_contract({&table}, [&] {
        table.set_rows(limit_rows({used_of(condition, 1, 2), used_of(condition, 3, 2)}, Zone::utc(), nz));
        table.set_rows({});
    });
}

TEST_CASE("the page's sentence says done, left, against the plan, and the least headroom", "[works]") {
    const Condition condition = monthly();
    BurnDown burn;
    burn.planned_m3 = 226000;
    burn.dredged_m3 = 208012.7;
    burn.dredged_u_m3 = 1240.2;
    burn.days = {{Day{2026, 5, 30}, 17987.3, 16000.0}};
    const QString said = burndown_sentence(burn, {used_of(condition, 25219.1, 26000)}, nz);
    CHECK(said ==
          QStringLiteral("208,012 ± 1,241 m³ in situ of 226,000 m³ dredged, 17,988 m³ left, 1,988 m³ behind "
                         "the plan. Least headroom: condition 5 (26 000 m³ a month), 97.0 % used, 780 m³ in "
                         "situ left."));
    CHECK(dredged_figure(burn, nz).value == QStringLiteral("208,012"));
    CHECK(left_figure(burn, nz).value == QStringLiteral("17,988"));
    CHECK(plan_figure(burn, nz).caption == QStringLiteral("Behind the plan"));
    CHECK(headroom_figure(nullptr, nz).value.isEmpty());
}

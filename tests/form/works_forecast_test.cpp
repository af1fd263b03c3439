// SPDX-License-Identifier: GPL-3.0-or-later
// What comes first, on the manager's page over the sample book, worked by keys.
#include <QButtonGroup>
#include <QClipboard>
#include <QLineEdit>
#include <QSlider>
#include <QTableView>

#include "forms/shared/chart_frame.h"
#include "forms/works/burndown_leaf.h"
#include "forms/works/forecast_words.h"
#include "forms/works/what_if_panel.h"
#include "forms/works/what_if_words.h"
#include "model/unit/calendar.h"
#include "tests/form/works_sample_desk.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

const QLocale nz(QLocale::English, QLocale::NewZealand);
constexpr Day today{2026, 5, 30};

/// The page as a manager has it before her.
struct Page {
    SampleDesk desk;
    BurndownLeaf leaf{desk.figures};

    Page() {
        leaf.resize(1080, 680);
        leaf.show();
        REQUIRE(QTest::qWaitForWindowActive(&leaf));
    }
    QSlider* slider(const char* name) {
        for (auto* slider : leaf.findChildren<QSlider*>()) {
            if (slider->accessibleName() == QString::fromUtf8(name)) return slider;
        }
        return nullptr;
    }
    QPushButton* button(const char* name) {
        for (auto* button : leaf.findChildren<QPushButton*>()) {
            if (button->text() == QString::fromUtf8(name)) return button;
        }
        return nullptr;
    }
    QTableView* dates() {
        for (auto* table : leaf.findChildren<QTableView*>()) {
            if (table->model()->headerData(2, Qt::Horizontal).toString() == QStringLiteral("Even"))
                return table;
        }
        return nullptr;
    }
    QString copied(int row, int column) {
        const auto* table = dates();
        return table->model()->index(row, column).data(copy_role).toString();
    }
};

Forecast two_limits(const Condition& condition) {
    Forecast made;
    made.weeks = 13;
    made.left_m3 = 17000;
    made.target = {Day{2026, 6, 15}, Day{2026, 6, 23}, Day{2026, 6, 30}, 1};
    LimitForecast limit;
    limit.state.condition = &condition;
    limit.state.quantity.window = {WindowKind::rolling, WindowUnit::months, 12, {}, {}, {}};
    limit.dates = {Day{2026, 6, 3}, Day{2026, 6, 9}, Day{2026, 6, 16}, 1};
    limit.p_before_target = 0.97;
    made.limits = {limit};
    made.first = {{ComesFirst::What::limit, 0, 0.97}, {ComesFirst::What::target, 0, 0.03}};
    return made;
}

}  // namespace

TEST_CASE("a manager reads in words which comes first, how surely and about when", "[works][forecast]") {
    Condition condition;
    condition.condition = "4";
    Forecast made = two_limits(condition);
    CHECK(forecast_sentence(made, today, nz) ==
          QStringLiteral("The 12-month limit (condition 4) comes first, 97 in 100: about 9 June. "
                         "The target about 23 June, between 15 and 30 June."));
    std::swap(made.first[0], made.first[1]);
    CHECK(forecast_sentence(made, today, nz)
              .startsWith(QStringLiteral("The target comes first, 3 in 100: about 23 June, between 15 and")));
    made.target.p90 = Day{2027, 1, 4};
    CHECK(forecast_sentence(made, today, nz).contains(QStringLiteral("between 15 June and 4 January 2027")));
    made.target = {Day{2026, 6, 15}, {}, {}, 0.3};
    CHECK(forecast_sentence(made, today, nz).contains(QStringLiteral("not before 15 June")));
}

TEST_CASE("a limit that is over is not said to come", "[works][forecast]") {
    Condition condition;
    condition.condition = "4";
    Forecast made = two_limits(condition);
    made.limits[0].state.limit = 215000;
    made.limits[0].state.used = 215001;
    CHECK(forecast_sentence(made, today, nz)
              .startsWith(QStringLiteral("The 12-month limit (condition 4) is over already. The target")));
}

TEST_CASE("draws never prove a never or an always", "[works][forecast]") {
    CHECK(chance_shown(0, nz) == QStringLiteral("fewer than 1 in 100"));
    CHECK(chance_shown(1, nz) == QStringLiteral("more than 99 in 100"));
    CHECK(chance_shown(0.5, nz) == QStringLiteral("50 in 100"));
}

TEST_CASE("without a forecast the page says why", "[works][forecast]") {
    Forecast none;
    none.why_none = "no claim has a planned volume";
    CHECK(forecast_sentence(none, today, nz) ==
          QStringLiteral("No forecast of what comes first: no claim has a planned volume."));
    Page page;
    page.desk.session.set_as_at(*parse_instant("2025-08-01T00:00+12:00", Zone::utc()));
    REQUIRE(comes_to_say(page.leaf, "fewer than four weeks of dredging are logged"));
    CHECK(page.dates()->model()->rowCount() == 0);
    CHECK(page.leaf.findChild<ChartFrame*>()->data().series.size() == 4);  // plan, left, target, as at
    // Nothing is logged yet: what would build on it cannot be moved, and says so.
    CHECK_FALSE(page.slider("Barges")->isEnabled());
    CHECK(says(page.leaf, QStringLiteral("Barges: not logged")));
    CHECK(says(page.leaf, QStringLiteral("not in the log: no filling is logged within a shift")));
    CHECK(page.slider("Over-dredge")->isEnabled());
}

TEST_CASE("the page says, draws and tabulates what the model forecasts", "[works][forecast]") {
    Page page;
    REQUIRE(comes_to_say(page.leaf, "The 12-month limit (condition 4) comes first"));
    CHECK(says(page.leaf, QStringLiteral("as the last 13 weeks")));
    const auto figures = page.desk.figures.newest();
    ForecastAsked asked;
    asked.as_at = figures->as_at;
    const Forecast made = forecast(*figures->ledger, asked);
    REQUIRE(page.dates()->model()->rowCount() == int(made.limits.size()) + 1 + (made.season_closes ? 1 : 0));
    CHECK(page.copied(0, 1).toStdString() == day_text(*made.target.p10));
    CHECK(page.copied(0, 2).toStdString() == day_text(*made.target.p50));
    CHECK(page.copied(0, 3).toStdString() == day_text(*made.target.p90));
    for (int i = 0; i < int(made.limits.size()); ++i) {
        const LimitForecast& limit = made.limits[std::size_t(i)];
        const auto& even = limit.dates.p50;
        CHECK(page.copied(i + 1, 2).toStdString() == (even ? day_text(*even) : ""));
        if (limit.p_before_target)
            CHECK_THAT(page.copied(i + 1, 4).toDouble(),
                       Catch::Matchers::WithinAbs(*limit.p_before_target, 1e-12));
    }
    const ChartData& chart = page.leaf.findChild<ChartFrame*>()->data();
    const auto tick = std::find_if(chart.series.begin(), chart.series.end(),
                                   [](const ChartSeries& s) { return s.label == QStringLiteral("4"); });
    REQUIRE(tick != chart.series.end());
    CHECK(tick->points[0].x() == tick->points[1].x());
    CHECK(chart.x.most >= tick->points[0].x());
}

TEST_CASE("more shift hours bring the target nearer, and one press goes back to the log",
          "[works][forecast]") {
    Page page;
    REQUIRE(comes_to_say(page.leaf, "as the last 13 weeks"));
    const QString logged = page.copied(0, 2);
    QSlider* hours = page.slider("Shift hours a day");
    REQUIRE(hours != nullptr);
    hours->setFocus();
    QTest::keyClick(hours, Qt::Key_End);
    REQUIRE(comes_to_say(page.leaf, "What if: 24.0 shift hours a day."));
    CHECK(page.copied(0, 2) < logged);   // as 2026-06-09, earlier days sort first
    CHECK(page.copied(1, 2) == logged);  // as logged, in the row below
    QTest::keyClick(page.slider("In-situ m³ an hour"), Qt::Key_Home);
    QTest::keyClick(hours, Qt::Key_Home);
    for (int i = 1; i < 24; ++i)
        QTest::keyClick(hours, Qt::Key_Right);
    REQUIRE(comes_to_say(page.leaf, "What if: 12.0 shift hours a day, in-situ m³ an hour × 0.50."));
    CHECK(page.copied(0, 2) > logged);
    QPushButton* back = page.button("Back to the log");
    back->setFocus();
    QTest::keyClick(back, Qt::Key_Space);
    REQUIRE(comes_to_say(page.leaf, "as the last 13 weeks"));
    CHECK(page.copied(0, 2) == logged);
    CHECK_FALSE(back->isVisible());
    CHECK(QApplication::focusWidget() == page.slider("Barges"));
}

TEST_CASE("a manager sees who holds the loads up, and that another tug does what another barge does not",
          "[works][forecast]") {
    Page page;
    REQUIRE(comes_to_say(page.leaf, "held up by the tugs"));
    const QString logged = page.copied(0, 2);
    QTest::keyClick(page.slider("Barges"), Qt::Key_Right);
    REQUIRE(comes_to_say(page.leaf, "What if: 3 barges."));
    CHECK(page.copied(0, 2) == logged);
    CHECK(says(page.leaf, QStringLiteral("held up by the tugs (as logged")));
    QTest::keyClick(page.slider("Tugs"), Qt::Key_Right);
    REQUIRE(comes_to_say(page.leaf, "What if: 3 barges, 2 tugs."));
    CHECK(page.copied(0, 2) < logged);
    CHECK(says(page.leaf, QStringLiteral("held up by the dredger")));
    const auto& series = page.leaf.findChild<ChartFrame*>()->data().series;
    CHECK(std::any_of(series.begin(), series.end(),
                      [](const ChartSeries& s) { return s.name == QStringLiteral("as logged, even"); }));
    // What is said is what the one call says.
    const auto figures = page.desk.figures.newest();
    ForecastAsked asked;
    asked.as_at = figures->as_at;
    WorksSupposed supposed;
    supposed.barges = 3;
    supposed.tugs = 2;
    const auto answer = what_if(*figures->ledger, asked, supposed);
    CHECK(page.copied(0, 1).toStdString() == day_text(*answer->as_supposed.target.p10));
    CHECK(page.copied(0, 3).toStdString() == day_text(*answer->as_supposed.target.p90));
    CHECK(says(page.leaf, held_up_shown(answer->logged, answer->to_be, QLocale())));
    QSlider* haul = page.slider("Haul");
    QTest::keyClick(haul, Qt::Key_Right);
    REQUIRE(comes_to_say(page.leaf, "2 tugs, haul 1 km longer."));
    QTest::keyClick(haul, Qt::Key_Left);
    REQUIRE(comes_to_say(page.leaf, "What if: 3 barges, 2 tugs."));
}

TEST_CASE("all that can be supposed is seen, however wide the page is", "[works][forecast]") {
    Page page;
    auto* panel = page.leaf.findChild<WhatIfPanel*>();
    for (const int width : {1080, 700, 1500}) {
        CAPTURE(width);
        page.leaf.resize(width, 680);
        CHECK(QTest::qWaitFor([&] {
            const auto cells = panel->findChildren<QWidget*>(Qt::FindDirectChildrenOnly);
            return std::all_of(cells.begin(), cells.end(),
                               [&](const QWidget* cell) { return panel->rect().contains(cell->geometry()); });
        }));
    }
}

TEST_CASE("a season that closes earlier comes before the target, and a day that is none is told",
          "[works][forecast]") {
    Page page;
    REQUIRE(comes_to_say(page.leaf, "as the last 13 weeks"));
    QLineEdit* closes = nullptr;
    for (auto* edit : page.leaf.findChildren<QLineEdit*>()) {
        if (edit->accessibleName() == QStringLiteral("Season closes")) closes = edit;
    }
    REQUIRE(closes != nullptr);
    closes->setFocus();
    QTest::keyClicks(closes, QStringLiteral("31 June"));
    QTest::keyClick(closes, Qt::Key_Return);
    CHECK(says(page.leaf, QStringLiteral("Write it as 30 June or 2026-06-30.")));
    CHECK_FALSE(page.button("Back to the log")->isVisible());
    closes->selectAll();
    QTest::keyClicks(closes, QStringLiteral("2 June"));
    QTest::keyClick(closes, Qt::Key_Return);
    REQUIRE(comes_to_say(page.leaf, "What if: season closes 2 June. The season's end comes first"));
    CHECK_FALSE(says(page.leaf, QStringLiteral("Write it as")));
    closes->selectAll();
    QTest::keyClicks(closes, QStringLiteral("2020-06-02"));
    QTest::keyClick(closes, Qt::Key_Return);
    REQUIRE(comes_to_say(page.leaf, "could not be worked out: season closes: 2020-06-02"));
    CHECK(page.dates()->model()->rowCount() == 0);
    CHECK(page.slider("Barges")->isEnabled());
}

TEST_CASE("over-dredge puts the target off", "[works][forecast]") {
    Page page;
    REQUIRE(comes_to_say(page.leaf, "as the last 13 weeks"));
    const QString logged = page.copied(0, 2);
    QSlider* over = page.slider("Over-dredge");
    over->setFocus();
    QTest::keyClick(over, Qt::Key_PageUp);
    REQUIRE(comes_to_say(page.leaf, "What if: over-dredge 5 %"));
    CHECK(page.copied(0, 2) > logged);
}

TEST_CASE("a key turns the table to the dates, which are copied as rows", "[works][forecast]") {
    Page page;
    REQUIRE(comes_to_say(page.leaf, "as the last 13 weeks"));
    CHECK_FALSE(page.dates()->isVisible());
    QPushButton* dates = page.button("Dates");
    dates->setFocus();
    QTest::keyClick(dates, Qt::Key_Space);
    REQUIRE(page.dates()->isVisible());
    page.dates()->setFocus();
    QTest::keyClick(page.dates(), Qt::Key_C, Qt::ControlModifier);
    CHECK(QApplication::clipboard()->text().contains(page.copied(0, 2)));
}

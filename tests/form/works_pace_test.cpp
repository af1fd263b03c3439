// SPDX-License-Identifier: GPL-3.0-or-later
// Hours and pace over the sample book: rows that close, a chart, and the delays behind a cause by keys.
#include <QLineEdit>
#include <QTabWidget>
#include <QTableView>

#include "forms/shared/sheet.h"
#include "forms/works/pace_leaf.h"
#include "tests/form/works_sample_desk.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;
using Catch::Matchers::WithinAbs;

namespace {

struct Sample {
    FiguresMade figures = make_figures(sample_book(), end_of_may());
    SeasonHours hours = season_hours(figures->season, figures->as_at);
    const Zone& zone = figures->season.zone;

    [[nodiscard]] std::vector<PaceRow> rows(HoursOver over) const {
        return pace_rows(productivity(*figures->ledger, hours, figures->as_at, over), zone, over,
                         QLocale::c());
    }
};

const Sample& sample() {
    static const Sample made;
    return made;
}

}  // namespace

TEST_CASE("the causes, digging and what is not accounted for fill the shift hours", "[pace]") {
    const auto all = hours_over(sample().hours, sample().zone, HoursOver::all);
    const auto rows = cause_rows(all.front(), sample().zone, QLocale::c());
    double hours = 0;
    double share = 0;
    std::size_t delays = 0;
    for (const CauseRow& row : rows) {
        hours += row.hours;
        share += row.share;
        delays += row.delays.size();
    }
    CHECK_THAT(hours, WithinAbs(all.front().shift_h, 1e-6));
    CHECK_THAT(share, WithinAbs(100, 1e-6));
    // Every delay of the sample stands behind one cause.
    CHECK(delays == sample().figures->season.delays.size());
    const auto bars = cause_bars(rows, QLocale::c());
    double shown = 0;
    for (const LyingBar& bar : bars)
        shown += bar.value;
    CHECK(bars.size() <= 12);
    CHECK_THAT(shown, WithinAbs(all.front().delay_h() + all.front().not_accounted_h, 1e-6));
}

TEST_CASE("weeks and shifts add up to the same hours, loads and volume", "[pace]") {
    const auto sum = [](const std::vector<PaceRow>& rows) {
        PaceRow all;
        all.in_situ_m3 = 0;
        for (const PaceRow& row : rows) {
            all.shift_h += row.shift_h;
            all.operating_h += row.operating_h;
            all.loads += row.loads;
            *all.in_situ_m3 += row.in_situ_m3.value_or(0);
        }
        return all;
    };
    const PaceRow weeks = sum(sample().rows(HoursOver::week));
    const PaceRow shifts = sum(sample().rows(HoursOver::shift));
    CHECK_THAT(weeks.shift_h, WithinAbs(shifts.shift_h, 1e-6));
    CHECK_THAT(weeks.operating_h, WithinAbs(shifts.operating_h, 1e-6));
    CHECK_THAT(*weeks.in_situ_m3, WithinAbs(*shifts.in_situ_m3, 0.01));
    CHECK(weeks.loads == shifts.loads);
}

TEST_CASE("the chart shows the rate of each week that has one, in a band of its u", "[pace]") {
    const auto weeks = sample().rows(HoursOver::week);
    const auto with_rate =
        std::count_if(weeks.begin(), weeks.end(), [](const PaceRow& row) { return row.rate.has_value(); });
    const ChartData chart = pace_chart(weeks, sample().zone, QLocale::c());
    REQUIRE(chart.series.size() == 2);
    CHECK(std::ptrdiff_t(chart.series[1].points.size()) == with_rate);
    for (std::size_t i = 0; i < chart.series[0].points.size(); ++i) {
        CHECK(chart.series[0].points[i].y() <= chart.series[1].points[i].y());
        CHECK(chart.series[0].upper[i].y() >= chart.series[1].points[i].y());
        CHECK(chart.series[0].upper[i].y() <= chart.y.most);
    }
    CHECK(pace_chart({}, sample().zone, QLocale::c()).empty());
}

TEST_CASE("a headline of pace never flatters", "[pace]") {
    ProductivityRow row;
    row.time.digging_h = 3;
    row.time.shift_h = 12;
    row.opened = 1;
    row.in_situ_m3 = Estimate{500, 20, {}};
    row.loads = {nullptr, nullptr};
    const FigureText rate = rate_figure(row, QLocale::c());
    CHECK(rate.value == QStringLiteral("166.6"));  // 166.67 down
    CHECK(rate.plus_minus == QStringLiteral("6.7"));
    row.unknown = 2;
    CHECK(rate_figure(row, QLocale::c()).basis.contains(QStringLiteral("2 loads unknown")));
    CHECK(rate_figure({}, QLocale::c()).value.isEmpty());
    CHECK(least_figure({}, QLocale::c()).value.isEmpty());
}

TEST_CASE("what was dug too deep is told, and costs what is typed beside it", "[pace]") {
    SampleDesk desk;
    PaceLeaf page(desk.figures);
    page.resize(1080, 640);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    REQUIRE(comes_to_say(page, "Most was lost to waiting for barge"));
    auto* tabs = page.findChild<QTabWidget*>();
    tabs->setCurrentIndex(tabs->count() - 1);
    // The six reports of sample-db/marram/removed.csv, added up by hand.
    REQUIRE(comes_to_say(page, "7,240 ± 1,150 m³ in situ were dug below target level, 6.6 %"));
    CHECK(says(page, QStringLiteral("1,200 ± 430 m³ of it beyond the allowance")));
    const auto* part = tabs->currentWidget();
    auto* table = part->findChild<QTableView*>();
    REQUIRE(table->model()->rowCount() == 7);
    auto* box = part->findChild<QLineEdit*>();
    REQUIRE(box);
    box->setFocus();
    QTest::keyClicks(box, QStringLiteral("20"));
    QTest::keyClick(box, Qt::Key_Return);
    REQUIRE(comes_to_say(page, "It cost 144,800 ± 23,000."));
    const auto* model = table->model();
    CHECK(model->index(6, 0).data().toString() == QStringLiteral("All"));
    CHECK(model->index(6, 5).data().toString() == QStringLiteral("144,800 ± 23,000"));
}

TEST_CASE("a cause opens its delays by Enter, a week its shifts and a shift its delays", "[pace]") {
    SampleDesk desk;
    PaceLeaf page(desk.figures);
    page.resize(1080, 640);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    REQUIRE(comes_to_say(page, "Most was lost to waiting for barge"));
    auto* tabs = page.findChild<QTabWidget*>();
    const auto open_row = [&](int tab, int row) {
        tabs->setCurrentIndex(tab);
        auto* table = tabs->currentWidget()->findChild<QTableView*>();
        table->setCurrentIndex(table->model()->index(row, 0));
        table->setFocus();
        QTest::keyClick(table, Qt::Key_Return);
    };
    const auto sheets = page.findChildren<Sheet*>();
    const auto open_sheets = [&] {
        return std::count_if(sheets.begin(), sheets.end(),
                             [](const Sheet* sheet) { return sheet->is_open(); });
    };
    open_row(0, 1);
    CHECK(open_sheets() == 1);
    CHECK(says(page, QStringLiteral("Delays: waiting for barge")));
    for (Sheet* sheet : sheets)
        sheet->close_sheet();
    REQUIRE(QTest::qWaitFor([&] { return open_sheets() == 0; }, patience_ms));
    open_row(1, 0);
    REQUIRE(open_sheets() == 1);
    QTableView* shifts = nullptr;
    for (Sheet* sheet : sheets) {
        // What the sheet showed before is on its way out.
        for (auto* table : sheet->findChildren<QTableView*>()) {
            if (sheet->is_open() && table->isVisible()) shifts = table;
        }
    }
    REQUIRE(shifts);
    CHECK(shifts->model()->rowCount() > 0);
    CHECK(shifts->model()->rowCount() <= 14);
    shifts->setCurrentIndex(shifts->model()->index(0, 0));
    shifts->setFocus();
    QTest::keyClick(shifts, Qt::Key_Return);
    CHECK(open_sheets() == 2);
}

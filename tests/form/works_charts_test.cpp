// SPDX-License-Identifier: GPL-3.0-or-later
#include <QTemporaryDir>
#include <catch2/catch.hpp>

#include "forms/works/bars.h"
#include "forms/works/burndown_chart.h"
#include "forms/works/volume_rows.h"
#include "tests/support/model_contract.h"

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

const QLocale nz(QLocale::English, QLocale::NewZealand);

std::vector<VolumeRow> two_months() {
    std::vector<VolumeRow> rows(3);
    rows[0].keys = {"2025-08"};
    rows[0].amounts.in_situ_m3 = Estimate{20100.4, 300, {}};
    rows[1].keys = {"2025-10"};
    rows[1].amounts.in_situ_m3 = Estimate{26100, 310, {}};
    rows[2].keys = {std::nullopt};
    rows[2].unknown = 2;
    return rows;
}

}  // namespace

TEST_CASE("the burn-down runs from plan and done to the target, with the as-at marked", "[works]") {
    BurnDown burn;
    burn.days = {
        {Day{2025, 9, 30}, 900.0, 950.0}, {Day{2025, 10, 1}, 880.0, 930.0}, {Day{2025, 10, 2}, {}, 910.0}};
    const ChartData data = burndown_chart(burn, Day{2025, 10, 1}, nz);
    REQUIRE(data.series.size() == 4);
    CHECK(data.series[0].points.size() == 3);
    CHECK(data.series[1].points.size() == 2);  // what is left is not known after the as-at
    CHECK(data.series[1].points.back().y() == 880);
    CHECK(data.series[2].points.front().y() == 0);
    CHECK(data.series[3].points.front().x() == data.series[1].points.back().x());
    CHECK(data.y.most >= 950);
    REQUIRE(data.x.ticks.size() == 1);
    CHECK(data.x.ticks[0].text == QStringLiteral("Oct 2025"));
    CHECK(data.x.words(data.series[0].points[2].x()).startsWith(QStringLiteral("2 Oct")));
}

TEST_CASE("a book without plan or loads has an empty burn-down that says why", "[works]") {
    const ChartData data = burndown_chart({}, Day{2025, 9, 1}, nz);
    CHECK(data.empty());
    CHECK_FALSE(data.empty_text.isEmpty());
}

TEST_CASE("months stand against the monthly limit, other groupings against none", "[works]") {
    const BarsData months = volume_bars(two_months(), GroupBy::month, 26000, nz);
    CHECK(months.limit == 26000.0);
    CHECK_FALSE(months.bars[0].over);
    CHECK(months.bars[1].over);
    CHECK(months.bars[0].name == QStringLiteral("Aug 2025"));
    CHECK(months.bars[0].value_text == QStringLiteral("20,101"));
    CHECK_FALSE(months.bars[2].value.has_value());  // not known is not nil
    CHECK_FALSE(volume_bars(two_months(), GroupBy::claim, 26000, nz).limit.has_value());
}

TEST_CASE("a volumes table keeps the contract of an item model and shows what is not known as such",
          "[works]") {
    RowTable<VolumeRow> table(volume_columns(GroupBy::month, nz));
    test::require_model_contract({&table}, [&] { table.set_rows(two_months()); });
    CHECK(table.index(2, 0).data().toString() == QStringLiteral("none named"));
    CHECK(table.index(2, 3).data().toString() == QStringLiteral("–"));
    CHECK(table.index(0, 0).data(copy_role).toString() == QStringLiteral("2025-08"));
}

TEST_CASE("the bars leave the screen as a picture, a drawing and a page", "[works]") {
    QTemporaryDir folder;
    Bars bars(QStringLiteral("Released volumes"), nullptr);
    bars.show_data(volume_bars(two_months(), GroupBy::month, 26000, nz));
    for (const char* name : {"a.png", "a.svg", "a.pdf"})
        CHECK(bars.write(folder.filePath(QString::fromLatin1(name))).isEmpty());
    CHECK_FALSE(bars.write(folder.filePath(QStringLiteral("a.bmp"))).isEmpty());
    CHECK(bars.accessibleDescription().contains(QStringLiteral("Oct 2025 26,100")));
}

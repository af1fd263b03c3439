// SPDX-License-Identifier: GPL-3.0-or-later
#include <QSignalSpy>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/consent/release_map.h"
#include "forms/consent/return_rows.h"
#include "tests/support/model_contract.h"

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

const QLocale nz(QLocale::English, QLocale::NewZealand);

std::vector<ReleaseRow> three() {
    std::vector<ReleaseRow> rows(3);
    rows[0].label = QStringLiteral("T-1");
    rows[0].verdict = PlaceVerdict::inside;
    rows[0].distance_m = 412.9;
    rows[0].place = QPointF(500, 500);
    rows[1].label = QStringLiteral("T-2");
    rows[1].verdict = PlaceVerdict::outside;
    rows[1].distance_m = -80.2;
    rows[1].place = QPointF(1000, 500);
    rows[2].label = QStringLiteral("T-3");
    rows[2].u_m = 10;
    rows[2].u_assumed = true;
    rows[2].why = QStringLiteral("no position");
    return rows;
}

std::vector<MapShape> square() {
    return {{MapShape::ground, QStringLiteral("G"), {QPolygonF(QRectF(0, 0, 1000, 1000))}}};
}

}  // namespace

TEST_CASE("the distance inside is never made longer, the one outside never shorter", "[consent]") {
    RowTable<ReleaseRow> table(release_columns(nz));
    table.set_rows(three());
    CHECK(table.index(0, 2).data().toString() == QStringLiteral("412"));
    CHECK(table.index(1, 2).data().toString() == QStringLiteral("-81"));
    CHECK(table.index(2, 2).data().toString() == QStringLiteral("–"));
    CHECK(table.index(2, 3).data().toString() == QStringLiteral("10 (taken)"));
}

TEST_CASE("a place is told by word and shape, and the sentence counts them, the worst first", "[consent]") {
    RowTable<ReleaseRow> table(release_columns(nz));
    test::require_model_contract({&table}, [&] { table.set_rows(three()); });
    CHECK(table.index(1, 1).data().toString() == QStringLiteral("outside"));
    CHECK(table.index(1, 1).data(mark_role).toInt() == int(State::hold));
    CHECK(releases_sentence(three(), nz) ==
          QStringLiteral("Releases: 3, of them 1 outside, 1 that cannot be told, 1 inside."));
}

TEST_CASE("a release's label is whole wherever the release lies, and does not lie on it", "[consent]") {
    const QRectF place(10, 20, 400, 300);
    const QSizeF size(52, 14);
    for (int x = 10; x <= 410; x += 5) {
        for (int y = 20; y <= 320; y += 5) {
            const QPointF at(x, y);
            const QRectF where = label_beside(at, size, place);
            CAPTURE(x, y, where.left(), where.top(), where.right(), where.bottom());
            REQUIRE(place.contains(where));
            REQUIRE(where.width() >= size.width());
            REQUIRE_FALSE(where.intersects(QRectF(at - QPointF(6, 6), QSizeF(12, 12))));
        }
    }
    const QRectF long_one = label_beside(QPointF(200, 100), QSizeF(2000, 14), place);
    CHECK(place.contains(long_one));
    CHECK(long_one.width() < 400);
}

TEST_CASE("pressing on the map picks the release, keys zoom and show all again", "[consent]") {
    ReleaseMap map(nullptr);
    map.resize(448, 448);  // 24 to a side are margin: 0.4 px a metre
    map.show_shapes(square());
    map.show_releases(three());
    map.show();
    QSignalSpy picked(&map, &ReleaseMap::picked);
    QTest::mouseClick(&map, Qt::LeftButton, {}, QPoint(424, 224));
    REQUIRE(picked.size() == 1);
    CHECK(picked[0][0].toInt() == 1);
    QTest::mouseClick(&map, Qt::LeftButton, {}, QPoint(100, 100));
    CHECK(picked.size() == 1);
    // Nearer by two steps the release on the edge is off the paper; the one in the middle stays.
    QTest::keyClick(&map, Qt::Key_Plus);
    QTest::keyClick(&map, Qt::Key_Plus);
    QTest::mouseClick(&map, Qt::LeftButton, {}, QPoint(424, 224));
    CHECK(picked.size() == 1);
    QTest::mouseClick(&map, Qt::LeftButton, {}, QPoint(224, 224));
    REQUIRE(picked.size() == 2);
    CHECK(picked[1][0].toInt() == 0);
    QTest::keyClick(&map, Qt::Key_0);
    QTest::mouseClick(&map, Qt::LeftButton, {}, QPoint(424, 224));
    CHECK(picked.size() == 3);
}

TEST_CASE("a return without a trip is shown as complete with nil, and prints its month", "[consent]") {
    Season season;
    ReturnFacts facts;
    facts.season = &season;
    facts.period_name = "2026-01";
    Condition neighbour;
    neighbour.condition = "10";
    facts.not_judged = {{&neighbour, "read it yourself"}};
    const ReturnShown shown = return_shown(facts, nz);
    CHECK(shown.period == QStringLiteral("Jan 2026"));
    CHECK(shown.missing.empty());
    CHECK(shown.not_judged == QStringList{QStringLiteral("10 (read it yourself)")});
    CHECK(shown.in_situ.value == QStringLiteral("0.0"));
    REQUIRE(shown.totals.size() == 1);
    RowTable<TotalRow> totals(total_columns(nz));
    RowTable<ScheduleRow> schedule(schedule_columns(nz));
    test::require_model_contract({&totals, &schedule}, [&] { totals.set_rows(shown.totals); });
    CHECK(totals.index(0, 3).data().toString() == QStringLiteral("0.0"));
}

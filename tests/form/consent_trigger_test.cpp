// SPDX-License-Identifier: GPL-3.0-or-later
// Passed triggers on the turbidity page and their answers, and the page while it waits or has little room.
#include <QTabWidget>
#include <QTableView>
#include <QTest>

#include "forms/consent/trigger_sheet.h"
#include "forms/consent/turbidity_frame.h"
#include "forms/consent/turbidity_lines.h"
#include "forms/shared/busy_overlay.h"
#include "tests/form/consent_waterside.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

TEST_CASE("a passed trigger is opened, seen with its evidence, and answered", "[turbidity]") {
    Waterside watch;
    TableView* triggers = watch.table(0);
    REQUIRE(triggers->table()->model()->rowCount() == 1);
    const auto cell = [&](int column) {
        return triggers->table()->model()->index(0, column).data().toString();
    };
    CHECK(cell(0) == QStringLiteral("over, not answered"));
    CHECK(cell(8).startsWith(QStringLiteral("overdue by")));
    triggers->table()->setFocus();
    triggers->table()->setCurrentIndex(triggers->table()->model()->index(0, 0));
    QTest::keyClick(triggers->table(), Qt::Key_Return);
    auto* sheet = watch.comes_up<TriggerSheet>();
    REQUIRE(sheet);
    const EventBar bar = watch.chart->drawn().events.front();
    REQUIRE(QTest::qWaitFor(
        [&] { return watch.chart->window().to - watch.chart->window().from < 2 * ms_per_day; }, patience_ms));
    CHECK(watch.chart->window().from < bar.span.from);
    CHECK(watch.chart->window().to > bar.span.to);
    auto* evidence = sheet->findChild<TableView*>();
    REQUIRE(QTest::qWaitFor([&] { return evidence->table()->model()->rowCount() == 4; }, patience_ms));
    // Peak: the median of six of 30.0 to 30.6 lies between; the control's hour about 8.3, five above it 13.3.
    const double peak = evidence->table()->model()->index(2, 2).data(sort_role).toDouble();
    const double control = evidence->table()->model()->index(2, 3).data(sort_role).toDouble();
    const double level = evidence->table()->model()->index(2, 4).data(sort_role).toDouble();
    CHECK(peak > 30);
    CHECK(peak < 30.6);
    CHECK(control > 8);
    CHECK(control < 8.6);
    CHECK_THAT(level - control, Catch::Matchers::WithinAbs(5, 1e-9));

    press(sheet, "Write the answer down");
    CHECK(says(*sheet, QStringLiteral("What was done must be said.")));
    type_into(sheet, "What was done", "moved to the lee of the pier");
    type_into(sheet, "Whom told", "Tern Council");
    type_into(sheet, "Told at", "2025-09-29 14:05");
    type_into(sheet, "Cause", "digging on the ebb");
    press(sheet, "Write the answer down");
    REQUIRE(QTest::qWaitFor([&] { return cell(0) == QStringLiteral("over, answered"); }, patience_ms));
    const auto& events = watch.session.season().events.rows();
    REQUIRE(events.size() == 1);
    CHECK(events.front().event == "E-0001");
    CHECK(events.front().condition == "9");
    CHECK(events.front().place == "R1");
    CHECK(events.front().from == bar.span.from);
    CHECK(events.front().action == "moved to the lee of the pier");
    CHECK(events.front().told == "Tern Council 2025-09-29T14:05:00+13:00");
}

TEST_CASE("while a book is read for the first time nobody is told that it has no readings", "[turbidity]") {
    WatchedHarbour harbour{ten_days(true), ten_days(false)};
    BookSession session{std::move(harbour.book), a_fortnight_on, {}};
    FiguresSource figures{session};
    TurbidityLeaf page{figures, harbour.file("kept")};
    auto* chart = page.findChild<TurbidityChart*>();
    page.show();
    bool claimed = false;
    REQUIRE(QTest::qWaitFor(
        [&] {
            const bool answered = !chart->drawn().view.sites.empty();
            claimed = claimed || (!answered && !chart->empty_text().isEmpty());
            return answered;
        },
        patience_ms));
    CHECK_FALSE(claimed);
    QStringList waited;
    for (const auto* overlay : page.findChildren<BusyOverlay*>())
        waited << overlay->accessibleName();
    CHECK(waited.contains(QStringLiteral("Reading the loggers' files. The first time takes longest.")));
    CHECK(waited.contains(QStringLiteral("Looking for passed triggers")));
}

TEST_CASE("at twice the size of everything the page is no wider than its window, nor is its key",
          "[turbidity]") {
    Waterside watch;
    constexpr int room = 592;  // what 1280 by 800 leaves of it
    REQUIRE(QTest::qWaitFor(
        [&] {
            watch.page.resize(room, 620);
            return watch.page.width() <= room;
        },
        patience_ms));
    CHECK(watch.page.minimumSizeHint().width() <= room);
    REQUIRE(QTest::qWaitFor([&] { return watch.chart->width() < room; }, patience_ms));
    const auto frame = turbidity_frame(watch.chart->rect(), watch.chart->drawn(), watch.chart->window());
    for (const KeyPart& part : key_parts(watch.chart->drawn().view, frame.key.width()))
        CHECK(part.place.right() <= frame.key.width());
    CHECK(frame.key.height() >= 5 * grid);
}

TEST_CASE("a press on a trigger's bar opens it too", "[turbidity]") {
    Waterside watch;
    const auto frame = turbidity_frame(watch.chart->rect(), watch.chart->drawn(), watch.chart->window());
    const QRectF bar = frame.bar(watch.chart->drawn().events.front());
    QTest::mouseClick(watch.chart, Qt::LeftButton, {}, bar.center().toPoint());
    CHECK(watch.comes_up<TriggerSheet>() != nullptr);
}

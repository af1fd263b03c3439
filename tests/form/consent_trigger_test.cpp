// SPDX-License-Identifier: GPL-3.0-or-later
// Passed triggers on the turbidity page and their answers, and the page while it waits or has little room.
#include <QTabWidget>
#include <QTableView>
#include <QTest>

#include "forms/consent/trigger_sheet.h"
#include "forms/consent/turbidity_frame.h"
#include "forms/consent/turbidity_lines.h"
#include "forms/shared/busy_overlay.h"
#include "model/answer/event_answers.h"
#include "model/unit/time_text.h"
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
    // In time is by 12:50 (two hours after it passed), so this answer is late; the return misses nothing in
    // it.
    REQUIRE(
        QTest::qWaitFor([&] { return cell(0).startsWith(QStringLiteral("over, answered")); }, patience_ms));
    TurbidityWatch water(watch.session.book(), watch.session.season(), a_fortnight_on());
    const auto answers = event_answers(water, watch.session.season(), a_fortnight_on());
    REQUIRE(answers.size() == 1);
    CHECK(answers.front().lacking.empty());
    const auto& events = watch.session.season().events.rows();
    REQUIRE(events.size() == 1);
    CHECK(events.front().event == "E-0001");
    CHECK(events.front().condition == "9");
    CHECK(events.front().place == "R1");
    CHECK(events.front().from == bar.span.from);
    CHECK(events.front().action == "moved to the lee of the pier");
    CHECK(events.front().told == "Tern Council 2025-09-29T14:05:00+13:00");
}

TEST_CASE("an answer that the return finds wanting is not shown as one, and is made whole where it stands",
          "[turbidity]") {
    Waterside watch;
    const Instant from = watch.chart->drawn().events.front().span.from;
    const Kind& kind = definition<Event>().kind();
    REQUIRE(watch.session
                .log("by hand", kind, "E-7",
                     {{"kind", "trigger"},
                      {"condition", "9"},
                      {"from", instant_text(from, watch.session.zone())},
                      {"action", "moved"}})
                .empty());
    TableView* triggers = watch.table(0);
    const auto cell = [&](int column) {
        return triggers->table()->model()->index(0, column).data().toString();
    };
    REQUIRE(
        QTest::qWaitFor([&] { return cell(0) == QStringLiteral("over, answer not whole"); }, patience_ms));
    triggers->table()->setFocus();
    triggers->table()->setCurrentIndex(triggers->table()->model()->index(0, 0));
    QTest::keyClick(triggers->table(), Qt::Key_Return);
    auto* sheet = watch.comes_up<TriggerSheet>();
    REQUIRE(sheet);
    CHECK(says(*sheet,
               QStringLiteral("The return still misses: who was told, and when, the cause, who closed it.")));
    CHECK(says(*sheet, QStringLiteral("It is closed by who writes this down: Ana.")));
    type_into(sheet, "Whom told", "Tern Council");
    type_into(sheet, "Told at", "2025-09-29 14:05");
    type_into(sheet, "Cause", "digging on the ebb");
    press(sheet, "Write the answer down");
    REQUIRE(
        QTest::qWaitFor([&] { return cell(0).startsWith(QStringLiteral("over, answered")); }, patience_ms));
    const auto& events = watch.session.season().events.rows();
    REQUIRE(events.size() == 1);
    CHECK(events.front().event == "E-7");
    CHECK(events.front().action == "moved");
    CHECK(events.front().closed_by == "Ana");
    CHECK(events.front().to.has_value());
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

TEST_CASE("of water that cannot be told the page says why", "[turbidity]") {
    auto control = ten_days(false);
    control.erase(control.end() - 5, control.end());  // one of the six of the last hour is left
    WatchedHarbour harbour{ten_days(true), control};
    BookSession session{std::move(harbour.book), [] { return logger_start + 10 * ms_per_day; }, {}};
    FiguresSource figures{session};
    TurbidityLeaf page{figures, harbour.file("kept")};
    page.show();
    CHECK(comes_to_say(
        page,
        "9: cannot tell, of its control C1 there are 16 % of the readings, and the condition asks "
        "for 50 %"));
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

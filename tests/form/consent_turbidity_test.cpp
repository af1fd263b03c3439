// SPDX-License-Identifier: GPL-3.0-or-later
// The turbidity page by real keys and mouse, over a book that is written.
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTabBar>
#include <QTabWidget>
#include <QTableView>
#include <QTest>
#include <QTimer>
#include <QWheelEvent>

#include "forms/consent/duties_leaf.h"
#include "forms/consent/flag_sheet.h"
#include "forms/consent/readings_sheet.h"
#include "forms/consent/trigger_sheet.h"
#include "forms/consent/turbidity_frame.h"
#include "forms/shared/state_mark.h"
#include "forms/shared/table_view.h"
#include "model/unit/time_text.h"
#include "tests/form/consent_waterside.h"
#include "tests/support/how_many.h"
#include "tests/support/watched_harbour.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

TEST_CASE("the plot opens on all readings, and keys zoom and pan it within them", "[turbidity]") {
    Waterside watch;
    TurbidityChart& chart = *watch.chart;
    const Period all = *chart.extent();
    CHECK(all == Period{logger_start, logger_start + (1440 - 1) * 10 * ms_per_minute + 1});
    CHECK(watch.seen() == 1440);
    CHECK(chart.window() == all);

    chart.setFocus();
    QTest::keyClick(&chart, Qt::Key_Plus);
    const Period nearer = chart.window();
    CHECK(nearer.to - nearer.from < (all.to - all.from) * 7 / 10);
    CHECK(watch.comes_to(nearer));
    CHECK(watch.seen() < 1440);
    QTest::keyClick(&chart, Qt::Key_Right);
    CHECK(chart.window().from > nearer.from);
    CHECK(chart.window().to - chart.window().from == nearer.to - nearer.from);
    QTest::keyClick(&chart, Qt::Key_End);
    CHECK(chart.window().to == all.to);
    QTest::keyClick(&chart, Qt::Key_Right);
    CHECK(chart.window().to == all.to);
    QTest::keyClick(&chart, Qt::Key_Home);
    CHECK(chart.window().from == all.from);
    CHECK(watch.comes_to(chart.window()));
    QTest::keyClick(&chart, Qt::Key_0);
    CHECK(chart.window() == all);
    CHECK(watch.comes_to(all));
}

TEST_CASE("the wheel zooms about the pointer, and dragging moves what is under it", "[turbidity]") {
    Waterside watch;
    TurbidityChart& chart = *watch.chart;
    const auto frame = [&] { return turbidity_frame(chart.rect(), chart.drawn(), chart.window()); };
    const QPointF at(frame().plot.left() + frame().plot.width() / 4, frame().plot.center().y());
    const Instant under = logger_start + (chart.extent()->to - chart.extent()->from) / 4;
    for (int i = 0; i < 4; ++i) {
        QWheelEvent turn(at, chart.mapToGlobal(at), {}, {0, 120}, Qt::NoButton, Qt::NoModifier,
                         Qt::NoScrollPhase, false);
        QApplication::sendEvent(&chart, &turn);
    }
    const Period window = chart.window();
    CHECK(window.to - window.from < (chart.extent()->to - chart.extent()->from) / 6);
    CHECK(std::abs(frame().x(under) - at.x()) < 2);

    const QPoint hand = at.toPoint();
    QTest::mousePress(&chart, Qt::LeftButton, {}, hand);
    QTest::mouseMove(&chart, hand + QPoint(-60, 0));
    QTest::mouseMove(&chart, hand + QPoint(-120, 0));
    QTest::mouseRelease(&chart, Qt::LeftButton, {}, hand + QPoint(-120, 0));
    CHECK(std::abs(frame().x(under) - (at.x() - 120)) < 2);
    CHECK(chart.window().to - chart.window().from == window.to - window.from);
    CHECK(watch.comes_to(chart.window()));
}

TEST_CASE("chosen readings get a person's flag, and the trigger that they passed is gone", "[turbidity]") {
    Waterside watch;
    TableView* readings = watch.table(2);
    auto* table = readings->table();
    REQUIRE(table->model()->rowCount() == 2880);
    table->setFocus();
    table->setCurrentIndex(table->model()->index(3 * 144 + 72, 0));
    for (int i = 0; i < 35; ++i)
        QTest::keyClick(table, Qt::Key_Down, Qt::ShiftModifier);
    press(&watch.page, "Set a flag on the chosen readings …");
    auto* sheet = watch.comes_up<FlagSheet>();
    REQUIRE(sheet);
    press(sheet, "Set the flag");
    CHECK(says(*sheet, QStringLiteral("A flag must be chosen.")));
    auto* box = sheet->findChild<QComboBox*>();
    box->setFocus();
    for (int i = 0; i < 5 && box->currentText() != QStringLiteral("4 · fail"); ++i)
        QTest::keyClick(box, Qt::Key_Down);
    type_into(sheet, "Why", "weed on the sensor");
    press(sheet, "Set the flag");
    REQUIRE(QTest::qWaitFor([&] { return watch.chart->drawn().events.empty(); }, patience_ms));
    const auto flags = watch.session.book().rows(definition<Overrule>().kind());
    REQUIRE(flags.size() == 1);
    const auto said = definition<Overrule>().read(flags.front());
    CHECK(said.flag == "4");
    CHECK(said.why == "weed on the sensor");
    CHECK(said.by == "Ana");
    CHECK(*said.to - *said.from == 35 * 10 * ms_per_minute);
}

TEST_CASE("how old the last reading is stands at the head, and one that is too old tells nothing",
          "[turbidity]") {
    Waterside watch;
    const auto stands = [&](const char* word) {
        return QTest::qWaitFor(
            [&] {
                const auto marks = watch.page.findChildren<StateMark*>();
                return std::any_of(marks.begin(), marks.end(), [&](const StateMark* mark) {
                    return mark->word() == QString::fromUtf8(word);
                });
            },
            patience_ms);
    };
    // Ten-minute readings of ten days, the last at 23:50 of the tenth; now is the end of the fourteenth.
    CHECK(stands("cannot tell: last reading 4 d 0 h ago"));
    CHECK(comes_to_say(watch.page, "Last reading 4 d 0 h ago, at "));
    watch.session.set_as_at(logger_start + 10 * ms_per_day);
    CHECK(stands("inside every trigger"));
    CHECK(comes_to_say(watch.page, ", 10 min ago."));
    // The condition says no age, so three hours: after that the water is not known to be clear.
    watch.session.set_as_at(logger_start + 10 * ms_per_day + 171 * ms_per_minute);
    CHECK(stands("cannot tell: last reading 3 h 1 min ago"));
}

TEST_CASE("what a passed trigger asks for stands among the duties, and is answered there", "[turbidity]") {
    WatchedHarbour harbour(ten_days(true), ten_days(false));
    BookSession session(std::move(harbour.book), a_fortnight_on, {});
    session.set_person(QStringLiteral("Ana"));
    FiguresSource figures(session);
    DutiesLeaf page(figures);
    page.resize(1080, 720);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    REQUIRE(comes_to_say(page, "1 overdue."));
    auto* table = page.findChild<TableView*>();
    const auto cell = [&](int column) { return table->shown_rows()->index(0, column).data().toString(); };
    CHECK(cell(0) == QStringLiteral("overdue"));
    CHECK(cell(1) == QStringLiteral("answer: slow the work"));
    CHECK(cell(3).startsWith(QStringLiteral("trigger at R1, ")));
    press(&page, "Open this duty …");
    auto* sheet = page.findChild<TriggerSheet*>();
    REQUIRE(sheet);
    REQUIRE(comes_to_say(*sheet, "Digging for"));
    type_into(sheet, "What was done", "bucket slowed");
    press(sheet, "Write the answer down");
    CHECK(comes_to_say(page, "Nothing is open."));
    CHECK(cell(0) == QStringLiteral("done"));
}

TEST_CASE("a long file is read beside the window, which goes on", "[turbidity]") {
    Waterside watch;
    const int rows = how_many(200'000);
    {
        std::ofstream file(watch.harbour.file("long.csv"));
        file << "time,NTU\n";
        for (int i = 0; i < rows; ++i)
            file << instant_text(logger_start + 100 * ms_per_day + i * ms_per_minute, Zone::utc()) << ','
                 << i % 97 << ".5\n";
    }
    watch.page.offer_file(QString::fromStdString(watch.harbour.file("long.csv")));
    auto* sheet = watch.comes_up<ReadingsSheet>();
    REQUIRE(sheet);
    auto* site = sheet->findChild<QComboBox*>();
    site->setFocus();
    for (int i = 0; i < 3 && site->currentText() != QStringLiteral("R1"); ++i)
        QTest::keyClick(site, Qt::Key_Down);
    QPushButton* take = nullptr;
    for (auto* button : sheet->findChildren<QPushButton*>()) {
        if (button->text() == QStringLiteral("Take it in")) take = button;
    }
    REQUIRE(take);
    REQUIRE(QTest::qWaitFor([&] { return take->isEnabled(); }, patience_ms));
    QTimer beats;
    int beaten = 0;
    QObject::connect(&beats, &QTimer::timeout, &watch.page, [&] { ++beaten; });
    beats.start(5);
    take->setFocus();
    QTest::keyClick(take, Qt::Key_Space);
    CHECK_FALSE(take->isEnabled());
    // Nothing is written yet, and keys still reach what lies behind.
    auto* tabs = watch.page.findChild<QTabWidget*>();
    tabs->setCurrentIndex(0);
    QTest::keyClick(tabs->tabBar(), Qt::Key_Right);
    CHECK(tabs->currentIndex() == 1);
    CHECK_FALSE(says(watch.page, QStringLiteral("taken in from long.csv")));
    const auto said = QString("%1 new readings of R1 taken in from long.csv.").arg(QLocale().toString(rows));
    REQUIRE(comes_to_say(watch.page, said.toUtf8().constData()));
    CHECK(beaten > 5);
}

TEST_CASE("a logger's file is asked about, then taken in, and its zone is remembered", "[turbidity]") {
    Waterside watch;
    const auto write = [&](const char* name, const char* rows) {
        std::ofstream(watch.harbour.file(name)) << "date,NTU\n" << rows;
        return QString::fromStdString(watch.harbour.file(name));
    };
    watch.page.offer_file(write("a.csv", "2025-10-07 10:00,4.5\n2025-10-07 10:10,4.75\n"));
    auto* sheet = watch.comes_up<ReadingsSheet>();
    REQUIRE(sheet);
    auto* site = sheet->findChild<QComboBox*>();
    site->setFocus();
    for (int i = 0; i < 3 && site->currentText() != QStringLiteral("R1"); ++i)
        QTest::keyClick(site, Qt::Key_Down);
    REQUIRE(QTest::qWaitFor([&] { return says(*sheet, QStringLiteral("2025-10-07 10:00")); }, patience_ms));
    QPushButton* take = nullptr;
    for (auto* button : sheet->findChildren<QPushButton*>()) {
        if (button->text() == QStringLiteral("Take it in")) take = button;
    }
    REQUIRE(take);
    CHECK_FALSE(take->isEnabled());
    QLineEdit* zone = nullptr;
    for (auto* edit : sheet->findChildren<QLineEdit*>()) {
        if (edit->accessibleName().contains(QStringLiteral("zone")) ||
            edit->accessibleName().contains(QStringLiteral("clock")))
            zone = edit;
    }
    REQUIRE(zone);
    zone->setFocus();
    QTest::keyClicks(zone, QStringLiteral("+12:00"));
    QTest::keyClick(zone, Qt::Key_Return);
    REQUIRE(QTest::qWaitFor([&] { return take->isEnabled(); }, patience_ms));
    take->setFocus();
    QTest::keyClick(take, Qt::Key_Space);
    REQUIRE(comes_to_say(watch.page, "2 new readings of R1 taken in from a.csv."));
    // 10:10 at +12:00 is 11:10 in the harbour, whose clocks have gone forward.
    REQUIRE(QTest::qWaitFor(
        [&] { return watch.chart->extent()->to == *parse_instant("2025-10-06T22:10Z", Zone::utc()) + 1; },
        patience_ms));
    const ReadingsLook next =
        *look_at_readings(watch.session.book(), "R1", "b.csv", HeldBytes("date,NTU\n2025-10-07 10:20,4.5\n"),
                          {}, a_fortnight_on());
    CHECK(next.guess.questions.empty());
    CHECK(next.guess.layout.zone == "+12:00");
}

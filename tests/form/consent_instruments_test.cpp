// SPDX-License-Identifier: GPL-3.0-or-later
// Instruments, thresholds, samples and the watched folder of the turbidity page, by real keys.
#include <QComboBox>
#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QLineEdit>
#include <QPushButton>
#include <QTabWidget>
#include <QTableView>
#include <QTest>

#include "forms/consent/folder_line.h"
#include "forms/consent/instruments_part.h"
#include "forms/consent/log_sheet.h"
#include "forms/consent/readings_sheet.h"
#include "forms/consent/solids_sheet.h"
#include "forms/consent/thresholds_part.h"
#include "forms/consent/turbidity_leaf.h"
#include "forms/shared/table_view.h"
#include "model/answer/instruments.h"
#include "model/folder/match_material.h"
#include "tests/form/works_sample_desk.h"
#include "tests/support/watched_harbour.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

std::vector<LoggerReading> a_day() {
    std::vector<LoggerReading> readings;
    for (int i = 0; i < 144; ++i)
        readings.push_back({logger_start + i * 10 * ms_per_minute, 8.0 + i % 7 * 0.1});
    return readings;
}

Instant a_month_on() {
    return logger_start + 30 * ms_per_day;
}

const std::vector<std::pair<std::string, std::string>>& register_and_samples() {
    static const std::vector<std::pair<std::string, std::string>> files{
        {"turbidity/instruments.csv",
         "id,site,serial,deployed,recovered,calibrated,calibrated_until\n"
         "IN-0001,R1,TL-7,2025-09-25T00:00Z,,2025-09-20,2025-10-01\n"
         "IN-0002,C1,TL-8,2025-09-25T00:00Z,,2025-09-20,2026-03-20\n"},
        {"turbidity/samples.csv",
         "site,time,turbidity,solids_mg_l,lab\nR1,2025-09-26T01:00Z,2,4,a\nR1,2025-09-26T02:00Z,5,10,b\n"
         "R1,2025-09-26T03:00Z,10,20,c\nR1,2025-09-26T04:00Z,20,40,d\nR1,2025-09-26T05:00Z,7,,broken\n"}};
    return files;
}

struct Bankside {
    WatchedHarbour harbour{a_day(), a_day(), register_and_samples()};
    BookSession session{std::move(harbour.book), a_month_on, {}};
    FiguresSource figures{session};
    TurbidityLeaf page{figures, {}};

    Bankside() {
        session.set_person(QStringLiteral("Ana"));
        page.resize(1080, 720);
        page.show();
        REQUIRE(QTest::qWaitForWindowActive(&page));
    }
    template <class W>
    [[nodiscard]] W* comes_up() {
        // A sheet that was closed goes with the events; what opened after it is what the user sees.
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        static_cast<void>(QTest::qWaitFor([&] { return page.findChild<W*>() != nullptr; }, patience_ms));
        REQUIRE(page.findChild<W*>());
        return page.findChildren<W*>().last();
    }
    /// Turns to the tab and answers its part.
    template <class W>
    [[nodiscard]] W* part() {
        auto* part = page.findChild<W*>();
        page.findChild<QTabWidget*>()->setCurrentWidget(part);
        return part;
    }
    [[nodiscard]] Id site(const char* name) const {
        return session.book().labelled(definition<Site>().kind(), name)->id;
    }
};

QLineEdit* box(QWidget* sheet, const char* label) {
    for (auto* edit : sheet->findChildren<QLineEdit*>()) {
        if (edit->accessibleName() == QString::fromUtf8(label)) return edit;
    }
    FAIL("no box " << label);
    return nullptr;
}

void type_into(QWidget* sheet, const char* label, const char* text) {
    auto* edit = box(sheet, label);
    edit->setFocus();
    QTest::keyClick(edit, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(edit, QString::fromUtf8(text));
    QTest::keyClick(edit, Qt::Key_Tab);
}

void press(QWidget* where, const char* text) {
    for (auto* button : where->findChildren<QPushButton*>()) {
        if (!button->text().startsWith(QString::fromUtf8(text)) || !button->isVisibleTo(where)) continue;
        button->setFocus();
        QTest::keyClick(button, Qt::Key_Space);
        return;
    }
    FAIL("no button " << text);
}

void choose(QWidget* sheet, const char* text) {
    auto* list = sheet->findChild<QComboBox*>();
    list->setFocus();
    for (int i = 0; i < 5 && list->currentText() != QString::fromUtf8(text); ++i)
        QTest::keyClick(list, Qt::Key_Down);
    CHECK(list->currentText() == QString::fromUtf8(text));
}

QString cell(TableView* view, int row, int column) {
    return view->shown_rows()->index(row, column).data().toString();
}

/// A file that was last written an hour before the session's present.
void put(const QString& folder, const char* name, const QByteArray& text) {
    QFile file(QDir(folder).filePath(QString::fromUtf8(name)));
    REQUIRE(file.open(QIODevice::ReadWrite | QIODevice::Truncate));
    file.write(text);
    file.flush();
    file.setFileTime(QDateTime::fromMSecsSinceEpoch(a_month_on().utc_ms - ms_per_hour),
                     QFileDevice::FileModificationTime);
}

}  // namespace

TEST_CASE("an expired calibration is told by word and shape, and the tab counts it", "[turbidity]") {
    Bankside bank;
    auto* part = bank.part<InstrumentsPart>();
    REQUIRE(part->table()->shown_rows()->rowCount() == 2);
    for (int row = 0; row < 2; ++row) {
        const bool r1 = cell(part->table(), row, 0) == QStringLiteral("R1");
        CHECK(cell(part->table(), row, 1) == (r1 ? QStringLiteral("TL-7") : QStringLiteral("TL-8")));
        CHECK(cell(part->table(), row, 2) ==
              (r1 ? QStringLiteral("stands, calibration expired") : QStringLiteral("stands, calibrated")));
        const auto mark = part->table()->shown_rows()->index(row, 2).data(mark_role);
        CHECK(mark.toInt() == int(r1 ? State::hold : State::clear));
    }
    CHECK(part->in_doubt() == 1);
    CHECK(QTest::qWaitFor(
        [&] {
            auto* tabs = bank.page.findChild<QTabWidget*>();
            return tabs->tabText(tabs->indexOf(part)).contains(QStringLiteral("1"));
        },
        patience_ms));
}

TEST_CASE("an instrument, a calibration and a service are written by keys, and count at once",
          "[turbidity]") {
    Bankside bank;
    auto* part = bank.part<InstrumentsPart>();
    press(part, "Write a calibration");
    auto* sheet = bank.comes_up<LogSheet>();
    press(sheet, "Write it down");
    CHECK(says(*sheet, QStringLiteral("The site must be said.")));
    choose(sheet, "R1");
    type_into(sheet, "Serial number", "TL-7");
    type_into(sheet, "Calibrated", "2025-10-20");
    type_into(sheet, "Holds until just before", "2025-10-10");
    press(sheet, "Write it down");
    CHECK(part->in_doubt() == 1);  // the end before the start is refused
    type_into(sheet, "Holds until just before", "2026-04-20");
    press(sheet, "Write it down");
    REQUIRE(QTest::qWaitFor([&] { return part->in_doubt() == 0; }, patience_ms));
    CHECK(part->table()->shown_rows()->rowCount() == 3);

    // The readings of the days between are of an expired calibration as before.
    const auto rows = instruments_at(
        bank.session.book(),
        definition<Site>().read(*bank.session.book().labelled(definition<Site>().kind(), "R1")),
        a_month_on());
    CHECK(calibration_at(rows, *parse_instant("2025-10-10T00:00Z", Zone::utc())) ==
          CalibrationState::expired);
    CHECK(calibration_at(rows, a_month_on()) == CalibrationState::valid);

    press(part, "Write a service");
    sheet = bank.comes_up<LogSheet>();
    choose(sheet, "R1");
    type_into(sheet, "Serial number", "TL-7");
    type_into(sheet, "When", "2025-10-21 09:20");
    type_into(sheet, "What was done", "lens cleaned");
    press(sheet, "Write it down");
    const auto services = bank.session.book().rows(definition<Service>().kind());
    REQUIRE(services.size() == 1);
    CHECK(definition<Service>().read(services.front()).what == "lens cleaned");
    CHECK(definition<Service>().read(services.front()).time ==
          *parse_instant("2025-10-20T20:20Z", Zone::utc()));
}

TEST_CASE("new thresholds are a version of their own, and the one before stays", "[turbidity]") {
    Bankside bank;
    auto* part = bank.part<ThresholdsPart>();
    REQUIRE(part->table()->shown_rows()->rowCount() == 2);
    part->table()->table()->setFocus();
    const bool first = cell(part->table(), 0, 0) == QStringLiteral("R1");
    part->table()->table()->setCurrentIndex(part->table()->shown_rows()->index(first ? 0 : 1, 0));
    press(part, "Set a site's thresholds");
    auto* sheet = bank.comes_up<LogSheet>();
    CHECK(says(*sheet, QStringLiteral("A new version for R1.")));
    press(sheet, "Write it down");
    CHECK(says(*sheet, QStringLiteral("From when they hold must be said.")));
    type_into(sheet, "From", "2025-10-01");
    type_into(sheet, "Above it a reading fails, NTU", "120");
    press(sheet, "Write it down");
    REQUIRE(QTest::qWaitFor([&] { return part->table()->shown_rows()->rowCount() == 3; }, patience_ms));
    std::size_t in_force = 0;
    for (const auto& version : threshold_versions(bank.session.book(), a_month_on())) {
        if (version.site != "R1") continue;
        in_force += version.in_force ? 1 : 0;
        CHECK(version.span.thresholds.range_high == (version.in_force ? 120 : 80));
        CHECK(version.span.thresholds.spike.has_value() != version.in_force);  // what was left blank is blank
    }
    CHECK(in_force == 1);
    for (const auto& version : threshold_versions(bank.session.book(), logger_start)) {
        if (version.site == "R1") CHECK(version.in_force == version.check.empty());
    }
}

TEST_CASE("suspended solids are shown with the line, its doubt and what is left out", "[turbidity]") {
    Bankside bank;
    auto* site = bank.page.findChild<QComboBox*>();
    REQUIRE(QTest::qWaitFor([&] { return !site->currentText().isEmpty(); }, patience_ms));
    press(&bank.page, "Solids");
    auto* sheet = bank.comes_up<SolidsSheet>();
    // Twice the turbidity in every bottle: slope 1, intercept log10 2 = 0.3010, no scatter.
    CHECK(says(*sheet, QStringLiteral("0.3010 + 1.0000")));
    CHECK(says(*sheet, QStringLiteral("from 4 samples of 2.00 to 20.0 NTU")));
    type_into(sheet, "At a turbidity of, in the site's unit", "8");
    CHECK(says(*sheet, QStringLiteral("16.0 mg/L")));
    type_into(sheet, "At a turbidity of, in the site's unit", "60");
    CHECK(says(*sheet, QStringLiteral("outside the turbidities")));
    const auto table = sheet->findChildren<TableView*>();
    REQUIRE_FALSE(table.isEmpty());
    CHECK(table.back()->shown_rows()->rowCount() == 5);

    press(sheet, "Write a sample");
    auto* write = bank.comes_up<LogSheet>();
    choose(write, "R1");
    type_into(write, "Taken", "2025-10-20 10:00");
    type_into(write, "Turbidity", "40");
    type_into(write, "Suspended solids in mg/L", "80");
    press(write, "Write it down");
    sheet = bank.comes_up<SolidsSheet>();
    CHECK(comes_to_say(*sheet, "from 5 samples of 2.00 to 40.0 NTU"));
}

TEST_CASE("a folder's new and grown files are taken in, and what proves nothing waits", "[turbidity]") {
    Bankside bank;
    const QTemporaryDir folder;
    bank.page.taker().set_still(50);
    bank.page.watch_folder(folder.path());
    const std::size_t before = held_readings(bank.session.book(), bank.site("R1")).size();
    const auto held = [&] { return held_readings(bank.session.book(), bank.site("R1")).size(); };

    put(folder.path(), "R1-october.csv",
        "time,turbidity\n2025-10-02T00:00Z,5\n2025-10-02T00:10Z,6\n2025-10-0");
    REQUIRE(QTest::qWaitFor([&] { return held() == before + 2; }, patience_ms));
    CHECK(comes_to_say(bank.page,
                       "Taken in: R1-october.csv: 2 new readings of R1, its last line is not whole"));
    put(folder.path(), "R1-october.csv",
        "time,turbidity\n2025-10-02T00:00Z,5\n2025-10-02T00:10Z,6\n2025-10-02T00:20Z,7\n");
    REQUIRE(QTest::qWaitFor([&] { return held() == before + 3; }, patience_ms));

    // Neither the order of the date nor the zone is proven: nothing is taken.
    put(folder.path(), "C1-october.csv", "date,turbidity\n3/10/2025 10:00,4\n3/10/2025 10:10,4.5\n");
    put(folder.path(), "what.csv", "time,turbidity\n2025-10-02T00:00Z,5\n");
    CHECK(comes_to_say(bank.page, "Waits for you (1): C1-october.csv"));
    CHECK(comes_to_say(bank.page, "Not taken (1): what.csv: no site of the book"));
    CHECK(held_readings(bank.session.book(), bank.site("C1")).size() == 144);
    press(&bank.page, "Say how it is read");
    auto* sheet = bank.comes_up<ReadingsSheet>();
    REQUIRE(sheet);

    bank.page.watch_folder({});
    put(folder.path(), "R1-november.csv", "time,turbidity\n2025-10-05T00:00Z,5\n");
    QTest::qWait(400);
    CHECK(held() == before + 3);
}

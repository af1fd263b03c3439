// SPDX-License-Identifier: GPL-3.0-or-later
// A load of the sample book laid open from what it counts in, by keys.
#include <QLabel>
#include <QTabWidget>
#include <QTableView>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/shared/records_leaf.h"
#include "forms/shared/sheet.h"
#include "forms/works/load_sheet.h"
#include "forms/works/volumes_leaf.h"
#include "tests/form/works_sample_desk.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

/// What the rows of a table say, all columns of a row in one line.
QStringList lines(const QTableView* table) {
    QStringList all;
    for (int row = 0; row < table->model()->rowCount(); ++row) {
        QStringList cells;
        for (int column = 0; column < table->model()->columnCount(); ++column)
            cells << table->model()->index(row, column).data().toString();
        all << cells.join(u'|');
    }
    return all;
}

Sheet* open_sheet(const QWidget& page) {
    for (Sheet* sheet : page.findChildren<Sheet*>()) {
        if (sheet->is_open()) return sheet;
    }
    return nullptr;
}

}  // namespace

TEST_CASE("Enter on a volume lays open its loads, and Enter on one of them all its methods", "[works]") {
    SampleDesk desk;
    VolumesLeaf page(desk.figures);
    page.resize(1080, 640);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    REQUIRE(comes_to_say(page, "released in all"));
    auto* table = page.findChild<QTableView*>();
    REQUIRE(QTest::qWaitFor([&] { return table->model() && table->model()->rowCount() > 0; }, patience_ms));
    table->setFocus();
    table->setCurrentIndex(table->model()->index(0, 0));
    QTest::keyClick(table, Qt::Key_Return);
    Sheet* behind = nullptr;
    REQUIRE(QTest::qWaitFor([&] { return (behind = open_sheet(page)) != nullptr; }, patience_ms));
    auto* loads = behind->findChild<QTableView*>();
    REQUIRE(loads);
    loads->setFocus();
    loads->setCurrentIndex(loads->model()->index(0, 0));
    const QString label = loads->model()->index(0, 2).data().toString();
    QTest::keyClick(loads, Qt::Key_Return);
    auto* sheet = page.findChild<LoadSheet*>();
    REQUIRE(sheet);
    CHECK(says(*sheet, QStringLiteral("in situ, by ")));
    CHECK(label.startsWith(QStringLiteral("L-")));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    CHECK(QApplication::focusWidget() == loads);
}

TEST_CASE("a load shows which method counts and why, its factors, its split and who entered it", "[works]") {
    SampleDesk desk;
    const Load& load = desk.session.season().loads.rows().front();
    LoadSheet sheet(desk.session, load.load);
    sheet.resize(900, 640);
    sheet.show();
    CHECK(says(sheet, QStringLiteral("Where no condition names a method")));
    const auto tables = sheet.findChildren<QTableView*>();
    REQUIRE(tables.size() == 7);
    QStringList all;
    for (const QTableView* table : tables)
        all << lines(table);
    const QString text = all.join(u'\n');
    CHECK(text.contains(QStringLiteral("counts")));
    CHECK(text.contains(QStringLiteral("bulking factor of ")));
    CHECK(text.contains(QStringLiteral("as the book began")));
    CHECK(text.contains(QStringLiteral("100.0")));  // one claim has it all
    CHECK(text.contains(QStringLiteral("Dips, coaming down to the spoil")));
    CHECK(sheet.findChild<QTabWidget*>()->count() == 6);
}

TEST_CASE("the load view says the same figures as the model", "[works]") {
    SampleDesk desk;
    const Season& season = desk.session.season();
    Sources sources;
    const LoadIndex index(season, sources);
    for (std::size_t i = 0; i < season.loads.size(); i += 97) {
        const Load& load = season.loads.rows()[i];
        INFO(load.load);
        const LoadFigures figures = spoilbook::figures(index, load);
        const LoadView view = load_view(season, load);
        REQUIRE(view.methods.size() == figures.methods.size());
        CHECK(view.pairs.size() == figures.agreements.size());
        CHECK(view.parts.size() == figures.parts.size());
        std::size_t counting = 0;
        for (const MethodRow& row : view.methods)
            counting += row.counts ? 1 : 0;
        CHECK(counting == (figures.counted_by() ? 1U : 0U));
        std::size_t versions = 0;
        for (const FactorRow& row : view.factors)
            versions += row.value > 0 ? 1 : 0;
        CHECK(versions == view.factors.size());
    }
}

TEST_CASE("a record of a kind that has a page of its own opens it by a press", "[works]") {
    SampleDesk desk;
    RecordsLeaf leaf(desk.session, {"trip", "load"});
    leaf.add_view(
        {"load", QStringLiteral("How much is in it"), QStringLiteral("drop"), load_sheet_width,
         [&](const QString& label) -> QWidget* { return new LoadSheet(desk.session, label.toStdString()); }});
    leaf.resize(1080, 640);
    leaf.show();
    REQUIRE(QTest::qWaitForWindowActive(&leaf));
    QPushButton* press = nullptr;
    for (auto* button : leaf.findChildren<QPushButton*>()) {
        if (button->text() == QStringLiteral("How much is in it")) press = button;
    }
    REQUIRE(press == nullptr);  // trips have none
    auto* kinds = leaf.findChild<QComboBox*>();
    kinds->setFocus();
    QTest::keyClicks(kinds, QStringLiteral("Lo"));
    for (auto* button : leaf.findChildren<QPushButton*>()) {
        if (button->accessibleName() == QStringLiteral("How much is in it")) press = button;
    }
    REQUIRE(press);
    auto* table = leaf.findChild<QTableView*>();
    table->setFocus();
    table->setCurrentIndex(table->model()->index(0, 0));
    press->setFocus();
    QTest::keyClick(press, Qt::Key_Space);
    CHECK(leaf.findChild<LoadSheet*>() != nullptr);
}

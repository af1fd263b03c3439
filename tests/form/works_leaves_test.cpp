// SPDX-License-Identifier: GPL-3.0-or-later
// The pages of where we stand over the sample book, worked by keys.
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/consent/conditions_leaf.h"
#include "forms/consent/return_leaf.h"
#include "forms/shared/sheet.h"
#include "forms/works/burndown_leaf.h"
#include "tests/form/works_sample_desk.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

TEST_CASE("at twice the size of everything the burn-down is no wider than its window", "[works]") {
    SampleDesk desk;
    BurndownLeaf page(desk.figures);
    constexpr int room = 580;  // what 1280 by 800 leaves of it
    page.resize(room, 300);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    REQUIRE(comes_to_say(page, "comes first"));
    CHECK(page.minimumSizeHint().width() <= room);
}

TEST_CASE("the burn-down says what the sample book holds, and again when the as-at moves", "[works]") {
    SampleDesk desk;
    BurndownLeaf page(desk.figures);
    page.resize(1080, 640);
    page.show();
    REQUIRE(comes_to_say(page, "Least headroom, condition 4"));
    CHECK(says(page, QStringLiteral("Behind the plan")));
    desk.session.set_as_at(*parse_instant("2025-08-01T00:00+12:00", Zone::utc()));
    CHECK(comes_to_say(page, "fewer than four weeks of dredging are logged"));
    CHECK(says(page, QStringLiteral("in situ, of 225,900 m³ planned")));
    CHECK(says(page, QStringLiteral("225,900")));
}

TEST_CASE("Enter on a limit lays the trips behind its number on a sheet, Escape takes them away",
          "[consent]") {
    SampleDesk desk;
    ConditionsLeaf page(desk.figures);
    page.resize(1080, 640);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    REQUIRE(comes_to_say(page, "Conditions:"));
    CHECK(says(page, QStringLiteral("Open question: in-situ or hopper volume?")));
    auto* table = page.findChild<QTableView*>();
    table->setFocus();
    QTest::keyClick(table, Qt::Key_Down);
    CHECK(says(page, QStringLiteral("Condition 4: No more than 215 000 m³")));
    QTest::keyClick(table, Qt::Key_Return);
    auto* sheet = page.findChild<Sheet*>();
    REQUIRE(QTest::qWaitFor([&] { return sheet->is_open(); }, patience_ms));
    CHECK(comes_to_say(*sheet, "Rows: 601"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    CHECK_FALSE(sheet->is_open());
    CHECK(QApplication::focusWidget() == table);
}

TEST_CASE("a month that is not over cannot be returned, the one before can", "[consent]") {
    SampleDesk desk;
    ReturnLeaf page(desk.figures);
    page.resize(1080, 640);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    REQUIRE(comes_to_say(page, "the return for Apr 2026"));
    auto* month = page.findChild<QComboBox*>();
    month->setFocus();
    QTest::keyClick(month, Qt::Key_Up);
    REQUIRE(comes_to_say(page, "Missing from the return for May 2026"));
    for (const QPushButton* button : page.findChildren<QPushButton*>()) {
        if (button->text().startsWith(QStringLiteral("Make the return"))) CHECK_FALSE(button->isEnabled());
    }
}

// SPDX-License-Identifier: GPL-3.0-or-later
// The pages of where we stand over the sample book, worked by keys.
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/consent/limits_leaf.h"
#include "forms/consent/return_leaf.h"
#include "forms/shared/sheet.h"
#include "forms/works/burndown_leaf.h"
#include "model/book/open.h"
#include "model/folder/import_folder.h"
#include "model/unit/time_text.h"

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

constexpr int patience_ms = 60000;  // a slow machine, a build that checks everything

Instant end_of_may() {
    return *parse_instant("2026-05-30T18:00+12:00", Zone::utc());
}

/// The sample book, made once.
const std::string& sample_book() {
    static const QTemporaryDir folder;
    static const std::string path = [] {
        const std::string made = folder.filePath(QStringLiteral("marram.sbook")).toStdString();
        make_book(made, "test", [](Book& book) -> Checked<Done> {
            const auto outcome = import_folder(book, SPOILBOOK_SOURCE_DIR "/sample-db/marram",
                                               {EntryKind::import, end_of_may(), {}, {}});
            if (!outcome) return outcome.refusals();
            return Done{};
        }).value();
        return made;
    }();
    return path;
}

struct Desk {
    BookSession session{std::move(*Book::open_to_read(sample_book())), end_of_may,
                        QStringLiteral("a test reads")};
    FiguresSource figures{session};
};

/// Some label of the page that is seen and has these words.
bool says(const QWidget& page, const QString& words) {
    for (const QLabel* label : page.findChildren<QLabel*>()) {
        if (label->isVisible() && label->text().contains(words)) return true;
    }
    return false;
}

bool comes_to_say(const QWidget& page, const char* words) {
    return QTest::qWaitFor([&] { return says(page, QString::fromUtf8(words)); }, patience_ms);
}

}  // namespace

TEST_CASE("the burn-down says what the sample book holds, and again when the as-at moves", "[works]") {
    Desk desk;
    BurndownLeaf page(desk.figures);
    page.resize(1080, 640);
    page.show();
    REQUIRE(comes_to_say(page, "Least headroom: condition 4"));
    CHECK(says(page, QStringLiteral("behind the plan")));
    desk.session.set_as_at(*parse_instant("2025-08-01T00:00+12:00", Zone::utc()));
    CHECK(comes_to_say(page, "0 ± 0 m³ in situ of 225,900 m³ dredged"));
}

TEST_CASE("Enter on a limit lays the trips behind its number on a sheet, Escape takes them away",
          "[consent]") {
    Desk desk;
    LimitsLeaf page(desk.figures);
    page.resize(1080, 640);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    REQUIRE(comes_to_say(page, "Limits: 4 past a warning"));
    CHECK(says(page, QStringLiteral("Open question: in-situ or hopper volume?")));
    auto* table = page.findChild<QTableView*>();
    table->setFocus();
    QTest::keyClick(table, Qt::Key_Down);
    CHECK(says(page, QStringLiteral("Condition 4: no more than 215 000 m³")));
    QTest::keyClick(table, Qt::Key_Return);
    auto* sheet = page.findChild<Sheet*>();
    REQUIRE(QTest::qWaitFor([&] { return sheet->is_open(); }, patience_ms));
    CHECK(comes_to_say(*sheet, "Rows: 601"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    CHECK_FALSE(sheet->is_open());
    CHECK(QApplication::focusWidget() == table);
}

TEST_CASE("a month that is not over cannot be returned, the one before can", "[consent]") {
    Desk desk;
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

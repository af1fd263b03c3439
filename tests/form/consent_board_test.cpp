// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QClipboard>
#include <QLineEdit>
#include <QTableView>

#include "forms/consent/conditions_leaf.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "tests/form/works_sample_desk.h"
#include "tests/support/model_contract.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

const QLocale nz(QLocale::English, QLocale::NewZealand);

ConditionRow row(const Condition& condition, const char* word, State state) {
    ConditionRow row;
    row.condition = &condition;
    row.word = QString::fromUtf8(word);
    row.state = state;
    return row;
}

}  // namespace

TEST_CASE("the conditions are counted in one sentence, the worst first", "[consent]") {
    const Condition a, b, c;
    const auto over = row(b, "over", State::hold);
    CHECK(conditions_sentence({row(a, "within", State::clear), over, row(c, "within", State::clear)}) ==
          QStringLiteral("Conditions: 1 over · 2 within."));
    // Its other cell is within: the condition is over, once.
    CHECK(conditions_sentence({row(b, "within", State::clear), over, row(a, "within", State::clear)}) ==
          QStringLiteral("Conditions: 1 over · 1 within."));
    CHECK(conditions_sentence({}) == QStringLiteral("This book has no condition in force yet."));
}

TEST_CASE("a board of forty conditions keeps the contract of its model, and used is never made smaller",
          "[consent]") {
    const Condition condition;
    std::vector<ConditionRow> rows(40, row(condition, "within", State::clear));
    rows[3].limit = LimitRow{};
    rows[3].limit->used = 12.01;
    rows[3].limit->limit = 20;
    rows[3].limit->headroom = 7.99;
    RowTable<ConditionRow> table(condition_columns(nz));
    test::require_model_contract({&table}, [&] { table.set_rows(rows); });
    CHECK(table.rowCount() == 40);
    CHECK(table.index(3, 2).data().toString() == QStringLiteral("13"));
    CHECK(table.index(3, 5).data().toString() == QStringLiteral("7"));
    CHECK(table.index(4, 2).data().toString().isEmpty());
}

TEST_CASE("every condition of every kind has its row, its sentence and its day", "[consent]") {
    SampleDesk desk;
    ConditionsLeaf page(desk.figures);
    page.resize(1240, 700);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    REQUIRE(comes_to_say(page, "Conditions: "));
    auto* view = page.findChild<TableView*>();
    const auto* model = view->table()->model();
    const auto all = [&](int column) {
        QStringList texts;
        for (int i = 0; i < model->rowCount(); ++i)
            texts << model->index(i, column).data().toString();
        return texts;
    };
    for (const char* kind : {"quantity", "time", "series", "place", "duty", "record"})
        CHECK(all(10).contains(QString::fromUtf8(kind)));
    CHECK(all(11).contains(
        QStringLiteral("No release between 20:00 and 06:00 and from 1 September to 15 October, both "
                       "included.")));
    // sample-db/README.md: the water passed triggers and is clear again; one duty is due; no track tells a
    // whole release.
    const auto word_of_row = [&](const char* number) {
        return all(1).value(all(0).indexOf(QString::fromUtf8(number)));
    };
    CHECK(QTest::qWaitFor([&] { return word_of_row("30") == QStringLiteral("due"); }, patience_ms));
    CHECK(word_of_row("20.2") == QStringLiteral("was over"));
    CHECK(word_of_row("11") == QStringLiteral("cannot tell"));
    CHECK_FALSE(all(1).contains(QStringLiteral("being judged …")));
    // sample-db/README.md: the 12-month limit is met about 9 June.
    const int four = int(all(0).indexOf(QStringLiteral("4")));
    REQUIRE(four >= 0);
    CHECK(QTest::qWaitFor(
        [&] { return model->index(four, 8).data().toString().contains(QStringLiteral("Jun 2026")); },
        patience_ms));
    // The filter takes a kind or a state; what is left is copied as TSV.
    auto* words = page.findChild<QLineEdit*>();
    words->setFocus();
    QTest::keyClicks(words, QStringLiteral("duty"));
    REQUIRE(QTest::qWaitFor([&] { return model->rowCount() == 2; }, patience_ms));
    view->table()->selectAll();
    view->copy();
    CHECK(QApplication::clipboard()->text().contains(
        QStringLiteral("duty\tA return is due within 10 working days")));
}

// SPDX-License-Identifier: GPL-3.0-or-later
#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/shared/number_typed.h"
#include "forms/shared/table_model.h"
#include "forms/shared/table_text.h"
#include "forms/shared/table_view.h"
#include "tests/support/model_contract.h"

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

struct Trip {
    QString id;
    std::optional<double> carried_m3;
    QString note;
    State state = State::clear;
};

RowTable<Trip>* trip_table(QObject* parent) {
    return new RowTable<Trip>(
        {Column<Trip>(QStringLiteral("Trip"), {}, [](const Trip& t) { return t.id; }),
         Column<Trip>(QStringLiteral("Carried"), QStringLiteral("m³"),
                      [](const Trip& t) {
                          return t.carried_m3 ? number_shown(*t.carried_m3, 1, QLocale()) : QString();
                      })
             .number([](const Trip& t) { return t.carried_m3; }),
         Column<Trip>(QStringLiteral("Note"), {}, [](const Trip& t) { return t.note; })
             .mark([](const Trip& t) { return std::optional(t.state); })},
        parent);
}

std::vector<Trip> some_trips() {
    return {{QStringLiteral("T-1"), 1234.56, QStringLiteral("calm")},
            {QStringLiteral("T-2"), std::nullopt, QStringLiteral("turned back"), State::attention},
            {QStringLiteral("T-3"), -9.6, QStringLiteral("=2+3")},
            {QStringLiteral("T-4"), 347.0, QStringLiteral("calm,\t\"late\"")}};
}

struct Shown {
    QWidget window;
    TableView* view = new TableView(QStringLiteral("Trips"), &window);
    RowTable<Trip>* model = trip_table(&window);

    Shown() {
        model->set_rows(some_trips());
        view->set_model(model);
        window.show();
        REQUIRE(QTest::qWaitForWindowActive(&window));
    }
    [[nodiscard]] QStringList ids() const {
        QStringList all;
        const QAbstractItemModel* shown = view->shown_rows();
        for (int r = 0; r < shown->rowCount(); ++r)
            all << shown->index(r, 0).data().toString();
        return all;
    }
};

}  // namespace

TEST_CASE("a table of rows keeps the contract of an item model, also through its filter", "[table]") {
    auto* model = trip_table(nullptr);
    TableFilter filter(nullptr);
    filter.setSourceModel(model);
    test::require_model_contract({model, &filter}, [&] {
        model->set_rows(some_trips());
        filter.set_words(QStringLiteral("calm"));
        filter.sort(1, Qt::DescendingOrder);
        model->set_rows({{QStringLiteral("T-9"), 1.0, QStringLiteral("calm")}});
        filter.set_words({});
        model->set_rows({});
    });
    CHECK(model->rowCount(model->index(0, 0)) == 0);
    delete model;
}

TEST_CASE("volumes sort by their exact value and what is not recorded stands last both ways", "[table]") {
    Shown s;
    s.view->table()->sortByColumn(1, Qt::AscendingOrder);
    CHECK(s.ids() == QStringList({QStringLiteral("T-3"), QStringLiteral("T-4"), QStringLiteral("T-1"),
                                  QStringLiteral("T-2")}));
    s.view->table()->sortByColumn(1, Qt::DescendingOrder);
    CHECK(s.ids() == QStringList({QStringLiteral("T-1"), QStringLiteral("T-4"), QStringLiteral("T-3"),
                                  QStringLiteral("T-2")}));
}

TEST_CASE("the filter finds its words in any column and in any order", "[table]") {
    Shown s;
    auto* words = s.view->findChild<QLineEdit*>();
    QTest::keyClicks(words, QStringLiteral("late calm"));
    CHECK(s.ids() == QStringList({QStringLiteral("T-4")}));
    words->clear();
    QTest::keyClicks(words, QStringLiteral("storm"));
    CHECK(s.ids().isEmpty());
}

TEST_CASE("Ctrl+C copies the chosen rows as tabbed text with plain numbers", "[table]") {
    Shown s;
    s.view->table()->setFocus();
    s.view->table()->selectRow(0);
    QTest::keyClick(s.view->table(), Qt::Key_C, Qt::ControlModifier);
    CHECK(QGuiApplication::clipboard()->text() ==
          QStringLiteral("Trip\tCarried, m³\tNote\nT-1\t1234.56\tcalm\n"));
}

TEST_CASE("without a choice all rows are copied, a blank stays blank and a tab in a note becomes a blank",
          "[table]") {
    Shown s;
    s.view->table()->clearSelection();
    s.view->copy();
    const QStringList lines = QGuiApplication::clipboard()->text().split(u'\n');
    REQUIRE(lines.size() == 6);
    CHECK(lines[2] == QStringLiteral("T-2\t\tturned back"));
    CHECK(lines[4] == QStringLiteral("T-4\t347\tcalm, \"late\""));
}

TEST_CASE("text that looks like a formula is exported as text, a negative number as a number", "[table]") {
    auto* model = trip_table(nullptr);
    model->set_rows(some_trips());
    const QStringList lines = csv(*model).split(QStringLiteral("\r\n"));
    CHECK(lines[0] == QStringLiteral("Trip,\"Carried, m³\",Note"));
    CHECK(lines[3] == QStringLiteral("T-3,-9.6,'=2+3"));
    CHECK(lines[4] == QStringLiteral("T-4,347,\"calm,\t\"\"late\"\"\""));
    delete model;
}

TEST_CASE("an empty table says why, and Enter opens the row under the cursor", "[table]") {
    Shown s;
    QSignalSpy opened(s.view, &TableView::opened);
    s.view->table()->sortByColumn(0, Qt::DescendingOrder);
    s.view->table()->setCurrentIndex(s.view->table()->model()->index(0, 0));
    QTest::keyClick(s.view->table(), Qt::Key_Return);
    REQUIRE(opened.size() == 1);
    CHECK(opened[0][0].toInt() == 3);
    s.view->set_empty_text(QStringLiteral("No trip yet."));
    s.model->set_rows({});
    bool said = false;
    for (const QLabel* label : s.view->findChildren<QLabel*>()) {
        said = said || (label->isVisible() && label->text() == QStringLiteral("No trip yet."));
    }
    CHECK(said);
}

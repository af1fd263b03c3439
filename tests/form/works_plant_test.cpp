// SPDX-License-Identifier: GPL-3.0-or-later
// Barge tables by typing, by paste and from a file.
#include <QApplication>
#include <QClipboard>
#include <QFile>
#include <QTableView>

#include "forms/shared/chart_frame.h"
#include "forms/works/plant_leaf.h"
#include "forms/works/typed_table.h"
#include "tests/form/barge_a_book.h"
#include "tests/form/works_sample_desk.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

struct AtThePlant {
    BookSession session{a_barge_book(), [] { return at("09:00"); }, {}};
    PlantLeaf leaf{session};
    QTableView* view = nullptr;

    AtThePlant() {
        session.set_person(QStringLiteral("Ana"));
        leaf.resize(1060, 640);
        leaf.show();
        REQUIRE(QTest::qWaitForWindowActive(&leaf));
        for (auto* one : leaf.findChildren<QTableView*>()) {
            if (one->accessibleName() == QStringLiteral("The table's rows")) view = one;
        }
        REQUIRE(view);
        view->setFocus();
    }
    TypedTable* typed() { return qobject_cast<TypedTable*>(view->model()); }
    void type(int row, int column, const char* text) {
        view->setCurrentIndex(view->model()->index(row, column));
        QTest::keyClick(view, Qt::Key_F2);
        QWidget* editor = QApplication::focusWidget();
        QTest::keyClick(editor, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(editor, QString::fromLatin1(text));
        QTest::keyClick(editor, Qt::Key_Return);
        QTest::qWait(1);  // a cell is taken once its key has been dealt with
        view->setFocus();
    }
    QPushButton* press_named(const QString& name) {
        for (auto* button : leaf.findChildren<QPushButton*>()) {
            if (button->accessibleName() == name) return button;
        }
        return nullptr;
    }
    bool shows(State state, const QString& word) {
        for (const auto* mark : leaf.findChildren<StateMark*>()) {
            if (mark->isVisible() && mark->state() == state && mark->word() == word) return true;
        }
        return false;
    }
    Table held() { return session.season().barges.rows().front().ullage_table; }
    std::size_t dots() { return leaf.findChild<ChartFrame*>()->data().series.at(1).points.size(); }
};

}  // namespace

TEST_CASE("a row typed into a barge's table is checked and drawn at once, and written by one press",
          "[works]") {
    AtThePlant plant;
    CHECK(plant.shows(State::clear, QStringLiteral("as in the book")));
    CHECK(plant.dots() == 2);
    plant.type(2, 0, "2.2");
    plant.type(2, 1, "310");
    CHECK(plant.typed()->message(2).startsWith(QStringLiteral("310 m³ does not fall as the ullage grows")));
    CHECK(plant.shows(State::hold, QStringLiteral("not right yet")));
    CHECK_FALSE(plant.press_named(QStringLiteral("Write the table down"))->isEnabled());
    plant.type(2, 1, "150");
    CHECK(plant.typed()->message(2).isEmpty());
    CHECK(plant.dots() == 3);
    CHECK(plant.shows(State::attention, QStringLiteral("not in the book yet")));
    CHECK(plant.held().size() == 2);
    auto* write = plant.press_named(QStringLiteral("Write the table down"));
    write->setFocus();
    QTest::keyClick(write, Qt::Key_Space);
    CHECK(plant.held() == Table{{0.2, 420}, {1.2, 300}, {2.2, 150}});
    CHECK(plant.shows(State::clear, QStringLiteral("as in the book")));
    CHECK(plant.session.undo().isEmpty());
    CHECK(plant.held().size() == 2);
}

TEST_CASE("what is no number, out of range or in centimetres is told beside its row", "[works]") {
    AtThePlant plant;
    plant.type(1, 0, "1,2x");
    CHECK(plant.typed()->message(1).contains(QStringLiteral("is not a number")));
    plant.type(1, 0, "120");
    CHECK(plant.typed()->message(1).startsWith(QStringLiteral("120 is outside the range of ullage")));
    plant.type(1, 0, "36");
    CHECK(plant.typed()->message(1).contains(QStringLiteral("typed in centimetres?")));
    CHECK(plant.shows(State::attention, QStringLiteral("not in the book yet")));  // odd, and possible
}

TEST_CASE("a table is pasted as a spreadsheet gives it, with its heading", "[works]") {
    AtThePlant plant;
    plant.view->setCurrentIndex(plant.view->model()->index(0, 0));
    QApplication::clipboard()->setText(
        QStringLiteral("Ullage (m)\tVolume (m³)\r\n0.0\t430\r\n0.5\t380\r\n1.0\t325\r\n"));
    QTest::keyClick(plant.view, Qt::Key_V, Qt::ControlModifier);
    CHECK(plant.typed()->table() == Table{{0, 430}, {0.5, 380}, {1, 325}});
    QTest::keyClick(plant.view, Qt::Key_C, Qt::ControlModifier);
    CHECK(QApplication::clipboard()->text() == QStringLiteral("0.0\t430\n0.5\t380\n1.0\t325"));
}

TEST_CASE("a table is read from a CSV file, and one without numbers says so", "[works]") {
    AtThePlant plant;
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("teal.csv"));
    QFile file(path);
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write("ullage_m,hopper_m3\n0.1,425\n\n0.9,335\n");
    file.close();
    CHECK(plant.leaf.read_file(path).isEmpty());
    CHECK(plant.typed()->table() == Table{{0.1, 425}, {0.9, 335}});
    REQUIRE(file.open(QIODevice::WriteOnly));
    file.write("nothing,here\n");
    file.close();
    CHECK(plant.leaf.read_file(path).contains(QStringLiteral("holds no numbers")));
    CHECK_FALSE(plant.leaf.read_file(folder.filePath(QStringLiteral("none.csv"))).isEmpty());
}

TEST_CASE("cells are divided by tab, semicolon, comma or blanks", "[works]") {
    const QLocale c = QLocale::c();
    CHECK(pasted_cells(QStringLiteral("0.5;380\n1.0;325"), c) == Cells{{"0.5", "380"}, {"1.0", "325"}});
    CHECK(pasted_cells(QStringLiteral("\"0.5\",\"380\""), c) == Cells{{"0.5", "380"}});
    CHECK(pasted_cells(QStringLiteral("0.5  380\n1.0 325"), c) == Cells{{"0.5", "380"}, {"1.0", "325"}});
    // A German spreadsheet: a comma is the point, so it divides nothing.
    CHECK(pasted_cells(QStringLiteral("0,5\t380"), QLocale(QLocale::German)) == Cells{{"0,5", "380"}});
    CHECK(pasted_cells(QString(), c).empty());
}

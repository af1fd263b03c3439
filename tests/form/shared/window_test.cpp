// SPDX-License-Identifier: GPL-3.0-or-later
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <algorithm>
#include <catch2/catch.hpp>

#include "forms/shared/cover.h"
#include "forms/shared/desk_view.h"
#include "forms/shared/main_window.h"
#include "forms/shared/message_strip.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/status_line.h"
#include "tests/support/paper_library.h"

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

const QString marram = QStringLiteral("/srv/books/marram.sbook");

// Each leaf is a box to type in, named by its key.
QWidget* leaf(const QString& key, QWidget* parent) {
    auto* edit = new QLineEdit(parent);
    edit->setObjectName(key);
    edit->setAccessibleName(key);
    return edit;
}

struct Program {
    QTemporaryDir folder;
    QSettings settings{folder.filePath(QStringLiteral("s.ini")), QSettings::IniFormat};
    Memory memory{settings};
    test::PaperLibrary shelf;
    std::unique_ptr<MainWindow> window;

    Program() {
        shelf.desks = test::paper_desks(leaf);
        start();
    }
    void start() {
        window =
            std::make_unique<MainWindow>(shelf, memory, *qobject_cast<PaperStyle*>(QApplication::style()));
        window->show();
        REQUIRE(QTest::qWaitForWindowActive(window.get()));
    }
    void open(const QString& path) {
        window->open_book(path);
        REQUIRE(QTest::qWaitFor([this] { return !window->busy(); }));
    }
    [[nodiscard]] QString shown_leaf() const {
        for (const auto* view : window->findChildren<DeskView*>()) {
            if (view->isVisible()) return view->desk().key + u'/' + view->leaf();
        }
        return {};
    }
    QPushButton* button(const QString& accessible) {
        for (auto* b : window->findChildren<QPushButton*>()) {
            if (b->isVisible() && b->accessibleName().startsWith(accessible)) return b;
        }
        return nullptr;
    }
};

}  // namespace

TEST_CASE("a book opens on the barge desk and is on the shelf next time", "[window]") {
    Program program;
    CHECK(program.shown_leaf().isEmpty());
    program.open(marram);
    CHECK(program.shown_leaf() == QStringLiteral("barge/shift"));
    CHECK(program.memory.recent_books() == QStringList({marram}));
    CHECK(program.window->windowTitle().contains(QStringLiteral("Marram Harbour Board")));
}

TEST_CASE("a book that is gone is told above the sheet, and the open book stays open", "[window]") {
    Program program;
    program.open(marram);
    program.open(QStringLiteral("/srv/gone.sbook"));
    CHECK(program.window->messages().isVisible());
    CHECK(program.window->messages().text().contains(QStringLiteral("not there any more")));
    REQUIRE(program.window->session() != nullptr);
    CHECK(program.window->session()->path() == marram);
}

TEST_CASE("desks and leaves are turned by keys, and a book opens again where it was left", "[window]") {
    Program program;
    program.open(marram);
    QTest::keyClick(program.window.get(), Qt::Key_3, Qt::ControlModifier);
    CHECK(program.shown_leaf() == QStringLiteral("consent/conditions"));
    QTest::keyClick(program.window.get(), Qt::Key_PageDown, Qt::ControlModifier);
    CHECK(program.shown_leaf() == QStringLiteral("consent/water"));
    QTest::keyClick(program.window.get(), Qt::Key_PageUp, Qt::ControlModifier);
    QTest::keyClick(program.window.get(), Qt::Key_PageUp, Qt::ControlModifier);
    CHECK(program.shown_leaf() == QStringLiteral("consent/conditions"));
    program.window->close();
    program.start();
    program.open(marram);
    CHECK(program.shown_leaf() == QStringLiteral("consent/conditions"));
}

TEST_CASE("a leaf is made when it is first turned to and keeps what was typed", "[window]") {
    Program program;
    program.open(marram);
    CHECK(program.window->findChild<QLineEdit*>(QStringLiteral("load")) == nullptr);
    program.window->turn_to(QStringLiteral("barge"), QStringLiteral("load"));
    auto* box = program.window->findChild<QLineEdit*>(QStringLiteral("load"));
    REQUIRE(box != nullptr);
    QTest::keyClicks(box, QStringLiteral("1.36"));
    program.window->turn_to(QStringLiteral("works"), {});
    program.window->turn_to(QStringLiteral("barge"), QStringLiteral("load"));
    CHECK(box->text() == QStringLiteral("1.36"));
}

TEST_CASE("what stands in a field when the window is closed counts as left", "[window]") {
    Program program;
    program.open(marram);
    auto* box = program.window->findChild<QLineEdit*>(QStringLiteral("shift"));
    REQUIRE(box != nullptr);
    QString left;
    QObject::connect(box, &QLineEdit::editingFinished, [&left, box] { left = box->text(); });
    box->setFocus();
    QTest::keyClicks(box, QStringLiteral("1.36"));
    program.window->close();
    CHECK(left == QStringLiteral("1.36"));
}

TEST_CASE("undo takes back, says what, and offers to redo; a refusal names what stands on it", "[window]") {
    Program program;
    program.open(marram);
    QTest::keyClick(program.window.get(), Qt::Key_Z, Qt::ControlModifier);
    CHECK(program.window->messages().text().contains(QStringLiteral("load L-0597 closed by ullage")));
    CHECK(program.shelf.last->undone == QStringLiteral("load L-0597 closed by ullage"));
    QTest::mouseClick(program.button(QStringLiteral("Redo")), Qt::LeftButton);
    CHECK(program.shelf.last->done == QStringLiteral("load L-0597 closed by ullage"));
    program.shelf.last->stands_on_it = QStringLiteral("Trip T-0598 stands on it.");
    QTest::keyClick(program.window.get(), Qt::Key_Z, Qt::ControlModifier);
    CHECK(program.window->messages().text() == QStringLiteral("Trip T-0598 stands on it."));
}

TEST_CASE("the foot says what was written last and when, or why nothing can be", "[window]") {
    Program program;
    program.open(marram);
    auto* foot = program.window->findChild<StatusLine*>();
    CHECK(foot->text() == QStringLiteral("Written 17:56: load L-0597 closed by ullage"));
    program.shelf.why_not = QStringLiteral("Bram has it open");
    program.open(marram);
    CHECK(foot->text() == QStringLiteral("Reading only: Bram has it open"));
}

TEST_CASE("a relief signs in by a typed name", "[window]") {
    Program program;
    program.open(marram);
    QTest::keyClick(program.window.get(), Qt::Key_U, Qt::ControlModifier);
    QLineEdit* relief = nullptr;
    for (auto* edit : program.window->findChildren<QLineEdit*>()) {
        if (edit->accessibleName().startsWith(QStringLiteral("Or a relief"))) relief = edit;
    }
    REQUIRE(relief != nullptr);
    QTest::keyClicks(relief, QStringLiteral("Finn"));
    QTest::keyClick(relief, Qt::Key_Return);
    CHECK(program.shelf.last->person() == QStringLiteral("Finn"));
    CHECK(program.button(QStringLiteral("Written by Finn")) != nullptr);
}

TEST_CASE("everything that takes the keyboard has a name for those who cannot see it", "[window]") {
    Program program;
    program.memory.add_recent_book(QStringLiteral("/srv/gone.sbook"));
    const auto check_names = [&] {
        for (const QWidget* widget : program.window->findChildren<QWidget*>()) {
            if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible() || widget->focusProxy())
                continue;
            INFO(widget->metaObject()->className()
                 << " in " << widget->parentWidget()->metaObject()->className());
            CHECK_FALSE(widget->accessibleName().isEmpty());
        }
    };
    check_names();
    program.open(marram);
    check_names();
}

TEST_CASE("Tab reaches the cover, the dividers, the index and the leaf", "[window]") {
    Program program;
    program.open(marram);
    QStringList reached;
    for (int i = 0; i < 40; ++i) {
        QTest::keyClick(program.window.get(), Qt::Key_Tab);
        if (QWidget* at = QApplication::focusWidget()) reached << at->accessibleName();
    }
    for (const char* name : {"Book (F10)", "Barge desk", "Running shift", "shift", "Night palette"}) {
        INFO(name << " not in " << reached.join(u'|').toStdString());
        CHECK(reached.contains(QString::fromLatin1(name)));
    }
}

TEST_CASE("the window fits a screen of 640 by 400, which is 1280 by 800 at twice the scale", "[window]") {
    Program program;
    CHECK(program.window->minimumSizeHint().width() <= 640);
    CHECK(program.window->minimumSizeHint().height() <= 400);
    program.open(marram);
    CHECK(program.window->minimumSizeHint().width() <= 640);
    CHECK(program.window->minimumSizeHint().height() <= 400);
}

TEST_CASE("what is remembered has defaults, and nonsense reads as them", "[memory]") {
    QTemporaryDir folder;
    QSettings settings(folder.filePath(QStringLiteral("s.ini")), QSettings::IniFormat);
    Memory memory(settings);
    CHECK(memory.light() == Light::day);
    settings.setValue(QStringLiteral("look/light"), 17);
    CHECK(memory.light() == Light::day);
    memory.set_light(Light::night);
    CHECK(memory.light() == Light::night);
    for (int i = 0; i < 12; ++i)
        memory.add_recent_book(QStringLiteral("/b/%1.sbook").arg(i));
    CHECK(memory.recent_books().size() == 10);
    CHECK(memory.recent_books().front() == QStringLiteral("/b/11.sbook"));
    memory.forget_book(QStringLiteral("/b/11.sbook"));
    CHECK(memory.recent_books().front() == QStringLiteral("/b/10.sbook"));
}

TEST_CASE("the keyboard is on the page when a book opens, and when a name was given", "[window]") {
    Program program;
    program.shelf.nobody = true;
    program.open(marram);
    const auto on_page = [&] {
        for (const auto* view : program.window->findChildren<DeskView*>()) {
            if (view->isVisible() && view->isAncestorOf(QApplication::focusWidget())) return true;
        }
        return false;
    };
    CHECK(on_page());
    // A leaf here is a box itself.
    auto* box = program.window->findChild<QLineEdit*>(QStringLiteral("shift"));
    REQUIRE(box != nullptr);
    CHECK(QApplication::focusWidget() == box);

    QTest::keyClick(program.window.get(), Qt::Key_U, Qt::ControlModifier);
    auto* names = program.window->findChild<QComboBox*>();
    REQUIRE(names != nullptr);
    QTest::keyClick(names, Qt::Key_Down);
    auto* write = program.button(QStringLiteral("Write under this name"));
    REQUIRE(write != nullptr);
    write->setFocus();
    QTest::keyClick(write, Qt::Key_Return);
    CHECK_FALSE(write->isVisible());
    CHECK(QApplication::focusWidget() == box);
}

TEST_CASE("who is named from the message above the page goes on on the page", "[window]") {
    Program program;
    program.shelf.nobody = true;
    program.open(marram);
    auto* ask = program.button(QStringLiteral("Say who writes"));
    REQUIRE(ask != nullptr);
    ask->setFocus();
    QTest::keyClick(ask, Qt::Key_Return);
    auto* names = program.window->findChild<QComboBox*>();
    REQUIRE(names != nullptr);
    QTest::keyClick(names, Qt::Key_Down);
    auto* write = program.button(QStringLiteral("Write under this name"));
    REQUIRE(write != nullptr);
    write->setFocus();
    QTest::keyClick(write, Qt::Key_Return);
    const QWidget* at = QApplication::focusWidget();
    REQUIRE(at != nullptr);
    const auto views = program.window->findChildren<DeskView*>();
    CHECK(std::any_of(views.begin(), views.end(),
                      [at](const DeskView* view) { return view->isAncestorOf(at); }));
}

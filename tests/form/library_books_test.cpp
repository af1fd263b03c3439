// SPDX-License-Identifier: GPL-3.0-or-later
// Real books come into the window from another thread, and a broken one is told, never a crash.
#include <QPushButton>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <catch2/catch.hpp>

#include "app/desktop/library.h"
#include "forms/shared/main_window.h"
#include "forms/shared/message_strip.h"
#include "forms/shared/paper_style.h"
#include "model/book/journal_check.h"
#include "model/book/open.h"
#include "tests/support/raw_book.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

struct Office {
    QTemporaryDir folder;
    QSettings settings{folder.filePath(QStringLiteral("s.ini")), QSettings::IniFormat};
    Memory memory{settings};
    BookLibrary shelf{"office",
                      [] { return morning(600); },
                      [](BookSession&) {
                          return std::vector<Desk>{
                              {QStringLiteral("barge"),
                               QStringLiteral("Barge desk"),
                               QStringLiteral("skipper"),
                               QStringLiteral("barge"),
                               {{QStringLiteral("leaf"), QStringLiteral("Leaf"), QStringLiteral("shift"),
                                 [](QWidget* parent) { return new QWidget(parent); }}}}};
                      },
                      {},
                      {}};
    std::unique_ptr<MainWindow> window;
    QString book = path("marram.sbook");

    Office() {
        make_book(book.toStdString(), "office", [](Book& fresh) -> Checked<Done> {
            log_tiny_season(fresh);
            return Done{};
        }).value();
        start();
    }
    void start() {
        window =
            std::make_unique<MainWindow>(shelf, memory, *qobject_cast<PaperStyle*>(QApplication::style()));
        window->show();
        REQUIRE(QTest::qWaitForWindowActive(window.get()));
    }
    [[nodiscard]] QString path(const char* name) const { return folder.filePath(QString::fromLatin1(name)); }
    void wait() {
        REQUIRE(window->busy());
        REQUIRE(QTest::qWaitFor([this] { return !window->busy(); }, 60000));
    }
    [[nodiscard]] QString said() const { return window->messages().text(); }
};

}  // namespace

TEST_CASE("a book with a row or a zone that does not read is told above the sheet", "[library]") {
    Office office;
    const QString broken = GENERATE(QStringLiteral("UPDATE harbour SET zone = 'Moon/Mare'"),
                                    QStringLiteral("UPDATE load SET dips_m = '[0.3'"));
    RawBook(office.book.toStdString()).run(broken.toStdString());
    office.window->open_book(office.book);
    office.wait();
    CHECK(office.window->session() == nullptr);
    INFO(office.said().toStdString());
    CHECK(office.said().contains(QStringLiteral("marram.sbook")));
}

TEST_CASE("a backup is made beside the screen, taken back into use as a checked copy, and stays",
          "[library]") {
    Office office;
    office.window->open_book(office.book);
    office.wait();
    office.window->back_up_to(office.path("backup.sbook"));
    office.wait();
    CHECK(office.said().startsWith(QStringLiteral("Backed up and verified")));
    office.window->take_back(office.path("backup.sbook"), office.path("again.sbook"));
    office.wait();
    REQUIRE(office.window->session() != nullptr);
    CHECK(office.window->session()->path().endsWith(QStringLiteral("again.sbook")));
    CHECK_FALSE(check_journal(*Book::open_to_read(office.path("again.sbook").toStdString())));
}

TEST_CASE("a live book is taken back with what only its log holds, a changed one not at all", "[library]") {
    Office office;
    auto writer = Book::open_to_write(office.book.toStdString(), "office", by("Ana", 700));
    REQUIRE(writer);
    log_row(*writer, by("Ana", 701), "tug", {{"name", std::string("Kea")}});
    office.window->take_back(office.book, office.path("again.sbook"));
    office.wait();
    CHECK(Book::open_to_read(office.path("again.sbook").toStdString())->labelled(kind("tug"), "Kea"));
    RawBook(office.book.toStdString()).run("UPDATE tug SET name = 'Weka'");
    office.window->take_back(office.book, office.path("changed.sbook"));
    office.wait();
    CHECK(office.said().contains(QStringLiteral("not intact")));
    CHECK_FALSE(QFile::exists(office.path("changed.sbook")));
}

TEST_CASE("making a book from a folder can be stopped, and leaves nothing", "[library]") {
    Office office;
    const GoingOn stop = [](double) { return false; };
    const QString to = office.path("new.sbook");
    const OpenedBook opened =
        office.shelf.create_from_folder(QStringLiteral(SPOILBOOK_SOURCE_DIR "/sample-db/marram"), to, stop)();
    CHECK(opened.session == nullptr);
    CHECK(opened.problem.contains(QStringLiteral("stopped")));
    CHECK(QDir(office.folder.path()).entryList({QStringLiteral("new*")}).isEmpty());
}

TEST_CASE("a book that is made from a folder opens, and the window lives meanwhile", "[library]") {
    Office office;
    office.window->make_from_folder(QStringLiteral(SPOILBOOK_SOURCE_DIR "/sample-db/marram"),
                                    office.path("new.sbook"));
    int ticks = 0;
    QTimer clock;
    QObject::connect(&clock, &QTimer::timeout, [&ticks] { ++ticks; });
    clock.start(10);
    office.wait();
    REQUIRE(office.window->session() != nullptr);
    CHECK(office.window->session()->path().endsWith(QStringLiteral("new.sbook")));
    CHECK(ticks > 5);
}

TEST_CASE("who wrote in a book last writes in it at the next start", "[library]") {
    Office office;
    office.window->open_book(office.book);
    office.wait();
    CHECK(office.window->session()->person().isEmpty());
    office.window->session()->set_person(QStringLiteral("Finn"));
    office.window.reset();
    office.start();
    office.window->open_book(office.book);
    office.wait();
    CHECK(office.window->session()->person() == QStringLiteral("Finn"));
}

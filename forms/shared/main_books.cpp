// SPDX-License-Identifier: GPL-3.0-or-later
// How a book comes into the window and leaves it. What is slow runs on another thread under the busy overlay.
#include <QAction>
#include <QApplication>
#include <QFileInfo>
#include <QStackedWidget>

#include "forms/shared/busy_overlay.h"
#include "forms/shared/desk_view.h"
#include "forms/shared/dividers.h"
#include "forms/shared/main_window.h"
#include "forms/shared/message_strip.h"
#include "forms/shared/off_screen.h"
#include "forms/shared/save_file.h"
#include "forms/shared/sheet.h"
#include "forms/shared/start_page.h"

namespace spoilbook::form {
namespace {

QString book_kinds() {
    return MainWindow::tr("Books (*.sbook)");
}

QString name_of(const QString& path) {
    return QFileInfo(path).fileName();
}

}  // namespace

void MainWindow::run(const QString& what, bool can_stop, std::function<Then(const GoingOn&)> slow) {
    if (at_work_) return;
    at_work_ = true;
    stop_ = std::make_shared<std::atomic<bool>>(false);
    busy_->begin(what, can_stop);
    for (QAction* action : actions())
        action->setEnabled(false);
    const GoingOn going_on = [stop = stop_, busy = busy_](double share) {
        QMetaObject::invokeMethod(
            busy, [busy, share] { busy->set_progress(share); }, Qt::QueuedConnection);
        return !*stop;
    };
    off_screen<Then>(
        pool_, this, [slow = std::move(slow), going_on] { return slow(going_on); },
        [this](const Then& then) {
            at_work_ = false;
            busy_->end();
            for (QAction* action : actions())
                action->setEnabled(true);
            refresh();
            then();
        });
}

void MainWindow::open_book(const QString& path) {
    if (at_work_) return;
    // The open book is given up first: it may be the same file, and its lock must be free.
    const QString before = session_ ? session_->path() : QString();
    close_book();
    run(tr("Opening %1").arg(name_of(path)), false, [this, path, before](const GoingOn& going_on) -> Then {
        const Ready ready = library_.open(path, going_on);
        return [this, path, before, ready] {
            OpenedBook opened = ready();
            const QString problem = opened.problem;
            take_in(std::move(opened));
            if (!problem.isEmpty() && !before.isEmpty() && before != path) open_again(before, problem);
        };
    });
}

void MainWindow::open_again(const QString& path, const QString& problem) {
    run(tr("Opening %1").arg(name_of(path)), false, [this, path, problem](const GoingOn& going_on) -> Then {
        const Ready ready = library_.open(path, going_on);
        return [this, problem, ready] {
            take_in(ready());
            strip_->show_message(Message::error, problem);
        };
    });
}

void MainWindow::take_in(OpenedBook opened) {
    if (!opened.session) {
        strip_->show_message(Message::error, opened.problem, tr("Open another …"), [this] { ask_open(); });
        return;
    }
    close_book();
    strip_->dismiss();
    session_ = std::move(opened.session);
    connect(session_.get(), &Session::changed, this, &MainWindow::refresh);
    connect(session_.get(), &Session::trouble, this,
            [this](const QString& what) { strip_->show_message(Message::error, what); });
    connect(session_.get(), &Session::notice, this, [this](const QString& what) {
        notice_ = what;
        strip_->show_message(Message::notice, what);
    });
    dividers_->set_desks(opened.desks);
    for (Desk& desk : opened.desks) {
        auto* view = new DeskView(std::move(desk), pages_);
        connect(view, &DeskView::turned, this, &MainWindow::remember_place);
        pages_->addWidget(view);
    }
    memory_.add_recent_book(session_->path());
    const QString person = memory_.person(session_->path());
    if (session_->person().isEmpty() && !person.isEmpty()) session_->set_person(person);
    const QString place = memory_.place(session_->path());
    turn_to(place.section(u'/', 0, 0), place.section(u'/', 1));
    focus_on_page();
    refresh();
    if (session_->writable() && session_->person().isEmpty()) {
        strip_->show_message(Message::notice, nobody_words(), tr("Say who writes"),
                             [this] { show_people(); });
    }
}

void MainWindow::close_book() {
    // A field that is being written in counts as left: what was typed goes into the book first.
    if (QWidget* at = QApplication::focusWidget(); at && isAncestorOf(at)) at->clearFocus();
    sheet_->close_sheet();
    while (pages_->count() > 1) {
        QWidget* desk = pages_->widget(1);
        pages_->removeWidget(desk);
        delete desk;
    }
    dividers_->set_desks({});
    session_.reset();
    start_->refresh();
    pages_->setCurrentIndex(0);
    refresh();
}

void MainWindow::take_when_ready(const QString& what, bool can_stop,
                                 std::function<Ready(const GoingOn&)> slow) {
    run(what, can_stop, [this, slow = std::move(slow)](const GoingOn& going_on) -> Then {
        const Ready ready = slow(going_on);
        return [this, ready] { take_in(ready()); };
    });
}

void MainWindow::ask_open() {
    choose_file(this, tr("Open a book"), book_kinds(), [this](const QString& path) { open_book(path); });
}

void MainWindow::open_sample() {
    if (at_work_) return;
    close_book();
    take_when_ready(tr("Opening the sample book"), false,
                    [this](const GoingOn& going_on) { return library_.open_sample(going_on); });
}

void MainWindow::ask_new() {
    choose_folder(this, tr("Which folder holds the plain files?"), [this](const QString& folder) {
        const QString name = name_of(folder) + QStringLiteral(".sbook");
        save_file(this, tr("Where shall the new book lie?"), name, book_kinds(),
                  [this, folder](const QString& path) { make_from_folder(folder, path); });
    });
}

void MainWindow::make_from_folder(const QString& folder, const QString& path) {
    take_when_ready(tr("Making %1 from the folder %2").arg(name_of(path), name_of(folder)), true,
                    [this, folder, path](const GoingOn& going_on) {
                        return library_.create_from_folder(folder, path, going_on);
                    });
}

void MainWindow::ask_restore() {
    choose_file(this, tr("Which backup?"), book_kinds(), [this](const QString& backup) {
        const QString name = QFileInfo(backup).completeBaseName() + QStringLiteral("-back.sbook");
        save_file(this, tr("Under which name shall it be used?"), name, book_kinds(),
                  [this, backup](const QString& path) { take_back(backup, path); });
    });
}

void MainWindow::take_back(const QString& backup, const QString& path) {
    take_when_ready(
        tr("Copying and checking %1").arg(name_of(backup)), true,
        [this, backup, path](const GoingOn& going_on) { return library_.take_back(backup, path, going_on); });
}

void MainWindow::ask_backup() {
    if (!session_) return;
    const QString name = QFileInfo(session_->path()).completeBaseName() + QStringLiteral("-backup.sbook");
    save_file(this, tr("Where shall the backup lie?"), name, book_kinds(),
              [this](const QString& path) { back_up_to(path); });
}

void MainWindow::back_up_to(const QString& path) {
    if (!session_) return;
    run(tr("Backing up and verifying %1").arg(name_of(session_->path())), true,
        [this, path, copy = session_->back_up(path)](const GoingOn& going_on) -> Then {
            const QString problem = copy(going_on);
            return [this, path, problem] {
                if (!problem.isEmpty()) return strip_->show_message(Message::error, problem);
                strip_->show_message(Message::done, tr("Backed up and verified: %1").arg(path));
            };
        });
}

}  // namespace spoilbook::form

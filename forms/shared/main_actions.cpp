// SPDX-License-Identifier: GPL-3.0-or-later
// What the window can do by menu and key: each action once.
#include <QAction>
#include <QMenu>

#include "forms/shared/cover.h"
#include "forms/shared/desk_view.h"
#include "forms/shared/dividers.h"
#include "forms/shared/main_window.h"
#include "forms/shared/message_strip.h"

namespace spoilbook::form {

QAction* MainWindow::add_action(QMenu* menu, const QString& text, const QKeySequence& keys,
                                void (MainWindow::*does)()) {
    auto* action = new QAction(text, this);
    action->setShortcut(keys);
    connect(action, &QAction::triggered, this, does);
    addAction(action);
    if (menu) menu->addAction(action);
    return action;
}

void MainWindow::build_actions() {
    menu_->setAccessibleName(tr("Book"));
    add_action(menu_, tr("&Open a book …"), QKeySequence::Open, &MainWindow::ask_open);
    add_action(menu_, tr("&Make a book from a folder …"), QKeySequence::New, &MainWindow::ask_new);
    add_action(menu_, tr("Take a backup back into &use …"), {}, &MainWindow::ask_restore);
    menu_->addSeparator();
    with_book_.push_back(
        add_action(menu_, tr("&Back up this book …"), QKeySequence(tr("Ctrl+B")), &MainWindow::ask_backup));
    with_book_.push_back(add_action(menu_, tr("&Undo"), QKeySequence::Undo, &MainWindow::undo));
    with_book_.push_back(add_action(menu_, tr("&Redo"), QKeySequence::Redo, &MainWindow::redo));
    with_book_.push_back(
        add_action(menu_, tr("Who &writes …"), QKeySequence(tr("Ctrl+U")), &MainWindow::show_people));
    with_book_.push_back(
        add_action(menu_, tr("Figures as &at …"), QKeySequence(tr("Ctrl+T")), &MainWindow::show_as_at));
    menu_->addSeparator();
    add_action(menu_, tr("&Day or night palette"), QKeySequence(tr("Ctrl+D")), &MainWindow::switch_light);
    with_book_.push_back(
        add_action(menu_, tr("&Close the book"), QKeySequence::Close, &MainWindow::close_book));
    auto* quit = new QAction(tr("&Quit"), this);
    quit->setShortcut(QKeySequence::Quit);
    connect(quit, &QAction::triggered, this, &QWidget::close);
    menu_->addAction(quit);
    addAction(quit);

    add_action(nullptr, tr("Next leaf"), QKeySequence(Qt::CTRL | Qt::Key_PageDown), &MainWindow::next_leaf);
    add_action(nullptr, tr("Leaf before"), QKeySequence(Qt::CTRL | Qt::Key_PageUp),
               &MainWindow::previous_leaf);
    for (int i = 0; i < 9; ++i) {
        auto* desk = new QAction(tr("Desk %1").arg(i + 1), this);
        desk->setShortcut(QKeySequence(Qt::CTRL | Qt::Key(Qt::Key_1 + i)));
        connect(desk, &QAction::triggered, this, [this, i] { dividers_->set_current(i); });
        addAction(desk);
    }
    auto* menu = new QAction(tr("Book"), this);
    menu->setShortcut(QKeySequence(Qt::Key_F10));
    connect(menu, &QAction::triggered, this,
            [this] { menu_->popup(cover_->mapToGlobal(QPoint(0, cover_->height()))); });
    addAction(menu);
}

void MainWindow::undo() {
    if (!session_ || session_->undo_text().isEmpty()) return;
    const QString what = session_->undo_text();
    const QString problem = session_->undo();
    if (!problem.isEmpty()) return strip_->show_message(Message::warning, problem);
    strip_->show_message(Message::done, tr("Taken back: %1").arg(what), tr("Redo"), [this] { redo(); });
}

void MainWindow::redo() {
    if (!session_ || session_->redo_text().isEmpty()) return;
    const QString problem = session_->redo();
    if (!problem.isEmpty()) return strip_->show_message(Message::warning, problem);
    strip_->dismiss();
}

void MainWindow::next_leaf() {
    if (DeskView* view = desk_view()) view->turn_by(1);
}

void MainWindow::previous_leaf() {
    if (DeskView* view = desk_view()) view->turn_by(-1);
}

}  // namespace spoilbook::form

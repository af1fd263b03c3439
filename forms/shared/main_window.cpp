// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QMenu>
#include <QMimeData>
#include <QPainter>
#include <QScreen>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "forms/shared/as_at_sheet.h"
#include "forms/shared/busy_overlay.h"
#include "forms/shared/cover.h"
#include "forms/shared/desk_view.h"
#include "forms/shared/dividers.h"
#include "forms/shared/message_strip.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/person_sheet.h"
#include "forms/shared/scrolling.h"
#include "forms/shared/sheet.h"
#include "forms/shared/start_page.h"
#include "forms/shared/status_line.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {

MainWindow::MainWindow(Library& library, Memory& memory, PaperStyle& style, QWidget* parent)
    : QWidget(parent),
      library_(library),
      memory_(memory),
      style_(style),
      cover_(new Cover(this)),
      dividers_(new Dividers(this)),
      paper_(new QWidget(this)),
      strip_(new MessageStrip(paper_)),
      pages_(new QStackedWidget(paper_)),
      start_(new StartPage(memory, library.has_sample(), pages_)),
      status_(new StatusLine(paper_)),
      sheet_(new Sheet(paper_)),
      busy_(new BusyOverlay(this)),
      menu_(new QMenu(this)) {
    build();
    connect_cover();
    build_actions();
    pool_.setMaxThreadCount(1);
    connect(busy_, &BusyOverlay::stop_asked, this, [this] { *stop_ = true; });
    setWindowTitle(tr("Spoilbook"));
    setAcceptDrops(true);
    // With room for the frame that the desktop puts round it.
    const QSize room = screen()->availableSize() - QSize(0, 4 * grid);
    if (!restoreGeometry(memory_.window())) resize(QSize(1280, 800).boundedTo(room));
    cover_->show_light(style_.tones().light());
    refresh();
}

MainWindow::~MainWindow() {
    // What works elsewhere tells this window how far it is.
    if (stop_) *stop_ = true;
    pool_.waitForDone();
    // The leaves hold on to the session: they go first.
    close_book();
}

void MainWindow::build() {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(0);
    all->addWidget(cover_);
    all->addWidget(dividers_);
    all->addWidget(paper_, 1);
    dividers_->layout()->setContentsMargins(2 * grid, 0, 2 * grid, 0);
    paper_->setAutoFillBackground(true);
    auto* sheet = new QVBoxLayout(paper_);
    sheet->setContentsMargins(0, 0, 0, 0);
    sheet->setSpacing(0);
    sheet->addWidget(strip_);
    sheet->addWidget(pages_, 1);
    sheet->addWidget(status_);
    pages_->addWidget(scrolling(start_, pages_));
}

void MainWindow::connect_cover() {
    cover_->set_menu(menu_);
    connect(cover_, &Cover::undo_pressed, this, &MainWindow::undo);
    connect(cover_, &Cover::redo_pressed, this, &MainWindow::redo);
    connect(cover_, &Cover::as_at_pressed, this, &MainWindow::show_as_at);
    connect(cover_, &Cover::person_pressed, this, &MainWindow::show_people);
    connect(cover_, &Cover::light_pressed, this, &MainWindow::switch_light);
    connect(strip_, &MessageStrip::let_go, this, &MainWindow::focus_on_page);
    connect(sheet_, &Sheet::closed, this, [this] {
        const QWidget* focused = QApplication::focusWidget();
        if (!focused || !focused->isVisible()) focus_on_page();
    });
    connect(dividers_, &Dividers::turned, this, &MainWindow::show_desk);
    connect(start_, &StartPage::book_chosen, this, &MainWindow::open_book);
    connect(start_, &StartPage::open_pressed, this, &MainWindow::ask_open);
    connect(start_, &StartPage::sample_pressed, this, &MainWindow::open_sample);
    connect(start_, &StartPage::new_pressed, this, &MainWindow::ask_new);
    connect(start_, &StartPage::restore_pressed, this, &MainWindow::ask_restore);
}

QString MainWindow::nobody_words() {
    return tr("Nobody is named yet: what is written now would carry no name.");
}

void MainWindow::refresh() {
    cover_->show_session(session_.get());
    status_->show_session(session_.get());
    dividers_->setVisible(session_ != nullptr);
    for (QAction* action : with_book_)
        action->setEnabled(session_ != nullptr && !at_work_);
    if (session_ && !session_->person().isEmpty()) {
        memory_.set_person(session_->path(), session_->person());
        if (strip_->text() == nobody_words()) strip_->dismiss();
    }
    if (!notice_.isEmpty() && strip_->text() == notice_) strip_->dismiss();
    setWindowTitle(session_ ? tr("%1 – Spoilbook").arg(session_->harbour()) : tr("Spoilbook"));
}

void MainWindow::turn_to(const QString& desk, const QString& leaf) {
    int index = 0;
    for (int i = 1; i < pages_->count(); ++i) {
        auto* view = qobject_cast<DeskView*>(pages_->widget(i));
        if (view->desk().key == desk) index = i - 1;
    }
    dividers_->set_current(index);
    show_desk(index);
    if (DeskView* view = desk_view()) view->turn_to(leaf);
}

void MainWindow::show_desk(int index) {
    if (index + 1 >= pages_->count()) return;
    const QWidget* focused = QApplication::focusWidget();
    const bool was_on_page = !focused || pages_->isAncestorOf(focused);
    pages_->setCurrentIndex(index + 1);
    DeskView* view = desk_view();
    if (view->leaf().isEmpty()) view->turn_to({});
    if (was_on_page) focus_on_page();
    remember_place();
}

DeskView* MainWindow::desk_view() const {
    return qobject_cast<DeskView*>(pages_->currentWidget());
}

void MainWindow::focus_on_page() {
    if (DeskView* view = desk_view()) view->focus_leaf();
}

void MainWindow::remember_place() {
    const DeskView* view = desk_view();
    if (session_ && view) memory_.set_place(session_->path(), view->desk().key + u'/' + view->leaf());
}

void MainWindow::open_sheet(const QString& title, QWidget* content) {
    sheet_->open(title, content);
}

void MainWindow::close_sheet() {
    sheet_->close_sheet();
}

void MainWindow::show_people() {
    if (!session_) return;
    auto* people = new PersonSheet(*session_);
    connect(people, &PersonSheet::done, sheet_, &Sheet::close_sheet);
    open_sheet(tr("Who writes"), people);
}

void MainWindow::show_as_at() {
    if (!session_) return;
    auto* as_at = new AsAtSheet(*session_);
    connect(as_at, &AsAtSheet::done, sheet_, &Sheet::close_sheet);
    open_sheet(tr("Figures as at"), as_at);
}

void MainWindow::switch_light() {
    const Light light = style_.tones().light() == Light::day ? Light::night : Light::day;
    style_.set_light(light);
    memory_.set_light(light);
    cover_->show_light(light);
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (stop_) *stop_ = true;
    memory_.set_window(saveGeometry());
    close_book();
    event->accept();
}

void MainWindow::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Palette& tones = style_.tones();
    painter.fillRect(rect(), tones[Tone::ground]);
    // The edge that the dividers stand on.
    painter.fillRect(QRect(0, paper_->y() - 1, width(), 1), tones[Tone::edge]);
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    const QList<QUrl> files = event->mimeData()->urls();
    if (!at_work_ && files.size() == 1 && files.front().toLocalFile().endsWith(QStringLiteral(".sbook"))) {
        event->acceptProposedAction();
    }
}

void MainWindow::dropEvent(QDropEvent* event) {
    const QString path = event->mimeData()->urls().front().toLocalFile();
    event->acceptProposedAction();
    // Not inside the drag: whoever let the file go waits for this to return.
    QMetaObject::invokeMethod(
        this, [this, path] { open_book(path); }, Qt::QueuedConnection);
}

}  // namespace spoilbook::form

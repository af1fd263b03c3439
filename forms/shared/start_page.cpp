// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/start_page.h"

#include <QDateTime>
#include <QFileInfo>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include "forms/shared/book_spine.h"
#include "forms/shared/button.h"
#include "forms/shared/label.h"

namespace spoilbook::form {
namespace {

constexpr int text_width = 46 * grid;
// Narrower than this, the two columns stand below each other.
constexpr int one_column = 96 * grid;

}  // namespace

StartPage::StartPage(Memory& memory, bool has_sample, QWidget* parent)
    : QWidget(parent),
      memory_(memory),
      columns_(new QBoxLayout(QBoxLayout::LeftToRight, this)),
      shelf_(new QVBoxLayout) {
    columns_->setContentsMargins(3 * grid, 4 * grid, 3 * grid, 3 * grid);
    columns_->setSpacing(6 * grid);
    columns_->addStretch();
    columns_->addWidget(build_shelf(), 3);
    columns_->addWidget(build_ways(has_sample), 2);
    columns_->addStretch();
    refresh();
}

QWidget* StartPage::build_shelf() {
    auto* side = new QWidget(this);
    side->setMaximumWidth(72 * grid);
    auto* all = new QVBoxLayout(side);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(make_label(tr("Books on this shelf"), Step::title, Weight::semibold, side));
    all->addSpacing(grid);
    shelf_->setSpacing(grid);
    all->addLayout(shelf_);
    all->addStretch();
    return side;
}

QWidget* StartPage::build_ways(bool has_sample) {
    auto* side = new QWidget(this);
    side->setMaximumWidth(text_width);
    auto* all = new QVBoxLayout(side);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(make_label(tr("Take another book"), Step::title, Weight::semibold, side));
    all->addSpacing(grid);
    const auto add = [&](ButtonKind kind, const QString& text, const QString& icon_name, const QString& note,
                         void (StartPage::*pressed)()) {
        QPushButton* button = make_button(kind, text, icon_name, side);
        button->setAccessibleDescription(note);
        connect(button, &QPushButton::clicked, this, pressed);
        all->addWidget(button);
        QLabel* words = make_quiet(note, Step::small, side);
        words->setWordWrap(true);
        words->setIndent(3);
        all->addWidget(words);
        all->addSpacing(grid);
    };
    add(ButtonKind::plain, tr("Open a book …"), QStringLiteral("book"),
        tr("A .sbook file on this machine. Others may read it while you write."), &StartPage::open_pressed);
    if (has_sample) {
        add(ButtonKind::plain, tr("Open the sample book"), QStringLiteral("shift"),
            tr("Marram Harbour, all invented: ten months of works to look round in. Yours to change."),
            &StartPage::sample_pressed);
    }
    add(ButtonKind::plain, tr("Make a book from a folder …"), QStringLiteral("folder"),
        tr("Plain CSV, JSON and GeoJSON files of your own. It lands whole or not at all."),
        &StartPage::new_pressed);
    add(ButtonKind::quiet, tr("Take a backup back into use …"), QStringLiteral("backup"),
        tr("A backup is a whole book: it is copied under a new name, the copy is checked and opened. The "
           "old book stays."),
        &StartPage::restore_pressed);
    all->addStretch();
    return side;
}

void StartPage::refresh() {
    while (QLayoutItem* item = shelf_->takeAt(0)) {
        if (item->widget()) item->widget()->deleteLater();
        delete item;
    }
    const QStringList books = memory_.recent_books();
    for (const QString& path : books)
        add_book(path);
    if (books.isEmpty()) {
        QLabel* nothing =
            make_quiet(tr("No book has been opened on this machine yet. One book holds one harbour's "
                          "works: its shifts, loads, trips, consent and returns."),
                       Step::body, this);
        nothing->setWordWrap(true);
        shelf_->addWidget(nothing);
    }
}

void StartPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    columns_->setDirection(width() < one_column ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

void StartPage::add_book(const QString& path) {
    auto* row = new QWidget(this);
    auto* cells = new QHBoxLayout(row);
    cells->setContentsMargins(0, 0, 0, 0);
    cells->setSpacing(half_grid);
    const QFileInfo file(path);
    auto* spine = new BookSpine(file, row);
    connect(spine, &QAbstractButton::clicked, this, [this, path] { emit book_chosen(path); });
    cells->addWidget(spine, 1);
    QPushButton* forget =
        make_button(ButtonKind::tool, tr("Take %1 off the shelf; the file stays").arg(file.fileName()),
                    QStringLiteral("close"), row);
    connect(forget, &QPushButton::clicked, this, [this, path] {
        memory_.forget_book(path);
        refresh();
    });
    cells->addWidget(forget);
    shelf_->addWidget(row);
}

}  // namespace spoilbook::form

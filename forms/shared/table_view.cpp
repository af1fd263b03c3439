// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/table_view.h"

#include <QClipboard>
#include <QEvent>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QScrollBar>
#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/icon.h"
#include "forms/shared/label.h"
#include "forms/shared/row_painter.h"
#include "forms/shared/save_file.h"
#include "forms/shared/table_model.h"
#include "forms/shared/table_text.h"

namespace spoilbook::form {

TableView::TableView(const QString& title, QWidget* parent)
    : QWidget(parent),
      title_(title),
      words_(new QLineEdit(this)),
      count_(make_quiet({}, Step::small, this)),
      table_(new QTableView(this)),
      filter_(new TableFilter(this)),
      empty_(make_quiet({}, Step::body, table_->viewport())) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(half_grid);
    all->addWidget(build_bar());
    all->addWidget(table_, 1);
    build_table();
    empty_text_ = tr("Nothing here yet.");
    connect(words_, &QLineEdit::textChanged, this, [this](const QString& words) {
        filter_->set_words(words);
        show_count();
    });
    connect(filter_, &QAbstractItemModel::modelAboutToBeReset, this, [this] {
        kept_scroll_ = table_->verticalScrollBar()->value();
        kept_row_ = table_->currentIndex().row();
        kept_column_ = table_->currentIndex().column();
    });
    connect(filter_, &QAbstractItemModel::modelReset, this, &TableView::come_back);
    show_count();
}

QWidget* TableView::build_bar() {
    auto* bar = new QWidget(this);
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(0, 0, 0, 0);
    words_->setPlaceholderText(tr("Find in %1").arg(title_));
    words_->setAccessibleName(tr("Find in %1").arg(title_));
    words_->setClearButtonEnabled(true);
    words_->addAction(icon(QStringLiteral("search"), Tone::quiet), QLineEdit::LeadingPosition);
    words_->setMaximumWidth(40 * grid);
    auto* copy_button = make_button(ButtonKind::tool, tr("Copy %1").arg(title_), QStringLiteral("copy"), bar);
    auto* export_button =
        make_button(ButtonKind::tool, tr("Export %1 to a file").arg(title_), QStringLiteral("export"), bar);
    connect(copy_button, &QPushButton::clicked, this, &TableView::copy);
    connect(export_button, &QPushButton::clicked, this, &TableView::export_rows);
    row->addWidget(words_, 1);
    row->addStretch();
    row->addWidget(count_);
    row->addWidget(copy_button);
    row->addWidget(export_button);
    return bar;
}

void TableView::build_table() {
    table_->setAccessibleName(title_);
    table_->setModel(filter_);
    table_->setItemDelegate(new RowPainter(table_));
    table_->setSortingEnabled(true);
    table_->sortByColumn(-1, Qt::AscendingOrder);
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::ExtendedSelection);
    table_->setShowGrid(false);
    table_->setWordWrap(false);
    table_->setTabKeyNavigation(false);
    table_->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    table_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    table_->setFrameShape(QFrame::NoFrame);
    // Some rows must be in sight, also where the page has to scroll for it.
    table_->setMinimumHeight(26 * grid);
    table_->verticalHeader()->hide();
    table_->verticalHeader()->setDefaultSectionSize(4 * grid);
    QHeaderView* head = table_->horizontalHeader();
    head->setFont(type_font(Step::small, Weight::semibold));
    head->setHighlightSections(false);
    head->setResizeContentsPrecision(50);
    head->setStretchLastSection(true);
    head->setMinimumSectionSize(6 * grid);
    table_->installEventFilter(this);
    table_->viewport()->installEventFilter(this);
    empty_->setAlignment(Qt::AlignCenter);
    empty_->setWordWrap(true);
    connect(table_, &QTableView::doubleClicked, this,
            [this](const QModelIndex& index) { emit opened(filter_->mapToSource(index).row()); });
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this] { emit current_changed(current_row()); });
}

void TableView::set_model(TableModel* model) {
    filter_->setSourceModel(model);
    kept_row_ = -1;
    kept_scroll_ = 0;
    show_count();
    table_->resizeColumnsToContents();
}

void TableView::set_empty_text(const QString& text) {
    empty_text_ = text;
    show_count();
}

int TableView::current_row() const {
    const QModelIndex index = table_->currentIndex();
    return index.isValid() ? filter_->mapToSource(index).row() : -1;
}

void TableView::show_count() {
    const int shown = filter_->rowCount();
    const int all = filter_->sourceModel() ? filter_->sourceModel()->rowCount() : 0;
    count_->setText(shown == all ? tr("Rows: %1").arg(all) : tr("Rows: %1 of %2").arg(shown).arg(all));
    empty_->setText(all == 0 ? empty_text_ : tr("No row has “%1”.").arg(words_->text().simplified()));
    empty_->setVisible(shown == 0);
    place_empty();
}

// New rows come in while somebody reads: the place in the table stays.
void TableView::come_back() {
    show_count();
    const QModelIndex before = filter_->index(kept_row_, kept_column_);
    if (before.isValid()) table_->setCurrentIndex(before);
    table_->verticalScrollBar()->setValue(kept_scroll_);
}

void TableView::place_empty() {
    empty_->setGeometry(table_->viewport()->rect().adjusted(2 * grid, 0, -2 * grid, 0));
}

bool TableView::eventFilter(QObject* watched, QEvent* event) {
    if (watched == table_->viewport() && event->type() == QEvent::Resize) place_empty();
    if (watched == table_ && event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Copy)) {
            copy();
            return true;
        }
        if (key->matches(QKeySequence::Find)) {
            words_->setFocus();
            return true;
        }
        if ((key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter) && current_row() >= 0) {
            emit opened(current_row());
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void TableView::copy() {
    const QModelIndexList selected = table_->selectionModel()->selectedRows();
    QGuiApplication::clipboard()->setText(tsv(*filter_, selected));
    emit copied(selected.isEmpty() ? filter_->rowCount() : int(selected.size()));
}

void TableView::export_rows() {
    save_file(this, tr("Export %1").arg(title_), title_ + QStringLiteral(".csv"), tr("Table (*.csv)"),
              [this](const QString& path) {
                  const QString why = write_file(path, csv(*filter_).toUtf8());
                  if (why.isEmpty()) {
                      emit exported(path);
                  } else {
                      emit failed(why);
                  }
              });
}

}  // namespace spoilbook::form

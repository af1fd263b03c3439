// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/limits_table.h"

#include <QVBoxLayout>

#include "forms/shared/table_view.h"

namespace spoilbook::form {

LimitsTable::LimitsTable(QWidget* parent)
    : QWidget(parent),
      view_(new TableView(tr("limits"), this)),
      rows_(new RowTable<LimitRow>(limit_columns(QLocale()), this)) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(view_);
    view_->set_model(rows_);
    view_->set_empty_text(tr("No condition of this book is a limit on a quantity."));
    connect(view_, &TableView::opened, this, &LimitsTable::evidence_asked);
    connect(view_, &TableView::current_changed, this, &LimitsTable::current_changed);
}

void LimitsTable::show_rows(std::vector<LimitRow> rows) {
    const int before = view_->current_row();
    rows_->set_rows(std::move(rows));
    view_->table()->resizeColumnsToContents();
    // The cursor stays on its condition when figures come anew.
    if (before >= 0 && before < rows_->rowCount()) {
        const auto* shown = view_->shown_rows();
        view_->table()->setCurrentIndex(shown->mapFromSource(rows_->index(before, 0)));
    }
}

const LimitRow* LimitsTable::current() const {
    const int index = view_->current_row();
    return index < 0 ? nullptr : &rows_->row(index);
}

}  // namespace spoilbook::form

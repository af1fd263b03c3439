// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/over_dredge_part.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include "forms/shared/label.h"
#include "forms/shared/table_view.h"
#include "forms/shared/unit_field.h"

namespace spoilbook::form {
namespace {

constexpr double most_cost = 1e6;

}  // namespace

OverDredgePart::OverDredgePart(QWidget* parent)
    : QWidget(parent),
      unit_cost_(new UnitField(tr("Unit cost"), {tr("a m³ in situ"), 0, most_cost, 2}, this)),
      sentence_(make_label({}, Step::body, Weight::regular, this)),
      table_(new TableView(tr("Over-dredge"), this)),
      rows_(new RowTable<OverDredgeRow>(over_dredge_columns(QLocale()), table_)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, grid, 0, 0);
    auto* head = new QHBoxLayout;
    head->setSpacing(2 * grid);
    sentence_->setWordWrap(true);
    unit_cost_->setFixedWidth(24 * grid);
    head->addWidget(sentence_, 1);
    head->addWidget(unit_cost_, 0, Qt::AlignTop);
    column->addLayout(head);
    table_->set_model(rows_);
    table_->set_empty_text(tr("No surveyor's report tells of over-dredge by the as-at."));
    column->addWidget(table_, 1);
    connect(unit_cost_, &UnitField::committed, this, &OverDredgePart::unit_cost_changed);
}

std::optional<double> OverDredgePart::unit_cost() const {
    return unit_cost_->value();
}

void OverDredgePart::show_dug(std::vector<OverDredgeRow> rows, const QString& sentence) {
    sentence_->setText(sentence);
    rows_->set_rows(std::move(rows));
    table_->table()->resizeColumnsToContents();
}

}  // namespace spoilbook::form

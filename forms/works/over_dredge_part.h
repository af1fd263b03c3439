// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/works/over_dredge_rows.h"

class QLabel;

namespace spoilbook::form {

class TableView;
class UnitField;

/// What was dug below target level, claim by claim, and what it cost at a unit cost that is typed here. Money
/// is no part of a book: the unit cost is forgotten as the window closes.
class OverDredgePart : public QWidget {
    Q_OBJECT

 public:
    explicit OverDredgePart(QWidget* parent = nullptr);

    /// At unit_cost().
    void show_dug(std::vector<OverDredgeRow> rows, const QString& sentence);
    [[nodiscard]] std::optional<double> unit_cost() const;
    [[nodiscard]] TableView* table() const { return table_; }

 signals:
    void unit_cost_changed();

 private:
    UnitField* unit_cost_;
    QLabel* sentence_;
    TableView* table_;
    RowTable<OverDredgeRow>* rows_;
};

}  // namespace spoilbook::form

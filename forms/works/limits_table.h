// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/table_model.h"
#include "forms/works/limit_rows.h"

namespace spoilbook::form {

class TableView;

/// The headroom table that manager and officer share. Enter or a double click on a row asks for its evidence.
class LimitsTable : public QWidget {
    Q_OBJECT

 public:
    explicit LimitsTable(QWidget* parent = nullptr);

    void show_rows(std::vector<LimitRow> rows);
    [[nodiscard]] TableView* view() const { return view_; }
    /// Null where there is no row under the cursor.
    [[nodiscard]] const LimitRow* current() const;
    [[nodiscard]] const LimitRow& row(int index) const { return rows_->row(index); }

 signals:
    void evidence_asked(int row);
    void current_changed();

 private:
    TableView* view_;
    RowTable<LimitRow>* rows_;
};

}  // namespace spoilbook::form

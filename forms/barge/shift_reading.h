// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/book_session.h"
#include "forms/shared/table_model.h"
#include "model/progress/shift_sheet.h"

class QLabel;

namespace spoilbook::form {

class TableView;
class TimelineStrip;

/// The shift sheet read through: its hours, its timeline, every record that the signature covers, and what is
/// blank in them. Enter or a double click on a line opens the record to be mended.
class ShiftReading : public QWidget {
    Q_OBJECT

 public:
    ShiftReading(BookSession& session, std::string shift, QWidget* parent);
    void refresh();

 signals:
    void line_opened(const QString& kind, const QString& label);

 private:
    [[nodiscard]] const Shift* shift() const;
    [[nodiscard]] std::vector<Column<SheetLine>> columns() const;

    BookSession& session_;
    std::string label_;
    QLabel* hours_;
    QLabel* missing_;
    TimelineStrip* strip_;
    TableView* table_;
    RowTable<SheetLine>* lines_;
};

}  // namespace spoilbook::form

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>
#include <QWidget>

#include "forms/shared/book_session.h"
#include "forms/shared/table_model.h"

namespace spoilbook::form {

class Sheet;
class TableView;

/// All shifts, newest first; each opens to be read and mended. A signed one asks for the reason.
class ShiftListPage : public QWidget {
    Q_OBJECT

 public:
    explicit ShiftListPage(BookSession& session, QWidget* parent = nullptr);

 private:
    [[nodiscard]] std::vector<Column<Shift>> columns() const;
    void refresh();
    void open_shift(const Shift& shift);
    [[nodiscard]] QWidget* shift_content(const Shift& shift);
    [[nodiscard]] Sheet* sheet();

    BookSession& session_;
    TableView* table_;
    RowTable<Shift>* rows_;
    QPointer<Sheet> sheet_;
};

}  // namespace spoilbook::form

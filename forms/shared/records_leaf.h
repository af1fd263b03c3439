// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>
#include <vector>

#include "forms/shared/book_session.h"
#include "forms/shared/record_words.h"
#include "forms/shared/table_model.h"

class QPushButton;
class QStackedLayout;

namespace spoilbook::form {

class ChoiceField;
class Sheet;
class TableView;

/// Any kind of record as a table, as the book describes it; a row opens on a sheet, field by field. What has
/// no page of its own on a desk is found and mended here.
class RecordsLeaf : public QWidget {
    Q_OBJECT

 public:
    /// Offers these kinds, and begins with the first; none: all of them.
    RecordsLeaf(BookSession& session, const std::vector<std::string>& kinds, QWidget* parent = nullptr);

 private:
    void show_kind(const std::string& name);
    void refresh();
    void open_record(const Row& row);
    void add_record();
    [[nodiscard]] std::vector<Column<Row>> columns() const;

    BookSession& session_;
    const Kind* kind_ = nullptr;
    ChoiceField* choice_;
    QPushButton* add_;
    TableView* view_;
    RowTable<Row>* rows_ = nullptr;
    std::shared_ptr<LabelOf> labels_ = std::make_shared<LabelOf>();
    Sheet* sheet_;
};

}  // namespace spoilbook::form

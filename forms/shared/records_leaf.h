// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>
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

    /// A page that knows more of one kind's records than their fields: a press opens it for the row under the
    /// cursor. `make` is given the record's label.
    struct View {
        std::string kind;
        QString words;  ///< of the press
        QString icon;
        int width = 480;
        std::function<QWidget*(const QString& label)> make;
    };
    void add_view(View view);

 private:
    void show_kind(const std::string& name);
    void refresh();
    void open_record(const Row& row);
    void add_record();
    void offer_view();
    void open_view();
    [[nodiscard]] std::vector<Column<Row>> columns() const;

    BookSession& session_;
    const Kind* kind_ = nullptr;
    ChoiceField* choice_;
    QPushButton* add_;
    TableView* view_;
    RowTable<Row>* rows_ = nullptr;
    std::shared_ptr<LabelOf> labels_ = std::make_shared<LabelOf>();
    Sheet* sheet_;
    std::vector<View> views_;
    QPushButton* open_view_;
};

}  // namespace spoilbook::form

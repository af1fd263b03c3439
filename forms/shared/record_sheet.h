// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "forms/shared/book_session.h"

namespace spoilbook::form {

class ChoiceField;
class TextField;

/// One record, field by field, as its kind describes it. Each field is written when it is left; what the book
/// refuses stays as typed with the reason below. A change of something signed asks for its reason first.
class RecordSheet : public QWidget {
    Q_OBJECT

 public:
    /// `label` names the record; one that the book does not have yet is made with the first field.
    RecordSheet(BookSession& session, const Kind& kind, std::string label, QWidget* parent = nullptr);

 private:
    QWidget* make_field(std::size_t index);
    QWidget* make_choice(const Field& field, const Value& value);
    /// Empty: written.
    QString put(const Field& field, const QString& text);
    [[nodiscard]] std::optional<Row> row() const;
    [[nodiscard]] std::string typed(const Field& field, const QString& text) const;

    BookSession& session_;
    const Kind& kind_;
    std::string label_;
    std::optional<Row> row_;
    TextField* why_;
};

}  // namespace spoilbook::form

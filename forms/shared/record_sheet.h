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
    /// The record that is there.
    RecordSheet(BookSession& session, const Kind& kind, const Id& id, QWidget* parent = nullptr);
    /// One that is not there yet: its first field makes it under this label.
    RecordSheet(BookSession& session, const Kind& kind, std::string new_label, QWidget* parent = nullptr);

 private:
    void build();
    QWidget* make_field(std::size_t index);
    QWidget* make_choice(const Field& field, const Value& value);
    /// Empty: written.
    QString put(const Field& field, const QString& text);
    Checked<Done> write(Book& book, const Act& by, const FieldInput& input);
    [[nodiscard]] QString named() const;
    [[nodiscard]] std::string typed(const Field& field, const QString& text) const;

    BookSession& session_;
    const Kind& kind_;
    std::string new_label_;   ///< of a record that is not there yet
    std::optional<Row> row_;  ///< as it was last read
    TextField* why_;
};

}  // namespace spoilbook::form

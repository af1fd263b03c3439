// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "forms/shared/field.h"

class QComboBox;

namespace spoilbook::form {

/// One thing to choose: `key` is the book's label or id, `text` is what is read.
struct Choice {
    QString key;
    QString text;
};

/// One of a list, or nothing yet. A choice is never made for the person; it may be offered.
class ChoiceField : public FieldBox {
    Q_OBJECT

 public:
    ChoiceField(const QString& label, QWidget* parent = nullptr);

    /// Replaces the list. A chosen key that the new list has stays chosen.
    void set_choices(const std::vector<Choice>& choices);
    [[nodiscard]] std::optional<QString> chosen() const;
    /// Shows what the book holds. Emits nothing. A key that is not in the list shows as it is, with a
    /// problem.
    void set_chosen(const std::optional<QString>& key);
    void offer(const QString& key, const QString& why);

 signals:
    void committed(const QString& key);

 private:
    QComboBox* box_;
};

}  // namespace spoilbook::form
